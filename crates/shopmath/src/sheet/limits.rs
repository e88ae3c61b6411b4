//! How much a sheet may hold, and the check of one that came from elsewhere.
//!
//! The limits stand in `schema/sheet-1.schema.json` as well; a test compares the two. What is
//! typed is not checked for sense here: a bad torque keeps its text and gets its sentence from
//! [`mod@super::assess`].

use super::date::Date;
use super::fault::SheetFault;
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
    for row in &sheet.fasteners {
        let name = |entry: &str| format!("{entry} of fastener {}", row.id);
        let entries = [
            ("label", &row.label),
            ("thread", &row.thread),
            ("class", &row.class),
            ("spec", &row.spec),
            ("count", &row.count),
            ("head", &row.head),
            ("drive", &row.drive),
        ];
        texts(&name, &entries)?;
        most(|| name("readings"), row.readings.len(), READINGS)?;
        for reading in &row.readings {
            texts(&name, &[("reading", reading)])?;
        }
        for (key, typed) in &row.bolt {
            bolt_key(&name, key)?;
            texts(&name, &[(key, typed)])?;
        }
    }
    for row in &sheet.parts {
        let name = |entry: &str| format!("{entry} of part {}", row.id);
        texts(
            &name,
            &[("label", &row.label), ("count", &row.count), ("price", &row.price)],
        )?;
    }
    for row in &sheet.checks {
        let name = |entry: &str| format!("{entry} of check {}", row.id);
        texts(
            &name,
            &[("label", &row.label), ("before", &row.before), ("after", &row.after)],
        )?;
    }
    for row in &sheet.belts {
        let name = |entry: &str| format!("{entry} of belt {}", row.id);
        texts(&name, &[("label", &row.label)])?;
        most(|| name("query"), row.query.chars().count(), LONG_TEXT)?;
    }
    for row in &sheet.intervals {
        let name = |entry: &str| format!("{entry} of interval {}", row.id);
        let entries = [
            ("label", &row.label),
            ("distance", &row.every_distance),
            ("days", &row.every_days),
            ("odometer", &row.done_at_odometer),
            ("date", &row.done_on),
        ];
        texts(&name, &entries)?;
    }
    rows(sheet)
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
    let name = |entry: &str| format!("{entry} of the sheet");
    let entries = [
        ("machine", &sheet.machine),
        ("odometer", &sheet.odometer),
        ("date", &sheet.date),
        ("currency", &sheet.currency),
    ];
    texts(&name, &entries)?;
    most(|| name("notes"), sheet.notes.chars().count(), LONG_TEXT)
}

/// The number of rows, and that each list's numbers are there once.
fn rows(sheet: &Sheet) -> Result<(), SheetFault> {
    list("fastener", sheet.fasteners.iter().map(|row| row.id))?;
    list("part", sheet.parts.iter().map(|row| row.id))?;
    list("check", sheet.checks.iter().map(|row| row.id))?;
    list("belt", sheet.belts.iter().map(|row| row.id))?;
    list("interval", sheet.intervals.iter().map(|row| row.id))
}

fn list(what: &str, ids: impl ExactSizeIterator<Item = u32>) -> Result<(), SheetFault> {
    most(|| format!("the list of {what}s"), ids.len(), ROWS)?;
    let mut seen = HashSet::new();
    for id in ids {
        if !seen.insert(id) {
            return Err(SheetFault::Twice {
                entry: format!("{what} {id}"),
            });
        }
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

fn texts(name: &impl Fn(&str) -> String, entries: &[(&str, &String)]) -> Result<(), SheetFault> {
    entries
        .iter()
        .try_for_each(|(entry, text)| most(|| name(entry), text.chars().count(), TEXT))
}

fn most(entry: impl FnOnce() -> String, found: usize, limit: usize) -> Result<(), SheetFault> {
    if found <= limit {
        return Ok(());
    }
    Err(SheetFault::PastLimit { entry: entry(), limit })
}
