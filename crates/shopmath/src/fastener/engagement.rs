//! Thread engagement: how deep a bolt has to go into a tapped hole, and what pulls the threads out.
//! FED-STD-H28/2 and handbook style, from memory; the thin boss from VDI 2230.
//!
//! Lengths are of full threads; the bolt's chamfer and the hole's countersink come on top.

use super::refusal::{Refusal, finite, within};
use super::si::{megapascals, metres, newtons, ratio, square_metres};
use super::thread::Thread;
use crate::quantity::Unit;
use core::f64::consts::PI;
use uom::si::f64::{Area, Force, Length, Pressure, Ratio};

/// Chamfer of the bolt's end and countersink of the hole, in pitches (VDI 2230).
const CHAMFER: f64 = 0.8;
/// A boss from this many thread diameters on is as strong as a block.
const THICK: f64 = 1.9;
/// Below this many thread diameters a boss opens.
const THIN: f64 = 1.4;

/// A bolt in a tapped hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engagement {
    /// The thread.
    pub thread: Thread,
    /// Tensile strength of the bolt.
    pub bolt_tensile: Pressure,
    /// Shear strength of the bolt's thread.
    pub bolt_shear: Pressure,
    /// Tensile strength of the hole's material.
    pub hole_tensile: Pressure,
    /// Shear strength of the hole's thread.
    pub hole_shear: Pressure,
    /// Diameter of the boss around the hole; none for a thick block.
    pub boss: Option<Length>,
}

/// The length of engagement that breaks the bolt before it strips the threads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Required {
    /// Le, so that the bolt breaks before its own thread strips, longer in a thin boss: over C1.
    pub basic: Length,
    /// J, how much weaker the hole's thread is.
    pub weakness: Ratio,
    /// max(Le, J·Le), in full threads.
    pub length: Length,
    /// What chamfer and countersink add.
    pub chamfer: Length,
    /// The length at which the hole's thread carries the bolt's breaking load: A_Sn·τ·C1 = As·Rm.
    pub by_shear: Length,
}

/// Which thread gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weaker {
    /// The bolt's.
    Bolt,
    /// The hole's.
    Hole,
}

/// The load that pulls the threads out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    /// Of the weaker thread.
    pub load: Force,
    /// Which one that is.
    pub weaker: Weaker,
    /// Of the bolt's thread.
    pub bolt: Force,
    /// Of the hole's thread.
    pub hole: Force,
}

/// Shear area of the bolt's thread, A_Ss = π·(Le/P)·Kn,max·[P/2 + (Es,min − Kn,max)/√3]: Kn,max the
/// largest bore of the hole, Es,min the smallest pitch diameter of the bolt. FED-STD-H28/2, from memory; for
/// any length of full threads.
///
/// ```
/// use shopmath::fastener::{engagement::external_area, thread_text::read};
/// use shopmath::quantity::exact::area::SquareInch;
/// let thread = read("1/4-20").unwrap().thread;
/// let area = external_area(&thread, thread.diameter);
/// assert!((area.get::<SquareInch>() - 0.092).abs() < 0.0005);
/// ```
#[must_use]
pub fn external_area(thread: &Thread, length: Length) -> Area {
    let bore = thread.internal.minor.max;
    shear_area(thread, length, bore, thread.external.pitch.min - bore)
}

/// Shear area of the hole's thread, A_Sn = π·(Le/P)·Ds,min·[P/2 + (Ds,min − En,max)/√3]: Ds,min the
/// *smallest* major diameter of the bolt, En,max the largest pitch diameter of the hole. FED-STD-H28/2, from
/// memory; for any length of full threads.
///
/// ```
/// use shopmath::fastener::{engagement::internal_area, thread_text::read};
/// use shopmath::quantity::exact::{area::SquareInch, length::Inch};
/// use uom::si::f64::Length;
/// let thread = read("1/4-20").unwrap().thread;
/// let area = internal_area(&thread, Length::new::<Inch>(1.0));
/// assert!((area.get::<SquareInch>() - 0.539).abs() < 0.003);
/// ```
#[must_use]
pub fn internal_area(thread: &Thread, length: Length) -> Area {
    let major = thread.external.major.min;
    shear_area(thread, length, major, major - thread.internal.pitch.max)
}

fn shear_area(thread: &Thread, length: Length, at: Length, overlap: Length) -> Area {
    let pitch = thread.pitch.value;
    let width = pitch / 2.0 + Thread::flank_tangent() * overlap.value;
    square_metres(PI * length.value / pitch * at.value * width)
}

