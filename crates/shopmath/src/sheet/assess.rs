//! A sheet read: verdicts, deviations, what is still open, the total, what is next due, the tools.
//!
//! A row of bolts is read by [`super::bolts`], a price by [`super::total`], an interval by
//! [`mod@super::due`]; here they are put together. Nothing is shown.

use super::bolts::{self, FastenerAssessment};
use super::date::Date;
use super::due::{self, Due, Missing};
use super::fields::readings_missing;
use super::kit::{self, Tool};
use super::model::{Fastener, Part, Sheet};
use super::total::{self, Total};
use crate::field::FieldFault;
use crate::quantity::Unit;
use crate::tools::Tools;
use std::rc::Rc;
use uom::si::f64::Length;

/// Everything a sheet says.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetAssessment {
    /// The bolts, in the sheet's order; shared with the assessment before where nothing changed.
    pub fasteners: Vec<Rc<FastenerAssessment>>,
    /// What keeps the sheet from reading complete; complete where this is empty and a row is there.
    pub open: Vec<Open>,
    /// How many rows are done, of how many that can be.
    pub progress: Progress,
    /// What the priced parts cost together; absent while a count or price cannot be read.
    pub parts_total: Option<Total>,
    /// Parts without a price, which the total lacks.
    pub unpriced: usize,
    /// Each interval's next time, in the sheet's order.
    pub intervals: Vec<(u32, Due)>,
    /// The lowest odometer reading at which something is due: the result `next-due-distance`; absent while
    /// an interval by distance cannot be read.
    pub next_due_distance: Option<(u32, Length)>,
    /// The first day on which something is due; absent while an interval by time cannot be read.
    pub next_due_day: Option<(u32, Date)>,
    /// The tools the bolts need.
    pub tools: Vec<Tool>,
    /// What is wrong with entries outside the bolts, each with the row it stands in; see
    /// [`SheetAssessment::all_faults`].
    pub faults: Vec<RowFault>,
}

/// What keeps a sheet from reading complete.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Open {
    /// A single-use bolt was not replaced.
    NotReplaced(u32),
    /// A reading of this row of bolts is outside target and tolerance.
    ReadingOutside(u32),
    /// A row of bolts is done, and some of its bolts have a reading while others have none.
    ReadingMissing(u32),
    /// An entry of this row of bolts cannot be read, so that nothing judges it.
    NotRead(u32),
    /// The count or the price of a part cannot be read.
    PartNotRead(u32),
    /// A row of bolts is not done.
    Fastener(u32),
    /// A part is not fitted.
    Part(u32),
    /// A check is not done.
    Check(u32),
}

/// Rows done and rows there are: bolts, parts and checks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Rows ticked as done.
    pub done: usize,
    /// All rows that can be.
    pub of: usize,
}

/// Where an entry stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The sheet's head.
    Sheet,
    /// A row of bolts.
    Fastener(u32),
    /// A part.
    Part(u32),
    /// An interval.
    Interval(u32),
}

/// What is wrong with one entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowFault {
    /// Where it stands.
    pub place: Place,
    /// Which entry, and the sentence about it.
    pub fault: FieldFault,
}

impl SheetAssessment {
    /// Whether the job is done: rows there, all done and read, every single-use bolt replaced, no reading
    /// outside its tolerance, none missing where others of its row are there.
    ///
    /// ```
    /// use shopmath::{sheet::{Part, Sheet, assess}, tools::Tools};
    /// let mut sheet = Sheet::new("a");
    /// sheet.parts.push(Part::default());
    /// assert!(!assess(&sheet, Tools::Both, None).complete());
    /// sheet.parts[0].done = true;
    /// assert!(assess(&sheet, Tools::Both, None).complete());
    /// ```
    #[must_use]
    pub fn complete(&self) -> bool {
        self.progress.of > 0 && self.open.is_empty()
    }

