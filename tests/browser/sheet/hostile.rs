//! Sheets whose every text would do harm in a careless page, by each way a sheet comes in: file, link
//! and keyboard. Text stays text, and stays on the screen.

use super::{choose, import, listed, new_sheet, until_kept};
use crate::hostile_texts::{TEXTS, harmless, watch};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

/// A sheet with a text in each of its entries.
fn sheet_of(number: usize, text: &str) -> Value {
    json!({
        "schema": 1, "id": format!("hostile-{number}"), "machine": text, "odometer": text, "date": text, "notes": text, "currency": text,
        "fasteners": [
            { "id": 1, "label": text, "thread": text, "class": text, "spec": text, "count": text, "head": text, "drive": text,
              "single_use": true, "readings": [text, text], "bolt": { "adapter": text, "adapter-angle": text, "wrench": text, "tool": text, "grip": text, "clamped": text } },
            // One that can be read, so that everything that follows from it is shown around the text.
            { "id": 2, "label": text, "thread": "M10", "class": "8.8", "spec": "45 N·m", "head": text, "drive": text, "readings": ["45", text] }
        ],
        "parts": [{ "id": 1, "label": text, "count": text, "price": text }, { "id": 2, "label": text, "price": "1" }],
        "checks": [{ "id": 1, "label": text, "before": text, "after": text }],
        "belts": [{ "id": 1, "label": text, "query": text }],
        "intervals": [
            { "id": 1, "label": text, "every_distance": text, "every_days": text, "done_at_odometer": text, "done_on": text },
            { "id": 2, "label": text, "every_days": "30", "done_on": "2025-03-31" }
        ]
    })
}

/// The entries of the bench that hold a text, by their ids.
const ENTRIES: &[&str] = &[
    "sheet-machine",
    "sheet-odometer",
    "sheet-date",
    "sheet-currency",
    "sheet-notes",
    "bolt-1-label",
    "bolt-1-thread",
    "bolt-1-class",
    "bolt-1-spec",
    "bolt-1-count",
    "bolt-1-head",
    "bolt-1-drive",
    "bolt-1-tool",
    "bolt-1-wrench",
    "bolt-1-adapter",
    "bolt-1-adapter-angle",
    "bolt-1-grip",
    "bolt-1-0-reading",
    "bolt-1-1-reading",
    "bolt-2-label",
    "bolt-2-1-reading",
    "part-1-label",
    "part-1-count",
    "part-1-price",
    "check-1-label",
    "check-1-before",
    "check-1-after",
    "drive-1-label",
    "interval-1-label",
    "interval-1-every-distance",
    "interval-1-done-at-odometer",
    "interval-1-every-days",
    "interval-1-done-on",
];

#[test]
fn hostile_files_are_shown_as_text() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    phone.open("#/sheet")?;
    let sheets: Vec<Value> = TEXTS
        .iter()
        .enumerate()
        .map(|(number, text)| sheet_of(number, text))
        .collect();
    import(&phone, &sheets)?;
    shows(&phone, "#incoming li", "strong", TEXTS)?;
    harmless(&phone).context("the preview of the file")?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", "brought in")?;
    phone.tap(".sheets ~ .chip")?;
    phone.until("all of the list", || {
        Ok((phone.count("[data-sheet]")? == TEXTS.len()).then_some(()))
    })?;
    shows(&phone, "[data-sheet]", "strong", TEXTS)?;
    harmless(&phone).context("the list")?;

    for (number, text) in TEXTS.iter().enumerate() {
        phone.open(&format!("#/sheet/hostile-{number}"))?;
        phone.until("the sheet", || Ok((phone.count("#bolt-2")? == 1).then_some(())))?;
        on_the_bench(&phone, text).with_context(|| format!("on the bench: {text:?}"))?;
        on_paper(&phone, text).with_context(|| format!("on paper: {text:?}"))?;
    }
    // Removed, its name stands beside the way back.
    listed(&phone)?;
    phone.tap("[data-sheet='hostile-0'] button[name='remove']")?;
    phone.until_text(".bring", &format!("{}: removed.", TEXTS[0]))?;
    harmless(&phone)
}

