//! Strength classes of bolts: metric 4.8–12.9, SAE grades 2, 5 and 8, stainless A2-70 and A4-80.

use super::refusal::Refusal;
use super::si::{megapascals, millimetres, millionths_per_kelvin, ratio};
use crate::quantity::Unit;
use crate::source::{Source, fastener as sources};
use uom::si::f64::{Length, Pressure, Ratio, TemperatureCoefficient};

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

/// The strength of a bolt of one class and diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Class {
    /// The class as stamped, such as `8.8` or `grade 5`.
    pub name: &'static str,
    /// Tensile strength Rm.
    pub tensile: Pressure,
    /// Yield strength, Rp0.2 for metric classes.
    pub yield_strength: Pressure,
    /// Proof stress Sp, where the standard sets one.
    pub proof: Option<Pressure>,
    /// Factor X of the breaking torque by ISO 898-7, for the classes it covers.
    pub twist_break: Option<Ratio>,
    /// The metal.
    pub metal: Metal,
    /// Where the strengths come from.
    pub source: Source,
}

/// A row: stresses in MPa, diameters covered in mm.
struct Row {
    name: &'static str,
    over: f64,
    up_to: f64,
    tensile: f64,
    yield_strength: f64,
    proof: Option<f64>,
    twist_break: Option<f64>,
    metal: Metal,
    source: Source,
}

#[rustfmt::skip] // one row, one line
static ROWS: &[Row] = &[
    iso("4.8", 0.0, 39.0, 420.0, 340.0, 310.0, None, sources::CLASS_RECALLED),
    iso("5.8", 0.0, 39.0, 520.0, 420.0, 380.0, None, sources::CLASS_RECALLED),
    iso("8.8", 0.0, BREAK, 800.0, 640.0, 580.0, Some(0.84), sources::CLASS),
    iso("8.8", BREAK, 39.0, 830.0, 660.0, 600.0, Some(0.84), sources::CLASS_YIELD_RECALLED),
    iso("9.8", 0.0, BREAK, 900.0, 720.0, 650.0, Some(0.815), sources::CLASS),
    iso("10.9", 0.0, 39.0, 1040.0, 940.0, 830.0, Some(0.79), sources::CLASS_YIELD_RECALLED),
    iso("12.9", 0.0, 39.0, 1220.0, 1100.0, 970.0, Some(0.75), sources::CLASS),
    sae("grade 2", 0.75, 74.0, 57.0, 55.0),
    sae("grade 5", 1.0, 120.0, 92.0, 85.0),
    sae("grade 8", 1.5, 150.0, 130.0, 120.0),
    stainless("A2-70", 700.0, 450.0),
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

/// The classes, weakest first within each standard.
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

/// The classes that a text which names none may mean: those that stand in it, as in `10.9 zinc` or
/// `grade 8.8`; for another stainless class, those there are.
pub(super) fn near(text: &str) -> Vec<&'static str> {
    let text = text.trim().to_ascii_lowercase().replace(',', ".");
    let of_number = |letter: char| letter.is_ascii_digit() || letter == '.';
    let stands = |name: &str| {
        text.split_once(&name.to_ascii_lowercase())
            .is_some_and(|(before, after)| !before.ends_with(of_number) && !after.starts_with(of_number))
    };
    let found: Vec<&str> = names().filter(|name| stands(name)).collect();
    if !found.is_empty() || !text.starts_with('a') {
        return found;
    }
    names().filter(|name| name.starts_with('A')).collect()
}

