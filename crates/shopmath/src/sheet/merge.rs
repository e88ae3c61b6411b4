//! Sheets from elsewhere put beside those at hand: what would happen, and doing it.
//!
//! Nothing at hand is ever changed. A sheet that says the same is left out, one that says something
//! else under a name already taken comes in under a new one, and both are kept.

use super::limits;
use super::model::Sheet;
use std::collections::HashMap;

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
    let mut taken: HashMap<String, Sheet> = here.iter().map(|sheet| (sheet.id.clone(), sheet.clone())).collect();
    coming
        .into_iter()
        .map(|sheet| {
            let incoming = place(&taken, sheet);
            if incoming.fate != Fate::Kept {
                taken.insert(incoming.sheet.id.clone(), incoming.sheet.clone());
            }
            incoming
        })
        .collect()
}

/// The sheets at hand with those of a preview that are not there yet behind them.
///
/// A name taken since the preview was made is found again, so that nothing is overwritten then
/// either.
#[must_use]
pub fn merged(here: &[Sheet], previewed: &[Incoming]) -> Vec<Sheet> {
    let coming = previewed.iter().filter(|incoming| incoming.fate != Fate::Kept);
    let coming = coming.map(|incoming| incoming.sheet.clone()).collect();
    let added = preview(here, coming).into_iter();
    let added = added.filter(|incoming| incoming.fate != Fate::Kept);
    here.iter()
        .cloned()
        .chain(added.map(|incoming| incoming.sheet))
        .collect()
}

fn place(taken: &HashMap<String, Sheet>, sheet: Sheet) -> Incoming {
    let came_as = sheet.id.clone();
    let same = |name: &String| taken.get(name).map(|there| there.says_the_same(&sheet));
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
    use super::{Fate, merged, preview};
    use crate::sheet::{Sheet, limits};

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
}
