//! The route of a belt round its pulleys: spans, wraps, lengths and speeds.
//!
//! The belt is taken as thin and running along the effective line, radii signed by the sense it
//! turns round each pulley (`tangent`). [`solve`] also checks that a belt can take the
//! route (`crossing`).

use super::crossing;
use super::fault::RouteFault;
use super::layout::Layout;
use super::pulley::Side;
use super::si::{in_metres, metres, metres_per_second, radians, ratio};
use super::trace::{Trace, likely_sense};
use crate::quantity::exact::rotation::RadianPerSecond;
use core::f64::consts::TAU;
use kurbo::{Point, Vec2};
use uom::si::f64::{Angle, AngularVelocity, Length, Ratio, Velocity};

/// The way the belt goes round, seen as the drive is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// Against the hands of a clock.
    Anticlockwise,
    /// With the hands of a clock.
    Clockwise,
}

impl Sense {
    /// +1 anticlockwise, −1 clockwise.
    pub(super) fn sign(self) -> f64 {
        match self {
            Self::Anticlockwise => 1.0,
            Self::Clockwise => -1.0,
        }
    }
}

/// A route a belt can take.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// The way it goes round.
    pub sense: Sense,
    /// One leg per pulley, in belt order.
    pub legs: Vec<Leg>,
    /// Length along the effective line: what a belt's name states.
    pub effective_length: Length,
    /// Length along the cords: effective length + 2π·b_e.
    pub pitch_length: Length,
}

/// A pulley and the span from it to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// The side of the belt on the pulley.
    pub side: Side,
    /// The belt's turn round the pulley, 0 to 2π.
    pub wrap: Angle,
    /// Tangent to tangent, from this pulley to the next.
    pub span: Length,
    /// Speed relative to the first pulley; negative where it turns the other way.
    pub speed: Ratio,
    /// Radius of the pitch line.
    pub pitch_radius: Length,
    /// The direction of travel on the span that arrives, a unit vector.
    pub(super) arriving: Vec2,
    /// The direction of travel on the span that leaves.
    pub(super) leaving: Vec2,
    /// Where the belt leaves this pulley, metre.
    pub(super) from: Point,
    /// Where it meets the next, metre.
    pub(super) to: Point,
}

/// Routes a belt round the pulleys in their order, whichever way round that is.
///
/// Answers spans √(D² − (ρi − ρj)²), wraps in each pulley's own sense, L = Σ spans + Σ |ρ|·wrap,
/// pitch length L + 2π·b_e, and speeds from the pitch radii: ribbed (d + 2·b_e)/2, back
/// OD/2 + back face − b_e. Ranges: centres within 100 m, diameters 1 mm–10 m.
///
/// # Errors
/// Every [`RouteFault`] found, the most telling first.
///
/// ```
/// use shopmath::drive::{layout::Layout, profile::Profile, route};
/// use shopmath::drive::text::pulleys;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let layout = Layout {
///     profile: Profile::Pk,
///     back: Length::new::<Millimetre>(2.3),
///     pulleys: pulleys::read("a:rib:0,0:150; b:rib:300,0:60; c:rib:100,250:120").unwrap(),
/// };
/// let route = route::solve(&layout).unwrap();
/// assert!((route.effective_length.get::<Millimetre>() - 1233.51488).abs() < 1e-5);
/// ```
pub fn solve(layout: &Layout) -> Result<Route, Vec<RouteFault>> {
    sound(layout)?;
    trace_valid(layout).map(|trace| Route::of(layout, &trace))
}

/// As [`solve`], of a belt that goes round in one sense only.
///
/// # Errors
/// Every [`RouteFault`] found in that sense.
pub(super) fn solve_in(layout: &Layout, sense: f64) -> Result<Route, Vec<RouteFault>> {
    sound(layout)?;
    traced(layout, sense).map(|trace| Route::of(layout, &trace))
}

/// What keeps the pulleys from carrying a belt, wherever it runs.
fn sound(layout: &Layout) -> Result<(), Vec<RouteFault>> {
    let mut faults = layout.faults();
    if !faults.iter().any(|fault| fault.forbids_tracing()) {
        faults.extend(crossing::overlaps(layout));
    }
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}

/// Only the effective length of a route known to go round in a sense, unchecked beyond closing
/// once: what a search needs at each step, in time proportional to the pulleys. Equations and ranges as
/// of [`solve`].
///
/// # Errors
/// The first [`RouteFault`] met; crossings are not looked for.
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, route::{Sense, effective_length}};
/// use shopmath::quantity::exact::length::Millimetre;
/// let mut texts = DriveText::begin();
/// texts.set("pulleys", "a:rib:0,0:150; b:rib:300,0:60; c:rib:100,250:120");
/// let layout = resolve(&texts).layout.unwrap();
/// let length = effective_length(&layout, Sense::Anticlockwise).unwrap();
/// assert!((length.get::<Millimetre>() - 1233.51488).abs() < 1e-5);
/// assert!(effective_length(&layout, Sense::Clockwise).is_err());
/// ```
pub fn effective_length(layout: &Layout, sense: Sense) -> Result<Length, RouteFault> {
    closing_trace(layout, sense.sign()).map(|trace| metres(trace.length()))
}

