//! What is kept on the device: sheets in the browser's database, what is being typed beside it.
//!
//! `saved` is said only after the transaction has ended, with the disk asked. Nothing here knows a
//! screen, and what a sheet means is `shopmath`'s.

mod error;

pub(crate) use error::KeepError;

use shopmath::sheet::{Head, Sheet};
use std::collections::HashSet;
use yew::prelude::*;

/// A record or draft that this version cannot read. Its text is offered for download, never dropped.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Unreadable {
    /// What [`remove_unreadable`] finds it by.
    pub(crate) key: String,
    /// What is wrong with it.
    pub(crate) why: String,
    /// Whether a newer version of the page wrote it; it is left as it is, and cannot be removed here.
    pub(crate) newer: bool,
    /// All of it, as JSON.
    pub(crate) raw: String,
}

/// All that is kept, as the list shows it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Shelf {
    /// Newest first, words in lower case. A sheet that was typed but never saved is among them,
    /// with `rev` 0.
    pub(crate) heads: Vec<Head>,
    pub(crate) unreadable: Vec<Unreadable>,
    /// How many sheets there were before the browser erased them all.
    pub(crate) erased: Option<u32>,
}

/// A sheet as it is opened.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Opened {
    Sheet {
        sheet: Sheet,
        /// Whether it was typed after the last save, and not saved.
        from_draft: bool,
        /// What was typed before another save came between: kept as a sheet with this id.
        beside: Option<String>,
    },
    Unreadable(Unreadable),
    Missing,
}

/// How a save ended.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Saved {
    Kept(Sheet),
    /// Another tab had saved since: its sheet stays, this one is kept under a new id.
    BothKept {
        mine: Sheet,
    },
    /// It was kept again, though it had gone since the last save.
    Restored(Sheet),
}

/// What was removed, to put it back.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Removed(String);

/// What another tab did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct News {
    pub(crate) id: String,
    pub(crate) rev: u64,
    pub(crate) removed: bool,
}

pub(crate) async fn shelf() -> Result<Shelf, KeepError> {
    Err(KeepError::Lost)
}

pub(crate) async fn open(id: &str) -> Result<Opened, KeepError> {
    let _ = id;
    Err(KeepError::Lost)
}

/// Keeps a sheet. Its draft goes with it, unless something was typed since: do not drop it again.
pub(crate) async fn save(sheet: &Sheet, complete: bool) -> Result<Saved, KeepError> {
    let _ = (sheet, complete);
    Err(KeepError::Lost)
}

pub(crate) async fn remove(id: &str) -> Result<Option<Removed>, KeepError> {
    let _ = id;
    Err(KeepError::Lost)
}

pub(crate) async fn remove_unreadable(key: &str) -> Result<Option<Removed>, KeepError> {
    let _ = key;
    Err(KeepError::Lost)
}

pub(crate) async fn put_back(removed: &Removed) -> Result<(), KeepError> {
    let _ = removed;
    Err(KeepError::Lost)
}

pub(crate) async fn all() -> Result<Vec<Sheet>, KeepError> {
    Err(KeepError::Lost)
}

pub(crate) async fn some(ids: &[String]) -> Result<Vec<Sheet>, KeepError> {
    let _ = ids;
    Err(KeepError::Lost)
}

pub(crate) async fn ids() -> Result<HashSet<String>, KeepError> {
    Err(KeepError::Lost)
}

pub(crate) async fn add(sheets: &[Sheet]) -> Result<(), KeepError> {
    let _ = sheets;
    Err(KeepError::Lost)
}

pub(crate) fn draft_keep(sheet: &Sheet) -> Result<(), KeepError> {
    let _ = sheet;
    Err(KeepError::Lost)
}

/// Drops what was typed since the last save, when the person discards it; a save does so itself.
pub(crate) fn draft_drop(sheet_id: &str) {
    let _ = sheet_id;
}

pub(crate) fn changes_since_backup() -> u32 {
    0
}

pub(crate) fn note_backup() {}

pub(crate) fn today() -> String {
    String::new()
}

pub(crate) fn new_id() -> String {
    String::new()
}

#[hook]
pub(crate) fn use_news(onnews: Callback<News>) {
    let _ = onnews;
}
