//! Torque and clamp load: one from the other, the share of yield the bolt then carries, and the
//! range that friction and tool leave. VDI 2230-1.

use super::friction::{Friction, FrictionAt};
use super::head::Head;
use super::refusal::{Refusal, finite, within};
use super::si::{newton_metres, newtons, ratio};
use super::thread::Thread;
use crate::quantity::Unit;
use core::f64::consts::{PI, TAU};
use uom::si::f64::{Force, Length, Pressure, Ratio, Torque};

/// Largest torque accepted, newton metre: well past any bolt of the table.
const TORQUE_LIMIT: f64 = 10_000.0;

/// A value for each end of the friction and tool range and for its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread<T> {
    /// At the largest friction, and the tool reading high.
    pub low: T,
    /// At middling friction and the tool exact.
    pub mid: T,
    /// At the smallest friction, and the tool reading low.
    pub high: T,
}

/// What is turned, and what rubs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    /// The thread.
    pub thread: Thread,
    /// The head on its hole.
    pub head: Head,
    /// The friction range.
    pub friction: Friction,
}

/// A torque as specified, and how exactly the tool applies it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Applied {
    /// Lower end of the specified torque.
    pub low: Torque,
    /// Upper end; equal to the lower for a single figure.
    pub high: Torque,
    /// The tool's tolerance either way: 0.04 for ±4 %.
    pub tool: Ratio,
}

/// Torque per clamp load, a length: P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK (VDI 2230-1).
///
/// Valid for any thread and head of this folder's tables and friction from 0.01 to 1, which
/// [`super::friction::FrictionRange`] ensures.
///
/// ```
/// use shopmath::fastener::{friction::FrictionAt, head, thread_text, tighten::torque_per_clamp};
/// use shopmath::quantity::exact::length::Millimetre;
/// let thread = thread_text::read("M10").unwrap().thread;
/// let hex = head::on(head::Shape::Hex, &thread, None, None).unwrap();
/// let friction = FrictionAt { thread: 0.12.into(), head: 0.12.into() };
/// let per_clamp = torque_per_clamp(&thread, &hex, friction).get::<Millimetre>();
/// assert!((per_clamp / (48.0 / 29.6) - 1.0).abs() < 0.012); // 48 N·m give 29.6 kN
/// ```
#[must_use]
pub fn torque_per_clamp(thread: &Thread, head: &Head, friction: FrictionAt) -> Length {
    thread.pitch / TAU
        + thread.pitch_diameter() * friction.thread * (Thread::flank_factor() / 2.0)
        + head.friction_diameter() * friction.head / 2.0
}

/// Clamp load of a torque, F = M / (torque per clamp).
///
/// # Errors
/// [`Refusal::OutOfRange`] for a torque below 0 or above 10 000 N·m.
///
/// ```
/// use shopmath::fastener::{friction::FrictionAt, head, tighten, thread_text};
/// use shopmath::quantity::exact::{force::Kilonewton, ratio::Number, torque::NewtonMetre};
/// use uom::si::f64::{Ratio, Torque};
/// let thread = thread_text::read("M10").unwrap().thread;
/// let hex = head::on(head::Shape::Hex, &thread, None, None).unwrap();
/// let mu = Ratio::new::<Number>(0.12);
/// let friction = FrictionAt { thread: mu, head: mu };
/// let clamp = tighten::clamp_load(&thread, &hex, friction, Torque::new::<NewtonMetre>(48.0)).unwrap();
/// assert!((clamp.get::<Kilonewton>() - 29.6).abs() < 0.4);
/// ```
pub fn clamp_load(thread: &Thread, head: &Head, friction: FrictionAt, torque: Torque) -> Result<Force, Refusal> {
    let limits = (newton_metres(0.0), newton_metres(TORQUE_LIMIT));
    within("torque", torque, limits, Unit::NewtonMetre)?;
    let clamp = newtons(torque.value / torque_per_clamp(thread, head, friction).value);
    finite("clamp load", clamp)
}

