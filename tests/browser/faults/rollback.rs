//! A newer version has kept sheets in its way, and then the host goes back to this one: it starts, says
//! what it cannot read and hands it over, leaves it as it is, and works on.
//!
//! What the newer version would keep is written past the page, as there is none yet.

use super::{look_for_an_update, phone_that_keeps, running, take_it, works};
use crate::sheet::{
    everything, in_database, listed, new_sheet, note, record, saved_as_found, until_kept, until_notes, write_record,
};
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Copy, Outcome, Phone, Server};
use serde_json::{Value, json};

/// Raises the number of the database, and takes away and adds stores.
const RAISE: &str = "return (async (number, gone, added) => { const raise = indexedDB.open('fenderside', number); \
     raise.onupgradeneeded = () => { for (const name of gone) raise.result.deleteObjectStore(name); \
     for (const name of added) raise.result.createObjectStore(name, { keyPath: 'id' }) }; \
     await new Promise((good, bad) => { raise.onsuccess = good; raise.onerror = () => bad(raise.error); raise.onblocked = bad }); \
     raise.result.close() })(...arguments)";

fn raise(phone: &Phone, number: u32, gone: &[&str], added: &[&str]) -> Outcome {
    phone.script(RAISE, vec![json!(number), json!(gone), json!(added)])
}

/// Writes into a store past the page.
fn put(phone: &Phone, store: &str, value: &Value) -> Outcome {
    let put = "const work = base.transaction(inputs[0], 'readwrite'); work.objectStore(inputs[0]).put(inputs[1]); await ended(work)";
    in_database(phone, put, vec![json!(store), value.clone()]).map(|_| ())
}

/// A sheet as a version with another form keeps it.
fn newer(id: &str, rev: u32) -> Value {
    json!({ "schema": 2, "id": id, "rev": rev, "updated": "2031-01-01", "body": "{\"schema\":2,\"of\":\"a form not known yet\"}", "more": [1, 2] })
}

#[test]
fn going_back_to_this_version_leaves_what_a_newer_one_kept_and_works_on() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = phone_that_keeps(server.site())?;
    let old = new_sheet(&phone)?;
    note(&phone, "of this version")?;
    let typed_on = new_sheet(&phone)?;
    note(&phone, "saved, then typed on in the newer version")?;
    let moved = new_sheet(&phone)?;
    note(&phone, "soon kept in the newer form")?;

    // The newer version: it runs, raises the number, adds a store, keeps one sheet anew and one in
    // its form, types on another, and knows settings that this one does not.
    copy.deploy_another("second")?;
    ensure!(look_for_an_update(&phone)? == "installed");
    take_it(&phone, Some("second"))?;
    phone.open("#/convert")?;
    raise(&phone, 2, &[], &["machines"])?;
    write_record(&phone, &newer("of-the-newer", 3))?;
    // Its head is one that this version can read.
    let rewritten = newer(&moved, 9);
    put(&phone, "records", &rewritten)?;
    let machine = json!({ "id": "van", "text": "Larkfield" });
    put(&phone, "machines", &machine)?;
    let texts = "localStorage.setItem('fenderside.draft.' + arguments[0], JSON.stringify(arguments[1])); \
         localStorage.setItem('fenderside.theme', 'dusk'); localStorage.setItem('fenderside.tools', '{\"sets\":[]}')";
    phone.script::<()>(texts, vec![json!(typed_on), newer(&typed_on, 2)])?;
    let before = everything(&phone)?;

    copy.roll_back()?;
    ensure!(look_for_an_update(&phone)? == "installed");
    take_it(&phone, None)?;
    phone.until_kept()?;
    works(&phone)?;

    // The list shows what it can read and says what it cannot.
    let shown = listed(&phone)?;
    ensure!(
        shown.contains(&old) && !shown.contains(&"of-the-newer".to_owned()),
        "{shown:?}"
    );
    for (key, whole) in [
        ("of-the-newer".to_owned(), newer("of-the-newer", 3)),
        (format!("fenderside.draft.{typed_on}"), newer(&typed_on, 2)),
    ] {
        let found = format!("[data-unreadable='{key}']");
        phone.until_text(&found, "newer version")?;
        ensure!(
            phone.count(&format!("{found} button"))? == 1,
            "{key}: it can be removed"
        );
        ensure!(saved_as_found(&phone, &found)? == whole, "{key}");
    }
    // Opened, the two that the newer version has worked on are not written over.
    for id in [&typed_on, &moved] {
        phone.open(&format!("#/sheet/{id}"))?;
        phone.until_text(".fault[data-unreadable]", "newer version")?;
        ensure!(phone.count("#sheet-notes")? == 0, "{id} can be typed on");
    }
    // From then on the list names that one too.
    listed(&phone)?;
    phone.until_text(&format!("[data-unreadable='{moved}']"), "newer version")?;

    // Work goes on, with no network as well.
    phone.open(&format!("#/sheet/{old}"))?;
    until_notes(&phone, "of this version")?;
    note(&phone, "of this version, typed on")?;
    let new = new_sheet(&phone)?;
    note(&phone, "begun after going back")?;
    server.kill()?;
    phone.reload()?;
    until_notes(&phone, "begun after going back")?;
    works(&phone)?;
    for (id, notes) in [(&old, "of this version, typed on"), (&new, "begun after going back")] {
        phone.open(&format!("#/sheet/{id}"))?;
        until_notes(&phone, notes)?;
        until_kept(&phone)?;
    }

    // The newer version finds all that it had kept.
    phone.open("#/convert")?;
    let after = everything(&phone)?;
    ensure!(after["machines"] == json!([machine]));
    ensure!(after["texts"] == before["texts"], "{}", after["texts"]);
    ensure!(record(&phone, "of-the-newer")? == newer("of-the-newer", 3));
    ensure!(record(&phone, &moved)? == rewritten);
    ensure!(after["quarantine"] == json!([]), "{}", after["quarantine"]);
    phone.close()?.1.stays_home()
}

