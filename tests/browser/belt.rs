//! Belt: from pulleys as one measures them to a route, a belt and a judgement on its tension.

mod arm;
mod bad_input;
mod broken;
mod contract;
mod edit;
mod measured;

use anyhow::{Result, ensure};
use fenderside_tests::harness::{self, Outcome, Phone, Server};
use serde_json::json;

/// The demo drive's pulleys, as a person would type them.
const DEMO: &str = "crank:rib:0,0:156;tensioner:back:-104,122:70;alternator:rib:-205,262:56;\
     idler:back:-75,268:70;water pump:rib:55,210:118;compressor:rib:240,78:112";

/// A drive with every field filled in, in the order of the screen.
pub(crate) const FULL: &[(&str, &str)] = &[
    ("pulleys", DEMO),
    ("profile", "PK"),
    ("ribs", "6"),
    ("back", "2.3 mm"),
    ("belt", "6PK1460"),
    ("step", "10 mm"),
    ("tensioner", "tensioner@-128,44,55..95"),
    ("spring", "19 N·m"),
    ("stretch", "0.3 %"),
    ("seat", "0.1 mm"),
    ("strand", "227 mm"),
    ("frequency", "105 Hz"),
    ("mass", "0.13 kg/m"),
    ("tension", "280 N"),
    ("loads", "alternator=90 A 14 V; water pump=0.6 kW; compressor=12 N·m"),
    ("rpm", "1800 rpm"),
    ("mu", "0.35"),
    ("efficiency", "55 %"),
    ("offset", "1 mm"),
    ("apart", "300 mm"),
    ("measured", "1466 mm"),
    ("sink", "0.2 mm"),
    ("swing", "5 mm"),
];

/// The address of a drive.
fn link(fields: &[(&str, &str)]) -> String {
    harness::link("belt", fields)
}

/// Waits until there is no such element.
fn until_gone(phone: &Phone, selector: &str) -> Result<()> {
    let absent = format!("return !document.querySelector({})", json!(selector));
    phone.until_true(&format!("no `{selector}`"), &absent)
}

/// Waits until a field holds a text.
pub(crate) fn until_field(phone: &Phone, key: &str, wanted: &str) -> Result<()> {
    phone.until(&format!("`{key}` to hold \"{wanted}\""), || {
        Ok((phone.field(key)? == wanted).then_some(()))
    })
}

