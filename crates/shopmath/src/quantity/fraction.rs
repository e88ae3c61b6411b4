//! The nearest 64th of an inch to a length, in whole nanometres so that no rounding is hidden.

use super::exact::length::Metre;
use uom::si::f64::Length;

/// One 64th of an inch, nanometre: 25 400 000 / 64, exact.
const SIXTY_FOURTH: i64 = 396_875;

/// Inches and a fraction in lowest terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InchFraction {
    /// Whether the length is negative.
    pub negative: bool,
    /// Whole inches.
    pub whole: i64,
    /// Above the line; zero when the inches are whole.
    pub numerator: i64,
    /// Below the line: a power of two up to 64.
    pub denominator: i64,
    /// The same as 64ths, signed.
    pub sixty_fourths: i64,
}

/// A length in whole nanometres, rounded to the nearest, halves away from zero; `None` past ±9 000 km, where
/// no workshop measures fractions.
///
/// ```
/// use shopmath::quantity::{exact::length::Inch, fraction::nanometres};
/// use uom::si::f64::Length;
/// assert_eq!(nanometres(Length::new::<Inch>(1.0)), Some(25_400_000));
/// assert_eq!(nanometres(Length::new::<Inch>(1e12)), None);
/// ```
#[must_use]
pub fn nanometres(length: Length) -> Option<i64> {
    let scaled = (length.get::<Metre>() * 1e9).round();
    #[allow(clippy::cast_possible_truncation)] // checked against 9e15, where f64 is still whole
    (scaled.abs() < 9e15).then_some(scaled as i64)
}

/// The nearest 64th of an inch, halves away from zero; `None` for lengths past ±9 000 km.
///
/// ```
/// use shopmath::quantity::fraction::nearest;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let fraction = nearest(Length::new::<Millimetre>(41.3)).unwrap();
/// assert_eq!((fraction.whole, fraction.numerator, fraction.denominator), (1, 5, 8));
/// ```
#[must_use]
pub fn nearest(length: Length) -> Option<InchFraction> {
    let nanometres = nanometres(length)?;
    let sixty_fourths = (nanometres.abs() + SIXTY_FOURTH / 2) / SIXTY_FOURTH;
    let (whole, rest) = (sixty_fourths / 64, sixty_fourths % 64);
    let shared = if rest == 0 { 64 } else { 1 << rest.trailing_zeros() };
    Some(InchFraction {
        negative: nanometres < 0 && sixty_fourths > 0,
        whole,
        numerator: rest / shared,
        denominator: 64 / shared,
        sixty_fourths: if nanometres < 0 { -sixty_fourths } else { sixty_fourths },
    })
}

impl InchFraction {
    /// The fraction in inches, exact: 64ths are binary fractions.
    ///
    /// ```
    /// use shopmath::quantity::{exact::length::Millimetre, fraction::nearest};
    /// use uom::si::f64::Length;
    /// assert_eq!(nearest(Length::new::<Millimetre>(19.0)).unwrap().inches(), 0.75);
    /// ```
    #[must_use]
    pub fn inches(self) -> f64 {
        #[allow(clippy::cast_precision_loss)] // below 2⁵³ by construction
        let sixty_fourths = self.sixty_fourths as f64;
        sixty_fourths / 64.0
    }

    /// The fraction as a length, by 1 in = 25.4 mm (exact, NIST SP 811).
    ///
    /// ```
    /// use shopmath::quantity::{exact::length::Millimetre, fraction::nearest};
    /// use uom::si::f64::Length;
    /// let shown = nearest(Length::new::<Millimetre>(41.3)).unwrap().length();
    /// assert!((shown.get::<Millimetre>() - 41.275).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn length(self) -> Length {
        #[allow(clippy::cast_precision_loss)] // below 2⁵³ by construction
        Length::new::<Metre>((self.sixty_fourths * SIXTY_FOURTH) as f64 / 1e9)
    }
}
