//! Torque plus angle: the clamp load after each stage, where yield begins and what is stretched for
//! good past it. The stiffness comes from [`super::resilience`].

use super::friction::{Friction, FrictionAt};
use super::refusal::{Refusal, finite};
use super::si::{metres, metres_per_newton, newton_metres, newtons, radians, ratio};
use super::spec::{Spec, Stage};
use super::tighten::{Applied, Bolt, Spread, clamp_at, torque_per_clamp};
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

/// What a spec does to a joint. Clamp loads are lowest with all friction at its largest and highest with
/// all at its smallest; the other ends are sought over the frictions of thread and head apart, for a rough
/// thread under a slippery head is the one that yields first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turned {
    /// Clamp load where the first angle begins: after the torques before it.
    pub snug: Spread<Force>,
    /// Clamp load at the end.
    pub clamp: Spread<Force>,
    /// Clamp load at which the bolt yields while it is turned.
    pub yield_clamp: Spread<Force>,
    /// Share of yield at the end, 1 on the plateau.
    pub share: Spread<Ratio>,
    /// Torque at the end.
    pub torque: Spread<Torque>,
    /// Angle from the snug torque to yield, at middling friction; nothing when it yields before.
    pub angle_to_yield: Angle,
    /// Stretch for good, of the turn past yield.
    pub past_yield: Spread<Length>,
    /// Whether a torque behind an angle is less than the bolt has by then, at middling friction: the wrench is
    /// there before it turns.
    pub idle_torque: bool,
    /// Whether a torque of the spec is more than the bolt takes: at every friction, at a middling one, at
    /// some.
    pub torque_yields: Spread<bool>,
}

/// A stage with the torque or the angle, radians, at each end.
#[derive(Clone, Copy)]
enum Leg {
    Torque(Spread<f64>),
    Turn(Spread<f64>),
}

/// One pass through the stages, at one friction.
#[derive(Clone, Copy)]
struct Lane {
    /// Torque per clamp load.
    lever: f64,
    /// Clamp load at yield.
    limit: f64,
    clamp: f64,
    snug: Option<f64>,
    past: f64,
    idle: bool,
    torque_yields: bool,
}

/// A scatter below this comes of rounding alone.
const NOISE: f64 = 1e-9;
/// Steps between the thread frictions at which ends are sought. In one step a share of yield and a torque bend
/// by less than a thousandth, also where yield begins within it.
const FRICTIONS: i32 = 64;

