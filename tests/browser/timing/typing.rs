//! From a keystroke to its paint, typing specs as a person does.

use crate::slow_down;
use anyhow::Result;
use fenderside_tests::harness::{Phone, Server};
use serde_json::{Value, json};

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
/// Together well over 200 keystrokes.
const ROUNDS: usize = 2;

/// For every character typed: from the key event's own time to the task after the
/// next frame (`paint`), and the part of it in which the page was at work: until
/// its handlers were done, and from the frame's start to its end (`work`).
const RECORD: &str = r"
    const typing = window.typing = { paint: [], work: [] };
    let pressed = 0;
    addEventListener('keydown', (event) => { pressed = event.timeStamp; }, true);
    addEventListener('input', () => {
        const begun = pressed;
        let handled = 0;
        const soon = (then) => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = then;
            port2.postMessage(null);
        };
        soon(() => { handled = performance.now(); });
        requestAnimationFrame(() => {
            const frame = performance.now();
            soon(() => {
                const painted = performance.now();
                // A frame may come before the first task does; then all of it is work.
                const idle = handled > 0 && handled < frame ? frame - handled : 0;
                typing.paint.push(painted - begun);
                typing.work.push(painted - begun - idle);
            });
        });
    }, true);
";

pub(crate) fn measure() -> Result<Value> {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    // The worker's install would compete for the processor.
    phone.until_kept()?;
    slow_down(&phone)?;
    phone.script::<()>(RECORD, Vec::new())?;
    let mut typed = 0;
    for spec in SPECS.iter().cycle().take(ROUNDS * SPECS.len()) {
        clear(&phone)?;
        // Clearing is a keystroke of its own kind and is not counted.
        phone.script::<()>(
            "typing.paint.length = typing.work.length = arguments[0]",
            vec![json!(typed)],
        )?;
        for letter in spec.chars() {
            typed += 1;
            press(&phone, letter)?;
            until_painted(&phone, typed)?;
        }
    }
    phone.script("return window.typing", Vec::new())
}

fn clear(phone: &Phone) -> Result<()> {
    phone.type_into("q", "")?;
    // Two frames later the paint of the empty field has been recorded.
    phone.script(
        "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null))))",
        Vec::new(),
    )
}

fn press(phone: &Phone, letter: char) -> Result<()> {
    let text = letter.to_string();
    let down = json!({ "type": "keyDown", "text": text, "unmodifiedText": text, "key": text });
    phone.devtools("Input.dispatchKeyEvent", down)?;
    phone.devtools("Input.dispatchKeyEvent", json!({ "type": "keyUp", "key": text }))?;
    Ok(())
}

fn until_painted(phone: &Phone, typed: usize) -> Result<()> {
    phone.until("the paint of a keystroke", || {
        let count: usize = phone.script("return typing.work.length", Vec::new())?;
        Ok((count >= typed).then_some(()))
    })
}