/// The class a text names: `8.8`, `8,8`, `class 10.9`, `grade 5`, `SAE 5`, `gr8`, `A2-70`.
///
/// # Errors
/// [`Refusal::UnknownClass`], or [`Refusal::AmbiguousGrade`] for a bare 2, 5 or 8.
///
/// ```
/// use shopmath::fastener::class::read;
/// assert_eq!(read("gr8").unwrap(), "grade 8");
/// assert_eq!(read("8,8").unwrap(), "8.8");
/// assert!(read("7.7").is_err());
/// ```
pub fn read(text: &str) -> Result<&'static str, Refusal> {
    let folded: String = text
        .to_ascii_lowercase()
        .chars()
        .map(|letter| if letter == ',' { '.' } else { letter })
        .filter(|letter| letter.is_ascii_alphanumeric() || *letter == '.')
        .collect();
    let grade = ["saej429", "sae", "j429", "grade", "gr.", "gr", "g"]
        .into_iter()
        .fold(folded.as_str(), |rest, word| rest.strip_prefix(word).unwrap_or(rest));
    if grade.len() < folded.len() {
        let found = names().find(|name| name.strip_prefix("grade ") == Some(grade));
        return found.ok_or_else(|| Refusal::UnknownClass(text.trim().into()));
    }
    if matches!(folded.as_str(), "2" | "5" | "8") {
        return Err(Refusal::AmbiguousGrade(folded));
    }
    let bare = folded
        .strip_prefix("class")
        .or(folded.strip_prefix("cl"))
        .unwrap_or(&folded);
    let found = names().find(|name| name.to_ascii_lowercase().replace('-', "") == bare);
    found.ok_or_else(|| Refusal::UnknownClass(text.trim().into()))
}

/// The strength of a class at a thread diameter. M16 itself is in the lower group of 8.8.
///
/// # Errors
/// [`Refusal::ClassNotForSize`] where the standard ends below or begins above the diameter (9.8
/// stops at M16, SAE grades begin at 1/4 in), [`Refusal::UnknownClass`] for a name not in the table.
///
/// ```
/// use shopmath::fastener::class::at;
/// use shopmath::quantity::exact::{length::Millimetre, pressure::Megapascal};
/// use uom::si::f64::Length;
/// let strength = |d| at("8.8", Length::new::<Millimetre>(d)).unwrap().tensile.get::<Megapascal>().round();
/// assert_eq!((strength(16.0), strength(18.0)), (800.0, 830.0));
/// ```
pub fn at(name: &str, diameter: Length) -> Result<Class, Refusal> {
    let rows = || ROWS.iter().filter(|row| row.name == name);
    let first = rows().next().ok_or_else(|| Refusal::UnknownClass(name.into()))?;
    let covers = |row: &&Row| diameter > millimetres(row.over) && diameter < millimetres(row.up_to + 1e-6);
    rows().find(covers).map(Row::class).ok_or_else(|| {
        let up_to = rows().map(|row| row.up_to).fold(0.0, f64::max);
        Refusal::ClassNotForSize {
            class: first.name,
            low: millimetres((first.over * 100.0).round() / 100.0).into(),
            high: millimetres(up_to).into(),
            unit: Unit::Millimetre,
        }
    })
}

impl Row {
    fn class(&self) -> Class {
        Class {
            name: self.name,
            tensile: megapascals(self.tensile),
            yield_strength: megapascals(self.yield_strength),
            proof: self.proof.map(megapascals),
            twist_break: self.twist_break.map(ratio),
            metal: self.metal,
            source: self.source,
        }
    }
}

impl Class {
    /// Shear strength of the bolt's own thread, 0.6 Rm.
    #[must_use]
    pub fn shear(&self) -> Pressure {
        self.tensile * 0.6
    }
}

impl Metal {
    /// Young's modulus: steel 205 GPa, austenitic stainless 193 GPa.
    #[must_use]
    pub fn modulus(self) -> Pressure {
        match self {
            Self::Steel => megapascals(205_000.0),
            Self::Stainless => megapascals(193_000.0),
        }
    }

    /// Thermal expansion per kelvin: steel 11.7e-6, austenitic stainless 17.2e-6.
    #[must_use]
    pub fn expansion(self) -> TemperatureCoefficient {
        millionths_per_kelvin(match self {
            Self::Steel => 11.7,
            Self::Stainless => 17.2,
        })
    }

    /// Where stiffness and expansion come from.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Steel => sources::STEEL,
            Self::Stainless => sources::STAINLESS_METAL,
        }
    }
}