/// The handbook's Le = 2·At/{π·Kn,max·[1/2 + (Es,min − Kn,max)/(√3·P)]}, from memory; in full threads.
///
/// With it the bolt's thread has twice the stress area to shear: for 1/4-20, where tables print 0.0318 in² of
/// stress area and 0.092 in² of shear area over 1/4 in, some 0.173 in.
///
/// ```
/// use shopmath::fastener::{engagement::basic_length, thread_text::read};
/// use shopmath::quantity::exact::length::Inch;
/// let length = basic_length(&read("1/4-20").unwrap().thread);
/// assert!((length.get::<Inch>() - 2.0 * 0.0318 / (0.092 / 0.25)).abs() < 0.001);
/// ```
#[must_use]
pub fn basic_length(thread: &Thread) -> Length {
    let per_length = external_area(thread, metres(1.0)).value;
    metres(2.0 * thread.stress_area().value / per_length)
}

/// How much of its strength a thin boss leaves, C1 = 3.8·(s/d) − (s/d)² − 2.61 for s/d from 1.4 to
/// 1.9, and 1 above. VDI 2230, from memory. The boss opens, so that both threads engage less: it counts for
/// the bolt's and for the hole's, as with Alexander and in ISO/TR 16224, from memory; the safe reading.
///
/// # Errors
/// [`Refusal::ThinBoss`] below 1.4.
///
/// ```
/// use shopmath::fastener::{engagement::boss_factor, thread_text::read};
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Number};
/// use uom::si::f64::Length;
/// let thread = read("M10").unwrap().thread;
/// let boss = |wide| boss_factor(&thread, Some(Length::new::<Millimetre>(wide)));
/// assert!((boss(16.0).unwrap().get::<Number>() - 0.91).abs() < 1e-9);
/// assert!(boss(13.9).is_err());
/// ```
pub fn boss_factor(thread: &Thread, boss: Option<Length>) -> Result<Ratio, Refusal> {
    let Some(boss) = boss else { return Ok(ratio(1.0)) };
    let wide = boss.value / thread.diameter.value;
    if wide.is_nan() || wide < THIN * (1.0 - 1e-12) {
        return Err(Refusal::ThinBoss {
            read: wide,
            smallest: (thread.diameter * THIN).into(),
        });
    }
    Ok(ratio(if wide < THICK {
        3.8 * wide - wide * wide - 2.61
    } else {
        1.0
    }))
}

/// The load that breaks the bolt, As·Rm (ISO 898-1).
///
/// ```
/// use shopmath::fastener::{engagement::break_load, thread_text::read};
/// use shopmath::quantity::exact::{force::Newton, pressure::Megapascal};
/// use uom::si::f64::Pressure;
/// let load = break_load(&read("M10").unwrap().thread, Pressure::new::<Megapascal>(1200.0));
/// assert!((load.get::<Newton>() - 69_600.0).abs() < 50.0);
/// ```
#[must_use]
pub fn break_load(thread: &Thread, tensile: Pressure) -> Force {
    newtons(thread.stress_area().value * tensile.value)
}

impl Engagement {
    fn checked(&self) -> Result<Ratio, Refusal> {
        let strengths = [self.bolt_tensile, self.bolt_shear, self.hole_tensile, self.hole_shear];
        for strength in strengths {
            within(
                "strength",
                strength,
                (megapascals(1.0), megapascals(1e4)),
                Unit::Megapascal,
            )?;
        }
        boss_factor(&self.thread, self.boss)
    }

    /// The length required, max(Le, J·Le)/C1 with J = A_Ss·Rm,bolt/(A_Sn·Rm,hole), in full threads.
    /// FED-STD-H28/2, from memory.
    ///
    /// # Errors
    /// [`Refusal::ThinBoss`]; [`Refusal::OutOfRange`] for strengths outside 1–10 000 MPa.
    ///
    /// ```
    /// use shopmath::fastener::{class, engagement::Engagement, material, thread_text::read};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let thread = read("M10").unwrap().thread;
    /// let (class, hole) = (class::at("8.8", thread.diameter).unwrap(), material::read("a380").unwrap());
    /// let bolt = Engagement {
    ///     thread,
    ///     bolt_tensile: class.tensile,
    ///     bolt_shear: class.shear(),
    ///     hole_tensile: hole.tensile,
    ///     hole_shear: hole.shear,
    ///     boss: None,
    /// };
    /// let by_shear = bolt.required().unwrap().by_shear;
    /// assert!((by_shear.get::<Millimetre>() - 11.37).abs() < 0.005);
    /// ```
    pub fn required(&self) -> Result<Required, Refusal> {
        let boss = self.checked()?;
        let one = metres(1.0);
        let (external, internal) = (external_area(&self.thread, one), internal_area(&self.thread, one));
        let basic = basic_length(&self.thread) / boss;
        let weakness = external * self.bolt_tensile / (internal * self.hole_tensile);
        let breaks = break_load(&self.thread, self.bolt_tensile);
        Ok(Required {
            basic,
            weakness,
            length: finite("engagement", basic.max(basic * weakness))?,
            chamfer: self.thread.pitch * CHAMFER,
            by_shear: finite(
                "engagement",
                metres(breaks.value / (internal.value * boss.value * self.hole_shear.value)),
            )?,
        })
    }

