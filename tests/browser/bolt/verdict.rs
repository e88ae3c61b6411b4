//! The verdict: one sentence in sight, for specs as they come off the page of a manual.

use super::{at, at_rest, link, tap_entry, until_read};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

/// Waits until the verdict is one of the contract's, and its sentence contains some words.
fn until_verdict(phone: &Phone, slug: &str, words: &str) -> Outcome {
    phone.until_text(&format!("#verdict[data-verdict='{slug}']"), words)
}

#[test]
fn a_person_asks_whether_to_believe_a_spec() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[])?;
    // Nothing given: it says what it waits for, and no more.
    phone.until_text(
        "#verdict",
        "For a verdict, give: Thread Class on the head Torque or spec",
    )?;
    ensure!(phone.attribute("#verdict", "data-verdict")?.is_none() && phone.count("data[id]")? == 0);

    // Two taps and a few keys. Common practice: 60 N·m on M10 is believable for 10.9, not for 8.8.
    tap_entry(&phone, "thread", "M10")?;
    tap_entry(&phone, "class", "10.9")?;
    phone.until_text("#verdict", "For a verdict, give: Torque or spec")?;
    phone.type_into("spec", "60")?;
    until_verdict(&phone, "ok", "Believable for 10.9")?;
    let said = phone.text("#verdict")?;
    for assumed in [
        "% of yield",
        "it clamps with",
        "kN",
        "assumed: hex head, friction 0.10 to 0.16, wrench within 4 %",
    ] {
        ensure!(said.contains(assumed), "`{assumed}` is not in: {said}");
    }
    // The share of yield stands in large digits above the sentence and is not said twice.
    ensure!(said.matches('%').count() == 2, "{said}");
    // On the screen without scrolling, digits and word to be read at arm's length.
    phone.until_true(
        "the verdict in sight",
        "const box = document.getElementById('verdict').getBoundingClientRect(); \
         const bar = document.querySelector('.tabs').getBoundingClientRect(); \
         const large = [...document.querySelectorAll('#verdict .number, #verdict .verdict-word')]; \
         return scrollY === 0 && box.bottom <= bar.top && large.length === 4 \
         && large.every(found => parseFloat(getComputedStyle(found).fontSize) >= 28)",
    )?;
    phone.screenshot("bolt-verdict")?;
    // With the keyboard up, and what is typed complete, the word and the share stand above the tabs.
    phone.tap("#spec")?;
    at_rest(&phone)?;
    phone.until_true(
        "the common entries away and the verdict's head in sight over a keyboard",
        "const foot = document.querySelector('.verdict-share').getBoundingClientRect().bottom; \
         const tabs = document.querySelector('.tabs').getBoundingClientRect().height; \
         return [...document.querySelectorAll('.field-thread .chip, .field-class .chip')] \
             .every(chip => !chip.checkVisibility({visibilityProperty: true})) && foot < 508 - tabs",
    )?;
    tap_entry(&phone, "class", "8.8")?;
    until_verdict(&phone, "past-yield", "Too much for 8.8")?;
    phone.type_into("spec", "38 N·m")?;
    until_verdict(&phone, "ok", "Believable for 8.8")?;
    phone.type_into("spec", "28 ft-lb")?;
    until_verdict(&phone, "ok", "Believable for 8.8")?;
    // A number that fits in another unit only.
    phone.type_into("spec", "340 ft-lb")?;
    until_verdict(&phone, "past-yield", "lbf·in would be believable: check the unit")?;
    phone.close()?.1.stays_home()
}

