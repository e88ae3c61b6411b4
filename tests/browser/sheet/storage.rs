//! The store refuses, fills up, is erased, or holds what cannot be read: each has its own plain
//! sentence, and nothing is lost that had been called saved.

use super::{fill_small_store, in_database, listed, new_sheet, note, record, until_kept, until_notes, write_record};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

#[test]
fn a_browser_that_keeps_nothing_still_lets_one_write_and_says_so() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::keeping_nothing(server.site())?;
    phone.open("#/sheet")?;
    phone.until_text("#sheets-trouble", "keeps nothing for this page")?;
    phone.tap("#new-sheet")?;
    phone.until_text("#kept-trouble", "keeps nothing for this page")?;
    phone.type_into("sheet-notes", "typed without a store")?;
    phone.until_text("#kept-trouble", "keeps nothing for this page")?;
    ensure!(phone.field("sheet-notes")? == "typed without a store");
    ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));

    // To another screen and back, it is there as long as the tab is.
    let address = phone.fragment()?;
    phone.tap("nav a[href^='#/bolt']")?;
    phone.until_text("h1", "Bolt")?;
    phone.back()?;
    until_notes(&phone, "typed without a store")?;
    ensure!(phone.fragment()? == address);
    ensure!(phone.count("#boot-note:not([hidden])")? <= 1);
    Ok(())
}

#[test]
fn a_full_device_is_said_and_saved_again_once_there_is_room() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "before it was full")?;
    let before = record(&phone, &id)?;

    // The next day, as the browser remembers for a while how much room there was.
    let (profile, _) = phone.close()?;
    let phone = Phone::with(profile, server.site())?;
    phone.open("#/convert")?;
    phone.leave_room(false)?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "before it was full")?;
    phone.type_into("sheet-notes", "after it was full")?;
    phone.until_text("#kept-trouble", "no room left")?;
    ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));
    ensure!(record(&phone, &id)? == before, "what was saved before is not as it was");

    // Opened again, what was typed last is still there, and still not called saved.
    phone.reload()?;
    until_notes(&phone, "after it was full")?;
    phone.until_text("#kept-trouble", "no room left")?;
    ensure!(record(&phone, &id)? == before);
    ensure!(listed(&phone)? == [id.as_str()]);

    phone.leave_room(true)?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "after it was full")?;
    if phone.count("#kept-trouble button")? > 0 {
        phone.tap("#kept-trouble button")?;
    }
    until_kept(&phone)?;
    phone.reload()?;
    until_notes(&phone, "after it was full")?;
    until_kept(&phone)
}

/// What is still asked of the store when room runs out is told of an end, and not of the room.
#[test]
fn room_that_runs_out_in_the_middle_of_a_save_is_said() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    let refuse = "const put = IDBObjectStore.prototype.put; \
         IDBObjectStore.prototype.put = function (...parts) { const { transaction } = this; \
             queueMicrotask(() => { try { transaction.abort() } catch {} }); return put.apply(this, parts) }; \
         const error = { get: () => new DOMException('no room', 'QuotaExceededError') }; \
         Object.defineProperty(IDBTransaction.prototype, 'error', error)";
    phone.script::<()>(refuse, Vec::new())?;
    phone.type_into("sheet-notes", "too much")?;
    phone.until_text("#kept-trouble", "no room left")
}

#[test]
fn a_full_small_store_takes_no_draft_but_the_sheet_is_saved() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    fill_small_store(&phone)?;
    note(&phone, "no room for a draft")?;
    phone.reload()?;
    until_notes(&phone, "no room for a draft")?;
    ensure!(listed(&phone)? == [id.as_str()]);
    Ok(())
}

#[test]
fn a_backup_holds_what_could_not_be_saved_and_says_what_it_leaves_out() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "saved")?;
    let refuse = "IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError') }";
    phone.script::<()>(refuse, Vec::new())?;
    for (fill, text) in [(false, "only in a draft"), (true, "nowhere but in this tab")] {
        if fill {
            fill_small_store(&phone)?;
            phone.tap(&format!("[data-sheet='{id}'] a"))?;
        }
        phone.type_into("sheet-notes", text)?;
        phone.until_text("#kept", "Not saved")?;
        phone.tap(".sheet-head a")?;
        phone.until("the list", || Ok((phone.count("#new-sheet")? == 1).then_some(())))?;
        let (_, bytes) = phone.download("#export-sheet")?;
        let all: Value = serde_json::from_slice(&bytes)?;
        ensure!(all["sheets"].as_array().map(Vec::len) == Some(1), "{all}");
        ensure!(all["sheets"][0]["notes"] == json!(text), "{all}");
        phone.until_text("#sheets-done", "Backup of 1 handed to the browser")?;
        ensure!(phone.count("#backup-note")? == 0, "it still reminds of a backup");
    }

    // One that cannot be read is said to be missing, and the reminder stays.
    let phone = Phone::fresh(server.site())?;
    let good = new_sheet(&phone)?;
    let bad = new_sheet(&phone)?;
    phone.open("#/convert")?;
    let mut damaged = record(&phone, &bad)?;
    damaged["body"] = json!("{");
    write_record(&phone, &damaged)?;
    ensure!(listed(&phone)? == [good.as_str()]);
    phone.tap("#export-sheet")?;
    phone.until_text("#sheets-done", "Not in it: 1 that cannot be read")?;
    phone.until_text("#backup-note", "Changes since the last backup")
}

