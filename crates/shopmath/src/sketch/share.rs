//! The verdict's range on a bar: from nothing past yield, with the band where the clamp load lies.

use super::{Anchor, Role, Sketch, WIDTH};
use crate::fastener::bolt::Verdict;

const HEIGHT: f64 = 58.0;
const TOP: f64 = 22.0;
const BOTTOM: f64 = 44.0;
/// The bar goes this far past yield at least.
const REACH: f64 = 1.25;
/// Nearer to the left end than this, the word at yield does not stand over its middle, or leaves no room
/// for the 0.
const WORD: f64 = 24.0;
const ROOM: f64 = 44.0;

/// The bar of a verdict. It goes from 0 to 125 % of yield, or to 105 % of the top of the range where that is
/// more.
///
/// ```
/// use shopmath::{fastener::bolt::{BoltText, assess, resolve}, sketch::{Role, Shape, share::share}};
/// let mut bolt = BoltText::default();
/// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")] { bolt.set(key, typed); }
/// let sketch = share(&assess(&resolve(&bolt)).verdict.unwrap());
/// let yields = sketch.marks.iter().find(|mark| mark.role == Role::Yield).unwrap();
/// assert!(matches!(&yields.shape, Shape::Line(ends) if ends[0][0] == 288.0)); // 360 units are 125 % of yield
/// ```
#[must_use]
pub fn share(verdict: &Verdict) -> Sketch {
    let (low, mid, high) = (verdict.low.value, verdict.mid.value, verdict.high.value);
    let full = REACH.max(high * 1.05);
    let x = |share: f64| share / full * WIDTH;
    let mut sketch = Sketch::new(
        "Share of yield: low, middle and high on a bar with yield marked".into(),
        HEIGHT,
    );
    sketch.rectangle(Role::Frame, [0.0, TOP], [WIDTH, BOTTOM]);
    sketch.rectangle(Role::Band, [x(low), TOP], [x(high).max(x(low) + 2.0), BOTTOM]);
    sketch.line(Role::Middle, [[x(mid), TOP - 4.0], [x(mid), BOTTOM + 4.0]]);
    sketch.line(Role::Yield, [[x(1.0), TOP - 8.0], [x(1.0), BOTTOM + 8.0]]);
    let anchor = if x(1.0) < WORD { Anchor::Start } else { Anchor::Middle };
    sketch.words([x(1.0), TOP - 10.0], anchor, "yield");
    if x(1.0) > ROOM {
        sketch.words([0.0, TOP - 10.0], Anchor::Start, "0");
    }
    sketch
}
