//! The straight span between two neighbouring pulleys.
//!
//! Pulleys are circles of signed radius: positive where the belt turns anticlockwise round them,
//! negative where it turns clockwise. One formula then serves open and crossed-over spans alike.

use kurbo::{Point, Vec2};

/// A pulley as the belt sees it, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Circle {
    /// The centre.
    pub(super) centre: Point,
    /// The radius of the effective line; its sign is the sense the belt turns round it.
    pub(super) radius: f64,
}

/// A span from tangent point to tangent point, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Span {
    /// Where the belt leaves the first pulley.
    pub(super) from: Point,
    /// Where it meets the second.
    pub(super) to: Point,
    /// The direction of travel, a unit vector.
    pub(super) along: Vec2,
    /// Tangent to tangent.
    pub(super) length: f64,
}

/// The span from one pulley to the next: with D the centres' distance and h the difference of the
/// signed radii, its length is √(D² − h²) and its direction the line of centres turned by
/// asin(h/D). `None` when D ≤ |h|, where no line touches both circles in their senses.
pub(super) fn span(first: Circle, second: Circle) -> Option<Span> {
    let centres = second.centre - first.centre;
    let rise = second.radius - first.radius;
    let square = centres.hypot2();
    let length = (square - rise * rise).max(0.0).sqrt();
    if square <= rise * rise || length <= 0.0 {
        return None;
    }
    // The line of centres is length·along + rise·left, with left the normal of along.
    let along = (length * centres + rise * Vec2::new(centres.y, -centres.x)) / square;
    let left = Vec2::new(-along.y, along.x);
    Some(Span {
        from: first.centre - first.radius * left,
        to: second.centre - second.radius * left,
        along,
        length,
    })
}
