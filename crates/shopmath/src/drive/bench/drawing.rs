//! The drive as shapes: plain millimetres, y up, angles in radians anticlockwise from +x. What
//! makes a picture of them is [`crate::sketch::route`].

use super::Bench;
use super::held::Held;
use crate::drive::fault::RouteFault;
use crate::drive::layout::Layout;
use crate::drive::pulley::Side;
use crate::drive::route;
use crate::drive::si::{in_metres, in_radians};
use crate::drive::tangent::Span;
use crate::drive::trace::Trace;
use crate::quantity::exact::angle::Degree;
use kurbo::{Line, Point, Vec2};

/// Everything to draw; empty lists where the route cannot be drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// The pulleys, in belt order.
    pub discs: Vec<Disc>,
    /// The straight spans, from each pulley to the next.
    pub spans: Vec<Straight>,
    /// The belt on each pulley.
    pub arcs: Vec<Arc>,
    /// The tensioner's arm.
    pub arm: Option<ArmShape>,
    /// Whether a pulley is drawn as it was before something else was typed about it: what could be
    /// measured on the drawing counts no more.
    pub stale: bool,
    /// Where something is wrong.
    pub marks: Vec<Mark>,
    /// The smallest box round all of it, `None` when there is nothing.
    pub bounds: Option<Bounds>,
}

/// A pulley.
#[derive(Clone, Debug, PartialEq)]
pub struct Disc {
    /// Its name.
    pub name: String,
    /// The side of the belt on it.
    pub side: Side,
    /// Centre.
    pub x: f64,
    /// Centre.
    pub y: f64,
    /// Radius of the body.
    pub radius: f64,
    /// +1 where it turns anticlockwise, −1 clockwise, 0 where the route is unknown.
    pub turns: f64,
    /// Whether a fault points at it.
    pub faulty: bool,
}

impl Disc {
    /// Diameter of the body, millimetre: what is typed for the pulley, without the belt.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, assess, resolve};
    /// // crank:rib:0,0:156
    /// let crank = &assess(resolve(&DriveText::demo())).drawing.discs[0];
    /// assert!((crank.diameter() - 156.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn diameter(&self) -> f64 {
        2.0 * self.radius
    }
}

/// A span, in the direction of travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Straight {
    /// Start.
    pub x1: f64,
    /// Start.
    pub y1: f64,
    /// End.
    pub x2: f64,
    /// End.
    pub y2: f64,
    /// The direction of travel, for an arrow in the middle.
    pub direction: f64,
    /// Whether a fault points at it.
    pub faulty: bool,
}

/// The belt on a pulley, in the direction of travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Centre.
    pub x: f64,
    /// Centre.
    pub y: f64,
    /// Radius of the effective line.
    pub radius: f64,
    /// Angle where it begins.
    pub start: f64,
    /// Turn from there, negative clockwise; up to a full turn.
    pub sweep: f64,
}

/// The tensioner's arm, angles in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmShape {
    /// The pulley it carries, from 0.
    pub pulley: usize,
    /// Pivot.
    pub x: f64,
    /// Pivot.
    pub y: f64,
    /// Pivot to pulley.
    pub length: f64,
    /// The low stop.
    pub low: f64,
    /// The high stop.
    pub high: f64,
    /// Where it is drawn.
    pub drawn: f64,
    /// Where the belt named puts it.
    pub with_belt: Option<f64>,
    /// The same in degrees, as a person reads it.
    pub with_belt_degrees: Option<f64>,
}

/// A place where something is wrong, with its sentence.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Where.
    pub x: f64,
    /// Where.
    pub y: f64,
    /// What, for a person.
    pub sentence: String,
    /// The pulleys it points at, from 0.
    pub pulleys: Vec<usize>,
}

/// A box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Left.
    pub left: f64,
    /// Bottom.
    pub bottom: f64,
    /// Right.
    pub right: f64,
    /// Top.
    pub top: f64,
}

/// Millimetres in a metre.
const MM: f64 = 1e3;

pub(super) fn of(bench: &Bench, held: Option<&Held>) -> Drawing {
    let Some(layout) = &bench.layout else {
        return Drawing::default();
    };
    if layout.pulleys.iter().any(|pulley| !pulley.centre.point().is_finite()) {
        return Drawing::default();
    }
    let trace = match &bench.route {
        Some(route) => route::closing_trace(layout, route.sense.sign()).ok(),
        None => route::faulty_trace(layout),
    };
    let faults = &bench.route_faults;
    let mut drawing = Drawing {
        discs: discs(layout, trace.as_ref(), faults),
        spans: trace.as_ref().map_or_else(Vec::new, |trace| spans(trace, faults)),
        arcs: trace.as_ref().map_or_else(Vec::new, arcs),
        arm: arm(bench, held),
        marks: faults
            .iter()
            .filter_map(|&fault| mark(layout, trace.as_ref(), fault))
            .collect(),
        stale: bench.is_stale(),
        bounds: None,
    };
    drawing.bounds = bounds(&drawing);
    drawing
}

