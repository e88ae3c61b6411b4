//! Sheets from elsewhere: what is to become of each beside those at hand, and under which name.
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

/// The names, of those `taken` at hand, whose sheets [`preview_among`] has to see: that of each sheet
/// that comes, and those it would be given instead, up to the first free one. So a few sheets are read
/// to merge a few into thousands.
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

/// What would become of each sheet, in the order they come, with only some of the sheets at hand in `here`; those
/// of [`wanted`] are enough. A name of `taken` without its sheet in `here` counts as one that says something else.
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
    use super::{Fate, preview_among, wanted};
    use crate::sheet::{Sheet, limits};
    use proptest::prelude::*;
    use std::collections::HashSet;

    fn sheet(id: &str, notes: &str) -> Sheet {
        Sheet {
            notes: notes.into(),
            ..Sheet::new(id)
        }
    }

    /// The names of sheets.
    fn taken(here: &[Sheet]) -> HashSet<String> {
        here.iter().map(|sheet| sheet.id.clone()).collect()
    }

    #[test]
    fn a_conflict_keeps_both_and_coming_twice_adds_nothing() {
        let here = [sheet("a", "old")];
        let coming = vec![sheet("a", "new"), sheet("b", "b")];
        let first = preview_among(&here, &taken(&here), coming.clone());
        let found = first.iter().map(|incoming| (incoming.fate, incoming.sheet.id.as_str()));
        assert_eq!(found.collect::<Vec<_>>(), [(Fate::Conflict, "a-2"), (Fate::Added, "b")]);
        let all: Vec<Sheet> = here
            .into_iter()
            .chain(first.into_iter().map(|incoming| incoming.sheet))
            .collect();
        let again = preview_among(&all, &taken(&all), coming);
        assert!(again.iter().all(|incoming| incoming.fate == Fate::Kept));
    }

    #[test]
    fn a_save_count_alone_is_no_conflict_and_a_long_name_stays_a_name() {
        let none = HashSet::new();
        let mut saved = sheet("a", "");
        saved.rev = 9;
        assert_eq!(preview_among(&[sheet("a", "")], &none, vec![saved])[0].fate, Fate::Kept);
        let long = "x".repeat(limits::ID);
        let incoming = &preview_among(&[sheet(&long, "1")], &none, vec![sheet(&long, "2")])[0];
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
            let mut here = here;
            here.sort_by(|one, other| one.id.cmp(&other.id));
            here.dedup_by(|one, other| one.id == other.id);
            let taken = taken(&here);
            let wanted = wanted(&taken, &coming);
            let shown: Vec<Sheet> = here.iter().filter(|sheet| wanted.contains(&sheet.id)).cloned().collect();
            prop_assert_eq!(shown.len(), wanted.len());
            let previewed = preview_among(&shown, &taken, coming.clone());
            prop_assert_eq!(previewed, preview_among(&here, &taken, coming));
        }
    }
}
