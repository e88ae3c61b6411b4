//! The notations of the drive's texts: reading them, and printing them back from the structure so
//! that dragging a pulley or changing the order rewrites the same link.

pub mod loads;
pub mod pulleys;
pub mod tensioner;

use crate::quantity::exact::length::Millimetre;
use crate::quantity::print;
use uom::si::f64::Length;

/// Marks that separate the parts of these texts and so cannot stand in a name.
const MARKS: [char; 6] = [':', ';', ',', '@', '=', '\n'];

/// A length in millimetres, to the nanometre, in the fewest digits: so that a text read and printed
/// is the text printed again.
fn millimetres(length: Length) -> String {
    print::plain(length.get::<Millimetre>(), 6)
}

/// The index of the pulley a text names, whatever its capitals.
fn named<'a>(name: &str, mut names: impl Iterator<Item = &'a str>) -> Option<usize> {
    names.position(|known| known.trim().eq_ignore_ascii_case(name.trim()))
}
