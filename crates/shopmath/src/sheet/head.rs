//! What a list of sheets shows of each, so that it need not read them whole.
//!
//! A head is made from its sheet at every save and kept beside it; a lost one is made again. Where
//! it is kept is the page's affair, and so are lower case and accents, whose tables the browser has already.

use super::assess::{self, Progress};
use super::date::Date;
use super::model::Sheet;
use core::cmp::Ordering;

/// A sheet as a list of sheets shows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// The sheet's id.
    pub id: String,
    /// The number of saves of the sheet it was made from; another number there makes it stale.
    pub rev: u64,
    /// The day of the last save, `YYYY-MM-DD`; empty before the first.
    pub updated: String,
    /// The machine, as typed.
    pub machine: String,
    /// The day of the job, as typed.
    pub date: String,
    /// Whether it is the demo.
    pub demo: bool,
    /// Rows done and rows there are.
    pub progress: Progress,
    /// Whether the sheet reads complete.
    pub complete: bool,
    /// What a search looks through, as typed, an entry a line.
    pub words: String,
}

impl Head {
    /// The head of a sheet; `complete` is [`super::SheetAssessment::complete`] of it.
    ///
    /// ```
    /// use shopmath::{sheet::{Head, assess, demo}, tools::Tools};
    /// let sheet = demo::sheet();
    /// let head = Head::of(&sheet, assess(&sheet, Tools::Both, None).complete());
    /// assert_eq!((head.progress.done, head.progress.of, head.complete), (4, 8, false));
    /// assert!(head.words.contains("Tensioner bolt"));
    /// ```
    #[must_use]
    pub fn of(sheet: &Sheet, complete: bool) -> Self {
        Self {
            id: sheet.id.clone(),
            rev: sheet.rev,
            updated: sheet.updated.clone(),
            machine: sheet.machine.clone(),
            date: sheet.date.clone(),
            demo: sheet.demo,
            progress: assess::progress(sheet),
            complete,
            words: words(sheet),
        }
    }

    /// The day it is listed by: the job's, or while that cannot be read the last save's.
    fn day(&self) -> Option<Date> {
        Date::read(&self.date).or_else(|| Date::read(&self.updated))
    }
}

/// The order of a list: the newest job first, by the last save where the job has no day, and
/// sheets without any day last. Two heads compare equal only under one id, so that a list never
/// changes its order by itself.
///
/// ```
/// use shopmath::sheet::{Head, Sheet, head};
/// let on = |id: &str, date: &str| Head::of(&Sheet { date: date.into(), ..Sheet::new(id) }, false);
/// let mut list = [on("a", "2024-05-01"), on("b", "2025-05-01"), on("c", "")];
/// list.sort_by(head::compare);
/// assert_eq!(list.map(|head| head.id), ["b", "a", "c"]);
/// ```
#[must_use]
pub fn compare(one: &Head, other: &Head) -> Ordering {
    let newest = other.day().cmp(&one.day());
    newest
        .then_with(|| other.updated.cmp(&one.updated))
        .then_with(|| one.id.cmp(&other.id))
}

/// Whether each word of a query stands somewhere in a head's words, also as a part of a word.
/// Capitals and accents are told apart, so both texts come in lower case and without accents; an empty
/// query is in everything.
///
/// ```
/// use shopmath::sheet::head;
/// assert!(head::matches("larkfield van\ntensioner bolt\nm10x1.5", "tension larkfield"));
/// assert!(!head::matches("larkfield van\ntensioner bolt", "tension idler"));
/// ```
#[must_use]
pub fn matches(words: &str, query: &str) -> bool {
    query.split(char::is_whitespace).all(|word| words.contains(word))
}

fn words(sheet: &Sheet) -> String {
    let mut entries = vec![&sheet.machine, &sheet.notes, &sheet.date];
    for row in &sheet.fasteners {
        entries.extend([&row.label, &row.thread, &row.class, &row.spec]);
    }
    entries.extend(sheet.parts.iter().map(|row| &row.label));
    for row in &sheet.checks {
        entries.extend([&row.label, &row.before, &row.after]);
    }
    entries.extend(sheet.belts.iter().map(|row| &row.label));
    entries.extend(sheet.intervals.iter().map(|row| &row.label));
    let mut words = String::new();
    for entry in entries.into_iter().filter(|entry| !entry.is_empty()) {
        if !words.is_empty() {
            words.push('\n');
        }
        words.push_str(entry);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::{Head, compare, matches};
    use crate::sheet::{Sheet, demo};

    fn head(id: &str, date: &str, updated: &str) -> Head {
        let sheet = Sheet {
            date: date.into(),
            updated: updated.into(),
            ..Sheet::new(id)
        };
        Head::of(&sheet, false)
    }

    #[test]
    fn the_newest_job_stands_first_and_no_order_is_left_open() {
        let sorted = [
            head("planned", "2026-01-01", "2025-01-01"),
            head("undated", "", "2025-06-01"),
            head("no-such-day", "2025-02-30", "2025-05-01"),
            head("b", "2025-04-01", "2025-04-03"),
            head("a", "2025-04-01", "2025-04-02"),
            head("c", "2025-04-01", "2025-04-02"),
            head("never", "", ""),
        ];
        for turn in 0..sorted.len() {
            let mut list = sorted.clone();
            list.rotate_left(turn);
            list.reverse();
            list.sort_by(compare);
            assert_eq!(list, sorted);
        }
    }

    #[test]
    fn every_kind_of_entry_is_searched_and_nothing_runs_together() {
        let words = Head::of(&demo::sheet(), false).words;
        for entry in [
            "Larkfield",
            "example figures",
            "2025-03-31",
            "Idler pulley bolt",
            "M10x1.5",
            "10.9",
            "30 N·m + 90°",
            "Ribbed belt 6PK1460",
            "Tensioner swing at idle",
            "9 mm",
            "2 mm",
            "Front accessory drive",
            "Belt service",
        ] {
            assert!(words.lines().any(|line| line.contains(entry)), "{entry}");
        }
        assert_eq!(words.lines().filter(|line| line.is_empty()).count(), 0);
    }

    #[test]
    fn all_words_must_be_there_in_any_order() {
        let words = "larkfield van\ntensioner bolt";
        for (query, found) in [
            ("", true),
            ("  ", true),
            ("bolt\u{a0}van", true),
            ("van x", false),
            ("vanten", false),
            ("Van", false),
        ] {
            assert_eq!(matches(words, query), found, "{query:?}");
        }
    }
}
