//! Files out of the page and into it: what goes out has the published form, and what comes in changes
//! nothing that is there.

use super::{bring_in, choose, everything, import, listed, new_sheet, record, until_kept};
use anyhow::{Context, Result, ensure};
use csv::StringRecord;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};
use std::fs::File;

const SCHEMA: &str = include_str!("../../../crates/shopmath/schema/sheet-1.schema.json");

/// The demo under another name, so that it is a sheet like others.
fn kept_demo(phone: &Phone) -> Result<String> {
    phone.open("#/sheet")?;
    phone.tap("#show-demo")?;
    until_kept(phone)?;
    phone.tap("#save-copy")?;
    phone.until("the copy", || {
        let id = super::open_id(phone)?;
        Ok((id != "demo-larkfield" && phone.count("#bolt-3")? == 1).then_some(id))
    })
}

/// Fails unless a file has the published form.
fn has_the_form(file: &Value) -> Outcome {
    let form = jsonschema::validator_for(&serde_json::from_str(SCHEMA)?)?;
    let faults: Vec<String> = form.iter_errors(file).map(|fault| fault.to_string()).collect();
    ensure!(faults.is_empty(), "{faults:?}");
    Ok(())
}

#[test]
fn files_of_the_page_have_the_published_form_and_come_back_whole() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = kept_demo(&phone)?;
    let (name, bytes) = phone.download("#export-sheet")?;
    let one: Value = serde_json::from_slice(&bytes)?;
    has_the_form(&one)?;
    ensure!(name == format!("{id}-sheet.json"), "{name}");
    ensure!(one["sheets"].as_array().map(Vec::len) == Some(1) && one["sheets"][0]["id"] == json!(id));
    // The form is one that can be missed.
    let mut other = one.clone();
    other["sheets"][0]["fasteners"][0]["label"] = json!(7);
    ensure!(has_the_form(&other).is_err());

    listed(&phone)?;
    phone.until_text("#backup-note", "Changes since the last backup")?;
    let (name, bytes) = phone.download("#export-sheet")?;
    let all: Value = serde_json::from_slice(&bytes)?;
    has_the_form(&all)?;
    ensure!(name.starts_with("sheets-") && name.ends_with(".json"), "{name}");
    ensure!(all["sheets"].as_array().map(Vec::len) == Some(2));
    phone.until_text("#sheets-done", "Backup of 2 handed to the browser")?;
    phone.reload()?;
    phone.until("the list", || Ok((phone.count("[data-sheet]")? == 2).then_some(())))?;
    ensure!(phone.count("#backup-note")? == 0, "it still reminds of a backup");

    // On another phone they are what they were, and say the same when they leave it again.
    let other = Phone::fresh(server.site())?;
    other.open("#/sheet")?;
    let _file = choose(&other, &bytes)?;
    other.until_text("#incoming", "new, will be added")?;
    other.tap("#import-add")?;
    other.until_text("#sheets-done", "2 brought in")?;
    let (_, again) = other.download("#export-sheet")?;
    let again: Value = serde_json::from_slice(&again)?;
    ensure!(again == all, "{again}");
    Ok(())
}

fn sheet(id: &str, notes: &str) -> Value {
    json!({ "schema": 1, "id": id, "machine": format!("Larkfield {id}"), "notes": notes })
}

#[test]
fn what_comes_in_is_shown_first_and_overwrites_nothing() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[sheet("same", "as here"), sheet("other", "as here")])?;
    let before = everything(&phone)?;

    let coming = [
        sheet("same", "as here"),
        sheet("other", "as there"),
        sheet("new", "from there"),
    ];
    import(&phone, &coming)?;
    for (row, words) in [
        (1, "Larkfield same : here already, word for word: stays as it is"),
        (2, "Larkfield other : differs from the one here: both will be kept"),
        (3, "Larkfield new : new, will be added"),
    ] {
        phone.until_text(&format!("#incoming li:nth-child({row})"), words)?;
    }
    ensure!(everything(&phone)? == before, "looking at a file has changed something");
    phone.tap("#import-leave")?;
    phone.until("the preview to go", || {
        Ok((phone.count("#incoming")? == 0).then_some(()))
    })?;
    ensure!(everything(&phone)? == before);

    import(&phone, &coming)?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", "2 brought in")?;
    let mut ids = listed(&phone)?;
    ids.sort_unstable();
    ensure!(ids == ["new", "other", "other-2", "same"], "{ids:?}");
    for (id, notes) in [
        ("same", "as here"),
        ("other", "as here"),
        ("other-2", "as there"),
        ("new", "from there"),
    ] {
        let found = record(&phone, id)?;
        let body: Value = serde_json::from_str(found["body"].as_str().context("a record has a body")?)?;
        ensure!(body["notes"] == json!(notes), "{id}: {body}");
    }
    for old in before["records"].as_array().context("records")? {
        ensure!(record(&phone, old["id"].as_str().unwrap_or_default())? == *old);
    }
    // Once more, and there is nothing left to bring in.
    import(&phone, &coming)?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", "Nothing to bring in: all of it is here already")?;
    ensure!(listed(&phone)?.len() == 4);
    Ok(())
}

