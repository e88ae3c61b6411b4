//! Materials of clamped parts and tapped holes: strength, stiffness, expansion.

use super::refusal::Refusal;
use super::si::{megapascals, millionths_per_kelvin};
use crate::source::{Source, fastener as sources};
use uom::si::f64::{Pressure, TemperatureCoefficient};

/// What heat does to a material, beyond expanding it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Temper {
    /// Nothing lasting at workshop heat.
    Stable,
    /// Artificially aged (T6): loses strength for good from 150 °C.
    Aged,
    /// Magnesium: chips and thin edges burn.
    Magnesium,
}

/// The family a material belongs to, for the rule of thumb on engagement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Steel.
    Steel,
    /// Cast iron.
    CastIron,
    /// Aluminium and magnesium.
    LightAlloy,
}

/// One material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// The name in a link, such as `a380`.
    pub id: &'static str,
    /// The name for a person.
    pub name: &'static str,
    /// Tensile strength Rm.
    pub tensile: Pressure,
    /// Shear strength τ.
    pub shear: Pressure,
    /// Young's modulus E.
    pub modulus: Pressure,
    /// Thermal expansion.
    pub expansion: TemperatureCoefficient,
    /// Its family.
    pub family: Family,
    /// What heat does to it.
    pub temper: Temper,
    /// Where strength and expansion come from; the modulus is [`sources::MODULUS`]'s throughout.
    pub source: Source,
}

/// A row: Rm and τ in MPa, E in GPa, expansion in 1e-6/K.
struct Row(&'static str, &'static str, [f64; 4], Family, Temper, Source);

#[rustfmt::skip] // one row, one line
static ROWS: &[Row] = &[
    Row("steel", "steel", [400.0, 240.0, 205.0, 11.7], Family::Steel, Temper::Stable, sources::MILD_STEEL),
    Row("grey-iron", "grey cast iron GJL-250", [250.0, 225.0, 110.0, 11.4], Family::CastIron, Temper::Stable, sources::GREY_IRON),
    Row("a380", "aluminium A380, die cast", [324.0, 190.0, 71.0, 21.8], Family::LightAlloy, Temper::Stable, sources::A380),
    Row("alsi9cu3", "aluminium AlSi9Cu3(Fe), die cast", [240.0, 144.0, 71.0, 21.0], Family::LightAlloy, Temper::Stable, sources::ALSI9CU3),
    Row("a356-t6", "aluminium A356-T6, sand cast", [234.0, 143.0, 72.0, 21.4], Family::LightAlloy, Temper::Aged, sources::A356),
    Row("6061-t6", "aluminium 6061-T6, wrought", [310.0, 207.0, 69.0, 23.6], Family::LightAlloy, Temper::Aged, sources::WROUGHT_6061),
    Row("az91d", "magnesium AZ91D, die cast", [230.0, 140.0, 45.0, 26.0], Family::LightAlloy, Temper::Magnesium, sources::AZ91D),
];

/// Every material, steel first; each with its own source.
///
/// ```
/// use shopmath::fastener::material::materials;
/// use shopmath::quantity::exact::pressure::Megapascal;
/// assert_eq!(materials().next().unwrap().id, "steel");
/// let a380 = materials().find(|material| material.id == "a380").unwrap();
/// assert!((a380.shear.get::<Megapascal>() - 190.0).abs() < 1e-9);
/// assert!(materials().all(|material| material.shear < material.tensile));
/// ```
pub fn materials() -> impl Iterator<Item = Material> {
    ROWS.iter().map(Row::material)
}

/// The material a text names, by the id of the link; capitals, spaces and dashes do not matter.
///
/// # Errors
/// [`Refusal::UnknownWord`] with the ids that exist.
///
/// ```
/// use shopmath::fastener::material::read;
/// assert_eq!(read("A356 T6").unwrap().id, "a356-t6");
/// assert!(read("cheese").unwrap_err().to_string().contains("grey-iron"));
/// ```
pub fn read(text: &str) -> Result<Material, Refusal> {
    let fold = |text: &str| -> String {
        text.to_ascii_lowercase()
            .chars()
            .filter(|letter| letter.is_alphanumeric())
            .collect()
    };
    let folded = fold(text);
    materials()
        .find(|material| fold(material.id) == folded)
        .ok_or_else(|| Refusal::UnknownWord {
            what: "material",
            read: text.trim().into(),
            words: materials().map(|material| material.id).collect(),
        })
}

impl Row {
    fn material(&self) -> Material {
        let &Row(id, name, [tensile, shear, modulus, expansion], family, temper, source) = self;
        Material {
            id,
            name,
            tensile: megapascals(tensile),
            shear: megapascals(shear),
            modulus: megapascals(modulus * 1e3),
            expansion: millionths_per_kelvin(expansion),
            family,
            temper,
            source,
        }
    }
}

impl Family {
    /// Engagement by the rule of thumb, in thread diameters: 1 in steel, 1.5 in cast iron, 2 in light alloys
    /// (common practice, no source).
    ///
    /// ```
    /// use shopmath::fastener::{material, thread_text};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let (m8, a380) = (thread_text::read("M8").unwrap().thread, material::read("a380").unwrap());
    /// assert!(((m8.diameter * a380.family.rule_of_thumb()).get::<Millimetre>() - 16.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn rule_of_thumb(self) -> f64 {
        match self {
            Self::Steel => 1.0,
            Self::CastIron => 1.5,
            Self::LightAlloy => 2.0,
        }
    }
}
