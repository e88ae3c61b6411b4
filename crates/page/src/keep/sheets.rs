//! One sheet opened and saved, and sheets from elsewhere added.

use super::base::{self, HEADS, RECORDS, Work};
use super::choose::{self, Place, Use};
use super::object::{text, whole_of};
use super::shelf::{self, Shelf, Unreadable};
use super::{CHANGES, ERASED, KeepError, changes_since_backup, clock, draft, label, news};
use crate::storage;
use js_sys::futures::spawn_local;
use shopmath::sheet::Sheet;
use std::cell::Cell;
use wasm_bindgen::JsValue;

/// A sheet as it is opened.
#[allow(clippy::large_enum_variant)] // there is one at a time, and it is taken apart at once
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Opened {
    Sheet {
        sheet: Sheet,
        /// Whether it was typed after the last save, and is not saved.
        from_draft: bool,
        /// What was typed on an older save than the one shown: kept as a sheet with this id.
        beside: Option<String>,
    },
    Unreadable(Unreadable),
    Missing,
}

/// How a save ended.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Saved {
    Kept(Sheet),
    /// Another save came between: its sheet stays, this one is kept under a new id.
    BothKept {
        mine: Sheet,
    },
    /// It is kept again, though it had gone since the last save.
    Restored(Sheet),
}

thread_local! {
    static ASKED: Cell<bool> = const { Cell::new(false) };
}

/// The sheet kept under an id, or what was typed on it since.
pub(crate) async fn open(id: &str) -> Result<Opened, KeepError> {
    let key = JsValue::from_str(id);
    let record = match base::begin(false).await {
        Ok(work) => work.get(RECORDS, &key).await?,
        // A sheet begun in this version has nothing but its draft.
        Err(KeepError::Newer) if matches!(storage::get(&draft::name(id)), Ok(Some(_))) => JsValue::UNDEFINED,
        Err(error) => return Err(error),
    };
    let kept = match label::read(&record) {
        Ok(sheet) => Some(sheet),
        Err(_) if record.is_undefined() => None,
        Err(_) => {
            let mut found = Shelf::default();
            shelf::repair(vec![key], &mut found).await?;
            match found.unreadable.pop() {
                // A draft of it is as good as any sheet that is not kept yet.
                Some(bad) if bad.newer || storage::get(&draft::name(id)) == Ok(None) => {
                    return Ok(Opened::Unreadable(bad));
                }
                _ => None,
            }
        }
    };
    let draft = match draft::read(&draft::name(id)) {
        // A tab that is there saves by itself.
        Some(Ok((written, _))) if kept.is_some() && news::is_heard(&written.tab) => None,
        Some(Ok(draft)) => Some(draft),
        Some(Err(bad)) => {
            if !bad.newer {
                draft::set_aside(id, &bad.raw);
            }
            // Typing on would write over what a newer version keeps there.
            if bad.newer || kept.is_none() {
                return Ok(Opened::Unreadable(bad));
            }
            None
        }
        None => None,
    };
    let (sheet, from_draft, beside) = match (kept, draft) {
        (None, None) => return Ok(Opened::Missing),
        (Some(kept), None) => (kept, false, None),
        (None, Some((_, typed))) => (typed, true, None),
        (Some(kept), Some((written, typed))) => {
            choice(kept, typed, choose::which(&label::written(&record), &written)).await?
        }
    };
    if from_draft {
        // It is this tab's from now on, to drop once it is saved. If that fails it is what it was.
        let _ = draft::write(&sheet);
    }
    Ok(Opened::Sheet {
        sheet,
        from_draft,
        beside,
    })
}

/// The sheet to show, whether it is the one typed, and the id of the other if that is kept too.
async fn choice(kept: Sheet, mut typed: Sheet, used: Use) -> Result<(Sheet, bool, Option<String>), KeepError> {
    if used == Use::Record || typed.says_the_same(&kept) {
        draft::draft_drop(&kept.id);
    } else if used == Use::Draft {
        typed.rev = kept.rev;
        typed.updated = kept.updated;
        return Ok((typed, true, None));
    } else {
        typed.id = clock::new_id();
        typed.rev = 0;
        let complete = label::head_anew(&typed).complete;
        save(&typed, complete).await?;
        draft::draft_drop(&kept.id);
        return Ok((kept, false, Some(typed.id)));
    }
    Ok((kept, false, None))
}

