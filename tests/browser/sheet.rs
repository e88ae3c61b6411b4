//! Sheet: the record of a job, and that nothing of it is lost once the page has said "saved".

mod files;
mod hostile;
mod job;
mod killed;
mod long;
mod phone;
mod reasons;
mod share;
mod storage;
mod take;
mod two_tabs;
mod undo;

pub(crate) use long::open_long;
pub(crate) use storage::saved_as_found;

use anyhow::{Context, Result};
use fenderside_tests::harness::Phone;
use serde_json::{Value, json};
use tempfile::NamedTempFile;

/// What the page calls its database and the store of records in it, by `DEVELOPERS.md`.
const DATABASE: &str = "const ask = (request) => new Promise((good, bad) => { request.onsuccess = () => good(request.result); request.onerror = () => bad(request.error) }); \
     const base = await ask(indexedDB.open('fenderside')); \
     const ended = (work) => new Promise((good, bad) => { work.oncomplete = good; work.onabort = () => bad(work.error) });";

/// Begins a sheet and waits until it is kept; its id.
pub(crate) fn new_sheet(phone: &Phone) -> Result<String> {
    phone.open("#/sheet")?;
    phone.tap("#new-sheet")?;
    until_kept(phone)?;
    open_id(phone)
}

/// The id in the address.
pub(crate) fn open_id(phone: &Phone) -> Result<String> {
    phone.until("a sheet in the address", || {
        let address = phone.fragment()?;
        Ok(address.strip_prefix("#/sheet/").map(str::to_owned))
    })
}

/// Waits until the page says that the sheet is kept as it stands.
pub(crate) fn until_kept(phone: &Phone) -> Result<()> {
    let kept = "const found = document.getElementById('kept'); return !!found && found.dataset.kept === 'true'";
    phone.until_true("the page to say that the sheet is saved", kept)
}

/// Types a sheet's notes and waits until they are kept.
pub(crate) fn note(phone: &Phone, text: &str) -> Result<()> {
    phone.type_into("sheet-notes", text)?;
    until_kept(phone)
}

/// Leaves no room beside the database, where drafts are written.
pub(crate) fn fill_small_store(phone: &Phone) -> Result<()> {
    let fill = "for (let size = 1 << 23, at = 0; size >= 1; at++) { \
         try { localStorage.setItem('filler' + at, 'x'.repeat(size)) } catch { size >>= 1 } }";
    phone.script::<()>(fill, Vec::new())
}

/// Waits until the notes are these.
pub(crate) fn until_notes(phone: &Phone, wanted: &str) -> Result<()> {
    phone.until(&format!("the notes to say \"{wanted}\""), || {
        Ok((phone.field("sheet-notes")? == wanted).then_some(()))
    })
}

/// Runs a script on the database, past the page.
pub(crate) fn in_database(phone: &Phone, script: &str, inputs: Vec<Value>) -> Result<Value> {
    let script = format!(
        "return (async (...inputs) => {{ {DATABASE} try {{ {script} }} finally {{ base.close() }} }})(...arguments)"
    );
    phone
        .script(&script, inputs)
        .context("the database did not take the script")
}

/// All that is kept under an id.
pub(crate) fn record(phone: &Phone, id: &str) -> Result<Value> {
    let get = "return (await ask(base.transaction('records').objectStore('records').get(inputs[0]))) ?? null";
    in_database(phone, get, vec![json!(id)])
}

/// Writes a record past the page, and takes its head away so that it is read again.
pub(crate) fn write_record(phone: &Phone, record: &Value) -> Result<()> {
    let put = "const work = base.transaction(['records', 'heads'], 'readwrite'); \
         work.objectStore('records').put(inputs[0]); work.objectStore('heads').delete(inputs[0].id); await ended(work)";
    in_database(phone, put, vec![record.clone()]).map(|_| ())
}

/// The ids of the list, once it is there.
pub(crate) fn listed(phone: &Phone) -> Result<Vec<String>> {
    phone.open("#/sheet")?;
    phone.until("the list", || Ok((phone.count("#new-sheet")? == 1).then_some(())))?;
    let ids = "return [...document.querySelectorAll('[data-sheet]')].map((found) => found.dataset.sheet)";
    phone.script(ids, Vec::new())
}

/// A file of some sheets, as another program would write it.
fn file_of(sheets: &[Value]) -> String {
    json!({ "format": "fenderside-sheets", "schema": 1, "sheets": sheets }).to_string()
}

/// Chooses a file of some sheets in the list, and waits until the page shows what is in it.
pub(crate) fn import(phone: &Phone, sheets: &[Value]) -> Result<()> {
    let _file = choose(phone, file_of(sheets).as_bytes())?;
    phone.until("what is in the file", || {
        Ok((phone.count("#incoming")? == 1).then_some(()))
    })
}

/// Brings in a file of some sheets that are new to the phone, and leaves the list on the screen.
pub(crate) fn bring_in(phone: &Phone, sheets: &[Value]) -> Result<()> {
    phone.open("#/sheet")?;
    import(phone, sheets)?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", &format!("{} brought in", sheets.len()))
}

/// Chooses a file that holds some bytes; it has to be there until the page has read it.
pub(crate) fn choose(phone: &Phone, bytes: &[u8]) -> Result<NamedTempFile> {
    let file = tempfile::Builder::new().suffix(".json").tempfile()?;
    std::fs::write(file.path(), bytes)?;
    phone.choose_file("import-sheet", file.path())?;
    Ok(file)
}

/// All that is kept on the phone: every record, every head, what was set aside, and the small texts
/// of sheets not saved yet.
pub(crate) fn everything(phone: &Phone) -> Result<Value> {
    let all = "const stores = [...base.objectStoreNames]; const work = base.transaction(stores); const found = {}; \
         for (const name of stores) found[name] = await ask(work.objectStore(name).getAll()); \
         found.texts = Object.entries(localStorage).filter(([name]) => name.startsWith('fenderside.draft.')); return found";
    in_database(phone, all, Vec::new())
}
