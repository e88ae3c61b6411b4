//! Measures that give no place or size.

use core::fmt;

/// Why two distances give no place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlaceFault {
    /// The two placed pulleys share one centre.
    SamePlace,
    /// The two distances together do not reach from one to the other.
    TooShort,
    /// One distance is longer than the other and the centres' distance together.
    TooLong,
    /// A distance is zero, negative or no number.
    NoDistance,
}

impl fmt::Display for PlaceFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sentence = match self {
            Self::SamePlace => "Both pulleys have the same centre. Measure from two different ones.",
            Self::TooShort => {
                "The two distances do not meet: together they are shorter than from centre to centre. Measure again."
            }
            Self::TooLong => "The two distances do not meet: one is too long for the other. Measure again.",
            Self::NoDistance => "Type both distances, centre to centre, above 0, such as 215 mm.",
        };
        out.write_str(sentence)
    }
}

/// Why a measured place or size could not be taken.
#[derive(Clone, Debug, PartialEq)]
pub enum MeasureFault {
    /// A text that could not be read: which of the texts given, from 0, and its sentence.
    Text(usize, String),
    /// Nothing where the drive needs a length.
    Nothing,
    /// Nothing where the tensioner needs an angle.
    NoAngle,
    /// No torque, power, or current with a voltage.
    NoLoad(String),
    /// Distances that do not meet.
    Place(PlaceFault),
    /// The pulley list cannot be read or has no such pulley.
    NoPulley,
    /// The measure leaves no pulley, such as a ratio of nothing.
    NoDiameter,
    /// No name.
    NoName,
    /// A name that another pulley has.
    NameTaken(String),
    /// A name with a mark in it that parts the texts of a drive.
    NameMarked,
    /// A place no engine reaches to.
    NoPlace,
}

impl fmt::Display for MeasureFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Text(_, sentence) => write!(out, "{sentence}"),
            Self::Nothing => write!(out, "Nothing typed yet. Type millimetres, such as 60."),
            Self::NoAngle => write!(out, "Nothing typed yet. Type degrees, such as 55."),
            Self::NoLoad(text) => write!(
                out,
                "“{}” is no load. Type a power, a torque, or current and voltage, such as 0.6 kW, 12 N·m or 90 A 14 V.",
                text.trim()
            ),
            Self::Place(fault) => write!(out, "{fault}"),
            Self::NoPulley => write!(
                out,
                "The pulley list cannot be read yet, or has no such pulley. Put the list right first."
            ),
            Self::NoName => write!(out, "The name is missing. Type one, such as idler."),
            Self::NameTaken(name) => write!(
                out,
                "“{name}” is the name of another pulley. Type one of its own, such as {name} 2."
            ),
            Self::NameMarked => write!(
                out,
                "A name cannot have one of : ; , @ = in it. Type letters, digits and spaces, such as idler 2."
            ),
            Self::NoPlace => write!(out, "No pulley stands there. Type millimetres, such as 120 or -45.5."),
            Self::NoDiameter => write!(
                out,
                "This leaves no pulley. Type a measure above 0, such as 176 mm or 2.4."
            ),
        }
    }
}
