//! Once round the pulleys in one sense: spans, wraps, and how often the belt turns in all.
//!
//! Takes time in proportion to the number of pulleys. Whether the route is one a belt can take is
//! [`super::crossing`]'s question.

use super::fault::RouteFault;
use super::layout::Layout;
use super::tangent::{Circle, Span, span};
use core::f64::consts::TAU;

/// Within this angle of none, a wrap is a graze.
const GRAZE: f64 = 1e-9;

/// A belt's path round all pulleys, valid or not.
#[derive(Clone, Debug)]
pub(super) struct Trace {
    /// The sense ribbed pulleys turn in: +1 anticlockwise.
    pub(super) sense: f64,
    /// The pulleys.
    pub(super) circles: Vec<Circle>,
    /// The span from each pulley to the next.
    pub(super) spans: Vec<Span>,
    /// The wrap of each pulley in its own sense, radian, from 0 to 2π.
    pub(super) wraps: Vec<f64>,
}

impl Trace {
    /// Goes round once.
    ///
    /// # Errors
    /// [`RouteFault::Overlap`] for the first pair of neighbours no line can touch.
    pub(super) fn of(layout: &Layout, sense: f64) -> Result<Self, RouteFault> {
        Self::around(layout.circles(sense), sense)
    }

    /// Goes once round these circles, whose radii are signed for the sense.
    ///
    /// # Errors
    /// As [`Trace::of`].
    pub(super) fn around(circles: Vec<Circle>, sense: f64) -> Result<Self, RouteFault> {
        let next = |index: usize| (index + 1) % circles.len();
        let spans: Vec<Span> = (0..circles.len())
            .map(|index| span(circles[index], circles[next(index)]).ok_or(RouteFault::Overlap(index, next(index))))
            .collect::<Result<_, _>>()?;
        let wraps = (0..circles.len())
            .map(|index| {
                wrap(
                    spans[(index + spans.len() - 1) % spans.len()],
                    spans[index],
                    circles[index],
                )
            })
            .collect();
        Ok(Self {
            sense,
            circles,
            spans,
            wraps,
        })
    }

    /// The span that arrives at a pulley.
    pub(super) fn arriving(&self, pulley: usize) -> Span {
        self.spans[(pulley + self.spans.len() - 1) % self.spans.len()]
    }

    /// Whether the belt, over all wraps, turns once in the sense of the ribbed pulleys, as a loop
    /// must.
    pub(super) fn turns_once(&self) -> bool {
        let turned: f64 = self
            .circles
            .iter()
            .zip(&self.wraps)
            .map(|(circle, wrap)| circle.radius.signum() * wrap)
            .sum();
        (self.sense * turned / TAU - 1.0).abs() < 0.5
    }

    /// Length along the effective line, metre.
    pub(super) fn length(&self) -> f64 {
        let arcs = self
            .circles
            .iter()
            .zip(&self.wraps)
            .map(|(circle, wrap)| circle.radius.abs() * wrap);
        self.spans.iter().map(|span| span.length).chain(arcs).sum()
    }

    /// Whether the belt goes round once and touches every pulley; spans may still cross.
    pub(super) fn closes(&self) -> bool {
        self.turns_once() && self.wraps.iter().all(|&wrap| wrap > GRAZE)
    }

    /// The pulleys the belt only grazes.
    pub(super) fn grazed(&self) -> impl Iterator<Item = usize> + '_ {
        self.wraps
            .iter()
            .enumerate()
            .filter(|(_, wrap)| **wrap <= GRAZE)
            .map(|(index, _)| index)
    }
}

/// The turn from one span to the next, in the pulley's own sense, from 0 to 2π.
fn wrap(arriving: Span, leaving: Span, circle: Circle) -> f64 {
    let turn = arriving
        .along
        .cross(leaving.along)
        .atan2(arriving.along.dot(leaving.along));
    let own = circle.radius.signum() * turn;
    if own >= 0.0 {
        own
    } else if own > -GRAZE {
        0.0
    } else {
        own + TAU
    }
}

/// The sense in which the centres go round, by the sign of their polygon's area; clockwise, as
/// engines turn seen from the front, where the centres enclose nothing.
pub(super) fn likely_sense(layout: &Layout) -> f64 {
    let count = layout.pulleys.len();
    let area: f64 = (0..count)
        .map(|index| {
            let here = layout.pulleys[index].centre.point().to_vec2();
            here.cross(layout.pulleys[(index + 1) % count].centre.point().to_vec2())
        })
        .sum();
    if area > 1e-12 { 1.0 } else { -1.0 }
}