#[test]
fn a_file_that_cannot_be_read_says_why_and_changes_nothing() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    listed(&phone)?;
    let before = everything(&phone)?;
    let whole = super::file_of(&[sheet("a", "good"), sheet("b", "good")]);
    let newer = whole.replacen("\"schema\":1,\"sheets\"", "\"schema\":9,\"sheets\"", 1);
    ensure!(newer != whole);
    for (bytes, words) in [
        (
            b"\x00\xff\xfe\x80 no text at all".as_slice(),
            "reading stopped at line 1, character 1",
        ),
        (b"", "Not a sheet file, or cut off"),
        (&whole.as_bytes()[..whole.len() / 2], "Not a sheet file, or cut off"),
        (b"{\"format\":\"something else\"}", "This is JSON, but not of sheets"),
        (newer.as_bytes(), "Written by a newer version of the page (form 9"),
        (
            whole.replacen("good", &"x".repeat(20_001), 1).as_bytes(),
            "Too much in notes of the sheet: at most 20000",
        ),
        (
            whole.replacen("\"id\":\"b\"", "\"id\":\"a\"", 1).as_bytes(),
            "There are two of sheet a",
        ),
        (
            whole.replacen("\"id\":\"a\"", "\"id\":\"../a\"", 1).as_bytes(),
            "The sheet's id is not",
        ),
        (
            whole.replacen("\"notes\":\"good\"", "\"notes\":7", 1).as_bytes(),
            "Sheet 1 cannot be read",
        ),
    ] {
        let _file = choose(&phone, bytes)?;
        phone.until_text("#sheets-trouble", words)?;
        ensure!(phone.count("#incoming")? == 0, "{words}");
    }
    // One byte more than is read; it takes no room on the disk.
    let file = tempfile::Builder::new().suffix(".json").tempfile()?;
    File::create(file.path())?.set_len(64_000_001)?;
    phone.choose_file("import-sheet", file.path())?;
    phone.until_text("#sheets-trouble", "This file is larger than the 64000 KB that are read")?;
    ensure!(everything(&phone)? == before);
    // A good one after all of them is read, and the words of the last bad one go.
    import(&phone, &[sheet("a", "good")])?;
    ensure!(phone.count("#sheets-trouble")? == 0);
    Ok(())
}

#[test]
fn tables_open_in_a_spreadsheet_and_run_nothing_there() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = kept_demo(&phone)?;
    phone.type_into("bolt-3-label", "=HYPERLINK(\"x\"), \"lower\"; cover")?;
    phone.type_into("part-1-price", "34,50")?;
    let (name, bytes) = phone.download("#export-bolts")?;
    ensure!(name == format!("{id}-bolts.csv"), "{name}");
    phone.until_text("#handed", &format!("{name} was handed to the browser."))?;
    ensure!(bytes.starts_with("\u{feff}".as_bytes()), "no byte order mark");
    let bolts = table(&bytes)?;
    ensure!(bolts.len() == 4);
    let row = |number: usize| bolts[number].iter().collect::<Vec<_>>();
    let header = "label,thread,class,spec,count,head,drive,single-use,replaced,done,readings";
    ensure!(row(0) == header.split(',').collect::<Vec<_>>());
    let idler = [
        "Idler pulley bolt",
        "M10x1.5",
        "8.8",
        "45 N·m",
        "2",
        "16 mm",
        "1/2 in",
        "",
        "",
        "yes",
        "45.5; 44.8",
    ];
    ensure!(row(1) == idler, "{:?}", row(1));
    ensure!(row(2)[7..9] == ["yes", ""], "{:?}", row(2));
    ensure!(row(3)[0] == "'=HYPERLINK(\"x\"), \"lower\"; cover", "{:?}", row(3));

    let (name, bytes) = phone.download("#export-parts")?;
    ensure!(name == format!("{id}-parts.csv"), "{name}");
    let parts = table(&bytes)?;
    let row = |number: usize| parts[number].iter().collect::<Vec<_>>();
    ensure!(row(0) == ["label", "count", "price", "currency", "done"]);
    ensure!(
        row(1) == ["Ribbed belt 6PK1460", "1", "34,50", "EUR", "yes"],
        "{:?}",
        row(1)
    );
    ensure!(parts.len() == 4);
    Ok(())
}

/// The lines of a table, as another reader reads them.
fn table(bytes: &[u8]) -> Result<Vec<StringRecord>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(bytes);
    Ok(reader.records().collect::<Result<_, _>>()?)
}
