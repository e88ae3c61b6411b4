//! What is worked out on another screen goes on a sheet with one tap.

use super::{bring_in, open_id, until_kept};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server, link};
use serde_json::{Value, json};

#[test]
fn a_bolt_worked_out_on_bolt_goes_on_a_new_sheet_and_the_next_on_the_open_one() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let cover = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "60 N·m"),
        ("adapter", "50 mm"),
    ];
    phone.open(&link("bolt", &cover))?;
    phone.until_text("#put-on-sheet", "Put on a new sheet")?;
    phone.tap("#put-on-sheet")?;
    let id = open_id(&phone)?;
    phone.until("the bolt", || Ok((phone.count("[data-fastener]")? == 1).then_some(())))?;
    ensure!(phone.field("bolt-1-thread")? == "M10" && phone.field("bolt-1-spec")? == "60 N·m");
    phone.tap("#bolt-1 .more summary")?;
    ensure!(phone.field("bolt-1-adapter")? == "50 mm");
    until_kept(&phone)?;

    // The tab leads back to the bolt as it was typed; the next one goes on the same sheet.
    phone.tap(".tabs a[href^='#/bolt']")?;
    phone.type_into("spec", "70 N·m")?;
    phone.until_text("#put-on-sheet", "Put on the open sheet")?;
    phone.tap("#put-on-sheet")?;
    ensure!(open_id(&phone)? == id, "another sheet");
    phone.until(
        "both bolts",
        || Ok((phone.count("[data-fastener]")? == 2).then_some(())),
    )?;
    ensure!(phone.field("bolt-1-spec")? == "60 N·m" && phone.field("bolt-2-spec")? == "70 N·m");
    until_kept(&phone)?;
    phone.back()?;
    phone.until("the bolt that was left", || {
        Ok((phone.field("spec").ok().as_deref() == Some("70 N·m")).then_some(()))
    })
}

#[test]
fn a_bolt_opened_from_its_row_comes_back_to_it_as_changed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.tap("#show-demo")?;
    phone.until("the demo", || Ok((phone.count("[data-fastener]")? == 3).then_some(())))?;
    let label = phone.field("bolt-2-label")?;
    let reading = phone.field("bolt-1-label")?;
    phone.tap("#bolt-2 button[name=open]")?;
    phone.type_into("spec", "37 N·m")?;
    phone.type_into("grip", "33 mm")?;
    phone.until_text("#put-back", &format!("Put back in {label}"))?;
    phone.tap("#put-back")?;
    phone.until("the row as changed", || {
        Ok((phone.field("bolt-2-spec").ok().as_deref() == Some("37 N·m")).then_some(()))
    })?;
    ensure!(phone.count("[data-fastener]")? == 3, "a row was added");
    ensure!(phone.field("bolt-2-label")? == label && phone.field("bolt-1-label")? == reading);
    phone.until_text("#undo", &format!("Undo: changed {label}"))?;
    until_kept(&phone)?;

    // Once it is back nothing is lent any more.
    phone.tap(".tabs a[href^='#/bolt']")?;
    phone.until_text("#put-on-sheet", "Put on the open sheet")?;
    ensure!(phone.count("#put-back")? == 0);
    phone.back()?;
    phone.tap("#undo")?;
    phone.until("the row as it was", || {
        Ok((phone.field("bolt-2-spec").ok().as_deref() != Some("37 N·m")).then_some(()))
    })
}

#[test]
fn a_bolt_comes_back_to_its_row_as_another_tab_has_left_it() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.tap("#show-demo")?;
    until_kept(&phone)?;
    phone.tap("#bolt-2 button[name=open]")?;
    phone.until("Bolt", || Ok((phone.count("#put-back")? == 1).then_some(())))?;
    phone.new_tab()?;
    phone.open("#/sheet/demo-larkfield")?;
    phone.type_into("bolt-2-label", "Upper bolt")?;
    until_kept(&phone)?;
    phone.turn_to(0)?;
    phone.type_into("spec", "37 N·m")?;
    phone.tap("#put-back")?;
    phone.until("the row as changed", || {
        Ok((phone.field("bolt-2-spec").ok().as_deref() == Some("37 N·m")).then_some(()))
    })?;
    ensure!(phone.field("bolt-2-label")? == "Upper bolt");
    until_kept(&phone)?;
    ensure!(phone.fragment()? == "#/sheet/demo-larkfield", "a conflict");
    Ok(())
}

#[test]
fn a_list_of_specs_goes_on_a_sheet_with_one_tap() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.type_into(
        "q",
        "Front cover\n- Idler pulley M10 8.8: 45 N·m\nTensioner 30 Nm + 90°\nOil 1.5 qt",
    )?;
    phone.tap("#put-on-sheet")?;
    open_id(&phone)?;
    phone.until(
        "both bolts",
        || Ok((phone.count("[data-fastener]")? == 2).then_some(())),
    )?;
    let row = |number: u32| -> anyhow::Result<Vec<String>> {
        ["label", "thread", "class", "spec"]
            .iter()
            .map(|key| phone.field(&format!("bolt-{number}-{key}")))
            .collect()
    };
    ensure!(
        row(1)? == ["Idler pulley M10 8.8", "M10", "8.8", "45 N·m"],
        "{:?}",
        row(1)
    );
    ensure!(row(2)? == ["Tensioner", "", "", "30 N·m + 90°"], "{:?}", row(2));
    until_kept(&phone)
}

#[test]
fn bolts_that_a_full_sheet_has_no_room_for_are_counted() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolts: Vec<Value> = (1..500).map(|id| json!({ "id": id })).collect();
    bring_in(&phone, &[json!({ "schema": 1, "id": "full", "fasteners": bolts })])?;
    phone.open("#/sheet/full")?;
    until_kept(&phone)?;
    phone.tap(".tabs a[href^='#/convert']")?;
    phone.type_into("q", "Cover 10 N·m\nPump 20 N·m\nTensioner 30 N·m")?;
    phone.tap("#put-on-sheet")?;
    phone.until_text("#kept-notice", "Not added: 2 of 3 bolts")?;
    until_kept(&phone)
}
