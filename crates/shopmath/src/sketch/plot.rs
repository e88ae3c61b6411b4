//! Clamp load and torque against the angle turned: the band that friction and tool leave, the
//! range before and after the angle, and where the bolt yields.

use super::{Anchor, Point, Role, Sketch, WIDTH};
use crate::fastener::bolt::{Plot, PlotPoint};
use crate::quantity::print::rounded;

const LEFT: f64 = 44.0;
const RIGHT: f64 = WIDTH - 12.0;
/// Top and bottom of the two panels.
const CLAMP: [f64; 2] = [26.0, 170.0];
const TORQUE: [f64; 2] = [212.0, 296.0];
const HEIGHT: f64 = 340.0;
/// Labels of angles closer than this would run into one another.
const APART: f64 = 40.0;

/// A panel's scale: value to y.
#[derive(Clone, Copy)]
struct Panel {
    top: f64,
    bottom: f64,
    full: f64,
}

impl Panel {
    fn y(self, value: f64) -> f64 {
        self.bottom - value / self.full * (self.bottom - self.top)
    }
}

/// The plot as a sketch: clamp load in kilonewtons and torque in newton metres against degrees. None where
/// there is nothing to scale by.
///
/// ```
/// use shopmath::{fastener::bolt::{BoltText, assess, resolve}, sketch::{Shape, plot::plot}};
/// let mut bolt = BoltText::default();
/// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("grip", "40 mm"), ("spec", "30 N·m + 90°")] {
///     bolt.set(key, typed);
/// }
/// let sketch = plot(&assess(&resolve(&bolt)).plot.unwrap()).unwrap();
/// assert!(sketch.marks.iter().any(|mark| matches!(&mark.shape, Shape::Words(_, _, words) if words == "90°")));
/// ```
#[must_use]
pub fn plot(plot: &Plot) -> Option<Sketch> {
    let (first, last) = (plot.points.first()?.angle, plot.points.last()?.angle);
    let most = |value: fn(&PlotPoint) -> f64| plot.points.iter().map(value).fold(0.0, f64::max);
    let clamp_full = most(|point| point.clamp_high).max(plot.yield_clamp[2]) * 1.08;
    let torque_full = most(|point| point.torque_high).max(most(|point| point.torque_low)) * 1.08;
    if last <= first || clamp_full <= 0.0 || torque_full <= 0.0 {
        return None;
    }
    let x = |angle: f64| LEFT + (angle - first) / (last - first) * (RIGHT - LEFT);
    let clamp = Panel {
        top: CLAMP[0],
        bottom: CLAMP[1],
        full: clamp_full,
    };
    let torque = Panel {
        top: TORQUE[0],
        bottom: TORQUE[1],
        full: torque_full,
    };
    let mut sketch = Sketch::new(
        "Clamp load and torque against the angle turned after the torque".into(),
        HEIGHT,
    );

    let line = |panel: Panel, value: fn(&PlotPoint) -> f64| -> Vec<Point> {
        plot.points
            .iter()
            .map(|point| [x(point.angle), panel.y(value(point))])
            .collect()
    };
    band(
        &mut sketch,
        line(clamp, |point| point.clamp_low),
        line(clamp, |point| point.clamp_high),
    );
    band(
        &mut sketch,
        line(torque, |point| point.torque_low),
        line(torque, |point| point.torque_high),
    );
    sketch.line(Role::Middle, line(clamp, |point| point.clamp_mid));
    sketch.line(Role::Middle, line(torque, |point| point.torque_mid));
    frame(&mut sketch, clamp, "clamp load, kN", 1e3);
    frame(&mut sketch, torque, "torque, N·m", 1.0);

    let yields = clamp.y(plot.yield_clamp[1]);
    sketch.line(Role::Yield, [[LEFT, yields], [RIGHT, yields]]);
    // Below the line at the left, where every curve still rises from nothing.
    sketch.words([LEFT + 8.0, yields + 17.0], Anchor::Start, "yield");
    for angle in [0.0, plot.spec_angle[1]] {
        bracket(&mut sketch, plot, clamp, angle, x(angle));
    }
    sketch.line(
        Role::Target,
        [
            [x(plot.spec_angle[1]), clamp.bottom],
            [x(plot.spec_angle[1]), torque.bottom],
        ],
    );
    for angle in [0.0, plot.spec_angle[1]]
        .into_iter()
        .filter(|angle| *angle == 0.0 || x(*angle) > x(0.0) + APART)
    {
        sketch.words(
            [x(angle), TORQUE[1] + 18.0],
            Anchor::Middle,
            format!("{}°", rounded(angle.round(), 1.0)),
        );
    }
    sketch.words(
        [(LEFT + RIGHT) / 2.0, HEIGHT - 7.0],
        Anchor::Middle,
        "angle turned after the torque",
    );
    Some(sketch)
}

/// The area between two lines.
fn band(sketch: &mut Sketch, low: Vec<Point>, high: Vec<Point>) {
    let outline: Vec<Point> = low.into_iter().chain(high.into_iter().rev()).collect();
    sketch.area(Role::Band, outline);
}

fn frame(sketch: &mut Sketch, panel: Panel, name: &str, unit: f64) {
    sketch.line(
        Role::Frame,
        [[LEFT, panel.top], [LEFT, panel.bottom], [RIGHT, panel.bottom]],
    );
    sketch.words([LEFT, panel.top - 8.0], Anchor::Start, name);
    let step = tick(panel.full / unit);
    let mut value = step;
    while value * unit < panel.full {
        let y = panel.y(value * unit);
        sketch.line(Role::Frame, [[LEFT - 5.0, y], [LEFT, y]]);
        sketch.words([LEFT - 8.0, y + 5.0], Anchor::End, rounded(value, 0.0));
        value += step;
    }
}

/// A round step that gives two to five ticks.
fn tick(full: f64) -> f64 {
    let decade = 10_f64.powf(full.log10().floor());
    [0.2, 0.5, 1.0, 2.0, 5.0]
        .into_iter()
        .map(|round| round * decade)
        .find(|step| full / step < 5.0)
        .unwrap_or(decade)
}

/// The range of clamp load at an angle, as a bar with ends.
fn bracket(sketch: &mut Sketch, plot: &Plot, panel: Panel, angle: f64, x: f64) {
    let at = |value: fn(&PlotPoint) -> f64| interpolate(&plot.points, angle, value);
    let (low, high) = (
        panel.y(at(|point| point.clamp_low)),
        panel.y(at(|point| point.clamp_high)),
    );
    sketch.line(
        Role::Target,
        [
            [x - 6.0, low],
            [x + 6.0, low],
            [x, low],
            [x, high],
            [x - 6.0, high],
            [x + 6.0, high],
        ],
    );
}

/// A curve's value at an angle, straight between its corners.
fn interpolate(points: &[PlotPoint], angle: f64, value: fn(&PlotPoint) -> f64) -> f64 {
    points
        .windows(2)
        .find_map(|pair| {
            let [one, other] = pair else { return None };
            let span = other.angle - one.angle;
            let share = if span > 0.0 { (angle - one.angle) / span } else { 0.0 };
            (0.0..=1.0)
                .contains(&share)
                .then(|| value(one) + share * (value(other) - value(one)))
        })
        .unwrap_or_default()
}
