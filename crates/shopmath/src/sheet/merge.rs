//! Sheets from elsewhere put beside those at hand: what would happen, and doing it.
//!
//! Nothing at hand is ever changed. A sheet that says the same is left out, one that says something
//! else under a name already taken comes in under a new one, and both are kept.

use super::limits;
use super::model::Sheet;
use std::collections::{HashMap, HashSet};

/// What becomes of one sheet that comes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// New: it is added.
    Added,
    /// Already there, word for word: nothing happens.
    Kept,
    /// Its name is taken by a sheet that says something else: both are kept, this one under a new
    /// name.
    Conflict,
}

/// One sheet that comes in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Incoming {
    /// What becomes of it.
    pub fate: Fate,
    /// The sheet, under the name it would have.
    pub sheet: Sheet,
    /// The name it came with.
    pub came_as: String,
}

/// What would become of each sheet, in the order they come.
///
/// ```
/// use shopmath::sheet::{Sheet, merge::{Fate, preview}};
/// let here = [Sheet::new("belt")];
/// let mut other = Sheet::new("belt");
/// other.machine = "Larkfield van".into();
/// let coming = preview(&here, vec![Sheet::new("belt"), other]);
/// assert_eq!((coming[0].fate, coming[1].fate), (Fate::Kept, Fate::Conflict));
/// assert_eq!(coming[1].sheet.id, "belt-2");
/// ```
#[must_use]
pub fn preview(here: &[Sheet], coming: Vec<Sheet>) -> Vec<Incoming> {
    preview_among(here, &HashSet::new(), coming)
}

/// The names, of those `taken` at hand, whose sheets [`preview_among`] and [`added_among`] have to
/// see: that of each sheet that comes, and those it would be given instead, up to the first free
/// one. So a few sheets are read to merge a few into thousands.
///
/// ```
/// use shopmath::sheet::{Sheet, merge::wanted};
/// let taken = ["belt", "belt-2", "wheels"].map(String::from).into();
/// assert_eq!(wanted(&taken, &[Sheet::new("belt"), Sheet::new("brakes")]), ["belt", "belt-2"]);
/// ```
#[must_use]
pub fn wanted(taken: &HashSet<String>, coming: &[Sheet]) -> Vec<String> {
    let (mut wanted, mut seen, mut placed) = (Vec::new(), HashSet::new(), HashSet::new());
    for sheet in coming {
        for name in names(&sheet.id) {
            // Each is taken to be placed behind all others, so that none is looked for too short.
            let free = !taken.contains(&name) && !placed.contains(&name);
            if free {
                placed.insert(name);
                break;
            }
            if taken.contains(&name) && seen.insert(name.clone()) {
                wanted.push(name);
            }
        }
    }
    wanted
}

/// As [`preview`], with only some of the sheets at hand in `here`; those of [`wanted`] are enough.
/// A name of `taken` without its sheet in `here` counts as one that says something else.
///
/// ```
/// use shopmath::sheet::{Sheet, merge::{Fate, preview_among}};
/// let taken = ["belt", "belt-2"].map(String::from).into();
/// let coming = preview_among(&[Sheet::new("belt")], &taken, vec![Sheet::new("belt"), Sheet::new("belt-2")]);
/// assert_eq!([coming[0].fate, coming[1].fate], [Fate::Kept, Fate::Conflict]);
/// assert_eq!(coming[1].sheet.id, "belt-2-2");
/// ```
#[must_use]
pub fn preview_among(here: &[Sheet], taken: &HashSet<String>, coming: Vec<Sheet>) -> Vec<Incoming> {
    let mut names: HashMap<String, Option<Sheet>> = taken.iter().map(|name| (name.clone(), None)).collect();
    names.extend(here.iter().map(|sheet| (sheet.id.clone(), Some(sheet.clone()))));
    coming
        .into_iter()
        .map(|sheet| {
            let incoming = place(&names, sheet);
            if incoming.fate != Fate::Kept {
                names.insert(incoming.sheet.id.clone(), Some(incoming.sheet.clone()));
            }
            incoming
        })
        .collect()
}

/// The sheets at hand with those of a preview that are not there yet behind them.
///
/// A name taken since the preview was made is found again, so that nothing is overwritten then
/// either.
///
/// ```
/// use shopmath::sheet::{Sheet, merge::{merged, preview}};
/// let previewed = preview(&[], vec![Sheet { notes: "from the file".into(), ..Sheet::new("belt") }]);
/// let here = [Sheet { notes: "typed since".into(), ..Sheet::new("belt") }];
/// let found = merged(&here, &previewed);
/// assert_eq!((&found[0], &*found[1].id, &*found[1].notes), (&here[0], "belt-2", "from the file"));
/// ```
#[must_use]
pub fn merged(here: &[Sheet], previewed: &[Incoming]) -> Vec<Sheet> {
    let added = added_among(here, &HashSet::new(), previewed);
    here.iter().cloned().chain(added).collect()
}

/// The sheets that [`merged`] adds, to be written beside those at hand; `here` and `taken` as in
/// [`preview_among`], looked up again where time has passed since the preview.
///
/// ```
/// use shopmath::sheet::{Sheet, merge::{added_among, preview}};
/// let here = [Sheet::new("belt")];
/// let previewed = preview(&here, vec![Sheet::new("belt"), Sheet::new("wheels")]);
/// let taken = ["belt", "wheels"].map(String::from).into();
/// let added = added_among(&here, &taken, &previewed);
/// assert_eq!((added.len(), &*added[0].id), (1, "wheels-2"));
/// ```
#[must_use]
pub fn added_among(here: &[Sheet], taken: &HashSet<String>, previewed: &[Incoming]) -> Vec<Sheet> {
    let coming = previewed.iter().filter(|incoming| incoming.fate != Fate::Kept);
    let coming = coming.map(|incoming| incoming.sheet.clone()).collect();
    let added = preview_among(here, taken, coming).into_iter();
    let added = added.filter(|incoming| incoming.fate != Fate::Kept);
    added.map(|incoming| incoming.sheet).collect()
}

