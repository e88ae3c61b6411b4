//! The table of strength classes, and their names.

use super::si::{megapascals, millionths_per_kelvin};
use crate::source::{Source, fastener as sources};
use uom::si::f64::{Pressure, TemperatureCoefficient};

/// One thousand pounds-force per square inch, megapascal.
const KSI: f64 = 6.894_757_293_168;
/// One inch, millimetre (exact).
const INCH: f64 = 25.4;
/// ISO 898-1 sets 8.8 higher above this diameter, and ends 9.8 here, millimetre.
const BREAK: f64 = 16.0;

/// What a bolt is made of, for stiffness and expansion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Metal {
    /// Carbon and alloy steel.
    Steel,
    /// Austenitic stainless steel.
    Stainless,
}

impl Metal {
    /// Young's modulus: steel 205 GPa, austenitic stainless 193 GPa ([`Metal::source`]).
    ///
    /// ```
    /// use shopmath::fastener::class::Metal;
    /// use shopmath::quantity::exact::pressure::Megapascal;
    /// assert!((Metal::Steel.modulus().get::<Megapascal>() - 205_000.0).abs() < 1e-6);
    /// assert!(Metal::Stainless.modulus() < Metal::Steel.modulus());
    /// ```
    #[must_use]
    pub fn modulus(self) -> Pressure {
        match self {
            Self::Steel => megapascals(205_000.0),
            Self::Stainless => megapascals(193_000.0),
        }
    }

    /// Thermal expansion per kelvin: steel 11.7e-6, austenitic stainless 17.2e-6 ([`Metal::source`]).
    ///
    /// ```
    /// use shopmath::fastener::class::Metal;
    /// use shopmath::quantity::exact::{length::Millimetre, temperature_difference::KelvinDifference};
    /// use uom::si::f64::{Length, TemperatureInterval};
    /// let hotter = TemperatureInterval::new::<KelvinDifference>(100.0);
    /// let grown = Length::new::<Millimetre>(100.0) * (Metal::Stainless.expansion() * hotter);
    /// assert!((grown.get::<Millimetre>() - 0.172).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn expansion(self) -> TemperatureCoefficient {
        millionths_per_kelvin(match self {
            Self::Steel => 11.7,
            Self::Stainless => 17.2,
        })
    }

    /// Where stiffness and expansion come from: one source for both, marked by its weaker figure.
    ///
    /// ```
    /// use shopmath::{fastener::class::Metal, source::Mark};
    /// assert_eq!(Metal::Stainless.source().mark, Mark::Memory);
    /// assert!(Metal::Steel.source().publication.contains("VDI 2230"));
    /// ```
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Steel => sources::STEEL,
            Self::Stainless => sources::STAINLESS_METAL,
        }
    }
}

/// A row: stresses in MPa, diameters covered in mm.
pub(super) struct Row {
    pub(super) name: &'static str,
    pub(super) over: f64,
    pub(super) up_to: f64,
    pub(super) tensile: f64,
    pub(super) yield_strength: f64,
    pub(super) proof: Option<f64>,
    pub(super) twist_break: Option<f64>,
    pub(super) metal: Metal,
    pub(super) source: Source,
}

#[rustfmt::skip] // one row, one line
pub(super) static ROWS: &[Row] = &[
    iso("4.6", 0.0, 39.0, 400.0, 240.0, 225.0, None, sources::CLASS_RECALLED),
    iso("4.8", 0.0, 39.0, 420.0, 340.0, 310.0, None, sources::CLASS_RECALLED),
    iso("5.6", 0.0, 39.0, 500.0, 300.0, 280.0, None, sources::CLASS_RECALLED),
    iso("5.8", 0.0, 39.0, 520.0, 420.0, 380.0, None, sources::CLASS_RECALLED),
    iso("6.8", 0.0, 39.0, 600.0, 480.0, 440.0, None, sources::CLASS_RECALLED),
    iso("8.8", 0.0, BREAK, 800.0, 640.0, 580.0, Some(0.84), sources::CLASS),
    iso("8.8", BREAK, 39.0, 830.0, 660.0, 600.0, Some(0.84), sources::CLASS_YIELD_RECALLED),
    iso("9.8", 0.0, BREAK, 900.0, 720.0, 650.0, Some(0.815), sources::CLASS),
    iso("10.9", 0.0, 39.0, 1040.0, 940.0, 830.0, Some(0.79), sources::CLASS_YIELD_RECALLED),
    iso("12.9", 0.0, 39.0, 1220.0, 1100.0, 970.0, Some(0.75), sources::CLASS),
    sae("grade 2", 0.75, 74.0, 57.0, 55.0),
    sae("grade 5", 1.0, 120.0, 92.0, 85.0),
    sae("grade 8", 1.5, 150.0, 130.0, 120.0),
    stainless("A2-70", 700.0, 450.0),
    stainless("A4-70", 700.0, 450.0),
    stainless("A2-80", 800.0, 600.0),
    stainless("A4-80", 800.0, 600.0),
];