    /// Everything that is wrong with entries: of the bolts, their readings among them, row by row,
    /// then of the other places.
    ///
    /// ```
    /// use shopmath::{sheet::{Fastener, Sheet, assess}, tools::Tools};
    /// let mut sheet = Sheet::new("a");
    /// sheet.date = "yesterday".into();
    /// sheet.fasteners.push(Fastener { readings: vec!["sixty".into()], ..Fastener::default() });
    /// let found = assess(&sheet, Tools::Both, None);
    /// let keys: Vec<&str> = found.all_faults().map(|(_, fault)| fault.key).collect();
    /// assert_eq!(keys, ["reading", "date"]);
    /// ```
    pub fn all_faults(&self) -> impl Iterator<Item = (Place, &FieldFault)> {
        let bolts = self.fasteners.iter().flat_map(|found| {
            let readings = found.readings.iter().filter_map(|reading| reading.fault.as_ref());
            let faults = found.faults.iter().chain(readings);
            faults.map(|fault| (Place::Fastener(found.id), fault))
        });
        bolts.chain(self.faults.iter().map(|row| (row.place, &row.fault)))
    }
}

/// Reads a sheet for the given tools; `today` counts the days left, where it is known.
///
/// ```
/// use shopmath::{sheet::{assess, demo}, tools::Tools};
/// let found = assess(&demo::sheet(), Tools::Metric, None);
/// assert!(!found.complete());
/// assert!(found.fasteners[0].verdict.is_some());
/// assert_eq!(found.next_due_distance.unwrap().1.value, 300_240_000.0);
/// ```
#[must_use]
pub fn assess(sheet: &Sheet, tools: Tools, today: Option<Date>) -> SheetAssessment {
    reassess(sheet, tools, today, None)
}

/// The same as [`assess`], working out only the rows of bolts that read otherwise than `before`: a
/// sheet, the tools it was read for, and what [`assess`] or this found in it. The others are shared
/// with it, also where they were moved, ticked or named anew.
///
/// ```
/// use shopmath::{sheet::{assess, demo, reassess}, tools::Tools};
/// use std::rc::Rc;
/// let before = demo::sheet();
/// let found = assess(&before, Tools::Metric, None);
/// let mut after = before.clone();
/// after.fasteners[0].spec = "50 N·m".into();
/// let again = reassess(&after, Tools::Metric, None, Some((&before, Tools::Metric, &found)));
/// assert_eq!(again, assess(&after, Tools::Metric, None));
/// assert!(Rc::ptr_eq(&again.fasteners[1], &found.fasteners[1]));
/// ```
#[must_use]
pub fn reassess(
    sheet: &Sheet,
    tools: Tools,
    today: Option<Date>,
    before: Option<(&Sheet, Tools, &SheetAssessment)>,
) -> SheetAssessment {
    let before = before.filter(|(_, then, _)| *then == tools);
    let known = |row| before.and_then(|(sheet, _, found)| shared(row, sheet, found));
    let fasteners: Vec<Rc<FastenerAssessment>> = sheet
        .fasteners
        .iter()
        .map(|row| known(row).unwrap_or_else(|| Rc::new(bolts::fastener(row, tools))))
        .collect();
    let mut faults = Faults(Vec::new());
    let _ = faults.keep(
        Place::Sheet,
        due::distance("odometer", &sheet.odometer, Unit::Kilometre),
    );
    let _ = faults.keep(Place::Sheet, due::day("date", &sheet.date));
    let (parts_total, unpriced) = parts(sheet, &mut faults);
    let intervals: Vec<(u32, Due)> = sheet
        .intervals
        .iter()
        .map(|row| {
            let (due, wrong) = due::due(row, &sheet.odometer, today);
            faults.add(Place::Interval(row.id), wrong);
            (row.id, due)
        })
        .collect();
    let unread = |missing: fn(&Due) -> Option<Missing>| {
        let of = |(_, due): &(u32, Due)| matches!(missing(due), Some(Missing::Entry | Missing::Odometer));
        intervals.iter().any(of)
    };
    let next_due_distance = first(&intervals, |due| due.at, |one, other| one.value.total_cmp(&other.value));
    let next_due_day = first(&intervals, |due| due.on, Ord::cmp);
    SheetAssessment {
        open: open(sheet, &fasteners, &faults.0),
        progress: progress(sheet),
        parts_total,
        unpriced,
        next_due_distance: next_due_distance.filter(|_| !unread(|due| due.no_reading)),
        next_due_day: next_due_day.filter(|_| !unread(|due| due.no_day)),
        tools: kit::gather(sheet, &fasteners),
        fasteners,
        intervals,
        faults: faults.0,
    }
}

