//! Bad input in every field: the text stays, the field says what to type, what needs it goes, the
//! rest stays.

use super::{FULL, at, at_rest, link, read};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

/// One field's bad text: what needs it, and what does not.
struct Case {
    key: &'static str,
    gone: &'static [&'static str],
    stays: &'static [&'static str],
}

const fn case(key: &'static str, gone: &'static [&'static str], stays: &'static [&'static str]) -> Case {
    Case { key, gone, stays }
}

const HEAD: [&[&str]; 2] = [
    &[
        "clamp-mid",
        "torque-90",
        "nut-factor",
        "bolt-resilience",
        "strip-torque",
    ],
    &[
        "stress-area",
        "proof-load",
        "strip-load",
        "stop-torque",
        "wrench-setting",
    ],
];
const FRICTION: [&[&str]; 2] = [
    &[
        "clamp-mid",
        "torque-90",
        "nut-factor",
        "angle-clamp-mid",
        "strip-torque",
    ],
    &["strip-load", "bolt-resilience", "stop-torque", "wrench-setting"],
];
const PARTS: [&[&str]; 2] = [
    &[
        "angle-clamp-mid",
        "parts-resilience",
        "strip-margin",
        "heat-clamp-change",
    ],
    &[
        "clamp-mid",
        "yield-use-mid",
        "strip-load",
        "stop-torque",
        "heat-clearance",
    ],
];
const ADAPTER: [&[&str]; 2] = [
    &["wrench-setting", "reading-deviation"],
    &["clamp-mid", "angle-clamp-mid", "hex-size"],
];
const LENGTH: [&[&str]; 2] = [&["permanent-set", "permanent-set-share"], &["clamp-mid", "past-yield"]];

/// Fields one types into.
const TYPED: &[Case] = &[
    case(
        "thread",
        &["clamp-mid", "stress-area", "strip-load", "stop-torque", "hex-size"],
        &["wrench-setting", "reading-deviation", "permanent-set"],
    ),
    case(
        "class",
        &[
            "yield-use-mid",
            "proof-load",
            "angle-clamp-mid",
            "strip-load",
            "stop-torque",
        ],
        &["clamp-mid", "stress-area", "nut-factor", "wrench-setting"],
    ),
    case(
        "spec",
        &[
            "clamp-mid",
            "wrench-setting",
            "reading-deviation",
            "angle-clamp-mid",
            "strip-margin",
        ],
        &["torque-90", "strip-load", "stop-torque", "bolt-resilience"],
    ),
    case("bearing", HEAD[0], HEAD[1]),
    case("hole", HEAD[0], HEAD[1]),
    case("mu", FRICTION[0], FRICTION[1]),
    case("mu-head", FRICTION[0], FRICTION[1]),
    case(
        "tool",
        &["clamp-mid", "angle-clamp-mid", "reading-deviation", "strip-margin"],
        &["torque-90", "nut-factor", "wrench-setting", "bolt-resilience"],
    ),
    case("grip", PARTS[0], PARTS[1]),
    case("shank", PARTS[0], PARTS[1]),
    case("outer", PARTS[0], PARTS[1]),
    case(
        "engaged",
        &["strip-load", "strip-torque", "strip-margin"],
        &["engagement-required", "break-load", "angle-clamp-mid"],
    ),
    case(
        "boss",
        &["strip-load", "engagement-required", "strip-margin"],
        &["break-load", "angle-clamp-mid"],
    ),
    case("wrench", ADAPTER[0], ADAPTER[1]),
    case("adapter", ADAPTER[0], ADAPTER[1]),
    case("adapter-angle", ADAPTER[0], ADAPTER[1]),
    case("scale", &["tool-permissible"], &["wrench-setting", "reading-deviation"]),
    case(
        "reading",
        &["reading-deviation"],
        &["wrench-setting", "tool-permissible"],
    ),
    case("lever", &["hand-force"], &["stop-torque", "twist-yield-torque"]),
    case(
        "heat",
        &["heat-clearance", "heat-clamp-change"],
        &["stop-torque", "parts-resilience"],
    ),
    case("length-new", LENGTH[0], LENGTH[1]),
    case("length-now", LENGTH[0], LENGTH[1]),
];

/// Fields one chooses from: only a link can hold a bad text.
const LISTED: &[Case] = &[
    case("head", HEAD[0], HEAD[1]),
    case("clamped", PARTS[0], PARTS[1]),
    case("joint", PARTS[0], &["clamp-mid", "engagement-required"]),
    case(
        "into",
        &["strip-load", "engagement-required", "heat-clearance"],
        &["clamp-mid", "break-load"],
    ),
];

/// The state of the page after a bad text in a field.
fn check(phone: &Phone, case: &Case, bad: &str) -> Outcome {
    let Case { key, gone, stays } = case;
    phone.scroll_to(&format!("[id='{key}']"))?;
    phone.until_text(&format!("[id='{key}-error']"), "Type")?;
    phone.error(key)?;
    ensure!(phone.field(key)? == bad, "`{key}` lost its text");
    let described = phone.attribute(&format!("[id='{key}']"), "aria-describedby")?;
    ensure!(described == Some(format!("{key}-error")), "`{key}`: {described:?}");
    for id in *gone {
        ensure!(
            phone.count(&format!("[id='{id}']"))? == 0,
            "`{key}` is bad, `{id}` is there"
        );
    }
    for id in *stays {
        ensure!(
            phone.count(&format!("[id='{id}']"))? == 1,
            "`{key}` is bad, `{id}` went with it"
        );
    }
    ensure!(
        phone.count("[aria-invalid]")? == 1,
        "`{key}` put another field in error"
    );
    no_nonsense(phone, key)
}

/// No number on the page is anything but a number.
fn no_nonsense(phone: &Phone, key: &str) -> Outcome {
    let script = "const text = document.querySelector('main').textContent; \
         const words = text.match(/NaN|\\binf(inity)?\\b|Infinity|undefined|∞/gi) || []; \
         const values = [...document.querySelectorAll('data')].map(found => found.getAttribute('value')); \
         const points = [...document.querySelectorAll('svg *')].flatMap(mark => [...mark.attributes]) \
             .filter(found => /NaN|inf/i.test(found.value)); \
         return words.concat(values.filter(value => value === '' || !Number.isFinite(Number(value)))) \
             .concat(points.map(found => found.value))";
    let found: Vec<String> = phone.script(script, Vec::new())?;
    ensure!(found.is_empty(), "`{key}` is bad, and the page shows {found:?}");
    Ok(())
}

#[test]
fn every_field_keeps_a_bad_text_and_says_what_to_type() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    let results = |phone: &Phone| phone.count("data[id]");
    let all = results(&phone)?;
    ensure!(all >= 50, "{all} results of a bolt with every field");
    phone.tap(".more summary")?;
    // Fields are never replaced by others that look alike: that would take the focus out of them.
    let _: Option<bool> = phone.script(
        "for (const field of document.querySelectorAll('main input, main select')) field.known = true",
        Vec::new(),
    )?;
    for case in TYPED {
        let good = FULL
            .iter()
            .find(|(key, _)| *key == case.key)
            .map_or("", |(_, text)| text);
        phone.type_into(case.key, "rubbish")?;
        check(&phone, case, "rubbish")?;
        // Put right, everything is back.
        phone.type_into(case.key, good)?;
        phone.until(&format!("all results after `{}` is put right", case.key), || {
            Ok((results(&phone)? == all && phone.count("[aria-invalid]")? == 0).then_some(()))
        })?;
    }
    let same: bool = phone.script(
        "return [...document.querySelectorAll('main input, main select')].every(field => field.known)",
        Vec::new(),
    )?;
    ensure!(same, "a field was drawn anew while one typed");
    ensure!(TYPED.len() + LISTED.len() == FULL.len(), "a field is missing here");
    phone.close()?.1.stays_home()
}

#[test]
fn a_link_with_a_bad_entry_shows_it_and_offers_the_list() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    for case in LISTED {
        let fields: Vec<(&str, &str)> = FULL
            .iter()
            .map(|&(key, text)| (key, if key == case.key { "unobtainium" } else { text }))
            .collect();
        phone.open(&link(&fields))?;
        phone.until_true(
            "the link to be read",
            &format!("return document.getElementById('{}').value === 'unobtainium'", case.key),
        )?;
        check(&phone, case, "unobtainium")?;
    }
    // Choosing from the list puts it right.
    phone.choose("into", "steel")?;
    phone.until("no error to be left", || {
        Ok((phone.count("[aria-invalid]")? == 0).then_some(()))
    })?;
    phone.result("strip-load")?;
    Ok(())
}

