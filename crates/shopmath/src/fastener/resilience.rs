//! Resilience, deflection per force, of a bolt and of the parts it clamps. VDI 2230-1, from memory;
//! the frusta of Shigley as a second opinion on the parts.

use super::refusal::{Refusal, finite, within};
use super::si::{megapascals, metres, metres_per_newton};
use super::thread::Thread;
use crate::quantity::Unit;
use crate::quantity::compliance::Compliance;
use core::f64::consts::PI;
use uom::si::f64::{Area, Length, Pressure};

/// Tangent of Shigley's half apex angle, 30°.
const FRUSTUM: f64 = 0.577_350_269_189_625_8;
/// Length of nut thread that gives with the bolt, in diameters (VDI 2230).
const NUT: f64 = 0.4;
/// Length of tapped hole that gives with the bolt, in diameters (VDI 2230).
const TAPPED: f64 = 0.33;
/// Length of engaged core that stretches, in diameters (VDI 2230).
const ENGAGED: f64 = 0.5;

/// What holds the thread's end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Held {
    /// A nut of the bolt's own metal.
    Nut,
    /// A tapped hole in a block of this Young's modulus.
    Tapped(Pressure),
}

/// A bolt between head and thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// The thread; the plain shank has its nominal diameter.
    pub thread: Thread,
    /// Part of the head that stretches, in diameters: 0.5, or 0.4 for a socket head.
    pub head: f64,
    /// Young's modulus of the bolt.
    pub modulus: Pressure,
    /// Plain shank within the grip.
    pub shank: Length,
    /// Thread within the grip.
    pub free_thread: Length,
    /// What holds the other end.
    pub held: Held,
}

impl Body {
    /// The length that yields first: the free thread and the engaged core, 0.5 d, whose section is the least.
    /// The full shank is a third stronger and stays as it was. The 0.5 d are VDI 2230's, from memory.
    ///
    /// ```
    /// use shopmath::fastener::{resilience::{Body, Held}, thread_text::read};
    /// use shopmath::quantity::exact::{length::Millimetre, pressure::Megapascal};
    /// use uom::si::f64::{Length, Pressure};
    /// let body = Body {
    ///     thread: read("M10").unwrap().thread,
    ///     head: 0.5,
    ///     modulus: Pressure::new::<Megapascal>(205_000.0),
    ///     shank: Length::new::<Millimetre>(20.0),
    ///     free_thread: Length::new::<Millimetre>(20.0),
    ///     held: Held::Nut,
    /// };
    /// assert!((body.yielding().get::<Millimetre>() - 25.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn yielding(&self) -> Length {
        self.free_thread + self.thread.diameter * ENGAGED
    }
}

/// Resilience of a bolt, by part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyResilience {
    /// Of the head.
    pub head: Compliance,
    /// Of the plain shank.
    pub shank: Compliance,
    /// Of the free thread.
    pub free_thread: Compliance,
    /// Of the core of the engaged thread.
    pub engaged: Compliance,
    /// Of nut or tapped hole.
    pub held: Compliance,
    /// All of it, δS.
    pub total: Compliance,
}

/// The clamped parts, as one hollow cylinder around the bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Thickness clamped, lK.
    pub grip: Length,
    /// Bearing diameter, dW.
    pub bearing: Length,
    /// Hole, dh.
    pub hole: Length,
    /// Outer diameter, D_A.
    pub outer: Length,
    /// Young's modulus, the same throughout.
    pub modulus: Pressure,
    /// Whether the bolt goes into a tapped hole (one cone) or a nut (two).
    pub tapped: bool,
}

/// The shape the compression takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// The cone fits into the parts.
    Cone,
    /// The cone meets the outside of the parts and goes on as a sleeve.
    ConeAndSleeve,
}

/// Resilience of the clamped parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartsResilience {
    /// δP.
    pub total: Compliance,
    /// Tangent of the cone's angle.
    pub tangent: f64,
    /// The shape of the compression.
    pub form: Form,
}

/// Resilience of a rod, l/(E·A) by Hooke's law, for a modulus and an area above zero.
///
/// ```
/// use shopmath::fastener::resilience::rod;
/// use shopmath::quantity::exact::pressure::KilopoundPerSquareInch;
/// use shopmath::quantity::exact::{area::SquareInch, force::PoundForce, length::Inch};
/// use uom::si::f64::{Area, Force, Length, Pressure};
/// let (half, steel) = (Length::new::<Inch>(0.75), Pressure::new::<KilopoundPerSquareInch>(30_000.0));
/// // 5/8-11 by Shigley, example 8-4: shank and thread, together 5.21 Mlbf/in stiff.
/// let [shank, thread] = [0.3068, 0.226].map(|area| rod(half, steel, Area::new::<SquareInch>(area)));
/// let stretch = Force::new::<PoundForce>(5.21e6) * (shank + thread);
/// assert!((stretch.get::<Inch>() - 1.0).abs() < 0.001);
/// ```
#[must_use]
pub fn rod(length: Length, modulus: Pressure, area: Area) -> Compliance {
    metres_per_newton(length.value / (modulus.value * area.value))
}

