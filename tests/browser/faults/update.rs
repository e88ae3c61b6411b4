//! A new version is taken while something is typed in two tabs.

use super::{TYPED, Work, phone_that_keeps, take_it, type_unsaved, until_offered, works};
use crate::sheet::{new_sheet, note, until_kept, until_notes};
use anyhow::ensure;
use fenderside_tests::harness::{Copy, Outcome, Server};

#[test]
fn an_update_keeps_what_is_typed_in_both_tabs() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = phone_that_keeps(server.site())?;
    let work = Work::begin(&phone)?;

    // The browser looks for a new version when the page is opened once more.
    copy.deploy_another("second")?;
    phone.new_tab()?;
    let other = new_sheet(&phone)?;
    note(&phone, "first")?;
    type_unsaved(&phone, "typed in the other tab")?;

    until_offered(&phone)?;
    phone.turn_to(0)?;
    take_it(&phone, Some("second"))?;
    phone.until_text("#kept-notice", "What was typed last is here again")?;
    work.is_open(&phone)?;

    // The other tab was not reloaded, holds what it held, and goes on.
    phone.turn_to(1)?;
    ensure!(super::running(&phone)?.is_none(), "the other tab was reloaded");
    ensure!(phone.field("sheet-notes")? == "typed in the other tab");
    ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));
    phone.reload()?;
    ensure!(super::running(&phone)?.as_deref() == Some("second"));
    until_notes(&phone, "typed in the other tab")?;
    until_kept(&phone)?;
    works(&phone)?;
    phone.until_kept()?;

    server.kill()?;
    phone.turn_to(0)?;
    work.is_whole(&phone)?;
    works(&phone)?;
    phone.open(&format!("#/sheet/{other}"))?;
    until_notes(&phone, "typed in the other tab")?;
    phone.close()?.1.stays_home()
}

/// One sheet in both tabs, typed on in each, neither saved: the update takes neither text away.
#[test]
fn an_update_keeps_what_two_tabs_typed_on_one_sheet() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = phone_that_keeps(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "first")?;
    copy.deploy_another("second")?;
    phone.new_tab()?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "first")?;
    until_offered(&phone)?;
    phone.turn_to(0)?;
    type_unsaved(&phone, TYPED)?;
    take_it(&phone, Some("second"))?;
    until_notes(&phone, TYPED)?;
    until_kept(&phone)?;
    // The older tab shows what the newer one saved, and types on.
    phone.turn_to(1)?;
    until_notes(&phone, TYPED)?;
    note(&phone, "typed on in the older tab")?;
    phone.turn_to(0)?;
    until_notes(&phone, "typed on in the older tab")?;
    ensure!(crate::sheet::listed(&phone)? == [id]);
    Ok(())
}
