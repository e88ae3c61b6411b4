//! Fasteners and parts as tables for a spreadsheet: RFC 4180, one header line, texts as typed, UTF-8 behind
//! a byte order mark, without which some spreadsheets read `N·m` as `NÂ·m`.
//!
//! A text that a spreadsheet would run as a formula gets an apostrophe before it, which shows it as
//! text. CSV goes out only; what comes in is the JSON of [`super::file`](mod@super::file).

use super::model::{Fastener, Part, Sheet};

/// Says that what follows is Unicode.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// What opens a formula in some spreadsheet.
const OPENS_FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// The bolts, in the order of work; readings are joined by `; `, ticks are `yes` or nothing. A bare
/// reading is in the unit of the last torque of the spec that stands in its line.
///
/// ```
/// use shopmath::sheet::{csv, demo};
/// let table = csv::fasteners(&demo::sheet());
/// assert!(table.starts_with("\u{feff}label,thread,class,spec,count,head,drive,single-use,replaced,done,readings\r\n"));
/// ```
#[must_use]
pub fn fasteners(sheet: &Sheet) -> String {
    let header = [
        "label",
        "thread",
        "class",
        "spec",
        "count",
        "head",
        "drive",
        "single-use",
        "replaced",
        "done",
        "readings",
    ];
    table(header, sheet.fasteners.iter().map(fastener))
}

/// The parts, in the order of work, each with the sheet's currency.
///
/// ```
/// use shopmath::sheet::{csv, demo};
/// let table = csv::parts(&demo::sheet());
/// let lines: Vec<&str> = table.split("\r\n").collect();
/// assert_eq!(lines[0], "\u{feff}label,count,price,currency,done");
/// assert_eq!(lines[2], "Idler pulley,2,31.90,EUR,yes");
/// ```
#[must_use]
pub fn parts(sheet: &Sheet) -> String {
    let rows = sheet.parts.iter().map(|row| part(row, &sheet.currency));
    table(["label", "count", "price", "currency", "done"], rows)
}

fn fastener(row: &Fastener) -> [String; 11] {
    [
        row.label.clone(),
        row.thread.clone(),
        row.class.clone(),
        row.spec.clone(),
        row.count.clone(),
        row.head.clone(),
        row.drive.clone(),
        tick(row.single_use),
        tick(row.replaced),
        tick(row.done),
        row.readings.join("; "),
    ]
}

fn part(row: &Part, currency: &str) -> [String; 5] {
    [
        row.label.clone(),
        row.count.clone(),
        row.price.clone(),
        currency.to_owned(),
        tick(row.done),
    ]
}

fn tick(on: bool) -> String {
    if on { "yes".into() } else { String::new() }
}

fn table<const COLUMNS: usize>(header: [&str; COLUMNS], rows: impl Iterator<Item = [String; COLUMNS]>) -> String {
    let mut text = String::from(BYTE_ORDER_MARK);
    text.push_str(&header.join(","));
    text.push_str("\r\n");
    for row in rows {
        text.push_str(&row.map(|cell| quoted(&guarded(&cell))).join(","));
        text.push_str("\r\n");
    }
    text
}

fn guarded(cell: &str) -> String {
    let mark = if cell.trim_start_matches(' ').starts_with(OPENS_FORMULA) {
        "'"
    } else {
        ""
    };
    format!("{mark}{cell}")
}

fn quoted(cell: &str) -> String {
    if cell.contains(['"', ',', '\r', '\n']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::{fasteners, guarded, parts};
    use crate::sheet::{Fastener, Part, Sheet};

    #[test]
    fn separators_quotes_and_lines_stay_in_their_cell() {
        let row = Part {
            label: "Belt, \"6PK1453\"\nribbed".into(),
            count: "1".into(),
            price: "12,50".into(),
            ..Part::default()
        };
        let sheet = Sheet {
            parts: vec![row],
            currency: "EUR".into(),
            ..Sheet::new("a")
        };
        let table = "\u{feff}label,count,price,currency,done\r\n\"Belt, \"\"6PK1453\"\"\nribbed\",1,\"12,50\",EUR,\r\n";
        assert_eq!(parts(&sheet), table);
    }

    #[test]
    fn no_cell_is_a_formula() {
        for cell in ["=1+1", "+1", "-1", "@sum", "\t=1", "\r=1", "  =1"] {
            assert_eq!(guarded(cell), format!("'{cell}"));
        }
        assert_eq!(guarded("60 N·m + 90°"), "60 N·m + 90°");
    }

    #[test]
    fn readings_share_a_cell() {
        let row = Fastener {
            label: "Tensioner".into(),
            readings: vec!["45".into(), "46 N·m".into()],
            single_use: true,
            ..Fastener::default()
        };
        let sheet = Sheet {
            fasteners: vec![row],
            ..Sheet::new("a")
        };
        assert!(fasteners(&sheet).ends_with("Tensioner,,,,,,,yes,,,45; 46 N·m\r\n"));
    }
}
