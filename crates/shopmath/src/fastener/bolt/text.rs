//! What was typed into the Bolt screen, by key.

use super::field::FIELDS;
use super::read;
use crate::quantity::{Bounds, Kind};

/// The raw texts, one per field of [`FIELDS`]; empty where nothing was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoltText {
    texts: Vec<String>,
}

impl Default for BoltText {
    fn default() -> Self {
        Self {
            texts: vec![String::new(); FIELDS.len()],
        }
    }
}

impl BoltText {
    /// The text of a key; empty for an unknown one.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// text.set("spec", "60 N·m");
    /// assert_eq!([text.get("spec"), text.get("grip"), text.get("colour")], ["60 N·m", "", ""]);
    /// ```
    #[must_use]
    pub fn get(&self, key: &str) -> &str {
        place(key)
            .and_then(|place| self.texts.get(place))
            .map_or("", String::as_str)
    }

    /// Sets the text of a key; whether the key exists.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// assert!(text.set("thread", "M10"));
    /// assert!(!text.set("colour", "red"));
    /// assert_eq!(text.get("thread"), "M10");
    /// ```
    pub fn set(&mut self, key: &str, text: impl Into<String>) -> bool {
        let Some(slot) = place(key).and_then(|place| self.texts.get_mut(place)) else {
            return false;
        };
        *slot = text.into();
        true
    }

    /// Whether something was typed for a key; spaces alone are nothing, and a default is not typed.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// text.set("grip", "42 mm");
    /// text.set("class", " ");
    /// assert!(text.has("grip") && !text.has("class") && !text.has("mu"));
    /// ```
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        !self.get(key).trim().is_empty()
    }

    /// The stages of the spec, each in the unit it was typed in; none where it cannot be read
    /// or is no torque or angle.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// text.set("spec", "10 + 90°");
    /// assert_eq!(text.stages().len(), 2);
    /// ```
    #[must_use]
    pub fn stages(&self) -> Vec<Bounds> {
        let read = read::stages(self.get("spec")).unwrap_or_default();
        let stages: Vec<Bounds> = read.into_iter().map(|stage| stage.value).collect();
        let tightens = |stage: &Bounds| matches!(stage.kind(), Kind::Torque | Kind::Angle);
        if stages.iter().all(tightens) {
            stages
        } else {
            Vec::new()
        }
    }

    /// The keys with a text, in field order.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// text.set("grip", "42 mm");
    /// text.set("thread", "M10");
    /// assert_eq!(text.typed().collect::<Vec<_>>(), [("thread", "M10"), ("grip", "42 mm")]);
    /// ```
    pub fn typed(&self) -> impl Iterator<Item = (&'static str, &str)> {
        FIELDS
            .iter()
            .zip(&self.texts)
            .filter(|(_, text)| !text.trim().is_empty())
            .map(|(field, text)| (field.key, text.as_str()))
    }

    /// The text that holds for a key while nothing is typed. The joint is taken as tapped once a
    /// hole material or an engagement is given; all else is the field's own default.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// assert_eq!((text.default_of("joint"), text.default_of("thread")), (Some("nut"), None));
    /// text.set("into", "a380");
    /// assert_eq!(text.default_of("joint"), Some("tapped"));
    /// ```
    #[must_use]
    pub fn default_of(&self, key: &str) -> Option<&'static str> {
        if key == "joint" && (self.has("into") || self.has("engaged")) {
            return Some("tapped");
        }
        Some(super::field::of(key)?.default).filter(|text| !text.is_empty())
    }

    /// The text that holds for a key: typed, or its default, or empty.
    ///
    /// ```
    /// use shopmath::fastener::bolt::BoltText;
    /// let mut text = BoltText::default();
    /// assert_eq!([text.effective("head"), text.effective("thread")], ["hex", ""]);
    /// text.set("head", "flange");
    /// assert_eq!(text.effective("head"), "flange");
    /// ```
    #[must_use]
    pub fn effective(&self, key: &str) -> &str {
        if self.has(key) {
            self.get(key)
        } else {
            self.default_of(key).unwrap_or("")
        }
    }
}

fn place(key: &str) -> Option<usize> {
    FIELDS.iter().position(|field| field.key == key)
}
