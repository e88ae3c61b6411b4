//! When something is next due: by distance, by time, or by whichever comes first.
//!
//! An interval counts from when it was last done. Without that nothing is due, for nothing is
//! assumed about a machine's past.

use super::date::Date;
use super::entry_fault::EntryFault;
use super::model::Interval;
use crate::field::{FieldFault, is_bare};
use crate::quantity::read::{self, Expect};
use crate::quantity::{Kind, Quantity, Unit, exact::length::Kilometre};
use crate::result::{Finding, Id, Style, Term, Working};
use crate::source::SHEET_ENTRIES;
use uom::si::f64::Length;

/// The farthest an odometer or an interval may read, kilometre.
const FARTHEST: f64 = 10_000_000.0;
/// The longest interval, days.
const LONGEST: i64 = 36_500;

/// When one interval is next due.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Due {
    /// The odometer reading at which it is due, where an interval by distance is given with the
    /// reading when it was last done.
    pub at: Option<Length>,
    /// The distance left until then from the sheet's odometer; negative once overdue.
    pub left: Option<Length>,
    /// The day on which it is due, where an interval by time is given with the day it was last
    /// done.
    pub on: Option<Date>,
    /// The days left until then; negative once overdue.
    pub days_left: Option<i64>,
    /// Why there is no reading at which it is due, though an interval by distance is typed.
    pub no_reading: Option<Missing>,
    /// Why there is no day, though an interval by time is typed.
    pub no_day: Option<Missing>,
    /// Whether it was last done at a reading beyond the odometer's, or on a day to come: one of the two is
    /// mistyped.
    pub ahead: bool,
}

/// What an interval lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// An entry of its own cannot be read.
    Entry,
    /// The odometer cannot be read, and the interval's bare numbers are in its unit.
    Odometer,
    /// When it was last done.
    LastDone,
}

/// When an interval is next due, seen from the odometer as typed and a day, each where known.
///
/// Distances from 0 to 10 million km (an interval above 0), a bare number in [`road_unit`]; a time in days
/// from 1 to 36 500, or in weeks, months or years of the calendar. Faults take away only what needs the
/// field; that of the odometer is not among them, but takes away what is due by its unit.
///
/// ```
/// use shopmath::sheet::{Date, Interval, due};
/// let belt = Interval {
///     every_distance: "150 000 km".into(),
///     every_days: "3650".into(),
///     done_at_odometer: "150 240 km".into(),
///     done_on: "2025-03-31".into(),
///     ..Interval::default()
/// };
/// let (due, faults) = due::due(&belt, "", Date::read("2025-04-01"));
/// assert!(faults.is_empty());
/// assert_eq!(due.at.unwrap().value, 300_240_000.0);
/// assert_eq!(due.on.unwrap().to_string(), "2035-03-29");
/// assert_eq!(due.days_left, Some(3649));
/// ```
#[must_use]
pub fn due(interval: &Interval, odometer: &str, today: Option<Date>) -> (Due, Vec<FieldFault>) {
    let mut faults = Vec::new();
    let unit = road_unit(interval, odometer);
    let no_unit = has_no_unit(interval, odometer);
    let odometer = distance("odometer", odometer, Unit::Kilometre).ok().flatten();
    let mut keep = |read: Result<Option<Length>, FieldFault>| read.map_err(|fault| faults.push(fault)).ok();
    let every = keep(distance("every-distance", &interval.every_distance, unit).and_then(above_nothing));
    let done_at = keep(distance("done-at-odometer", &interval.done_at_odometer, unit));
    let time = time(&interval.every_days).map_err(|fault| faults.push(fault)).ok();
    let done_on = day("done-on", &interval.done_on)
        .map_err(|fault| faults.push(fault))
        .ok();
    let no_reading = lacks(every, done_at).or(match every {
        Some(Some(_)) if no_unit => Some(Missing::Odometer),
        _ => None,
    });
    let no_day = lacks(time, done_on);
    let done_at = done_at.flatten().filter(|_| !no_unit);
    let ahead_on_road = done_at
        .zip(odometer)
        .is_some_and(|(done_at, odometer)| done_at > odometer);
    let ahead_in_time = done_on
        .flatten()
        .zip(today)
        .is_some_and(|(done_on, today)| done_on.days_since(today) > 0);
    let at = every.flatten().zip(done_at).map(|(every, done_at)| done_at + every);
    let on = time.flatten().zip(done_on.flatten());
    let on = on.and_then(|(time, done_on)| time.after(done_on));
    let due = Due {
        at,
        left: at.zip(odometer).map(|(at, odometer)| at - odometer),
        on,
        days_left: on.zip(today).map(|(on, today)| on.days_since(today)),
        no_reading,
        no_day,
        ahead: ahead_on_road || ahead_in_time,
    };
    (due, faults)
}