/// Keeps a sheet: ends only when it is on the disk, and never writes over another save. Its draft
/// goes with it, unless something was typed meanwhile.
pub(crate) async fn save(sheet: &Sheet, complete: bool) -> Result<Saved, KeepError> {
    let step = label::step();
    let saved = match attempt(sheet, complete, step).await {
        Err(KeepError::Lost) => attempt(sheet, complete, step).await?,
        saved => saved?,
    };
    // Under a new id the old one's draft is no longer this tab's, whenever it was typed.
    let apart = matches!(saved, Saved::BothKept { .. });
    draft::drop_saved(&sheet.id, if apart { u64::MAX } else { step });
    note_change();
    if !ASKED.replace(true) {
        spawn_local(persist());
    }
    let (Saved::Kept(kept) | Saved::Restored(kept) | Saved::BothKept { mine: kept }) = &saved;
    news::tell(&kept.id, Some(kept.rev));
    Ok(saved)
}

async fn attempt(sheet: &Sheet, complete: bool, step: u64) -> Result<Saved, KeepError> {
    let mut next = sheet.clone();
    next.rev = sheet.rev.saturating_add(1);
    next.updated = clock::today();
    let mut record = label::write(&next, step)?;
    let work = base::begin(true).await?;
    let found = work.get(RECORDS, &JsValue::from_str(&next.id)).await?;
    // The very text is there when an answer was lost on its way, and the save was not.
    let same = text(&found, "body") == text(&record, "body");
    let stored = (!found.is_undefined() && !same).then(|| label::written(&found).rev);
    let place = if same {
        Place::Here
    } else if label::is_newer(&found) {
        // The number of the save says nothing about a sheet that cannot be read here.
        Place::Beside
    } else {
        choose::place(stored, sheet.rev)
    };
    if place == Place::Beside {
        next.id = clock::new_id();
        next.rev = 1;
        record = label::write(&next, step)?;
    }
    work.put(RECORDS, &record)?;
    work.put(HEADS, &label::write_head(&label::head(&next, complete)))?;
    finish(work).await?;
    Ok(match place {
        Place::Here => Saved::Kept(next),
        Place::Again => Saved::Restored(next),
        Place::Beside => Saved::BothKept { mine: next },
    })
}

/// Adds sheets from elsewhere, all or none; a sheet whose id is taken is a refusal.
pub(crate) async fn add(sheets: &[Sheet]) -> Result<(), KeepError> {
    if sheets.is_empty() {
        return Ok(());
    }
    let mut entries = Vec::new();
    for sheet in sheets {
        let head = label::write_head(&label::head_anew(sheet));
        entries.push((label::write(sheet, label::step())?, head));
    }
    let work = base::begin(true).await?;
    for (record, head) in &entries {
        work.add(RECORDS, record)?;
        work.put(HEADS, head)?;
    }
    finish(work).await?;
    note_change();
    for sheet in sheets {
        news::tell(&sheet.id, Some(sheet.rev));
    }
    Ok(())
}

/// Ends a change of the records, and keeps elsewhere how many there are now.
pub(super) async fn finish(work: Work) -> Result<(), KeepError> {
    let count = work.count(RECORDS).await?;
    work.done().await?;
    // Without it an erased store goes unnoticed, and nothing else.
    let _ = storage::set(ERASED, &whole_of(&count).to_string());
    Ok(())
}

fn note_change() {
    let changes = changes_since_backup().saturating_add(1);
    // A count that is not kept delays a reminder.
    let _ = storage::set(CHANGES, &changes.to_string());
}

/// Asks the browser not to erase what is kept when room runs out; it may say no.
async fn persist() {
    let asked = web_sys::window().and_then(|window| window.navigator().storage().persist().ok());
    if let Some(asked) = asked {
        let _ = asked.await;
    }
}