/// What was found before for a row that reads the same.
fn shared(row: &Fastener, before: &Sheet, found: &SheetAssessment) -> Option<Rc<FastenerAssessment>> {
    let mut rows = before.fasteners.iter().zip(&found.fasteners);
    let (then, found) = rows.find(|(then, found)| then.id == row.id && found.id == row.id)?;
    bolts::read_alike(row, then).then(|| Rc::clone(found))
}

/// The faults found so far.
struct Faults(Vec<RowFault>);

impl Faults {
    /// Keeps the faults of a place.
    fn add(&mut self, place: Place, faults: Vec<FieldFault>) {
        self.0.extend(faults.into_iter().map(|fault| RowFault { place, fault }));
    }

    /// What was read; a fault is kept for its place.
    fn keep<T>(&mut self, place: Place, read: Result<T, FieldFault>) -> Option<T> {
        read.map_err(|fault| self.0.push(RowFault { place, fault })).ok()
    }
}

fn parts(sheet: &Sheet, faults: &mut Faults) -> (Option<Total>, usize) {
    let (mut sum, mut unpriced) = (Some(Total::default()), 0);
    for row in &sheet.parts {
        match faults.keep(Place::Part(row.id), total::cost(row)) {
            Some(Some(cost)) => {
                sum = sum.map(|sum| Total {
                    ten_millionths: sum.ten_millionths + cost.ten_millionths,
                })
            }
            Some(None) => unpriced += 1,
            None => sum = None,
        }
    }
    (sum, unpriced)
}

fn open(sheet: &Sheet, found: &[Rc<FastenerAssessment>], faults: &[RowFault]) -> Vec<Open> {
    let mut open = Vec::new();
    for (row, found) in sheet.fasteners.iter().zip(found) {
        let reasons = [
            (row.single_use && !row.replaced, Open::NotReplaced(row.id)),
            (
                found.readings.iter().any(|reading| reading.outside),
                Open::ReadingOutside(row.id),
            ),
            (
                row.done && readings_missing(row, found.count),
                Open::ReadingMissing(row.id),
            ),
            (found.is_unread(), Open::NotRead(row.id)),
            (!row.done, Open::Fastener(row.id)),
        ];
        open.extend(
            reasons
                .into_iter()
                .filter_map(|(holds, reason)| holds.then_some(reason)),
        );
    }
    let unread = |row: &&Part| faults.iter().any(|fault| fault.place == Place::Part(row.id));
    open.extend(sheet.parts.iter().filter(unread).map(|row| Open::PartNotRead(row.id)));
    open.extend(sheet.parts.iter().filter(|row| !row.done).map(|row| Open::Part(row.id)));
    open.extend(
        sheet
            .checks
            .iter()
            .filter(|row| !row.done)
            .map(|row| Open::Check(row.id)),
    );
    open
}

/// The rows done, without reading any of them.
pub(super) fn progress(sheet: &Sheet) -> Progress {
    let fasteners = sheet.fasteners.iter().map(|row| row.done);
    let parts = sheet.parts.iter().map(|row| row.done);
    let checks = sheet.checks.iter().map(|row| row.done);
    fasteners
        .chain(parts)
        .chain(checks)
        .fold(Progress::default(), |sum, done| Progress {
            done: sum.done + usize::from(done),
            of: sum.of + 1,
        })
}

/// The interval whose next time comes first.
fn first<T>(
    intervals: &[(u32, Due)],
    when: impl Fn(&Due) -> Option<T>,
    order: impl Fn(&T, &T) -> core::cmp::Ordering,
) -> Option<(u32, T)> {
    let due = intervals.iter().filter_map(|(id, due)| Some((*id, when(due)?)));
    due.min_by(|(_, one), (_, other)| order(one, other))
}

