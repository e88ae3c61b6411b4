//! A bad text in each field: kept, marked, said, and only what needs it is gone.

use super::{FULL, link, until_gone};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

/// Field, bad text, words of its sentence, a result that needs it, one that does not.
type Row = (&'static str, &'static str, &'static str, &'static str, &'static str);

const ROWS: &[Row] = &[
    (
        "pulleys",
        "a:rib:0,0",
        "four parts",
        "#effective-length",
        "#strand-tension",
    ),
    ("ribs", "6.5", "whole number", ".belts li", "#effective-length"),
    ("back", "thick", "number", "#effective-length", "#strand-tension"),
    ("belt", "6PX1", "", "#arm-angle", "#take-up-low"),
    ("step", "far", "number", ".belts li:nth-child(2)", "#effective-length"),
    (
        "tensioner",
        "arm@1",
        "no tensioner",
        "#take-up-low",
        "#effective-length",
    ),
    ("spring", "strong", "number", "#spring-tension", "#strand-tension"),
    ("stretch", "50 %", "cannot be", "#arm-share-worn", "#arm-share"),
    ("seat", "-1 mm", "cannot be", "#arm-share-worn", "#arm-share"),
    ("strand", "0", "cannot be", "#strand-tension", "#arm-angle"),
    ("frequency", "1e999 Hz", "", "#strand-tension", "#arm-angle"),
    ("mass", "1,234", "", "#strand-tension", "#arm-angle"),
    (
        "loads",
        "fan=1 kW",
        "No pulley is called",
        "[id='slip-reserve-1']",
        "#strand-tension",
    ),
    ("rpm", "fast", "number", "[id='slip-reserve-1']", "[id='speed-1']"),
    ("mu", "9", "cannot be", "[id='slip-reserve-1']", "#effective-length"),
    (
        "efficiency",
        "0 %",
        "cannot be",
        "[id='slip-reserve-1']",
        "#strand-tension",
    ),
    ("offset", "<b>1</b>", "", "#misalignment", "#effective-length"),
    ("apart", "NaN", "", "#misalignment", "#effective-length"),
    ("measured", "14 N", "", "#belt-growth", "#rib-loss-depth"),
    ("sink", "inf", "", "#rib-loss-depth", "#belt-growth"),
    ("swing", "300 mm", "cannot be", "#swing-angle", "#belt-growth"),
];

#[test]
fn a_bad_text_is_kept_and_takes_away_only_what_needs_it() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open(&link(FULL))?;
    for row in ROWS {
        let (key, ..) = *row;
        try_row(&phone, row)?;
        let good = FULL.iter().find(|(known, _)| *known == key).map(|(_, text)| *text);
        phone.type_into(key, good.unwrap_or_default())?;
        until_gone(&phone, &format!("[id='{key}-error']"))?;
    }
    // Assumed where nothing was measured, so it counts only there.
    let unmeasured: Vec<(&str, &str)> = FULL
        .iter()
        .filter(|(key, _)| !["strand", "frequency", "spring"].contains(key))
        .copied()
        .collect();
    phone.open(&link(&unmeasured))?;
    try_row(
        &phone,
        &("tension", "tight", "number", "[id='slip-reserve-1']", "#arm-angle"),
    )?;
    // A list takes only its entries; a link may hold anything.
    phone.open(&link(&[("pulleys", super::DEMO), ("profile", "PX")]))?;
    phone.until_text("#profile-error", "not known here")?;
    phone.error("profile")?;
    ensure!(phone.field("profile")? == "PX");
    until_gone(&phone, "#effective-length")
}

fn try_row(phone: &Phone, &(key, bad, says, gone, kept): &Row) -> Result<()> {
    phone.until(&format!("`{gone}` before {key} is spoilt"), || {
        Ok((phone.count(gone)? > 0).then_some(()))
    })?;
    phone.type_into(key, bad)?;
    phone.until_text(&format!("[id='{key}-error']"), says)?;
    phone.error(key)?;
    until_gone(phone, gone)?;
    ensure!(phone.field(key)? == bad, "the text of {key} was lost");
    ensure!(phone.count(kept)? > 0, "{kept} went with {key}={bad}");
    let words: String = phone.script("return document.querySelector('main').innerText", Vec::new())?;
    let figures: String = phone.script(
        "return [...document.querySelectorAll('data')].map((found) => found.value + ' ' + found.innerText).join(' ')",
        Vec::new(),
    )?;
    ensure!(
        !figures.contains("NaN") && !figures.to_lowercase().contains("inf"),
        "{key}={bad}: {figures}"
    );
    ensure!(!words.contains("undefined"), "{key}={bad}: {words}");
    Ok(())
}