/// Angle that a clamp load takes, θ = 2π·F·(δS + δP)/P. VDI 2230-1, from memory.
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
    /// Clamp load per angle, newton per radian: P/(2π·(δS + δP)), VDI 2230-1, from memory.
    ///
    /// ```
    /// use shopmath::fastener::{angle::Joint, bolt::{BoltText, resolve}, tighten::Bolt};
    /// use shopmath::quantity::compliance::{Compliance, InUnits};
    /// use shopmath::quantity::exact::{compliance::MicrometrePerKilonewton, force::Kilonewton};
    /// let mut text = BoltText::default();
    /// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("mu", "0.12"), ("spec", "10 N·m + 90°")] {
    ///     text.set(key, typed);
    /// }
    /// let read = resolve(&text);
    /// let (thread, head) = (read.thread.given().unwrap().thread, read.head.given().unwrap());
    /// let joint = Joint {
    ///     bolt: Bolt { thread, head, friction: read.friction.given().unwrap() },
    ///     yield_strength: read.class.given().unwrap().yield_strength,
    ///     bolt_resilience: Compliance::new::<MicrometrePerKilonewton>(4.133),
    ///     parts_resilience: Compliance::new::<MicrometrePerKilonewton>(0.6535),
    ///     tool: read.tool.given().unwrap(),
    /// };
    /// let clamp = joint.clamp_per_radian() * 34.0_f64.to_radians(); // 34.0° for 29.6 kN
    /// assert!((clamp.get::<Kilonewton>() - 29.6).abs() < 0.05);
    /// ```
    #[must_use]
    pub fn clamp_per_radian(&self) -> Force {
        newtons(self.bolt.thread.pitch.value / (TAU * self.resilience().value))
    }

    /// Resilience of the joint, δS + δP: bolt and clamped parts give one behind the other.
    ///
    /// ```
    /// use shopmath::fastener::{angle::Joint, bolt::{BoltText, resolve}, tighten::Bolt};
    /// use shopmath::quantity::compliance::{Compliance, InUnits};
    /// use shopmath::quantity::exact::compliance::MicrometrePerKilonewton;
    /// let mut text = BoltText::default();
    /// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("mu", "0.12"), ("spec", "10 N·m + 90°")] {
    ///     text.set(key, typed);
    /// }
    /// let read = resolve(&text);
    /// let (thread, head) = (read.thread.given().unwrap().thread, read.head.given().unwrap());
    /// let joint = Joint {
    ///     bolt: Bolt { thread, head, friction: read.friction.given().unwrap() },
    ///     yield_strength: read.class.given().unwrap().yield_strength,
    ///     bolt_resilience: Compliance::new::<MicrometrePerKilonewton>(4.133),
    ///     parts_resilience: Compliance::new::<MicrometrePerKilonewton>(0.6535),
    ///     tool: read.tool.given().unwrap(),
    /// };
    /// assert!((joint.resilience().get::<MicrometrePerKilonewton>() - 4.7865).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn resilience(&self) -> Compliance {
        metres_per_newton(self.bolt_resilience.value + self.parts_resilience.value)
    }

    /// Follows a spec stage by stage. A torque tightens up to its clamp load and never loosens; an
    /// angle adds clamp load up to yield, which then holds while the rest of the turn stretches the
    /// bolt for good (perfectly plastic, hardening left out). The snug torque carries the friction, the
    /// angle does not.
    ///
    /// # Errors
    /// As [`Bolt::clamp_range`]; [`Refusal::NotFinite`] for resiliences past any joint.
    ///
    /// ```
    /// use shopmath::fastener::{angle::Joint, bolt::{BoltText, resolve}, tighten::Bolt};
    /// use shopmath::quantity::compliance::{Compliance, InUnits};
    /// use shopmath::quantity::exact::{compliance::MicrometrePerKilonewton, force::Kilonewton};
    /// let mut text = BoltText::default();
    /// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("mu", "0.12"), ("spec", "10 N·m + 90°")] {
    ///     text.set(key, typed);
    /// }
    /// let read = resolve(&text);
    /// let (thread, head) = (read.thread.given().unwrap().thread, read.head.given().unwrap());
    /// let joint = Joint {
    ///     bolt: Bolt { thread, head, friction: read.friction.given().unwrap() },
    ///     yield_strength: read.class.given().unwrap().yield_strength,
    ///     bolt_resilience: Compliance::new::<MicrometrePerKilonewton>(4.133),
    ///     parts_resilience: Compliance::new::<MicrometrePerKilonewton>(0.6535),
    ///     tool: read.tool.given().unwrap(),
    /// };
    /// let turned = joint.turned(read.spec.as_given().unwrap()).unwrap();
    /// assert!((turned.yield_clamp.mid.get::<Kilonewton>() - 43.4 / 0.9).abs() < 0.25); // tabled: 43.4 kN at 90 %
    /// assert!(turned.clamp == turned.yield_clamp && turned.past_yield.low.value > 0.0);
    /// ```
    pub fn turned(&self, spec: &Spec) -> Result<Turned, Refusal> {
        let legs: Vec<Leg> = spec
            .stages()
            .iter()
            .map(|stage| self.leg(stage))
            .collect::<Result<_, _>>()?;
        let rate = finite("clamp load", self.clamp_per_radian())?.value;
        let pass = |at, end: fn(&Spread<f64>) -> f64| self.pass(&legs, rate, at, end);
        let frictions = self.bolt.frictions();
        let (low, mid, high) = (
            pass(frictions.low, |of| of.low),
            pass(frictions.mid, |of| of.mid),
            pass(frictions.high, |of| of.high),
        );
        let lanes = Spread { low, mid, high };
        let least: Vec<Lane> = self.corners().map(|at| pass(at, |of| of.low)).collect();
        let most: Vec<Lane> = self.corners().map(|at| pass(at, |of| of.high)).collect();
        let ends = |of: fn(&Lane) -> f64| Spread {
            low: least.iter().map(of).fold(of(&mid), f64::min),
            mid: of(&mid),
            high: most.iter().map(of).fold(of(&mid), f64::max),
        };
        let per_radian = self.bolt.thread.pitch.value / TAU;
        let snug = lanes.map(|lane| newtons(lane.snug.unwrap_or(lane.clamp)));
        let to_yield = ((mid.limit - snug.mid.value) / rate).max(0.0);
        Ok(Turned {
            snug,
            clamp: lanes.map(|lane| newtons(lane.clamp)),
            yield_clamp: lanes.map(|lane| newtons(lane.limit)),
            share: ends(|lane| lane.clamp / lane.limit).map(ratio),
            torque: ends(|lane| lane.clamp * lane.lever).map(newton_metres),
            angle_to_yield: finite("angle to yield", radians(to_yield))?,
            past_yield: ends(|lane| lane.past).map(|past| metres(past * per_radian)),
            idle_torque: mid.idle,
            torque_yields: Spread {
                low: least.iter().all(|lane| lane.torque_yields),
                mid: mid.torque_yields,
                high: most.iter().any(|lane| lane.torque_yields),
            },
        })
    }

    fn leg(&self, stage: &Stage) -> Result<Leg, Refusal> {
        Ok(match *stage {
            Stage::Torque { low, high } => {
                let tool = self.tool;
                Leg::Torque(Applied { low, high, tool }.spread()?.map(|torque| torque.value))
            }
            Stage::Turn { low, high } => Leg::Turn(Spread {
                low: low.value,
                mid: (low + high).value * 0.5,
                high: high.value,
            }),
        })
    }

    /// Goes through all stages at one friction, with the torques and angles of one end.
    fn pass(&self, legs: &[Leg], rate: f64, at: FrictionAt, end: fn(&Spread<f64>) -> f64) -> Lane {
        let Bolt { thread, head, .. } = &self.bolt;
        let begin = Lane {
            lever: torque_per_clamp(thread, head, at).value,
            limit: clamp_at(thread, self.yield_strength, at.thread, ratio(1.0)).value,
            clamp: 0.0,
            snug: None,
            past: 0.0,
            idle: false,
            torque_yields: false,
        };
        legs.iter().fold(begin, |lane, leg| match leg {
            Leg::Torque(torque) => lane.torque(end(torque)),
            Leg::Turn(angle) => lane.turn(end(angle), rate),
        })
    }

    /// The frictions among which the ends lie: the thread's over its range, under the most and the least
    /// of the head's.
    fn corners(&self) -> impl Iterator<Item = FrictionAt> {
        let Friction { thread, head } = self.bolt.friction;
        (0..=FRICTIONS).flat_map(move |step| {
            let share = f64::from(step) / f64::from(FRICTIONS);
            let thread = thread.low + (thread.high - thread.low) * share;
            [head.low, head.high].map(|head| FrictionAt { thread, head })
        })
    }
}

