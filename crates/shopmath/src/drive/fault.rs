//! What can be wrong with a drive, a belt's name, a tensioner or a load, and the sentence that
//! says what was read and what to type instead. The one place that words such a message.

use super::belt::MOST_RIBS;
use super::layout::Layout;
use super::pulley::{Pulley, Side};
use super::si::in_metres;
use crate::quantity::print;
use core::fmt;
use uom::si::f64::Length;

/// Why no belt can take a route. Pulleys are numbered from 0 in belt order; span n runs from
/// pulley n to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RouteFault {
    /// Fewer than two pulleys.
    TooFew(usize),
    /// Every pulley is on the belt's back.
    NoneOnRibs,
    /// The distance from back face to effective line is negative or absurd.
    BackOutOfRange,
    /// A pulley more than 100 m away, or at no place at all.
    FarAway(usize),
    /// A diameter outside 1 mm–10 m, or too small for the belt's cords to go round.
    NoSize(usize),
    /// A ribbed pulley below the least effective diameter of the profile.
    BelowMinimum(usize),
    /// Two pulleys overlap, or leave no room for the belt to pass between them.
    Overlap(usize, usize),
    /// The belt does not touch this pulley on the side stated.
    Missed(usize),
    /// A span runs through a pulley.
    SpanThrough {
        /// The span, by the pulley it leaves.
        span: usize,
        /// The pulley in its way.
        pulley: usize,
    },
    /// Two spans cross; each by the pulley it leaves.
    SpansCross(usize, usize),
}

impl RouteFault {
    /// The pulleys it points at, those to move first.
    #[must_use]
    pub fn pulleys(self) -> Vec<usize> {
        match self {
            Self::TooFew(_) | Self::NoneOnRibs | Self::BackOutOfRange => Vec::new(),
            Self::FarAway(index) | Self::NoSize(index) | Self::BelowMinimum(index) | Self::Missed(index) => vec![index],
            Self::Overlap(one, other) | Self::SpansCross(one, other) => vec![one, other],
            Self::SpanThrough { pulley, .. } => vec![pulley],
        }
    }

    /// The sentence for a person, with the pulleys' names.
    #[must_use]
    pub fn sentence(self, layout: &Layout) -> String {
        let pulleys = &layout.pulleys;
        let name = |index: usize| label(pulleys, index);
        let next = |index: usize| label(pulleys, (index + 1) % pulleys.len().max(1));
        match self {
            Self::TooFew(0) => {
                "No pulley yet. A belt needs two at least: add the crank first, then the next one the belt meets."
                    .into()
            }
            Self::TooFew(_) => "A belt needs two pulleys at least. Add the next one the belt meets.".into(),
            Self::NoneOnRibs => "Every pulley is set to the belt's back. Set those with grooves to rib.".into(),
            Self::BackOutOfRange => {
                "The back face lies 0 to 50 mm from the effective line. Type a distance such as 2.3 mm.".into()
            }
            Self::FarAway(index) => format!(
                "{} stands more than 100 m away. Type its centre in millimetres.",
                name(index)
            ),
            Self::NoSize(index) => format!(
                "{} has a diameter no belt runs on. Type one between 1 mm and 10 m, such as 60.",
                name(index)
            ),
            Self::BelowMinimum(index) => format!(
                "{} is {} across; a ribbed {} pulley needs {} at least. Measure the effective diameter again, or check the profile.",
                name(index),
                millimetres(pulleys.get(index).map_or(layout.back, |pulley| pulley.diameter)),
                layout.profile.name(),
                millimetres(layout.profile.minimum_diameter())
            ),
            Self::Overlap(one, other) => overlap(layout, one, other),
            Self::Missed(index) => format!(
                "The belt misses {} on its {}. Change its side, its place, or its turn in the order.",
                name(index),
                match pulleys.get(index).map(|pulley| pulley.side) {
                    Some(Side::Back) => "flat side",
                    _ => "ribbed side",
                }
            ),
            Self::SpanThrough { span, pulley } => format!(
                "The belt from {} to {} runs through {}. Change the order of the pulleys, or move {} out of the way.",
                name(span),
                next(span),
                name(pulley),
                name(pulley)
            ),
            Self::SpansCross(one, other) => format!(
                "The belt crosses itself: {} to {} cuts {} to {}. Change the order, or which side runs on them.",
                name(one),
                next(one),
                name(other),
                next(other)
            ),
        }
    }
}

