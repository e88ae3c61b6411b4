//! Why a fastener question has no answer, and the sentence that says what to do about it. This is
//! the one place that words such a sentence; texts that are no quantity at all are worded by
//! [`crate::quantity::fault`].

use super::class_table;
use crate::quantity::print::{self, rounded};
use crate::quantity::{Quantity, Unit};
use core::fmt;
use uom::si::f64::Length;

/// A fastener question that cannot be answered.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// A quantity outside the range its equation holds for.
    OutOfRange {
        /// What the quantity is, such as "torque".
        what: &'static str,
        /// The value given.
        read: Quantity,
        /// The smallest accepted.
        low: Quantity,
        /// The largest accepted.
        high: Quantity,
        /// The unit to state all three in.
        unit: Unit,
    },
    /// A range whose lower end is above its upper end.
    Backwards(&'static str),
    /// A result that is no number, from inputs far outside any workshop.
    NotFinite(&'static str),
    /// A text that is no thread designation.
    NotAThread(String),
    /// A thread diameter that the table does not have.
    UnknownSize {
        /// The size read, such as `M9`.
        read: String,
        /// The sizes that exist.
        sizes: Vec<&'static str>,
    },
    /// A pitch that the diameter is not tabled with.
    UnknownPitch {
        /// The diameter, such as `M10`.
        size: &'static str,
        /// The pitch, count or series read.
        read: String,
        /// The designations that exist for the diameter.
        names: Vec<&'static str>,
    },
    /// A thread with the bolt's strength class behind it.
    ClassInThread {
        /// The class.
        class: &'static str,
        /// The text without it.
        thread: String,
    },
    /// A text that names no strength class.
    UnknownClass(String),
    /// A bare number that is a grade by one standard and a nut class by another.
    AmbiguousGrade(String),
    /// A class whose standard does not cover the diameter.
    ClassNotForSize {
        /// The class.
        class: &'static str,
        /// The smallest diameter covered.
        low: Quantity,
        /// The largest diameter covered.
        high: Quantity,
        /// The unit to state both in.
        unit: Unit,
    },
    /// A text that is none of the words a field takes.
    UnknownWord {
        /// What the field is, such as "material".
        what: &'static str,
        /// The text read.
        read: String,
        /// The words that exist.
        words: Vec<&'static str>,
    },
    /// A head whose standard, as tabled here, has no such size.
    HeadNotTabled {
        /// The head.
        head: &'static str,
        /// The thread.
        thread: &'static str,
    },
    /// A custom head without its two diameters.
    CustomHeadIncomplete,
    /// Two lengths in the wrong order, such as a hole larger than the head that covers it.
    NotSmaller {
        /// What has to be smaller.
        small: &'static str,
        /// What it has to be smaller than.
        large: &'static str,
        /// The former, as given.
        small_read: Quantity,
        /// The latter, as given.
        large_read: Quantity,
        /// The unit to state both in.
        unit: Unit,
    },
    /// A text that is only begun.
    Begun {
        /// Whole texts that begin with it; empty where they cannot be listed.
        whole: Vec<String>,
        /// What it lacks, as a sentence.
        lacks: String,
    },
    /// A temperature where a rise of temperature is wanted: it can be meant as either.
    RiseOrTemperature {
        /// The text read.
        read: String,
        /// The rise from room temperature, taken as how hot it gets.
        up_to: String,
        /// The rise, taken as how much hotter it gets.
        by: String,
    },
    /// A tool's tolerance that no torque wrench holds.
    TooClose {
        /// The tolerance read.
        read: String,
        /// A hundred times as much, as a share for the percentage.
        meant: String,
    },
    /// A boss too thin for its threads.
    ThinBoss {
        /// Boss diameter over thread diameter, as given.
        read: f64,
        /// The smallest boss for this thread.
        smallest: Quantity,
    },
    /// A spec of which no stage is a torque before the first angle.
    AngleWithoutTorque,
    /// An adapter that folds back past the drive, so that no pull turns the bolt.
    AdapterPastHandle,
    /// A grip and head too far from any joint for the deformation cone.
    ConeNotDefined,
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange {
                what,
                read,
                low,
                high,
                unit,
            } => write!(
                out,
                "The {what} reads {}. Type one from {} to {}.",
                said(*read, *unit),
                said(*low, *unit),
                said(*high, *unit)
            ),
            Self::Backwards(what) => write!(
                out,
                "The {what} range runs from large to small. Type the smaller end first."
            ),
            Self::NotFinite(what) => write!(
                out,
                "No {what} can be worked out from numbers this far from a workshop. Check the figures and their units."
            ),
            Self::NotAThread(read) => write!(
                out,
                "“{read}” is no thread. Type one such as M10, M10x1.25, 3/8-16, 3/8 UNF or #10-24."
            ),
            Self::UnknownSize { read, sizes } => write!(
                out,
                "“{read}” is no size in the table. Type one of {}.",
                sizes.join(", ")
            ),
            Self::UnknownPitch { size, read, names } => {
                write!(
                    out,
                    "“{read}” is no pitch of {size} in this table. Type one of {}.",
                    names.join(", ")
                )
            }
            Self::ClassInThread { class, thread } => {
                write!(
                    out,
                    "{class} is a strength class: it goes into Class. Type only {thread} here."
                )
            }
            Self::UnknownClass(read) => write!(
                out,
                "“{read}” is no strength class in the table. Type one of {}, as stamped on the head. A head without a mark may be as weak as 4.6 or grade 2.",
                class_table::names().collect::<Vec<_>>().join(", ")
            ),
            Self::AmbiguousGrade(read) => write!(
                out,
                "“{read}” alone can be an SAE grade or part of a metric class. Type grade {read}, or a class such as 8.8."
            ),
            Self::ClassNotForSize { class, low, high, unit } => {
                let from = if low.si() > 0.0 {
                    format!("from {} to", said(*low, *unit))
                } else {
                    "up to".into()
                };
                let high = said(*high, *unit);
                write!(
                    out,
                    "Class {class} is tabled for diameters {from} {high}. Type another class or thread."
                )
            }
            Self::UnknownWord { what, read, words } => {
                write!(out, "“{read}” is no {what}. Type one of {}.", words.join(", "))
            }
            Self::HeadNotTabled { head, thread } => write!(
                out,
                "No {head} head is tabled for {thread}. Measure it: type the bearing diameter and the hole diameter."
            ),
            Self::CustomHeadIncomplete => write!(
                out,
                "A measured head needs both diameters. Type the bearing diameter and the hole diameter."
            ),
            Self::NotSmaller {
                small,
                large,
                small_read,
                large_read,
                unit,
            } => write!(
                out,
                "The {small} of {} has to be smaller than the {large} of {}. Check both.",
                said(*small_read, *unit),
                said(*large_read, *unit)
            ),
            Self::Begun { whole, lacks } if whole.is_empty() => write!(out, "Only begun. {lacks}"),
            Self::Begun { whole, .. } => write!(
                out,
                "Only begun. Type on, such as {}.",
                whole.get(..2).unwrap_or(whole).join(" or ")
            ),
            Self::RiseOrTemperature { read, up_to, by } => write!(
                out,
                "{read} is {up_to} above a room at 20 °C: type {up_to}. Type {by} if it gets hotter by that much."
            ),
            Self::TooClose { read, meant } => write!(
                out,
                "No torque wrench is as close as ±{read}. Type {meant} if that is meant, or 0.5 % or more."
            ),
            Self::ThinBoss { read, smallest } => write!(
                out,
                "The boss is only {} thread diameters wide; below 1.4 its wall opens and no strength is tabled. Type {} or more.",
                rounded(*read, 0.01),
                said(*smallest, Unit::Millimetre)
            ),
            Self::AngleWithoutTorque => write!(
                out,
                "An angle counts from a snug torque. Type the torque first, such as 10 N·m + 90°."
            ),
            Self::AdapterPastHandle => write!(
                out,
                "The adapter folds back past the handle, so no pull turns the bolt. Check the lengths and the angle."
            ),
            Self::ConeNotDefined => write!(
                out,
                "Grip, head and parts are too far from any joint for the stiffness method. Check the grip and the outer diameter."
            ),
        }
    }
}

