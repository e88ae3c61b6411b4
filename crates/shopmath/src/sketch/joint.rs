//! The joint in section, to scale: head, shank, threads one can count, the part clamped, and the
//! nut or the block with the hole.

use super::{Anchor, Point, Role, Sketch, WIDTH};
use crate::bound::between;
use crate::fastener::bolt::JointDrawing;
use crate::quantity::print::rounded;

const TOP: f64 = 10.0;
const TALLEST: f64 = 330.0;
/// Where no grip is given, this many diameters are drawn and called so.
const ASSUMED_GRIP: f64 = 1.5;
/// Where no engagement is given in a tapped hole, this many diameters.
const ASSUMED_ENGAGED: f64 = 1.5;
/// Room at the side for the labels.
const LABELS: f64 = 124.0;

/// The scale of a joint: millimetres to the sketch, the axis left of the labels.
struct Scale {
    axis: f64,
    seat: f64,
    factor: f64,
}

impl Scale {
    /// A point `across` from the axis and `down` from the bearing face, both in millimetres.
    fn at(&self, across: f64, down: f64) -> Point {
        [self.axis + across * self.factor, self.seat + down * self.factor]
    }
}

/// The joint of a drawing, whose lengths are in millimetres. Where no grip or no engagement is given,
/// 1.5 d is drawn for it and called assumed.
///
/// ```
/// use shopmath::{fastener::bolt::{BoltText, assess, resolve}, sketch::joint::joint};
/// let mut bolt = BoltText::default();
/// bolt.set("thread", "M10x1.5");
/// bolt.set("engaged", "15 mm");
/// let sketch = joint(&assess(&resolve(&bolt)).drawing.unwrap());
/// assert_eq!(sketch.title, "Joint in section, to scale: 10 mm thread, 10 threads engaged");
/// ```
#[must_use]
pub fn joint(drawing: &JointDrawing) -> Sketch {
    let grip = drawing.grip.unwrap_or(ASSUMED_GRIP * drawing.diameter);
    let engaged = drawing.engaged.unwrap_or(ASSUMED_ENGAGED * drawing.diameter);
    let widest = 3.0 * drawing.bearing;
    let width = between(drawing.outer.unwrap_or(2.2 * drawing.bearing), drawing.bearing, widest);
    let block = between(drawing.boss.unwrap_or(width), 1.2 * drawing.diameter, widest);
    let below = if drawing.tapped {
        0.6 * drawing.diameter
    } else {
        2.0 * drawing.pitch
    };
    let tall = drawing.head_height + grip + engaged + below;
    let wide = width.max(block).max(drawing.head_width);
    let factor = ((WIDTH - LABELS) / wide).min((TALLEST - 2.0 * TOP) / tall);
    let scale = Scale {
        axis: (WIDTH - LABELS) / 2.0,
        seat: TOP + drawing.head_height * factor,
        factor,
    };
    let mut sketch = Sketch::new(title(drawing, engaged), tall * factor + 2.0 * TOP);

    parts(&mut sketch, &scale, drawing, [grip, engaged, below], [width, block]);
    head(&mut sketch, &scale, drawing);
    body(&mut sketch, &scale, drawing, [grip, engaged, below]);
    labels(&mut sketch, &scale, drawing, [grip, engaged]);
    sketch
}

fn title(drawing: &JointDrawing, engaged: f64) -> String {
    format!(
        "Joint in section, to scale: {} mm thread, {} threads engaged",
        rounded(drawing.diameter, 0.0),
        rounded(engaged / drawing.pitch, 0.1)
    )
}

/// Both halves of what lies round the bolt.
fn parts(
    sketch: &mut Sketch,
    scale: &Scale,
    drawing: &JointDrawing,
    [grip, engaged, below]: [f64; 3],
    [width, block]: [f64; 2],
) {
    let half_hole = drawing.hole / 2.0;
    // The crests of the bolt are drawn over it, so that the rest fills the roots as an inner thread.
    let root = drawing.root / 2.0;
    let (holder, depth) = if drawing.tapped {
        (block / 2.0, engaged + below)
    } else {
        (drawing.head_width / 2.0, engaged)
    };
    for side in [-1.0, 1.0] {
        sketch.rectangle(
            Role::Part,
            scale.at(side * half_hole, 0.0),
            scale.at(side * width / 2.0, grip),
        );
        sketch.rectangle(
            Role::Holder,
            scale.at(side * root, grip),
            scale.at(side * holder, grip + depth),
        );
    }
}

