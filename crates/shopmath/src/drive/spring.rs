//! The tensioner's spring against the strand it holds, by virtual work.
//!
//! The arm's growth dL/dα comes from [`super::tensioner`].

use super::fault::TensionerFault;
use super::si::{in_metres, in_newton_metres, in_newtons, newton_metres, newtons};
use uom::si::f64::{Force, Length, Torque};

/// Growth below this share of the arm's reach counts as dead centre, metre per radian.
const DEAD: f64 = 1e-6;

/// The strand tension a spring torque about the pivot holds: M = T·dL/dα, so T = M/|dL/dα|.
/// Friction in the tensioner is left out; it may hold a tenth more or less.
///
/// # Errors
/// [`TensionerFault::DeadCentre`] where the arm takes up no belt.
///
/// ```
/// use shopmath::drive::spring::tension;
/// use shopmath::quantity::exact::{force::Newton, length::Metre, torque::NewtonMetre};
/// use uom::si::f64::{Length, Torque};
/// let held = tension(Torque::new::<NewtonMetre>(30.0), Length::new::<Metre>(0.12)).unwrap();
/// assert!((held.get::<Newton>() - 250.0).abs() < 1e-9);
/// ```
pub fn tension(torque: Torque, growth: Length) -> Result<Force, TensionerFault> {
    let growth = in_metres(growth).abs();
    if growth > DEAD {
        Ok(newtons(in_newton_metres(torque) / growth))
    } else {
        Err(TensionerFault::DeadCentre)
    }
}

/// The spring torque about the pivot that a strand tension asks for, by virtual work: M = T·|dL/dα|,
/// not below zero for a tension not below zero; `growth` is dL/dα, length per radian, its sign not used.
///
/// ```
/// use shopmath::drive::spring::{tension, torque};
/// use shopmath::quantity::exact::{force::Newton, length::Metre, torque::NewtonMetre};
/// use uom::si::f64::{Force, Length};
/// let (strand, growth) = (Force::new::<Newton>(250.0), Length::new::<Metre>(-0.12));
/// assert!((torque(strand, growth).get::<NewtonMetre>() - 30.0).abs() < 1e-9);
/// assert!((tension(torque(strand, growth), growth).unwrap().get::<Newton>() - 250.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn torque(tension: Force, growth: Length) -> Torque {
    newton_metres(in_newtons(tension) * in_metres(growth).abs())
}
