//! How much a sheet may hold, and the check of one that came from elsewhere.
//!
//! The limits stand in `schema/sheet-1.schema.json` as well; a test compares the two. What is
//! typed is not checked for sense here: a bad torque keeps its text and gets its sentence from
//! [`mod@super::assess`].

use super::date::Date;
use super::fault::SheetFault;
use super::fields::Entries;
use super::model::{SCHEMA, Sheet};
use crate::fastener::bolt::field;
use std::collections::HashSet;

/// Characters of an entry.
pub const TEXT: usize = 300;
/// Characters of the notes, and of a belt's query.
pub const LONG_TEXT: usize = 20_000;
/// Rows of one list of a sheet.
pub const ROWS: usize = 500;
/// Readings of one row.
pub const READINGS: usize = 100;
/// Sheets of one file.
pub const SHEETS: usize = 10_000;
/// Characters of a sheet's id.
pub const ID: usize = 64;
/// The largest number of saves: what every reader of JSON holds exactly, 2⁵³ − 1.
pub const REV: u64 = (1 << 53) - 1;

/// Checks every text, list and number of a sheet against its limit.
///
/// # Errors
/// [`SheetFault::NewerSchema`], [`SheetFault::PastLimit`], [`SheetFault::BadEntry`] or
/// [`SheetFault::Twice`], naming the first entry at fault.
///
/// ```
/// use shopmath::sheet::{Sheet, limits};
/// assert!(limits::check(&Sheet::new("front-belt")).is_ok());
/// assert_eq!(limits::check(&Sheet::new("../etc")).unwrap_err().name(), "bad-entry");
/// ```
pub fn check(sheet: &Sheet) -> Result<(), SheetFault> {
    head(sheet)?;
    for (row, place) in sheet.fasteners.iter().zip(1..) {
        let name = |entry: &str| format!("{entry} of bolt {place}");
        most(|| name("readings"), row.readings.len(), READINGS, "readings")?;
        row.readings
            .iter()
            .try_for_each(|reading| letters(|| name("reading"), reading, TEXT))?;
        // Before any text of a key that is not known is named by it.
        row.bolt.keys().try_for_each(|key| bolt_key(&name, key))?;
    }
    list("bolt", &sheet.fasteners, |row| row.id)?;
    list("part", &sheet.parts, |row| row.id)?;
    list("check", &sheet.checks, |row| row.id)?;
    list("belt", &sheet.belts, |row| row.id)?;
    list("interval", &sheet.intervals, |row| row.id)?;
    let mut belts = sheet.belts.iter().zip(1..);
    belts.try_for_each(|(row, place)| letters(|| format!("query of belt {place}"), &row.query, LONG_TEXT))
}

/// Whether a text can name a sheet: 1 to [`ID`] letters of `a–z`, `0–9` and `-`.
///
/// ```
/// use shopmath::sheet::limits::is_id;
/// assert!(is_id("front-belt-2") && is_id(&"a".repeat(64)));
/// assert!(!is_id("") && !is_id("Front belt") && !is_id(&"a".repeat(65)));
/// ```
#[must_use]
pub fn is_id(text: &str) -> bool {
    let letter = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    (1..=ID).contains(&text.len()) && text.bytes().all(letter)
}

/// A text as an entry takes it: whole, or its beginning with `…` behind, so that what was cut off a figure is
/// never read as another.
pub(super) fn cut(text: &str) -> String {
    match text.char_indices().nth(TEXT) {
        Some(_) => text.chars().take(TEXT - 1).chain(['…']).collect(),
        None => text.to_owned(),
    }
}

