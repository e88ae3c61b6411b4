//! A tensioner: an arm on a pivot that carries one of the drive's pulleys through a sweep.
//!
//! Here the arm stands at given angles; which angle a belt asks for is [`super::take_up`]'s work,
//! what its spring does [`super::spring`]'s.

use super::crossing;
use super::fault::{RouteFault, TensionerFault};
use super::layout::Layout;
use super::pulley::Spot;
use super::route::{self, Route};
use super::si::{in_radians, metres, radians};
use super::tangent::Circle;
use super::trace::{Trace, likely_sense};
use core::f64::consts::TAU;
use kurbo::Vec2;
use uom::si::f64::{Angle, Length};

/// The arms there are, metre.
const ARMS: core::ops::RangeInclusive<f64> = 0.001..=10.0;
/// The largest angle taken, radian: ten turns, far past any that is meant.
const LARGEST_ANGLE: f64 = 10.0 * TAU;

/// A tensioner arm. Angles are from +x, anticlockwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tensioner {
    /// The pulley it carries, by its place in the belt order, from 0.
    pub pulley: usize,
    /// The arm's pivot.
    pub pivot: Spot,
    /// One stop of the arm.
    pub low: Angle,
    /// The other stop, anticlockwise of the first.
    pub high: Angle,
}

/// Angles of the sweep looked at for one where a belt can run.
const LOOKS: u8 = 32;

/// An arm fitted to a drive, its length taken from where the pulley is drawn.
#[derive(Clone, Debug)]
pub struct Arm<'a> {
    layout: &'a Layout,
    tensioner: Tensioner,
    length: f64,
    drawn_at: f64,
    sense: f64,
    /// The pulleys as the belt sees them; none where no belt can be tried.
    circles: Vec<Circle>,
}

impl<'a> Arm<'a> {
    /// Fits a tensioner to a drive.
    ///
    /// # Errors
    /// [`TensionerFault`] for a pulley the drive has not got, an arm outside 1 mm–10 m, or a sweep
    /// that is backwards or more than a turn.
    pub fn fit(layout: &'a Layout, tensioner: Tensioner) -> Result<Self, TensionerFault> {
        let pulley = layout
            .pulleys
            .get(tensioner.pulley)
            .ok_or(TensionerFault::NoSuchPulley)?;
        let reach = pulley.centre.point() - tensioner.pivot.point();
        if !ARMS.contains(&reach.hypot()) {
            return Err(TensionerFault::NoArm);
        }
        let (low, high) = (in_radians(tensioner.low), in_radians(tensioner.high));
        let sensible = low.abs() <= LARGEST_ANGLE && high.abs() <= LARGEST_ANGLE && high - low <= TAU + 1e-9;
        if !sensible || high - low < 1e-6 {
            return Err(TensionerFault::NoSweep);
        }
        let mut arm = Self {
            layout,
            tensioner,
            length: reach.hypot(),
            drawn_at: nearest_turn(reach.atan2(), 0.5 * (low + high)),
            sense: likely_sense(layout),
            circles: Vec::new(),
        };
        arm.sense = arm.sense_of_sweep().unwrap_or(arm.sense);
        if route::can_be_traced(layout) {
            arm.circles = layout.circles(arm.sense);
        }
        Ok(arm)
    }

    /// The sense the belt goes round in: as drawn, else at the first of some angles of the sweep
    /// where a belt can run.
    fn sense_of_sweep(&self) -> Option<f64> {
        let (low, high) = self.stops();
        let looks = (0..=LOOKS).map(|look| low + (high - low) * f64::from(look) / f64::from(LOOKS));
        core::iter::once(self.drawn_at)
            .chain(looks)
            .find_map(|angle| self.route_at(radians(angle)).ok())
            .map(|route| route.sense.sign())
    }

    /// From pivot to pulley centre.
    #[must_use]
    pub fn length(&self) -> Length {
        metres(self.length)
    }

