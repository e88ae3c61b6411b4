//! What is kept on the device: sheets in the browser's database, what is being typed beside it.
//!
//! A save has ended only when the browser says that it is on the disk. Nothing here knows a
//! screen, and what a sheet means is `shopmath`'s.

mod base;
mod choose;
mod clock;
mod draft;
mod error;
mod label;
mod news;
mod object;
mod removed;
mod sheets;
mod shelf;

pub(crate) use clock::{new_id, new_sheet, today};
pub(crate) use draft::draft_keep;
pub(crate) use error::KeepError;
pub(crate) use label::searched;
pub(crate) use news::{News, use_news};
pub(crate) use removed::{Removed, bring_back, remove, remove_unreadable};
pub(crate) use sheets::{Opened, Saved, add, open, save};
pub(crate) use shelf::{Shelf, Unreadable, all, ids, shelf, some};

use crate::storage;

/// Holds how many sheets there are, so that a browser that erased them is found out.
const ERASED: &str = "fenderside.sheets";
/// Holds how many saves there were since the last backup.
const CHANGES: &str = "fenderside.changes";

/// How many saves there were since the last backup.
pub(crate) fn changes_since_backup() -> u32 {
    let kept = storage::get(CHANGES).ok().flatten();
    kept.and_then(|text| text.parse().ok()).unwrap_or(0)
}

/// Notes that all sheets were written to a file.
pub(crate) fn note_backup() {
    storage::forget(CHANGES);
}
