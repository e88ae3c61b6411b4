//! What can be wrong with a file, a record or a link, and the sentence about it.
//!
//! Faults of single fields are the field's own and keep nothing from being read: see
//! [`mod@super::assess`].

use super::model::SCHEMA;
use core::fmt;

/// The letters of a foreign text that a sentence repeats at most.
const REPEATED: usize = 120;

/// Why something is not a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SheetFault {
    /// Larger than is read at all.
    TooLarge {
        /// What it is: the file, the link.
        what: &'static str,
        /// The most that is read, bytes.
        limit: usize,
    },
    /// Not JSON, or cut off.
    NotJson {
        /// Where reading ended, from 1.
        line: usize,
        /// Where in the line, from 1.
        column: usize,
    },
    /// JSON, but of something else.
    NotSheets,
    /// Written by a newer version.
    NewerSchema {
        /// The number found.
        found: u64,
    },
    /// JSON of a sheet with an entry missing, unknown, or of the wrong kind.
    Misshapen {
        /// Which sheet, from 1.
        sheet: usize,
        /// What the reader of JSON says about it.
        detail: String,
    },
    /// An entry past its limit.
    PastLimit {
        /// The entry, such as "label of bolt 3", counted from 1 in its list.
        entry: String,
        /// The most there may be.
        limit: usize,
        /// What is counted, such as "characters".
        of: &'static str,
    },
    /// An entry that must hold to a form and does not.
    BadEntry {
        /// The entry.
        entry: String,
        /// The form.
        form: &'static str,
    },
    /// Two rows or sheets under one name.
    Twice {
        /// What is there twice, such as "bolt id 3" or "sheet front-belt".
        entry: String,
    },
    /// A record whose outside and inside name different sheets.
    RecordMismatch,
    /// Not the form of a link: a number, a point, a payload.
    NotALink,
    /// A link of a newer version.
    NewerLink {
        /// The number found.
        found: u64,
    },
    /// A link that was cut off or changed on its way.
    DamagedLink,
}

impl SheetFault {
    /// The stable name, for other programs.
    ///
    /// ```
    /// use shopmath::sheet::SheetFault;
    /// assert_eq!(SheetFault::NotALink.name(), "not-a-link");
    /// ```
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::TooLarge { .. } => "too-large",
            Self::NotJson { .. } => "not-json",
            Self::NotSheets => "not-sheets",
            Self::NewerSchema { .. } => "newer-schema",
            Self::Misshapen { .. } => "misshapen",
            Self::PastLimit { .. } => "past-limit",
            Self::BadEntry { .. } => "bad-entry",
            Self::Twice { .. } => "twice",
            Self::RecordMismatch => "record-mismatch",
            Self::NotALink => "not-a-link",
            Self::NewerLink { .. } => "newer-link",
            Self::DamagedLink => "damaged-link",
        }
    }

    /// A shape fault, the foreign part of its sentence cut to a readable length.
    pub(super) fn misshapen(sheet: usize, detail: &impl ToString) -> Self {
        Self::Misshapen {
            sheet,
            detail: detail.to_string().chars().take(REPEATED).collect(),
        }
    }
}

impl fmt::Display for SheetFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { what, limit } => write!(
                out,
                "This {what} is larger than the {} KB that are read. Send the sheets as several files.",
                limit / 1000
            ),
            Self::NotJson { line, column } => write!(
                out,
                "Not a sheet file, or cut off: reading stopped at line {line}, character {column}. Choose the .json file that was exported."
            ),
            Self::NotSheets => {
                out.write_str("This is JSON, but not of sheets. Choose the .json file that was exported.")
            }
            Self::NewerSchema { found } => write!(
                out,
                "Written by a newer version of the page (form {found}; this one reads up to {SCHEMA}). Update the page, then try again."
            ),
            Self::Misshapen { sheet, detail } => write!(out, "Sheet {sheet} cannot be read: {detail}."),
            Self::PastLimit { entry, limit, of } => write!(out, "Too much in {entry}: at most {limit} {of} are read."),
            Self::BadEntry { entry, form } => write!(out, "The {entry} is not {form}."),
            Self::Twice { entry } => write!(
                out,
                "There are two of {entry}, and only one can be kept under that name."
            ),
            Self::RecordMismatch => out.write_str("The record's label and its contents name different sheets."),
            Self::NotALink => out.write_str(
                "Not a shared sheet: a link to one has s/1. and a long run of letters. Copy the whole link.",
            ),
            Self::NewerLink { found } => write!(
                out,
                "This link was made by a newer version of the page (form {found}; this one reads {SCHEMA}). Update the page, then open it again."
            ),
            Self::DamagedLink => out.write_str(
                "This link was cut off or changed on its way. Copy the whole link, or ask for the file instead.",
            ),
        }
    }
}

impl core::error::Error for SheetFault {}
