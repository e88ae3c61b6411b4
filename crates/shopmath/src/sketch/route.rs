//! The belt's route to scale: pulleys, belt with its direction, wraps and spans, the tensioner's
//! arm and sweep, and the places where something is wrong.
//!
//! A [`Frame`] ties the drawing to the drive's millimetres both ways, so that a pulley can be
//! dragged: it is kept while a finger is down, or the drawing would run away under it.

use super::board::{Block, Board, half, short};
use super::{Anchor, Point, Role, Shape, Sketch, WIDTH};
use crate::bound::between;
use crate::drive::bench::drawing::{Arc, ArmShape, Disc, Drawing, Straight};
use crate::drive::pulley::Side;
use crate::quantity::print::rounded;
use core::f64::consts::TAU;

const MARGIN: f64 = 30.0;
const TALLEST: f64 = 400.0;
/// The smallest touch target, in sketch units across a phone.
const FINGER: f64 = 28.0;
/// How far a finger may slip, in sketch units, before the pulley comes along.
const SLACK: f64 = 6.0;
/// Radius of the sign where something is wrong.
const SIGN: f64 = 12.0;
/// How far an arrow on the belt stands out on either side.
const ARROW: f64 = 7.0;
/// How far off its rim the ring round a chosen pulley is.
const RING: f64 = 5.0;
/// Points along a span that words keep clear of.
const STEPS: i32 = 30;
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
    ///
    /// ```
    /// use shopmath::{drive::bench::{DriveText, assess, drawing::Drawing, resolve}, sketch::route::Frame};
    /// assert!(Frame::of(&assess(resolve(&DriveText::demo())).drawing).is_some());
    /// assert_eq!(Frame::of(&Drawing::default()), None);
    /// ```
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
    ///
    /// ```
    /// use shopmath::{drive::bench::{DriveText, assess, resolve}, sketch::{WIDTH, route::Frame}};
    /// let drawing = assess(resolve(&DriveText::demo())).drawing;
    /// let frame = Frame::of(&drawing).unwrap();
    /// let ([across, down], disc) = (frame.grips(&drawing)[0].centre, &drawing.discs[0]);
    /// let [x, y] = frame.under(2.0 * across, 2.0 * down, 2.0 * WIDTH);
    /// assert!((x - disc.x).abs() < 0.06 && (y - disc.y).abs() < 0.06); // mm
    /// ```
    #[must_use]
    pub fn under(&self, across: f64, down: f64, wide: f64) -> Point {
        let scale = WIDTH / wide.max(1.0);
        let x = self.left + (across * scale - MARGIN) / self.factor;
        let y = self.top - (down * scale - MARGIN) / self.factor;
        [(x * 10.0).round() / 10.0, (y * 10.0).round() / 10.0]
    }

    /// Where fingers take hold of the pulleys.
    ///
    /// ```
    /// use shopmath::{drive::bench::{DriveText, assess, resolve}, sketch::route::Frame};
    /// let drawing = assess(resolve(&DriveText::demo())).drawing;
    /// let grips = Frame::of(&drawing).unwrap().grips(&drawing);
    /// assert_eq!(grips.len(), drawing.discs.len());
    /// assert!(grips.iter().all(|grip| grip.radius >= 28.0)); // sketch units, of which WIDTH is 360
    /// ```
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

/// A pulley under a finger. It keeps its distance to the finger, and stays where it is until the
/// finger has clearly moved, so that a tap only chooses it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drag {
    /// The pulley, from 0.
    pub pulley: usize,
    /// The frame while the finger is down.
    pub frame: Frame,
    centre: Point,
    down: Point,
    loose: bool,
}

impl Drag {
    /// Takes hold of a pulley at a point of the screen, as [`Frame::under`] has it; none where
    /// there is no such pulley.
    ///
    /// ```
    /// use shopmath::{drive::bench::{DriveText, assess, resolve}, sketch::{WIDTH, route::{Drag, Frame}}};
    /// let drawing = assess(resolve(&DriveText::demo())).drawing;
    /// let frame = Frame::of(&drawing).unwrap();
    /// let hold = |pulley| Drag::take(&drawing, frame, pulley, [180.0, 200.0], WIDTH);
    /// assert_eq!(hold(3).unwrap().pulley, 3);
    /// assert_eq!(hold(drawing.discs.len()), None);
    /// ```
    #[must_use]
    pub fn take(drawing: &Drawing, frame: Frame, pulley: usize, at: Point, wide: f64) -> Option<Self> {
        let disc = drawing.discs.get(pulley)?;
        Some(Self {
            pulley,
            frame,
            centre: [disc.x, disc.y],
            down: frame.under(at[0], at[1], wide),
            loose: false,
        })
    }

