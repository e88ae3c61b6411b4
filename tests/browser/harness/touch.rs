//! What a person does on the page: real keys and real taps, never a shortcut
//! through the page's own code.

use super::Phone;
use super::engine::Line;
use anyhow::{Context, Result};
use serde_json::{Value, json};
use thirtyfour::common::command::{Actions, Command};
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
        // WebKit's driver does not take nothing.
        if text.is_empty() {
            return self.until_answered();
        }
        // A new line is a key of its own to WebKit's driver, as to a person.
        let keys = text.replace('\n', "\u{e007}");
        self.wait_on(field.send_keys(keys))
            .with_context(|| format!("`{key}` did not take \"{text}\""))?;
        self.until_answered()
    }

    /// Waits until the page has answered what was typed: where it is slow, it says that it is busy.
    pub fn until_answered(&self) -> Result<()> {
        let script = "return !document.querySelector('main[aria-busy]')";
        self.until_true("the answer", script)
    }

    /// Types at the end of what a field holds.
    pub fn add_to(&self, key: &str, text: &str) -> Result<()> {
        let field = self.element(&format!("[id='{key}']"))?;
        let typing = async {
            field.send_keys(Key::Control + Key::End).await?;
            field.send_keys(text).await
        };
        self.wait_on(typing)
            .with_context(|| format!("`{key}` did not take \"{text}\""))?;
        self.until_answered()
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
        // A part that has just come into sight may not be laid out yet.
        self.until(&format!("`{key}` to offer `{value}`"), || {
            self.reach(&format!("[id='{key}']"))?;
            let entry = self.element(&format!("[id='{key}'] option[value='{value}']"))?;
            Ok(self.wait_on(entry.click()).ok())
        })
    }

    /// An element, scrolled clear of the bars at the top and bottom, as a thumb would, once nothing is on its way:
    /// common entries go from above it a moment after the focus has left their field.
    fn reach(&self, selector: &str) -> Result<WebElement> {
        let element = self.element(selector)?;
        let clear = "const found = document.querySelector(arguments[0]); \
             const box = found && found.getClientRects()[0]; \
             const moves = (one) => one.playState === 'running' && one.effect.getComputedTiming().endTime < 5000; \
             if (!box || document.getAnimations().some(moves)) return false; \
             const seen = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2); \
             return found.contains(seen)";
        self.until(&format!("`{selector}` to be in nobody's shadow"), || {
            if self.script(clear, vec![json!(selector)])? {
                return Ok(Some(()));
            }
            self.scroll_to(selector)?;
            Ok(None)
        })
        .or_else(|error| {
            let instead = "const box = document.querySelector(arguments[0])?.getClientRects()[0]; \
                 if (!box) return 'nothing, as it is not shown'; \
                 const seen = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2); \
                 return `${seen?.outerHTML.slice(0, 120)} at ${Math.round(box.x)}, ${Math.round(box.y)}`";
            let seen: String = self.script(instead, vec![json!(selector)])?;
            Err(error.context(format!("in its place is {seen}")))
        })?;
        Ok(element)
    }

    /// Scrolls to an element, as a thumb would, and waits until it stands still: what comes into sight on the
    /// way is laid out in the next frames, and moves it.
    pub fn scroll_to(&self, selector: &str) -> Result<()> {
        let still = "const found = document.querySelector(arguments[0]); \
             if (!found) return false; \
             const show = () => { \
               found.scrollIntoView({ block: 'center', inline: 'center' }); \
               return found.getBoundingClientRect().y + window.scrollY; }; \
             const place = show(); \
             return new Promise((done) => { \
               const frame = (left) => requestAnimationFrame(() => { \
                 if (left) frame(left - 1); else done(Math.abs(show() - place) < 1); }); \
               frame(4); setTimeout(() => done(false), 500); })";
        self.until(&format!("`{selector}` to stand still"), || {
            let still: bool = self.script(still, vec![json!(selector)])?;
            Ok(still.then_some(()))
        })
    }

    /// Drags what a selector finds by so many points, with a finger.
    pub fn drag(&self, selector: &str, by: [f64; 2]) -> Result<()> {
        self.drag_by("touch", selector, by)
    }

    /// Drags what a selector finds by so many points, with a mouse.
    pub fn drag_with_mouse(&self, selector: &str, by: [f64; 2]) -> Result<()> {
        self.drag_by("mouse", selector, by)
    }

    fn drag_by(&self, pointer: &str, selector: &str, by: [f64; 2]) -> Result<()> {
        let from = self.middle(selector)?;
        let mut steps = vec![to(from), down()];
        steps.extend(way(from, by).map(to));
        steps.push(up());
        self.point(pointer, &steps)
    }

    /// Puts a finger on what a selector finds and leaves it there; where that is.
    pub fn touch_down(&self, selector: &str) -> Result<[f64; 2]> {
        let at = self.middle(selector)?;
        self.finger("touchStart", Some(at), &[to(at), down()])?;
        Ok(at)
    }

    /// Moves the finger that is down.
    pub fn touch_move(&self, at: [f64; 2]) -> Result<()> {
        self.finger("touchMove", Some(at), &[to(at)])
    }

    /// Lifts the finger.
    pub fn touch_up(&self) -> Result<()> {
        self.finger("touchEnd", None, &[up()])
    }

    /// A step of a finger that stays down between commands. With Chromium's driver such a finger
    /// did not move the page on, so there it goes by the developer protocol.
    fn finger(&self, event: &str, at: Option<[f64; 2]>, steps: &[Value]) -> Result<()> {
        if !matches!(self.line(), Line::DevTools) {
            return self.point("touch", steps);
        }
        let points: Vec<Value> = at.iter().map(|[x, y]| json!({ "x": x, "y": y })).collect();
        let event = json!({ "type": event, "touchPoints": points });
        self.devtools("Input.dispatchTouchEvent", event).map(|_| ())
    }

    /// What a finger (`touch`) or a `mouse` does, one step after the other.
    fn point(&self, pointer: &str, steps: &[Value]) -> Result<()> {
        let actions = json!([{
            "type": "pointer", "id": pointer, "parameters": { "pointerType": pointer }, "actions": steps,
        }]);
        let command = Command::PerformActions(Actions::from(actions));
        self.wait_on(self.browser().cmd(command))
            .with_context(|| format!("the {pointer} could not do it"))?;
        Ok(())
    }

    /// The middle of an element, brought to the middle of the screen.
    fn middle(&self, selector: &str) -> Result<[f64; 2]> {
        let script = "const found = document.querySelector(arguments[0]); if (!found) return null; \
             const box = found.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]";
        self.scroll_to(selector)?;
        // It may be drawn anew in between.
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

fn down() -> Value {
    json!({ "type": "pointerDown", "button": 0 })
}

fn up() -> Value {
    json!({ "type": "pointerUp", "button": 0 })
}

/// A move to a place, in the time of one picture on a screen.
fn to([x, y]: [f64; 2]) -> Value {
    json!({ "type": "pointerMove", "x": x, "y": y, "duration": 16 })
}

/// Points on the way of a drag, its end the last.
fn way([x, y]: [f64; 2], by: [f64; 2]) -> impl Iterator<Item = [f64; 2]> {
    (1..=8_i32).map(move |step| {
        let share = f64::from(step) / 8.0;
        [x + by[0] * share, y + by[1] * share]
    })
}
