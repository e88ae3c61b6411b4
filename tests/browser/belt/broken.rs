//! Each way to break a drive: the sentence, and the sign at the place on the drawing.

use super::{link, until_gone};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

/// Waits for the sentence on top and at the field, and for a sign near one of the pulleys named.
fn until_broken(phone: &Phone, words: &str, pulleys: &[usize]) -> Result<()> {
    phone.until_text("output.verdict", words)?;
    phone.until_text("#pulleys-error", words)?;
    phone.error("pulleys")?;
    until_gone(phone, "#effective-length")?;
    until_gone(phone, "[id='wrap-1']")?;
    // The circle just before a “!” is its sign.
    let near = "const centre = (found) => { const box = found.getBoundingClientRect(); \
             return [box.x + box.width / 2, box.y + box.height / 2, box.width / 2] }; \
         const signs = [...document.querySelectorAll('.route text')].filter((found) => found.textContent === '!').map(centre); \
         return arguments[0].some((pulley) => { \
             const [x, y, radius] = centre(document.querySelector(`.grip[data-pulley='${pulley}']`)); \
             return signs.some((sign) => Math.hypot(sign[0] - x, sign[1] - y) < radius + 30) })";
    phone.until(&format!("a sign for \"{words}\" near {pulleys:?}"), || {
        let seen: bool = phone.script(near, vec![json!(pulleys)])?;
        Ok(seen.then_some(()))
    })?;
    for pulley in pulleys {
        phone.until_text(&format!("[id='pulley-{}']", pulley + 1), "!")?;
    }
    Ok(())
}

#[test]
fn a_drive_breaks_under_the_hands_and_heals() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;

    // Too small for the ribs.
    phone.tap("#pulley-3")?;
    phone.type_into("pulley-diameter", "40")?;
    until_broken(
        &phone,
        "alternator is 40 mm across; a ribbed PK pulley needs 45 mm",
        &[2],
    )?;
    phone.type_into("pulley-diameter", "56")?;
    phone.until_result("effective-length", length, 1e-12)?;
    ensure!(phone.count("#pulleys-error")? == 0);

    // Dragged onto its neighbour.
    phone.drag(".grip[data-pulley='3']", [60.0, 20.0])?;
    until_broken(&phone, "idler and water pump overlap", &[3, 4])?;
    phone.screenshot("belt-broken")?;
    phone.type_into("pulley-x", "-75")?;
    phone.type_into("pulley-y", "268")?;
    phone.until_result("effective-length", length, 1e-12)?;

    // Reordered until the belt crosses itself.
    phone.open(&link(&[(
        "pulleys",
        "a:rib:0,0:80;d:rib:0,400:80;b:rib:400,400:80;c:rib:400,0:80",
    )]))?;
    let square = phone.result("effective-length")?;
    phone.tap("#pulley-2")?;
    phone.tap("#later")?;
    phone.until_text("output.verdict", "The belt crosses itself")?;
    phone.until_text("#pulleys-error", "The belt crosses itself")?;
    // The sign stands where the spans cross, in the middle of the square, no nearer to any pulley.
    let middle = "const box = document.querySelector('.route').getBoundingClientRect(); \
         return [...document.querySelectorAll('.route text')].filter((found) => found.textContent === '!').some((found) => { \
             const sign = found.getBoundingClientRect(); \
             return Math.hypot(sign.x + sign.width / 2 - box.x - box.width / 2, sign.y + sign.height / 2 - box.y - box.height / 2) < 70 })";
    phone.until_true("the sign where the spans cross", middle)?;
    ensure!(phone.count("polyline.trouble")? >= 2, "the spans are not marked");
    phone.tap("#earlier")?;
    phone.until_result("effective-length", square, 1e-12)
}

#[test]
fn links_to_broken_drives_say_what_is_wrong_where() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let rows: &[(&str, &str, &[usize])] = &[
        ("a:rib:0,0:150;b:rib:100,0:60", "a and b overlap", &[0, 1]),
        (
            "a:rib:0,0:150;idler:rib:150,20:50;b:rib:300,0:60;c:rib:100,250:120",
            "misses idler on its ribbed side",
            &[1],
        ),
        (
            "a:rib:0,0:100;b:rib:400,0:100;deep:back:60,130:150;c:rib:200,350:100",
            "from c to a runs through deep",
            &[2],
        ),
        (
            "a:rib:0,0:150;i:back:150,80:60;b:rib:300,0:60;c:rib:100,204:40",
            "c is 40 mm across; a ribbed PK pulley needs 45 mm",
            &[3],
        ),
    ];
    for &(pulleys, words, at) in rows {
        phone.open(&link(&[
            ("pulleys", pulleys),
            ("strand", "227 mm"),
            ("frequency", "105 Hz"),
        ]))?;
        until_broken(&phone, words, at)?;
        ensure!(phone.field("pulleys")? == pulleys, "the text was lost");
        // What does not need the route is still there.
        phone.result("strand-tension")?;
    }
    Ok(())
}
