//! All sheets: the list of them, and their contents to export.

use super::base::{self, HEADS, QUARANTINE, RECORDS, Work};
use super::choose::{self, Use, Written};
use super::object::{entry, json, object, text};
use super::sheets::finish;
use super::{ERASED, KeepError, clock, draft, label};
use crate::storage;
use js_sys::Array;
use shopmath::sheet::{Head, Sheet, SheetFault, head};
use std::collections::HashSet;
use wasm_bindgen::JsValue;

/// All that is kept, as the list shows it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Shelf {
    /// Newest first, words as they are searched. A sheet that was typed but is not kept yet is among
    /// them.
    pub(crate) heads: Vec<Head>,
    pub(crate) unreadable: Vec<Unreadable>,
    /// How many sheets there were before the browser erased them all.
    pub(crate) erased: Option<u32>,
}

/// A record or draft that this version cannot read. It is offered for download, never dropped.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Unreadable {
    /// What [`super::remove_unreadable`] finds it by.
    pub(crate) key: String,
    /// What is wrong with it.
    pub(crate) why: String,
    /// Whether a newer version of the page wrote it. Then it stays where it is, and is not to be
    /// removed from here.
    pub(crate) newer: bool,
    /// All of it, as JSON.
    pub(crate) raw: String,
}

impl Unreadable {
    pub(super) fn of(key: String, fault: &SheetFault, raw: String) -> Self {
        let newer = matches!(fault, SheetFault::NewerSchema { .. });
        // The sentences about JSON speak of a file that was chosen.
        let why = match fault {
            SheetFault::NotJson { .. } | SheetFault::NotSheets => "It is damaged: its contents are no sheet.".into(),
            _ => fault.to_string(),
        };
        Self { key, why, newer, raw }
    }
}

/// Reads what the list shows, without the sheets themselves. A head that is missing is made again.
pub(crate) async fn shelf() -> Result<Shelf, KeepError> {
    let work = match base::begin(false).await {
        Err(KeepError::Newer) => return of_another_form().await,
        begun => begun?,
    };
    let heads = work.all(HEADS).await?;
    let keys = work.keys(RECORDS).await?;
    let mut shelf = Shelf::default();
    for value in work.all(QUARANTINE).await? {
        shelf.unreadable.push(Unreadable {
            key: text(&value, "id"),
            why: text(&value, "why"),
            newer: false,
            raw: json(&entry(&value, "record")),
        });
    }
    let heads = heads.iter().filter_map(|value| label::read_head(&value));
    let mut heads = heads.peekable();
    let mut missing = Vec::new();
    // Both come in the order of their keys.
    for key in keys.iter() {
        let id = key.as_string().unwrap_or_default();
        while heads.next_if(|head| head.id < id).is_some() {}
        match heads.next_if(|head| head.id == id) {
            Some(head) => shelf.heads.push(head),
            None => missing.push(key),
        }
    }
    if !missing.is_empty() {
        repair(missing, &mut shelf).await?;
    }
    drafts(&mut shelf);
    shelf.erased = choose::erased(storage::get(ERASED).ok().flatten(), keys.length());
    shelf.heads.sort_by(head::compare);
    Ok(shelf)
}

/// What is shown where a newer version has changed the database: all of it as one, to save as it
/// is, and what was begun here.
async fn of_another_form() -> Result<Shelf, KeepError> {
    let mut shelf = Shelf::default();
    shelf.unreadable.push(Unreadable {
        key: base::NAME.to_owned(),
        why: KeepError::Newer.words(),
        newer: true,
        raw: json(&base::everything().await?),
    });
    drafts(&mut shelf);
    Ok(shelf)
}

/// The sheets of some records; one that cannot be read is put where the list shows it.
pub(crate) async fn some(ids: &[String]) -> Result<Vec<Sheet>, KeepError> {
    let work = base::begin(false).await?;
    let records = Array::new();
    for id in ids {
        records.push(&work.get(RECORDS, &id.into()).await?);
    }
    sheets(&records).await
}