/// The stores themselves are of another form. Sheets begun here are kept as drafts until the newer
/// version is back.
#[test]
fn stores_of_another_form_are_left_and_handed_over_whole() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "of this version")?;
    phone.open("#/convert")?;
    raise(&phone, 2, &["records", "heads"], &["jobs"])?;
    let job = json!({ "id": id, "text": "kept in another store" });
    put(&phone, "jobs", &job)?;
    let before = everything(&phone)?;

    works(&phone)?;
    phone.open("#/sheet")?;
    let found = "[data-unreadable='fenderside']";
    phone.until_text(found, "newer version of this page")?;
    let whole = saved_as_found(&phone, found)?;
    ensure!(whole == json!({ "jobs": [job], "quarantine": [] }), "{whole}");
    phone.open(&format!("#/sheet/{id}"))?;
    phone.until_text("main", "newer version of this page")?;

    // A sheet begun here is typed, handed over and there again, but never called saved.
    phone.open("#/sheet")?;
    phone.tap("#new-sheet")?;
    phone.until_text("#kept-trouble", "newer version of this page")?;
    phone.type_into("sheet-notes", "begun after going back")?;
    phone.until_text("#kept-trouble", "newer version of this page")?;
    ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));
    let address = phone.fragment()?;
    phone.reload()?;
    until_notes(&phone, "begun after going back")?;
    let (_, file) = phone.download("#export-sheet")?;
    let file = String::from_utf8(file).context("the file is text")?;
    ensure!(file.contains("begun after going back"), "{file}");
    let mut begun = listed(&phone)?;
    ensure!(begun.pop().is_some_and(|id| address.ends_with(&id)) && begun.is_empty());

    let mut after = everything(&phone)?;
    after["texts"] = before["texts"].clone();
    ensure!(after == before, "{after}");
    Ok(())
}

/// A tab of this version was left open while another took the newer one: what it saves never lands on
/// a sheet of the newer form, whatever the number of that save.
#[test]
fn an_older_tab_does_not_write_over_a_sheet_of_the_newer_form() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "saved before the change")?;
    raise(&phone, 2, &[], &["machines"])?;
    let rev = record(&phone, &id)?["rev"].as_u64().context("a save has its number")?;
    let newer = newer(&id, u32::try_from(rev)?);
    write_record(&phone, &newer)?;
    phone.type_into("sheet-notes", "typed after it")?;
    phone.until_text("#kept-notice", "Both are kept")?;
    until_kept(&phone)?;
    ensure!(record(&phone, &id)? == newer, "it was written over");
    ensure!(phone.field("sheet-notes")? == "typed after it");
    ensure!(running(&phone)?.is_none());
    Ok(())
}
