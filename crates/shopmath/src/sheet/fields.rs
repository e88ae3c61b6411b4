//! A sheet's entries by name: which ones a row has, what to call them, and how to read and change
//! one.
//!
//! The screen draws its fields from these lists, as the other screens do from theirs. Rows are
//! moved, ticked and removed in [`super::order`]; what an entry means is [`mod@super::assess`]'s to
//! say.

use super::limits::cut;
use super::model::{Belt, Check, Fastener, Interval, Part, Sheet};
use super::order::{List, in_list};
use crate::field::{Field, Reads};
use crate::quantity::Unit;
use std::collections::BTreeMap;

/// Where an entry stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum At {
    /// In the sheet's head.
    Head,
    /// In the row of this number of a list.
    Row(List, u32),
}

const fn entry(key: &'static str, label: &'static str, reads: Reads, hint: &'static str) -> Field {
    Field {
        key,
        label,
        reads,
        default: "",
        hint,
        choices: &[],
        section: "",
    }
}

/// The head of a sheet.
pub const HEAD: &[Field] = &[
    entry("machine", "Machine", Reads::Text, "such as Larkfield van, 2.2 diesel"),
    entry(
        "odometer",
        "Odometer",
        Reads::Value(Unit::Kilometre),
        "km, or 93 000 mi",
    ),
    entry("date", "Date", Reads::Text, "YYYY-MM-DD"),
];
/// What stands at the foot of a sheet: notes, several lines allowed.
pub const NOTES: &[Field] = &[entry("notes", "Notes", Reads::Text, "")];
/// The currency of all prices.
pub const MONEY: &[Field] = &[entry("currency", "Currency", Reads::Text, "such as EUR")];
/// A row of bolts: what decides it.
pub const FASTENER: &[Field] = &[
    entry("label", "Bolt", Reads::Text, "what it holds"),
    entry("thread", "Thread", Reads::Text, "M10x1.5, 3/8-16"),
    entry("class", "Class", Reads::Text, "8.8, grade 5"),
    entry("spec", "Spec", Reads::Spec, "60 N·m, 30 N·m + 90°"),
    entry("count", "How many", Reads::Text, "1"),
];
/// A row of bolts: what is needed less often.
pub const FASTENER_MORE: &[Field] = &[
    entry("head", "Socket or bit", Reads::Text, "by the standard"),
    entry("drive", "Square drive", Reads::Text, "1/2 in"),
    entry("tool", "Wrench tolerance", Reads::Value(Unit::Percent), "4 %"),
    entry(
        "wrench",
        "Wrench length",
        Reads::Value(Unit::Millimetre),
        "to the grip's middle",
    ),
    entry("adapter", "Adapter length", Reads::Value(Unit::Millimetre), "none"),
    entry("adapter-angle", "Adapter angle", Reads::Value(Unit::Degree), "0°"),
    entry(
        "grip",
        "Grip (clamped thickness)",
        Reads::Value(Unit::Millimetre),
        "for torque and angle",
    ),
];
/// A part.
pub const PART: &[Field] = &[
    entry("label", "Part", Reads::Text, "what it is"),
    entry("count", "How many", Reads::Text, "1"),
    entry("price", "Price of one", Reads::Text, "none"),
];
/// A check.
pub const CHECK: &[Field] = &[
    entry("label", "Check", Reads::Text, "wobble, wear, alignment"),
    entry("before", "Before", Reads::Text, "as found"),
    entry("after", "After", Reads::Text, "as left"),
];
/// A belt drive.
pub const BELT: &[Field] = &[entry("label", "Belt drive", Reads::Text, "what it drives")];
/// An interval.
pub const INTERVAL: &[Field] = &[
    entry("label", "Work", Reads::Text, "what comes round again"),
    entry(
        "every-distance",
        "Every, distance",
        Reads::Value(Unit::Kilometre),
        "150 000 km",
    ),
    entry(
        "done-at-odometer",
        "Last done at",
        Reads::Value(Unit::Kilometre),
        "odometer",
    ),
    entry("every-days", "Every, days or years", Reads::Text, "730"),
    entry("done-on", "Last done on", Reads::Text, "YYYY-MM-DD"),
];

