//! Every screen, state, theme and width past axe, and nothing wider than the screen.
//!
//! Chromium only: the sizes, the paper and the printed look are set through its developer protocol.

use super::axe;
use super::subjects::{SUBJECTS, Subject};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;
use std::collections::BTreeMap;

/// Phones held upright, a tablet, a desk.
const WIDTHS: [u32; 4] = [320, 390, 768, 1280];
/// Phones, where doubled text is tightest.
const PHONES: [u32; 2] = [320, 390];
/// A phone's height.
const HEIGHT: u32 = 844;

/// How tall the page is and how high the screen, once two frames have laid out the parts that have
/// come into sight with the last change of either.
const TALL: &str = "
    const frame = () => new Promise((next) => requestAnimationFrame(next));
    return frame().then(frame).then(() => [document.documentElement.scrollHeight, innerHeight])";

/// What was found, and where each of it.
#[derive(Default)]
struct Report {
    runs: usize,
    wrong: BTreeMap<String, Vec<String>>,
}

#[test]
fn nothing_is_found_in_the_sun() -> Outcome {
    check("sun", "17px", &WIDTHS, Phone::fresh)
}

#[test]
fn nothing_is_found_in_the_dark() -> Outcome {
    check("dark", "17px", &WIDTHS, Phone::fresh)
}

#[test]
fn nothing_is_found_in_text_twice_as_large() -> Outcome {
    for theme in ["sun", "dark"] {
        check(theme, "34px", &PHONES, twice_as_large)?;
    }
    Ok(())
}

/// A phone whose owner has set text to 200 % in the browser's settings.
fn twice_as_large(site: &str) -> Result<Phone> {
    Phone::with_text_of(32, site)
}

fn check(theme: &str, text: &str, widths: &[u32], start: fn(&str) -> Result<Phone>) -> Outcome {
    let server = Server::start()?;
    let phone = start(server.site())?;
    choose(&phone, theme)?;
    let size: String = phone.script("return getComputedStyle(document.body).fontSize", Vec::new())?;
    ensure!(size == text, "text is {size}, not {text}");
    let mut report = Report::default();
    for subject in SUBJECTS {
        resize(&phone, 390, HEIGHT)?;
        // Loaded anew: nothing of the last subject is left open.
        phone.go("about:blank")?;
        (subject.reach)(&phone)?;
        axe::put(&phone)?;
        for &width in widths {
            look(&phone, subject, width, &mut report)?;
        }
        media(&phone, false)?;
    }
    ensure!(
        report.runs == SUBJECTS.len() * widths.len(),
        "{} runs of axe",
        report.runs
    );
    let found: Vec<String> = report.wrong.iter().map(told).collect();
    ensure!(found.is_empty(), "{theme}:\n{}", found.join("\n"));
    Ok(())
}

fn told((wrong, places): (&String, &Vec<String>)) -> String {
    format!("{wrong}\n    in {}", places.join("; "))
}

/// Puts the theme where the page keeps it, and lets the page find it there.
fn choose(phone: &Phone, theme: &str) -> Outcome {
    phone.open("#/convert")?;
    phone.script::<()>(
        "localStorage.setItem('fenderside.theme', arguments[0])",
        vec![json!(theme)],
    )?;
    phone.reload()?;
    phone.until_true(
        theme,
        &format!("return document.documentElement.dataset.theme === '{theme}'"),
    )
}

/// The subject at one width, past axe.
fn look(phone: &Phone, subject: &Subject, width: u32, report: &mut Report) -> Outcome {
    media(phone, subject.printed)?;
    whole(phone, width)?;
    let found = axe::run(phone)?;
    report.runs += 1;
    let mut note = |wrong: String| {
        let place = format!("{}, {width} px", subject.name);
        report.wrong.entry(wrong).or_default().push(place);
    };
    found.wrong.into_iter().for_each(&mut note);
    found
        .undecided
        .into_iter()
        .map(|line| format!("undecided: {line}"))
        .for_each(&mut note);
    wide(phone, width)?.into_iter().for_each(&mut note);
    twice(phone)?.into_iter().for_each(&mut note);
    Ok(())
}

/// Shows the page as on paper, or as on the screen. What the page does when it is printed, it does.
fn media(phone: &Phone, printed: bool) -> Outcome {
    let (media, event) = if printed {
        ("print", "beforeprint")
    } else {
        ("screen", "afterprint")
    };
    phone.devtools("Emulation.setEmulatedMedia", json!({ "media": media }))?;
    phone.script::<()>(&format!("dispatchEvent(new Event('{event}'))"), Vec::new())?;
    phone.until_true(media, &format!("return matchMedia('{media}').matches"))
}

fn resize(phone: &Phone, width: u32, height: u32) -> Outcome {
    let screen = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true });
    phone.devtools("Emulation.setDeviceMetricsOverride", screen)?;
    Ok(())
}

/// A screen so high that all of the page is on it. Bars then stand over nothing but the room that
/// is kept for them, so that axe sees each target as it is once it is scrolled clear; that it can
/// be is tried in `reach`.
fn whole(phone: &Phone, width: u32) -> Outcome {
    resize(phone, width, HEIGHT)?;
    phone.until("all of the page on the screen", || {
        let (tall, high): (u32, u32) = phone.script(TALL, Vec::new())?;
        if tall > high {
            resize(phone, width, tall)?;
        }
        Ok((tall <= high).then_some(()))
    })
}

/// Ids that stand more than once, which axe passes over: who looks for one would take the first.
fn twice(phone: &Phone) -> Result<Vec<String>> {
    let twice = "const all = [...document.querySelectorAll('[id]')].map((found) => found.id); \
         return [...new Set(all.filter((id, place) => all.indexOf(id) < place))].map((id) => `the id ${id} stands twice`)";
    phone.script(twice, Vec::new())
}

/// What sticks out at the side of the screen.
fn wide(phone: &Phone, width: u32) -> Result<Vec<String>> {
    let out = "const wide = document.documentElement.scrollWidth; if (wide <= arguments[0]) return []; \
         const out = [...document.querySelectorAll('body *')].filter((found) => found.getBoundingClientRect().right > arguments[0] + 0.5); \
         return [`scrolls sideways: ${wide} px: ` + out.slice(0, 4).map((found) => found.outerHTML.slice(0, 90)).join(' | ')]";
    phone.script(out, vec![json!(width)])
}
