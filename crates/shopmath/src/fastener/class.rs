//! Strength classes of bolts: metric 4.6–12.9, SAE grades 2, 5 and 8, stainless 70 and 80.

use super::class_table::{ROWS, Row};
use super::refusal::Refusal;
use super::si::{megapascals, millimetres, ratio};
use crate::quantity::Unit;
use crate::source::Source;
use uom::si::f64::{Length, Pressure, Ratio};

pub use super::class_table::{Metal, names};

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
    /// Shear strength of the bolt's own thread, 0.6 Rm: a pressure, 240 to 730 MPa over the classes (handbook
    /// practice, from memory; [`crate::source::fastener::ENGAGEMENT`]).
    ///
    /// ```
    /// use shopmath::fastener::class::at;
    /// use shopmath::quantity::exact::{length::Millimetre, pressure::Megapascal};
    /// let class = at("8.8", uom::si::f64::Length::new::<Millimetre>(10.0)).unwrap();
    /// assert!((class.shear().get::<Megapascal>() - 480.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn shear(&self) -> Pressure {
        self.tensile * 0.6
    }
}