/// The sheets of all records, as [`some`], each as it would be opened, with all that is not saved:
/// drafts, and what this tab holds `unkept`.
pub(crate) async fn all(unkept: Vec<Sheet>) -> Result<Vec<Sheet>, KeepError> {
    let records = base::begin(false).await?.all(RECORDS).await?;
    let mut all = sheets(&records).await?;
    let tab = label::tab();
    for name in storage::names(draft::DRAFT) {
        if let Some(Ok((written, sheet))) = draft::read(&name) {
            // This tab's own draft of what it holds may be older.
            if written.tab != tab || !unkept.iter().any(|held| held.id == sheet.id) {
                lay(&mut all, &records, &written, sheet);
            }
        }
    }
    for sheet in unkept {
        let (rev, tab, step) = (sheet.rev, tab.clone(), u64::MAX);
        lay(&mut all, &records, &Written { rev, tab, step }, sheet);
    }
    Ok(all)
}

/// Lays what is not saved in the place of its record, or beside it where neither holds the other.
#[inline(never)]
fn lay(all: &mut Vec<Sheet>, records: &Array, written: &Written, mut sheet: Sheet) {
    let record = records.iter().find(|record| text(record, "id") == sheet.id);
    let used = choose::which(&label::written(&record.unwrap_or_default()), written);
    if let Some(kept) = all.iter_mut().find(|kept| kept.id == sheet.id) {
        if used == Use::Record || sheet.says_the_same(kept) {
            return;
        }
        if used == Use::Draft {
            *kept = sheet;
            return;
        }
        sheet.id = clock::new_id();
        sheet.rev = 0;
    }
    all.push(sheet);
}

/// The ids that are taken, those of drafts among them.
pub(crate) async fn ids() -> Result<HashSet<String>, KeepError> {
    let keys = base::begin(false).await?.keys(RECORDS).await?;
    let mut ids: HashSet<String> = keys.iter().filter_map(|key| key.as_string()).collect();
    for name in storage::names(draft::DRAFT) {
        ids.extend(name.strip_prefix(draft::DRAFT).map(str::to_owned));
    }
    Ok(ids)
}

async fn sheets(records: &Array) -> Result<Vec<Sheet>, KeepError> {
    let mut sheets = Vec::new();
    let mut bad = Vec::new();
    for record in records.iter() {
        match label::read(&record) {
            Ok(sheet) => sheets.push(sheet),
            Err(_) if record.is_undefined() => {}
            Err(_) => bad.push(entry(&record, "id")),
        }
    }
    if !bad.is_empty() {
        repair(bad, &mut Shelf::default()).await?;
    }
    Ok(sheets)
}

/// Makes the heads of records anew, and moves what cannot be read into the quarantine.
pub(super) async fn repair(keys: Vec<JsValue>, shelf: &mut Shelf) -> Result<(), KeepError> {
    let work = base::begin(true).await?;
    for key in keys {
        let record = work.get(RECORDS, &key).await?;
        match label::read(&record) {
            // Removed meanwhile.
            Err(_) if record.is_undefined() => {}
            Err(fault) => {
                let id = key.as_string().unwrap_or_else(|| json(&key));
                let mut found = Unreadable::of(id, &fault, json(&record));
                if found.newer {
                    // Without its head the list shows it for what it is.
                    work.delete(HEADS, &key)?;
                } else {
                    quarantine(&work, &key, &record, &mut found)?;
                }
                shelf.unreadable.push(found);
            }
            Ok(sheet) => {
                let head = label::head_anew(&sheet);
                work.put(HEADS, &label::write_head(&head))?;
                shelf.heads.push(head);
            }
        }
    }
    match finish(work).await {
        // All is shown that is there; with more room it is put in order.
        Err(KeepError::Full) => Ok(()),
        ended => ended,
    }
}

fn quarantine(work: &Work, key: &JsValue, record: &JsValue, found: &mut Unreadable) -> Result<(), KeepError> {
    // Records of one id can go bad one after the other.
    found.key = [&found.key, ".", &clock::letters()].concat();
    let entries = [
        ("id", JsValue::from_str(&found.key)),
        ("why", JsValue::from_str(&found.why)),
        ("record", record.clone()),
    ];
    work.put(QUARANTINE, &object(&entries))?;
    work.delete(RECORDS, key)?;
    work.delete(HEADS, key)
}

/// Adds the drafts that no record stands behind, and those that cannot be read.
fn drafts(shelf: &mut Shelf) {
    let mut names = storage::names(draft::DRAFT);
    names.extend(storage::names(draft::ASIDE));
    for name in names {
        match draft::read(&name) {
            Some(Err(found)) => shelf.unreadable.push(found),
            Some(Ok((_, sheet))) if !shelf.heads.iter().any(|head| head.id == sheet.id) => {
                shelf.heads.push(label::head_anew(&sheet));
            }
            _ => {}
        }
    }
}