/// Waits until each text is shown in a part of some rows, whatever their order.
fn shows(phone: &Phone, rows: &str, part: &str, texts: &[&str]) -> Outcome {
    let script = "const there = new Set([...document.querySelectorAll(arguments[0])].map((row) => row.querySelector(arguments[1]).textContent)); \
         return arguments[2].filter((text) => !there.has(text))";
    phone.until(&format!("each text in a `{rows}`"), || {
        let missing: Vec<String> = phone.script(script, vec![json!(rows), json!(part), json!(texts)])?;
        Ok(missing.is_empty().then_some(()))
    })
}

fn on_the_bench(phone: &Phone, text: &str) -> Outcome {
    let open = "document.querySelectorAll('details').forEach((found) => { found.open = true })";
    phone.script::<()>(open, Vec::new())?;
    let other = "return arguments[0].filter((id) => { const field = document.getElementById(id); return !field || field.value !== arguments[1] })";
    phone.until("each entry to hold the text", || {
        let other: Vec<String> = phone.script(other, vec![json!(ENTRIES), json!(text)])?;
        Ok(other.is_empty().then_some(()))
    })?;
    let all = "return [...document.querySelectorAll('.sheet input:not([type]), .sheet input[type=text], .sheet textarea')].map((field) => field.id)";
    let all: Vec<String> = phone.script(all, Vec::new())?;
    // Second rows are there for what can be read beside the text.
    let second = ["bolt-2-", "part-2-", "interval-2-"];
    let missed: Vec<&String> = all
        .iter()
        .filter(|id| !second.iter().any(|row| id.starts_with(row)) && !ENTRIES.contains(&id.as_str()))
        .collect();
    ensure!(
        all.len() > ENTRIES.len() && missed.is_empty(),
        "{missed:?} hold no hostile text"
    );
    harmless(phone)?;
    phone.tap(".sheet > button.wide")?;
    phone.until("large type", || Ok((phone.count("[data-step]")? == 1).then_some(())))?;
    harmless(phone).context("in large type")?;
    phone.tap(".large > button.wide:last-child")?;
    phone.until("the bench", || Ok((phone.count("#bolt-2")? == 1).then_some(())))
}

fn on_paper(phone: &Phone, text: &str) -> Outcome {
    phone.look_as_on_paper(true)?;
    let cells = "return [...document.querySelectorAll('.print-only .paper h2, .print-only .paper td, .print-only .paper dd, .print-only .lines')].filter((cell) => cell.textContent.includes(arguments[0])).length";
    phone.until("the text on the paper", || {
        let found: usize = phone.script(cells, vec![json!(text)])?;
        // Machine, odometer, date, notes, two bolts, their specs and readings, parts, check.
        Ok((found >= 14).then_some(()))
    })?;
    harmless(phone)?;
    phone.look_as_on_paper(false)
}

/// Files that are no sheets, the text in each place of theirs that a sentence about them could repeat.
#[test]
fn hostile_files_that_are_no_sheets_are_refused_in_words() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    phone.open("#/sheet")?;
    for text in TEXTS {
        for file in [
            text.to_string(),
            json!({ "format": text, "schema": text, "sheets": text }).to_string(),
            json!({ "format": "fenderside-sheets", "schema": 1, "sheets": [{ "schema": 1, "id": text }] }).to_string(),
            json!({ "format": "fenderside-sheets", "schema": 1, "sheets": [{ "schema": 1, "id": "a", text.to_owned(): text }] }).to_string(),
] {
            refused(&phone, &file).with_context(|| format!("the file {file}"))?;
        }
    }
    // One that can be read takes the place of the sentence, and nothing came in before.
    import(&phone, &[sheet_of(0, "Larkfield van")])?;
    ensure!(phone.count("#sheets-trouble")? == 0);
    phone.tap("#import-leave")?;
    ensure!(listed(&phone)?.is_empty());
    phone.close()?.1.stays_home()
}