    /// The same hold and the pulley's new place, in whole tenths of a millimetre of the drive, once the finger has
    /// moved by more than 6 units of the sketch.
    ///
    /// ```
    /// use shopmath::{drive::bench::{DriveText, assess, resolve}, sketch::{WIDTH, route::{Drag, Frame}}};
    /// let drawing = assess(resolve(&DriveText::demo())).drawing;
    /// let (frame, disc) = (Frame::of(&drawing).unwrap(), &drawing.discs[3]);
    /// let held = Drag::take(&drawing, frame, 3, [180.0, 200.0], WIDTH).unwrap();
    /// assert_eq!(held.to([183.0, 200.0], WIDTH), None); // a tap that slips
    /// assert!(held.to([210.0, 200.0], WIDTH).is_some_and(|(_, [x, y])| x > disc.x && (y - disc.y).abs() < 0.06));
    /// ```
    #[must_use]
    pub fn to(self, at: Point, wide: f64) -> Option<(Self, Point)> {
        let [x, y] = self.frame.under(at[0], at[1], wide);
        let (right, up) = (x - self.down[0], y - self.down[1]);
        let loose = self.loose || right.hypot(up) * self.frame.factor > SLACK;
        let place = [self.centre[0] + right, self.centre[1] + up].map(|value| (value * 10.0).round() / 10.0);
        loose.then_some((Self { loose, ..self }, place))
    }
}

/// The drawing on its frame; `chosen` is the pulley being worked on, from 0. Wraps are written in degrees and
/// spans in millimetres, unless the drawing is stale.
///
/// ```
/// use shopmath::drive::bench::{DriveText, assess, resolve};
/// use shopmath::sketch::{Shape, route::{Frame, route}};
/// let drawing = assess(resolve(&DriveText::demo())).drawing;
/// let sketch = route(&drawing, &Frame::of(&drawing).unwrap(), None);
/// let said = |text| sketch.marks.iter().any(|mark| matches!(&mark.shape, Shape::Words(.., words) if words == text));
/// assert!(said("alternator 176°") && !said("!")); // no fault
/// ```
#[must_use]
pub fn route(drawing: &Drawing, frame: &Frame, chosen: Option<usize>) -> Sketch {
    let mut sketch = Sketch::new("Belt route, to scale, seen from the front".into(), frame.height);
    let mut board = Board::new(frame.height);
    for (index, disc) in drawing.discs.iter().enumerate() {
        pulley(&mut sketch, frame, disc, chosen == Some(index));
        board.ink(rim(frame, disc, disc.radius));
        board.ink(
            inner(frame, disc)
                .into_iter()
                .flat_map(|radius| rim(frame, disc, radius / frame.factor)),
        );
    }
    if let Some(shape) = &drawing.arm {
        arm(&mut sketch, &mut board, frame, shape);
    }
    for arc in &drawing.arcs {
        let points = bend(frame, arc);
        board.ink(points.iter().copied());
        sketch.line(Role::Belt, points);
    }
    for span in &drawing.spans {
        straight(&mut sketch, &mut board, frame, span);
    }
    for mark in &drawing.marks {
        trouble(&mut sketch, &mut board, frame, drawing, [mark.x, mark.y]);
    }
    // What has the least choice of places comes first; a length may stand anywhere along its span.
    for (index, disc) in drawing.discs.iter().enumerate() {
        number(&mut sketch, &mut board, frame, disc, index);
    }
    for (index, disc) in drawing.discs.iter().enumerate() {
        let arc = drawing.arcs.get(index).filter(|_| !drawing.stale);
        let wrap = arc.map(|arc| arc.sweep.abs() * 360.0 / TAU);
        name(&mut sketch, &mut board, frame, disc, index, wrap);
    }
    // On a pulley, a length would be taken for something of the pulley's.
    for disc in &drawing.discs {
        board.keep_off(frame.at(disc.x, disc.y), disc.radius * frame.factor + RING);
    }
    for span in drawing.spans.iter().filter(|_| !drawing.stale) {
        length(&mut sketch, &mut board, frame, span);
    }
    sketch
}