/// Torque that gives a clamp load, M = F·(torque per clamp) (VDI 2230-1), the inverse of [`clamp_load`]. It
/// grows in step with the load, so any load has one; frictions as for [`torque_per_clamp()`].
///
/// ```
/// use shopmath::fastener::{friction::FrictionAt, head, thread_text, tighten::torque_for};
/// use shopmath::quantity::exact::{force::Kilonewton, torque::NewtonMetre};
/// let thread = thread_text::read("M10").unwrap().thread;
/// let hex = head::on(head::Shape::Hex, &thread, None, None).unwrap();
/// let friction = FrictionAt { thread: 0.12.into(), head: 0.12.into() };
/// let torque = torque_for(&thread, &hex, friction, uom::si::f64::Force::new::<Kilonewton>(29.6));
/// assert!((torque.get::<NewtonMetre>() - 48.0).abs() < 0.6);
/// ```
#[must_use]
pub fn torque_for(thread: &Thread, head: &Head, friction: FrictionAt, clamp: Force) -> Torque {
    newton_metres(clamp.value * torque_per_clamp(thread, head, friction).value)
}

/// Share of a tightening torque that is friction under the head, (DKm/2)·μK over the torque per clamp
/// load. The rest reaches the bolt's thread.
///
/// ```
/// use shopmath::fastener::{friction::FrictionAt, head, tighten, thread_text};
/// use shopmath::quantity::exact::ratio::Number;
/// use uom::si::f64::Ratio;
/// let thread = thread_text::read("M10").unwrap().thread;
/// let hex = head::on(head::Shape::Hex, &thread, None, None).unwrap();
/// let mu = Ratio::new::<Number>(0.13);
/// let share = tighten::head_share(&thread, &hex, FrictionAt { thread: mu, head: mu });
/// assert!(share.get::<Number>() > 0.4 && share.get::<Number>() < 0.6);
/// ```
#[must_use]
pub fn head_share(thread: &Thread, head: &Head, friction: FrictionAt) -> Ratio {
    head.friction_diameter() * friction.head / 2.0 / torque_per_clamp(thread, head, friction)
}

/// Nut factor K = M/(F·d), to compare with US practice; an output, never mixed with the friction
/// model. A plain number: 0.12 to 0.3 for an M10 at frictions from 0.08 to 0.24.
///
/// Here an oiled bolt against the 0.18 printed for lubricated ones (Shigley, 9th ed., table 8-15):
///
/// ```
/// use shopmath::fastener::{friction::FrictionAt, head, thread_text, tighten::nut_factor};
/// use shopmath::quantity::exact::ratio::Number;
/// let thread = thread_text::read("M10").unwrap().thread;
/// let hex = head::on(head::Shape::Hex, &thread, None, None).unwrap();
/// let oiled = FrictionAt { thread: 0.13.into(), head: 0.13.into() };
/// assert!((nut_factor(&thread, &hex, oiled).get::<Number>() - 0.18).abs() < 0.02);
/// ```
#[must_use]
pub fn nut_factor(thread: &Thread, head: &Head, friction: FrictionAt) -> Ratio {
    torque_per_clamp(thread, head, friction) / thread.diameter
}

/// Equivalent over axial stress while the bolt is turned: √(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) +
/// 1.155·μG)]²) (VDI 2230-1:2003 and later). The factor 3/2 is the plastic section modulus, π/12·d0³. A plain
/// number above 1, for a thread friction from 0.01 to 1.
///
/// Here from the 31.6 kN printed for 90 % of the yield of class 8.8, 640 MPa on 61.2 mm²:
///
/// ```
/// use shopmath::fastener::{thread_text::read, tighten::twist_factor};
/// let factor = twist_factor(&read("M10x1.25").unwrap().thread, 0.12.into());
/// assert!((factor / (0.9 * 640.0 * 61.2 / 31_600.0) - 1.0).abs() < 0.005);
/// ```
#[must_use]
pub fn twist_factor(thread: &Thread, friction: Ratio) -> f64 {
    let pitch_diameter = thread.pitch_diameter().value;
    let slope = thread.pitch.value / (PI * pitch_diameter) + Thread::flank_factor() * friction.value;
    let shear = 1.5 * pitch_diameter / thread.stress_diameter().value * slope;
    (1.0 + 3.0 * shear * shear).sqrt()
}