#[test]
fn a_sheet_that_no_file_may_hold_does_not_keep_the_others_from_a_backup() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    note(&phone, "saved")?;
    new_sheet(&phone)?;
    // Longer than a person can type.
    let long = "const notes = document.getElementById('sheet-notes'); notes.value = 'long '.repeat(20000); \
         notes.dispatchEvent(new InputEvent('input', { bubbles: true }))";
    phone.script::<()>(long, Vec::new())?;
    phone.until_text("#kept", "Not saved")?;
    phone.tap(".sheet-head a")?;
    phone.until("the list", || Ok((phone.count("#new-sheet")? == 1).then_some(())))?;
    let (_, bytes) = phone.download("#export-sheet")?;
    let all: Value = serde_json::from_slice(&bytes)?;
    // The other one as it was saved, before the notes came.
    ensure!(all["sheets"].as_array().map(Vec::len) == Some(2), "{all}");
    phone.until_text("#sheets-done", "Not in it: what was typed last on “No machine yet”.")?;
    phone.until_text("#backup-note", "Changes since the last backup")
}

#[test]
fn a_backup_that_cannot_be_made_is_not_called_one() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    phone.open("#/convert")?;
    let many = "const work = base.transaction(['records', 'heads'], 'readwrite'); const [records, heads] = ['records', 'heads'].map((name) => work.objectStore(name)); \
         const [record, head] = [await ask(records.get(inputs[0])), await ask(heads.get(inputs[0]))]; \
         for (let number = 0; number < 10000; number++) { const id = 'many-' + number; \
             records.put({ ...record, id, body: record.body.replaceAll(record.id, id) }); heads.put({ ...head, id }) } \
         await ended(work)";
    in_database(&phone, many, vec![json!(id)])?;
    listed(&phone)?;
    phone.tap("#export-sheet")?;
    phone.until_text("#sheets-trouble", "No backup was made")?;
    ensure!(phone.count("#sheets-done")? == 0);
    phone.until_text("#backup-note", "Changes since the last backup")
}

#[test]
fn an_erased_store_is_noticed_and_what_is_open_is_kept_again() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let first = new_sheet(&phone)?;
    note(&phone, "first")?;
    let second = new_sheet(&phone)?;
    note(&phone, "second")?;
    let erase = "return (async () => { const gone = indexedDB.deleteDatabase('fenderside'); \
         await new Promise((good, bad) => { gone.onsuccess = good; gone.onerror = bad; gone.onblocked = bad }) })()";
    phone.script::<()>(erase, Vec::new())?;

    // Typed on, the open one is there again, with a word about it.
    phone.type_into("sheet-notes", "second, later")?;
    phone.until_text("#kept-notice", "erased by the browser")?;
    until_kept(&phone)?;
    ensure!(listed(&phone)? == [second.as_str()]);
    phone.open(&format!("#/sheet/{second}"))?;
    until_notes(&phone, "second, later")?;

    // Gone while the page was closed.
    phone.open("#/convert")?;
    phone.script::<()>(erase, Vec::new())?;
    ensure!(listed(&phone)?.is_empty());
    phone.until_text("#sheets-erased", "there was 1 sheet here")?;
    phone.open(&format!("#/sheet/{first}"))?;
    phone.until_text("main", "no sheet of this name")?;
    // A sheet that is kept now starts the count anew.
    let third = new_sheet(&phone)?;
    ensure!(listed(&phone)? == [third.as_str()]);
    ensure!(phone.count("#sheets-erased")? == 0);
    Ok(())
}

#[test]
fn a_record_that_cannot_be_read_is_set_aside_whole_and_can_be_saved() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let good = new_sheet(&phone)?;
    note(&phone, "good")?;
    let id = new_sheet(&phone)?;
    note(&phone, "soon damaged")?;
    phone.open("#/convert")?;
    let mut bad = record(&phone, &id)?;
    let body: String = bad["body"]
        .as_str()
        .context("a record has a body")?
        .chars()
        .take(40)
        .collect();
    bad["body"] = json!(body);
    write_record(&phone, &bad)?;

    ensure!(listed(&phone)? == [good.as_str()]);
    let broken = format!("[data-unreadable^='{id}.']");
    phone.until_text(&broken, "It is damaged")?;
    ensure!(record(&phone, &id)?.is_null(), "it is still among the others");
    ensure!(saved_as_found(&phone, &broken)? == bad);

    // Removed and brought back, it is what it was.
    phone.tap(&format!("{broken} .chip + .chip"))?;
    phone.until("it to be gone", || Ok((phone.count(&broken)? == 0).then_some(())))?;
    phone.tap("#undo")?;
    phone.until_text(&broken, "It is damaged")?;
    ensure!(saved_as_found(&phone, &broken)? == bad);

    // Opened by its address, with its head in place: found then.
    let open = new_sheet(&phone)?;
    note(&phone, "damaged under its head")?;
    phone.open("#/convert")?;
    let mut bad = record(&phone, &open)?;
    bad["rev"] = json!(99);
    let put = "const work = base.transaction('records', 'readwrite'); work.objectStore('records').put(inputs[0]); await ended(work)";
    in_database(&phone, put, vec![bad.clone()])?;
    phone.open(&format!("#/sheet/{open}"))?;
    phone.reload()?;
    let broken = format!("[data-unreadable^='{open}.']");
    phone.until_text(&broken, "name different sheets")?;
    ensure!(saved_as_found(&phone, &broken)? == bad);
    ensure!(listed(&phone)? == [good.as_str()]);
    Ok(())
}