/// Texts a hurried person types, the field, and what the page says.
const SLIPS: &[(&str, &str, &str)] = &[
    ("spec", "1,234 Nm", "Type 1234 or 1.234"),
    ("spec", "60 MPa", "a torque is wanted"),
    ("spec", "90°", "Type the torque first"),
    ("spec", "-5 Nm", "Type one from"),
    ("spec", "60 N·m + 9", "unit is missing"),
    ("spec", "45-35 Nm", "smaller end first"),
    ("spec", "", ""),
    ("thread", "M10x1.3", "M10×1.25"),
    ("thread", "M11", "no size in the table"),
    ("thread", "10", "M10×1.25"),
    ("class", "8", "grade 8"),
    ("class", "B7", "no strength class"),
    ("mu", "2", "from 0.01 to 1"),
    ("mu", "0.16..0.10", "smaller end first"),
    ("tool", "60", "0 % to 50 %"),
    ("tool", "0.04", "Type 4 %"),
    ("tool", "4 N·m", "a ratio is wanted"),
    ("grip", "0", "Type one from"),
    ("grip", "35 kg", "a length is wanted"),
    ("shank", "41 mm", "smaller than the grip"),
    ("engaged", "2d", "Type"),
    ("boss", "10", "Type"),
    ("lever", "4 mm", "Type one from"),
    ("adapter-angle", "400", "360°"),
    ("reading", "28 kN", "a torque is wanted"),
    ("heat", "-300 K", "Type one from"),
    ("heat", "100 °C", "80 K above a room at 20 °C"),
    ("length-now", "1e99 mm", "Type"),
];