/// Share of yield under tension and twist, ν = F·(twist factor)/(As·Rp0.2); 1 is yield (VDI 2230-1:2003 and
/// later). It grows in step with the load; past 1 it only says that the bolt has yielded.
///
/// ```
/// use shopmath::fastener::{thread_text::read, tighten::yield_share};
/// use shopmath::quantity::exact::{force::Kilonewton, pressure::Megapascal, ratio::Percent};
/// use uom::si::f64::{Force, Pressure};
/// let (thread, strength) = (read("M10x1.25").unwrap().thread, Pressure::new::<Megapascal>(640.0));
/// let share = yield_share(&thread, strength, 0.12.into(), Force::new::<Kilonewton>(31.6));
/// assert!((share.get::<Percent>() - 90.0).abs() < 0.45);
/// ```
#[must_use]
pub fn yield_share(thread: &Thread, yield_strength: Pressure, friction: Ratio, clamp: Force) -> Ratio {
    ratio(clamp.value * twist_factor(thread, friction) / (thread.stress_area().value * yield_strength.value))
}

/// Clamp load at a share of yield, the inverse of [`yield_share`]: F = ν·As·Rp0.2/(twist factor).
///
/// ```
/// use shopmath::fastener::{thread_text::read, tighten::clamp_at};
/// use shopmath::quantity::exact::{force::Kilonewton, pressure::Megapascal};
/// let (thread, strength) = (read("M8x1").unwrap().thread, uom::si::f64::Pressure::new::<Megapascal>(640.0));
/// let clamp = clamp_at(&thread, strength, 0.12.into(), 0.9.into());
/// assert!((clamp.get::<Kilonewton>() / 20.2 - 1.0).abs() < 0.005);
/// ```
#[must_use]
pub fn clamp_at(thread: &Thread, yield_strength: Pressure, friction: Ratio, share: Ratio) -> Force {
    newtons(share.value * thread.stress_area().value * yield_strength.value / twist_factor(thread, friction))
}

