//! Bolt: a whole bolt with choices, sections, the large view and the settings.

use super::hand::{enter, fill, tab_back_to, tab_to, until_at, until_count};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

#[test]
fn bolt_takes_a_whole_bolt_by_keys() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/bolt")?;
    fill(&phone, "#thread", "M10x1.5")?;
    fill(&phone, "#class", "10.9")?;
    fill(&phone, "#spec", "60 N·m")?;
    phone.until("a verdict", || {
        Ok((phone.count("#verdict[data-verdict]")? == 1).then_some(()))
    })?;

    // The head is behind a summary; a list takes the letter an entry begins with.
    enter(&phone, ".more summary")?;
    tab_to(&phone, "#head")?;
    phone.keys("f")?;
    phone.until("the flange", || Ok((phone.field("head")? == "flange").then_some(())))?;

    // A jump takes the keyboard along: the next stop is in the section.
    phone.script::<()>(
        "document.querySelectorAll('.jumps .chip')[2].dataset.here = ''",
        Vec::new(),
    )?;
    enter(&phone, "[data-here]")?;
    until_at(&phone, "#head-angle")?;
    phone.tab()?;
    until_at(&phone, "#part-angle *")?;
    tab_back_to(&phone, "#grip")?;
    phone.keys("35 mm")?;
    phone.until("an angle", || Ok((phone.count("#angle-to-yield")? == 1).then_some(())))?;

    // What cannot be read is put right with the entry that is offered, and the focus is in the field.
    fill(&phone, "#engaged", "20 N·m")?;
    phone.until("the error", || Ok((phone.count("#engaged-error")? == 1).then_some(())))?;
    ensure!(phone.error("engaged")?.len() > 10);
    large_type_opens_and_closes(&phone)?;
    settings_open_and_close(&phone)
}

fn large_type_opens_and_closes(phone: &Phone) -> Outcome {
    tab_back_to(phone, ".button.wide")?;
    phone.keys("\u{E007}")?;
    until_count(phone, ".large", 1)?;
    until_at(phone, ".large .button")?;
    phone.keys("\u{E00C}")?;
    until_count(phone, ".large", 0)?;
    until_at(phone, ".button.wide")
}

fn settings_open_and_close(phone: &Phone) -> Outcome {
    tab_back_to(phone, ".head-button")?;
    phone.keys("\u{E007}")?;
    until_count(phone, "#settings", 1)?;
    // What was opened is next.
    phone.tab()?;
    until_at(phone, "#settings input[name='theme']")?;
    phone.keys("\u{E015}")?;
    phone.until_true(
        "another theme",
        "return document.documentElement.dataset.theme === 'sun'",
    )?;
    phone.keys("\u{E00C}")?;
    until_count(phone, "#settings", 0)?;
    until_at(phone, ".head-button")
}
