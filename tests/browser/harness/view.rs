//! What a person reads on the page, by the contract of its results and errors.

use super::Phone;
use anyhow::{Context, Result, bail};
use serde_json::json;

/// Reads the `value` of the first `<data>` that a selector finds.
const VALUE: &str = "const found = document.querySelector(arguments[0]); \
     return found && found.localName === 'data' ? found.getAttribute('value') : null";

impl Phone {
    /// A result's unrounded value, in the coherent unit of the contract.
    pub fn result(&self, id: &str) -> Result<f64> {
        self.value(&format!("[id='{id}']"))
    }

    /// A conversion's unrounded value, in the row's own unit.
    pub fn row(&self, unit: &str) -> Result<f64> {
        self.value(&format!("[data-row='{unit}']"))
    }

    /// Waits until a result is close to a value, relative to its size.
    pub fn until_result(&self, id: &str, wanted: f64, tolerance: f64) -> Result<()> {
        self.until_value(&format!("[id='{id}']"), wanted, tolerance)
    }

    /// Waits until a conversion is close to a value, relative to its size.
    pub fn until_row(&self, unit: &str, wanted: f64, tolerance: f64) -> Result<()> {
        self.until_value(&format!("[data-row='{unit}']"), wanted, tolerance)
    }

    /// How many elements a selector finds just now.
    pub fn count(&self, selector: &str) -> Result<usize> {
        let script = "return document.querySelectorAll(arguments[0]).length";
        self.script(script, vec![json!(selector)])
    }

    /// The text of an element, once it is there. Spaces that do not break read as plain ones.
    ///
    /// What the page lays out only once it is near the screen has no text in Firefox before that,
    /// so it is brought there.
    pub fn text(&self, selector: &str) -> Result<String> {
        let script = "const found = document.querySelector(arguments[0]); if (!found) return null; \
             const part = found.firstElementChild ?? found; \
             if (part.checkVisibility() && !part.checkVisibility({ contentVisibilityAuto: true })) \
             { found.scrollIntoView({ block: 'center' }); return null } \
             return found.innerText.replace(/\\s/g, ' ')";
        self.until(&format!("`{selector}`"), || {
            self.script::<Option<String>>(script, vec![json!(selector)])
        })
    }

    /// Waits until the text of an element contains some words.
    pub fn until_text(&self, selector: &str, words: &str) -> Result<()> {
        self.until(&format!("`{selector}` to say \"{words}\""), || {
            let text = self.text(selector)?;
            Ok(text.contains(words).then_some(()))
        })
    }

    /// An attribute of an element that is there; none when it has no such attribute.
    pub fn attribute(&self, selector: &str, name: &str) -> Result<Option<String>> {
        let script = "const found = document.querySelector(arguments[0]); \
             return found ? [found.getAttribute(arguments[1])] : null";
        let found: Option<[Option<String>; 1]> = self.script(script, vec![json!(selector), json!(name)])?;
        let [value] = found.with_context(|| format!("there is no `{selector}`"))?;
        Ok(value)
    }

    /// The error shown for a field. The field must say itself that it is invalid.
    pub fn error(&self, key: &str) -> Result<String> {
        let text = self.text(&format!("[id='{key}-error']"))?;
        match self.attribute(&format!("[id='{key}']"), "aria-invalid")?.as_deref() {
            Some("true") => Ok(text),
            other => bail!("`{key}` shows the error \"{text}\" but its aria-invalid is {other:?}"),
        }
    }

    /// What a field holds.
    pub fn field(&self, key: &str) -> Result<String> {
        let script = "const found = document.getElementById(arguments[0]); \
             return found ? found.value : null";
        self.until(&format!("the field `{key}`"), || {
            self.script::<Option<String>>(script, vec![json!(key)])
        })
    }

    /// The address behind `#`, as it stands in the address line.
    pub fn fragment(&self) -> Result<String> {
        self.script("return location.hash", Vec::new())
    }

    fn value(&self, selector: &str) -> Result<f64> {
        self.until(&format!("the result `{selector}`"), || self.value_now(selector))
    }

    fn value_now(&self, selector: &str) -> Result<Option<f64>> {
        let text: Option<String> = self.script(VALUE, vec![json!(selector)])?;
        text.map(|text| text.parse().with_context(|| format!("`{selector}` holds `{text}`")))
            .transpose()
    }

    /// Waits until the `<data>` that a selector finds is close to a value, relative to its size.
    pub fn until_value(&self, selector: &str, wanted: f64, tolerance: f64) -> Result<()> {
        let close = |value: f64| (value - wanted).abs() <= tolerance * wanted.abs().max(value.abs());
        let waited = self.until(&format!("`{selector}` to be {wanted}"), || {
            Ok(self.value_now(selector)?.filter(|value| close(*value)))
        });
        match waited {
            Ok(_) => Ok(()),
            Err(error) => Err(error).with_context(|| format!("`{selector}` is {:?} at last", self.value_now(selector))),
        }
    }
}