#[test]
fn the_demo_drive_opens_by_itself_and_says_what_it_is() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    phone.until_text("main > .note", "Demo")?;
    phone.until_text("main > .note", "Larkfield")?;
    phone.until_text("output.verdict", "6PK1460")?;
    ensure!(phone.count(".grip")? == 6 && phone.count("[aria-invalid]")? == 0);
    // Flat pulleys and ribbed ones differ in their line, not in their colour alone.
    let dashes = "const dash = (kind) => getComputedStyle(document.querySelector(`circle.${kind}`)).strokeDasharray; \
         return dash('back') !== 'none' && dash('ribbed') === 'none'";
    phone.until_true("flat rims broken, ribbed ones not", dashes)?;

    // The answer in sight without scrolling, its digits to be read at arm's length.
    let seen = "const found = document.querySelector('.verdict .number'); const box = found.getBoundingClientRect(); \
         return box.top >= 0 && box.bottom < innerHeight && parseFloat(getComputedStyle(found).fontSize) >= 28";
    phone.until_true("the length in sight", seen)?;

    // The ear hears of the belt nearest to the route, not of the first in the list.
    phone.until_text("p.spoken[role='status']", "Nearest belt 6PK1460.")?;

    // Each caution once, the one before hands go in ahead of the drawing.
    for slug in [
        "engine-off",
        "spring-force",
        "refit-order",
        "every-groove",
        "maker-decides",
    ] {
        ensure!(phone.count(&format!("[data-caution='{slug}']"))? == 1, "{slug}");
    }
    let ahead = "return !!(document.querySelector(\"[data-caution='engine-off']\") \
         .compareDocumentPosition(document.querySelector('.route')) & Node.DOCUMENT_POSITION_FOLLOWING)";
    phone.until_true("the engine off before the drawing", ahead)?;

    // A way to one's own drive and to one more pulley stands by the length, not at the foot, and no thumb
    // takes one for the other.
    let near = "const box = (id) => document.getElementById(id).getBoundingClientRect(); \
         const last = document.querySelector('output.verdict').getBoundingClientRect().bottom; \
         return box('begin-drive').top < last + 220 && box('begin-drive').top > box('add-pulley').bottom + 40";
    phone.until_true("the ways to begin and to add below the length, apart", near)?;
    ensure!(phone.text("#begin-drive")? == "Begin your own drive");

    // In an empty field, what counts stands plain, and what is an example says so.
    let hints = "return ['stretch', 'rpm'].map((id) => document.getElementById(id).placeholder)";
    phone.type_into("rpm", "")?;
    phone.until("an example and a default", || {
        let hints: Vec<String> = phone.script(hints, Vec::new())?;
        Ok((hints == ["such as 0.5 %", "2000 rpm"]).then_some(()))
    })?;
    phone.type_into("rpm", "2000 rpm")?;

    // Changed, it is the demo no longer; one's own drive can be begun, and the other brought back.
    phone.tap("#begin-drive")?;
    phone.until_text(".bring", "Your own drive is begun. The demo is put away.")?;
    until_gone(&phone, "[id='wrap-3']")?;
    // Whole where there is room; else no more of it is cut than the way back needs, above the tabs.
    let seen = "const box = (name) => document.querySelector(name).getBoundingClientRect(); \
         const [route, back, tabs] = ['.route', '.bring', '.tabs'].map(box); \
         const room = tabs.top - back.bottom; return room >= 0 && (route.top >= 0 || room < 20)";
    phone.until_true("the new drawing and the way back in sight", seen)?;
    ensure!(phone.count(".grip")? == 2 && !phone.text("main")?.contains("Larkfield"));
    // Once it is one's own, what puts it away says so.
    phone.tap("#add-pulley")?;
    phone.until_text("#begin-drive", "Start over")?;
    phone.tap("#begin-drive")?;
    phone.until_text(".bring", "A new drive is begun")?;
    phone.tap("#bring-back")?;
    phone.until_text("#pulley-3", "pulley 3")?;
    phone.tap("#demo-drive")?;
    phone.until_text("main > .note", "Demo")?;
    phone.tap("#begin-drive")?;
    phone.tap("#bring-back")?;
    phone.until_text("main > .note", "Demo")?;
    phone.tap("#begin-drive")?;
    phone.tap("#demo-drive")?;
    phone.until_text("main > .note", "Demo")
}

#[test]
fn the_link_is_the_drive() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open(&link(FULL))?;
    for &(key, text) in FULL {
        until_field(&phone, key, text)?;
    }
    phone.type_into("rpm", "2400 rpm")?;
    phone.until("the address to follow", || {
        Ok(phone.fragment()?.contains("rpm=2400%20rpm").then_some(()))
    })?;

    // The same link followed again brings the drive of the link.
    let follow = "location.hash = arguments[0]";
    phone.script::<()>(follow, vec![json!(link(FULL))])?;
    until_field(&phone, "rpm", "1800 rpm")?;
    phone.back()?;
    until_field(&phone, "rpm", "2400 rpm")?;

    // To another screen and back.
    phone.tap("nav a[href^='#/sheet']")?;
    phone.until_text("h1", "Sheet")?;
    phone.back()?;
    phone.until_text("h1", "Belt")?;
    until_field(&phone, "rpm", "2400 rpm")?;
    until_field(&phone, "pulleys", DEMO)
}

#[test]
fn a_drive_is_worked_out_without_a_network_and_nothing_is_asked_elsewhere() -> Outcome {
    let server = Server::start()?;
    let site = server.site().to_owned();
    let phone = Phone::fresh(&site)?;
    phone.open("#/belt")?;
    phone.until_kept()?;
    let online = phone.result("effective-length")?;
    server.kill()?;

    phone.reload()?;
    phone.until_result("effective-length", online, 0.0)?;
    phone.open(&link(FULL))?;
    phone.until_result("effective-length", online, 1e-12)?;
    phone.tap("#pulley-5")?;
    phone.type_into("pulley-diameter", "130")?;
    phone.until("a longer way", || {
        Ok((phone.result("effective-length")? > online).then_some(()))
    })?;
    let (_, traffic) = phone.close()?;
    traffic.stays_home()
}
