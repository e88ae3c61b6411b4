//! Belts by name: `6PK1453` is six ribs of profile PK, 1453 mm of effective length.
//!
//! What a belt does on a drive is the route's and the tensioner's work.

use super::fault::BeltFault;
use super::profile::Profile;
use super::si::{in_metres, metres};
use crate::bound::between;
use core::fmt;
use uom::si::f64::Length;

/// The most ribs a name may have.
pub const MOST_RIBS: u32 = 100;
/// The longest belt a name may have, millimetre.
const LONGEST: u32 = 20_000;
/// The shortest belt a name may have, millimetre.
const SHORTEST: u32 = 100;

/// A belt as its name says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Belt {
    /// Number of ribs.
    pub ribs: u32,
    /// Profile of the ribs.
    pub profile: Profile,
    /// Effective length in whole millimetres.
    pub millimetres: u32,
}

impl Belt {
    /// Reads a name such as `6PK1453`; case, spaces and hyphens do not matter.
    ///
    /// # Errors
    /// [`BeltFault`] naming what does not belong to a belt's name.
    ///
    /// ```
    /// use shopmath::drive::belt::Belt;
    /// let belt = Belt::read("6 pk 1453").unwrap();
    /// assert_eq!(belt.to_string(), "6PK1453");
    /// assert!(Belt::read("6PX1453").is_err());
    /// ```
    pub fn read(text: &str) -> Result<Self, BeltFault> {
        let joined: String = text
            .chars()
            .filter(|letter| !letter.is_whitespace() && !matches!(letter, '-' | '–' | '‑'))
            .collect();
        let not_a_name = || BeltFault::NotAName(text.trim().to_owned());
        let letters_at = joined
            .find(|letter: char| !letter.is_ascii_digit())
            .ok_or_else(not_a_name)?;
        let (ribs, rest) = joined.split_at(letters_at);
        let length_at = rest
            .find(|letter: char| letter.is_ascii_digit())
            .ok_or_else(not_a_name)?;
        let (letters, length) = rest.split_at(length_at);
        if ribs.is_empty() || !length.chars().all(|letter| letter.is_ascii_digit()) {
            return Err(not_a_name());
        }
        let profile = Profile::named(letters).ok_or_else(|| BeltFault::NoSuchProfile(letters.to_owned()))?;
        let ribs = ribs.parse().unwrap_or(u32::MAX);
        let millimetres = length.parse().unwrap_or(u32::MAX);
        Self::new(ribs, profile, millimetres)
    }

    /// A belt of so many ribs and whole millimetres of effective length.
    ///
    /// # Errors
    /// [`BeltFault::Ribs`] for ribs outside 1–100, [`BeltFault::Length`] for a length outside 100–20 000 mm.
    ///
    /// ```
    /// use shopmath::drive::{belt::Belt, fault::BeltFault, profile::Profile};
    /// assert_eq!(Belt::new(6, Profile::Pk, 1453).unwrap().to_string(), "6PK1453");
    /// assert_eq!(Belt::new(0, Profile::Pk, 1453), Err(BeltFault::Ribs(0)));
    /// assert_eq!(Belt::new(6, Profile::Pk, 99), Err(BeltFault::Length(99)));
    /// ```
    pub fn new(ribs: u32, profile: Profile, millimetres: u32) -> Result<Self, BeltFault> {
        if !(1..=MOST_RIBS).contains(&ribs) {
            return Err(BeltFault::Ribs(ribs));
        }
        if !(SHORTEST..=LONGEST).contains(&millimetres) {
            return Err(BeltFault::Length(millimetres));
        }
        Ok(Self {
            ribs,
            profile,
            millimetres,
        })
    }

    /// The effective length the name states, in millimetres on the belt (ISO 9981, from memory): 100 mm to
    /// 20 m for a belt that was read.
    ///
    /// ```
    /// use shopmath::drive::belt::Belt;
    /// use shopmath::quantity::exact::length::Metre;
    /// let length = Belt::read("6PK1453").unwrap().effective_length();
    /// assert!((length.get::<Metre>() - 1.453).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn effective_length(self) -> Length {
        metres(f64::from(self.millimetres) * 1e-3)
    }

    /// The belt whose whole millimetres are nearest to an effective length, the longer one for a half.
    ///
    /// # Errors
    /// [`BeltFault::Length`] for lengths that round to outside 100–20 000 mm, [`BeltFault::Ribs`] for ribs
    /// outside 1–100.
    ///
    /// ```
    /// use shopmath::drive::{belt::Belt, profile::Profile};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// use uom::si::f64::Length;
    /// let nearest = |mm: f64| Belt::nearest(6, Profile::Pk, Length::new::<Millimetre>(mm));
    /// assert_eq!(nearest(1453.4).unwrap().to_string(), "6PK1453");
    /// assert_eq!(nearest(1453.6).unwrap().to_string(), "6PK1454");
    /// assert!(nearest(20_001.0).is_err());
    /// ```
    pub fn nearest(ribs: u32, profile: Profile, length: Length) -> Result<Self, BeltFault> {
        let rounded = (in_metres(length) * 1e3).round();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to the range of u32
        let millimetres = between(rounded, 0.0, f64::from(u32::MAX)) as u32;
        Self::new(ribs, profile, millimetres)
    }

    /// The same belt longer by a number of whole millimetres, shorter when negative; `None` where that
    /// leaves 100–20 000 mm.
    ///
    /// ```
    /// use shopmath::drive::belt::Belt;
    /// let belt = Belt::read("6PK1453").unwrap();
    /// assert_eq!(belt.longer_by(-5), Belt::read("6PK1448").ok());
    /// assert_eq!(belt.longer_by(-1354), None); // would be 99 mm
    /// ```
    #[must_use]
    pub fn longer_by(self, millimetres: i32) -> Option<Self> {
        let millimetres = self.millimetres.checked_add_signed(millimetres)?;
        Self::new(self.ribs, self.profile, millimetres).ok()
    }
}

impl fmt::Display for Belt {
    /// The name as printed on the belt.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}{}{}", self.ribs, self.profile.name(), self.millimetres)
    }
}

/// The effective length of a belt on the measuring bench: L = 2·E + U, with E the distance of the
/// two shafts under the measuring force and U the effective circumference of each of the two equal
/// pulleys (300 mm for PK; ISO 9981, from memory). Lengths in, length out.
///
/// ```
/// use shopmath::drive::belt::measured_length;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let mm = Length::new::<Millimetre>;
/// assert!((measured_length(mm(576.5), mm(300.0)).get::<Millimetre>() - 1453.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn measured_length(centres: Length, circumference: Length) -> Length {
    2.0 * centres + circumference
}
