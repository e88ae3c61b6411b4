//! Drawings as plain geometry: what a view needs to draw one, with no arithmetic left to do.
//!
//! Coordinates are those of a screen, x to the right and y down, in units of which the whole
//! sketch is [`WIDTH`] wide, so that line widths and letters keep their size whatever is drawn.
//! Nothing here knows markup or colours: a [`Role`] says what a mark stands for.

mod board;
pub mod joint;
pub mod plot;
pub mod protractor;
pub mod route;
pub mod share;

use crate::quantity::print;

/// The width of every sketch, about the points across a phone.
pub const WIDTH: f64 = 360.0;

/// A point, x and y.
pub type Point = [f64; 2];

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// What it shows, for those who do not see it.
    pub title: String,
    /// Its height; its width is [`WIDTH`].
    pub height: f64,
    /// What is drawn, back to front.
    pub marks: Vec<Mark>,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it stands for.
    pub role: Role,
    /// Its geometry.
    pub shape: Shape,
}

/// Geometry of a mark.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A closed area.
    Area(Vec<Point>),
    /// An open line.
    Line(Vec<Point>),
    /// A circle by centre and radius.
    Circle(Point, f64),
    /// Words at a point.
    Words(Point, Anchor, String),
}

/// Which end of the words stands at their point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The first letter.
    Start,
    /// The middle.
    Middle,
    /// The last letter.
    End,
}

/// What a mark stands for; also the name a view styles it by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// The bolt's body.
    Bolt,
    /// Threads in the open.
    Thread,
    /// Threads that hold.
    Engaged,
    /// The part that is clamped.
    Part,
    /// The nut or the block with the hole.
    Holder,
    /// An axis, frame or tick.
    Frame,
    /// The range.
    Band,
    /// The middle of the range.
    Middle,
    /// Where yield begins.
    Yield,
    /// Where the spec ends.
    Target,
    /// Words.
    Label,
    /// A ribbed pulley.
    Ribbed,
    /// A pulley on the back of the belt.
    Back,
    /// The belt.
    Belt,
    /// The tensioner's arm and its sweep.
    Arm,
    /// Something wrong at this place.
    Trouble,
}

impl Role {
    /// The role's name, lower case.
    ///
    /// ```
    /// use shopmath::sketch::Role;
    /// assert_eq!((Role::Back.name(), Role::Engaged.name()), ("back", "engaged"));
    /// ```
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Bolt => "bolt",
            Self::Thread => "thread",
            Self::Engaged => "engaged",
            Self::Part => "part",
            Self::Holder => "holder",
            Self::Frame => "frame",
            Self::Band => "band",
            Self::Middle => "middle",
            Self::Yield => "yield",
            Self::Target => "target",
            Self::Label => "label",
            Self::Ribbed => "ribbed",
            Self::Back => "back",
            Self::Belt => "belt",
            Self::Arm => "arm",
            Self::Trouble => "trouble",
        }
    }
}

/// A number as a coordinate is written: plain digits, a hundredth fine.
///
/// ```
/// assert_eq!(shopmath::sketch::coordinate(-12.345_6), "-12.35");
/// assert_eq!(shopmath::sketch::coordinate(60.0), "60");
/// ```
#[must_use]
pub fn coordinate(value: f64) -> String {
    print::plain(value, 2)
}

/// Points as they are written in a list of coordinates: x and y by a comma, points by a space.
///
/// ```
/// assert_eq!(shopmath::sketch::coordinates(&[[0.0, 12.5], [-7.25, 100.0]]), "0,12.5 -7.25,100");
/// ```
#[must_use]
pub fn coordinates(points: &[Point]) -> String {
    let pairs: Vec<String> = points
        .iter()
        .map(|[x, y]| format!("{},{}", coordinate(*x), coordinate(*y)))
        .collect();
    pairs.join(" ")
}

impl Sketch {
    fn new(title: String, height: f64) -> Self {
        Self {
            title,
            height,
            marks: Vec::new(),
        }
    }

    fn draw(&mut self, role: Role, shape: Shape) {
        self.marks.push(Mark { role, shape });
    }

    fn line(&mut self, role: Role, points: impl Into<Vec<Point>>) {
        self.draw(role, Shape::Line(points.into()));
    }

    fn area(&mut self, role: Role, points: impl Into<Vec<Point>>) {
        self.draw(role, Shape::Area(points.into()));
    }

    fn words(&mut self, at: Point, anchor: Anchor, words: impl Into<String>) {
        self.draw(Role::Label, Shape::Words(at, anchor, words.into()));
    }

    /// A rectangle between two corners.
    fn rectangle(&mut self, role: Role, [left, top]: Point, [right, bottom]: Point) {
        self.area(role, [[left, top], [right, top], [right, bottom], [left, bottom]]);
    }
}
