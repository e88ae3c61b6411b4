//! What keeps a sheet open: bolts not replaced first, five reasons in sight, the rest one tap away.

use super::bring_in;
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

/// Two bolts whose reading is far from 25 N·m, then six for single use that were not replaced. All are
/// ticked, so that each has one reason.
fn sheet() -> Value {
    let bolt = |id: usize| {
        let (label, spec) = match id {
            1 | 2 => (format!("Cover {id}"), "25 N·m"),
            _ => (format!("Stretch {id}"), "30 N·m + 90°"),
        };
        let readings = if id <= 2 { vec!["40 N·m"] } else { Vec::new() };
        json!({ "id": id, "label": label, "thread": "M8", "class": "10.9", "spec": spec, "readings": readings, "single_use": id > 2, "done": true })
    };
    json!({ "schema": 1, "id": "reasons", "machine": "Larkfield van", "fasteners": (1..=8).map(bolt).collect::<Vec<_>>() })
}

/// What is read at the top of the sheet: the reasons in sight, and those behind the fold.
fn reasons(phone: &Phone) -> Result<(Vec<String>, Vec<String>)> {
    let list = "const texts = (selector) => [...document.querySelectorAll(selector)].map((item) => item.textContent); \
         return [texts('.progress > .reasons > li'), texts('.progress details .reasons > li')]";
    phone.script(list, Vec::new())
}

#[test]
fn five_reasons_are_in_sight_and_what_was_not_replaced_comes_first() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[sheet()])?;
    phone.tap("[data-sheet='reasons'] a")?;
    phone.until_text("#progress", "8 of 8 done")?;
    ensure!(phone.attribute("#progress", "data-complete")?.as_deref() == Some("false"));

    let not_replaced = |id: usize| format!("Stretch {id}: single-use and not replaced");
    let outside = |id: usize| format!("Cover {id}: a reading is outside target and tolerance");
    let (sight, folded) = reasons(&phone)?;
    ensure!(sight == [3, 4, 5, 6, 7].map(not_replaced), "in sight: {sight:?}");
    ensure!(
        folded == [not_replaced(8), outside(1), outside(2)],
        "folded: {folded:?}"
    );
    phone.until_text(".progress summary", "and 3 more")?;
    phone.tap(".progress summary")?;
    phone.until_text(".progress details[open]", &outside(2))?;

    // With a new bolt fitted one reason goes, and the next comes into sight.
    phone.tap("[id='bolt-3-replaced']")?;
    phone.until_text(".progress summary", "and 2 more")?;
    let (sight, folded) = reasons(&phone)?;
    ensure!(sight == [4, 5, 6, 7, 8].map(not_replaced), "in sight: {sight:?}");
    ensure!(folded == [1, 2].map(outside), "folded: {folded:?}");
    Ok(())
}

/// Two readings beside each other stand level, whatever is said below one of them.
#[test]
fn readings_beside_each_other_stand_level() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolt = json!({ "id": 1, "label": "Cover", "thread": "M8", "class": "10.9", "spec": "25 N·m", "count": "2", "readings": ["40 N·m", "25 N·m"] });
    let sheet = json!({ "schema": 1, "id": "level", "machine": "Larkfield van", "fasteners": [bolt] });
    bring_in(&phone, &[sheet])?;
    phone.tap("[data-sheet='level'] a")?;
    phone.until("two readings", || {
        Ok((phone.count(".readings input")? == 2).then_some(()))
    })?;
    let script = "const row = document.querySelector('.readings'); row.scrollIntoView(); \
         return [...row.querySelectorAll('input')].map((input) => input.getBoundingClientRect()).map(({ top, left }) => [top, left])";
    let places: Vec<(f64, f64)> = phone.script(script, Vec::new())?;
    let [(first, left), (second, right)] = *places.as_slice() else {
        anyhow::bail!("not two readings: {places:?}");
    };
    ensure!(left < right, "they do not stand beside each other: {places:?}");
    ensure!((first - second).abs() < 0.5, "they do not stand level: {places:?}");
    Ok(())
}