impl Refusal {
    /// A length that has to be smaller than another, each with its name.
    pub(in crate::fastener) fn not_smaller(
        (small, small_read): (&'static str, Length),
        (large, large_read): (&'static str, Length),
    ) -> Self {
        Self::NotSmaller {
            small,
            large,
            small_read: small_read.into(),
            large_read: large_read.into(),
            unit: Unit::Millimetre,
        }
    }

    /// Whole texts to offer instead, each one tap away.
    pub(super) fn remedies(&self) -> Vec<String> {
        match self {
            Self::ClassInThread { thread, .. } => vec![thread.clone()],
            Self::TooClose { meant, .. } => vec![meant.clone()],
            Self::UnknownClass(read) => class_table::near(read).into_iter().map(Into::into).collect(),
            _ => Vec::new(),
        }
    }
}

fn said(quantity: Quantity, unit: Unit) -> String {
    print::quantity(quantity, unit)
}

/// The quantity, where it lies within the bounds and is a number.
pub(super) fn within<Q: Into<Quantity> + Copy>(
    what: &'static str,
    read: Q,
    (low, high): (Q, Q),
    unit: Unit,
) -> Result<Q, Refusal> {
    let (read_si, low_si, high_si) = (read.into().si(), low.into().si(), high.into().si());
    if read_si >= low_si && read_si <= high_si {
        Ok(read)
    } else {
        Err(Refusal::OutOfRange {
            what,
            read: read.into(),
            low: low.into(),
            high: high.into(),
            unit,
        })
    }
}

/// The result, where it is a number.
pub(super) fn finite<Q: Into<Quantity> + Copy>(what: &'static str, result: Q) -> Result<Q, Refusal> {
    if result.into().si().is_finite() {
        Ok(result)
    } else {
        Err(Refusal::NotFinite(what))
    }
}