#[test]
fn every_verdict_is_reached() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "M10"), ("class", "10.9")])?;
    let headline = || phone.text("#verdict .verdict-word");
    for (spec, slug, word, words) in [
        ("10 N·m", "low", "Low", "so check the thread, the class and the figure"),
        ("10 N·m", "low", "Low", "Plugs with a sealing washer, covers"),
        ("60 N·m", "ok", "Believable", "below yield throughout"),
        ("70 N·m", "ok", "Believable, near the top", "near the top"),
        ("75 N·m", "high", "High", "with slippery threads up to 112"),
        ("600 N·m", "past-yield", "Would break", "the bolt would break"),
        ("90 N·m", "past-yield", "Past yield", "Too much for 10.9"),
    ] {
        phone.type_into("spec", spec)?;
        until_verdict(&phone, slug, words)?;
        ensure!(headline()?.ends_with(word), "{spec}: {}", headline()?);
    }
    // Four millimetres of aluminium thread give way before the bolt does.
    phone.choose("into", "a380")?;
    phone.until_text("#verdict", "The threads in the hole are not checked")?;
    phone.type_into("engaged", "4 mm")?;
    until_verdict(&phone, "strips", "The threads in the hole pull out at")?;
    ensure!(headline()?.ends_with("Strips the hole"), "{}", headline()?);
    ensure!(
        phone
            .text("#verdict")?
            .contains("of full threads would outlast the bolt")
    );
    // A nut beside threads in a hole: these count until they are cleared.
    phone.choose("joint", "nut")?;
    until_verdict(&phone, "strips", "A nut is chosen, yet")?;
    phone.type_into("engaged", "")?;
    until_verdict(&phone, "past-yield", "Too much")?;

    // Each verdict has a sign and a word, so that it shows without its colour.
    let word = phone.text(".verdict-word")?;
    ensure!(word.contains('✕') && word.contains("Past yield"), "{word}");
    // The grip takes nothing from it.
    let share = phone.text(".verdict-share")?;
    phone.type_into("grip", "30")?;
    phone.until("the grip to be worked with", || {
        Ok((phone.count("#bolt-stretch")? == 1).then_some(()))
    })?;
    ensure!(phone.text(".verdict-share")? == share, "{share}");

    // What no bolt holds is no share of yield, and the bar's words stand apart.
    phone.type_into("spec", "600 N·m")?;
    until_verdict(&phone, "past-yield", "600 lbf·in would be believable")?;
    phone.type_into("spec", "1200 N·m")?;
    until_verdict(&phone, "past-yield", "probably a misprint")?;
    let said = phone.text("#verdict")?;
    ensure!(said.contains("times yield") && !said.contains("% of yield"), "{said}");
    phone.until_true(
        "one word at most over the left end of the bar",
        "return document.querySelectorAll('#verdict text').length === 1",
    )?;
    Ok(())
}

#[test]
fn torque_plus_angle_says_replace() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[("thread", "M10"), ("class", "10.9"), ("spec", "10 N·m + 90°")],
    )?;
    // Common practice: a single-use spec, said before anything is worked out.
    phone.until_text("#verdict", "For a verdict, give: Grip")?;
    phone.tap(".jumps .chip:nth-of-type(3)")?;
    phone.until_text("#part-angle [data-caution='single-use']", "Fit a new one")?;
    // The strip says where one is.
    phone.until_true(
        "the strip to mark Angle, in sight",
        "const [here, more] = document.querySelectorAll('.jumps [aria-current]'); \
         const box = here && here.getBoundingClientRect(); \
         return !more && here && here.textContent === 'Angle' && box.left >= 0 && box.right <= innerWidth",
    )?;
    // What is missing is far below, and one tap away.
    phone.tap("#verdict .leads .chip")?;
    phone.until_true(
        "the field in sight with the focus",
        "const box = document.activeElement.getBoundingClientRect(); \
         return document.activeElement.id === 'grip' && box.top > 0 && box.bottom < innerHeight",
    )?;
    phone.type_into("grip", "40 mm")?;
    until_verdict(&phone, "past-yield", "Torque plus angle: fit a new bolt.")?;
    ensure!(phone.text("#verdict")?.contains("by design"));
    // Such a spec is no wrong one: neither the sign nor the plate of one.
    let word = phone.text(".verdict-word")?;
    ensure!(!word.contains('✕') && word.contains("by design"), "{word}");
    let plate = "return getComputedStyle(document.getElementById('verdict')).borderStyle";
    let border: String = phone.script(plate, vec![])?;
    ensure!(border == "solid", "{border}");
    until_read(&phone, "#part-clamp", "after the torque alone, before the angle")?;
    // A misprinted angle is doubted, with the sign of a wrong spec.
    phone.type_into("spec", "10 N·m + 900°")?;
    until_verdict(&phone, "past-yield", "probably a misprint")?;
    let word = phone.text(".verdict-word")?;
    ensure!(word.contains('✕') && !word.contains("by design"), "{word}");
    // Even where the angle stays below yield.
    phone.open(&link(&[
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "10 N·m + 30°"),
        ("grip", "40 mm"),
    ]))?;
    until_verdict(&phone, "ok", "fit a new bolt")
}

#[test]
fn a_number_without_a_unit_says_as_what_it_was_read() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "3/8-16"), ("class", "grade 8"), ("spec", "35")])?;
    until_verdict(&phone, "ok", "Believable")?;
    phone.until_text(".offer", "Read as 35 N·m")?;
    phone.until_true(
        "it to stand right below the field",
        "return document.querySelector('.offer').getBoundingClientRect().top \
         - document.getElementById('spec').getBoundingClientRect().bottom < 16",
    )?;
    let read = phone.result("clamp-mid")?;
    phone.tap(".offer .chip")?;
    phone.until("the unit to be taken", || {
        Ok((phone.count(".offer")? == 0).then_some(()))
    })?;
    ensure!(phone.field("spec")? == "35 lbf·ft");
    phone.until_result("clamp-mid", read * 1.355_817_948, 1e-9)
}
