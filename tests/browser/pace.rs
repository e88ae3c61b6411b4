//! The pace of answers: at once on a quick device; on a slow one a key is seen before its answer.

use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

/// A clock by which all that the page does takes so many times as long, so that it gives way to the
/// browser as often as it can, and a note of each key, not of what the page tells a field again: whether
/// an answer was still owed once its event was over.
fn clock(times: u32) -> String {
    format!(
        "const real = performance.now.bind(performance); performance.now = () => real() * {times}; \
         const date = Date.now, start = date(); Date.now = () => start + (date() - start) * {times}; \
         window.owed = []; addEventListener('input', (event) => event.isTrusted && setTimeout(() => \
         owed.push(!!document.querySelector('main[aria-busy]'))), true)"
    )
}

const BOLT: &str = "#/bolt?thread=M10&class=10.9&spec=20%20N%C2%B7m";

fn phone(server: &Server, times: u32) -> Result<Phone> {
    let phone = Phone::fresh(server.site())?;
    phone.before_page(&clock(times))?;
    phone.open(BOLT)?;
    phone.until_kept()?;
    Ok(phone)
}

#[test]
fn a_quick_device_owes_no_answer() -> Outcome {
    let server = Server::start()?;
    // Nothing takes any time.
    let phone = phone(&server, 0)?;
    let clamp = phone.result("clamp-mid")?;
    phone.type_into("spec", "44 ft-lb")?;
    // The clamp load grows as the torque does, which was 20 N·m.
    phone.until_result("clamp-mid", clamp * 59.655_989_726_580 / 20.0, 1e-9)?;
    let owed: Vec<bool> = phone.script("return owed", Vec::new())?;
    ensure!(owed.len() >= 8, "only {} keys were noted", owed.len());
    ensure!(!owed.contains(&true), "an answer was owed after its key: {owed:?}");
    Ok(())
}

#[test]
fn a_slow_device_shows_keys_first_and_loses_none() -> Outcome {
    let server = Server::start()?;
    let phone = phone(&server, 1000)?;
    phone.type_into("spec", "44 ft-lb")?;
    // Typed as fast as the driver can, over answers that are still owed.
    phone.add_to("spec", " + 90° + 45°")?;
    ensure!(phone.field("spec")? == "44 ft-lb + 90° + 45°");
    phone.until_text(".turn:nth-of-type(2) [data-row='°']", "45")?;
    ensure!(phone.count(".turn")? == 2);
    let owed: Vec<bool> = phone.script("return owed", Vec::new())?;
    ensure!(owed.contains(&true), "no key was seen before its answer: {owed:?}");
    ensure!(phone.count("main[aria-busy]")? == 0);
    Ok(())
}

#[test]
fn what_is_done_right_after_a_key_finds_its_answer() -> Outcome {
    let server = Server::start()?;
    let phone = phone(&server, 1000)?;
    phone.type_into("spec", "30 N·m")?;
    // The key and the tap in one breath, with no frame in between.
    let both = "const field = document.getElementById('spec'); field.value = '35 N·m'; \
         field.dispatchEvent(new InputEvent('input', { bubbles: true })); \
         const owed = !!document.querySelector('main[aria-busy]'); \
         [...document.querySelectorAll('button')].find((button) => button.textContent.startsWith('Large type')).click(); \
         return owed";
    let owed: bool = phone.script(both, Vec::new())?;
    ensure!(owed, "the key had its answer at once, so this shows nothing");
    phone.until_text(".large-number", "35 N·m")
}

#[test]
fn keys_pressed_while_an_answer_is_drawn_stay() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/bolt?thread=M10&class=10.9&grip=40")?;
    phone.until_kept()?;
    phone.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 }))?;
    for text in ["35 N·m + 90°", "20 N·m + 60°", "Tensioner bolt: 20 N·m + 60°"].repeat(5) {
        phone.type_into("spec", text)?;
        let held = phone.field("spec")?;
        ensure!(held == text, "`{text}` was typed, and `{held}` stands there");
        phone.until(&format!("the answer to `{text}`"), || {
            Ok((phone.count(".turn")? == 1).then_some(()))
        })?;
    }
    Ok(())
}
