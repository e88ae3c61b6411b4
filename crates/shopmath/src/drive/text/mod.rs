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
    digits(length.get::<Millimetre>())
}

/// The largest number of a text, either way: as large as any that is read.
const LARGEST: f64 = 1e15;

/// A number to six decimals, in the fewest digits. One that has no room for decimals is written
/// whole: no drive has it, but a text must keep what was typed until that is said.
fn digits(value: f64) -> String {
    if value.abs() < 1e9 {
        print::plain(value, 6)
    } else {
        print::plain(value, 0)
    }
}

/// The index of the pulley a text names, whatever its capitals.
fn named<'a>(name: &str, mut names: impl Iterator<Item = &'a str>) -> Option<usize> {
    names.position(|known| known.trim().eq_ignore_ascii_case(name.trim()))
}

#[cfg(test)]
mod tests {
    use super::{pulleys, tensioner};

    #[test]
    fn what_no_drive_has_is_kept_or_refused_and_never_becomes_nothing() {
        for kept in [
            "a:rib:0,0:9999999999999",
            "a:rib:-20000000000,5:60",
            "a:rib:0,0:0.000001",
        ] {
            assert_eq!(pulleys::print(&pulleys::read(kept).unwrap()), kept);
        }
        for refused in ["a:rib:0,0:0.0000001", "a:rib:0,9e14 km:60", "a:rib:0,0:1e13 m"] {
            assert!(pulleys::read(refused).is_err(), "{refused}");
        }
        let drive = pulleys::read("a:rib:0,0:150").unwrap();
        let arm = tensioner::read("a@0,0,5..20000000000", &drive).unwrap();
        assert_eq!(tensioner::print(&arm, &drive), "a@0,0,5..20000000000");
        assert!(tensioner::read("a@0,0,5..9e14 turns", &drive).is_err());
        // The first end is in turns as well, or is not read.
        assert!(tensioner::read("a@0,0,1/4..1/2 turn", &drive).is_err());
        assert_eq!(
            tensioner::print(&tensioner::read("a@0,0,-0.1..0.25 turn", &drive).unwrap(), &drive),
            "a@0,0,-36..90"
        );
        assert_eq!(
            tensioner::print(&tensioner::read("a@0,0,90..-36°", &drive).unwrap(), &drive),
            "a@0,0,90..-36"
        );
    }
}
