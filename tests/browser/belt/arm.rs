//! A tensioner and a load given at their pulleys, by taps and fields alone.

use super::{until_field, until_gone};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

fn until_drawn(phone: &Phone) -> Result<()> {
    phone.until("the arm on the drawing", || {
        Ok((phone.count(".route .arm")? > 0).then_some(()))
    })
}

#[test]
fn a_small_drive_gets_its_tensioner_and_its_load_without_a_line_of_code() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    phone.tap("#begin-drive")?;
    until_gone(&phone, "[id='wrap-3']")?;
    phone.tap("#pulley-2")?;
    phone.type_into("pulley-name", "alternator")?;
    phone.type_into("pulley-load", "90 A 14 V")?;
    until_field(&phone, "loads", "alternator=90 A 14 V")?;
    phone.tap("#add-after")?;
    phone.until_text(".panel h2", "Pulley 3 of 3")?;
    let length = phone.result("effective-length")?;
    ensure!(phone.count(".route .arm")? == 0);

    // One tap, and there is an arm that holds belts, drawn at once; the keyboard stays where it was.
    phone.tap("#hold")?;
    until_drawn(&phone)?;
    phone.until_text("#hold", "No tensioner any more")?;
    phone.until_true("the focus on the button", "return document.activeElement.id === 'hold'")?;
    phone.until_result("effective-length", length, 0.0)?;
    phone.result("take-up-low")?;

    // Its figures go in one by one, with a decimal comma.
    let place = [phone.field("pulley-x")?, phone.field("pulley-y")?];
    let [x, y] = place.map(|text| text.parse::<f64>().unwrap_or(f64::NAN));
    for (key, typed, held) in [
        (
            "pivot-x",
            format!("{},5", x + 79.0),
            format!("pulley 3@{}.5,", x + 79.0),
        ),
        ("pivot-y", format!("{y}"), format!(".5,{y},")),
        ("low-stop", "160".to_owned(), ",160..".to_owned()),
        ("high-stop", "200°".to_owned(), "160..200".to_owned()),
    ] {
        phone.type_into(key, &typed)?;
        phone.until(&format!("`{held}` in the tensioner"), || {
            Ok(phone.field("tensioner")?.contains(&held).then_some(()))
        })?;
        ensure!(phone.field(key)? == typed);
    }
    until_gone(&phone, "#arm-error")?;
    // A sweep that is backwards is said; a text that is no angle takes what needs the arm away, no more.
    phone.type_into("low-stop", "230")?;
    phone.until_text("#arm-error", "high stop above the low one")?;
    phone.type_into("low-stop", "left")?;
    phone.error("low-stop")?;
    until_gone(&phone, "#take-up-low")?;
    phone.until_result("effective-length", length, 0.0)?;
    phone.type_into("low-stop", "150")?;
    phone.result("take-up-low")?;

    // A load that is none is kept and said; the length stays.
    phone.tap("#pulley-2")?;
    until_field(&phone, "pulley-load", "90 A 14 V")?;
    phone.result("slip-reserve-2")?;
    phone.type_into("pulley-load", "a lot")?;
    phone.until_text("#pulley-load-error", "no load")?;
    until_gone(&phone, "[id='slip-reserve-2']")?;
    phone.until_result("effective-length", length, 0.0)?;
    phone.type_into("pulley-load", "1,2 kW")?;
    phone.result("slip-reserve-2")?;
    // The driver carries the sum of all loads and is on no arm.
    phone.tap("#pulley-1")?;
    until_gone(&phone, "#pulley-load")?;
    ensure!(phone.count("#hold")? == 0);

    // All of it is in the link; taken away it can be brought back.
    let arm = phone.field("tensioner")?;
    phone.until("the link to follow", || {
        Ok(phone.fragment()?.contains("1%2C2%20kW").then_some(()))
    })?;
    phone.reload()?;
    until_field(&phone, "tensioner", &arm)?;
    until_field(&phone, "loads", "alternator=1,2 kW")?;
    phone.tap("#pulley-3")?;
    phone.tap("#hold")?;
    phone.until_text(".bring", "arm is put away")?;
    until_field(&phone, "tensioner", "")?;
    until_gone(&phone, ".route .arm")?;
    phone.tap("#bring-back")?;
    until_field(&phone, "tensioner", &arm)?;
    until_drawn(&phone)
}
