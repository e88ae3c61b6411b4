//! Convert: a spec typed, put right, cleared and carried to Bolt.

use super::hand::{enter, fill, tab_to, until_at, until_count};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

#[test]
fn convert_takes_a_spec_by_keys() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    fill(&phone, "#q", "60 blarg")?;
    phone.until("the error", || Ok((phone.count("#q-error")? == 1).then_some(())))?;

    // Cleared, the field has the focus again, and an example is as good as typing.
    enter(&phone, ".clear")?;
    until_at(&phone, "#q")?;
    ensure!(phone.field("q")?.is_empty());
    enter(&phone, ".examples .chip")?;
    phone.until_row("lbf·ft", 44.253_7, 1e-5)?;
    until_at(&phone, "#q")?;

    // The working opens, the tools are chosen with arrows, and the spec goes on to Bolt.
    enter(&phone, ".finding summary")?;
    until_count(&phone, ".working", 1)?;
    tab_to(&phone, "a.button")?;
    tab_to(&phone, "input[name='tools']")?;
    phone.keys("\u{E014}")?;
    until_at(&phone, "input[value='metric']:checked")?;
    super::hand::tab_back_to(&phone, "a.button")?;
    phone.keys("\u{E007}")?;
    until_at(&phone, "h1")?;
    phone.until_text("h1", "Bolt")?;
    ensure!(phone.field("spec")? == "60 N·m");

    // The bar under the thumb leads back.
    enter(&phone, ".tab[href^='#/convert']")?;
    until_at(&phone, "h1")?;
    phone.until_text("h1", "Convert")
}