/// What an interval that is typed lacks: outer nothing for what cannot be read, inner for what is empty.
fn lacks<T, D>(every: Option<Option<T>>, done: Option<Option<D>>) -> Option<Missing> {
    match (every, done) {
        (Some(None), _) | (Some(Some(_)), Some(Some(_))) => None,
        (Some(Some(_)), Some(None)) => Some(Missing::LastDone),
        _ => Some(Missing::Entry),
    }
}

/// Whether a bare number of an interval is in the unit of an odometer that cannot be read.
fn has_no_unit(interval: &Interval, odometer: &str) -> bool {
    !odometer.trim().is_empty()
        && distance("odometer", odometer, Unit::Kilometre).is_err()
        && is_bare(&interval.done_at_odometer, Unit::Kilometre)
}

/// The odometer reading at which an interval is due, as a result with its working: the result
/// `next-due-distance`, shown in [`road_unit`]. Absent where [`Due::at`] is.
///
/// ```
/// use shopmath::sheet::{Interval, due};
/// let oil = Interval {
///     every_distance: "10 000 mi".into(),
///     done_at_odometer: "93 000 mi".into(),
///     ..Interval::default()
/// };
/// let found = due::finding(&oil, "").unwrap();
/// let (value, _) = found.plain(found.amount.ends().next().unwrap().1);
/// assert!((value - 103_000.0 * 1609.344).abs() < 1e-6);
/// ```
#[must_use]
pub fn finding(interval: &Interval, odometer: &str) -> Option<Finding> {
    let unit = road_unit(interval, odometer);
    let every = distance("every-distance", &interval.every_distance, unit).ok()??;
    let done_at = distance("done-at-odometer", &interval.done_at_odometer, unit).ok()??;
    let term = |symbol, meaning, length: Length| Term::new(symbol, meaning, length, unit);
    let working = Working {
        equation: "due = done + every",
        terms: vec![
            term("done", "odometer when last done", done_at),
            term("every", "distance between two times", every),
        ],
        source: SHEET_ENTRIES,
    };
    let id = Id::Named("next-due-distance");
    let name = "next due at this odometer reading";
    let mut found = Finding::new(id, name, done_at + every, unit, "sum of two readings", working);
    found.style = Style::Decimal { step: 1.0 };
    Some(found)
}

/// The unit of an interval on the road, for its bare numbers and for what is shown of it: that of
/// the odometer, kilometre if it is bare. Without an odometer it is the one that the reading at the
/// last time says, else kilometre.
///
/// ```
/// use shopmath::{quantity::Unit, sheet::{Interval, due::road_unit}};
/// let oil = Interval { every_distance: "5000".into(), done_at_odometer: "88 000 mi".into(), ..Interval::default() };
/// assert_eq!(road_unit(&oil, "150 000 km"), Unit::Kilometre);
/// assert_eq!(road_unit(&oil, "93 000 mi"), Unit::Mile);
/// assert_eq!(road_unit(&oil, ""), Unit::Mile);
/// ```
#[must_use]
pub fn road_unit(interval: &Interval, odometer: &str) -> Unit {
    said(odometer, Some(Unit::Kilometre))
        .or_else(|| said(&interval.done_at_odometer, None))
        .unwrap_or(Unit::Kilometre)
}