/// The sign at a place where something is wrong; beside a pulley's number, not on it.
fn trouble(sketch: &mut Sketch, board: &mut Board, frame: &Frame, drawing: &Drawing, [x, y]: Point) {
    let on = drawing
        .discs
        .iter()
        .find(|disc| (disc.x - x).hypot(disc.y - y) * frame.factor < SIGN);
    let [x, y] = frame.at(x, y);
    let aside = on.map_or(0.0, |disc| (disc.radius * frame.factor).max(SIGN) * 0.8 + 6.0);
    let at = [
        between(x + aside, SIGN, WIDTH - SIGN),
        between(y - aside, SIGN, frame.height - SIGN),
    ];
    board.take(Block::round(at, SIGN));
    sketch.draw(Role::Trouble, Shape::Circle(at, SIGN));
    sketch.words([at[0], at[1] + 5.0], Anchor::Middle, "!");
}

/// The second rim of a ribbed pulley, on the sketch.
fn inner(frame: &Frame, disc: &Disc) -> Option<f64> {
    (disc.side == Side::Rib).then(|| (disc.radius * frame.factor - 3.5).max(1.0))
}

/// Points on a pulley's rim, for words to keep clear of.
fn rim(frame: &Frame, disc: &Disc, radius: f64) -> Vec<Point> {
    let whole = Arc {
        x: disc.x,
        y: disc.y,
        radius,
        start: 0.0,
        sweep: TAU,
    };
    bend(frame, &whole)
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
    if let Some(inner) = inner(frame, disc) {
        sketch.draw(Role::Ribbed, Shape::Circle(centre, inner));
    }
    if chosen {
        sketch.draw(Role::Target, Shape::Circle(centre, radius + RING));
    }
    if disc.faulty {
        sketch.draw(Role::Trouble, Shape::Circle(centre, radius + 2.0));
    }
}

/// Whether a pulley has room for its number.
fn has_room(frame: &Frame, disc: &Disc) -> bool {
    disc.radius * frame.factor > 10.0
}

/// The pulley's number on it, where it has room.
fn number(sketch: &mut Sketch, board: &mut Board, frame: &Frame, disc: &Disc, index: usize) {
    if has_room(frame, disc) {
        let [x, y] = frame.at(disc.x, disc.y);
        let (at, words) = ([x, y + 5.0], (index + 1).to_string());
        board.take(Block::of(&words, at));
        sketch.words(at, Anchor::Middle, words);
    }
}

