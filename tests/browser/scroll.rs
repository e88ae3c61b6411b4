//! A screen one comes back to stands where it was left; any other begins at its top.

use crate::sheet::open_long;
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

/// How far the page is scrolled, pixel.
fn far(phone: &Phone) -> anyhow::Result<f64> {
    phone.script("return scrollY", Vec::new())
}

fn until_at(phone: &Phone, what: &str, wanted: f64) -> Outcome {
    phone.until(what, || Ok(((far(phone)? - wanted).abs() <= 2.0).then_some(())))
}

/// Scrolls the page, and waits until it has noticed.
fn scroll(phone: &Phone, how: &str) -> Outcome {
    let noticed = "return new Promise((done) => { addEventListener('scroll', () => done(null), { once: true });";
    phone.script(&format!("{noticed} {how} }})"), Vec::new())
}

/// As a finger does on a phone that leaves the focus where it was.
fn follow(phone: &Phone, link: &str) -> Outcome {
    phone.script::<()>("document.querySelector(arguments[0]).click()", vec![json!(link)])
}

#[test]
fn one_comes_back_to_the_row_one_left_and_to_the_top_of_all_else() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    open_long(&phone)?;
    scroll(&phone, "document.getElementById('bolt-30').scrollIntoView()")?;
    let row = phone.until("the row", || Ok(Some(far(&phone)?).filter(|far| *far > 5000.0)))?;

    follow(&phone, "#bolt-30 [name=open]")?;
    phone.until_text("h1", "Bolt")?;
    until_at(&phone, "the top of Bolt", 0.0)?;
    phone.back()?;
    phone.until_text("h1", "Sheet")?;
    until_at(&phone, "the row again", row)?;

    // The same by the tabs; Convert was not open yet.
    follow(&phone, ".tabs a:first-child")?;
    phone.until_text("h1", "Convert")?;
    until_at(&phone, "the top of Convert", 0.0)?;
    follow(&phone, ".tabs a:last-child")?;
    phone.until_text("h1", "Sheet")?;
    until_at(&phone, "the row by its tab", row)?;

    // Bolt is left far down; the next bolt begins with its verdict all the same.
    follow(&phone, "#bolt-30 [name=open]")?;
    phone.until_text("h1", "Bolt")?;
    scroll(&phone, "scrollTo(0, 900)")?;
    until_at(&phone, "far down on Bolt", 900.0)?;
    phone.back()?;
    phone.until_text("h1", "Sheet")?;
    follow(&phone, "#bolt-29 [name=open]")?;
    phone.until_text("h1", "Bolt")?;
    until_at(&phone, "the top of the other bolt", 0.0)?;
    phone.back()?;
    phone.until_text("h1", "Sheet")?;
    follow(&phone, "#bolt-30 [name=open]")?;
    phone.until_text("h1", "Bolt")?;
    until_at(&phone, "the place on the bolt of before", 900.0)?;

    // On one screen too: a line of a list alone, and the list again.
    phone.open(&format!("#/convert?q={}", ["60%20Nm"; 20].join("%0A")))?;
    phone.until("the list", || Ok((phone.count("[data-line]")? == 20).then_some(())))?;
    scroll(&phone, "scrollTo(0, 1200)")?;
    until_at(&phone, "far down in the list", 1200.0)?;
    follow(&phone, "[data-line='9'] a.chip")?;
    phone.until_text(".read-as", "60 N·m")?;
    until_at(&phone, "the top of one line", 0.0)?;
    phone.back()?;
    phone.until("the list again", || {
        Ok((phone.count("[data-line]")? == 20).then_some(()))
    })?;
    until_at(&phone, "the place in the list", 1200.0)?;
    ensure!(phone.field("q")?.lines().count() == 20);
    Ok(())
}

#[test]
fn a_strip_leads_to_the_parts_of_a_long_screen_and_stays_in_sight() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    open_long(&phone)?;
    leads_to(&phone, 2, "head-parts")?;
    leads_to(&phone, 7, "head-away")?;
    leads_to(&phone, 1, "head-bolts")?;
    phone.open("#/belt")?;
    leads_to(&phone, 5, "head-checks")?;
    leads_to(&phone, 2, "head-tensioner")?;
    phone.open("#/bolt?thread=M10&class=10.9&spec=60%20N%C2%B7m")?;
    leads_to(&phone, 4, "head-engagement")
}

/// A button of the strip, counted from 1, shows a heading below the strip and takes the keyboard there.
fn leads_to(phone: &Phone, button: usize, heading: &str) -> Outcome {
    phone.tap(&format!(".jumps .chip:nth-of-type({button})"))?;
    let there = format!(
        "const strip = document.querySelector('.jumps').getBoundingClientRect(); \
         const found = document.getElementById('{heading}'); \
         const box = found.getBoundingClientRect(); \
         return document.activeElement === found && strip.top >= 0 && box.top >= strip.bottom - 1 && box.bottom < innerHeight * 0.9"
    );
    phone.until_true(&format!("`{heading}` in sight"), &there)
}
