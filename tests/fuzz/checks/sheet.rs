//! Files and records of sheets: any bytes.

use crate::finite;
use crate::link::said;
use shopmath::sheet::bolts::TurnedBy;
use shopmath::sheet::record::{self, Record};
use shopmath::sheet::{Date, Sheet, assess, csv, file, limits};
use shopmath::tools::Tools;

/// Rows of a sheet that is assessed; more of them only take longer.
const ROWS: usize = 20;

/// Takes the input as a file and as a record's body. Each is sheets that go out and come back the
/// same and can be assessed, or a fault with a name and a sentence.
pub fn sheet(input: &[u8]) {
    match file::import(input) {
        Ok(sheets) => {
            // An input is far smaller than any limit of what goes out.
            let text = file::export(&sheets).expect("what was read is within the limits");
            assert_eq!(file::import(text.as_bytes()), Ok(sheets.clone()));
            sheets.iter().take(2).for_each(assessed);
        }
        Err(fault) => said(&fault),
    }
    match record::read(input) {
        Ok(sheet) => {
            let record = Record::of(&sheet).expect("what was read is within the limits");
            assert_eq!(record.sheet(), Ok(sheet.clone()));
            assessed(&sheet);
        }
        Err(fault) => said(&fault),
    }
}

fn assessed(sheet: &Sheet) {
    assert_eq!(limits::check(sheet), Ok(()));
    let mut sheet = sheet.clone();
    sheet.fasteners.truncate(ROWS);
    let found = assess(&sheet, Tools::Both, Date::read("2025-03-31"));
    assert_eq!(found.fasteners.len(), sheet.fasteners.len());
    assert!(!found.complete() || found.open.is_empty());
    for row in &found.fasteners {
        finite::findings(&row.spec);
        finite::findings(&row.setting);
        finite::findings(row.readings.iter().filter_map(|reading| reading.deviation.as_ref()));
        if let Some(TurnedBy::Hexagon(size) | TurnedBy::Key(size)) = &row.turned_by {
            finite::findings([size]);
        }
    }
    assert!(found.next_due_distance.is_none_or(|(_, at)| at.value.is_finite()));
    for (_, fault) in found.all_faults() {
        assert!(!fault.sentence.is_empty());
    }
    let _ = (csv::fasteners(&sheet), csv::parts(&sheet));
}
