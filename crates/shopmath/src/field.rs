//! What a screen asks for: one descriptor per key of the link, shared by all calculators.
//!
//! A screen's calculator lists its fields with this type; the page lays them out and holds the raw
//! texts. Nothing is read or calculated here.

use crate::quantity::Unit;

/// One input of a screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// The key in the link, also the base of the element ids on the page.
    pub key: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
    /// What text it takes.
    pub reads: Reads,
    /// The text a missing key stands for; empty where nothing is assumed.
    pub default: &'static str,
    /// An example of what to type, shown while the field is empty.
    pub example: &'static str,
    /// The part of the screen it belongs to.
    pub section: &'static str,
}

/// What text a field takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reads {
    /// One value; a bare number is in this unit.
    Value(Unit),
    /// A value or a range; a bare number is in this unit.
    Range(Unit),
    /// A tightening spec: stages joined by `+`.
    Spec,
    /// One of a list, by its id.
    Choice(&'static [Choice]),
    /// Text in a notation of its own, such as a thread or a belt name.
    Text,
}

/// One entry of a list to choose from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// The value in the link.
    pub id: &'static str,
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
