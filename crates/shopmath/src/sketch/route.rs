//! The belt's route to scale: pulleys, belt with its direction, wraps and spans, the tensioner's
//! arm and sweep, and the places where something is wrong.
//!
//! A [`Frame`] ties the drawing to the drive's millimetres both ways, so that a pulley can be
//! dragged: it is kept while a finger is down, or the drawing would run away under it.

use super::{Anchor, Point, Role, Shape, Sketch, WIDTH};
use crate::bound::between;
use crate::drive::bench::drawing::{Arc, ArmShape, Disc, Drawing, Straight};
use crate::drive::pulley::Side;
use crate::quantity::print::rounded;
use core::f64::consts::TAU;

const MARGIN: f64 = 26.0;
const TALLEST: f64 = 400.0;
/// The smallest touch target, in sketch units across a phone.
const FINGER: f64 = 28.0;
/// Corners of a full circle of belt.
const FINE: f64 = 60.0;

/// How the drive's millimetres lie on the sketch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    left: f64,
    top: f64,
    factor: f64,
    height: f64,
}

/// A place to put a finger: a pulley's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grip {
    /// The pulley, from 0.
    pub pulley: usize,
    /// Centre on the sketch.
    pub centre: Point,
    /// Radius, wide enough for a finger.
    pub radius: f64,
}

impl Frame {
    /// The frame that shows a whole drawing; none for an empty one.
    #[must_use]
    pub fn of(drawing: &Drawing) -> Option<Self> {
        let bounds = drawing.bounds?;
        let (wide, tall) = (bounds.right - bounds.left, bounds.top - bounds.bottom);
        if !(wide > 0.0 && tall > 0.0) {
            return None;
        }
        let factor = ((WIDTH - 2.0 * MARGIN) / wide).min((TALLEST - 2.0 * MARGIN) / tall);
        let spare = (WIDTH - 2.0 * MARGIN) / factor - wide;
        Some(Self {
            left: bounds.left - spare / 2.0,
            top: bounds.top,
            factor,
            height: tall * factor + 2.0 * MARGIN,
        })
    }

    /// A place of the drive, millimetres with y up, on the sketch.
    fn at(&self, x: f64, y: f64) -> Point {
        [
            MARGIN + (x - self.left) * self.factor,
            MARGIN + (self.top - y) * self.factor,
        ]
    }

    /// The place of the drive, in whole tenths of a millimetre, under a point of the screen:
    /// `across` and `down` from the sketch's corner where the sketch is shown `wide`.
    #[must_use]
    pub fn under(&self, across: f64, down: f64, wide: f64) -> Point {
        let scale = WIDTH / wide.max(1.0);
        let x = self.left + (across * scale - MARGIN) / self.factor;
        let y = self.top - (down * scale - MARGIN) / self.factor;
        [(x * 10.0).round() / 10.0, (y * 10.0).round() / 10.0]
    }

    /// Where fingers take hold of the pulleys.
    #[must_use]
    pub fn grips(&self, drawing: &Drawing) -> Vec<Grip> {
        let grip = |(pulley, disc): (usize, &Disc)| Grip {
            pulley,
            centre: self.at(disc.x, disc.y),
            radius: (disc.radius * self.factor).max(FINGER),
        };
        drawing.discs.iter().enumerate().map(grip).collect()
    }
}

/// The drawing on its frame; `chosen` is the pulley being worked on, from 0.
#[must_use]
pub fn route(drawing: &Drawing, frame: &Frame, chosen: Option<usize>) -> Sketch {
    let mut sketch = Sketch::new("Belt route, to scale, seen from the front".into(), frame.height);
    for (index, disc) in drawing.discs.iter().enumerate() {
        pulley(&mut sketch, frame, disc, chosen == Some(index));
    }
    if let Some(shape) = &drawing.arm {
        arm(&mut sketch, frame, shape);
    }
    for arc in &drawing.arcs {
        sketch.line(Role::Belt, bend(frame, arc));
    }
    for span in &drawing.spans {
        straight(&mut sketch, frame, span);
    }
    for (index, disc) in drawing.discs.iter().enumerate() {
        let wrap = drawing.arcs.get(index).map(|arc| arc.sweep.abs() * 360.0 / TAU);
        name(&mut sketch, frame, disc, index, wrap);
    }
    for mark in &drawing.marks {
        let [x, y] = frame.at(mark.x, mark.y);
        sketch.draw(Role::Trouble, Shape::Circle([x, y], 16.0));
        sketch.words([x, y + 6.0], Anchor::Middle, "!");
    }
    sketch
}

