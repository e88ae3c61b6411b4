//! What is removed comes back, the demo goes with one tap, and a search finds what a person remembers.

use super::{everything, fill_small_store, import, listed, new_sheet, note, until_kept, until_notes};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

#[test]
fn a_removed_sheet_comes_back_as_it_was() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let first = new_sheet(&phone)?;
    note(&phone, "first")?;
    let second = new_sheet(&phone)?;
    phone.type_into("sheet-machine", "Larkfield van")?;
    note(&phone, "second")?;
    let ids = listed(&phone)?;
    ensure!(ids.len() == 2 && ids.contains(&first) && ids.contains(&second));
    let before = everything(&phone)?;

    phone.tap(&format!("[data-sheet='{second}'] button[name='remove']"))?;
    phone.until_text(".bring", "Larkfield van: removed.")?;
    phone.until(
        "it to be gone",
        || Ok((phone.count("[data-sheet]")? == 1).then_some(())),
    )?;
    ensure!(everything(&phone)?["records"].as_array().map(Vec::len) == Some(1));
    // Also after a look at another screen.
    phone.follow("#/bolt")?;
    phone.until("Bolt", || Ok((phone.count("#thread")? == 1).then_some(())))?;
    phone.tap(".tab:last-child")?;
    phone.tap("#undo")?;
    phone.until("it again", || Ok((phone.count("[data-sheet]")? == 2).then_some(())))?;
    ensure!(phone.count("#undo")? == 0);
    ensure!(everything(&phone)? == before, "it is not what it was");
    phone.tap(&format!("[data-sheet='{second}'] a"))?;
    until_notes(&phone, "second")
}

#[test]
fn the_demo_says_what_it_is_and_goes_with_one_tap() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let mine = new_sheet(&phone)?;
    listed(&phone)?;
    phone.tap("#show-demo")?;
    until_kept(&phone)?;
    phone.until_text(".bring", "Demo: an invented van with example figures")?;
    ensure!(phone.field("sheet-machine")?.contains("(invented)"));
    phone.tap(".sheet-head a")?;
    phone.until_text("[data-sheet='demo-larkfield']", "demo")?;
    ensure!(phone.count("#show-demo")? == 0, "there would be two");

    phone.tap("[data-sheet='demo-larkfield'] a")?;
    phone.tap("#remove-demo")?;
    phone.until("the list without it", || {
        Ok((phone.fragment()? == "#/sheet" && phone.count("#show-demo")? == 1).then_some(()))
    })?;
    ensure!(listed(&phone)? == [mine]);
    ensure!(everything(&phone)?["records"].as_array().map(Vec::len) == Some(1));
    Ok(())
}

/// What is nowhere but in the tab goes with its sheet, and comes back with it.
#[test]
fn a_removed_sheet_takes_along_what_could_not_be_saved() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let other = new_sheet(&phone)?;
    let id = new_sheet(&phone)?;
    note(&phone, "saved")?;
    fill_small_store(&phone)?;
    let refuse = "IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError') }";
    phone.script::<()>(refuse, Vec::new())?;
    phone.type_into("sheet-notes", "nowhere but in this tab")?;
    phone.until_text("#kept", "Not saved")?;
    phone.tap(".sheet-head a")?;
    phone.tap(&format!("[data-sheet='{id}'] button[name='remove']"))?;
    phone.until_text(".bring", "removed.")?;
    let (_, bytes) = phone.download("#export-sheet")?;
    let all: Value = serde_json::from_slice(&bytes)?;
    ensure!(all["sheets"].as_array().map(Vec::len) == Some(1), "{all}");
    ensure!(all["sheets"][0]["id"] == json!(other), "{all}");

    phone.tap("#undo")?;
    phone.tap(&format!("[data-sheet='{id}'] a"))?;
    until_notes(&phone, "nowhere but in this tab")
}

#[test]
fn what_is_typed_while_a_sheet_is_being_removed_does_not_bring_it_back() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.tap("#show-demo")?;
    until_kept(&phone)?;
    // Another one who writes keeps the page waiting, until what is typed would be saved.
    let hold = "return (async () => { const opening = indexedDB.open('fenderside'); \
         await new Promise((done) => { opening.onsuccess = done }); \
         const store = opening.result.transaction(['records', 'heads'], 'readwrite').objectStore('records'); \
         const again = () => { if (!window.free) store.count().onsuccess = again }; again() })()";
    phone.script::<()>(hold, Vec::new())?;
    phone.tap("#remove-demo")?;
    let late = "const notes = document.getElementById('sheet-notes'); \
         if (notes) { notes.value = 'late'; notes.dispatchEvent(new Event('input', { bubbles: true })) } \
         setTimeout(() => { window.free = true }, 1500)";
    phone.script::<()>(late, Vec::new())?;
    phone.until("the list without it", || {
        Ok((phone.fragment()? == "#/sheet" && phone.count("#show-demo")? == 1).then_some(()))
    })?;
    let left = everything(&phone)?;
    ensure!(left["texts"] == json!([]) && left["records"] == json!([]), "{left}");
    Ok(())
}

#[test]
fn a_search_finds_by_machine_bolt_part_check_and_note() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    import(&phone, &yard())?;
    phone.tap("#import-add")?;
    phone.until("all three", || Ok((phone.count("[data-sheet]")? == 3).then_some(())))?;
    for (query, wanted) in [
        ("larkfield", &["belts", "brakes"][..]),
        ("TENSIONER", &["belts"]),
        ("m12X1.5", &["brakes"]),
        ("35 n·m", &["brakes"]),
        ("coolant hose", &["pump"]),
        ("6pk1453", &["belts"]),
        ("wobble", &["pump"]),
        ("Österby", &["pump"]),
        ("osterby", &["pump"]),
        ("pümp", &["pump"]),
        ("seized", &["brakes"]),
        ("every-spring", &["belts"]),
        ("larkfield seized", &["brakes"]),
        ("larkfield coolant", &[]),
        ("", &["belts", "brakes", "pump"]),
    ] {
        phone.type_into("find", query)?;
        phone.until(&format!("\"{query}\" to find {wanted:?}"), || {
            let mut found = shown(&phone)?;
            found.sort_unstable();
            Ok((found == wanted).then_some(()))
        })?;
        ensure!(
            wanted.is_empty() == phone.text(".sheet")?.contains("No sheet has all these words."),
            "{query}"
        );
    }
    Ok(())
}

fn shown(phone: &Phone) -> Result<Vec<String>> {
    let ids = "return [...document.querySelectorAll('[data-sheet]')].map((found) => found.dataset.sheet)";
    phone.script(ids, Vec::new())
}

fn yard() -> [Value; 3] {
    [
        json!({ "schema": 1, "id": "belts", "machine": "Larkfield van", "date": "2025-03-31",
            "fasteners": [{ "id": 1, "label": "Tensioner bolt", "thread": "M10x1.5" }],
            "parts": [{ "id": 1, "label": "Ribbed belt 6PK1453" }], "intervals": [{ "id": 1, "label": "every-spring look" }] }),
        json!({ "schema": 1, "id": "brakes", "machine": "Larkfield van, second of the yard", "notes": "Left caliper pin SEIZED, heat used",
            "fasteners": [{ "id": 1, "label": "Caliper bracket", "thread": "M12x1.5", "spec": "35 N·m" }] }),
        json!({ "schema": 1, "id": "pump", "machine": "Yard pump, ÖSTERBY", "parts": [{ "id": 1, "label": "Coolant hose, lower" }],
            "checks": [{ "id": 1, "label": "Pulley wobble", "before": "0.3 mm" }] }),
    ]
}