/// Whether an interval says miles while the odometer it counts by is bare, and so taken as kilometres: one
/// of the two may be meant otherwise.
///
/// ```
/// use shopmath::sheet::{Interval, due::is_mixed};
/// let oil = Interval { every_distance: "5000 mi".into(), done_at_odometer: "88 000".into(), ..Interval::default() };
/// assert!(is_mixed(&oil, "93 000") && !is_mixed(&oil, "93 000 mi") && !is_mixed(&oil, "93 000 km"));
/// ```
#[must_use]
pub fn is_mixed(interval: &Interval, odometer: &str) -> bool {
    let counts = [odometer, &interval.done_at_odometer];
    let first = counts.into_iter().find(|text| !text.trim().is_empty());
    first.is_some_and(|text| is_bare(text, Unit::Kilometre)) && said(&interval.every_distance, None) == Some(Unit::Mile)
}

/// The unit that a way says, or the one of a bare number.
fn said(text: &str, bare: Option<Unit>) -> Option<Unit> {
    let expect = Expect {
        kind: Some(Kind::Length),
        bare,
    };
    read::value(text, expect).ok().map(|typed| typed.unit)
}

/// A distance on the road, 0 to 10 million km; a bare number is in `bare`.
///
/// # Errors
/// A [`FieldFault`] for what is no such distance.
///
/// ```
/// use shopmath::{quantity::Unit, sheet::due};
/// let miles = due::distance("odometer", "93 000", Unit::Mile).unwrap().unwrap();
/// assert!((miles.value - 149_668_992.0).abs() < 1e-6);
/// ```
pub fn distance(key: &'static str, text: &str, bare: Unit) -> Result<Option<Length>, FieldFault> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let typed = read::value(text, Expect::field(bare)).map_err(|fault| FieldFault::misread(key, text, &fault))?;
    if !matches!(typed.unit, Unit::Kilometre | Unit::Mile) {
        let number = text.trim_end_matches(|letter: char| letter.is_alphabetic() || letter == ' ');
        let remedies = [Unit::Mile, Unit::Kilometre].map(|unit| [number, " ", unit.symbol()].concat());
        return Err(EntryFault::NotOnRoad(remedies).of(key));
    }
    match typed.quantity() {
        Quantity::Length(read) if (0.0..=FARTHEST).contains(&read.get::<Kilometre>()) => Ok(Some(read)),
        _ => Err(EntryFault::TooFar.of(key)),
    }
}

/// A day, 1900-01-01 to 2199-12-31, by the reader of [`Date`]; nothing for an empty text.
///
/// # Errors
/// A [`FieldFault`] for what is no day from 1900 to 2199 written `YYYY-MM-DD`.
///
/// ```
/// use shopmath::sheet::due;
/// assert_eq!(due::day("date", "2025-03-31").unwrap().unwrap().to_string(), "2025-03-31");
/// assert_eq!(due::day("date", " "), Ok(None));
/// assert_eq!(due::day("date", "31.03.25").unwrap_err().remedies, ["2025-03-31"]);
/// ```
pub fn day(key: &'static str, text: &str) -> Result<Option<Date>, FieldFault> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let refused = || EntryFault::NotDay(Date::guesses(text).iter().map(Date::to_string).collect()).of(key);
    Date::read(text).ok_or_else(refused).map(Some)
}

fn above_nothing(read: Option<Length>) -> Result<Option<Length>, FieldFault> {
    match read {
        Some(every) if every.value <= 0.0 => Err(EntryFault::NoDistance.of("every-distance")),
        other => Ok(other),
    }
}

/// A time between two times.
#[derive(Clone, Copy)]
enum Time {
    Days(i64),
    Months(i64),
}

impl Time {
    fn after(self, day: Date) -> Option<Date> {
        match self {
            Self::Days(days) => day.plus_days(days),
            Self::Months(months) => day.plus_months(months),
        }
    }
}

/// `730`, `2 years`, `18 months`, `6 weeks`.
fn time(text: &str) -> Result<Option<Time>, FieldFault> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let refused = || EntryFault::NotTime.of("every-days");
    counted(text.trim()).map(Some).ok_or_else(refused)
}

fn counted(text: &str) -> Option<Time> {
    let end = text.find(|letter: char| !letter.is_ascii_digit());
    let (number, unit) = text.split_at_checked(end.unwrap_or(text.len()))?;
    let number: i64 = number.parse().ok().filter(|number| (1..=LONGEST).contains(number))?;
    let word = unit.trim().trim_end_matches('.').to_ascii_lowercase();
    let (time, days) = match word.as_str() {
        "" | "d" | "day" | "days" => (Time::Days(number), number),
        "w" | "wk" | "week" | "weeks" => (Time::Days(number * 7), number * 7),
        "m" | "mo" | "month" | "months" => (Time::Months(number), number * 30),
        "y" | "yr" | "yrs" | "year" | "years" => (Time::Months(number * 12), number * 365),
        _ => return None,
    };
    (days <= LONGEST).then_some(time)
}

