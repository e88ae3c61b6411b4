//! The fields of the Bolt screen, one line each: key in the link, label, kind, default, and the
//! choices one tap away. A view renders any of them from this; the link codec loops over it.

use crate::field::{Choice, Field, Reads};
use crate::quantity::Unit;

/// A part of the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SectionId {
    /// Thread, class, head, spec: what every section needs.
    Bolt,
    /// Setting, reading and range of the torque wrench, and the sizes that fit the head.
    Wrench,
    /// Torque to clamp load and share of yield.
    Clamp,
    /// Torque plus angle: stiffness, yield, stretch.
    Angle,
    /// Thread engagement in a tapped hole.
    Engagement,
    /// Loosening a seized bolt.
    Stuck,
    /// Measured length of a stretch bolt.
    Reuse,
}

impl SectionId {
    /// The part's name, as the fields carry it.
    ///
    /// ```
    /// use shopmath::fastener::bolt::SectionId;
    /// assert_eq!(SectionId::Stuck.name(), "stuck");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bolt => "bolt",
            Self::Wrench => "wrench",
            Self::Clamp => "clamp",
            Self::Angle => "angle",
            Self::Engagement => "engagement",
            Self::Stuck => "stuck",
            Self::Reuse => "reuse",
        }
    }
}

const fn field(key: &'static str, label: &'static str, reads: Reads, section: SectionId) -> Field {
    Field {
        key,
        label,
        reads,
        default: "",
        hint: "",
        choices: &[],
        section: section.name(),
    }
}

impl Field {
    const fn default(mut self, text: &'static str) -> Self {
        self.default = text;
        self
    }

    const fn absent(mut self, meaning: &'static str) -> Self {
        self.hint = meaning;
        self
    }

    const fn choices(mut self, choices: &'static [Choice]) -> Self {
        self.choices = choices;
        self
    }
}

/// The field of a key; none for a key that the Bolt screen does not have.
///
/// ```
/// use shopmath::{fastener::bolt::field::of, field::Reads, quantity::Unit};
/// assert_eq!(of("grip").unwrap().reads, Reads::Value(Unit::Millimetre));
/// assert_eq!(of("mu").unwrap().default, "0.10..0.16");
/// assert!(of("colour").is_none());
/// ```
#[must_use]
pub fn of(key: &str) -> Option<&'static Field> {
    FIELDS.iter().find(|field| field.key == key)
}

/// Choices that read as they are typed.
macro_rules! plain {
    ($($text:literal),+) => { &[$(Choice { text: $text, label: $text }),+] };
}

/// Choices with words of their own.
macro_rules! labelled {
    ($($text:literal: $label:literal),+ $(,)?) => { &[$(Choice { text: $text, label: $label }),+] };
}

const MATERIALS: &[Choice] = labelled![
    "steel": "steel",
    "grey-iron": "grey iron",
    "a380": "aluminium A380",
    "alsi9cu3": "aluminium AlSi9Cu3",
    "a356-t6": "aluminium A356-T6",
    "6061-t6": "aluminium 6061-T6",
    "az91d": "magnesium AZ91D",
];

