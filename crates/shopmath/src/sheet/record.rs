//! A sheet as the page keeps it: a label to list and compare by, and the sheet's own JSON.
//!
//! Where it is kept, and what to do with a record that cannot be read, is the page's affair.

use super::fault::SheetFault;
use super::file::json;
use super::limits;
use super::migrate;
use super::model::Sheet;

/// The largest body that is read, bytes.
pub const BYTES: usize = 8_000_000;

/// One kept sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// The form of the body.
    pub schema: u32,
    /// The sheet's id, the key it is kept under.
    pub id: String,
    /// The sheet's number of saves.
    pub rev: u64,
    /// The day of the last save, `YYYY-MM-DD`, or empty.
    pub updated: String,
    /// The sheet as JSON.
    pub body: String,
}

impl Record {
    /// The record of a sheet.
    ///
    /// # Errors
    /// The fault of a sheet that could not be read back.
    ///
    /// ```
    /// use shopmath::sheet::{Sheet, record::Record};
    /// let sheet = Sheet::new("front-belt");
    /// assert_eq!(Record::of(&sheet).unwrap().sheet().unwrap(), sheet);
    /// ```
    pub fn of(sheet: &Sheet) -> Result<Self, SheetFault> {
        limits::check(sheet)?;
        let body = serde_json::to_string(sheet).map_err(|fault| SheetFault::misshapen(1, &fault))?;
        within(body.len())?;
        Ok(Self {
            schema: sheet.schema,
            id: sheet.id.clone(),
            rev: sheet.rev,
            updated: sheet.updated.clone(),
            body,
        })
    }

    /// The sheet, brought to the present form.
    ///
    /// # Errors
    /// As [`read`], and [`SheetFault::RecordMismatch`] where the label tells of another sheet or
    /// save than the body.
    ///
    /// ```
    /// use shopmath::sheet::{demo, record::Record};
    /// let mut record = Record::of(&demo::sheet()).unwrap();
    /// assert_eq!(record.sheet().unwrap(), demo::sheet());
    /// record.rev += 1;
    /// assert_eq!(record.sheet().unwrap_err().name(), "record-mismatch");
    /// ```
    pub fn sheet(&self) -> Result<Sheet, SheetFault> {
        let sheet = read(self.body.as_bytes())?;
        let same = sheet.id == self.id && sheet.rev == self.rev && sheet.updated == self.updated;
        if same {
            Ok(sheet)
        } else {
            Err(SheetFault::RecordMismatch)
        }
    }
}

/// The sheet of a record's body alone, at most [`BYTES`] long, brought to the present form.
///
/// # Errors
/// A [`SheetFault`] with a sentence, for any bytes that are no sheet.
///
/// ```
/// use shopmath::sheet::record::read;
/// let draft = read(br#"{"schema":0,"id":"a","name":"Larkfield van","odometer_km":12.5}"#).unwrap();
/// assert_eq!((&*draft.machine, &*draft.odometer), ("Larkfield van", "12.5 km"));
/// assert_eq!(read(b"{}").unwrap_err().name(), "misshapen");
/// ```
pub fn read(body: &[u8]) -> Result<Sheet, SheetFault> {
    within(body.len())?;
    let sheet = migrate::sheet(json(body)?, 1)?;
    limits::check(&sheet).map(|()| sheet)
}

fn within(found: usize) -> Result<(), SheetFault> {
    let fault = SheetFault::TooLarge {
        what: "record",
        limit: BYTES,
    };
    if found <= BYTES { Ok(()) } else { Err(fault) }
}

#[cfg(test)]
mod tests {
    use super::{Record, read};
    use crate::sheet::demo;

    #[test]
    fn a_label_of_another_save_is_noticed() {
        let mut record = Record::of(&demo::sheet()).unwrap();
        record.rev += 1;
        assert_eq!(record.sheet().unwrap_err().name(), "record-mismatch");
    }

    #[test]
    fn a_body_of_the_draft_form_is_read() {
        let sheet = read(br#"{"schema":0,"id":"a","name":"Larkfield van","odometer_km":12.5}"#).unwrap();
        assert_eq!(
            (sheet.machine.as_str(), sheet.odometer.as_str()),
            ("Larkfield van", "12.5 km")
        );
        let listed = read(br#"{"schema":0,"id":"a","odometer_km":[1]}"#).unwrap_err();
        assert_eq!(listed.name(), "misshapen");
    }
}
