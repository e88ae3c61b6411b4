//! A drive as laid out on the engine: the pulleys in the order the belt runs, and the belt's own
//! two distances. The route is [`super::route`]'s work.

use super::fault::RouteFault;
use super::profile::Profile;
use super::pulley::{Pulley, Side};
use super::si::in_metres;
use super::tangent::Circle;
use uom::si::f64::Length;

/// The most pulleys looked at, so that no link can keep a phone busy.
pub const MOST_PULLEYS: usize = 200;
/// The farthest a pulley may stand from the origin along either axis, metre.
const FARTHEST: f64 = 100.0;
/// The diameters a pulley may have, metre.
const DIAMETERS: core::ops::RangeInclusive<f64> = 0.001..=10.0;
/// The distances the back face may have from the effective line, metre.
const BACKS: core::ops::RangeInclusive<f64> = 0.0..=0.05;

/// A drive ready to be routed.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// The profile of belt and grooves.
    pub profile: Profile,
    /// From the belt's back face to its effective line.
    pub back: Length,
    /// The pulleys in the order the belt runs, the driver first.
    pub pulleys: Vec<Pulley>,
}

impl Layout {
    /// What keeps the pulleys, each by itself, from carrying a belt.
    pub(super) fn faults(&self) -> Vec<RouteFault> {
        let mut faults = Vec::new();
        if self.pulleys.len() > MOST_PULLEYS {
            return vec![RouteFault::TooMany];
        }
        if self.pulleys.len() < 2 {
            faults.push(RouteFault::TooFew(self.pulleys.len()));
        } else if self.pulleys.iter().all(|pulley| pulley.side == Side::Back) {
            faults.push(RouteFault::NoneOnRibs);
        }
        if !BACKS.contains(&in_metres(self.back)) {
            faults.push(RouteFault::BackOutOfRange);
        }
        for (index, pulley) in self.pulleys.iter().enumerate() {
            faults.extend(self.fault_of(index, pulley));
        }
        faults
    }

    fn fault_of(&self, index: usize, pulley: &Pulley) -> Option<RouteFault> {
        let near = |length: Length| in_metres(length).abs() <= FARTHEST;
        if !near(pulley.centre.x) || !near(pulley.centre.y) {
            return Some(RouteFault::FarAway(index));
        }
        let carries = pulley.pitch_radius(self.back, self.profile.line_differential()) > 0.0;
        if !DIAMETERS.contains(&in_metres(pulley.diameter)) || !carries {
            return Some(RouteFault::NoSize(index));
        }
        let below = in_metres(pulley.diameter) < in_metres(self.profile.minimum_diameter()) - 1e-9;
        (pulley.side == Side::Rib && below).then_some(RouteFault::BelowMinimum(index))
    }

    /// The pulleys as circles of signed effective radius, ribbed ones turning in `sense`.
    pub(super) fn circles(&self, sense: f64) -> Vec<Circle> {
        self.pulleys
            .iter()
            .map(|pulley| Circle {
                centre: pulley.centre.point(),
                radius: sense * pulley.side.sign() * pulley.effective_radius(self.back),
            })
            .collect()
    }
}