#[test]
fn slips_are_named_in_words_of_the_trade() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    for &(key, slip, said) in SLIPS {
        phone.type_into(key, slip)?;
        if said.is_empty() {
            phone.until("an empty field to be no error", || {
                Ok((phone.count(&format!("[id='{key}-error']"))? == 0).then_some(()))
            })?;
        } else {
            phone.until_text(&format!("[id='{key}-error']"), said)?;
            phone.error(key)?;
        }
        ensure!(phone.field(key)? == slip);
        no_nonsense(&phone, key)?;
        let good = FULL
            .iter()
            .find(|(known, _)| *known == key)
            .map_or("", |(_, text)| text);
        phone.type_into(key, good)?;
        phone.until("it to be put right", || {
            Ok((phone.count("[aria-invalid]")? == 0).then_some(()))
        })?;
    }
    Ok(())
}

#[test]
fn a_text_the_page_can_mend_is_mended_with_one_tap() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "M10"), ("class", "10.9"), ("spec", "1,234 Nm")])?;
    phone.until_text("[id='spec-error']", "Type 1234 or 1.234")?;
    // It names the field that is in the way, wherever that is.
    phone.until_text("#verdict", "No verdict until this is put right: Torque or spec")?;
    phone.tap(".field-spec .chips .chip:nth-of-type(2)")?;
    phone.until_result("wrench-setting", 1.234, 1e-12)?;
    ensure!(phone.field("spec")? == "1.234 Nm");
    Ok(())
}

#[test]
fn a_class_behind_the_thread_is_taken_out_with_one_tap() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[("thread", "M10x1.25-10.9"), ("class", "10.9"), ("spec", "60 N·m")],
    )?;
    phone.until_text("#thread-error", "10.9 is a strength class: it goes into Class")?;
    phone.tap(".field-thread .chips .chip")?;
    phone.until_text("#verdict[data-verdict]", "of yield")?;
    ensure!(phone.field("thread")? == "M10x1.25" && phone.count("#thread-error")? == 0);
    Ok(())
}

#[test]
fn a_temperature_is_asked_about_and_settled_with_one_tap() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    // What comes into sight on the way is laid out a frame later, and moves the field.
    phone.scroll_to("#heat")?;
    phone.type_into("heat", "100 °C")?;
    phone.until_text(
        "[id='heat-error']",
        "100 °C is 80 K above a room at 20 °C: type 80 K. Type 100 K if",
    )?;
    ensure!(phone.count("#heat-clearance")? == 0);
    phone.tap(".field-heat .chips .chip:nth-of-type(1)")?;
    // A380 21.8 [pub] over steel 11.7 [pub], 10 mm, 80 K [calc].
    phone.until_result("heat-clearance", 10.1e-6 * 0.010 * 80.0, 1e-9)?;
    ensure!(phone.field("heat")? == "80 K" && phone.count("#heat-error")? == 0);
    Ok(())
}

