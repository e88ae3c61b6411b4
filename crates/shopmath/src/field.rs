//! What a screen asks for: one descriptor per key of the link, shared by all calculators.
//!
//! A screen's calculator lists its fields with this type; the page lays them out and holds the raw
//! texts. Whether a text names its unit is asked here; nothing is calculated.

use crate::quantity::Unit;
use crate::quantity::fault::Fault;
use crate::quantity::read::{self, Expect};

/// One input of a screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// The key in the link, also the base of the element ids on the page.
    pub key: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
    /// What text it takes.
    pub reads: Reads,
    /// The text a missing key stands for; empty where nothing is assumed.
    pub default: &'static str,
    /// What stands in the empty field where there is no default: what holds then, or an example.
    pub hint: &'static str,
    /// Common entries, each one tap away; all there are where only they can be chosen.
    pub choices: &'static [Choice],
    /// The part of the screen it belongs to.
    pub section: &'static str,
}

/// What text a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reads {
    /// One value; a bare number is in this unit.
    Value(Unit),
    /// A value or a range; a bare number is in this unit.
    Range(Unit),
    /// A tightening spec: stages joined by `+`.
    Spec,
    /// One of the choices and nothing else.
    Listed,
    /// Text in a notation of its own, such as a thread or a belt name.
    Text,
}

/// One entry to choose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What it types, also its value in the link.
    pub text: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
}

/// What is wrong with the text of one field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FieldFault {
    /// The key of the field.
    pub key: &'static str,
    /// The whole sentence: what was read and what to type instead.
    pub sentence: String,
    /// Whole texts to offer instead, each one tap away; empty where none can be guessed.
    pub remedies: Vec<String>,
}

impl FieldFault {
    /// The fault of a text that the reader of quantities does not take.
    pub(crate) fn misread(key: &'static str, text: &str, fault: &Fault) -> Self {
        Self {
            key,
            sentence: fault.sentence(text),
            remedies: fault.remedies(text),
        }
    }
}

impl Reads {
    /// The symbol of the unit that a text is read in though it names none: of a number alone. None where a unit
    /// is named, where nothing is typed, and where a number has none.
    ///
    /// ```
    /// use shopmath::{field::Reads, quantity::Unit};
    /// let length = Reads::Value(Unit::Millimetre);
    /// assert_eq!((length.assumed("2,5"), length.assumed("2 in"), length.assumed("")), (Some("mm"), None, None));
    /// assert_eq!(Reads::Range(Unit::Number).assumed("0.12"), None);
    /// ```
    #[must_use]
    pub fn assumed(self, text: &str) -> Option<&'static str> {
        let (Self::Value(unit) | Self::Range(unit)) = self else {
            return None;
        };
        (unit != Unit::Number && is_bare(text.trim_start_matches('±'), unit)).then_some(unit.symbol())
    }
}

/// Whether a text is a number or a range that is read in a unit only because it names none.
pub(crate) fn is_bare(text: &str, unit: Unit) -> bool {
    let read = |bare| {
        let kind = Some(unit.kind());
        read::range(text, Expect { kind, bare }).is_ok()
    };
    // Most texts name theirs and are read once.
    !read(None) && read(Some(unit))
}

impl Field {
    /// What stands in the empty field: its default, or its hint.
    ///
    /// ```
    /// use shopmath::drive::bench;
    /// let empty = |key| bench::field(key).unwrap().empty();
    /// assert_eq!((empty("mu"), empty("belt")), ("0.3", "such as 6PK1453"));
    /// ```
    #[must_use]
    pub fn empty(&self) -> &'static str {
        if self.default.is_empty() {
            self.hint
        } else {
            self.default
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Reads;
    use crate::quantity::Unit;

    #[test]
    fn a_unit_is_assumed_for_what_is_read_without_one_and_nothing_else() {
        let length = Reads::Value(Unit::Millimetre);
        for text in ["40", "2,5", "2,", "1e3", "−3", " 40 ", "1 000"] {
            assert_eq!(length.assumed(text), Some("mm"), "{text}");
        }
        for text in ["", "40 mm", "1/2 in", "1/2\"", "1/2", "forty", "1,234", "40-", "40 kg"] {
            assert_eq!(length.assumed(text), None, "{text}");
        }
        // A fraction is asked about in millimetres alone.
        assert_eq!(Reads::Value(Unit::NewtonMetre).assumed("1/2"), Some("N·m"));
        assert_eq!(Reads::Range(Unit::Hertz).assumed("35..45"), Some("Hz"));
        let percent = Reads::Value(Unit::Percent);
        assert_eq!(
            ["4", "±4", "±4 %"].map(|text| percent.assumed(text)),
            [Some("%"), Some("%"), None]
        );
    }
}
