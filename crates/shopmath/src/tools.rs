//! The "my tools read in" setting: which units come first.

use crate::quantity::{Kind, System, Unit};

/// What the user's tools read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tools {
    /// Both kinds in the drawer: the units that were not typed come first.
    #[default]
    Both,
    /// Metric tools: metric rows first.
    Metric,
    /// Inch tools: inch and US rows first.
    Inch,
}

/// Units of one purpose, metric and inch.
const TWINS: &[(Unit, Unit)] = &[
    (Unit::NewtonMetre, Unit::PoundForceFoot),
    (Unit::Kilonewton, Unit::PoundForce),
    (Unit::Newton, Unit::PoundForce),
    (Unit::Millimetre, Unit::Inch),
    (Unit::SquareMillimetre, Unit::SquareInch),
    (Unit::Megapascal, Unit::PoundForcePerSquareInch),
    (Unit::KelvinDifference, Unit::FahrenheitDifference),
];

impl Tools {
    /// The choices, in the order they are offered.
    pub const ALL: [Tools; 3] = [Tools::Both, Tools::Metric, Tools::Inch];

    /// The setting's name in a stored setting.
    ///
    /// ```
    /// assert_eq!(shopmath::tools::Tools::ALL.map(|tools| tools.id()), ["both", "metric", "inch"]);
    /// ```
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Both => "both",
            Self::Metric => "metric",
            Self::Inch => "inch",
        }
    }

    /// The unit these tools read a result in: its own where both kinds are in the drawer.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, tools::Tools};
    /// assert_eq!(Tools::Inch.unit(Unit::Kilonewton), Unit::PoundForce);
    /// assert_eq!(Tools::Both.unit(Unit::Kilonewton), Unit::Kilonewton);
    /// ```
    #[must_use]
    pub fn unit(self, unit: Unit) -> Unit {
        let twin = |(metric, inch): &(Unit, Unit)| match self {
            Self::Both => None,
            Self::Metric => (unit == *inch).then_some(*metric),
            Self::Inch => (unit == *metric).then_some(*inch),
        };
        TWINS.iter().find_map(twin).unwrap_or(unit)
    }

    /// A second unit to show a result in. For a torque that of the other wrench in the drawer; none where
    /// all wrenches read alike. For a force at the hand, which nobody feels in newtons, that of a scale.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, tools::Tools};
    /// assert_eq!(Tools::Both.beside(Unit::NewtonMetre), Some(Unit::PoundForceFoot));
    /// assert_eq!(Tools::Both.beside(Unit::PoundForceInch), Some(Unit::NewtonMetre));
    /// assert_eq!(Tools::Both.beside(Unit::Kilonewton), None);
    /// assert_eq!(Tools::Both.beside(Unit::Newton), Some(Unit::PoundForce));
    /// assert_eq!(Tools::Metric.beside(Unit::Newton), Some(Unit::KilogramForce));
    /// assert_eq!(Tools::Metric.beside(Unit::NewtonMetre), None);
    /// ```
    #[must_use]
    pub fn beside(self, unit: Unit) -> Option<Unit> {
        match (self, unit.kind(), unit.system()) {
            (Self::Both, Kind::Torque, System::Metric) => Some(Unit::PoundForceFoot),
            (Self::Both, Kind::Torque, System::Inch) => Some(Unit::NewtonMetre),
            (Self::Both, ..) if unit == Unit::Newton => Some(Unit::PoundForce),
            (Self::Metric, ..) if unit == Unit::Newton => Some(Unit::KilogramForce),
            _ => None,
        }
    }

    /// The rows of a kind in the order that serves these tools, given the unit that was typed.
    ///
    /// ```
    /// use shopmath::{quantity::{Kind, Unit}, tools::Tools};
    /// let first = |tools: Tools| tools.rows(Kind::Torque, Unit::NewtonMetre)[0];
    /// assert_eq!(Tools::ALL.map(first), [Unit::PoundForceFoot, Unit::NewtonMetre, Unit::PoundForceFoot]);
    /// ```
    #[must_use]
    pub fn rows(self, kind: Kind, typed: Unit) -> Vec<Unit> {
        let first = match (self, typed.system()) {
            (Self::Metric, _) | (Self::Both, System::Inch) => System::Metric,
            (Self::Inch, _) | (Self::Both, System::Metric) => System::Inch,
        };
        let (mut rows, others): (Vec<Unit>, Vec<Unit>) = kind.rows().partition(|unit| unit.system() == first);
        rows.extend(others);
        rows
    }
}
