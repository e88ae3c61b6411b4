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

/// Torque per clamp load, a length: P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK.
///
/// Valid for any thread and head of this folder's tables and friction from 0.01 to 1, which
/// [`super::friction::FrictionRange`] ensures.
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

/// Torque that gives a clamp load, M = F·(torque per clamp).
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
/// model.
#[must_use]
pub fn nut_factor(thread: &Thread, head: &Head, friction: FrictionAt) -> Ratio {
    torque_per_clamp(thread, head, friction) / thread.diameter
}

/// Equivalent over axial stress while the bolt is turned: √(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) +
/// 1.155·μG)]²). The factor 3/2 is the plastic section modulus, π/12·d0³.
#[must_use]
pub fn twist_factor(thread: &Thread, friction: Ratio) -> f64 {
    let pitch_diameter = thread.pitch_diameter().value;
    let slope = thread.pitch.value / (PI * pitch_diameter) + Thread::flank_factor() * friction.value;
    let shear = 1.5 * pitch_diameter / thread.stress_diameter().value * slope;
    (1.0 + 3.0 * shear * shear).sqrt()
}

/// Share of yield under tension and twist, ν = F·(twist factor)/(As·Rp0.2); 1 is yield.
#[must_use]
pub fn yield_share(thread: &Thread, yield_strength: Pressure, friction: Ratio, clamp: Force) -> Ratio {
    ratio(clamp.value * twist_factor(thread, friction) / (thread.stress_area().value * yield_strength.value))
}

/// Clamp load at a share of yield, the inverse of [`yield_share`].
#[must_use]
pub fn clamp_at(thread: &Thread, yield_strength: Pressure, friction: Ratio, share: Ratio) -> Force {
    newtons(share.value * thread.stress_area().value * yield_strength.value / twist_factor(thread, friction))
}

impl Bolt {
    /// Torque per clamp over the friction range: `low` belongs to the low clamp, so is the largest.
    #[must_use]
    pub fn torque_per_clamp(&self) -> Spread<Length> {
        self.frictions()
            .map(|at| torque_per_clamp(&self.thread, &self.head, at))
    }

    /// The frictions that go with low, middle and high clamp load.
    #[must_use]
    pub fn frictions(&self) -> Spread<FrictionAt> {
        Spread {
            low: self.friction.most(),
            mid: self.friction.middle(),
            high: self.friction.least(),
        }
    }

    /// Clamp load at yield over the friction range: a slippery thread twists less and clamps more.
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
    /// outside 0 to 50 %; [`Refusal::Backwards`] for ends in the wrong order.
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

    /// The share of yield over the range of a torque. The ends are sought over all frictions of
    /// the range, for under a very wide head the rough thread is the one that yields first.
    ///
    /// # Errors
    /// As [`Bolt::clamp_range`].
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
    /// The torques that give low, middle and high clamp load.
    ///
    /// # Errors
    /// As [`Bolt::clamp_range`].
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
    /// Each value put through a function.
    pub fn map<U>(self, mut with: impl FnMut(T) -> U) -> Spread<U> {
        Spread {
            low: with(self.low),
            mid: with(self.mid),
            high: with(self.high),
        }
    }

    /// Each value put through a function together with another spread's.
    pub fn zip<U: Copy, V>(self, other: Spread<U>, mut with: impl FnMut(T, U) -> V) -> Spread<V> {
        Spread {
            low: with(self.low, other.low),
            mid: with(self.mid, other.mid),
            high: with(self.high, other.high),
        }
    }
}
