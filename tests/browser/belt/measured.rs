//! A drive built at the engine: tape from two pulleys, string round a rim, speed ratio.

use super::{link, until_field, until_gone};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

/// A pulley of the drive to build, what it stands between, and which index its second tape is from.
struct Wanted {
    name: &'static str,
    flat: bool,
    at: [f64; 2],
    diameter: f64,
    /// The pulley behind it in the order, which the second tape is laid from.
    next: [f64; 2],
}

/// Each is added after the crank, so the last of the order comes first.
const WANTED: &[Wanted] = &[
    Wanted {
        name: "water pump",
        flat: false,
        at: [55.0, 210.0],
        diameter: 118.0,
        next: [240.0, 78.0],
    },
    Wanted {
        name: "idler",
        flat: true,
        at: [-75.0, 268.0],
        diameter: 70.0,
        next: [55.0, 210.0],
    },
    Wanted {
        name: "alternator",
        flat: false,
        at: [-205.0, 262.0],
        diameter: 56.0,
        next: [-75.0, 268.0],
    },
    Wanted {
        name: "tensioner",
        flat: true,
        at: [-104.0, 122.0],
        diameter: 70.0,
        next: [-205.0, 262.0],
    },
];

#[test]
fn six_pulleys_are_placed_by_tape_and_sized_by_string_and_ratio() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let wanted = phone.result("effective-length")?;
    phone.open(&link(&[("pulleys", "crank:rib:0,0:156;compressor:rib:240,78:112")]))?;
    phone.until("two pulleys", || Ok((phone.count(".grip")? == 2).then_some(())))?;
    for pulley in WANTED {
        phone.tap("#pulley-1")?;
        phone.tap("#add-after")?;
        phone.until_text(".panel h2", "Pulley 2 of")?;
        phone.type_into("pulley-name", pulley.name)?;
        phone.until_text("#pulley-2", pulley.name)?;
        if pulley.flat {
            phone.tap("[name='side'][value='back']")?;
            phone.until("the pulley turned", || {
                let turned = format!("{}:back:", pulley.name);
                Ok(phone.field("pulleys")?.contains(&turned).then_some(()))
            })?;
        }
        phone.tap(".panel .more summary")?;
        size(&phone, pulley)?;
        place(&phone, pulley)?;
    }
    phone.until_result("effective-length", wanted, 1e-4)?;
    for number in 1..=6 {
        phone.result(&format!("wrap-{number}"))?;
    }
    // The whole of it is in the link.
    phone.until_true(
        "the link to hold the drive",
        "return decodeURIComponent(location.hash).includes(document.getElementById('pulleys').value)",
    )?;
    phone.reload()?;
    phone.until_result("effective-length", wanted, 1e-4)
}

/// Sizes one by string, one by ratio, the others by their diameter.
fn size(phone: &Phone, pulley: &Wanted) -> Result<()> {
    match pulley.name {
        "water pump" => phone.type_into(
            "pulley-around",
            &format!("{:.2} mm", pulley.diameter * std::f64::consts::PI),
        )?,
        // Pitch radii: (156 + 2·2)/(56 + 2·2).
        "alternator" => phone.type_into("pulley-ratio", "2.66667")?,
        _ => phone.type_into("pulley-diameter", &format!("{}", pulley.diameter))?,
    }
    phone.until("the diameter measured", || {
        let held: f64 = phone.field("pulley-diameter")?.parse().unwrap_or(0.0);
        Ok(((held - pulley.diameter).abs() < 0.02).then_some(()))
    })
}

