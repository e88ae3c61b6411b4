//! Quantities out of numbers in coherent SI units, for the equations of this folder. Inside an
//! equation the numbers stand in m, N, N·m, Pa, K and rad; outside it only quantities do.

use crate::quantity::compliance::{Compliance, InUnits as _};
use crate::quantity::exact;
use uom::si::f64::{Angle, Area, Force, Length, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval, Torque};

pub(super) fn metres(value: f64) -> Length {
    Length::new::<exact::length::Metre>(value)
}

pub(super) fn millimetres(value: f64) -> Length {
    Length::new::<exact::length::Millimetre>(value)
}

pub(super) fn square_metres(value: f64) -> Area {
    Area::new::<exact::area::SquareMetre>(value)
}

pub(super) fn newtons(value: f64) -> Force {
    Force::new::<exact::force::Newton>(value)
}

pub(super) fn newton_metres(value: f64) -> Torque {
    Torque::new::<exact::torque::NewtonMetre>(value)
}

pub(super) fn megapascals(value: f64) -> Pressure {
    Pressure::new::<exact::pressure::Megapascal>(value)
}

pub(super) fn radians(value: f64) -> Angle {
    Angle::new::<exact::angle::Radian>(value)
}

pub(super) fn ratio(value: f64) -> Ratio {
    Ratio::new::<exact::ratio::Number>(value)
}

pub(super) fn kelvins(value: f64) -> TemperatureInterval {
    TemperatureInterval::new::<exact::temperature_difference::KelvinDifference>(value)
}

/// Expansion in millionths per kelvin, as handbooks print it.
pub(super) fn millionths_per_kelvin(value: f64) -> TemperatureCoefficient {
    ratio(value * 1e-6) / kelvins(1.0)
}

pub(super) fn metres_per_newton(value: f64) -> Compliance {
    Compliance::new::<exact::compliance::MetrePerNewton>(value)
}