/// The text of an entry; empty where there is no such row or entry.
///
/// ```
/// use shopmath::sheet::{demo, fields::{At, get}};
/// assert_eq!(get(&demo::sheet(), At::Head, "currency"), "EUR");
/// ```
#[must_use]
pub fn get<'a>(sheet: &'a Sheet, at: At, key: &str) -> &'a str {
    let text = match at {
        At::Head => sheet.entry(key),
        At::Row(list, id) => in_list!(list, sheet, |rows| {
            rows.iter().find(|row| row.id == id).and_then(|row| row.entry(key))
        }),
    };
    text.map_or("", String::as_str)
}

/// Writes an entry; whether there is such a row and entry.
///
/// ```
/// use shopmath::sheet::{demo, fields::{At, get, set}};
/// let mut sheet = demo::sheet();
/// assert!(set(&mut sheet, At::Head, "currency", "CHF".into()));
/// assert_eq!(get(&sheet, At::Head, "currency"), "CHF");
/// assert!(!set(&mut sheet, At::Head, "colour", "red".into()));
/// ```
pub fn set(sheet: &mut Sheet, at: At, key: &str, text: String) -> bool {
    match at {
        At::Head => sheet.write(key, text),
        At::Row(list, id) => in_list!(list, sheet, |rows| {
            let row = rows.iter_mut().find(|row| row.id == id);
            row.is_some_and(|row| row.write(key, text))
        }),
    }
}

/// Writes reading number `index` (from 0) of a row of bolts; empty readings at the end are left
/// out.
///
/// ```
/// use shopmath::sheet::{demo, fields::set_reading};
/// let mut sheet = demo::sheet();
/// let id = sheet.fasteners[0].id;
/// set_reading(&mut sheet, id, 2, "45".into());
/// assert_eq!(sheet.fasteners[0].readings[2], "45");
/// set_reading(&mut sheet, id, 2, String::new());
/// assert_eq!(sheet.fasteners[0].readings.len(), 2);
/// ```
pub fn set_reading(sheet: &mut Sheet, id: u32, index: usize, text: String) {
    let Some(row) = sheet.fasteners.iter_mut().find(|row| row.id == id) else {
        return;
    };
    if index >= super::limits::READINGS {
        return;
    }
    while row.readings.len() <= index {
        row.readings.push(String::new());
    }
    if let Some(reading) = row.readings.get_mut(index) {
        *reading = text;
    }
    while row.readings.last().is_some_and(String::is_empty) {
        row.readings.pop();
    }
}

/// How many readings of a row of bolts to ask for: those there are and the next one, as far as
/// there are bolts; `count` is the number of bolts where it can be read.
///
/// ```
/// use shopmath::sheet::{Fastener, fields::reading_fields};
/// let mut row = Fastener::default();
/// assert_eq!(reading_fields(&row, Some(2)), 1);
/// row.readings = vec!["60".into()];
/// assert_eq!((reading_fields(&row, Some(2)), reading_fields(&row, Some(1))), (2, 1));
/// ```
#[must_use]
pub fn reading_fields(row: &Fastener, count: Option<u64>) -> usize {
    let there = row.readings.len();
    let bolts = count.and_then(|count| usize::try_from(count).ok()).unwrap_or(1);
    let most = bolts.min(super::limits::READINGS);
    there.max(most.min(there + 1)).max(1)
}

/// How many readings stand in a row beyond its `count` of bolts; none while that cannot be read.
///
/// ```
/// use shopmath::sheet::{Fastener, fields::readings_beyond};
/// let row = Fastener { readings: ["24", "", "26"].map(String::from).to_vec(), ..Fastener::default() };
/// assert_eq!([Some(1), Some(3), None].map(|count| readings_beyond(&row, count)), [1, 0, 0]);
/// ```
#[must_use]
pub fn readings_beyond(row: &Fastener, count: Option<u64>) -> usize {
    let bolts = count
        .and_then(|count| usize::try_from(count).ok())
        .unwrap_or(usize::MAX);
    let beyond = row.readings.iter().skip(bolts);
    beyond.filter(|typed| !typed.trim().is_empty()).count()
}

