//! A seized bolt: the torque that twists it past yield, the one that twists it off, and where to
//! stop. Pure twist, with no clamp load left: no tightening limit follows from it.

use super::class::Class;
use super::refusal::{Refusal, finite, within};
use super::si::{metres, millimetres, newton_metres, newtons};
use super::thread::{Standard, Thread};
use crate::quantity::Unit;
use core::f64::consts::PI;
use uom::si::f64::{Force, Length, Pressure, Torque};

/// √3, from shear to normal stress.
const SQRT_3: f64 = 1.732_050_807_568_877_2;
/// Share of the twist-yield torque to stop at (common practice).
const STOP: f64 = 0.8;
/// ISO 898-7 ends here, millimetre.
const LARGEST: f64 = 10.0;

/// Torque at which pure twist yields the core, (π/16)·d3³·Rp0.2/√3: a round bar of the root's diameter that
/// yields in shear at Rp0.2/√3. An own calculation, no tightening torque.
///
/// # Errors
/// [`Refusal::NotFinite`] for strengths past any metal.
///
/// ```
/// use shopmath::fastener::{stuck::twist_yield, thread_text::read};
/// use shopmath::quantity::exact::{pressure::Megapascal, torque::NewtonMetre};
/// use uom::si::f64::Pressure;
/// let torque = twist_yield(&read("M10").unwrap().thread, Pressure::new::<Megapascal>(640.0)).unwrap();
/// assert!((torque.get::<NewtonMetre>() - 39.4).abs() < 0.05); // class 8.8, which breaks at 66 N·m
/// ```
pub fn twist_yield(thread: &Thread, yield_strength: Pressure) -> Result<Torque, Refusal> {
    let root = thread.root_diameter().value;
    let torque = PI / 16.0 * root.powi(3) * yield_strength.value / SQRT_3;
    finite("twist-yield torque", newton_metres(torque))
}

/// Least torque that breaks the bolt in pure twist, X·Rm·(π/16)·d3,min³ (ISO 898-7); none where
/// that standard does not reach: above M10, unified threads, classes outside 8.8–12.9.
///
/// ```
/// use shopmath::fastener::{class, stuck::twist_break, thread_text::read};
/// use shopmath::quantity::exact::torque::NewtonMetre;
/// let thread = read("M10").unwrap().thread;
/// let breaks = twist_break(&thread, &class::at("8.8", thread.diameter).unwrap()).unwrap();
/// assert!((breaks.get::<NewtonMetre>() - 66.0).abs() < 0.5);
/// ```
#[must_use]
pub fn twist_break(thread: &Thread, class: &Class) -> Option<Torque> {
    let covered = thread.standard == Standard::Metric && thread.diameter < millimetres(LARGEST + 1e-6);
    let share = class.twist_break.filter(|_| covered)?;
    let root = thread.external.root_min.value;
    Some(newton_metres(
        share.value * class.tensile.value * PI / 16.0 * root.powi(3),
    ))
}

/// Where to stop: 80 % of the twist-yield torque (common practice).
///
/// ```
/// use shopmath::{fastener::stuck::stop, quantity::exact::torque::NewtonMetre};
/// use uom::si::f64::Torque;
/// assert!((stop(Torque::new::<NewtonMetre>(40.0)).get::<NewtonMetre>() - 32.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn stop(twist_yield: Torque) -> Torque {
    twist_yield * STOP
}

/// Force at the hand for a torque, F = M/l, the lever from the bolt to the middle of the hand.
///
/// # Errors
/// [`Refusal::OutOfRange`] for a lever outside 1 cm to 10 m.
///
/// ```
/// use shopmath::fastener::stuck::hand_force;
/// use shopmath::quantity::exact::{force::Newton, length::Millimetre, torque::NewtonMetre};
/// use uom::si::f64::{Length, Torque};
/// let at = |lever| hand_force(Torque::new::<NewtonMetre>(60.0), Length::new::<Millimetre>(lever));
/// assert!((at(300.0).unwrap().get::<Newton>() - 200.0).abs() < 1e-9);
/// assert!(at(5.0).is_err());
/// ```
pub fn hand_force(torque: Torque, lever: Length) -> Result<Force, Refusal> {
    within("lever", lever, (metres(0.01), metres(10.0)), Unit::Millimetre)?;
    finite("hand force", newtons(torque.value / lever.value))
}