/// Brings a file in: a sentence says why it is not taken, or it is shown and waits.
fn refused(phone: &Phone, file: &str) -> Outcome {
    // A list that has just been opened says nothing of an earlier file.
    for (address, sign) in [("#/convert", "#q"), ("#/sheet", "#import-sheet")] {
        // Asked for again where the browser does not go: it takes no more than twenty a second.
        let go = "if (location.hash !== arguments[0]) location.hash = arguments[0]";
        phone.until(address, || {
            phone.script::<()>(go, vec![json!(address)])?;
            Ok((phone.count(sign)? == 1).then_some(()))
        })?;
    }
    ensure!(phone.count("#sheets-trouble")? == 0);
    let _file = choose(phone, file.as_bytes())?;
    phone.until("a sentence about the file", || {
        let said = phone.count("#sheets-trouble")? == 1 && !phone.text("#sheets-trouble")?.is_empty();
        // Some of the texts are names that a sheet may have.
        Ok((said || phone.count("#incoming")? == 1).then_some(()))
    })?;
    harmless(phone)
}

#[test]
fn hostile_links_are_shown_as_text() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    for (number, text) in TEXTS.iter().enumerate() {
        let link = link_of(&sheet_of(number, text))?;
        phone.open(&link)?;
        let shown = "const paper = document.querySelector('.paper-preview .paper'); \
             return !!paper && paper.querySelector('h2').textContent === arguments[0] \
             && paper.querySelector('.lines').textContent === arguments[0]";
        phone.until(&format!("the preview of {text:?}"), || {
            Ok(phone.script::<bool>(shown, vec![json!(text)])?.then_some(()))
        })?;
        harmless(&phone).with_context(|| format!("in a link: {text:?}"))?;
    }
    // None of them was kept by being looked at; kept on purpose, one is as harmless.
    ensure!(listed(&phone)?.is_empty());
    phone.open(&link_of(&sheet_of(0, TEXTS[0]))?)?;
    phone.tap("#save-copy")?;
    until_kept(&phone)?;
    on_the_bench(&phone, TEXTS[0])
}

/// The address of a sheet as another program would make it.
fn link_of(sheet: &Value) -> Result<String> {
    let sheet = shopmath::sheet::file::import(super::file_of(std::slice::from_ref(sheet)).as_bytes())?;
    let sheet = sheet.first().context("a file has its sheet")?;
    Ok(format!("#/s/{}", shopmath::sheet::link::encode(sheet)?))
}

/// What a keyboard of WebDriver can type: its letters are those of one UTF-16 unit, and a tab leaves the field.
fn can_be_typed(text: &str) -> bool {
    text.chars().all(|letter| letter >= ' ' && u32::from(letter) < 0xe000)
}

#[test]
fn hostile_texts_can_be_typed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    let id = new_sheet(&phone)?;
    phone.tap("#add-fastener")?;
    phone.tap("#add-part")?;
    // A new one on the way there has no watch yet.
    let typed: Vec<&str> = TEXTS.iter().copied().filter(|text| can_be_typed(text)).collect();
    ensure!(typed.len() > 70, "only {} of {} can be typed", typed.len(), TEXTS.len());
    let fields = [
        "sheet-machine",
        "sheet-notes",
        "bolt-1-label",
        "bolt-1-spec",
        "part-1-price",
    ];
    for (place, text) in typed.iter().enumerate() {
        let field = fields[place % fields.len()];
        phone.type_into(field, text)?;
        let found = phone.field(field)?;
        ensure!(found == *text, "{field} holds {found:?} instead of {text:?}");
        harmless(&phone).with_context(|| format!("typed into {field}: {text:?}"))?;
    }
    until_kept(&phone)?;
    ensure!(listed(&phone)? == [id]);
    harmless(&phone)
}
