//! What is being typed, mirrored beside the database: one text a sheet, which is written at once
//! and survives a browser that is killed.

use super::choose::Written;
use super::object::json;
use super::{KeepError, Unreadable, clock, label};
use crate::storage;
use js_sys::JSON;
use shopmath::sheet::Sheet;
use std::cell::RefCell;

/// What the names of drafts begin with.
pub(super) const DRAFT: &str = "fenderside.draft.";
/// What the names of drafts begin with that could not be read and made room for others.
pub(super) const ASIDE: &str = "fenderside.aside.";

thread_local! {
    /// The sheet of which the draft is this tab's.
    static OWN: RefCell<String> = const { RefCell::new(String::new()) };
}

/// The name of a sheet's draft.
pub(super) fn name(sheet_id: &str) -> String {
    [DRAFT, sheet_id].concat()
}

/// Mirrors what is being typed. What another tab has typed there may be all that is left of it, so
/// it goes on as the draft of a sheet of its own.
pub(crate) fn draft_keep(sheet: &Sheet) -> Result<(), KeepError> {
    if OWN.with_borrow(|own| *own != sheet.id)
        && let Some(Ok((written, mut other))) = read(&name(&sheet.id))
        && written.tab != label::tab()
    {
        other.id = clock::new_id();
        other.rev = 0;
        write(&other)?;
    }
    write(sheet)
}

/// Writes a sheet's draft as this tab's, in place of whatever is there.
pub(super) fn write(sheet: &Sheet) -> Result<(), KeepError> {
    let draft = label::write(sheet, label::step())?;
    storage::set(&name(&sheet.id), &json(&draft))?;
    OWN.with_borrow_mut(|own| own.clone_from(&sheet.id));
    Ok(())
}

/// Drops a draft, whoever wrote it. After a save, [`drop_saved`] drops only what that has kept.
pub(super) fn draft_drop(sheet_id: &str) {
    storage::forget(&name(sheet_id));
    OWN.take();
}

/// The draft under a name.
pub(super) fn read(name: &str) -> Option<Result<(Written, Sheet), Unreadable>> {
    let text = storage::get(name).ok()??;
    // What is no JSON has no entries, and so is no sheet.
    let value = JSON::parse(&text).unwrap_or_default();
    Some(match label::read(&value) {
        Ok(sheet) => Ok((label::written(&value), sheet)),
        Err(fault) => Err(Unreadable::of(name.to_owned(), &fault, text)),
    })
}

/// Drops a draft that this tab wrote no later than a step.
pub(super) fn drop_saved(sheet_id: &str, step: u64) {
    if let Ok(Some(text)) = storage::get(&name(sheet_id)) {
        let written = label::written(&JSON::parse(&text).unwrap_or_default());
        if written.tab == label::tab() && written.step <= step {
            draft_drop(sheet_id);
        }
    }
}

/// Moves a draft that cannot be read out of the way of the next one.
pub(super) fn set_aside(sheet_id: &str, raw: &str) {
    let aside = [ASIDE, sheet_id, ".", &clock::letters()].concat();
    if storage::set(&aside, raw).is_ok() {
        draft_drop(sheet_id);
    }
}
