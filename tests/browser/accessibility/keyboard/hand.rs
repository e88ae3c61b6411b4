//! A person without a mouse: Tab to a place, look where the focus is, press a key.

use anyhow::{Context, Result, bail};
use fenderside_tests::harness::{Outcome, Phone};
use serde_json::json;

/// More stops than any screen has.
const STOPS: usize = 400;

/// Where the focus is: whether that is what a selector finds, its name, and what is wrong with how
/// it shows. The outline of an input that lies unseen over its words is theirs.
const HERE: &str = "
    const found = document.activeElement;
    const drawn = found.matches('.choice-option input') ? found.nextElementSibling
        : found.matches('.file input') ? found.parentElement : found;
    const name = found.outerHTML.slice(0, 90);
    if (found === document.body) return [false, 'body', null];
    const style = getComputedStyle(drawn);
    const light = (colour) => colour.match(/[\\d.]+/g).slice(0, 3).map((part) => part / 255)
        .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
        .reduce((sum, part, place) => sum + part * [0.2126, 0.7152, 0.0722][place], 0);
    const behind = (of) => {
        for (let at = of; at; at = at.parentElement) {
            const colour = getComputedStyle(at).backgroundColor;
            if (!/, 0\\)$/.test(colour)) return colour;
        }
        return 'rgb(255, 255, 255)';
    };
    const [one, other] = [light(style.outlineColor), light(behind(drawn.parentElement))].sort((a, b) => b - a);
    const whole = found.matches('.choice-option input') ? found.parentElement : drawn;
    const box = drawn.getBoundingClientRect();
    const over = document.elementFromPoint(box.x + Math.min(box.width, innerWidth) / 2, box.y + Math.min(box.height / 2, 24));
    const wrong = style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2 ? 'no outline'
        : (one + 0.05) / (other + 0.05) < 3 ? 'a faint outline'
        : !over || !(whole.contains(over) || over.contains(whole)) ? 'under ' + (over ? over.outerHTML.slice(0, 60) : 'the edge, at ' + JSON.stringify(box)) : null;
    return [!!arguments[0] && found.matches(arguments[0]), name, wrong]";

/// Goes on with Tab until the focus is on what a selector finds. Every stop on the way must show.
pub(super) fn tab_to(phone: &Phone, selector: &str) -> Outcome {
    go_to(phone, selector, Phone::tab)
}

/// Goes back with Shift and Tab.
pub(super) fn tab_back_to(phone: &Phone, selector: &str) -> Outcome {
    go_to(phone, selector, Phone::tab_back)
}

fn go_to(phone: &Phone, selector: &str, step: fn(&Phone) -> Outcome) -> Outcome {
    for _ in 0..STOPS {
        step(phone)?;
        if stop(phone, selector)?.0 {
            return Ok(());
        }
    }
    bail!("`{selector}` was not reached in {STOPS} stops")
}

/// The stop the focus is at: whether it is the one wanted, and its name. It must be seen, if not at
/// once then after the scroll that brings it in.
pub(super) fn stop(phone: &Phone, selector: &str) -> Result<(bool, String)> {
    let last = std::cell::RefCell::new(String::new());
    let seen = phone.until("the focus to be seen", || {
        let (is_it, name, wrong): (bool, String, Option<String>) = phone.script(HERE, vec![json!(selector)])?;
        let Some(wrong) = wrong else {
            return Ok(Some((is_it, name)));
        };
        last.replace(format!("{name}: {wrong}"));
        Ok(None)
    });
    seen.with_context(|| format!("the focus on {}", last.borrow()))
}

/// Waits until the focus is on what a selector finds: a moment after a key it is there by itself.
pub(super) fn until_at(phone: &Phone, selector: &str) -> Outcome {
    let here = format!("return document.activeElement.matches({})", json!(selector));
    phone.until_true(&format!("the focus on `{selector}`"), &here)
}

/// Tabs to a button, a link, a summary or the like and presses Enter.
pub(super) fn enter(phone: &Phone, selector: &str) -> Outcome {
    tab_to(phone, selector)?;
    phone.keys("\u{E007}")
}

/// Tabs to a field and types over what it holds.
pub(super) fn fill(phone: &Phone, selector: &str, text: &str) -> Outcome {
    tab_to(phone, selector)?;
    phone.keys(text)
}

/// Whatever is waited for: how many elements a selector finds.
pub(super) fn until_count(phone: &Phone, selector: &str, wanted: usize) -> Outcome {
    phone.until(&format!("{wanted} of `{selector}`"), || {
        Ok((phone.count(selector)? == wanted).then_some(()))
    })
}
