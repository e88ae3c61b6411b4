//! Sheets as one JSON file, out and in.
//!
//! The form is published in `schema/sheet-1.schema.json`:
//! `{"format": "fenderside-sheets", "schema": 1, "sheets": [ … ]}`.
//! What happens to sheets once read is [`super::merge`]'s to say.

use super::fault::SheetFault;
use super::limits;
use super::migrate;
use super::model::{SCHEMA, Sheet};
use serde::Serialize;
use serde_json::Value;
use std::collections::HashSet;

/// What tells the file from other JSON.
pub const FORMAT: &str = "fenderside-sheets";
/// The largest file that is read, bytes.
pub const BYTES: usize = 64_000_000;

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    schema: u32,
    sheets: &'a [Sheet],
}

/// The file of some sheets, indented so that it can be read without the page.
///
/// # Errors
/// The fault of the first sheet that [`import`] would refuse: what goes out comes back in.
///
/// ```
/// use shopmath::sheet::{Sheet, file};
/// let sheets = vec![Sheet::new("front-belt")];
/// let text = file::export(&sheets).unwrap();
/// assert_eq!(file::import(text.as_bytes()).unwrap(), sheets);
/// ```
pub fn export(sheets: &[Sheet]) -> Result<String, SheetFault> {
    check(sheets)?;
    let file = File {
        format: FORMAT,
        schema: SCHEMA,
        sheets,
    };
    let text = serde_json::to_string_pretty(&file).map_err(|fault| SheetFault::misshapen(1, &fault))?;
    within(text.len()).map(|()| text)
}

/// The sheets of a file, in its order, brought to the present form.
///
/// # Errors
/// A [`SheetFault`] with a sentence, for any bytes that are not such a file. One bad sheet refuses
/// the file, so that a part is never taken for the whole.
///
/// ```
/// use shopmath::sheet::file::import;
/// let file = r#"{"format":"fenderside-sheets","schema":1,"sheets":[{"schema":1,"id":"belt"}]}"#;
/// assert_eq!(import(file.as_bytes()).unwrap()[0].id, "belt");
/// let newer = file.replacen('1', "2", 1);
/// assert_eq!(import(newer.as_bytes()).unwrap_err().name(), "newer-schema");
/// assert_eq!(import(b"id,label\r\n").unwrap_err().name(), "not-json");
/// ```
pub fn import(bytes: &[u8]) -> Result<Vec<Sheet>, SheetFault> {
    within(bytes.len())?;
    let mut json = json(bytes)?;
    if json.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(SheetFault::NotSheets);
    }
    match json.get("schema").and_then(Value::as_u64) {
        Some(found) if found > u64::from(SCHEMA) => return Err(SheetFault::NewerSchema { found }),
        Some(_) => {}
        None => return Err(SheetFault::NotSheets),
    }
    let Some(Value::Array(listed)) = json.get_mut("sheets").map(Value::take) else {
        return Err(SheetFault::NotSheets);
    };
    let sheets = listed.into_iter().zip(1..);
    let sheets: Vec<Sheet> = sheets
        .map(|(json, place)| migrate::sheet(json, place))
        .collect::<Result<_, _>>()?;
    check(&sheets).map(|()| sheets)
}

/// Any bytes as JSON, after the mark that some editors put before a text.
pub(super) fn json(bytes: &[u8]) -> Result<Value, SheetFault> {
    let plain = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes);
    serde_json::from_slice(plain).map_err(|fault| SheetFault::NotJson {
        line: fault.line(),
        column: fault.column(),
    })
}

fn within(found: usize) -> Result<(), SheetFault> {
    let fault = SheetFault::TooLarge {
        what: "file",
        limit: BYTES,
    };
    if found <= BYTES { Ok(()) } else { Err(fault) }
}

fn check(sheets: &[Sheet]) -> Result<(), SheetFault> {
    if sheets.len() > limits::SHEETS {
        return Err(SheetFault::PastLimit {
            entry: "the list of sheets".into(),
            limit: limits::SHEETS,
            of: "sheets",
        });
    }
    let mut seen = HashSet::new();
    for sheet in sheets {
        limits::check(sheet)?;
        if !seen.insert(&sheet.id) {
            return Err(SheetFault::Twice {
                entry: format!("sheet {}", sheet.id),
            });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::{export, import};
    use crate::sheet::{Sheet, demo, limits};

    #[test]
    fn the_committed_file_of_the_draft_form_is_read() {
        let sheets = import(include_bytes!("testdata/sheets-0.json")).unwrap();
        let sheet = &sheets[0];
        assert_eq!(
            (sheet.schema, sheet.machine.as_str()),
            (1, "Larkfield van, second of the yard")
        );
        assert_eq!(sheet.odometer, "148210 km");
        assert_eq!(sheet.fasteners[0].readings, ["45.5"]);
        assert!(sheet.fasteners[1].readings.is_empty());
        assert_eq!(import(export(&sheets).unwrap().as_bytes()).unwrap(), sheets);
    }

    #[test]
    fn what_is_no_file_of_sheets_has_a_name() {
        let nested = "[".repeat(100_000);
        for (text, name) in [
            ("", "not-json"),
            ("{\"format\":\"fenderside-sheets\",\"sch", "not-json"),
            (nested.as_str(), "not-json"),
            ("[]", "not-sheets"),
            ("{\"format\":\"other\",\"schema\":1,\"sheets\":[]}", "not-sheets"),
            ("{\"format\":\"fenderside-sheets\",\"schema\":1}", "not-sheets"),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":2,\"sheets\":7}",
                "newer-schema",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[7]}",
                "misshapen",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"id\":\"a\"}]}",
                "misshapen",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"rev\":-1}]}",
                "misshapen",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"rev\":1e300}]}",
                "misshapen",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"rev\":9007199254740992}]}",
                "bad-entry",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"colour\":1}]}",
                "misshapen",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":9,\"id\":\"a\"}]}",
                "newer-schema",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"parts\":[{\"id\":1},{\"id\":1}]}]}",
                "twice",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\"},{\"schema\":1,\"id\":\"a\"}]}",
                "twice",
            ),
            (
                "{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{\"schema\":1,\"id\":\"a\",\"fasteners\":[{\"id\":1,\"bolt\":{\"colour\":\"red\"}}]}]}",
                "bad-entry",
            ),
        ] {
            let fault = import(text.as_bytes()).unwrap_err();
            assert_eq!(fault.name(), name, "{text:.90}: {fault}");
            assert!(fault.to_string().ends_with('.'));
        }
    }

    #[test]
    fn entries_past_their_limit_are_refused_both_ways() {
        let mut long = Sheet::new("a");
        long.machine = "ä".repeat(limits::TEXT);
        assert!(export(std::slice::from_ref(&long)).is_ok());
        long.machine.push('x');
        assert_eq!(export(&[long]).unwrap_err().name(), "past-limit");
        let mut many = Sheet::new("a");
        many.parts = (0..)
            .map(|id| super::super::Part {
                id,
                ..Default::default()
            })
            .take(limits::ROWS + 1)
            .collect();
        assert_eq!(export(&[many]).unwrap_err().name(), "past-limit");
    }

    #[test]
    fn a_mark_before_the_text_does_no_harm() {
        let text = format!("\u{feff}{}", export(&[demo::sheet()]).unwrap());
        assert_eq!(import(text.as_bytes()).unwrap(), [demo::sheet()]);
    }
}
