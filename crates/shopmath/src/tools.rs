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

impl Tools {
    /// The choices, in the order they are offered.
    pub const ALL: [Tools; 3] = [Tools::Both, Tools::Metric, Tools::Inch];

    /// The setting's name in a stored setting.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Both => "both",
            Self::Metric => "metric",
            Self::Inch => "inch",
        }
    }

    /// The rows of a kind in the order that serves these tools, given the unit that was typed.
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
