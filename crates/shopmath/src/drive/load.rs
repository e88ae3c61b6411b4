//! What an accessory asks of the belt: its load as a pull at the pitch line.
//!
//! How the pulls go round the loop is [`super::tension`]'s work.

use super::route::Leg;
use super::si::{in_metres, in_newton_metres, in_ones, in_watts, newtons};
use crate::quantity::exact::current::Ampere;
use crate::quantity::exact::power::Watt;
use crate::quantity::exact::rotation::RadianPerSecond;
use crate::quantity::exact::voltage::Volt;
use uom::si::f64::{AngularVelocity, ElectricCurrent, ElectricPotential, Force, Power, Ratio, Torque};

/// The load of one accessory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// Torque at the accessory's own shaft.
    Torque(Torque),
    /// Power taken at the engine speed of the drive.
    Power(Power),
    /// An alternator's output.
    Electric {
        /// Current it gives.
        current: ElectricCurrent,
        /// Voltage it gives it at.
        voltage: ElectricPotential,
    },
}

/// The power an alternator takes for what it gives: P = U·I/η.
///
/// ```
/// use shopmath::drive::load::alternator_power;
/// use shopmath::quantity::exact::{current::Ampere, power::Watt, ratio::Percent, voltage::Volt};
/// use uom::si::f64::{ElectricCurrent, ElectricPotential, Ratio};
/// let taken = alternator_power(
///     ElectricCurrent::new::<Ampere>(90.0),
///     ElectricPotential::new::<Volt>(14.0),
///     Ratio::new::<Percent>(60.0),
/// );
/// assert!((taken.get::<Watt>() - 2100.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn alternator_power(current: ElectricCurrent, voltage: ElectricPotential, efficiency: Ratio) -> Power {
    Power::new::<Watt>(current.get::<Ampere>() * voltage.get::<Volt>() / in_ones(efficiency))
}

impl Load {
    /// Whether the engine speed is needed to know the pull: for a power, not for a torque.
    ///
    /// ```
    /// use shopmath::drive::load::Load;
    /// use shopmath::quantity::exact::{power::Kilowatt, torque::NewtonMetre};
    /// use uom::si::f64::{Power, Torque};
    /// assert!(Load::Power(Power::new::<Kilowatt>(0.6)).needs_speed());
    /// assert!(!Load::Torque(Torque::new::<NewtonMetre>(12.0)).needs_speed());
    /// ```
    #[must_use]
    pub fn needs_speed(self) -> bool {
        !matches!(self, Self::Torque(_))
    }

    /// The pull at the pitch line of a pulley: F = M/r, or F = P/v with v the belt's speed; an
    /// alternator's power is its output over its efficiency, above 0 to 1. `None` for a power at no
    /// speed. `speed` is the driver's, whichever way it turns.
    ///
    /// ```
    /// use shopmath::drive::{bench::{DriveText, resolve}, load::Load};
    /// use shopmath::quantity::exact::{force::Newton, ratio::Percent};
    /// use shopmath::quantity::exact::{rotation::RevolutionPerMinute, torque::NewtonMetre};
    /// use uom::si::f64::{AngularVelocity, Ratio, Torque};
    /// // The compressor of the demo: 112 mm in grooves, so 58 mm to the pitch line.
    /// let legs = resolve(&DriveText::demo()).route.unwrap().legs;
    /// let load = Load::Torque(Torque::new::<NewtonMetre>(12.0));
    /// let (speed, efficiency) = (AngularVelocity::new::<RevolutionPerMinute>(2000.0), Ratio::new::<Percent>(60.0));
    /// let pull = load.pull(&legs[5], &legs[0], speed, efficiency).unwrap();
    /// assert!((pull.get::<Newton>() - 206.897).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn pull(self, leg: &Leg, driver: &Leg, speed: AngularVelocity, efficiency: Ratio) -> Option<Force> {
        let belt_speed = speed.get::<RadianPerSecond>().abs() * in_metres(driver.pitch_radius);
        let from_power = |power: Power| in_watts(power) / belt_speed;
        let pull = match self {
            Self::Torque(torque) => in_newton_metres(torque) / in_metres(leg.pitch_radius),
            Self::Power(power) => from_power(power),
            Self::Electric { current, voltage } => from_power(alternator_power(current, voltage, efficiency)),
        };
        pull.is_finite().then(|| newtons(pull))
    }
}
