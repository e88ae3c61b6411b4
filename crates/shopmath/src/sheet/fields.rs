//! A sheet's entries by name: which ones a row has, what to call them, and how to read and change
//! one.
//!
//! The screen draws its fields from these lists, as the other screens do from theirs. Rows are
//! moved, ticked and removed in [`super::order`]; what an entry means is [`mod@super::assess`]'s to
//! say.

use super::limits::cut;
use super::model::{Belt, Check, Fastener, Interval, Part, Sheet};
use super::order::List;
use crate::field::{Field, Reads};
use crate::quantity::Unit;

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
        At::Head => match key {
            "machine" => Some(&sheet.machine),
            "odometer" => Some(&sheet.odometer),
            "date" => Some(&sheet.date),
            "currency" => Some(&sheet.currency),
            "notes" => Some(&sheet.notes),
            _ => None,
        },
        At::Row(list, id) => match list {
            List::Fasteners => of(&sheet.fasteners, id).and_then(|row| row.entry(key).or_else(|| row.bolt.get(key))),
            List::Parts => of(&sheet.parts, id).and_then(|row| row.entry(key)),
            List::Checks => of(&sheet.checks, id).and_then(|row| row.entry(key)),
            List::Belts => of(&sheet.belts, id).and_then(|row| row.entry(key)),
            List::Intervals => of(&sheet.intervals, id).and_then(|row| row.entry(key)),
        },
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
    let place = match at {
        At::Head => match key {
            "machine" => Some(&mut sheet.machine),
            "odometer" => Some(&mut sheet.odometer),
            "date" => Some(&mut sheet.date),
            "currency" => Some(&mut sheet.currency),
            "notes" => Some(&mut sheet.notes),
            _ => None,
        },
        At::Row(list, id) => match list {
            List::Fasteners => return of_mut(&mut sheet.fasteners, id).is_some_and(|row| row.write(key, text)),
            List::Parts => of_mut(&mut sheet.parts, id).and_then(|row| row.entry_mut(key)),
            List::Checks => of_mut(&mut sheet.checks, id).and_then(|row| row.entry_mut(key)),
            List::Belts => of_mut(&mut sheet.belts, id).and_then(|row| row.entry_mut(key)),
            List::Intervals => of_mut(&mut sheet.intervals, id).and_then(|row| row.entry_mut(key)),
        },
    };
    place.map(|place| *place = text).is_some()
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
    let Some(row) = of_mut(&mut sheet.fasteners, id) else {
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

/// A row that has a number.
trait Numbered {
    fn id(&self) -> u32;
}

fn of<R: Numbered>(rows: &[R], id: u32) -> Option<&R> {
    rows.iter().find(|row| row.id() == id)
}

fn of_mut<R: Numbered>(rows: &mut [R], id: u32) -> Option<&mut R> {
    rows.iter_mut().find(|row| row.id() == id)
}

/// The entries of a row by name, once for reading and once for writing.
macro_rules! entries {
    ($row:ty: $($key:literal $field:ident),+) => {
        impl Numbered for $row {
            fn id(&self) -> u32 {
                self.id
            }
        }

        impl $row {
            fn entry(&self, key: &str) -> Option<&String> {
                match key {
                    $($key => Some(&self.$field),)+
                    _ => None,
                }
            }

            fn entry_mut(&mut self, key: &str) -> Option<&mut String> {
                match key {
                    $($key => Some(&mut self.$field),)+
                    _ => None,
                }
            }
        }
    };
}

entries!(Fastener: "label" label, "thread" thread, "class" class, "spec" spec, "count" count, "head" head, "drive" drive);
entries!(Part: "label" label, "count" count, "price" price);
entries!(Check: "label" label, "before" before, "after" after);
entries!(Belt: "label" label);
entries!(Interval: "label" label, "every-distance" every_distance, "every-days" every_days,
    "done-at-odometer" done_at_odometer, "done-on" done_on);

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
        let Self {
            thread,
            class,
            spec,
            bolt,
            readings,
            ..
        } = Self::of_bolt(self.id, texts);
        let own = self.readings.clone();
        Self {
            thread,
            class,
            spec,
            bolt,
            readings: if own.is_empty() { readings } else { own },
            ..self.clone()
        }
    }

    fn write(&mut self, key: &str, text: String) -> bool {
        if let Some(place) = self.entry_mut(key) {
            *place = text;
            return true;
        }
        let known = FASTENER_MORE.iter().any(|field| field.key == key);
        if known && text.is_empty() {
            self.bolt.remove(key);
        } else if known {
            self.bolt.insert(key.into(), text);
        }
        known
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