#[allow(clippy::too_many_arguments)] // a row of the table has this many columns
const fn iso(
    name: &'static str,
    over: f64,
    up_to: f64,
    tensile: f64,
    yield_strength: f64,
    proof: f64,
    twist_break: Option<f64>,
    source: Source,
) -> Row {
    Row {
        name,
        over,
        up_to,
        tensile,
        yield_strength,
        proof: Some(proof),
        twist_break,
        metal: Metal::Steel,
        source,
    }
}

/// SAE J429: from 1/4 in; the largest diameter in inch, strengths in ksi.
const fn sae(name: &'static str, up_to: f64, tensile: f64, yield_strength: f64, proof: f64) -> Row {
    Row {
        name,
        over: 0.2499 * INCH,
        up_to: up_to * INCH,
        tensile: tensile * KSI,
        yield_strength: yield_strength * KSI,
        proof: Some(proof * KSI),
        twist_break: None,
        metal: Metal::Steel,
        source: sources::SAE_GRADE,
    }
}

/// ISO 3506-1, which as tabled here sets no proof load.
const fn stainless(name: &'static str, tensile: f64, yield_strength: f64) -> Row {
    Row {
        name,
        over: 0.0,
        up_to: 24.0,
        tensile,
        yield_strength,
        proof: None,
        twist_break: None,
        metal: Metal::Stainless,
        source: sources::STAINLESS_CLASS,
    }
}

/// The classes, weakest first within each standard: each once, also where its strength changes with the
/// diameter.
///
/// ```
/// use shopmath::fastener::class::names;
/// assert_eq!(names().count(), 16);
/// assert_eq!(names().filter(|name| *name == "8.8").count(), 1);
/// assert_eq!((names().next(), names().last()), (Some("4.6"), Some("A4-80")));
/// ```
pub fn names() -> impl Iterator<Item = &'static str> {
    let mut last = "";
    ROWS.iter()
        .map(|row| row.name)
        .filter(move |name| core::mem::replace(&mut last, name) != *name)
}

/// The classes whose names begin as the text does, their "grade" left out or not.
pub(super) fn completions(text: &str) -> Vec<&'static str> {
    let begun = text.trim().to_ascii_lowercase().replace(',', ".");
    let begins = |name: &str| name.to_ascii_lowercase().starts_with(&begun);
    names()
        .filter(|name| begins(name) || name.strip_prefix("grade ").is_some_and(begins))
        .collect()
}

/// How people say that a head bears no mark.
const UNMARKED: [&str; 5] = ["unmarked", "no", "plain", "blank", "unknown"];
/// What such a bolt may be at the least: the weakest class of each standard.
const WEAKEST: [&str; 2] = ["4.6", "grade 2"];

/// The classes that a text which names none may mean: those that stand in it, as in `10.9 zinc` or
/// `grade 8.8`; for another stainless class, those there are; for a head that bears none, the weakest.
pub(super) fn near(text: &str) -> Vec<&'static str> {
    let text = text.trim().to_ascii_lowercase().replace(',', ".");
    let of_number = |letter: char| letter.is_ascii_digit() || letter == '.';
    let stands = |name: &str| {
        text.split_once(&name.to_ascii_lowercase())
            .is_some_and(|(before, after)| !before.ends_with(of_number) && !after.starts_with(of_number))
    };
    let found: Vec<&str> = names().filter(|name| stands(name)).collect();
    if !found.is_empty() {
        found
    } else if UNMARKED.iter().any(|word| text.starts_with(word)) {
        WEAKEST.to_vec()
    } else if text.starts_with('a') {
        names().filter(|name| name.starts_with('A')).collect()
    } else {
        found
    }
}
