//! Torque plus angle: the clamp load after each stage, where yield begins and what is stretched for
//! good past it. The stiffness comes from [`super::resilience`].

use super::refusal::{Refusal, finite};
use super::si::{metres, metres_per_newton, newtons, radians};
use super::spec::{Spec, Stage};
use super::tighten::{Applied, Bolt, Spread};
use crate::bound::between;
use crate::quantity::compliance::Compliance;
use core::f64::consts::TAU;
use uom::si::f64::{Angle, Force, Length, Pressure, Ratio, Torque};

/// A joint that is turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Thread, head and friction.
    pub bolt: Bolt,
    /// Yield strength of the bolt.
    pub yield_strength: Pressure,
    /// Resilience of the bolt, δS.
    pub bolt_resilience: Compliance,
    /// Resilience of the clamped parts, δP.
    pub parts_resilience: Compliance,
    /// Tolerance of the torque wrench.
    pub tool: Ratio,
}

/// What a spec does to a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turned {
    /// Clamp load where the first angle begins: after the torques before it.
    pub snug: Spread<Force>,
    /// Clamp load at the end.
    pub clamp: Spread<Force>,
    /// Clamp load at which the bolt yields while it is turned.
    pub yield_clamp: Spread<Force>,
    /// Angle from the snug torque to yield, at middling friction; nothing when it yields before.
    pub angle_to_yield: Angle,
    /// Stretch for good, of the turn past yield.
    pub past_yield: Spread<Length>,
    /// Whether a torque of the spec is more than the bolt takes: low, mid, high.
    pub torque_yields: Spread<bool>,
}

/// One pass through the stages.
#[derive(Clone, Copy)]
struct Lane {
    clamp: f64,
    snug: Option<f64>,
    past: f64,
    torque_yields: bool,
}

/// Angle that a clamp load takes, θ = 2π·F·(δS + δP)/P.
///
/// # Errors
/// [`Refusal::NotFinite`] for loads or resiliences past any joint.
///
/// ```
/// use shopmath::fastener::angle::angle_for;
/// use shopmath::quantity::compliance::{Compliance, InUnits};
/// use shopmath::quantity::exact::{angle::Degree, compliance::MetrePerNewton, force::Kilonewton, length::Millimetre};
/// use uom::si::f64::{Force, Length};
/// let joint = Compliance::new::<MetrePerNewton>(4.133e-9 + 6.535e-10);
/// let pitch = Length::new::<Millimetre>(1.5);
/// let turn = angle_for(Force::new::<Kilonewton>(29.6), joint, pitch).unwrap();
/// assert!((turn.get::<Degree>() - 34.0).abs() < 0.05);
/// ```
pub fn angle_for(clamp: Force, joint: Compliance, pitch: Length) -> Result<Angle, Refusal> {
    finite("angle", radians(TAU * clamp.value * joint.value / pitch.value))
}

impl Joint {
    /// Clamp load per angle, newton per radian: P/(2π·(δS + δP)).
    #[must_use]
    pub fn clamp_per_radian(&self) -> Force {
        newtons(self.bolt.thread.pitch.value / (TAU * self.resilience().value))
    }

    /// δS + δP.
    #[must_use]
    pub fn resilience(&self) -> Compliance {
        metres_per_newton(self.bolt_resilience.value + self.parts_resilience.value)
    }

    /// Follows a spec stage by stage. A torque tightens up to its clamp load and never loosens; an
    /// angle adds clamp load up to yield, which then holds while the rest of the turn stretches the
    /// bolt for good (perfectly plastic, hardening left out). Low, mid and high are three bolts:
    /// the snug torque carries their friction, the angle does not.
    ///
    /// # Errors
    /// As [`Bolt::clamp_range`]; [`Refusal::NotFinite`] for resiliences past any joint.
    pub fn turned(&self, spec: &Spec) -> Result<Turned, Refusal> {
        let yield_clamp = self.bolt.clamp_at_yield(self.yield_strength);
        let lever = self.bolt.torque_per_clamp();
        let rate = finite("clamp load", self.clamp_per_radian())?.value;
        let mut lanes = yield_clamp.map(|_| Lane {
            clamp: 0.0,
            snug: None,
            past: 0.0,
            torque_yields: false,
        });
        for stage in spec.stages() {
            lanes = match *stage {
                Stage::Torque { low, high } => {
                    let torques = Applied {
                        low,
                        high,
                        tool: self.tool,
                    }
                    .spread()?;
                    let target = torques.zip(lever, |torque: Torque, lever| torque.value / lever.value);
                    let with_target = lanes.zip(target, |lane, target| (lane, target));
                    with_target.zip(yield_clamp, |(lane, target), limit| lane.torque(target, limit.value))
                }
                Stage::Turn { low, high } => {
                    let turn = Spread {
                        low,
                        mid: (low + high) * 0.5,
                        high,
                    };
                    let with_turn = lanes.zip(turn, |lane, turn: Angle| (lane, turn.value));
                    with_turn.zip(yield_clamp, |(lane, turn), limit| lane.turn(turn, rate, limit.value))
                }
            };
        }
        let per_radian = self.bolt.thread.pitch.value / TAU;
        let snug = lanes.map(|lane| newtons(lane.snug.unwrap_or(lane.clamp)));
        let to_yield = ((yield_clamp.mid - snug.mid).value / rate).max(0.0);
        Ok(Turned {
            snug,
            clamp: lanes.map(|lane| newtons(lane.clamp)),
            yield_clamp,
            angle_to_yield: finite("angle to yield", radians(to_yield))?,
            past_yield: lanes.map(|lane| metres(lane.past * per_radian)),
            torque_yields: lanes.map(|lane| lane.torque_yields),
        })
    }
}

impl Lane {
    /// Tightened to the clamp load of a torque; less where the bolt yields first.
    fn torque(self, target: f64, limit: f64) -> Self {
        Self {
            clamp: self.clamp.max(target.min(limit)),
            torque_yields: self.torque_yields || target > limit,
            ..self
        }
    }

    /// Turned by an angle, radians; past yield the angle is kept in `past`.
    fn turn(self, angle: f64, rate: f64, limit: f64) -> Self {
        let elastic = between((limit - self.clamp) / rate, 0.0, angle);
        Self {
            clamp: (self.clamp + elastic * rate).min(limit.max(self.clamp)),
            snug: self.snug.or(Some(self.clamp)),
            past: self.past + (angle - elastic),
            ..self
        }
    }
}

impl Turned {
    /// Share of yield at the end, each end at its own friction; 1 on the plateau.
    #[must_use]
    pub fn share(&self) -> Spread<Ratio> {
        self.clamp.zip(self.yield_clamp, |clamp, limit| clamp / limit)
    }

    /// How wide the clamp range is, half of it over its middle: ±.
    #[must_use]
    pub fn scatter(range: Spread<Force>) -> Ratio {
        (range.high - range.low) / (range.mid * 2.0)
    }
}
