//! Quantities from and to plain SI numbers, for the geometry that runs on `kurbo`'s points.
//!
//! Only this folder uses them; texts and results hold quantities.

use crate::quantity::exact;
use kurbo::Point;
use uom::si::f64::{Angle, Force, Length, LinearMassDensity, Power, Ratio, Torque, Velocity};

pub(super) fn metres(value: f64) -> Length {
    Length::new::<exact::length::Metre>(value)
}

pub(super) fn in_metres(length: Length) -> f64 {
    length.get::<exact::length::Metre>()
}

pub(super) fn radians(value: f64) -> Angle {
    Angle::new::<exact::angle::Radian>(value)
}

pub(super) fn in_radians(angle: Angle) -> f64 {
    angle.get::<exact::angle::Radian>()
}

pub(super) fn newtons(value: f64) -> Force {
    Force::new::<exact::force::Newton>(value)
}

pub(super) fn in_newtons(force: Force) -> f64 {
    force.get::<exact::force::Newton>()
}

pub(super) fn newton_metres(value: f64) -> Torque {
    Torque::new::<exact::torque::NewtonMetre>(value)
}

pub(super) fn in_newton_metres(torque: Torque) -> f64 {
    torque.get::<exact::torque::NewtonMetre>()
}

pub(super) fn in_watts(power: Power) -> f64 {
    power.get::<exact::power::Watt>()
}

pub(super) fn metres_per_second(value: f64) -> Velocity {
    Velocity::new::<exact::speed::MetrePerSecond>(value)
}

pub(super) fn in_metres_per_second(speed: Velocity) -> f64 {
    speed.get::<exact::speed::MetrePerSecond>()
}

pub(super) fn ratio(value: f64) -> Ratio {
    Ratio::new::<exact::ratio::Number>(value)
}

pub(super) fn in_ones(ratio: Ratio) -> f64 {
    ratio.get::<exact::ratio::Number>()
}

pub(super) fn kilograms_per_metre(value: f64) -> LinearMassDensity {
    LinearMassDensity::new::<exact::linear_density::KilogramPerMetre>(value)
}

pub(super) fn in_kilograms_per_metre(mass: LinearMassDensity) -> f64 {
    mass.get::<exact::linear_density::KilogramPerMetre>()
}

/// A place on the front of the engine as a point, metre.
pub(super) fn point(x: Length, y: Length) -> Point {
    Point::new(in_metres(x), in_metres(y))
}