/// Every field, in the order it is filled in.
pub static FIELDS: &[Field] = &[
    field("thread", "Thread", Reads::Text, SectionId::Bolt)
        .choices(plain![
            "M6", "M8", "M10", "M10x1.25", "M12", "M12x1.5", "M14x1.5", "1/4-20", "5/16-18", "3/8-16", "1/2-13"
        ])
        .absent("such as M10x1.25"),
    field("class", "Class on the head", Reads::Text, SectionId::Bolt)
        .choices(plain![
            "8.8", "10.9", "12.9", "9.8", "6.8", "5.8", "5.6", "4.8", "4.6", "grade 5", "grade 8", "grade 2", "A2-70",
            "A2-80", "A4-70", "A4-80"
        ])
        .absent("such as 10.9"),
    field("spec", "Torque or spec", Reads::Spec, SectionId::Bolt).absent("such as 60 N·m, or 10 N·m + 90°"),
    field("head", "Head", Reads::Listed, SectionId::Bolt)
        .default("hex")
        .choices(labelled!["hex": "hex", "flange": "flange", "socket": "socket head", "custom": "measured"]),
    field(
        "bearing",
        "Bearing diameter",
        Reads::Value(Unit::Millimetre),
        SectionId::Bolt,
    )
    .absent("by standard"),
    field(
        "hole",
        "Clearance hole",
        Reads::Value(Unit::Millimetre),
        SectionId::Bolt,
    )
    .absent("ISO 273 medium"),
    field("mu", "Friction", Reads::Range(Unit::Number), SectionId::Clamp)
        .default("0.10..0.16")
        .choices(labelled![
            "0.08..0.12": "MoS₂ or anti-seize",
            "0.10..0.16": "oiled or coated",
            "0.14..0.24": "dry",
        ]),
    field(
        "mu-head",
        "Friction under the head",
        Reads::Range(Unit::Number),
        SectionId::Clamp,
    )
    .absent("as in the thread"),
    field(
        "tool",
        "Tool tolerance ±",
        Reads::Value(Unit::Percent),
        SectionId::Clamp,
    )
    .default("4 %")
    .choices(labelled!["4 %": "click wrench ±4 %", "6 %": "wrench up to 10 N·m: ±6 %", "25 %": "by feel ±25 %"]),
    field(
        "grip",
        "Grip (clamped thickness)",
        Reads::Value(Unit::Millimetre),
        SectionId::Angle,
    ),
    field(
        "shank",
        "Plain shank within the grip",
        Reads::Value(Unit::Millimetre),
        SectionId::Angle,
    )
    .default("0 mm"),
    field("clamped", "Clamped part", Reads::Listed, SectionId::Angle)
        .default("steel")
        .choices(MATERIALS),
    field(
        "outer",
        "Outer diameter of the clamped part",
        Reads::Value(Unit::Millimetre),
        SectionId::Angle,
    )
    .absent("3 × bearing"),
    field("joint", "Screws into", Reads::Listed, SectionId::Angle)
        .default("nut")
        .choices(labelled!["nut": "nut", "tapped": "tapped hole"]),
    field(
        "into",
        "Material of the tapped hole",
        Reads::Listed,
        SectionId::Engagement,
    )
    .choices(MATERIALS),
    field(
        "engaged",
        "Length of full threads",
        Reads::Value(Unit::Millimetre),
        SectionId::Engagement,
    ),
    field(
        "boss",
        "Boss diameter",
        Reads::Value(Unit::Millimetre),
        SectionId::Engagement,
    )
    .absent("a thick block"),
    field(
        "wrench",
        "Wrench (drive to hand)",
        Reads::Value(Unit::Millimetre),
        SectionId::Wrench,
    ),
    field(
        "adapter",
        "Adapter (drive to bolt)",
        Reads::Value(Unit::Millimetre),
        SectionId::Wrench,
    )
    .absent("no adapter"),
    field(
        "adapter-angle",
        "Adapter angle from straight out",
        Reads::Value(Unit::Degree),
        SectionId::Wrench,
    )
    .default("0°")
    .choices(labelled!["0°": "straight out", "45°": "45°", "90°": "square", "180°": "folded back"]),
    field(
        "scale",
        "Wrench full scale",
        Reads::Value(Unit::NewtonMetre),
        SectionId::Wrench,
    ),
    field(
        "reading",
        "Reading on the wrench",
        Reads::Value(Unit::NewtonMetre),
        SectionId::Wrench,
    ),
    field(
        "lever",
        "Lever (bolt to hand)",
        Reads::Value(Unit::Millimetre),
        SectionId::Stuck,
    ),
    field(
        "heat",
        "Heated above a room at 20 °C by",
        Reads::Value(Unit::KelvinDifference),
        SectionId::Stuck,
    )
    .absent("a rise, such as 80 K")
    .choices(labelled!["80 K": "80 K, to 100 °C", "130 K": "130 K, to 150 °C", "180 K": "180 K, to 200 °C"]),
    field(
        "length-new",
        "Length of a new bolt",
        Reads::Value(Unit::Millimetre),
        SectionId::Reuse,
    ),
    field(
        "length-now",
        "Length of this bolt",
        Reads::Value(Unit::Millimetre),
        SectionId::Reuse,
    ),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fastener::bolt::{BoltText, resolve};
    use std::collections::HashSet;

    #[test]
    fn keys_are_unique_and_every_default_and_choice_reads() {
        let mut seen = HashSet::new();
        for field in FIELDS {
            assert!(seen.insert(field.key), "{} twice", field.key);
            let offered = field
                .choices
                .iter()
                .map(|choice| choice.text)
                .chain(Some(field.default).filter(|text| !text.is_empty()));
            for text in offered {
                let mut typed = BoltText::default();
                typed.set(field.key, text);
                if text == "custom" {
                    typed.set("bearing", "20");
                    typed.set("hole", "11");
                }
                assert_eq!(resolve(&typed).errors, vec![], "{} = {text}", field.key);
            }
        }
    }
}
