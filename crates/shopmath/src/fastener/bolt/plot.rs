//! Clamp load and torque against the angle turned, in plain numbers for a plot: the band that
//! friction and tool leave, and where the bolt yields.

use super::common::Common;
use crate::bound::between;
use crate::fastener::tighten::Spread;
use crate::quantity::exact::angle::Degree;
use core::f64::consts::TAU;

/// How far the plot goes on past the last thing worth seeing.
const MARGIN: f64 = 1.1;
/// The plot goes on for this many degrees at least.
const LEAST: f64 = 15.0;

/// A point of the curves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotPoint {
    /// Angle from where the torque was reached, degrees; negative on the way there.
    pub angle: f64,
    /// Clamp load at the largest friction, newton.
    pub clamp_low: f64,
    /// Clamp load at middling friction, newton.
    pub clamp_mid: f64,
    /// Clamp load at the smallest friction, newton.
    pub clamp_high: f64,
    /// Torque for the lowest of these clamp loads, newton metre.
    pub torque_low: f64,
    /// Torque for the middle one, newton metre.
    pub torque_mid: f64,
    /// Torque for the highest one, newton metre.
    pub torque_high: f64,
}

/// The plot.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
    /// The corners of the curves, by rising angle; straight between them.
    pub points: Vec<PlotPoint>,
    /// Where the spec ends, degrees from the torque: low, middle, high; 0 for a torque alone.
    pub spec_angle: [f64; 3],
    /// Where yield begins at middling friction, degrees from the torque.
    pub yield_angle: f64,
    /// Clamp load at yield: at the largest, middling and smallest friction, newton.
    pub yield_clamp: [f64; 3],
}

/// One curve: clamp load where the angle begins, rise per degree, yield, torque per clamp.
#[derive(Clone, Copy)]
struct Curve {
    start: f64,
    rate: f64,
    limit: f64,
    lever: f64,
}

impl Curve {
    fn clamp(self, angle: f64) -> f64 {
        between(self.start + self.rate * angle, 0.0, self.limit)
    }

    /// Where the curve leaves zero and where it yields.
    fn corners(self) -> [f64; 2] {
        [-self.start / self.rate, (self.limit - self.start) / self.rate]
    }
}

/// The plot of a bolt; none without a spec and the stiffness of the joint.
pub(super) fn plot(common: &Common<'_>) -> Option<Plot> {
    let (turning, turned) = (common.turning?, common.turned?);
    let rate = turning.clamp_per_radian().value * TAU / 360.0;
    let start = turned
        .snug
        .zip(turned.yield_clamp, |snug, limit| (snug.value, limit.value));
    let curves = start.zip(turning.bolt.torque_per_clamp(), |(start, limit), lever| Curve {
        start,
        rate,
        limit,
        lever: lever.value,
    });
    let turn = common.resolved.spec.as_given()?.turn();
    let spec_angle = ends(turn.map(|angle| angle.get::<Degree>()));
    let mut angles: Vec<f64> = ends(curves).into_iter().flat_map(Curve::corners).collect();
    angles.extend(spec_angle);
    angles.push(0.0);
    let last = angles.iter().copied().fold(0.0, f64::max);
    angles.push((last * MARGIN).max(last + LEAST));
    angles.sort_unstable_by(f64::total_cmp);
    angles.dedup();
    Some(Plot {
        points: angles.into_iter().map(|angle| point(angle, curves)).collect(),
        spec_angle,
        yield_angle: turned.angle_to_yield.get::<Degree>(),
        yield_clamp: ends(turned.yield_clamp.map(|clamp| clamp.value)),
    })
}

fn point(angle: f64, curves: Spread<Curve>) -> PlotPoint {
    let clamp = curves.map(|curve| curve.clamp(angle));
    PlotPoint {
        angle,
        clamp_low: clamp.low,
        clamp_mid: clamp.mid,
        clamp_high: clamp.high,
        torque_low: clamp.low * curves.low.lever,
        torque_mid: clamp.mid * curves.mid.lever,
        torque_high: clamp.high * curves.high.lever,
    }
}

fn ends<T>(spread: Spread<T>) -> [T; 3] {
    [spread.low, spread.mid, spread.high]
}