    /// The load that pulls out threads engaged over a length, the weaker of bolt and hole: A_Ss·τ·C1 of the
    /// one, A_Sn·τ·C1 of the other.
    ///
    /// # Errors
    /// [`Refusal::ThinBoss`]; [`Refusal::OutOfRange`] for strengths outside 1–10 000 MPa or a
    /// length outside 0–1 m.
    ///
    /// ```
    /// use shopmath::fastener::{class, engagement::{Engagement, Weaker}, material, thread_text::read};
    /// use shopmath::quantity::exact::{force::Kilonewton, length::Millimetre};
    /// use uom::si::f64::Length;
    /// let thread = read("M10").unwrap().thread;
    /// let (class, hole) = (class::at("8.8", thread.diameter).unwrap(), material::read("a380").unwrap());
    /// let bolt = Engagement {
    ///     thread,
    ///     bolt_tensile: class.tensile,
    ///     bolt_shear: class.shear(),
    ///     hole_tensile: hole.tensile,
    ///     hole_shear: hole.shear,
    ///     boss: None,
    /// };
    /// let strip = bolt.strip(Length::new::<Millimetre>(11.37)).unwrap();
    /// assert_eq!(strip.weaker, Weaker::Hole);
    /// assert!((strip.load.get::<Kilonewton>() - 58.0 * 0.8).abs() < 0.05); // As·Rm of the bolt
    /// ```
    pub fn strip(&self, length: Length) -> Result<Strip, Refusal> {
        self.strip_of(length, internal_area(&self.thread, length))
    }

    /// The same with a wire thread insert in the hole. Assumes an insert of the same thread and
    /// length, whose hole is tapped with the same pitch one and a half thread heights larger on
    /// diameter (1.3 P), with the same tolerances. An own estimate.
    ///
    /// # Errors
    /// As [`Engagement::strip`].
    ///
    /// ```
    /// use shopmath::fastener::{class, engagement::Engagement, material, thread_text::read};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// use uom::si::f64::Length;
    /// let thread = read("M10").unwrap().thread;
    /// let (class, hole) = (class::at("8.8", thread.diameter).unwrap(), material::read("a380").unwrap());
    /// let bolt = Engagement {
    ///     thread,
    ///     bolt_tensile: class.tensile,
    ///     bolt_shear: class.shear(),
    ///     hole_tensile: hole.tensile,
    ///     hole_shear: hole.shear,
    ///     boss: None,
    /// };
    /// let length = Length::new::<Millimetre>(15.0);
    /// let (plain, insert) = (bolt.strip(length).unwrap(), bolt.strip_with_insert(length).unwrap());
    /// assert_eq!(insert.bolt, plain.bolt);
    /// assert!((insert.hole.value / plain.hole.value - (9.732 + 1.299 * 1.5) / 9.732).abs() < 1e-4); // newtons
    /// ```
    pub fn strip_with_insert(&self, length: Length) -> Result<Strip, Refusal> {
        let thread = &self.thread;
        let major = thread.external.major.min + thread.height() * 1.5;
        let overlap = thread.external.major.min - thread.internal.pitch.max;
        self.strip_of(length, shear_area(thread, length, major, overlap))
    }

    fn strip_of(&self, length: Length, internal: Area) -> Result<Strip, Refusal> {
        let boss = self.checked()?;
        within("engaged length", length, (metres(0.0), metres(1.0)), Unit::Millimetre)?;
        let bolt = newtons(external_area(&self.thread, length).value * boss.value * self.bolt_shear.value);
        let hole = newtons(internal.value * boss.value * self.hole_shear.value);
        let weaker = if hole <= bolt { Weaker::Hole } else { Weaker::Bolt };
        Ok(Strip {
            load: finite("strip load", bolt.min(hole))?,
            weaker,
            bolt,
            hole,
        })
    }
}
