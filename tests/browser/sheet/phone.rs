//! One mend each of what a mechanic met who worked a sheet on a phone.

use super::{bring_in, new_sheet, until_kept};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

#[test]
fn a_bare_reading_is_in_the_unit_of_its_spec() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolt = json!({ "id": 1, "label": "Cover", "thread": "M8", "class": "8.8", "spec": "18 ft-lb", "done": true });
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "feet", "machine": "Van", "fasteners": [bolt] })],
    )?;
    phone.open("#/sheet/feet")?;
    phone.until_text("#progress", "Complete")?;
    ensure!(phone.attribute("#bolt-1-0-reading", "placeholder")?.as_deref() == Some("lbf·ft"));
    phone.type_into("bolt-1-0-reading", "18")?;
    phone.until_value(".judged data.deviation", 0.0, 1e-9)?;
    phone.until_text(".judged", "✓ within")?;
    phone.until_text(".judged", "read in lbf·ft")?;
    phone.until_text("#progress", "Complete")?;
    phone.type_into("bolt-1-0-reading", "18 N·m")?;
    phone.until_text(".judged", "✕ outside")?;
    ensure!(!phone.text(".judged")?.contains("read in"));
    Ok(())
}

#[test]
fn a_text_without_end_is_kept_as_far_as_a_sheet_holds_it() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.type_into(
        "q",
        &format!("{}: 45 N·m\nDrain plug 25 N·m", "Remove the cover ".repeat(20)),
    )?;
    phone.tap("#put-on-sheet")?;
    phone.until("the row", || Ok((phone.count("#bolt-1-label")? == 1).then_some(())))?;
    until_kept(&phone)?;
    let label = phone.field("bolt-1-label")?;
    ensure!(label.chars().count() == 300 && label.ends_with('…'), "{label}");
    new_sheet(&phone)?;
    phone.tap("#add-fastener")?;
    phone.type_into("bolt-1-label", &"Remove the cover. ".repeat(20))?;
    phone.type_into("bolt-1-spec", "44 lbs")?;
    until_kept(&phone)?;
    phone.reload()?;
    phone.until("the row", || Ok((phone.count("#bolt-1-label")? == 1).then_some(())))?;
    ensure!(phone.field("bolt-1-label")?.len() == 300 && phone.field("bolt-1-spec")? == "44 lbs");
    // A weight is no torque: nothing is made of it.
    ensure!(phone.count(".row-spec")? == 0 && phone.count("#bolt-1-spec-error")? == 1);
    Ok(())
}

#[test]
fn what_is_next_due_stands_in_the_unit_of_the_odometer() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let due = json!({ "id": 1, "every_distance": "5000", "done_at_odometer": "93 000 mi" });
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "miles", "odometer": "94 000 mi", "intervals": [due] })],
    )?;
    phone.open("#/sheet/miles")?;
    phone.until_result("next-due-distance", 98_000.0 * 1609.344, 1e-9)?;
    let shown = phone.text(".due")?;
    for words in ["98 000 mi", "Work without a name: due at 98 000 mi, 4000 mi to go"] {
        ensure!(shown.contains(words), "`{words}` is not in: {shown}");
    }
    ensure!(!shown.contains("km"), "{shown}");
    phone.type_into("interval-1-every-days", "2 years")?;
    phone.type_into("interval-1-done-on", "2024-02-29")?;
    phone.until_text(".due", "due on 2026-02-28")?;
    // An odometer that cannot be read takes its unit along: no kilometres are made of miles.
    phone.type_into("interval-1-done-at-odometer", "93 000")?;
    phone.type_into("sheet-odometer", "94,000 mi")?;
    phone.until_text(".due", "by distance not counted: the odometer cannot be read")?;
    phone.until("no next reading", || {
        Ok((phone.count("#next-due-distance")? == 0).then_some(()))
    })
}

