//! A quantity as a person typed it: the number in the unit they chose, and how finely they said
//! it. The resolved `uom` quantity comes from here; text goes in by [`super::read`].

use super::{Kind, Quantity, Unit};

/// One value as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// The number, in `unit`. Always finite.
    pub value: f64,
    /// The unit typed, or the field's own where none was typed.
    pub unit: Unit,
    /// The step of the last digit typed, in `unit`: 1 for `60`, 0.1 for `44.3`. Zero for a
    /// fraction, which is taken as exact.
    pub step: f64,
}

impl Typed {
    /// The quantity, kind tagged at run time.
    #[must_use]
    pub fn quantity(self) -> Quantity {
        self.unit.of(self.value)
    }
}

/// A value or a range as typed; `low` equals `high` for a single value, and never exceeds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// The lower end.
    pub low: Typed,
    /// The upper end.
    pub high: Typed,
}

impl Bounds {
    /// A single value as a range of no width.
    #[must_use]
    pub fn single(value: Typed) -> Self {
        Self {
            low: value,
            high: value,
        }
    }

    /// Whether a range was typed.
    #[must_use]
    pub fn is_range(self) -> bool {
        self.low.value < self.high.value || self.low.unit != self.high.unit
    }

    /// What the ends measure; both measure the same.
    #[must_use]
    pub fn kind(self) -> Kind {
        self.low.unit.kind()
    }
}