/// Resilience of a bolt, δS = Σ l/(E·A): head 0.5 d (socket 0.4 d) and shank over πd²/4; free
/// thread and 0.5 d of engaged core over the root circle; nut 0.4 d over πd²/4 with the bolt's E,
/// or tapped hole 0.33 d over πd²/4 with the block's. VDI 2230-1, from memory.
///
/// # Errors
/// [`Refusal::OutOfRange`] for lengths outside 0–10 m or a modulus outside 1–1000 GPa.
///
/// ```
/// use shopmath::fastener::{resilience::{Body, Held, bolt}, thread_text::read};
/// use shopmath::quantity::compliance::InUnits;
/// use shopmath::quantity::exact::{compliance::MetrePerNewton, length::Millimetre, pressure::Megapascal};
/// use uom::si::f64::{Length, Pressure};
/// let body = Body {
///     thread: read("M10").unwrap().thread,
///     head: 0.5,
///     modulus: Pressure::new::<Megapascal>(205_000.0),
///     shank: Length::new::<Millimetre>(20.0),
///     free_thread: Length::new::<Millimetre>(20.0),
///     held: Held::Nut,
/// };
/// let micrometre_per_kilonewton = bolt(&body).unwrap().total.get::<MetrePerNewton>() * 1e9;
/// assert!((micrometre_per_kilonewton - 4.133).abs() < 0.001);
/// ```
pub fn bolt(body: &Body) -> Result<BodyResilience, Refusal> {
    let block = match body.held {
        Held::Nut => body.modulus,
        Held::Tapped(block) => block,
    };
    for (what, length) in [("shank", body.shank), ("free thread", body.free_thread)] {
        within(what, length, (metres(0.0), metres(10.0)), Unit::Millimetre)?;
    }
    for modulus in [body.modulus, block] {
        stiff(modulus)?;
    }
    let diameter = body.thread.diameter;
    let (full, root) = (body.thread.shank_area(), body.thread.root_area());
    let held = if body.held == Held::Nut { NUT } else { TAPPED };
    let found = BodyResilience {
        head: rod(diameter * body.head, body.modulus, full),
        shank: rod(body.shank, body.modulus, full),
        free_thread: rod(body.free_thread, body.modulus, root),
        engaged: rod(diameter * ENGAGED, body.modulus, root),
        held: rod(diameter * held, block, full),
        total: metres_per_newton(0.0),
    };
    let total = found.head + found.shank + found.free_thread + found.engaged + found.held;
    Ok(BodyResilience {
        total: finite("resilience of the bolt", total)?,
        ..found
    })
}

/// Resilience of the clamped parts by the deformation cone, with a sleeve where the parts are
/// narrower than the cone. With w = 1 for a through bolt and 2 for a tapped hole, βL = lK/dW and
/// y = D_A/dW:
///
/// through bolt tanφ = 0.362 + 0.032·ln(βL/2) + 0.153·ln y; tapped tanφ = 0.348 + 0.013·ln βL +
/// 0.193·ln y. VDI 2230-1, from memory.
///
/// # Errors
/// [`Refusal::OutOfRange`] for a grip outside 0.1 mm to 10 m or a modulus outside 1–1000 GPa;
/// [`Refusal::NotSmaller`] unless hole < bearing ≤ outer diameter; [`Refusal::ConeNotDefined`]
/// where the fit for the cone's angle gives none.
///
/// ```
/// use shopmath::fastener::resilience::{Form, Parts, parts};
/// use shopmath::quantity::compliance::InUnits;
/// use shopmath::quantity::exact::{compliance::MicrometrePerKilonewton, length::Millimetre, pressure::Megapascal};
/// use uom::si::f64::{Length, Pressure};
/// let [grip, bearing, hole, outer] = [40.0, 14.63, 11.0, 60.0].map(Length::new::<Millimetre>);
/// let modulus = Pressure::new::<Megapascal>(205_000.0);
/// let found = parts(&Parts { grip, bearing, hole, outer, modulus, tapped: false }).unwrap();
/// assert_eq!(found.form, Form::Cone);
/// assert!((found.total.get::<MicrometrePerKilonewton>() - 0.6535).abs() < 0.0001);
/// ```
pub fn parts(parts: &Parts) -> Result<PartsResilience, Refusal> {
    within("grip", parts.grip, (metres(1e-4), metres(10.0)), Unit::Millimetre)?;
    stiff(parts.modulus)?;
    smaller("hole diameter", parts.hole, "bearing diameter", parts.bearing, false)?;
    smaller("bearing diameter", parts.bearing, "outer diameter", parts.outer, true)?;
    let tangent = cone_tangent(parts);
    if tangent.is_nan() || tangent < 0.01 {
        return Err(Refusal::ConeNotDefined);
    }
    let [grip, bearing, hole, outer] = [parts.grip, parts.bearing, parts.hole, parts.outer].map(|length| length.value);
    let cones = if parts.tapped { 2.0 } else { 1.0 };
    let limit = bearing + cones * grip * tangent;
    let end = outer.min(limit);
    let cone =
        2.0 / (cones * hole * tangent) * ((bearing + hole) * (end - hole) / ((bearing - hole) * (end + hole))).ln();
    let sleeve = 4.0 / (outer * outer - hole * hole) * (grip - (end - bearing) / (cones * tangent));
    let (form, sleeve) = if outer >= limit {
        (Form::Cone, 0.0)
    } else {
        (Form::ConeAndSleeve, sleeve)
    };
    let total = metres_per_newton((cone + sleeve) / (parts.modulus.value * PI));
    Ok(PartsResilience {
        total: finite("resilience of the parts", total)?,
        tangent,
        form,
    })
}