fn head(sketch: &mut Sketch, scale: &Scale, drawing: &JointDrawing) {
    let (half, height) = (drawing.head_width / 2.0, drawing.head_height);
    let bevel = 0.12 * height;
    sketch.area(
        Role::Bolt,
        [
            scale.at(-half, 0.0),
            scale.at(-half, bevel - height),
            scale.at(bevel - half, -height),
            scale.at(half - bevel, -height),
            scale.at(half, bevel - height),
            scale.at(half, 0.0),
        ],
    );
    if drawing.bearing > drawing.head_width {
        let half = drawing.bearing / 2.0;
        sketch.rectangle(
            Role::Bolt,
            scale.at(-half, -0.12 * drawing.diameter),
            scale.at(half, 0.0),
        );
    }
}

/// Shank and threads; those that hold are drawn apart from those in the open.
fn body(sketch: &mut Sketch, scale: &Scale, drawing: &JointDrawing, [grip, engaged, below]: [f64; 3]) {
    let half = drawing.diameter / 2.0;
    let shank = drawing.shank.min(grip);
    if shank > 0.0 {
        sketch.rectangle(Role::Bolt, scale.at(-half, 0.0), scale.at(half, shank));
    }
    thread(sketch, scale, drawing, Role::Thread, [shank, grip]);
    thread(sketch, scale, drawing, Role::Engaged, [grip, grip + engaged]);
    let tip = grip + engaged + if drawing.tapped { drawing.pitch } else { below };
    thread(
        sketch,
        scale,
        drawing,
        Role::Thread,
        [grip + engaged, tip.min(grip + engaged + below)],
    );
}

/// A length of thread as the zigzag of its crests and roots, pitch by pitch.
fn thread(sketch: &mut Sketch, scale: &Scale, drawing: &JointDrawing, role: Role, [from, to]: [f64; 2]) {
    let (crest, root) = (drawing.diameter / 2.0, drawing.root / 2.0);
    let step = drawing.pitch / 2.0;
    // Past a few hundred corners no eye counts threads any more.
    if to - from < 1e-9 || (to - from) / step > 400.0 {
        if to > from {
            sketch.rectangle(role, scale.at(-crest, from), scale.at(crest, to));
        }
        return;
    }
    let mut right = Vec::new();
    let mut down = from;
    let mut on_crest = false;
    while down < to {
        right.push((if on_crest { crest } else { root }, down));
        on_crest = !on_crest;
        down += step;
    }
    right.push((root, to));
    let outline = right.iter().map(|&(across, down)| scale.at(across, down));
    let back = right.iter().rev().map(|&(across, down)| scale.at(-across, down));
    sketch.area(role, outline.chain(back).collect::<Vec<_>>());
}

fn labels(sketch: &mut Sketch, scale: &Scale, drawing: &JointDrawing, [grip, engaged]: [f64; 2]) {
    let x = WIDTH - LABELS + 12.0;
    let span = |sketch: &mut Sketch, from: f64, to: f64, words: String| {
        let (top, bottom) = (scale.at(0.0, from)[1], scale.at(0.0, to)[1]);
        sketch.line(
            Role::Frame,
            [
                [x - 6.0, top + 1.0],
                [x, top + 1.0],
                [x, bottom - 1.0],
                [x - 6.0, bottom - 1.0],
            ],
        );
        for (row, line) in words.split('\n').enumerate() {
            let row = u32::try_from(row).map_or(0.0, f64::from);
            sketch.words([x + 6.0, (top + bottom) / 2.0 + 5.0 + row * 17.0], Anchor::Start, line);
        }
    };
    let sure = |given: bool| if given { "" } else { "\nassumed" };
    span(
        sketch,
        0.0,
        grip,
        format!("grip {} mm{}", rounded(grip, 0.1), sure(drawing.grip.is_some())),
    );
    let threads = rounded(engaged / drawing.pitch, 0.1);
    let holder = if drawing.tapped { "" } else { "nut " };
    span(
        sketch,
        grip,
        grip + engaged,
        format!(
            "{threads} threads\n{holder}{} mm{}",
            rounded(engaged, 0.1),
            sure(drawing.engaged.is_some())
        ),
    );
}