#[test]
fn a_number_alone_shows_the_unit_it_is_read_in() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[
            ("thread", "M10"),
            ("class", "10.9"),
            ("spec", "60 N·m"),
            ("wrench", "15 in"),
        ],
    )?;
    phone.scroll_to("#adapter")?;
    ensure!(phone.count("#wrench-unit")? == 0, "a unit that is typed stands once");
    phone.type_into("adapter", "2")?;
    phone.until_text("#adapter-unit", "mm")?;
    ensure!(phone.attribute("#adapter", "aria-describedby")?.as_deref() == Some("adapter-unit"));
    phone.until_text("#part-wrench .notes", "Read as wrench 15 in, adapter 2 mm.")?;
    // A fraction is of an inch, or asked about.
    phone.type_into("adapter", "1/2")?;
    phone.until_text("#adapter-error", "a fraction is mostly of an inch")?;
    phone.tap(".field-adapter .chips .chip:nth-of-type(1)")?;
    phone.until_result("wrench-setting", 60.0 * 15.0 / 15.5, 1e-9)?;
    ensure!(phone.field("adapter")? == "1/2 in" && phone.count("#adapter-unit")? == 0);
    Ok(())
}

/// Where the fields and what follows them stand, as one text.
const PLACES: &str = "return JSON.stringify([...document.querySelectorAll('#thread, #class, #spec, .more, #verdict')] \
     .map(found => { const box = found.getBoundingClientRect(); return [found.id, box.top, box.left, box.width]; }))";

#[test]
fn a_text_that_is_only_begun_moves_nothing() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")])?;
    phone.until_text("#verdict[data-verdict]", "of yield")?;
    let places = |phone: &Phone| phone.script::<String>(PLACES, Vec::new());
    for (key, begun, good) in [
        ("thread", "M10x", "M10"),
        ("thread", "3/8-", "M10"),
        ("class", "10.", "10.9"),
        ("spec", "60 N", "60 N·m"),
        ("spec", "60 N·m (44 l", "60 N·m"),
    ] {
        // The common entries come and go with the focus alone.
        phone.type_into(key, good)?;
        at_rest(&phone)?;
        let still = places(&phone)?;
        phone.type_into(key, begun)?;
        // In error by the contract all the same: results that need it are away.
        phone.error(key)?;
        phone.until("the verdict to wait", || {
            Ok((phone.count("#verdict[data-verdict]")? == 0).then_some(()))
        })?;
        let now = places(&phone)?;
        ensure!(now == still, "`{begun}` moved the page: {now}, before {still}");
        phone.type_into(key, good)?;
        phone.until_text("#verdict[data-verdict]", "of yield")?;
    }
    // What completes it stands where the common entries do.
    phone.type_into("thread", "M10x")?;
    phone.until_text(
        "[id='thread-error']",
        "Only begun. Type on, such as M10×1.5 or M10×1.25.",
    )?;
    phone.screenshot("bolt-begun")?;
    phone.tap(".field-thread .chips .chip:nth-of-type(2)")?;
    phone.result("clamp-mid")?;
    ensure!(phone.field("thread")? == "M10×1.25");
    // And of a spec in the place of the verdict.
    phone.type_into("spec", "20 lb")?;
    phone.until_text(
        "#verdict #spec-error",
        "Only begun. Type on, such as 20 lbf·ft or 20 lbf·in.",
    )?;
    phone.tap("#verdict .chips .chip:nth-of-type(2)")?;
    phone.until_text("#verdict[data-verdict]", "of yield")?;
    ensure!(phone.field("spec")? == "20 lbf·in");
    // A complete one that is wrong is said aloud.
    phone.type_into("thread", "M10")?;
    at_rest(&phone)?;
    let still = places(&phone)?;
    phone.type_into("thread", "M10x1.3")?;
    phone.until_text(".field-thread .fault", "is no pitch of M10")?;
    ensure!(places(&phone)? != still, "an error of its own stands in sight");
    Ok(())
}

#[test]
fn an_error_of_the_head_opens_its_fields() -> Outcome {
    let server = Server::start()?;
    // No hex head is tabled for M18: the field to measure it in has to be in sight.
    let phone = at(&server, &[("thread", "M18"), ("class", "8.8"), ("spec", "200 N·m")])?;
    let open = |phone: &Phone| -> Result<bool> { Ok(phone.count(".more[open]")? == 1) };
    if phone.count("[aria-invalid]")? == 0 {
        // Were it tabled one day, a measured head without its measures is the same case.
        phone.tap(".more summary")?;
        phone.choose("head", "custom")?;
    }
    phone.until("the head's fields", || Ok(open(&phone)?.then_some(())))?;
    let said = read(&phone, "#verdict")?;
    ensure!(said.contains("No verdict until this is put right"), "{said}");
    phone.type_into("bearing", "25 mm")?;
    phone.type_into("hole", "20 mm")?;
    phone.until_text("#verdict[data-verdict]", "of yield")?;
    ensure!(open(&phone)?, "the fields stay open under the thumb");
    Ok(())
}
