//! Words on a drawing, kept inside it and clear of its lines and of each other.

use super::{Point, WIDTH};
use crate::bound::between;

/// The width of a letter, a little above the usual one.
const LETTER: f64 = 8.8;
/// How far letters stand above their line, and hang below it.
const ABOVE: f64 = 12.0;
const BELOW: f64 = 4.0;
const EDGE: f64 = 2.0;
/// How near the upper edge words stand at most: on a narrow phone they are larger beside the drawing.
const HIGHEST: f64 = 19.0;
/// Letters shown of a name.
const LONGEST: usize = 17;

/// What is drawn so far.
pub(super) struct Board {
    height: f64,
    ink: Vec<Point>,
    taken: Vec<Block>,
    rounds: Vec<(Point, f64)>,
}

/// Where words or a sign stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Block {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

/// Half the width of words.
pub(super) fn half(words: &str) -> f64 {
    words.chars().map(|_| LETTER / 2.0).sum()
}

/// A name that is not endless.
pub(super) fn short(name: &str) -> String {
    if name.chars().count() > LONGEST {
        name.chars().take(LONGEST - 1).chain(['…']).collect()
    } else {
        name.to_owned()
    }
}

impl Block {
    /// The block of words whose middle stands at a point, on their line.
    pub(super) fn of(words: &str, [x, y]: Point) -> Self {
        let half = half(words);
        Self {
            left: x - half,
            top: y - ABOVE,
            right: x + half,
            bottom: y + BELOW,
        }
    }

    /// The block round a circle.
    pub(super) fn round([x, y]: Point, radius: f64) -> Self {
        Self {
            left: x - radius,
            top: y - radius,
            right: x + radius,
            bottom: y + radius,
        }
    }

    /// The area shared with another.
    pub(super) fn shared(&self, other: &Self) -> f64 {
        let wide = self.right.min(other.right) - self.left.max(other.left);
        let tall = self.bottom.min(other.bottom) - self.top.max(other.top);
        wide.max(0.0) * tall.max(0.0)
    }

    /// Whether all of it is on a sketch of this height.
    #[cfg(test)]
    pub(super) fn within(&self, height: f64) -> bool {
        self.left >= 0.0 && self.top >= 0.0 && self.right <= WIDTH && self.bottom <= height
    }

    /// How far a point is off.
    pub(super) fn off(&self, [x, y]: Point) -> f64 {
        (between(x, self.left, self.right) - x).hypot(between(y, self.top, self.bottom) - y)
    }

    fn holds(&self, [x, y]: Point) -> bool {
        x > self.left && x < self.right && y > self.top && y < self.bottom
    }
}

impl Board {
    pub(super) fn new(height: f64) -> Self {
        Self {
            height,
            ink: Vec::new(),
            taken: Vec::new(),
            rounds: Vec::new(),
        }
    }

    /// Lines are drawn here.
    pub(super) fn ink(&mut self, points: impl IntoIterator<Item = Point>) {
        self.ink.extend(points);
    }

    /// Something stands here.
    pub(super) fn take(&mut self, block: Block) {
        self.taken.push(block);
    }

    /// No words stand on this circle from here on.
    pub(super) fn keep_off(&mut self, centre: Point, radius: f64) {
        self.rounds.push((centre, radius));
    }

    /// The best of the places for some words, the first ones preferred, moved inward from the
    /// edges; it is taken from then on.
    pub(super) fn place(&mut self, words: &str, places: &[Point]) -> Point {
        let half = half(words);
        let inward = |&[x, y]: &Point| {
            [
                between(x, half + EDGE, WIDTH - half - EDGE),
                between(y, HIGHEST, self.height - BELOW - EDGE),
            ]
        };
        let cost = |at: Point| {
            let block = Block::of(words, at);
            let shared = self
                .taken
                .iter()
                .map(|taken| block.shared(taken))
                .filter(|shared| *shared > 0.0);
            let shared: f64 = shared.map(|shared| 40.0 + shared).sum();
            let lines = self.ink.iter().filter(|point| block.holds(**point)).map(|_| 9.0);
            let rounds = self
                .rounds
                .iter()
                .filter(|(centre, radius)| block.off(*centre) < *radius);
            shared + lines.sum::<f64>() + rounds.map(|_| 40.0).sum::<f64>()
        };
        let (mut least, mut at) = (f64::INFINITY, [WIDTH / 2.0, self.height / 2.0]);
        for (place, turn) in places.iter().map(inward).zip(0_u32..) {
            let turn = f64::from(turn) / 4.0;
            // The places from here on cost more than the best so far, however free they are.
            if turn >= least {
                break;
            }
            let cost = cost(place) + turn;
            if cost < least {
                (least, at) = (cost, place);
            }
        }
        self.take(Block::of(words, at));
        at
    }
}