/// Whether the pulleys, each by itself, let a route be tried.
pub(super) fn can_be_traced(layout: &Layout) -> bool {
    !layout.faults().into_iter().any(RouteFault::forbids_tracing)
}

/// The trace in a sense, when it closes.
pub(super) fn closing_trace(layout: &Layout, sense: f64) -> Result<Trace, RouteFault> {
    if let Some(fault) = layout.faults().into_iter().find(|fault| fault.forbids_tracing()) {
        return Err(fault);
    }
    let trace = Trace::of(layout, sense)?;
    if trace.closes() {
        Ok(trace)
    } else {
        Err(crossing::check(&trace)
            .first()
            .copied()
            .unwrap_or(RouteFault::Missed(0)))
    }
}

/// A trace without faults, or the faults of the sense that has fewer.
fn trace_valid(layout: &Layout) -> Result<Trace, Vec<RouteFault>> {
    let sense = likely_sense(layout);
    let first = traced(layout, sense);
    let Err(faults) = first else {
        return first;
    };
    match traced(layout, -sense) {
        Ok(trace) => Ok(trace),
        Err(others) if others.len() < faults.len() => Err(others),
        Err(_) => Err(faults),
    }
}

fn traced(layout: &Layout, sense: f64) -> Result<Trace, Vec<RouteFault>> {
    let trace = Trace::of(layout, sense).map_err(|fault| vec![fault])?;
    let faults = crossing::check(&trace);
    if faults.is_empty() { Ok(trace) } else { Err(faults) }
}

/// The likelier trace of a drive that has faults, to be drawn with them; `None` where no line can
/// be drawn at all.
pub(super) fn faulty_trace(layout: &Layout) -> Option<Trace> {
    if layout.faults().iter().any(|fault| fault.forbids_tracing()) {
        return None;
    }
    let sense = likely_sense(layout);
    let (first, second) = (Trace::of(layout, sense).ok(), Trace::of(layout, -sense).ok());
    let count = |trace: &Option<Trace>| trace.as_ref().map_or(usize::MAX, |trace| crossing::check(trace).len());
    if count(&second) < count(&first) { second } else { first }
}

impl RouteFault {
    /// Whether a route cannot even be tried. A pulley below the profile's minimum can be routed.
    fn forbids_tracing(self) -> bool {
        matches!(
            self,
            Self::TooFew(_)
                | Self::TooMany
                | Self::NoneOnRibs
                | Self::BackOutOfRange
                | Self::FarAway(_)
                | Self::NoSize(_)
        )
    }
}

impl Route {
    /// The results of a trace known to be valid.
    pub(super) fn of(layout: &Layout, trace: &Trace) -> Self {
        let differential = layout.profile.line_differential();
        let pitch = |index: usize| layout.pulleys[index].pitch_radius(layout.back, differential);
        let turning = |index: usize| trace.circles[index].radius.signum() * pitch(index);
        let legs = (0..layout.pulleys.len())
            .map(|index| Leg {
                side: layout.pulleys[index].side,
                wrap: radians(trace.wraps[index]),
                span: metres(trace.spans[index].length),
                speed: ratio(turning(0) / turning(index)),
                pitch_radius: metres(pitch(index)),
                arriving: trace.arriving(index).along,
                leaving: trace.spans[index].along,
                from: trace.spans[index].from,
                to: trace.spans[index].to,
            })
            .collect();
        let length = trace.length();
        Self {
            sense: if trace.sense > 0.0 {
                Sense::Anticlockwise
            } else {
                Sense::Clockwise
            },
            legs,
            effective_length: metres(length),
            pitch_length: metres(length + TAU * in_metres(differential)),
        }
    }

    /// The speed of the belt at a speed of the first pulley: v = ω·r, r the pitch radius. Not below zero,
    /// whichever way the pulley turns.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::{rotation::RevolutionPerMinute, speed::MetrePerSecond};
    /// use uom::si::f64::AngularVelocity;
    /// // A crank of 156 mm in grooves, so 80 mm to the pitch line: 500 mm of belt a turn.
    /// let route = resolve(&DriveText::demo()).route.unwrap();
    /// let speed = route.belt_speed(AngularVelocity::new::<RevolutionPerMinute>(2000.0));
    /// assert!((speed.get::<MetrePerSecond>() - 16.755).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn belt_speed(&self, driver: AngularVelocity) -> Velocity {
        let radius = self.legs.first().map_or(0.0, |leg| in_metres(leg.pitch_radius));
        metres_per_second(driver.get::<RadianPerSecond>().abs() * radius)
    }
}