impl Bolt {
    /// Torque per clamp over the friction range: `low` belongs to the low clamp, so is the largest.
    /// [`torque_per_clamp()`] at each of [`Bolt::frictions`].
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read, tighten::Bolt};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let (thread, mu) = (read("M10x1.25").unwrap().thread, FrictionRange::new(0.10.into(), 0.12.into()).unwrap());
    /// let head = on(Shape::Hex, &thread, None, None).unwrap();
    /// let bolt = Bolt { thread, head, friction: Friction::both(mu) };
    /// let per_clamp = bolt.torque_per_clamp();
    /// assert!((per_clamp.low.get::<Millimetre>() / (51.0 / 31.6) - 1.0).abs() < 0.012); // 51 N·m give 31.6 kN
    /// assert!((per_clamp.high.get::<Millimetre>() / (44.0 / 32.4) - 1.0).abs() < 0.014); // 44 N·m give 32.4 kN
    /// ```
    #[must_use]
    pub fn torque_per_clamp(&self) -> Spread<Length> {
        self.frictions()
            .map(|at| torque_per_clamp(&self.thread, &self.head, at))
    }

    /// The frictions that go with low, middle and high clamp load: the largest, the middle, the smallest.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read, tighten::Bolt};
    /// let (thread, mu) = (read("M10").unwrap().thread, FrictionRange::new(0.10.into(), 0.16.into()).unwrap());
    /// let head = on(Shape::Hex, &thread, None, None).unwrap();
    /// let bolt = Bolt { thread, head, friction: Friction::both(mu) };
    /// assert_eq!(bolt.frictions().low.thread, 0.16.into());
    /// assert_eq!(bolt.frictions().high.head, 0.10.into());
    /// ```
    #[must_use]
    pub fn frictions(&self) -> Spread<FrictionAt> {
        Spread {
            low: self.friction.most(),
            mid: self.friction.middle(),
            high: self.friction.least(),
        }
    }

    /// Clamp load at yield over the friction range: a slippery thread twists less and clamps more.
    /// [`clamp_at`] a share of 1 and each of [`Bolt::frictions`].
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read, tighten::Bolt};
    /// use shopmath::quantity::exact::{force::Kilonewton, pressure::Megapascal};
    /// let (thread, mu) = (read("M10x1.25").unwrap().thread, FrictionRange::new(0.10.into(), 0.12.into()).unwrap());
    /// let head = on(Shape::Hex, &thread, None, None).unwrap();
    /// let bolt = Bolt { thread, head, friction: Friction::both(mu) };
    /// let clamp = bolt.clamp_at_yield(uom::si::f64::Pressure::new::<Megapascal>(640.0));
    /// let at_90 = clamp.map(|force| 0.9 * force.get::<Kilonewton>());
    /// assert!((at_90.low / 31.6 - 1.0).abs() < 0.005 && (at_90.high / 32.4 - 1.0).abs() < 0.005);
    /// ```
    #[must_use]
    pub fn clamp_at_yield(&self, yield_strength: Pressure) -> Spread<Force> {
        self.frictions()
            .map(|at| clamp_at(&self.thread, yield_strength, at.thread, ratio(1.0)))
    }

    /// The clamp range of a torque: low from the largest friction and torque × (1 − tool), high
    /// from the smallest friction and torque × (1 + tool).
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] for a torque below 0 or above 10 000 N·m, or a tool tolerance
    /// outside 0 to 50 %; [`Refusal::Backwards`] for ends in the wrong order; [`Refusal::NotFinite`] where a
    /// thread and head that no table has leave no number.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read, tighten::{Applied, Bolt}};
    /// use shopmath::quantity::exact::{force::Kilonewton, torque::NewtonMetre};
    /// let (thread, mu) = (read("M10x1.25").unwrap().thread, FrictionRange::new(0.10.into(), 0.12.into()).unwrap());
    /// let head = on(Shape::Hex, &thread, None, None).unwrap();
    /// let bolt = Bolt { thread, head, friction: Friction::both(mu) };
    /// let torque = uom::si::f64::Torque::new::<NewtonMetre>(51.0);
    /// let clamp = bolt.clamp_range(Applied { low: torque, high: torque, tool: 0.04.into() }).unwrap();
    /// assert!((clamp.low.get::<Kilonewton>() / (31.6 * 0.96) - 1.0).abs() < 0.012);
    /// ```
    pub fn clamp_range(&self, applied: Applied) -> Result<Spread<Force>, Refusal> {
        let torques = applied.spread()?;
        let frictions = self.frictions();
        let clamp = |at, torque: Torque| {
            finite(
                "clamp load",
                newtons(torque.value / torque_per_clamp(&self.thread, &self.head, at).value),
            )
        };
        Ok(Spread {
            low: clamp(frictions.low, torques.low)?,
            mid: clamp(frictions.mid, torques.mid)?,
            high: clamp(frictions.high, torques.high)?,
        })
    }

    /// The share of yield over the range of a torque, 1 at yield. The ends are sought over all frictions of
    /// the range, for under a very wide head the rough thread is the one that yields first.
    ///
    /// # Errors
    /// As [`Bolt::clamp_range`]; also [`Refusal::NotFinite`] for a yield strength of zero.
    ///
    /// ```
    /// use shopmath::fastener::friction::{Friction, FrictionRange};
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read, tighten::{Applied, Bolt}};
    /// use shopmath::quantity::exact::{pressure::Megapascal, ratio::Percent, torque::NewtonMetre};
    /// use uom::si::f64::{Pressure, Torque};
    /// let (thread, mu) = (read("M10x1.25").unwrap().thread, FrictionRange::new(0.12.into(), 0.12.into()).unwrap());
    /// let head = on(Shape::Hex, &thread, None, None).unwrap();
    /// let bolt = Bolt { thread, head, friction: Friction::both(mu) };
    /// let (torque, strength) = (Torque::new::<NewtonMetre>(51.0), Pressure::new::<Megapascal>(640.0));
    /// let share = bolt.yield_range(Applied { low: torque, high: torque, tool: 0.04.into() }, strength).unwrap();
    /// assert!((share.high.get::<Percent>() / (90.0 * 1.04) - 1.0).abs() < 0.012);
    /// ```
    pub fn yield_range(&self, applied: Applied, yield_strength: Pressure) -> Result<Spread<Ratio>, Refusal> {
        let torques = applied.spread()?;
        let share = |thread: Ratio, head: Ratio, torque: Torque| {
            let at = FrictionAt { thread, head };
            let clamp = newtons(torque.value / torque_per_clamp(&self.thread, &self.head, at).value);
            yield_share(&self.thread, yield_strength, thread, clamp)
        };
        let Friction { thread, head } = self.friction;
        let least = self.least_yielding_friction(head.high);
        let low = [thread.low, thread.high, least.max(thread.low).min(thread.high)]
            .map(|friction| share(friction, head.high, torques.low))
            .into_iter()
            .fold(ratio(f64::INFINITY), Ratio::min);
        let high = share(thread.low, head.low, torques.high).max(share(thread.high, head.low, torques.high));
        Ok(Spread {
            low: finite("share of yield", low)?,
            mid: finite("share of yield", share(thread.middle(), head.middle(), torques.mid))?,
            high: finite("share of yield", high)?,
        })
    }

    /// The thread friction at which a given torque stresses the bolt least: where the growing twist
    /// makes up for the falling clamp load. With u the shear ratio, stress² ∝ (1 + 3u²)/(a·u + b)²
    /// is least at u = a/(3b), a and b the thread's and the head's share of the torque.
    fn least_yielding_friction(&self, head: Ratio) -> Ratio {
        let pitch_diameter = self.thread.pitch_diameter().value;
        let stress_diameter = self.thread.stress_diameter().value;
        let a = stress_diameter / 3.0;
        let b = self.head.friction_diameter().value * head.value / 2.0;
        let u = a / (3.0 * b);
        let slope = u * stress_diameter / (1.5 * pitch_diameter);
        ratio((slope - self.thread.pitch.value / (PI * pitch_diameter)) / Thread::flank_factor())
    }
}

