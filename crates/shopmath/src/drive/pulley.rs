//! A pulley: where it stands, which side of the belt it carries, and its three radii.
//!
//! The radius of the body decides what the pulley bumps into, the effective radius the belt's
//! length, the pitch radius the speed. The route round several pulleys is [`super::route`]'s.

use super::si::{in_metres, point};
use kurbo::Point;
use uom::si::f64::Length;

/// Which side of the belt runs on a pulley.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// The ribs, in grooves: the diameter is the effective diameter.
    Rib,
    /// The flat back: the diameter is the outside diameter.
    Back,
}

impl Side {
    /// Both sides, ribs first.
    pub const ALL: [Side; 2] = [Self::Rib, Self::Back];

    /// The word in the link.
    ///
    /// ```
    /// use shopmath::drive::pulley::Side;
    /// assert_eq!(Side::ALL.map(Side::id), ["rib", "back"]);
    /// ```
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Rib => "rib",
            Self::Back => "back",
        }
    }

    /// The side by the word in the link, in any case and with spaces round it; `None` for other words.
    ///
    /// ```
    /// use shopmath::drive::pulley::Side;
    /// assert_eq!(Side::named(" Back "), Some(Side::Back));
    /// assert_eq!(Side::named("flat"), None);
    /// ```
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|side| side.id().eq_ignore_ascii_case(word.trim()))
    }

    /// The other side.
    ///
    /// ```
    /// use shopmath::drive::pulley::Side;
    /// assert_eq!(Side::ALL.map(Side::other), [Side::Back, Side::Rib]);
    /// ```
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Rib => Self::Back,
            Self::Back => Self::Rib,
        }
    }

    /// +1 for a pulley that turns with the loop, −1 for one on the belt's back.
    pub(super) fn sign(self) -> f64 {
        match self {
            Self::Rib => 1.0,
            Self::Back => -1.0,
        }
    }
}

/// A place on the front of the engine: x to the right, y up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: Length,
    /// Up.
    pub y: Length,
}

impl Spot {
    /// The place as a point, metre.
    pub(super) fn point(self) -> Point {
        point(self.x, self.y)
    }
}

/// One pulley of a drive.
#[derive(Clone, Debug, PartialEq)]
pub struct Pulley {
    /// What the user calls it; other texts refer to it by this name.
    pub name: String,
    /// The side of the belt it carries.
    pub side: Side,
    /// Its centre.
    pub centre: Spot,
    /// Effective diameter of a ribbed pulley, outside diameter of a flat one.
    pub diameter: Length,
}

impl Pulley {
    /// The radius of the body, metre.
    pub(super) fn body_radius(&self) -> f64 {
        0.5 * in_metres(self.diameter)
    }

    /// The radius of the effective line, metre: half the effective diameter in grooves, half the
    /// outside diameter plus the belt from its back face to that line on the back.
    pub(super) fn effective_radius(&self, back: Length) -> f64 {
        match self.side {
            Side::Rib => self.body_radius(),
            Side::Back => self.body_radius() + in_metres(back),
        }
    }

    /// The radius of the pitch line, metre, where the belt keeps its length: outside the effective
    /// line in grooves, inside it on the back.
    pub(super) fn pitch_radius(&self, back: Length, differential: Length) -> f64 {
        self.effective_radius(back) + self.side.sign() * in_metres(differential)
    }
}