/// Whether some bolts of a row have their reading and others have none, of its `count` and as many as a row
/// takes; none needs any, and nothing is missing while the count cannot be read.
///
/// ```
/// use shopmath::sheet::{Fastener, fields::readings_missing};
/// let row = |readings: &[&str]| Fastener { readings: readings.iter().map(|&text| text.into()).collect(), ..Fastener::default() };
/// let missing = |readings: &[&str]| readings_missing(&row(readings), Some(2));
/// assert_eq!([&["24"][..], &["", "26"], &["24", "26"], &[]].map(missing), [true, true, false, false]);
/// ```
#[must_use]
pub fn readings_missing(row: &Fastener, count: Option<u64>) -> bool {
    let bolts = count.and_then(|count| usize::try_from(count).ok());
    let bolts = bolts.map_or(0, |bolts| bolts.min(super::limits::READINGS));
    let read = row.readings.iter().take(bolts);
    let read = read.filter(|typed| !typed.trim().is_empty()).count();
    0 < read && read < bolts
}

/// What has entries by name: a row of a list, or the head of a sheet.
pub(super) trait Entries {
    /// Every entry, with its name.
    fn texts(&self) -> impl Iterator<Item = (&str, &String)>;

    /// Writes an entry; whether there is one of that name.
    fn write(&mut self, key: &str, text: String) -> bool;

    /// The entry of a name.
    fn entry(&self, key: &str) -> Option<&String> {
        self.texts().find(|(name, _)| *name == key).map(|(_, text)| text)
    }
}

/// The entries of a row by name; behind them the map that holds further ones.
macro_rules! entries {
    ($row:ty: $($key:literal $field:ident),+ $(; $further:ident)?) => {
        impl Entries for $row {
            fn texts(&self) -> impl Iterator<Item = (&str, &String)> {
                let texts = [$(($key, &self.$field)),+].into_iter();
                $(let texts = texts.chain(self.$further.iter().map(|(key, text)| (key.as_str(), text)));)?
                texts
            }

            fn write(&mut self, key: &str, text: String) -> bool {
                match key {
                    $($key => self.$field = text,)+
                    $(_ if write_further(&mut self.$further, key, &text) => {})?
                    _ => return false,
                }
                true
            }
        }
    };
}

entries!(Sheet: "machine" machine, "odometer" odometer, "date" date, "currency" currency, "notes" notes);
entries!(Fastener: "label" label, "thread" thread, "class" class, "spec" spec, "count" count, "head" head,
    "drive" drive; bolt);
entries!(Part: "label" label, "count" count, "price" price);
entries!(Check: "label" label, "before" before, "after" after);
entries!(Belt: "label" label);
entries!(Interval: "label" label, "every-distance" every_distance, "every-days" every_days,
    "done-at-odometer" done_at_odometer, "done-on" done_on);

/// Writes an entry that a row of bolts keeps for the Bolt screen; whether it is one.
fn write_further(bolt: &mut BTreeMap<String, String>, key: &str, text: &str) -> bool {
    let known = FASTENER_MORE.iter().any(|field| field.key == key);
    if known && text.is_empty() {
        bolt.remove(key);
    } else if known {
        bolt.insert(key.into(), text.into());
    }
    known
}