#[cfg(test)]
mod tests {
    use super::{Missing, due, finding};
    use crate::quantity::Unit;
    use crate::sheet::{Date, Interval};

    #[test]
    fn a_fault_takes_away_only_what_needs_it() {
        let interval = Interval {
            every_distance: "60,000 km".into(),
            every_days: "730".into(),
            done_at_odometer: "10".into(),
            done_on: "2024-02-29".into(),
            ..Interval::default()
        };
        let (due, faults) = due(&interval, "", None);
        assert_eq!(faults[0].key, "every-distance");
        assert_eq!((due.at, due.on), (None, Date::read("2026-02-28")));
    }

    #[test]
    fn what_was_never_done_is_not_due() {
        let interval = Interval {
            every_distance: "60000".into(),
            every_days: "730".into(),
            ..Interval::default()
        };
        let never = super::Due {
            no_reading: Some(Missing::LastDone),
            no_day: Some(Missing::LastDone),
            ..super::Due::default()
        };
        assert_eq!(due(&interval, "", None), (never, vec![]));
    }

    #[test]
    fn what_was_last_done_in_the_time_to_come_is_doubted() {
        for (odometer, done_at, done_on, ahead) in [
            ("150 240 km", "150 240 km", "2025-03-31", false),
            ("150 240 km", "150 241 km", "", true),
            ("93 000 mi", "93 001", "", true),
            ("", "150 241 km", "2025-04-01", false),
            ("150 240 furlongs", "150 241", "", false),
            ("150 240 km", "", "2025-04-02", true),
        ] {
            let interval = Interval {
                done_at_odometer: done_at.into(),
                done_on: done_on.into(),
                ..Interval::default()
            };
            let (due, _) = due(&interval, odometer, Date::read("2025-04-01"));
            assert_eq!(due.ahead, ahead, "{odometer}, {done_at}, {done_on}");
        }
    }

    #[test]
    fn bare_distances_are_in_the_unit_of_the_odometer() {
        for (odometer, every, done_at, miles, left, unit) in [
            ("93 000 mi", "5000", "93 000", 98_000.0, Some(5000.0), Unit::Mile),
            ("93 000 mi", "5000 mi", "93 000 mi", 98_000.0, Some(5000.0), Unit::Mile),
            ("93 000 mi", "8046.72 km", "93 000", 98_000.0, Some(5000.0), Unit::Mile),
            ("", "5000", "93 000 mi", 98_000.0, None, Unit::Mile),
            ("odd", "5000", "93 000 mi", 98_000.0, None, Unit::Mile),
            ("", "5000 mi", "1609.344", 6000.0, None, Unit::Kilometre),
            (
                "1609.344",
                "1609.344",
                "1609.344",
                2000.0,
                Some(1000.0),
                Unit::Kilometre,
            ),
        ] {
            let interval = Interval {
                every_distance: every.into(),
                done_at_odometer: done_at.into(),
                ..Interval::default()
            };
            let (due, faults) = due(&interval, odometer, None);
            assert!(faults.is_empty(), "{odometer}, {every}, {done_at}: {faults:?}");
            assert!(
                (due.at.unwrap().value - miles * 1609.344).abs() < 1e-5,
                "{odometer}, {every}, {done_at}"
            );
            assert_eq!(
                due.left.map(|left| (left.value / 1609.344).round()),
                left,
                "{odometer}, {every}, {done_at}"
            );
            assert_eq!(
                finding(&interval, odometer).unwrap().unit,
                unit,
                "{odometer}, {every}, {done_at}"
            );
        }
    }