fn cone_tangent(parts: &Parts) -> f64 {
    let slender = parts.grip.value / parts.bearing.value;
    let wide = (parts.outer.value / parts.bearing.value).ln();
    if parts.tapped {
        0.348 + 0.013 * slender.ln() + 0.193 * wide
    } else {
        0.362 + 0.032 * (slender / 2.0).ln() + 0.153 * wide
    }
}

/// Resilience of one 30° frustum, ln{[(1.155t + D − d)(D + d)]/[(1.155t + D + d)(D − d)]}/(0.5774πEd),
/// t thick, D wide at its narrow end, around a bolt d wide (Shigley, chapter 8).
///
/// # Errors
/// [`Refusal::OutOfRange`] for a thickness outside 1 µm to 10 m or a modulus outside 1–1000 GPa;
/// [`Refusal::NotSmaller`] unless d < D.
///
/// ```
/// use shopmath::fastener::resilience::frustum;
/// use shopmath::quantity::exact::{force::PoundForce, length::Inch, pressure::KilopoundPerSquareInch};
/// use uom::si::f64::{Force, Length, Pressure};
/// let [thick, narrow, bolt] = [0.3125, 0.9375, 0.625].map(Length::new::<Inch>);
/// let part = frustum(Pressure::new::<KilopoundPerSquareInch>(16_000.0), thick, narrow, bolt).unwrap();
/// // Shigley, example 8-5: 32.39 Mlbf/in.
/// let pressed = Force::new::<PoundForce>(32.39e6) * part;
/// assert!((pressed.get::<Inch>() - 1.0).abs() < 0.001);
/// ```
pub fn frustum(modulus: Pressure, thickness: Length, narrow: Length, bolt: Length) -> Result<Compliance, Refusal> {
    within("thickness", thickness, (metres(1e-6), metres(10.0)), Unit::Millimetre)?;
    stiff(modulus)?;
    smaller("bolt diameter", bolt, "bearing diameter", narrow, false)?;
    let (t, wide, d) = (2.0 * FRUSTUM * thickness.value, narrow.value, bolt.value);
    let spread = ((t + wide - d) * (wide + d) / ((t + wide + d) * (wide - d))).ln();
    finite(
        "resilience of the parts",
        metres_per_newton(spread / (FRUSTUM * PI * modulus.value * d)),
    )
}

/// Two frusta, one from each end, through a grip of one material (Shigley, chapter 8).
///
/// # Errors
/// As [`frustum`].
///
/// ```
/// use shopmath::fastener::resilience::frusta;
/// use shopmath::quantity::exact::{force::PoundForce, length::Inch, pressure::KilopoundPerSquareInch};
/// use uom::si::f64::{Force, Length, Pressure};
/// let [grip, bearing, bolt] = [1.5, 0.9375, 0.625].map(Length::new::<Inch>);
/// let parts = frusta(Pressure::new::<KilopoundPerSquareInch>(14_000.0), grip, bearing, bolt).unwrap();
/// // Shigley, example 8-4: 8.95 Mlbf/in.
/// let pressed = Force::new::<PoundForce>(8.95e6) * parts;
/// assert!((pressed.get::<Inch>() - 1.0).abs() < 0.001);
/// ```
pub fn frusta(modulus: Pressure, grip: Length, bearing: Length, bolt: Length) -> Result<Compliance, Refusal> {
    Ok(frustum(modulus, grip * 0.5, bearing, bolt)? * 2.0)
}

fn stiff(modulus: Pressure) -> Result<Pressure, Refusal> {
    within(
        "Young's modulus",
        modulus,
        (megapascals(1e3), megapascals(1e6)),
        Unit::Megapascal,
    )
}

fn smaller(
    small: &'static str,
    small_read: Length,
    large: &'static str,
    large_read: Length,
    or_equal: bool,
) -> Result<(), Refusal> {
    let positive = small_read.value > 0.0 && large_read.value.is_finite();
    if positive && (small_read < large_read || (or_equal && small_read <= large_read)) {
        return Ok(());
    }
    Err(Refusal::not_smaller((small, small_read), (large, large_read)))
}