fn overlap(layout: &Layout, one: usize, other: usize) -> String {
    let pulleys = &layout.pulleys;
    let (Some(first), Some(second)) = (pulleys.get(one), pulleys.get(other)) else {
        return "Two pulleys overlap. Check their centres and diameters.".into();
    };
    let apart = first.centre.point().distance(second.centre.point());
    let bodies = first.body_radius() + second.body_radius();
    let with_belt = if first.side == second.side {
        bodies
    } else {
        first.effective_radius(layout.back) + second.effective_radius(layout.back)
    };
    let (state, needed) = if apart <= bodies + 1e-9 {
        ("overlap", bodies)
    } else {
        ("leave no room for the belt between them", with_belt)
    };
    format!(
        "{} and {} {state}: their centres are {} apart and need more than {}. Check both centres and diameters.",
        label(pulleys, one),
        label(pulleys, other),
        millimetres(super::si::metres(apart)),
        millimetres(super::si::metres(needed))
    )
}

/// How a pulley is called in a sentence.
fn label(pulleys: &[Pulley], index: usize) -> String {
    match pulleys.get(index) {
        Some(pulley) if !pulley.name.trim().is_empty() => pulley.name.trim().to_owned(),
        _ => format!("pulley {}", index + 1),
    }
}

fn millimetres(length: Length) -> String {
    format!("{} mm", print::rounded(in_metres(length) * 1e3, 0.1))
}

/// What is wrong with a belt's name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BeltFault {
    /// Not ribs, profile and length.
    NotAName(String),
    /// Letters that are no profile.
    NoSuchProfile(String),
    /// A number of ribs no belt has.
    Ribs(u32),
    /// A length no belt has, millimetre.
    Length(u32),
}

impl fmt::Display for BeltFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAName(text) => write!(
                out,
                "“{text}” is no belt name. Type ribs, profile and length in millimetres, such as 6PK1453."
            ),
            Self::NoSuchProfile(letters) => {
                write!(
                    out,
                    "“{letters}” is no ribbed profile. Type PH, PJ, PK, PL or PM, as in 6PK1453."
                )
            }
            Self::Ribs(ribs) => write!(out, "{ribs} ribs make no belt. Type 1 to {MOST_RIBS}, as in 6PK1453."),
            Self::Length(length) => write!(
                out,
                "{length} mm is no belt length. Type 100 to 20000 mm after the profile, as in 6PK1453."
            ),
        }
    }
}

/// What is wrong with a tensioner, or with a belt on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TensionerFault {
    /// It names a pulley the drive has not got.
    NoSuchPulley,
    /// The pivot is the pulley's own centre, or absurdly far from it.
    NoArm,
    /// A sweep of nothing, backwards, or more than a turn.
    NoSweep,
    /// At no angle of the sweep can the belt take the route.
    NeverRoutes,
    /// The belt is shorter than the arm's slackest position allows.
    TooShort {
        /// The belt.
        belt: Length,
        /// The shortest that goes on.
        shortest: Length,
    },
    /// The belt is longer than the arm can take up.
    TooLong {
        /// The belt.
        belt: Length,
        /// The longest that is held.
        longest: Length,
    },
    /// The belt's length is in reach, and no position of the arm with that length lets it run.
    NoPosition,
    /// The arm stands where its motion takes up no belt.
    DeadCentre,
}

impl fmt::Display for TensionerFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NoSuchPulley => write!(
                out,
                "No pulley has the tensioner's name. Use a name from the pulley list."
            ),
            Self::NoArm => write!(
                out,
                "The pivot must stand beside the pulley's centre, 1 mm to 10 m away. Type the pivot's place in millimetres."
            ),
            Self::NoSweep => write!(
                out,
                "The sweep runs from the low to the high angle, a full turn at most. Type it as 200..260."
            ),
            Self::NeverRoutes => write!(
                out,
                "At no angle of this sweep can the belt take the route. Check pivot, sweep and the side the belt runs on."
            ),
            Self::TooShort { belt, shortest } => write!(
                out,
                "A belt of {} does not go on: the slack end of the sweep needs {}. Take a longer one.",
                millimetres(belt),
                millimetres(shortest)
            ),
            Self::TooLong { belt, longest } => write!(
                out,
                "A belt of {} stays slack: the arm takes up {} at most. Take a shorter one.",
                millimetres(belt),
                millimetres(longest)
            ),
            Self::NoPosition => write!(
                out,
                "No position of the arm lets this belt run clear. Check pivot and sweep."
            ),
            Self::DeadCentre => write!(
                out,
                "The arm stands at dead centre, where its motion takes up no belt. Check pivot and sweep."
            ),
        }
    }
}