    #[test]
    fn overdue_is_negative() {
        let interval = Interval {
            every_distance: "10000".into(),
            every_days: "30".into(),
            done_at_odometer: "0".into(),
            done_on: "2025-01-01".into(),
            ..Interval::default()
        };
        let (due, _) = due(&interval, "12000", Date::read("2025-02-01"));
        assert!((due.left.unwrap().value + 2e6).abs() < 1e-6);
        assert_eq!(due.days_left, Some(-1));
    }

    #[test]
    fn days_written_otherwise_are_offered_as_they_are_read() {
        for (every_days, done_on, remedies) in [
            ("200 years", "", &[][..]),
            ("2 years or 30 000 km", "", &[]),
            ("1.5 years", "", &[]),
            ("99999999999999999999 years", "", &[]),
            ("often", "", &[]),
            ("", "31.03.2025", &["2025-03-31"]),
            ("", "3/4/25", &["2025-04-03", "2025-03-04"]),
            ("", "5/5/25", &["2025-05-05"]),
            ("", "12 May 2025", &["2025-05-12"]),
            ("", "Sept. 3, 25", &["2025-09-03"]),
            ("", "yesterday", &[]),
        ] {
            let interval = Interval {
                every_days: every_days.into(),
                done_on: done_on.into(),
                ..Interval::default()
            };
            let (_, faults) = due(&interval, "", None);
            assert_eq!(faults[0].remedies, remedies, "{every_days}{done_on}");
        }
    }

    #[test]
    fn a_time_may_be_in_years_months_or_weeks_of_the_calendar() {
        for (every, on) in [
            ("730", "2026-02-28"),
            ("2 years", "2026-02-28"),
            ("1 yr", "2025-02-28"),
            ("4 YEARS", "2028-02-29"),
            ("18 months", "2025-08-29"),
            ("6 weeks", "2024-04-11"),
            ("30 d", "2024-03-30"),
        ] {
            let interval = Interval {
                every_days: every.into(),
                done_on: "2024-02-29".into(),
                ..Interval::default()
            };
            let (due, faults) = due(&interval, "", None);
            assert!(faults.is_empty(), "{every}");
            assert_eq!(due.on, Date::read(on), "{every}");
        }
    }

    #[test]
    fn what_is_lacking_is_named() {
        let of = |every: &str, done_at: &str, odometer: &str| {
            let interval = Interval {
                every_distance: every.into(),
                done_at_odometer: done_at.into(),
                ..Interval::default()
            };
            let (due, _) = due(&interval, odometer, None);
            assert_eq!(due.at.is_none(), every.is_empty() || due.no_reading.is_some());
            due.no_reading
        };
        assert_eq!(of("7500", "90 000", "93 200 mi"), None);
        assert_eq!(of("", "", "93 200 mi"), None);
        assert_eq!(of("60,000 mi", "20 000", "93 200 mi"), Some(Missing::Entry));
        assert_eq!(of("7500", "9O 000", "93 200 mi"), Some(Missing::Entry));
        assert_eq!(of("7500", "", "93 200 mi"), Some(Missing::LastDone));
        // 60000 miles must not come out as kilometres.
        assert_eq!(of("60000", "40000", "93,200 mi"), Some(Missing::Odometer));
        assert_eq!(of("60000", "40000 mi", "93,200 mi"), None);
    }

    #[test]
    fn metres_on_the_road_are_asked_about() {
        let fault = super::distance("odometer", "93205 m", Unit::Kilometre).unwrap_err();
        assert_eq!(fault.remedies, ["93205 mi", "93205 km"]);
    }

    #[test]
    fn what_is_no_interval_says_so() {
        for (every_distance, every_days, done_on, key) in [
            ("0", "", "", "every-distance"),
            ("2e7", "", "", "every-distance"),
            ("5 kg", "", "", "every-distance"),
            ("10 000 m", "", "", "every-distance"),
            ("300 in", "", "", "every-distance"),
            ("", "0", "", "every-days"),
            ("", "1.5", "", "every-days"),
            ("", "36501", "", "every-days"),
            ("", "", "31.03.2025", "done-on"),
        ] {
            let interval = Interval {
                every_distance: every_distance.into(),
                every_days: every_days.into(),
                done_on: done_on.into(),
                ..Interval::default()
            };
            let (_, faults) = due(&interval, "", None);
            assert_eq!(faults.len(), 1, "{key}");
            assert_eq!(faults[0].key, key);
        }
    }
}