/// The pulley's name with the wrap, under its number or round it.
fn name(sketch: &mut Sketch, board: &mut Board, frame: &Frame, disc: &Disc, index: usize, wrap: Option<f64>) {
    let ([x, y], radius) = (frame.at(disc.x, disc.y), disc.radius * frame.factor);
    let degrees = wrap
        .map(|wrap| format!(" {}°", rounded(wrap.round(), 1.0)))
        .unwrap_or_default();
    let mut words = format!("{}{degrees}", short(&disc.name));
    if !has_room(frame, disc) {
        words = format!("{} {words}", index + 1);
    }
    let half = half(&words);
    let (beside, aslant) = (radius + half + 7.0, radius * 0.75 + half);
    let round = [
        [x, y + 22.0],
        [x, y + radius + 18.0],
        [x, y - radius - 9.0],
        [x + beside, y + 5.0],
        [x - beside, y + 5.0],
        [x + aslant, y + radius + 10.0],
        [x - aslant, y + radius + 10.0],
        [x + aslant, y - radius - 1.0],
        [x - aslant, y - radius - 1.0],
        // Past a belt that runs by.
        [x, y + radius + 36.0],
        [x, y - radius - 27.0],
        [x, y + radius + 52.0],
        [x, y - radius - 43.0],
    ];
    let first = usize::from(half + 10.0 > radius);
    let at = board.place(&words, round.get(first..).unwrap_or_default());
    sketch.words(at, Anchor::Middle, words);
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

/// Both ends of a span on the sketch, and its length there.
fn ends(frame: &Frame, span: &Straight) -> (Point, Point, f64) {
    let (from, to) = (frame.at(span.x1, span.y1), frame.at(span.x2, span.y2));
    (from, to, (to[0] - from[0]).hypot(to[1] - from[1]))
}

/// The point a share of the way along a line.
fn along(from: Point, to: Point, share: f64) -> Point {
    [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
}

/// A span with an arrow the way it runs.
fn straight(sketch: &mut Sketch, board: &mut Board, frame: &Frame, span: &Straight) {
    let (from, to, shown) = ends(frame, span);
    sketch.line(if span.faulty { Role::Trouble } else { Role::Belt }, [from, to]);
    board.ink((0..=STEPS).map(|step| along(from, to, f64::from(step) / f64::from(STEPS))));
    if shown > 24.0 {
        let (sin, cos) = span.direction.sin_cos();
        let [x, y] = along(from, to, 0.5);
        let tip = [x + 9.0 * cos, y - 9.0 * sin];
        let wing = |side: f64| [x - 6.0 * cos + side * 6.0 * sin, y + 6.0 * sin + side * 6.0 * cos];
        sketch.area(Role::Target, [tip, wing(1.0), wing(-1.0)]);
        board.take(Block::round([x, y], ARROW));
    }
}

/// A span's length beside it.
fn length(sketch: &mut Sketch, board: &mut Board, frame: &Frame, span: &Straight) {
    let (from, to, shown) = ends(frame, span);
    if shown < 40.0 {
        return;
    }
    let long = (span.x2 - span.x1).hypot(span.y2 - span.y1);
    let words = rounded(long.round(), 1.0);
    let (sin, cos) = span.direction.sin_cos();
    let off = half(&words) * sin.abs() + 9.0 * cos.abs() + ARROW;
    // Beside the middle of the span, else further along it, else further from it.
    let places: Vec<Point> = [off, off + 12.0, off + 24.0]
        .into_iter()
        .flat_map(|off| [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95].map(|share| (off, along(from, to, share))))
        .flat_map(|(off, [x, y])| {
            [
                [x - off * sin, y - off * cos + 4.0],
                [x + off * sin, y + off * cos + 4.0],
            ]
        })
        .collect();
    let at = board.place(&words, &places);
    sketch.words(at, Anchor::Middle, words);
}

/// The arm as drawn, and the stops of its sweep.
fn arm(sketch: &mut Sketch, board: &mut Board, frame: &Frame, arm: &ArmShape) {
    let pivot = frame.at(arm.x, arm.y);
    let end = |angle: f64| frame.at(arm.x + arm.length * angle.cos(), arm.y + arm.length * angle.sin());
    sketch.line(Role::Arm, [pivot, end(arm.drawn)]);
    board.take(Block::round(pivot, 6.0));
    // It is drawn thick.
    let (sin, cos) = arm.drawn.sin_cos();
    for aside in [-4.0, 4.0] {
        let [from, to] = [pivot, end(arm.drawn)].map(|[x, y]| [x + aside * sin, y + aside * cos]);
        board.ink((0..=STEPS).map(|step| along(from, to, f64::from(step) / f64::from(STEPS))));
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drive::bench::entry::PulleyEntry;
    use crate::drive::bench::{Bench, DriveText, assess, resolve};

    fn drawn(pulleys: &str) -> Drawing {
        let mut texts = DriveText::demo();
        texts.set("pulleys", pulleys);
        assess(resolve(&texts)).drawing
    }

    fn blocks(drawing: &Drawing) -> Vec<(String, Block)> {
        let sketch = route(drawing, &Frame::of(drawing).unwrap(), None);
        let words = sketch.marks.into_iter().filter_map(|mark| match mark.shape {
            Shape::Words(at, Anchor::Middle, words) => Some((words.clone(), Block::of(&words, at))),
            _ => None,
        });
        words.collect()
    }

    #[test]
    fn the_words_of_the_demo_keep_clear_of_each_other_and_the_edges() {
        let drawing = assess(resolve(&DriveText::demo())).drawing;
        let blocks = blocks(&drawing);
        // Six numbers, six names, and the lengths of the spans long enough for one.
        assert!(blocks.len() > 14, "{blocks:?}");
        let height = Frame::of(&drawing).unwrap().height;
        for (index, (words, block)) in blocks.iter().enumerate() {
            for (other_words, other) in blocks.iter().skip(index + 1) {
                assert!(block.shared(other) < 1.0, "{words} on {other_words}: {blocks:?}");
            }
            assert!(block.within(height), "{words} is cut off");
        }
    }

    #[test]
    fn the_lengths_of_the_demo_stand_on_no_pulley_and_not_on_the_belt() {
        let drawing = assess(resolve(&DriveText::demo())).drawing;
        let frame = Frame::of(&drawing).unwrap();
        let blocks = blocks(&drawing);
        let lengths = drawing.spans.iter().map(|span| {
            let long = (span.x2 - span.x1).hypot(span.y2 - span.y1);
            rounded(long.round(), 1.0)
        });
        for words in lengths {
            let (_, block) = blocks.iter().find(|(known, _)| *known == words).unwrap();
            for disc in &drawing.discs {
                let (centre, radius) = (frame.at(disc.x, disc.y), disc.radius * frame.factor);
                assert!(block.off(centre) >= radius, "{words} on {}", disc.name);
            }
            for span in &drawing.spans {
                let (from, to, _) = ends(&frame, span);
                let nearest = (0..=200).map(|step| block.off(along(from, to, f64::from(step) / 200.0)));
                assert!(nearest.fold(f64::INFINITY, f64::min) > 0.5, "{words} on the belt");
            }
        }
    }

    #[test]
    fn a_drive_drawn_as_it_was_shows_no_figures() {
        let words = |bench: Bench| -> String {
            let blocks = blocks(&assess(bench).drawing);
            blocks.iter().map(|(words, _)| format!("{words}\n")).collect()
        };
        let (whole, stale) = (
            resolve(&DriveText::demo()),
            resolve(&DriveText::demo()).without(2, PulleyEntry::Diameter),
        );
        assert!(words(whole).contains("alternator 176°\n"));
        let stale = words(stale);
        assert!(
            stale.contains("alternator\n") && !stale.contains('°') && !stale.contains("251"),
            "{stale}"
        );
    }

    #[test]
    fn a_name_at_the_edge_or_without_end_stays_inside() {
        let long = "a name that does not end before the paper does";
        let drawing = drawn(&format!("{long}:rib:0,0:60;second:rib:900,20:50;third:rib:420,-800:50"));
        let height = Frame::of(&drawing).unwrap().height;
        for (words, block) in blocks(&drawing) {
            assert!(block.within(height), "{words} is cut off");
        }
    }

    #[test]
    fn a_tap_leaves_a_pulley_where_it_is_and_a_drag_keeps_its_distance() {
        let drawing = assess(resolve(&DriveText::demo())).drawing;
        let frame = Frame::of(&drawing).unwrap();
        let centre = frame.grips(&drawing)[3].centre;
        let (down, wide) = ([centre[0] + 8.0, centre[1] - 6.0], WIDTH);
        let held = Drag::take(&drawing, frame, 3, down, wide).unwrap();
        assert_eq!(held.to([down[0] + 3.0, down[1] + 2.0], wide), None);
        let (held, place) = held.to([down[0] + 30.0, down[1]], wide).unwrap();
        let disc = &drawing.discs[3];
        assert!((place[0] - disc.x - 30.0 / frame.factor).abs() < 0.2 && (place[1] - disc.y).abs() < 0.2);
        // Once it has come along it also goes back.
        let (_, back) = held.to(down, wide).unwrap();
        assert!((back[0] - disc.x).abs() < 0.06 && (back[1] - disc.y).abs() < 0.06);
        assert_eq!(Drag::take(&drawing, frame, 6, down, wide), None);
    }

    #[test]
    fn each_fault_has_its_sign_and_its_pulley_a_ring() {
        let drawing = drawn("crank:rib:0,0:156;small:rib:240,78:40");
        let frame = Frame::of(&drawing).unwrap();
        let sketch = route(&drawing, &frame, None);
        let troubles = sketch.marks.iter().filter(|mark| mark.role == Role::Trouble).count();
        assert_eq!(troubles, 2);
        let signs = blocks(&drawing).iter().filter(|(words, _)| words == "!").count();
        assert_eq!(signs, 1);
    }
}
