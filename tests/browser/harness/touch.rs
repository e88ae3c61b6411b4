//! What a person does on the page: real keys and real taps, never a shortcut
//! through the page's own code.

use super::Phone;
use anyhow::{Context, Result};
use serde_json::json;
use thirtyfour::{By, Key, WebElement};

impl Phone {
    /// Replaces what a field holds.
    pub fn type_into(&self, key: &str, text: &str) -> Result<()> {
        let field = self.reach(&format!("[id='{key}']"))?;
        self.wait_on(field.click())
            .with_context(|| format!("`{key}` cannot be tapped"))?;
        // Ctrl+A now and then takes the whole page on a touch screen; a long press takes the field.
        let select = "document.getElementById(arguments[0]).select()";
        self.until(&format!("`{key}` to be empty"), || {
            self.script::<()>(select, vec![json!(key)])?;
            self.wait_on(field.send_keys(Key::Backspace + ""))?;
            Ok(self.field(key)?.is_empty().then_some(()))
        })?;
        self.wait_on(field.send_keys(text))
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

    /// Presses one key after another, wherever the focus is, as on a keyboard.
    pub fn keys(&self, keys: &str) -> Result<()> {
        let pressing = self.browser().action_chain().send_keys(keys);
        self.wait_on(pressing.perform()).context("a key was not taken")
    }

    /// On to the next stop of the keyboard.
    pub fn tab(&self) -> Result<()> {
        self.keys("\u{E004}")
    }

    /// Back to the one before.
    pub fn tab_back(&self) -> Result<()> {
        let shift = || Key::Shift.value();
        let keys = self.browser().action_chain().key_down(shift());
        let keys = keys.send_keys("\u{E004}").key_up(shift());
        self.wait_on(keys.perform()).context("a key was not taken")
    }

    /// Taps the element a selector finds; it must be visible and in nobody's shadow.
    pub fn tap(&self, selector: &str) -> Result<()> {
        let element = self.reach(selector)?;
        self.wait_on(element.click())
            .with_context(|| format!("`{selector}` cannot be tapped"))
    }

    /// Follows the link to an address such as `#/bolt`.
    pub fn follow(&self, address: &str) -> Result<()> {
        self.tap(&format!("a[href='{address}']"))
    }

    /// Chooses an entry of a list by its value.
    pub fn choose(&self, key: &str, value: &str) -> Result<()> {
        let entry = self.element(&format!("[id='{key}'] option[value='{value}']"))?;
        self.wait_on(entry.click())
            .with_context(|| format!("`{key}` does not offer `{value}`"))
    }

    /// An element, scrolled clear of the bars at the top and bottom, as a thumb would.
    fn reach(&self, selector: &str) -> Result<WebElement> {
        let element = self.element(selector)?;
        let clear = "const found = document.querySelector(arguments[0]); \
             const box = found && found.getClientRects()[0]; \
             if (!box) return false; \
             const seen = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2); \
             if (found.contains(seen)) return true; \
             found.scrollIntoView({ block: 'center', inline: 'center' }); return false";
        self.until(&format!("`{selector}` to be in nobody's shadow"), || {
            let clear: bool = self.script(clear, vec![json!(selector)])?;
            Ok(clear.then_some(()))
        })?;
        Ok(element)
    }

    /// Drags what a selector finds by so many points, with a finger.
    pub fn drag(&self, selector: &str, by: [f64; 2]) -> Result<()> {
        let [x, y] = self.middle(selector)?;
        let touch = |kind: &str, points: &[[f64; 2]]| {
            let points: Vec<_> = points.iter().map(|[x, y]| json!({ "x": x, "y": y })).collect();
            self.devtools(
                "Input.dispatchTouchEvent",
                json!({ "type": kind, "touchPoints": points }),
            )
        };
        touch("touchStart", &[[x, y]])?;
        for at in way([x, y], by) {
            touch("touchMove", &[at])?;
        }
        touch("touchEnd", &[]).map(|_| ())
    }

    /// Drags what a selector finds by so many points, with a mouse.
    pub fn drag_with_mouse(&self, selector: &str, by: [f64; 2]) -> Result<()> {
        let [x, y] = self.middle(selector)?;
        let mouse = |kind: &str, [x, y]: [f64; 2]| {
            let event = json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": 1, "clickCount": 1 });
            self.devtools("Input.dispatchMouseEvent", event)
        };
        mouse("mousePressed", [x, y])?;
        for at in way([x, y], by) {
            mouse("mouseMoved", at)?;
        }
        mouse("mouseReleased", [x + by[0], y + by[1]]).map(|_| ())
    }

    /// The middle of an element, brought to the middle of the screen.
    fn middle(&self, selector: &str) -> Result<[f64; 2]> {
        let script = "const found = document.querySelector(arguments[0]); if (!found) return null; \
             found.scrollIntoView({ block: 'center' }); const box = found.getBoundingClientRect(); \
             return [box.x + box.width / 2, box.y + box.height / 2]";
        self.until(&format!("`{selector}`"), || {
            self.script::<Option<[f64; 2]>>(script, vec![json!(selector)])
        })
    }

    fn element(&self, selector: &str) -> Result<WebElement> {
        self.until(&format!("`{selector}`"), || {
            Ok(self.wait_on(self.browser().find(By::Css(selector))).ok())
        })
    }
}

/// Points on the way of a drag, its end the last.
fn way([x, y]: [f64; 2], by: [f64; 2]) -> impl Iterator<Item = [f64; 2]> {
    (1..=8_i32).map(move |step| {
        let share = f64::from(step) / 8.0;
        [x + by[0] * share, y + by[1] * share]
    })
}
