//! Whether a traced route is one a belt can take: nothing overlaps, nothing crosses, every pulley
//! is touched.
//!
//! Every pair is looked at: at 50 pulleys that is a few thousand cheap tests.

use super::fault::RouteFault;
use super::layout::Layout;
use super::tangent::Span;
use super::trace::Trace;
use crate::bound::between;
use kurbo::Point;

/// Contact closer than this counts as clear, metre: a nanometre, against rounding.
const CLEAR: f64 = 1e-9;

/// Every pair of pulleys whose bodies touch.
pub(super) fn overlaps(layout: &Layout) -> Vec<RouteFault> {
    let mut faults = Vec::new();
    for (first, one) in layout.pulleys.iter().enumerate() {
        for (offset, other) in layout.pulleys[first + 1..].iter().enumerate() {
            let apart = one.centre.point().distance(other.centre.point());
            if apart <= one.body_radius() + other.body_radius() + CLEAR {
                faults.push(RouteFault::Overlap(first, first + 1 + offset));
            }
        }
    }
    faults
}

/// What keeps a belt from taking the route, the most telling first; empty for a valid one.
pub(super) fn check(trace: &Trace) -> Vec<RouteFault> {
    let mut faults: Vec<RouteFault> = trace.grazed().map(RouteFault::Missed).collect();
    let turns_once = trace.turns_once();
    if !turns_once {
        faults.extend(looped(trace).map(RouteFault::Missed));
    }
    faults.extend(runs_through(trace));
    faults.extend(crossed(trace));
    if turns_once {
        let before = |pulley: usize| (pulley + trace.spans.len() - 1) % trace.spans.len();
        faults.extend(looped(trace).map(|pulley| RouteFault::SpansCross(before(pulley), pulley)));
    }
    if faults.is_empty() && !turns_once {
        faults.extend(widest_wrap(trace).map(RouteFault::Missed));
    }
    faults
}

/// Pulleys whose two own spans cross. Where the belt turns more than once in all, it loops all the
/// way round such a pulley to reach what it passes by.
fn looped(trace: &Trace) -> impl Iterator<Item = usize> + '_ {
    let several = trace.spans.len() > 2;
    (0..trace.spans.len())
        .filter(move |&pulley| several && trace.wraps[pulley] > core::f64::consts::PI)
        .filter(|&pulley| cross(trace.arriving(pulley), trace.spans[pulley]))
}

/// Spans that run through a pulley they neither leave nor meet.
fn runs_through(trace: &Trace) -> impl Iterator<Item = RouteFault> + '_ {
    let count = trace.spans.len();
    let strangers = move |span: usize| (0..count).filter(move |&pulley| pulley != span && pulley != (span + 1) % count);
    (0..count)
        .flat_map(move |span| strangers(span).map(move |pulley| (span, pulley)))
        .filter(|&(span, pulley)| {
            let circle = trace.circles[pulley];
            distance(trace.spans[span], circle.centre) < circle.radius.abs() - CLEAR
        })
        .map(|(span, pulley)| RouteFault::SpanThrough { span, pulley })
}

/// Pairs of spans without a common pulley that cross, and the two spans of a two-pulley drive.
fn crossed(trace: &Trace) -> impl Iterator<Item = RouteFault> + '_ {
    let count = trace.spans.len();
    (0..count)
        .flat_map(move |first| (first + 1..count).map(move |second| (first, second)))
        .filter(move |&(first, second)| count == 2 || (second - first > 1 && second - first < count - 1))
        .filter(|&(first, second)| cross(trace.spans[first], trace.spans[second]))
        .map(|(first, second)| RouteFault::SpansCross(first, second))
}

/// The pulley with the widest wrap: the one a belt that turns too often goes round for nothing.
fn widest_wrap(trace: &Trace) -> Option<usize> {
    (0..trace.wraps.len()).max_by(|&one, &other| trace.wraps[one].total_cmp(&trace.wraps[other]))
}

/// Whether two spans have a point in common.
fn cross(one: Span, other: Span) -> bool {
    let side = |span: Span, point: Point| span.along.cross(point - span.from);
    let splits = |span: Span, by: Span| {
        let (start, end) = (side(by, span.from), side(by, span.to));
        (start > 0.0) != (end > 0.0)
    };
    splits(one, other) && splits(other, one)
}

/// The distance of a point from a span.
fn distance(span: Span, point: Point) -> f64 {
    let reach = between(span.along.dot(point - span.from), 0.0, span.length);
    point.distance(span.from + reach * span.along)
}