fn discs(layout: &Layout, trace: Option<&Trace>, faults: &[RouteFault]) -> Vec<Disc> {
    let faulty: Vec<usize> = faults.iter().flat_map(|fault| fault.pulleys()).collect();
    let disc = |(index, pulley): (usize, &crate::drive::pulley::Pulley)| Disc {
        name: pulley.name.clone(),
        side: pulley.side,
        x: in_metres(pulley.centre.x) * MM,
        y: in_metres(pulley.centre.y) * MM,
        radius: pulley.body_radius() * MM,
        turns: trace.map_or(0.0, |trace| trace.circles[index].radius.signum()),
        faulty: faulty.contains(&index),
    };
    layout.pulleys.iter().enumerate().map(disc).collect()
}

fn spans(trace: &Trace, faults: &[RouteFault]) -> Vec<Straight> {
    let named = |index: usize| {
        faults.iter().any(|fault| match *fault {
            RouteFault::SpanThrough { span, .. } => span == index,
            RouteFault::SpansCross(one, other) => one == index || other == index,
            _ => false,
        })
    };
    let straight = |(index, span): (usize, &Span)| Straight {
        x1: span.from.x * MM,
        y1: span.from.y * MM,
        x2: span.to.x * MM,
        y2: span.to.y * MM,
        direction: span.along.atan2(),
        faulty: named(index),
    };
    trace.spans.iter().enumerate().map(straight).collect()
}

fn arcs(trace: &Trace) -> Vec<Arc> {
    let arc = |index: usize| {
        let circle = trace.circles[index];
        let start: Vec2 = trace.arriving(index).to - circle.centre;
        Arc {
            x: circle.centre.x * MM,
            y: circle.centre.y * MM,
            radius: circle.radius.abs() * MM,
            start: start.atan2(),
            sweep: circle.radius.signum() * trace.wraps[index],
        }
    };
    (0..trace.circles.len()).map(arc).collect()
}

fn arm(bench: &Bench, held: Option<&Held>) -> Option<ArmShape> {
    let arm = bench.arm()?;
    let tensioner = arm.tensioner();
    let with_belt = held.and_then(|held| held.fits.first()).map(|fit| fit.angle);
    Some(ArmShape {
        pulley: tensioner.pulley,
        x: in_metres(tensioner.pivot.x) * MM,
        y: in_metres(tensioner.pivot.y) * MM,
        length: in_metres(arm.length()) * MM,
        low: in_radians(tensioner.low),
        high: in_radians(tensioner.high),
        drawn: in_radians(arm.drawn_at()),
        with_belt: with_belt.map(in_radians),
        with_belt_degrees: with_belt.map(|angle| angle.get::<Degree>()),
    })
}

fn mark(layout: &Layout, trace: Option<&Trace>, fault: RouteFault) -> Option<Mark> {
    let centre = |index: usize| layout.pulleys.get(index).map(|pulley| pulley.centre.point());
    let span = |index: usize| {
        trace
            .and_then(|trace| trace.spans.get(index))
            .map(|span| Line::new(span.from, span.to))
    };
    let place: Option<Point> = match fault {
        RouteFault::Overlap(one, other) => centre(one).zip(centre(other)).map(|(one, other)| one.midpoint(other)),
        RouteFault::SpansCross(one, other) => span(one)
            .zip(span(other))
            .and_then(|(one, other)| one.crossing_point(other))
            .or_else(|| centre(one)),
        RouteFault::SpanThrough { pulley, .. } => centre(pulley),
        _ => fault.pulleys().first().and_then(|&index| centre(index)),
    };
    let place = place.filter(|place| place.is_finite())?;
    Some(Mark {
        x: place.x * MM,
        y: place.y * MM,
        sentence: fault.sentence(layout),
        pulleys: fault.pulleys(),
    })
}

fn bounds(drawing: &Drawing) -> Option<Bounds> {
    let rounds = drawing.discs.iter().map(|disc| (disc.x, disc.y, disc.radius));
    let belts = drawing.arcs.iter().map(|arc| (arc.x, arc.y, arc.radius));
    let pivot = drawing.arm.iter().flat_map(|arm| {
        let stop = |angle: f64| (arm.x + arm.length * angle.cos(), arm.y + arm.length * angle.sin(), 0.0);
        [(arm.x, arm.y, 0.0), stop(arm.low), stop(arm.high)]
    });
    rounds
        .chain(belts)
        .chain(pivot)
        .fold(None, |bounds: Option<Bounds>, (x, y, radius)| {
            let own = Bounds {
                left: x - radius,
                bottom: y - radius,
                right: x + radius,
                top: y + radius,
            };
            Some(bounds.map_or(own, |bounds| Bounds {
                left: bounds.left.min(own.left),
                bottom: bounds.bottom.min(own.bottom),
                right: bounds.right.max(own.right),
                top: bounds.top.max(own.top),
            }))
        })
}
