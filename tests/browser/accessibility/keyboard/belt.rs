//! Belt: what a finger drags, the arrow keys move; pulleys come, change places and go.

use super::hand::{enter, fill, tab_back_to, until_at, until_count};
use crate::belt::until_field;
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

#[test]
fn belt_takes_a_pulley_by_keys() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;
    enter(&phone, "#pulley-5")?;
    until_field(&phone, "pulley-x", "55")?;
    // Right three times, up once, left once.
    phone.keys("\u{E014}\u{E014}\u{E014}\u{E013}\u{E012}")?;
    until_field(&phone, "pulley-x", "57")?;
    until_field(&phone, "pulley-y", "211")?;
    until_at(&phone, "#pulley-5")?;
    phone.until("another length", || {
        Ok(((phone.result("effective-length")? - length).abs() > 1e-6).then_some(()))
    })?;

    // Later in the route until it is the last: the button stays, and the focus on it.
    enter(&phone, "#later")?;
    phone.until_text(".panel h2", "Pulley 6 of 6")?;
    until_at(&phone, "#later[aria-disabled='true']")?;
    phone.keys("\u{E007}")?;
    phone.until_text(".panel h2", "Pulley 6 of 6")?;

    enter(&phone, "#add-after")?;
    phone.until_text(".panel h2", "Pulley 7 of 7")?;
    tab_back_to(&phone, "#pulley-diameter")?;
    phone.keys("70")?;
    until_field(&phone, "pulley-diameter", "70")?;

    // Removed, the focus is on the way back; brought back, on the pulley.
    enter(&phone, "#remove")?;
    until_at(&phone, "#bring-back")?;
    until_count(&phone, "[id^='pulley-'].chip", 6)?;
    phone.keys("\u{E007}")?;
    until_count(&phone, "[id^='pulley-'].chip", 7)?;
    until_at(&phone, "[id^='pulley-'].chip")?;

    // A panel that is closed gives the focus back to its pulley.
    enter(&phone, ".panel-head .chip")?;
    until_count(&phone, ".panel", 0)?;
    until_at(&phone, "#pulley-7")?;
    fill(&phone, "#belt", "6PK1460")?;
    tab_back_to(&phone, "#begin-drive")?;
    phone.keys("\u{E007}")?;
    until_at(&phone, "#bring-back")?;
    ensure!(phone.count(".panel")? == 0);
    Ok(())
}
