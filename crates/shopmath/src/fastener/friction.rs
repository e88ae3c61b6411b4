//! Friction in the thread and under the head, always a range.

use super::refusal::{Refusal, within};
use super::si::ratio;
use crate::quantity::Unit;
use crate::source::{Source, fastener as sources};
use uom::si::f64::Ratio;

/// A range of one coefficient of friction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrictionRange {
    /// The smallest to expect: gives the largest clamp load.
    pub low: Ratio,
    /// The largest to expect.
    pub high: Ratio,
}

/// Friction in the thread, μG, and under the head, μK.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    /// In the thread.
    pub thread: FrictionRange,
    /// Under the head.
    pub head: FrictionRange,
}

/// One pair of coefficients out of the ranges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrictionAt {
    /// In the thread, μG.
    pub thread: Ratio,
    /// Under the head, μK.
    pub head: Ratio,
}

/// A usual range, by the state of the surfaces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preset {
    /// The state, as a mechanic says it.
    pub name: &'static str,
    /// The ends of the range.
    pub ends: [f64; 2],
    /// Where it comes from.
    pub source: Source,
}

/// Usual ranges, slipperiest first. VDI 2230 friction classes, recalled; the last is common
/// practice.
pub static PRESETS: [Preset; 4] = [
    Preset {
        name: "MoS₂ or anti-seize",
        ends: [0.08, 0.12],
        source: sources::FRICTION_CLASS,
    },
    Preset {
        name: "oiled, or coated as delivered",
        ends: [0.10, 0.16],
        source: sources::FRICTION_CLASS,
    },
    Preset {
        name: "dry steel",
        ends: [0.14, 0.24],
        source: sources::FRICTION_CLASS,
    },
    Preset {
        name: "dry into aluminium",
        ends: [0.14, 0.24],
        source: sources::FRICTION_PRACTICE,
    },
];

impl FrictionRange {
    /// A range of coefficients between 0.01 and 1.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] for an end outside, [`Refusal::Backwards`] for ends in the wrong
    /// order.
    ///
    /// ```
    /// use shopmath::fastener::friction::FrictionRange;
    /// use shopmath::quantity::exact::ratio::Number;
    /// use uom::si::f64::Ratio;
    /// let mu = |value| Ratio::new::<Number>(value);
    /// let oiled = FrictionRange::new(mu(0.10), mu(0.16)).unwrap();
    /// assert!((oiled.middle().get::<Number>() - 0.13).abs() < 1e-12);
    /// assert!(FrictionRange::new(mu(0.16), mu(0.10)).is_err());
    /// ```
    pub fn new(low: Ratio, high: Ratio) -> Result<Self, Refusal> {
        let limits = (ratio(0.01), ratio(1.0));
        within("coefficient of friction", low, limits, Unit::Number)?;
        within("coefficient of friction", high, limits, Unit::Number)?;
        if low > high {
            return Err(Refusal::Backwards("friction"));
        }
        Ok(Self { low, high })
    }

    /// The middle of the range, between its ends: 0.01 to 1.
    ///
    /// ```
    /// use shopmath::fastener::friction::FrictionRange;
    /// use shopmath::quantity::exact::ratio::Number;
    /// let dry = FrictionRange::new(0.14.into(), 0.24.into()).unwrap();
    /// assert!((dry.middle().get::<Number>() - 0.19).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn middle(self) -> Ratio {
        (self.low + self.high) * 0.5
    }

    /// Where the range comes from, if it is one of the usual ones, [`PRESETS`].
    ///
    /// ```
    /// use shopmath::fastener::friction::FrictionRange;
    /// use shopmath::quantity::exact::ratio::Number;
    /// use shopmath::source::fastener::FRICTION_CLASS;
    /// use uom::si::f64::Ratio;
    /// let range = |low, high| FrictionRange::new(Ratio::new::<Number>(low), Ratio::new::<Number>(high)).unwrap();
    /// assert_eq!(range(0.10, 0.16).usual(), Some(FRICTION_CLASS));
    /// assert_eq!(range(0.11, 0.16).usual(), None);
    /// ```
    #[must_use]
    pub fn usual(self) -> Option<Source> {
        let near = |end: f64, value: Ratio| (end - value.value).abs() < 1e-9;
        let usual = PRESETS
            .iter()
            .find(|preset| near(preset.ends[0], self.low) && near(preset.ends[1], self.high));
        usual.map(|preset| preset.source)
    }
}

impl Friction {
    /// The same range in the thread and under the head, as all of [`PRESETS`] are meant.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// let oiled = FrictionRange::new(0.10.into(), 0.16.into()).unwrap();
    /// let friction = Friction::both(oiled);
    /// assert_eq!((friction.thread, friction.head), (oiled, oiled));
    /// ```
    #[must_use]
    pub fn both(range: FrictionRange) -> Self {
        Self {
            thread: range,
            head: range,
        }
    }

    /// The slippery end, both coefficients at their smallest: the largest clamp load for a torque.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// let range = |low: f64, high: f64| FrictionRange::new(low.into(), high.into()).unwrap();
    /// let least = Friction { thread: range(0.08, 0.12), head: range(0.14, 0.24) }.least();
    /// assert_eq!((least.thread, least.head), (0.08.into(), 0.14.into()));
    /// ```
    #[must_use]
    pub fn least(self) -> FrictionAt {
        FrictionAt {
            thread: self.thread.low,
            head: self.head.low,
        }
    }

    /// The middle: each coefficient halfway between its ends.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::quantity::exact::ratio::Number;
    /// let range = |low: f64, high: f64| FrictionRange::new(low.into(), high.into()).unwrap();
    /// let middle = Friction { thread: range(0.08, 0.12), head: range(0.14, 0.24) }.middle();
    /// assert!((middle.thread.get::<Number>() - 0.10).abs() < 1e-12);
    /// assert!((middle.head.get::<Number>() - 0.19).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn middle(self) -> FrictionAt {
        FrictionAt {
            thread: self.thread.middle(),
            head: self.head.middle(),
        }
    }

    /// The rough end, both coefficients at their largest: the smallest clamp load for a torque.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// let range = |low: f64, high: f64| FrictionRange::new(low.into(), high.into()).unwrap();
    /// let most = Friction { thread: range(0.08, 0.12), head: range(0.14, 0.24) }.most();
    /// assert_eq!((most.thread, most.head), (0.12.into(), 0.24.into()));
    /// ```
    #[must_use]
    pub fn most(self) -> FrictionAt {
        FrictionAt {
            thread: self.thread.high,
            head: self.head.high,
        }
    }
}