#[test]
fn a_row_removed_comes_back_from_where_it_was() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let part = |id: u32| json!({ "id": id, "label": format!("Part {id}") });
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "parts", "parts": (1..=8).map(part).collect::<Vec<_>>() })],
    )?;
    phone.open("#/sheet/parts")?;
    phone.until("the parts", || Ok((phone.count("[data-part]")? == 8).then_some(())))?;
    // Twice at the same place, as a thumb does it.
    let twice = "const row = document.getElementById('part-6'); row.scrollIntoView(); \
         for (const at of ['part-6', 'part-7']) document.querySelector(`#${at} [name=remove]`)?.click()";
    phone.script::<()>(twice, Vec::new())?;
    phone.until_text("#undo", "Undo: removed Part 6")?;
    ensure!(phone.count("[data-part]")? == 7);
    phone.until_true(
        "the focus on the next row",
        "return document.activeElement.closest('li')?.id === 'part-7'",
    )?;
    let seen = "const undo = document.getElementById('undo').getBoundingClientRect(); \
         const tabs = document.querySelector('.tabs').getBoundingClientRect(); \
         return scrollY > 300 && undo.height >= 56 && undo.top > 0 && undo.bottom <= tabs.top";
    phone.until_true("undo in sight, above the tabs", seen)?;
    phone.tap("#undo")?;
    phone.until("it again", || Ok((phone.count("[data-part]")? == 8).then_some(())))?;
    phone.until_true(
        "the focus on the row that came back",
        "return document.activeElement.closest('li')?.id === 'part-6' && scrollY > 300",
    )?;
    // Out of the way of what is typed next.
    phone.tap("#part-1-done")?;
    phone.until_text("#undo", "Undo: ticked Part 1")?;
    phone.until_true("undo in sight, above the tabs", &seen.replace("scrollY > 300 && ", ""))?;
    let away = "return getComputedStyle(document.getElementById('undo')).position !== 'fixed'";
    phone.type_into("part-1-label", "Belt")?;
    phone.until_true("undo at the sheet's top", away)
}

#[test]
fn a_row_says_what_its_verdict_waits_for_and_takes_it() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolt =
        json!({ "id": 1, "label": "Crank pulley", "thread": "M14x1.5", "class": "10.9", "spec": "100 Nm + 90°" });
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "crank", "machine": "Van", "fasteners": [bolt] })],
    )?;
    phone.open("#/sheet/crank")?;
    phone.until_text(
        "#bolt-1 .row-answer",
        "For a verdict give: Grip (clamped thickness), under “Tools, adapter, grip” below.",
    )?;
    ensure!(phone.count("#bolt-1 .row-verdict")? == 0);
    phone.tap("#bolt-1 .more summary")?;
    phone.type_into("bolt-1-grip", "40 mm")?;
    phone.until("the verdict", || {
        Ok((phone.count("#bolt-1 .row-verdict")? == 1).then_some(()))
    })?;
    ensure!(!phone.text("#bolt-1 .row-answer")?.contains("For a verdict"));
    Ok(())
}

#[test]
fn bolt_by_bolt_begins_at_the_top_and_notes_a_new_bolt() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolt = |id: u32| {
        json!({ "id": id, "label": format!("Tensioner {id}"), "thread": "M10", "class": "10.9", "spec": "30 N·m + 90°", "count": "6",
            "readings": ["30", "30", "30", "30", "30", "30"], "single_use": true, "bolt": { "grip": "42 mm" } })
    };
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "steps", "machine": "Van", "fasteners": [bolt(1), bolt(2)] })],
    )?;
    phone.open("#/sheet/steps")?;
    phone.tap(".sheet > button.wide")?;
    for step in ["1", "2"] {
        phone.until("the step", || {
            Ok((phone.count(&format!("[data-step='{step}']"))? == 1).then_some(()))
        })?;
        phone.until_true("its top", "return scrollY === 0")?;
        phone.tap("#step-replaced")?;
        phone.until("no warning", || {
            Ok((phone.count(".large [data-caution]")? == 0).then_some(()))
        })?;
        phone.script::<()>("window.scrollTo(0, 9999)", Vec::new())?;
        phone.tap("#step-done")?;
    }
    phone.tap(".large > button.wide:last-child")?;
    phone.until_text("#progress", "✓ Complete: 2 of 2 done")
}
