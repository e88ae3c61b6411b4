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
    let count = layout.pulleys.len();
    (0..count)
        .flat_map(|first| (first + 1..count).map(move |second| (first, second)))
        .filter(|&(first, second)| touch(layout, first, second, layout.pulleys[first].centre.point()))
        .map(|(first, second)| RouteFault::Overlap(first, second))
        .collect()
}

/// Whether a pulley, put at a place, touches another one's body.
pub(super) fn touch(layout: &Layout, pulley: usize, other: usize, at: Point) -> bool {
    let (pulley, other) = (&layout.pulleys[pulley], &layout.pulleys[other]);
    at.distance(other.centre.point()) <= pulley.body_radius() + other.body_radius() + CLEAR
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

/// Whether nothing is in the way of one pulley and its two spans, where the belt closes: what has to
/// be looked at again when only that pulley has moved, in time proportional to the pulleys.
pub(super) fn clear_at(trace: &Trace, pulley: usize) -> bool {
    let count = trace.spans.len();
    let own = [(pulley + count - 1) % count, pulley];
    let through =
        (0..count).any(|span| own.iter().any(|&own| through(trace, own, span)) || through(trace, span, pulley));
    let crossed = (0..count).any(|span| {
        own.iter()
            .any(|&own| apart(count, own, span) && cross(trace, own, span))
    });
    !through && !crossed && looped(trace).next().is_none()
}

/// Pulleys whose two own spans cross. Where the belt turns more than once in all, it loops all the
/// way round such a pulley to reach what it passes by.
fn looped(trace: &Trace) -> impl Iterator<Item = usize> + '_ {
    let several = trace.spans.len() > 2;
    (0..trace.spans.len())
        .filter(move |&pulley| several && trace.wraps[pulley] > core::f64::consts::PI)
        .filter(|&pulley| cross(trace, (pulley + trace.spans.len() - 1) % trace.spans.len(), pulley))
}

/// Spans that run through a pulley they neither leave nor meet.
fn runs_through(trace: &Trace) -> impl Iterator<Item = RouteFault> + '_ {
    let count = trace.spans.len();
    (0..count)
        .flat_map(move |span| (0..count).map(move |pulley| (span, pulley)))
        .filter(|&(span, pulley)| through(trace, span, pulley))
        .map(|(span, pulley)| RouteFault::SpanThrough { span, pulley })
}

/// Whether a span runs through a pulley it neither leaves nor meets.
fn through(trace: &Trace, span: usize, pulley: usize) -> bool {
    let circle = trace.circles[pulley];
    pulley != span
        && pulley != (span + 1) % trace.spans.len()
        && distance(trace.spans[span], circle.centre) < circle.radius.abs() - CLEAR
}

/// Pairs of spans without a common pulley that cross, and the two spans of a two-pulley drive.
fn crossed(trace: &Trace) -> impl Iterator<Item = RouteFault> + '_ {
    let count = trace.spans.len();
    (0..count)
        .flat_map(move |first| (first + 1..count).map(move |second| (first, second)))
        .filter(move |&(first, second)| apart(count, first, second))
        .filter(|&(first, second)| cross(trace, first, second))
        .map(|(first, second)| RouteFault::SpansCross(first, second))
}

/// Whether two spans of a drive of so many pulleys are looked at for a crossing.
fn apart(count: usize, one: usize, other: usize) -> bool {
    let steps = one.abs_diff(other);
    steps > 0 && (count == 2 || (steps > 1 && steps < count - 1))
}

/// The pulley with the widest wrap: the one a belt that turns too often goes round for nothing.
fn widest_wrap(trace: &Trace) -> Option<usize> {
    (0..trace.wraps.len()).max_by(|&one, &other| trace.wraps[one].total_cmp(&trace.wraps[other]))
}

/// Whether two spans have a point in common.
fn cross(trace: &Trace, one: usize, other: usize) -> bool {
    let (one, other) = (trace.spans[one], trace.spans[other]);
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
