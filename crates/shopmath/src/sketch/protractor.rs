//! A protractor for the angle after the torque: hex flats of 60° round it, 12-point clicks of 30°
//! on its rim, the angle drawn clockwise from the top as one turns a wrench.

use super::{Anchor, Point, Role, Shape, Sketch, WIDTH};
use crate::bound::between;
use core::f64::consts::TAU;
use uom::si::f64::Angle;

const CENTRE: Point = [WIDTH / 2.0, 130.0];
const RIM: f64 = 96.0;
const HEIGHT: f64 = 256.0;
/// Corners used for a full turn of the sector.
const FINE: f64 = 72.0;

/// The protractor for a range of angles from `low` to `high`, zero or more, the same for a single one.
/// Full turns are counted in its title and drawn as a whole circle.
///
/// ```
/// use shopmath::{quantity::exact::angle::Degree, sketch::{Shape, protractor::protractor}};
/// let quarter = uom::si::f64::Angle::new::<Degree>(90.0);
/// let hand = protractor(quarter, quarter).marks.pop().unwrap();
/// let Shape::Line(ends) = hand.shape else { panic!("no line") };
/// assert!(ends[1][0] > ends[0][0] && (ends[1][1] - ends[0][1]).abs() < 1e-9); // level, to the right
/// ```
#[must_use]
pub fn protractor(low: Angle, high: Angle) -> Sketch {
    let title = if high.value > TAU {
        "Angle to turn, more than a full turn"
    } else {
        "Angle to turn, clockwise from the top"
    };
    let mut sketch = Sketch::new(title.into(), HEIGHT);
    sketch.area(Role::Band, sector(0.0, high.value.min(TAU)));
    if low.value < high.value {
        sketch.line(Role::Middle, [CENTRE, at(low.value, RIM)]);
    }
    sketch.area(
        Role::Bolt,
        (0..6)
            .map(|corner| at(f64::from(corner) * TAU / 6.0 + TAU / 12.0, 40.0))
            .collect::<Vec<_>>(),
    );
    for click in 0..12 {
        let angle = f64::from(click) * TAU / 12.0;
        let flat = click % 2 == 0;
        sketch.line(
            Role::Frame,
            [at(angle, RIM), at(angle, RIM + if flat { 12.0 } else { 7.0 })],
        );
        if flat {
            let (anchor, reach) = match click {
                0 | 6 => (Anchor::Middle, RIM + 24.0),
                1..6 => (Anchor::Start, RIM + 18.0),
                _ => (Anchor::End, RIM + 18.0),
            };
            let [x, y] = at(angle, reach);
            sketch.words([x, y + 5.0], anchor, format!("{}°", click * 30));
        }
    }
    sketch.draw(Role::Frame, Shape::Circle(CENTRE, RIM));
    sketch.line(Role::Frame, [CENTRE, at(0.0, RIM)]);
    sketch.line(Role::Target, [CENTRE, at(high.value, RIM + 4.0)]);
    sketch
}

/// The point at an angle clockwise from the top.
fn at(angle: f64, radius: f64) -> Point {
    [CENTRE[0] + radius * angle.sin(), CENTRE[1] - radius * angle.cos()]
}

/// A sector of the disc inside the rim.
fn sector(from: f64, to: f64) -> Vec<Point> {
    #[allow(clippy::cast_possible_truncation)] // at most FINE steps
    let steps = between(((to - from) / TAU * FINE).ceil(), 1.0, FINE) as i32;
    let rim = (0..=steps).map(|step| at(from + (to - from) * f64::from(step) / f64::from(steps), RIM));
    core::iter::once(CENTRE).chain(rim).collect()
}