impl Lane {
    /// Tightened by a torque; less where the bolt yields first.
    fn torque(self, torque: f64) -> Self {
        let target = torque / self.lever;
        Self {
            clamp: self.clamp.max(target.min(self.limit)),
            idle: self.idle || self.snug.is_some() && target < self.clamp,
            torque_yields: self.torque_yields || target > self.limit,
            ..self
        }
    }

    /// Turned by an angle, radians; past yield the angle is kept in `past`.
    fn turn(self, angle: f64, rate: f64) -> Self {
        let elastic = between((self.limit - self.clamp) / rate, 0.0, angle);
        Self {
            clamp: (self.clamp + elastic * rate).min(self.limit.max(self.clamp)),
            snug: self.snug.or(Some(self.clamp)),
            past: self.past + (angle - elastic),
            ..self
        }
    }
}

impl Turned {
    /// How wide the clamp range is, half of it over its middle: ±. Zero where that is only rounding.
    ///
    /// ```
    /// use shopmath::fastener::{angle::Turned, tighten::Spread};
    /// use shopmath::quantity::exact::{force::Kilonewton, ratio::Percent};
    /// use uom::si::f64::Force;
    /// let [low, mid, high] = [30.3, 34.2, 40.5].map(Force::new::<Kilonewton>); // Shigley, table 8-14
    /// let scatter = Turned::scatter(Spread { low, mid, high });
    /// assert!((scatter.get::<Percent>() - 14.9).abs() < 0.05);
    /// ```
    #[must_use]
    pub fn scatter(range: Spread<Force>) -> Ratio {
        let scatter = (range.high - range.low) / (range.mid * 2.0);
        ratio(if scatter.value > NOISE { scatter.value } else { 0.0 })
    }
}