#[test]
fn a_record_set_aside_is_not_taken_for_one_erased() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    phone.open("#/convert")?;
    let mut bad = record(&phone, &id)?;
    bad["body"] = json!("{");
    write_record(&phone, &bad)?;
    for visit in 0..2 {
        ensure!(listed(&phone)?.is_empty());
        phone.until_text(&format!("[data-unreadable^='{id}.']"), "It is damaged")?;
        ensure!(phone.count("#sheets-erased")? == 0, "called erased at visit {visit}");
        phone.reload()?;
    }
    Ok(())
}

#[test]
fn a_record_of_a_newer_version_is_left_alone() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    phone.open("#/convert")?;
    let newer = json!({ "schema": 7, "id": id, "rev": 3, "updated": "2031-01-01", "body": "of a form not known yet", "more": [1, 2] });
    write_record(&phone, &newer)?;

    ensure!(listed(&phone)?.is_empty());
    let found = format!("[data-unreadable='{id}']");
    phone.until_text(&found, "newer version")?;
    ensure!(phone.count(&format!("{found} button"))? == 1, "it can be removed");
    phone.open(&format!("#/sheet/{id}"))?;
    phone.until_text(&found, "newer version")?;
    ensure!(record(&phone, &id)? == newer, "it was touched");
    ensure!(saved_as_found(&phone, &found)? == newer);
    Ok(())
}

#[test]
fn a_draft_that_cannot_be_read_makes_room_and_is_kept() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "kept")?;
    phone.open("#/convert")?;
    let cut = json!("{\"schema\":1,\"id\":");
    let keep = "localStorage.setItem('fenderside.draft.' + arguments[0], arguments[1])";
    phone.script::<()>(keep, vec![json!(id), cut.clone()])?;
    ensure!(listed(&phone)? == [id.as_str()]);
    let name = "[data-unreadable^='fenderside.']";
    phone.until_text(name, "It is damaged")?;

    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "kept")?;
    note(&phone, "kept, and typed on")?;
    ensure!(listed(&phone)? == [id.as_str()]);
    phone.until_text(name, "It is damaged")?;
    let texts = "return Object.keys(localStorage).filter((name) => name.includes(arguments[0])).map((name) => localStorage.getItem(name))";
    let texts: Vec<Value> = phone.script(texts, vec![json!(id)])?;
    ensure!(texts == [cut], "{texts:?}");
    phone.tap(&format!("{name} .chip + .chip"))?;
    phone.until("it to be gone", || Ok((phone.count(name)? == 0).then_some(())))
}

#[test]
fn a_list_that_lost_its_heads_makes_them_again() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let ids = [new_sheet(&phone)?, new_sheet(&phone)?, new_sheet(&phone)?];
    note(&phone, "Found By This")?;
    phone.open("#/convert")?;
    // One gone, one of another form, one whose sheet is gone.
    let harm = "const heads = base.transaction('heads', 'readwrite'); const store = heads.objectStore('heads'); \
         store.delete(inputs[0]); store.put({ id: inputs[1], head: '{}' }); await ended(heads); \
         const records = base.transaction('records', 'readwrite'); records.objectStore('records').delete(inputs[2]); await ended(records)";
    in_database(&phone, harm, vec![json!(ids[2]), json!(ids[1]), json!(ids[0])])?;
    let mut found = listed(&phone)?;
    found.sort_unstable();
    let mut wanted = [ids[1].as_str(), ids[2].as_str()];
    wanted.sort_unstable();
    ensure!(found == wanted, "{found:?}");
    phone.type_into("find", "found by THIS")?;
    phone.until("the one that says so", || {
        let shown = phone.count("[data-sheet]")?;
        Ok((shown == 1 && phone.count(&format!("[data-sheet='{}']", ids[2]))? == 1).then_some(()))
    })
}

/// What the file holds that "Save it as found" hands over.
pub(crate) fn saved_as_found(phone: &Phone, selector: &str) -> Result<Value> {
    let (name, bytes) = phone.download(&format!("{selector} .chip"))?;
    let ending = std::path::Path::new(&name).extension();
    ensure!(
        ending.is_some_and(|ending| ending == "txt"),
        "the file is called {name}"
    );
    let text = String::from_utf8(bytes)?;
    serde_json::from_str(&text).with_context(|| format!("the file holds \"{text}\""))
}