impl Applied {
    /// The torques that give low, middle and high clamp load: the lower end × (1 − tool), the middle of the ends,
    /// the upper end × (1 + tool).
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] for a torque below 0 or above 10 000 N·m, or a tool tolerance outside 0 to 50 %;
    /// [`Refusal::Backwards`] for ends in the wrong order.
    ///
    /// ```
    /// use shopmath::{fastener::tighten::Applied, quantity::exact::torque::NewtonMetre};
    /// use uom::si::f64::Torque;
    /// let (low, high) = (Torque::new::<NewtonMetre>(45.0), Torque::new::<NewtonMetre>(50.0));
    /// let spread = Applied { low, high, tool: 0.04.into() }.spread().unwrap();
    /// assert!((spread.low.get::<NewtonMetre>() - 43.2).abs() < 1e-9);
    /// assert!((spread.high.get::<NewtonMetre>() - 52.0).abs() < 1e-9);
    /// assert!(Applied { low: high, high: low, tool: 0.04.into() }.spread().is_err());
    /// ```
    pub fn spread(self) -> Result<Spread<Torque>, Refusal> {
        let limits = (newton_metres(0.0), newton_metres(TORQUE_LIMIT));
        within("torque", self.low, limits, Unit::NewtonMetre)?;
        within("torque", self.high, limits, Unit::NewtonMetre)?;
        within("tool tolerance", self.tool, (ratio(0.0), ratio(0.5)), Unit::Percent)?;
        if self.low > self.high {
            return Err(Refusal::Backwards("torque"));
        }
        Ok(Spread {
            low: self.low * (1.0 - self.tool.value),
            mid: (self.low + self.high) * 0.5,
            high: self.high * (1.0 + self.tool.value),
        })
    }
}

impl<T: Copy> Spread<T> {
    /// Each value put through a function, low first; which end is which stays.
    ///
    /// ```
    /// use shopmath::{fastener::tighten::Spread, quantity::exact::torque::NewtonMetre};
    /// use uom::si::f64::Torque;
    /// let torques = Spread { low: 43.2, mid: 47.5, high: 52.0 }.map(Torque::new::<NewtonMetre>);
    /// assert_eq!(torques.high, Torque::new::<NewtonMetre>(52.0));
    /// ```
    pub fn map<U>(self, mut with: impl FnMut(T) -> U) -> Spread<U> {
        Spread {
            low: with(self.low),
            mid: with(self.mid),
            high: with(self.high),
        }
    }

    /// Each value put through a function together with another spread's, low with low.
    ///
    /// ```
    /// use shopmath::fastener::tighten::Spread;
    /// let newton_metres = Spread { low: 43.2, mid: 47.5, high: 52.0 };
    /// let millimetres = Spread { low: 2.0, mid: 1.9, high: 1.6 };
    /// let kilonewtons = newton_metres.zip(millimetres, |torque, per_clamp| torque / per_clamp);
    /// assert_eq!(kilonewtons, Spread { low: 21.6, mid: 25.0, high: 32.5 });
    /// ```
    pub fn zip<U: Copy, V>(self, other: Spread<U>, mut with: impl FnMut(T, U) -> V) -> Spread<V> {
        Spread {
            low: with(self.low, other.low),
            mid: with(self.mid, other.mid),
            high: with(self.high, other.high),
        }
    }
}
