//! What becomes of two texts of one sheet. Pure, so that it is tried without a browser.

/// When something was written: after which save, in which tab, and at which step of that tab, which counts its
/// drafts and saves.
///
/// The disk may bring back an older draft than the last one, as the browser writes those late. The
/// step tells, within one tab, whether a draft or a save holds what was typed last.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Written {
    pub(super) rev: u64,
    pub(super) tab: String,
    pub(super) step: u64,
}

/// Which of record and draft is opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Use {
    /// The record; the draft says nothing that it does not, and goes.
    Record,
    /// The draft: it was typed after the save.
    Draft,
    /// The record, with the draft beside it as a sheet of its own: neither holds the other.
    Both,
}

/// Which of a record and a draft that says something else is opened.
pub(super) fn which(record: &Written, draft: &Written) -> Use {
    if record.rev == draft.rev {
        Use::Draft
    } else if record.tab != draft.tab {
        Use::Both
    } else if draft.step > record.step {
        Use::Draft
    } else {
        Use::Record
    }
}

/// Where a save goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    /// In its place.
    Here,
    /// In its place, which is empty though it should not be.
    Again,
    /// Under a new id, since another save came between.
    Beside,
}

/// Where a save goes that was typed on save number `mine`, when number `stored` is found.
pub(super) fn place(stored: Option<u64>, mine: u64) -> Place {
    match stored {
        None if mine > 0 => Place::Again,
        Some(stored) if stored != mine => Place::Beside,
        _ => Place::Here,
    }
}

/// How many sheets the browser has erased: those of the marker, when none is left.
pub(super) fn erased(marker: Option<String>, found: u32) -> Option<u32> {
    let kept = marker?.parse().ok()?;
    (kept > 0 && found == 0).then_some(kept)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(rev: u64, tab: &str, step: u64) -> Written {
        let tab = tab.to_owned();
        Written { rev, tab, step }
    }

    #[test]
    fn what_was_typed_last_is_opened_and_what_went_apart_is_kept_twice() {
        let record = written(4, "a", 20);
        for (draft, wanted) in [
            // Typed after the save, here or in a tab that is gone.
            (written(4, "a", 21), Use::Draft),
            (written(4, "b", 3), Use::Draft),
            // Typed while the save was on its way.
            (written(3, "a", 21), Use::Draft),
            // Left behind by a browser killed before it dropped the draft.
            (written(3, "a", 19), Use::Record),
            (written(2, "a", 20), Use::Record),
            // Typed in another tab on what was saved before.
            (written(3, "b", 99), Use::Both),
            // The record came back from an older day.
            (written(5, "b", 1), Use::Both),
        ] {
            assert_eq!(which(&record, &draft), wanted, "{draft:?}");
        }
    }

    #[test]
    fn a_save_never_lands_on_another_one() {
        for (stored, mine, wanted) in [
            (None, 0, Place::Here),
            (Some(3), 3, Place::Here),
            (None, 3, Place::Again),
            (Some(4), 3, Place::Beside),
            (Some(2), 3, Place::Beside),
            (Some(1), 0, Place::Beside),
        ] {
            assert_eq!(place(stored, mine), wanted, "{stored:?} {mine}");
        }
    }

    #[test]
    fn only_an_empty_store_that_was_full_counts_as_erased() {
        let marker = |text: &str| Some(text.to_owned());
        assert_eq!(erased(marker("12"), 0), Some(12));
        assert_eq!(erased(marker("12"), 1), None);
        assert_eq!(erased(marker("0"), 0), None);
        assert_eq!(erased(marker("many"), 0), None);
        assert_eq!(erased(None, 0), None);
    }
}