/// Places a sheet among the names there are, each with its sheet where that is known.
fn place(there: &HashMap<String, Option<Sheet>>, sheet: Sheet) -> Incoming {
    let came_as = sheet.id.clone();
    let same = |name: &String| {
        let known = there.get(name)?.as_ref();
        Some(known.is_some_and(|known| known.says_the_same(&sheet)))
    };
    // Names are endless and those taken are not, so one is found; the default is for the type.
    let name = names(&came_as)
        .find(|name| same(name) != Some(false))
        .unwrap_or_default();
    let fate = match same(&name) {
        Some(_) => Fate::Kept,
        None if name == came_as => Fate::Added,
        None => Fate::Conflict,
    };
    Incoming {
        fate,
        sheet: Sheet { id: name, ..sheet },
        came_as,
    }
}

/// A name, then the same with a number behind it, cut so that it stays a name.
fn names(id: &str) -> impl Iterator<Item = String> + '_ {
    let numbered = (2_u64..).map(move |number| {
        let tail = format!("-{number}");
        let room = limits::ID.saturating_sub(tail.len());
        let head: String = id.chars().take(room).collect();
        format!("{head}{tail}")
    });
    core::iter::once(id.to_owned()).chain(numbered)
}

#[cfg(test)]
mod tests {
    use super::{Fate, added_among, merged, preview, preview_among, wanted};
    use crate::sheet::{Sheet, limits};
    use proptest::prelude::*;
    use std::collections::HashSet;

    fn sheet(id: &str, notes: &str) -> Sheet {
        Sheet {
            notes: notes.into(),
            ..Sheet::new(id)
        }
    }

    #[test]
    fn a_conflict_keeps_both_and_coming_twice_adds_nothing() {
        let here = vec![sheet("a", "old")];
        let coming = vec![sheet("a", "new"), sheet("b", "b")];
        let once = merged(&here, &preview(&here, coming.clone()));
        let names: Vec<&str> = once.iter().map(|sheet| sheet.id.as_str()).collect();
        assert_eq!(names, ["a", "a-2", "b"]);
        assert_eq!(once[0], here[0]);
        let again = preview(&once, coming);
        assert!(again.iter().all(|incoming| incoming.fate == Fate::Kept));
        assert_eq!(merged(&once, &again), once);
    }

    #[test]
    fn a_name_taken_since_the_preview_is_not_overwritten() {
        let previewed = preview(&[], vec![sheet("a", "from the file")]);
        let here = vec![sheet("a", "typed meanwhile")];
        let merged = merged(&here, &previewed);
        assert_eq!(merged[0], here[0]);
        assert_eq!(
            (merged[1].id.as_str(), merged[1].notes.as_str()),
            ("a-2", "from the file")
        );
    }

    #[test]
    fn a_save_count_alone_is_no_conflict_and_a_long_name_stays_a_name() {
        let mut saved = sheet("a", "");
        saved.rev = 9;
        assert_eq!(preview(&[sheet("a", "")], vec![saved])[0].fate, Fate::Kept);
        let long = "x".repeat(limits::ID);
        let incoming = &preview(&[sheet(&long, "1")], vec![sheet(&long, "2")])[0];
        assert!(limits::is_id(&incoming.sheet.id) && incoming.sheet.id != long);
    }

    #[test]
    fn a_name_whose_sheet_is_not_shown_is_not_given_away() {
        let taken = HashSet::from(["a".to_owned(), "a-2".to_owned()]);
        let previewed = preview_among(&[], &taken, vec![sheet("a", "")]);
        assert_eq!(
            (previewed[0].fate, previewed[0].sheet.id.as_str()),
            (Fate::Conflict, "a-3")
        );
        let taken = HashSet::from(["a".to_owned(), "a-2".to_owned(), "a-3".to_owned()]);
        assert_eq!(added_among(&[], &taken, &previewed)[0].id, "a-3-2");
    }

    /// Sheets whose names and contents often meet, under names that numbering yields as well.
    fn few(most: usize) -> impl Strategy<Value = Vec<Sheet>> {
        let ids = prop::sample::select(vec!["a", "a-2", "a-3", "a-2-2", "b", "b-2"]);
        let notes = prop::sample::select(vec!["", "x", "y"]);
        prop::collection::vec((ids, notes).prop_map(|(id, notes)| sheet(id, notes)), 0..most)
    }

    proptest! {
        #[test]
        fn the_wanted_sheets_tell_as_much_as_all(here in few(7), coming in few(7)) {
            let here = merged(&[], &preview(&[], here));
            let taken: HashSet<String> = here.iter().map(|sheet| sheet.id.clone()).collect();
            let wanted = wanted(&taken, &coming);
            let shown: Vec<Sheet> = here.iter().filter(|sheet| wanted.contains(&sheet.id)).cloned().collect();
            prop_assert_eq!(shown.len(), wanted.len());
            let previewed = preview_among(&shown, &taken, coming.clone());
            prop_assert_eq!(&previewed, &preview(&here, coming));
            let all = merged(&here, &previewed);
            prop_assert_eq!(&added_among(&shown, &taken, &previewed)[..], &all[here.len()..]);
        }
    }
}
