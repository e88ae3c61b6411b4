//! What a person does on the page: real keys and real taps, never a shortcut
//! through the page's own code.

use super::Phone;
use anyhow::{Context, Result};
use thirtyfour::{By, Key, WebElement};

impl Phone {
    /// Replaces what a field holds.
    pub fn type_into(&self, key: &str, text: &str) -> Result<()> {
        let field = self.element(&format!("[id='{key}']"))?;
        let typing = async {
            field.click().await?;
            field.send_keys(Key::Control + "a").await?;
            field.send_keys(Key::Backspace + "").await?;
            field.send_keys(text).await
        };
        self.wait_on(typing)
            .with_context(|| format!("`{key}` did not take \"{text}\""))
    }

    /// Types at the end of what a field holds.
    pub fn add_to(&self, key: &str, text: &str) -> Result<()> {
        let field = self.element(&format!("[id='{key}']"))?;
        let typing = async {
            field.send_keys(Key::Control + Key::End).await?;
            field.send_keys(text).await
        };
        self.wait_on(typing)
            .with_context(|| format!("`{key}` did not take \"{text}\""))
    }

    /// Presses keys where the focus is.
    pub fn press(&self, keys: impl Into<String>) -> Result<()> {
        let keys = keys.into();
        let pressing = async { self.browser().active_element().await?.send_keys(keys).await };
        Ok(self.wait_on(pressing)?)
    }

    /// Taps the element a selector finds; it must be visible and in nobody's shadow.
    pub fn tap(&self, selector: &str) -> Result<()> {
        let element = self.element(selector)?;
        self.wait_on(element.click())
            .with_context(|| format!("`{selector}` cannot be tapped"))
    }

    /// Follows the link to an address such as `#/bolt`.
    pub fn follow(&self, address: &str) -> Result<()> {
        self.tap(&format!("a[href='{address}']"))
    }

    /// Chooses an entry of a list by its value.
    pub fn choose(&self, key: &str, value: &str) -> Result<()> {
        self.tap(&format!("[id='{key}'] option[value='{value}']"))
    }

    fn element(&self, selector: &str) -> Result<WebElement> {
        self.until(&format!("`{selector}`"), || {
            Ok(self.wait_on(self.browser().find(By::Css(selector))).ok())
        })
    }
}