#[cfg(test)]
mod tests {
    use super::{Open, Place, Progress, assess};
    use crate::sheet::{Check, Fastener, Interval, Part, Sheet};
    use crate::tools::Tools;

    #[test]
    fn only_what_is_done_and_replaced_reads_complete() {
        let mut job = Sheet::new("a");
        job.fasteners.push(Fastener {
            id: 7,
            single_use: true,
            done: true,
            ..Fastener::default()
        });
        job.parts.push(Part {
            id: 1,
            ..Part::default()
        });
        job.checks.push(Check {
            id: 1,
            ..Check::default()
        });
        let found = assess(&job, Tools::Both, None);
        assert_eq!(found.open, [Open::NotReplaced(7), Open::Part(1), Open::Check(1)]);
        assert_eq!(found.progress, Progress { done: 1, of: 3 });
        job.fasteners[0].replaced = true;
        job.parts[0].done = true;
        job.checks[0].done = true;
        assert!(assess(&job, Tools::Both, None).complete());
        job.fasteners[0].count = "4x".into();
        job.parts[0].price = "abc".into();
        let found = assess(&job, Tools::Both, None);
        assert_eq!(found.open, [Open::NotRead(7), Open::PartNotRead(1)]);
        job.fasteners[0].count = "4".into();
        job.fasteners[0].thread = "M10x".into();
        job.parts[0].price = String::new();
        assert_eq!(assess(&job, Tools::Both, None).open, [Open::NotRead(7)]);
        job.fasteners[0].thread = String::new();
        assert!(assess(&job, Tools::Both, None).complete());
        assert!(!assess(&Sheet::new("empty"), Tools::Both, None).complete());
    }

    #[test]
    fn the_first_interval_to_come_is_next() {
        let every = |id, distance: &str, days: &str| Interval {
            id,
            every_distance: distance.into(),
            every_days: days.into(),
            done_at_odometer: "100000".into(),
            done_on: "2025-01-01".into(),
            ..Interval::default()
        };
        let mut job = Sheet::new("a");
        job.intervals = vec![every(1, "60000", "365"), every(2, "30000 mi", "730"), every(3, "", "")];
        let found = assess(&job, Tools::Both, None);
        assert_eq!(found.next_due_distance.unwrap().0, 2);
        assert_eq!(found.next_due_day.unwrap().0, 1);
    }

    #[test]
    fn what_cannot_be_read_leaves_nothing_next() {
        let every = |id, distance: &str, time: &str, done_at: &str| Interval {
            id,
            every_distance: distance.into(),
            every_days: time.into(),
            done_at_odometer: done_at.into(),
            done_on: "2025-01-01".into(),
            ..Interval::default()
        };
        let mut job = Sheet::new("a");
        job.odometer = "93 200 mi".into();
        job.intervals = vec![
            every(1, "7500", "", "90 000"),
            every(2, "60,000 mi", "2 years", "20 000"),
        ];
        let found = assess(&job, Tools::Both, None);
        // The belt, due at 80 000 mi, may be overdue: the oil is not next for all that is known.
        assert_eq!((found.next_due_distance, found.next_due_day.unwrap().0), (None, 2));
        job.intervals[1].every_distance = "60 000 mi".into();
        assert_eq!(assess(&job, Tools::Both, None).next_due_distance.unwrap().0, 2);
        job.intervals[1].every_distance = String::new();
        job.intervals[0].done_at_odometer = String::new();
        assert_eq!(assess(&job, Tools::Both, None).next_due_distance, None);
    }

    #[test]
    fn a_total_with_an_unreadable_price_is_absent() {
        let mut job = Sheet::new("a");
        for (id, price) in [(1, "0.10"), (2, "0.20"), (3, "")] {
            job.parts.push(Part {
                id,
                price: price.into(),
                ..Part::default()
            });
        }
        let found = assess(&job, Tools::Both, None);
        assert_eq!((found.parts_total.unwrap().text(), found.unpriced), ("0.30".into(), 1));
        job.parts[0].price = "1,234".into();
        let found = assess(&job, Tools::Both, None);
        assert_eq!((found.parts_total, found.faults[0].place), (None, Place::Part(1)));
    }
}
