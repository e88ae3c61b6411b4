//! What a screen reader hears while one types: nothing at the keys, and the result once at rest.

use crate::belt::FULL as DRIVE;
use crate::sheet;
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server, link};
use serde_json::json;

/// Notes every change that a screen reader would read out by itself, and when. What is silent says
/// so with `aria-live=\"off\"`; an `output` speaks by itself.
const LISTEN: &str = "
    window.heard = [];
    const live = (node) => {
        const from = node.nodeType === 1 ? node : node.parentElement;
        const region = from && from.closest('[aria-live], [role=status], [role=alert], [role=log], output');
        return region && region.getAttribute('aria-live') !== 'off' ? region : null;
    };
    const note = (changes) => {
        const regions = new Set();
        for (const change of changes) {
            const region = live(change.target);
            if (region) regions.add(region);
            for (const added of change.addedNodes) {
                if (added.nodeType !== 1) continue;
                for (const inner of [added, ...added.querySelectorAll('*')]) if (live(inner)) regions.add(live(inner));
            }
        }
        for (const region of regions) {
            const words = region.innerText.trim().replace(/\\s/g, ' ');
            if (words) heard.push([performance.now(), words]);
        }
    };
    new MutationObserver(note).observe(document.body, { subtree: true, childList: true, characterData: true });
    addEventListener('keydown', () => { window.pressed = performance.now() }, true)";

/// A typist who looks for each key, millisecond between two.
const SLOW: u32 = 250;
/// Twice as long as the page lets typing rest.
const REST: u32 = 2400;

#[test]
fn a_result_is_heard_once_and_not_at_each_key() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;

    phone.open("#/convert")?;
    hears(&phone, "q", "60 N·m", &["60 N·m", "44.3", "pound"])?;

    phone.open(&link("bolt", &[("thread", "M10"), ("class", "10.9")]))?;
    hears(&phone, "spec", "60 N·m", &["Believable"])?;
    hears(&phone, "lever", "long", &["Believable"])?;

    phone.open(&link("belt", DRIVE))?;
    hears(&phone, "step", "15 mm", &["length", "Nearest belt"])?;

    sheet::new_sheet(&phone)?;
    phone.tap("#add-fastener")?;
    for (key, text) in [("thread", "M10"), ("class", "8.8")] {
        phone.type_into(&format!("bolt-1-{key}"), text)?;
    }
    hears(&phone, "bolt-1-spec", "45 N·m", &["yield"])?;
    hears(&phone, "bolt-1-0-reading", "45.5", &["Within"])?;
    hears(&phone, "bolt-1-0-reading", "snug", &["number is missing"])
}

/// Types slowly into a field, and hears the words once, after the last key.
fn hears(phone: &Phone, key: &str, text: &str, words: &[&str]) -> Outcome {
    phone.type_into(key, "0")?;
    rest(phone, REST)?;
    phone.script::<()>(
        &format!("if (!window.heard) {{ {LISTEN} }} window.heard = []"),
        Vec::new(),
    )?;
    phone.press("\u{E003}")?;
    for letter in text.chars() {
        phone.press(letter)?;
        rest(phone, SLOW)?;
    }
    phone.until_true(&format!("`{key}` to be heard"), "return heard.length > 0")?;
    rest(phone, REST)?;
    let (heard, pressed): (Vec<(f64, String)>, f64) = phone.script("return [heard, pressed]", Vec::new())?;
    let [(at, said)] = heard.as_slice() else {
        anyhow::bail!("`{key}`: heard {} times: {heard:#?}", heard.len());
    };
    ensure!(*at > pressed, "`{key}`: heard while typing: {said}");
    let missing: Vec<_> = words.iter().filter(|word| !said.contains(**word)).collect();
    ensure!(missing.is_empty(), "`{key}`: \"{said}\" lacks {missing:?}");
    Ok(())
}

/// Lets time pass by the page's own clock, as a person does who does nothing.
fn rest(phone: &Phone, time: u32) -> Result<()> {
    let end: f64 = phone.script("return performance.now() + arguments[0]", vec![json!(time)])?;
    phone.until_true("some time", &format!("return performance.now() >= {end}"))
}