impl Fastener {
    /// A row of one bolt from the texts of the Bolt screen, by its keys; a reading there becomes
    /// the row's first. A text past [`super::limits::TEXT`] is cut.
    ///
    /// ```
    /// use shopmath::sheet::Fastener;
    /// let row = Fastener::of_bolt(1, [("thread", "M8"), ("adapter", "50 mm"), ("reading", "24")].into_iter());
    /// assert_eq!((row.thread.as_str(), row.readings.len()), ("M8", 1));
    /// assert_eq!(row.bolt["adapter"], "50 mm");
    /// ```
    #[must_use]
    pub fn of_bolt<'a>(id: u32, texts: impl Iterator<Item = (&'a str, &'a str)>) -> Self {
        let mut row = Self { id, ..Self::default() };
        for (key, text) in texts.filter(|(key, _)| crate::fastener::bolt::field::of(key).is_some()) {
            let text = cut(text);
            match key {
                "thread" => row.thread = text,
                "class" => row.class = text,
                "spec" => row.spec = text,
                "reading" => row.readings = vec![text],
                _ => drop(row.bolt.insert(key.into(), text)),
            }
        }
        row
    }

    /// The row with the bolt and joint of the Bolt screen, by its keys, in place of its own; a reading there
    /// becomes the row's first where it has none.
    ///
    /// ```
    /// use shopmath::sheet::Fastener;
    /// let row = Fastener { label: "Drain plug".into(), thread: "M8".into(), ..Fastener::default() };
    /// let row = row.with_bolt([("thread", "M10"), ("grip", "20 mm")].into_iter());
    /// assert_eq!((row.label.as_str(), row.thread.as_str(), row.bolt["grip"].as_str()), ("Drain plug", "M10", "20 mm"));
    /// ```
    #[must_use]
    pub fn with_bolt<'a>(&self, texts: impl Iterator<Item = (&'a str, &'a str)>) -> Self {
        let other = Self::of_bolt(self.id, texts);
        let mut row = self.with_bolt_of(&other);
        if row.readings.is_empty() {
            row.readings = other.readings;
        }
        row
    }

    /// The row with the bolt and joint of another in place of its own, and all else as it is.
    ///
    /// ```
    /// use shopmath::sheet::Fastener;
    /// let row = Fastener { label: "Drain plug".into(), thread: "M8".into(), ..Fastener::default() };
    /// let row = row.with_bolt_of(&Fastener { thread: "M10".into(), ..Fastener::default() });
    /// assert_eq!((row.label.as_str(), row.thread.as_str()), ("Drain plug", "M10"));
    /// ```
    #[must_use]
    pub fn with_bolt_of(&self, other: &Self) -> Self {
        Self {
            thread: other.thread.clone(),
            class: other.class.clone(),
            spec: other.spec.clone(),
            bolt: other.bolt.clone(),
            ..self.clone()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{At, BELT, CHECK, FASTENER, FASTENER_MORE, HEAD, INTERVAL, MONEY, NOTES, PART, get, set};
    use crate::fastener::bolt::field;
    use crate::sheet::order::List;
    use crate::sheet::{Fastener, Sheet, demo, limits};

    #[test]
    fn every_listed_entry_can_be_written_and_read_back() {
        let row = |list| At::Row(list, 1);
        let lists = [
            (At::Head, [HEAD, NOTES, MONEY].concat()),
            (row(List::Fasteners), [FASTENER, FASTENER_MORE].concat()),
            (row(List::Parts), PART.to_vec()),
            (row(List::Checks), CHECK.to_vec()),
            (row(List::Belts), BELT.to_vec()),
            (row(List::Intervals), INTERVAL.to_vec()),
        ];
        for (at, entries) in lists {
            for entry in entries {
                let mut sheet = demo::sheet();
                assert!(
                    set(&mut sheet, at, entry.key, "something".into()),
                    "{at:?} {}",
                    entry.key
                );
                assert_eq!(get(&sheet, at, entry.key), "something", "{at:?} {}", entry.key);
                assert!(set(&mut sheet, at, entry.key, String::new()));
                assert_eq!(get(&sheet, at, entry.key), "", "{at:?} {}", entry.key);
            }
        }
    }

    #[test]
    fn what_a_row_of_bolts_keeps_for_the_bolt_screen_is_known_there() {
        for entry in FASTENER_MORE
            .iter()
            .filter(|entry| !["head", "drive"].contains(&entry.key))
        {
            assert!(field::of(entry.key).is_some(), "{}", entry.key);
        }
    }

    #[test]
    fn a_bolt_of_a_link_of_any_length_leaves_a_sheet_that_can_be_saved() {
        let texts = || field::FIELDS.iter().map(|field| (field.key, "8µ".repeat(limits::TEXT)));
        let texts: Vec<_> = texts().collect();
        let texts = || texts.iter().map(|(key, text)| (*key, text.as_str()));
        let fasteners = vec![
            Fastener::of_bolt(1, texts()),
            Fastener {
                id: 2,
                ..Fastener::default()
            }
            .with_bolt(texts()),
        ];
        let sheet = Sheet {
            fasteners,
            ..Sheet::new("a")
        };
        assert_eq!(limits::check(&sheet), Ok(()));
        assert!(
            sheet
                .fasteners
                .iter()
                .all(|row| row.thread.starts_with("8µ8") && row.thread.ends_with('…'))
        );
    }

    #[test]
    fn a_row_that_is_not_there_is_not_written() {
        let mut sheet = demo::sheet();
        assert!(!set(&mut sheet, At::Row(List::Parts, 99), "label", "a".into()));
        assert_eq!(sheet, demo::sheet());
    }
}