fn head(sheet: &Sheet) -> Result<(), SheetFault> {
    if sheet.schema > SCHEMA {
        return Err(SheetFault::NewerSchema {
            found: sheet.schema.into(),
        });
    }
    let form = |right: bool, entry: &str, form| {
        let fault = || SheetFault::BadEntry {
            entry: entry.into(),
            form,
        };
        if right { Ok(()) } else { Err(fault()) }
    };
    form(sheet.schema == SCHEMA, "sheet's schema number", "1")?;
    form(is_id(&sheet.id), "sheet's id", "1 to 64 of a–z, 0–9 and -")?;
    form(sheet.rev <= REV, "sheet's number of saves", "below 2⁵³")?;
    let dated =
        sheet.updated.is_empty() || Date::read(&sheet.updated).is_some_and(|day| day.to_string() == sheet.updated);
    form(dated, "day of the last save", "a date such as 2025-03-31")?;
    sheet.texts().try_for_each(|(key, text)| {
        let limit = if key == "notes" { LONG_TEXT } else { TEXT };
        letters(|| format!("{key} of the sheet"), text, limit)
    })
}

/// The number of rows, that each number is there once, and the rows' texts.
fn list<R: Entries>(what: &str, rows: &[R], id: fn(&R) -> u32) -> Result<(), SheetFault> {
    most(|| format!("the list of {what}s"), rows.len(), ROWS, "rows")?;
    let mut seen = HashSet::new();
    for (row, place) in rows.iter().zip(1..) {
        if !seen.insert(id(row)) {
            return Err(SheetFault::Twice {
                entry: format!("{what} id {}", id(row)),
            });
        }
        row.texts()
            .try_for_each(|(key, text)| letters(|| format!("{key} of {what} {place}"), text, TEXT))?;
    }
    Ok(())
}

/// A key of the Bolt screen that the row itself does not hold.
fn bolt_key(name: &impl Fn(&str) -> String, key: &str) -> Result<(), SheetFault> {
    let of_the_row = matches!(key, "thread" | "class" | "spec" | "reading");
    if field::of(key).is_some() && !of_the_row {
        return Ok(());
    }
    Err(SheetFault::BadEntry {
        entry: name("further entry"),
        form: "one of the Bolt screen's further fields",
    })
}

fn letters(entry: impl FnOnce() -> String, text: &str, limit: usize) -> Result<(), SheetFault> {
    most(entry, text.chars().count(), limit, "characters")
}

fn most(entry: impl FnOnce() -> String, found: usize, limit: usize, of: &'static str) -> Result<(), SheetFault> {
    if found <= limit {
        return Ok(());
    }
    Err(SheetFault::PastLimit {
        entry: entry(),
        limit,
        of,
    })
}

#[cfg(test)]
mod tests {
    use super::{READINGS, ROWS, TEXT, check};
    use crate::sheet::{Fastener, Part, Sheet};

    fn long() -> String {
        "x".repeat(TEXT + 1)
    }

    #[test]
    fn what_is_too_much_is_said_by_its_place_and_with_what_is_counted() {
        let said = |spoil: fn(&mut Sheet)| {
            let mut sheet = Sheet::new("a");
            sheet.fasteners = [7, 3]
                .map(|id| Fastener {
                    id,
                    ..Fastener::default()
                })
                .to_vec();
            spoil(&mut sheet);
            check(&sheet).unwrap_err().to_string()
        };
        for (spoil, words) in [
            (
                (|sheet| sheet.fasteners[1].label = long()) as fn(&mut Sheet),
                "Too much in label of bolt 2: at most 300 characters are read.",
            ),
            (
                |sheet| drop(sheet.fasteners[0].bolt.insert("grip".into(), long())),
                "Too much in grip of bolt 1: at most 300 characters are read.",
            ),
            (
                |sheet| sheet.fasteners[1].readings = vec![String::new(); READINGS + 1],
                "Too much in readings of bolt 2: at most 100 readings are read.",
            ),
            (
                |sheet| sheet.parts = vec![Part::default(); ROWS + 1],
                "Too much in the list of parts: at most 500 rows are read.",
            ),
            (
                |sheet| sheet.notes = "x".repeat(super::LONG_TEXT + 1),
                "Too much in notes of the sheet: at most 20000 characters are read.",
            ),
            (
                |sheet| sheet.fasteners[1].id = 7,
                "There are two of bolt id 7, and only one can be kept under that name.",
            ),
        ] {
            assert_eq!(said(spoil), words);
        }
    }
}