/// A pulley: grooves as a second rim, a flat one broken.
fn pulley(sketch: &mut Sketch, frame: &Frame, disc: &Disc, chosen: bool) {
    let (centre, radius) = (frame.at(disc.x, disc.y), disc.radius * frame.factor);
    let role = if disc.side == Side::Rib {
        Role::Ribbed
    } else {
        Role::Back
    };
    sketch.draw(role, Shape::Circle(centre, radius));
    if disc.side == Side::Rib {
        sketch.draw(Role::Ribbed, Shape::Circle(centre, (radius - 3.5).max(1.0)));
    }
    if chosen {
        sketch.draw(Role::Target, Shape::Circle(centre, radius + 5.0));
    }
    if disc.faulty {
        sketch.draw(Role::Trouble, Shape::Circle(centre, radius + 2.0));
    }
}

fn name(sketch: &mut Sketch, frame: &Frame, disc: &Disc, index: usize, wrap: Option<f64>) {
    let [x, y] = frame.at(disc.x, disc.y);
    // A name wider than its pulley stands below it.
    let inside = disc.radius * frame.factor > 30.0;
    let first = if inside { y - 1.0 } else { y + 5.0 };
    sketch.words([x, first], Anchor::Middle, format!("{}", index + 1));
    let below = if inside {
        y + 15.0
    } else {
        y + disc.radius * frame.factor + 17.0
    };
    let degrees = wrap
        .map(|wrap| format!(" {}°", rounded(wrap.round(), 1.0)))
        .unwrap_or_default();
    sketch.words([x, below], Anchor::Middle, format!("{}{degrees}", disc.name));
}

/// The belt on a pulley, as a line of short chords.
fn bend(frame: &Frame, arc: &Arc) -> Vec<Point> {
    #[allow(clippy::cast_possible_truncation)] // a full turn has FINE steps
    let steps = between((arc.sweep.abs() / TAU * FINE).ceil(), 1.0, 2.0 * FINE) as i32;
    (0..=steps)
        .map(|step| {
            let angle = arc.start + arc.sweep * f64::from(step) / f64::from(steps);
            frame.at(arc.x + arc.radius * angle.cos(), arc.y + arc.radius * angle.sin())
        })
        .collect()
}

/// A span with an arrow the way it runs, and its length.
fn straight(sketch: &mut Sketch, frame: &Frame, span: &Straight) {
    let (from, to) = (frame.at(span.x1, span.y1), frame.at(span.x2, span.y2));
    sketch.line(if span.faulty { Role::Trouble } else { Role::Belt }, [from, to]);
    let (sin, cos) = span.direction.sin_cos();
    let [x, y] = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
    let shown = (to[0] - from[0]).hypot(to[1] - from[1]);
    if shown > 24.0 {
        let tip = [x + 9.0 * cos, y - 9.0 * sin];
        let wing = |side: f64| [x - 6.0 * cos + side * 6.0 * sin, y + 6.0 * sin + side * 6.0 * cos];
        sketch.area(Role::Target, [tip, wing(1.0), wing(-1.0)]);
    }
    if shown > 60.0 {
        let length = (span.x2 - span.x1).hypot(span.y2 - span.y1);
        sketch.words(
            [x - 16.0 * sin, y - 16.0 * cos + 5.0],
            Anchor::Middle,
            rounded(length.round(), 1.0),
        );
    }
}

/// The arm as drawn, and the stops of its sweep.
fn arm(sketch: &mut Sketch, frame: &Frame, arm: &ArmShape) {
    let pivot = frame.at(arm.x, arm.y);
    let end = |angle: f64| frame.at(arm.x + arm.length * angle.cos(), arm.y + arm.length * angle.sin());
    sketch.line(Role::Arm, [pivot, end(arm.drawn)]);
    sketch.draw(Role::Arm, Shape::Circle(pivot, 5.0));
    for stop in [arm.low, arm.high] {
        sketch.line(Role::Frame, [pivot, end(stop)]);
    }
    let sweep = Arc {
        x: arm.x,
        y: arm.y,
        radius: arm.length,
        start: arm.low,
        sweep: arm.high - arm.low,
    };
    sketch.line(Role::Frame, bend(frame, &sweep));
}
