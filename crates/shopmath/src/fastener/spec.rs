//! A tightening spec: torques and turns in the order they are applied.

use super::refusal::Refusal;
use super::si::radians;
use super::tighten::Spread;
use uom::si::f64::{Angle, Torque};

/// One stage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stage {
    /// Tighten until the wrench reads this torque.
    Torque {
        /// Lower end.
        low: Torque,
        /// Upper end; equal for a single figure.
        high: Torque,
    },
    /// Turn further by this angle.
    Turn {
        /// Lower end.
        low: Angle,
        /// Upper end; equal for a single figure.
        high: Angle,
    },
}

/// The stages; the first is a torque.
#[derive(Clone, Debug, PartialEq)]
pub struct Spec {
    stages: Vec<Stage>,
}

impl Spec {
    /// A spec of stages in order.
    ///
    /// # Errors
    /// [`Refusal::AngleWithoutTorque`] unless the first stage is a torque.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::angle::Degree;
    /// use uom::si::f64::Angle;
    /// let quarter = Angle::new::<Degree>(90.0);
    /// assert!(Spec::new(vec![Stage::Turn { low: quarter, high: quarter }]).is_err());
    /// ```
    pub fn new(stages: Vec<Stage>) -> Result<Self, Refusal> {
        match stages.first() {
            Some(Stage::Torque { .. }) => Ok(Self { stages }),
            _ => Err(Refusal::AngleWithoutTorque),
        }
    }

    /// The stages in the order they are applied: at least one, the first a torque.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::{angle::Degree, torque::NewtonMetre};
    /// use uom::si::f64::{Angle, Torque};
    /// let (snug, turn) = (Torque::new::<NewtonMetre>(10.0), Angle::new::<Degree>(90.0));
    /// let stages = vec![Stage::Torque { low: snug, high: snug }, Stage::Turn { low: turn, high: turn }];
    /// assert_eq!(Spec::new(stages.clone()).unwrap().stages(), stages);
    /// ```
    #[must_use]
    pub fn stages(&self) -> &[Stage] {
        &self.stages
    }

    /// The last torque of the spec, which the wrench is set to: its ends. Always there, for the first stage is a
    /// torque.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::torque::NewtonMetre;
    /// let torque = |value| uom::si::f64::Torque::new::<NewtonMetre>(value);
    /// let snug = Stage::Torque { low: torque(20.0), high: torque(20.0) };
    /// let spec = Spec::new(vec![snug, Stage::Torque { low: torque(45.0), high: torque(50.0) }]).unwrap();
    /// assert_eq!(spec.torque(), Some((torque(45.0), torque(50.0))));
    /// ```
    #[must_use]
    pub fn torque(&self) -> Option<(Torque, Torque)> {
        self.stages.iter().rev().find_map(|stage| match *stage {
            Stage::Torque { low, high } => Some((low, high)),
            Stage::Turn { .. } => None,
        })
    }

    /// The torque of the spec that tightens most, for a later and smaller one never loosens: its
    /// ends. They are compared by the upper one; always there, for the first stage is a torque.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::torque::NewtonMetre;
    /// let torque = |value| uom::si::f64::Torque::new::<NewtonMetre>(value);
    /// let stage = |value| Stage::Torque { low: torque(value), high: torque(value) };
    /// let spec = Spec::new(vec![stage(60.0), stage(20.0)]).unwrap();
    /// assert_eq!(spec.strongest_torque(), Some((torque(60.0), torque(60.0))));
    /// ```
    #[must_use]
    pub fn strongest_torque(&self) -> Option<(Torque, Torque)> {
        let torques = self.stages.iter().filter_map(|stage| match *stage {
            Stage::Torque { low, high } => Some((low, high)),
            Stage::Turn { .. } => None,
        });
        torques.reduce(|most, next| if next.1 > most.1 { next } else { most })
    }

    /// Whether an angle is part of the spec.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::{angle::Degree, torque::NewtonMetre};
    /// use uom::si::f64::{Angle, Torque};
    /// let (snug, quarter) = (Torque::new::<NewtonMetre>(10.0), Angle::new::<Degree>(90.0));
    /// let (snug, turn) = (Stage::Torque { low: snug, high: snug }, Stage::Turn { low: quarter, high: quarter });
    /// assert!(!Spec::new(vec![snug]).unwrap().turns());
    /// assert!(Spec::new(vec![snug, turn]).unwrap().turns());
    /// ```
    #[must_use]
    pub fn turns(&self) -> bool {
        self.stages.iter().any(|stage| matches!(stage, Stage::Turn { .. }))
    }

    /// All angles of the spec together, end by end: nothing for a spec of torques alone.
    ///
    /// ```
    /// use shopmath::fastener::spec::{Spec, Stage};
    /// use shopmath::quantity::exact::{angle::Degree, torque::NewtonMetre};
    /// use uom::si::f64::{Angle, Torque};
    /// let (snug, degrees) = (Torque::new::<NewtonMetre>(10.0), |value| Angle::new::<Degree>(value));
    /// let turn = Stage::Turn { low: degrees(85.0), high: degrees(95.0) };
    /// let spec = Spec::new(vec![Stage::Torque { low: snug, high: snug }, turn, turn]).unwrap();
    /// let whole = [spec.turn().low, spec.turn().mid, spec.turn().high].map(|angle| angle.get::<Degree>().round());
    /// assert_eq!(whole, [170.0, 180.0, 190.0]);
    /// ```
    #[must_use]
    pub fn turn(&self) -> Spread<Angle> {
        let mut sum = Spread {
            low: radians(0.0),
            mid: radians(0.0),
            high: radians(0.0),
        };
        for stage in &self.stages {
            if let Stage::Turn { low, high } = *stage {
                sum.low += low;
                sum.mid += (low + high) * 0.5;
                sum.high += high;
            }
        }
        sum
    }
}
