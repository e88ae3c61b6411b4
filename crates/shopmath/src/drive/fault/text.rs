//! Texts of the drive that could not be read.

use core::fmt;

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
