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
    ///
    /// ```
    /// use shopmath::quantity::{Unit, read};
    /// let typed = read::value("1-5/8 in", read::Expect::default()).unwrap();
    /// assert!((typed.quantity().value_in(Unit::Millimetre).unwrap() - 41.275).abs() < 1e-9);
    /// ```
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
    ///
    /// ```
    /// use shopmath::quantity::{Bounds, Typed, Unit};
    /// let torque = Bounds::single(Typed { value: 60.0, unit: Unit::NewtonMetre, step: 1.0 });
    /// assert_eq!((torque.low.value, torque.high.value, torque.is_range()), (60.0, 60.0, false));
    /// ```
    #[must_use]
    pub fn single(value: Typed) -> Self {
        Self {
            low: value,
            high: value,
        }
    }

    /// Whether a range was typed.
    ///
    /// ```
    /// use shopmath::quantity::read;
    /// let is_range = |text| read::range(text, read::Expect::default()).unwrap().is_range();
    /// assert!(is_range("35-45 N·m") && is_range("25 N·m ± 10 %") && !is_range("40 N·m"));
    /// ```
    #[must_use]
    pub fn is_range(self) -> bool {
        self.low.value < self.high.value || self.low.unit != self.high.unit
    }

    /// What the ends measure; both measure the same.
    ///
    /// ```
    /// use shopmath::quantity::{Kind, read};
    /// assert_eq!(read::range("30-35 psi", read::Expect::default()).unwrap().kind(), Kind::Pressure);
    /// ```
    #[must_use]
    pub fn kind(self) -> Kind {
        self.low.unit.kind()
    }
}

/// A value of a spec, with what the manual prints in brackets beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// The value or range.
    pub value: Bounds,
    /// The same in other units, as the manual has it; each measures what the value does.
    pub beside: Vec<Bounds>,
}

impl Stage {
    /// A value with no figure beside it.
    pub(super) fn alone(value: Bounds) -> Self {
        Self {
            value,
            beside: Vec::new(),
        }
    }

    /// Whether a figure beside the value differs from it by more than the rounding of both
    /// explains: by more than a step of the last digit of each together. Of several zeros at the end of
    /// a whole number only the first is taken for a digit.
    ///
    /// ```
    /// use shopmath::quantity::read;
    /// let contradicts = |text| read::line(text).unwrap().stages[0].contradicts();
    /// assert!(!contradicts("20 N·m (15 lbf·ft) + 60°"));
    /// assert!(contradicts("20 N·m (20 lbf·ft) + 60°"));
    /// ```
    #[must_use]
    pub fn contradicts(&self) -> bool {
        let apart = |one: Typed, other: Typed| {
            let rounding = rounding(one) * one.unit.factor() + rounding(other) * other.unit.factor();
            let (a, b) = (one.quantity().si(), other.quantity().si());
            (a - b).abs() > rounding.max(1e-9 * a.abs())
        };
        self.beside
            .iter()
            .any(|beside| apart(self.value.low, beside.low) || apart(self.value.high, beside.high))
    }
}

/// What a value may have been rounded to, in its unit: `600` to tens, `60 000` to thousands.
fn rounding(typed: Typed) -> f64 {
    let mut step = typed.step;
    while typed.step == 1.0 && typed.value != 0.0 && typed.value % (step * 100.0) == 0.0 {
        step *= 10.0;
    }
    step
}
