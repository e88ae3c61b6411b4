//! From a finger's move to its paint, dragging a pulley of the demo drive round.

use crate::{record, slow_down};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Phone, Server};
use serde_json::{Value, json};
use std::f64::consts::TAU;
use std::time::Duration;

/// The water pump: both its spans, the arm and every length move with it.
const GRIP: &str = ".grip[data-pulley='4']";
/// A finger that goes round in small steps, several times.
const MOVES: u32 = 240;
const ROUND: f64 = 60.0;
/// Points on the screen.
const RADIUS: f64 = 12.0;
/// A screen asks a finger where it is sixty times a second.
const BEAT: Duration = Duration::from_millis(16);

/// Six pulleys on a slowed processor.
pub(crate) fn measure() -> Result<Value> {
    let page = Server::start()?;
    let phone = Phone::fresh(page.site())?;
    phone.open("#/belt")?;
    // The worker's install would compete for the processor.
    phone.until_kept()?;
    let middle = "const found = document.querySelector(arguments[0]); found.scrollIntoView({ block: 'center' }); \
         const box = found.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]";
    let [x, y]: [f64; 2] = phone.script(middle, vec![json!(GRIP)])?;
    slow_down(&phone)?;
    let touch = |kind: &str, points: Value| {
        let event = json!({ "type": kind, "touchPoints": points });
        phone.devtools("Input.dispatchTouchEvent", event)
    };
    touch("touchStart", json!([{ "x": x, "y": y }]))?;
    // Off the spot where a finger still counts as tapping.
    touch("touchMove", json!([{ "x": x - 20.0, "y": y }]))?;
    touch("touchMove", json!([{ "x": x + RADIUS, "y": y }]))?;
    record::begin(&phone, "pointermove", "pointermove")?;
    let before = phone.text("output.verdict")?;
    for step in 1..=MOVES {
        let (sin, cos) = (TAU * f64::from(step) / ROUND).sin_cos();
        touch("touchMove", json!([{ "x": x + RADIUS * cos, "y": y + RADIUS * sin }]))?;
        std::thread::sleep(BEAT);
        if step == MOVES / 8 {
            ensure!(
                phone.text("output.verdict")? != before,
                "the length does not follow the finger"
            );
        }
    }
    touch("touchEnd", json!([]))?;
    phone.until("the last paint", || {
        Ok((record::count(&phone)? * 2 > MOVES as usize).then_some(()))
    })?;
    record::keep(&phone, record::count(&phone)?)?;
    record::all(&phone)
}