/// Lays the tape from the crank and from the pulley behind, and takes the right one of both places.
fn place(phone: &Phone, pulley: &Wanted) -> Result<()> {
    let [x, y] = pulley.at;
    let [next_x, next_y] = pulley.next;
    phone.choose("tape-from-1", "0")?;
    phone.choose("tape-from-2", "2")?;
    ensure!(phone.count("#place-1")? == 0, "places before there are two distances");
    phone.type_into("tape-1", &format!("{:.2}", x.hypot(y)))?;
    phone.type_into("tape-2", &format!("{:.2}", (x - next_x).hypot(y - next_y)))?;
    let offered = [phone.text("#place-1")?, phone.text("#place-2")?];
    ensure!(offered[0] != offered[1], "{offered:?}");
    let near = |text: &str| {
        let number = |from: &str| -> Option<f64> {
            let rest = text.split(from).nth(1)?.replace('−', "-");
            let digits: String = rest
                .trim_start()
                .chars()
                .take_while(|letter| letter.is_ascii_digit() || "-.".contains(*letter))
                .collect();
            digits.parse().ok()
        };
        number("at x")
            .zip(number(", y"))
            .is_some_and(|(at_x, at_y)| (at_x - x).hypot(at_y - y) < 1.0)
    };
    let right: Vec<usize> = (0..2).filter(|which| near(&offered[*which])).collect();
    ensure!(right.len() == 1, "{offered:?} for {x}, {y}");
    phone.tap(&format!("#place-{}", right[0] + 1))?;
    phone.until("the pulley at its place", || {
        let at = [phone.field("pulley-x")?, phone.field("pulley-y")?].map(|text| text.parse().unwrap_or(f64::NAN));
        Ok(((at[0] - x).hypot(at[1] - y) < 0.5).then_some(()))
    })
}

#[test]
fn a_measure_that_cannot_be_says_so_and_changes_nothing() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;
    phone.tap("#pulley-5")?;
    phone.tap(".panel .more summary")?;
    phone.type_into("tape-1", "20")?;
    phone.type_into("tape-2", "30")?;
    phone.until_text(".panel", "do not meet")?;
    ensure!(phone.count("#place-1")? == 0);
    for (key, typed, said) in [
        ("pulley-around", "-5", "above 0"),
        ("pulley-ratio", "0", "above 0"),
        ("tape-1", "far", "number"),
        ("pulley-name", "crank", "such as crank 2"),
        ("pulley-name", "pump: 2", "A name cannot have one of : ; , @ = in it"),
        ("pulley-name", "", "Type one, such as idler"),
    ] {
        phone.type_into(key, typed)?;
        phone.until_text(&format!("[id='{key}-error']"), said)?;
        phone.error(key)?;
        ensure!(phone.field(key)? == typed, "the text of {key} was lost");
        phone.until_true(
            "the focus to stay",
            &format!("return document.activeElement.id === '{key}'"),
        )?;
        phone.until_result("effective-length", length, 0.0)?;
    }
    Ok(())
}

#[test]
fn a_bad_place_or_diameter_is_kept_and_no_number_rests_on_the_old_one() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;
    phone.tap("#pulley-5")?;
    for (key, good, bad, said) in [
        ("pulley-diameter", "118", "", "Type millimetres"),
        ("pulley-diameter", "118", "0", "above 0"),
        ("pulley-diameter", "118", "-3", "above 0"),
        ("pulley-diameter", "118", "wide", "number"),
        ("pulley-x", "55", "", "Type millimetres"),
        ("pulley-x", "55", "left", "number"),
        ("pulley-y", "210", "up", "number"),
    ] {
        phone.type_into(key, bad)?;
        phone.until_text(&format!("[id='{key}-error']"), said)?;
        phone.error(key)?;
        ensure!(phone.field(key)? == bad, "the text of {key} was lost");
        phone.until_text("output.verdict", "typed for water pump cannot be used")?;
        phone.until_text("#pulley-5", "!")?;
        for gone in [
            "#effective-length",
            "[id='wrap-1']",
            "#take-up-low",
            "#arm-angle",
            "[id='slip-reserve-5']",
            ".belts li",
        ] {
            until_gone(&phone, gone)?;
        }
        ensure!(phone.count(".grip")? == 6, "the drawing went");
        phone.until_true(
            "the focus to stay",
            &format!("return document.activeElement.id === '{key}'"),
        )?;
        phone.type_into(key, good)?;
        phone.until_result("effective-length", length, 1e-12)?;
    }
    // A string round the rim gives the diameter that could not be read.
    phone.type_into("pulley-diameter", "wide")?;
    until_gone(&phone, "#effective-length")?;
    phone.tap(".panel .more summary")?;
    phone.type_into("pulley-around", "370.708 mm")?;
    until_field(&phone, "pulley-diameter", "118")?;
    phone.until_result("effective-length", length, 1e-6)?;
    // Left for another pulley, the bad text is gone and the last good one counts.
    phone.type_into("pulley-x", "left")?;
    until_gone(&phone, "#effective-length")?;
    phone.tap("#pulley-3")?;
    phone.until_result("effective-length", length, 1e-6)?;
    Ok(())
}