    /// The angle the pulley is drawn at, in the turn nearest to the sweep.
    #[must_use]
    pub fn drawn_at(&self) -> Angle {
        radians(self.drawn_at)
    }

    /// Whether the pulley is drawn inside the sweep, to a hundredth of a degree.
    #[must_use]
    pub fn drawn_within(&self) -> bool {
        let (low, high) = self.stops();
        (low - 2e-4..=high + 2e-4).contains(&self.drawn_at)
    }

    /// The tensioner as given.
    #[must_use]
    pub fn tensioner(&self) -> Tensioner {
        self.tensioner
    }

    /// Both stops, radian.
    pub(super) fn stops(&self) -> (f64, f64) {
        (in_radians(self.tensioner.low), in_radians(self.tensioner.high))
    }

    /// The drive with the arm at an angle.
    #[must_use]
    pub fn layout_at(&self, angle: Angle) -> Layout {
        let mut layout = self.layout.clone();
        let centre = self.tensioner.pivot.point() + self.length * Vec2::from_angle(in_radians(angle));
        if let Some(pulley) = layout.pulleys.get_mut(self.tensioner.pulley) {
            pulley.centre = Spot {
                x: metres(centre.x),
                y: metres(centre.y),
            };
        }
        layout
    }

    /// The checked route with the arm at an angle.
    ///
    /// # Errors
    /// The [`RouteFault`]s of the route there.
    pub fn route_at(&self, angle: Angle) -> Result<Route, Vec<RouteFault>> {
        route::solve(&self.layout_at(angle))
    }

    /// How fast the route's length grows as the arm turns anticlockwise, metre per radian: the
    /// arm's motion against the two spans' directions, dL/dα = l·t·(d_in − d_out), with t the unit
    /// vector across the arm.
    #[must_use]
    pub fn growth(&self, route: &Route, angle: Angle) -> Length {
        let across = Vec2::from_angle(in_radians(angle) + 0.25 * TAU);
        let pull = route
            .legs
            .get(self.tensioner.pulley)
            .map_or(Vec2::ZERO, |leg| leg.arriving - leg.leaving);
        metres(self.length * across.dot(pull))
    }

    /// The checked route at an angle, in the sense of the sweep: past a span the belt may close the
    /// other way round, where the arm cannot take it.
    ///
    /// # Errors
    /// The [`RouteFault`]s of the route there.
    pub(super) fn route_in_sense(&self, angle: f64) -> Result<Route, Vec<RouteFault>> {
        route::solve_in(&self.layout_at(radians(angle)), self.sense)
    }

    /// Length and growth where the belt closes, metre and metre per radian, and whether the
    /// tensioner's pulley and its spans are clear of all others. Those others are not checked.
    pub(super) fn reading(&self, angle: f64) -> Option<Reading> {
        let pulley = self.tensioner.pulley;
        let centre = self.tensioner.pivot.point() + self.length * Vec2::from_angle(angle);
        let mut circles = self.circles.clone();
        circles.get_mut(pulley)?.centre = centre;
        let trace = Trace::around(circles, self.sense).ok().filter(Trace::closes)?;
        let pull = trace.arriving(pulley).along - trace.spans[pulley].along;
        let touches = |other| other != pulley && crossing::touch(self.layout, pulley, other, centre);
        Some(Reading {
            length: trace.length(),
            growth: self.length * Vec2::from_angle(angle + 0.25 * TAU).dot(pull),
            clear: crossing::clear_at(&trace, pulley) && !(0..trace.spans.len()).any(touches),
        })
    }
}

/// The route's length at one angle of the arm, and how fast it grows.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reading {
    /// Effective length, metre.
    pub(super) length: f64,
    /// Its growth, metre per radian anticlockwise.
    pub(super) growth: f64,
    /// Whether nothing is in the way of the tensioner's pulley and its two spans.
    pub(super) clear: bool,
}

/// An angle moved by whole turns to lie within half a turn of another.
pub(super) fn nearest_turn(angle: f64, near: f64) -> f64 {
    angle - TAU * ((angle - near) / TAU).round()
}
