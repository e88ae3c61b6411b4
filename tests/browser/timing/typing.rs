//! From a keystroke to its paint, typing specs as a person does.

use crate::{empty_page, record, slow_down};
use anyhow::Result;
use fenderside_tests::harness::{Phone, Server};
use serde_json::{Value, json};
use std::time::Duration;

/// What stands in service manuals, and what people make of it.
const SPECS: &[&str] = &[
    "60 N·m",
    "44 ft-lb",
    "106 in-lbs",
    "35-45 N·m",
    "10 Nm + 90°",
    "20 Nm + 90° + 90°",
    "12,5 kgf·m",
    "1 5/8 in",
    "0.040 in",
    "35 psi",
    "2.4 bar",
    "6.5 qt",
    "850 mL",
    "185 lb",
    "88 °C",
    "190 °F",
    "65 mph",
    "750 rpm",
    "96 kW",
    "150000 km",
    "1,234 Nm",
    "3/8-16",
];
/// A bolt of which every section but the stretch bolt is worked out anew at each key.
const BOLT: &str = "#/bolt?thread=M10&class=10.9&spec=60%20N%C2%B7m&grip=40%20mm&clamped=alsi9cu3\
     &into=alsi9cu3&engaged=20%20mm&lever=400%20mm";
const TORQUES: &[&str] = &["60 N·m", "44 ft-lb", "35-45 N·m", "10 Nm + 90°", "520 in-lb"];
/// The demo drive, whose loads and slip hang on the speed.
const SPEEDS: &[&str] = &["750 rpm", "1800 rpm", "2400 rpm", "3000 rpm", "4500 rpm"];
/// Keystrokes on each screen, at least: enough that one in a hundred is not the worst of all.
const KEYS: usize = 300;

/// Before a text is typed.
const REST: Duration = Duration::from_millis(200);
/// The key, as WebDriver writes it.
const BACKSPACE: &str = "\u{e003}";

/// A quick typist: seven to twelve keys a second, each held for half of the time. In between the page is
/// left alone, as looking at it would be work for it. No person types to a clock; an even beat of a tenth
/// of a second meets a timer of the browser's own at every key of one run, and at none of another.
const HALF_BEATS: [u64; 7] = [50, 62, 44, 71, 53, 41, 59];

/// The page, and the same keys in a plain field: what no page can do better.
pub(crate) fn measure() -> Result<Value> {
    let page = Server::start()?;
    let empty = empty_page()?;
    Ok(json!({
        "page": type_on(&page, "#/convert", "q", SPECS)?,
        "empty": type_on(&empty, "", "q", SPECS)?,
        "bolt": type_on(&page, BOLT, "spec", TORQUES)?,
        "belt": type_on(&page, "#/belt", "rpm", SPEEDS)?,
    }))
}

fn type_on(server: &Server, address: &str, key: &str, texts: &[&str]) -> Result<Value> {
    let phone = Phone::fresh(server.site())?;
    // Slow from its start, as a phone is.
    slow_down(&phone)?;
    phone.open(address)?;
    // The worker's install would compete for the processor.
    phone.until_kept()?;
    type_texts(&phone, key, texts, KEYS)
}

/// Types texts one after the other, each in place of the one before, until there were so many keys.
pub(crate) fn type_texts(phone: &Phone, key: &str, texts: &[&str], keys: usize) -> Result<Value> {
    let mut typed = 0;
    record::begin(phone, "keydown", "input")?;
    for text in texts.iter().cycle() {
        clear(phone, key, typed)?;
        for letter in text.chars() {
            let half = Duration::from_millis(HALF_BEATS[typed % HALF_BEATS.len()]);
            press(phone, letter, half)?;
            typed += 1;
        }
        phone.until("the last paint", || Ok((record::count(phone)? == typed).then_some(())))?;
        if typed >= keys {
            break;
        }
    }
    record::all(phone)
}

/// Empties the field. That is a keystroke of its own kind and is not counted, and the driver's work for
/// it is none of the page's. It touches nothing: the pointer a driver taps with would hover over the
/// page, which on a phone none does, and be looked for in each frame.
fn clear(phone: &Phone, key: &str, typed: usize) -> Result<()> {
    let select = "const field = document.getElementById(arguments[0]); field.focus(); field.select();";
    phone.until(&format!("`{key}` to be empty"), || {
        // Once it is there.
        phone.field(key)?;
        phone.script::<()>(select, vec![json!(key)])?;
        phone.keys(BACKSPACE)?;
        Ok(phone.field(key)?.is_empty().then_some(()))
    })?;
    phone.until_answered()?;
    record::keep(phone, typed)?;
    std::thread::sleep(REST);
    Ok(())
}

/// Presses a key for half a beat, and lets go for as long.
fn press(phone: &Phone, letter: char, half: Duration) -> Result<()> {
    let text = letter.to_string();
    let down = json!({ "type": "keyDown", "text": text, "unmodifiedText": text, "key": text });
    phone.devtools("Input.dispatchKeyEvent", down)?;
    std::thread::sleep(half);
    phone.devtools("Input.dispatchKeyEvent", json!({ "type": "keyUp", "key": text }))?;
    std::thread::sleep(half);
    Ok(())
}