/// A text of the drive that could not be read.
#[derive(Clone, Debug, PartialEq)]
pub enum TextFault {
    /// A pulley that is not `name:side:x,y:diameter`.
    Pulley {
        /// Its number from 1.
        number: usize,
        /// What was read.
        text: String,
        /// Which part is wrong.
        part: PulleyPart,
    },
    /// A tensioner that is not `name@x,y,low..high`.
    Tensioner(String),
    /// A tensioner or a load of a pulley the drive has not got.
    UnknownPulley {
        /// The name read.
        name: String,
        /// The names there are.
        known: Vec<String>,
    },
    /// A load that is not `name=value`.
    Load(String),
    /// A load on the pulley that drives.
    LoadOnDriver(String),
    /// A second load on the same pulley.
    LoadTwice(String),
    /// A load given as power, with no speed to turn it into torque.
    NoSpeed(String),
    /// A number outside what such a thing can have.
    OutOfRange {
        /// What was read, with its unit.
        read: String,
        /// The least, with its unit.
        least: String,
        /// The most, with its unit.
        most: String,
    },
    /// A whole number was wanted.
    NotWhole(String),
    /// No entry of the list.
    NoChoice {
        /// What was read.
        read: String,
        /// What there is.
        choices: Vec<String>,
    },
    /// The belt's profile is not the drive's.
    OtherProfile {
        /// The belt's.
        belt: &'static str,
        /// The drive's.
        drive: &'static str,
    },
}

/// The part of a pulley's text that could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PulleyPart {
    /// Not four parts between colons.
    Shape,
    /// No name, or a mark in it that separates texts.
    Name,
    /// A name another pulley has.
    SameName,
    /// Neither `rib` nor `back`.
    Side,
    /// Not two numbers with a comma between.
    Place,
    /// No number above zero.
    Diameter,
    /// A number that could not be read; the reader's own sentence.
    Number(String),
}

impl fmt::Display for TextFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Pulley { number, text, part } => write!(out, "Pulley {number}, “{text}”: {part}"),
            Self::Tensioner(text) => write!(
                out,
                "“{text}” is no tensioner. Type pulley@pivot-x,pivot-y,low..high, such as tensioner@120,80,200..260; use a point, not a comma, in decimals."
            ),
            Self::UnknownPulley { name, known } => {
                write!(out, "No pulley is called “{name}”. Use one of: {}.", known.join(", "))
            }
            Self::Load(text) => write!(
                out,
                "“{text}” is no load. Type pulley=load, such as alternator=90 A 14 V; water pump=0.6 kW; compressor=12 N·m."
            ),
            Self::LoadOnDriver(name) => write!(
                out,
                "{name} drives the belt and carries the sum of all loads. Give loads to the other pulleys only."
            ),
            Self::LoadTwice(name) => write!(out, "{name} has two loads. Give each pulley one."),
            Self::NoSpeed(name) => write!(
                out,
                "The load of {name} is a power: the engine speed is needed to make it a torque. Type the speed, such as 2000 rpm."
            ),
            Self::OutOfRange { read, least, most } => {
                write!(out, "{read} cannot be. Type a value from {least} to {most}.")
            }
            Self::NotWhole(read) => write!(out, "“{read}” is no whole number. Type digits only, such as 6."),
            Self::NoChoice { read, choices } => write!(out, "“{read}” is not known here. Type {}.", choices.join(", ")),
            Self::OtherProfile { belt, drive } => write!(
                out,
                "The belt is {belt} and the drive is {drive}: ribs and grooves would not match. Change the belt or the profile."
            ),
        }
    }
}

impl fmt::Display for PulleyPart {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Shape => write!(
                out,
                "four parts are needed. Type name:side:x,y:diameter, such as crank:rib:0,0:150."
            ),
            Self::Name => write!(
                out,
                "the name is missing or has one of : ; , = @ in it. Type a plain word, such as idler."
            ),
            Self::SameName => write!(out, "another pulley has this name. Give each its own, such as idler 2."),
            Self::Side => write!(out, "the side must be rib (grooves) or back (flat)."),
            Self::Place => write!(
                out,
                "the centre needs two numbers with a comma between, such as 120,-45.5; use a point in decimals."
            ),
            Self::Diameter => write!(out, "the diameter must be above 0. Type millimetres, such as 60."),
            Self::Number(sentence) => write!(out, "{sentence}"),
        }
    }
}
