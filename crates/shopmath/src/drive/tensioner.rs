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
    /// Fits a tensioner to a drive. The arm is as long as its pulley is drawn away from the pivot.
    ///
    /// # Errors
    /// [`TensionerFault::NoSuchPulley`] for a pulley the drive has not got, [`TensionerFault::NoArm`] for an arm
    /// outside 1 mm–10 m, [`TensionerFault::NoSweep`] for a sweep that is backwards, more than a turn or past ten
    /// turns from +x, or of nothing.
    ///
    /// ```
    /// use shopmath::drive::{bench::{DriveText, resolve}, fault::TensionerFault, tensioner::Arm, text::tensioner};
    /// let layout = resolve(&DriveText::demo()).layout.unwrap();
    /// let fit = |text| Arm::fit(&layout, tensioner::read(text, &layout.pulleys).unwrap());
    /// assert!(fit("tensioner@-128,44,55..95").unwrap().drawn_within());
    /// assert_eq!(fit("tensioner@-128,44,95..55").unwrap_err(), TensionerFault::NoSweep);
    /// assert_eq!(fit("tensioner@-104,122,55..95").unwrap_err(), TensionerFault::NoArm);
    /// ```
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

    /// From pivot to pulley centre, 1 mm to 10 m.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// // From -128,44 to -104,122: √(24² + 78²).
    /// let bench = resolve(&DriveText::demo());
    /// assert!((bench.arm().unwrap().length().get::<Millimetre>() - 81.609).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn length(&self) -> Length {
        metres(self.length)
    }

    /// The angle the pulley is drawn at, from +x, anticlockwise, in the turn nearest to the sweep.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::angle::Degree;
    /// // From -128,44 to -104,122: atan(78/24), and a turn on where the sweep is.
    /// let mut texts = DriveText::demo();
    /// assert!((resolve(&texts).arm().unwrap().drawn_at().get::<Degree>() - 72.897).abs() < 5e-4);
    /// texts.set("tensioner", "tensioner@-128,44,415..455");
    /// assert!((resolve(&texts).arm().unwrap().drawn_at().get::<Degree>() - 432.897).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn drawn_at(&self) -> Angle {
        radians(self.drawn_at)
    }

    /// Whether the pulley is drawn inside the sweep, to a hundredth of a degree.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// let mut texts = DriveText::demo(); // drawn at 72.9°
    /// assert!(resolve(&texts).arm().unwrap().drawn_within());
    /// texts.set("tensioner", "tensioner@-128,44,73..95");
    /// assert!(!resolve(&texts).arm().unwrap().drawn_within());
    /// ```
    #[must_use]
    pub fn drawn_within(&self) -> bool {
        let (low, high) = self.stops();
        (low - 2e-4..=high + 2e-4).contains(&self.drawn_at)
    }

    /// The tensioner as given.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// let bench = resolve(&DriveText::demo());
    /// assert_eq!(Some(bench.arm().unwrap().tensioner()), bench.tensioner);
    /// ```
    #[must_use]
    pub fn tensioner(&self) -> Tensioner {
        self.tensioner
    }

    /// Both stops, radian.
    pub(super) fn stops(&self) -> (f64, f64) {
        (in_radians(self.tensioner.low), in_radians(self.tensioner.high))
    }

    /// The drive with the arm at an angle, from +x, anticlockwise, also outside the stops.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::{angle::Degree, length::Millimetre};
    /// use uom::si::f64::Angle;
    /// // Straight up from the pivot at -128,44.
    /// let bench = resolve(&DriveText::demo());
    /// let centre = bench.arm().unwrap().layout_at(Angle::new::<Degree>(90.0)).pulleys[1].centre;
    /// assert!((centre.x.get::<Millimetre>() + 128.0).abs() < 1e-9);
    /// assert!((centre.y.get::<Millimetre>() - (44.0 + 24_f64.hypot(78.0))).abs() < 1e-9);
    /// ```
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

    /// The checked route with the arm at an angle, from +x, anticlockwise, also outside the stops.
    ///
    /// # Errors
    /// The [`RouteFault`]s of the route there.
    ///
    /// ```
    /// use shopmath::drive::{bench::{DriveText, resolve}, fault::RouteFault};
    /// use shopmath::quantity::exact::{angle::Degree, length::Millimetre};
    /// use uom::si::f64::Angle;
    /// let bench = resolve(&DriveText::demo());
    /// let arm = bench.arm().unwrap();
    /// let (there, drawn) = (arm.route_at(arm.drawn_at()).unwrap(), bench.route.as_ref().unwrap());
    /// assert!((there.effective_length - drawn.effective_length).get::<Millimetre>().abs() < 1e-9);
    /// // Level, it runs into the crank.
    /// assert_eq!(arm.route_at(Angle::new::<Degree>(0.0)).unwrap_err()[0], RouteFault::Overlap(0, 1));
    /// ```
    pub fn route_at(&self, angle: Angle) -> Result<Route, Vec<RouteFault>> {
        route::solve(&self.layout_at(angle))
    }

    /// How fast the route's length grows as the arm turns anticlockwise, metre per radian: the
    /// arm's motion against the two spans' directions, dL/dα = l·t·(d_in − d_out), with t the unit
    /// vector across the arm. Below zero where the route shortens that way. `route` is the one at `angle`.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::{angle::Degree, ratio::Number};
    /// use uom::si::f64::Angle;
    /// let bench = resolve(&DriveText::demo());
    /// let arm = bench.arm().unwrap();
    /// let at = |degrees: f64| (arm.route_at(Angle::new::<Degree>(degrees)).unwrap(), Angle::new::<Degree>(degrees));
    /// let growth = arm.growth(&at(73.0).0, at(73.0).1);
    /// let slope = (at(73.01).0.effective_length - at(72.99).0.effective_length) / 0.02_f64.to_radians();
    /// assert!(((growth / slope).get::<Number>() - 1.0).abs() < 1e-6);
    /// ```
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
