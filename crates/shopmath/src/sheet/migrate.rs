//! Older forms of a sheet brought to the present one, as JSON, before it is read.
//!
//! Form 0, the draft before the first release, named three things otherwise: the machine was
//! `name`, the odometer a number `odometer_km`, and a bolt had one `reading`.

use super::fault::SheetFault;
use super::model::{SCHEMA, Sheet};
use serde_json::{Map, Value};

/// A sheet from the JSON of any form; `place` is its number in the file, from 1.
pub(super) fn sheet(mut json: Value, place: usize) -> Result<Sheet, SheetFault> {
    let Some(entries) = json.as_object_mut() else {
        return Err(SheetFault::misshapen(place, &"not a set of entries"));
    };
    match entries.get("schema").and_then(Value::as_u64) {
        Some(0) => from_draft(entries),
        Some(found) if found > u64::from(SCHEMA) => return Err(SheetFault::NewerSchema { found }),
        Some(_) => {}
        None => return Err(SheetFault::misshapen(place, &"it has no schema number")),
    }
    serde_json::from_value(json).map_err(|fault| SheetFault::misshapen(place, &fault))
}

/// Form 0 to form 1.
fn from_draft(entries: &mut Map<String, Value>) {
    entries.insert("schema".into(), 1.into());
    if let Some(name) = entries.remove("name") {
        entries.insert("machine".into(), name);
    }
    if let Some(odometer) = entries.remove("odometer_km") {
        let typed = match odometer {
            Value::Number(number) => format!("{number} km").into(),
            other => other,
        };
        entries.insert("odometer".into(), typed);
    }
    let rows = entries.get_mut("fasteners").and_then(Value::as_array_mut);
    for row in rows.into_iter().flatten().filter_map(Value::as_object_mut) {
        if let Some(reading) = row.remove("reading") {
            row.insert("readings".into(), vec![reading].into());
        }
    }
}
