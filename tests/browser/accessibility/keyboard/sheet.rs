//! Sheet: begun, filled, changed, taken back, shared, printed, removed and brought back.

use super::hand::{enter, fill, tab_back_to, tab_to, until_at, until_count};
use crate::sheet::until_kept;
use fenderside_tests::harness::{Outcome, Phone, Server};

const ENTER: &str = "\u{E007}";

#[test]
fn sheet_takes_a_job_by_keys() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.until("the list", || Ok((phone.count("#new-sheet")? == 1).then_some(())))?;
    enter(&phone, "#new-sheet")?;
    // Another sheet is another place, though the screen is the same.
    until_count(&phone, "#sheet-machine", 1)?;
    until_at(&phone, "h1")?;
    fill(&phone, "#sheet-machine", "Larkfield van")?;
    rows_come_change_and_go(&phone)?;
    it_is_shared_and_printed(&phone)?;

    until_kept(&phone)?;
    tab_back_to(&phone, ".sheet-head a")?;
    phone.keys(ENTER)?;
    until_count(&phone, "[data-sheet]", 1)?;
    until_at(&phone, "h1")?;
    enter(&phone, "[data-sheet] [name='remove']")?;
    until_at(&phone, "#undo")?;
    until_count(&phone, "[data-sheet]", 0)?;
    phone.keys(ENTER)?;
    until_count(&phone, "[data-sheet]", 1)?;
    until_at(&phone, "#new-sheet")
}

fn rows_come_change_and_go(phone: &Phone) -> Outcome {
    enter(phone, "#add-fastener")?;
    until_at(phone, "#bolt-1-label")?;
    phone.keys("Idler")?;
    fill(phone, "#bolt-1-thread", "M10x1.5")?;
    fill(phone, "#bolt-1-class", "8.8")?;
    fill(phone, "#bolt-1-spec", "45 N·m")?;
    fill(phone, "#bolt-1-0-reading", "45.5")?;
    phone.until_text(".judged", "within")?;
    tab_to(phone, "#bolt-1-done")?;
    phone.keys(" ")?;
    phone.until_text("#progress", "1 of 1 done")?;

    // A second one moves up: its button, which has nothing more to do, keeps the focus.
    enter(phone, "#add-fastener")?;
    until_at(phone, "#bolt-2-label")?;
    enter(phone, "#bolt-2 [name='earlier']")?;
    phone.until_true(
        "the second one first",
        "return document.querySelector('[data-fastener]').id === 'bolt-2'",
    )?;
    until_at(phone, "#bolt-2 [name='earlier']")?;
    // It goes, and the focus to its neighbour's button; from there back up to what takes it back.
    enter(phone, "#bolt-2 [name='remove']")?;
    until_count(phone, "[data-fastener]", 1)?;
    until_at(phone, "#bolt-1 [name='remove']")?;
    tab_back_to(phone, "#undo")?;
    phone.keys(ENTER)?;
    until_count(phone, "[data-fastener]", 2)?;
    until_at(phone, "#undo")?;

    enter(phone, "#add-part")?;
    until_at(phone, "#part-1-label")?;
    phone.keys("Belt")?;
    fill(phone, "#part-1-price", "34,50")?;
    phone.until_text("#parts-total", "34.50")
}

fn it_is_shared_and_printed(phone: &Phone) -> Outcome {
    enter(phone, "#share-sheet")?;
    until_count(phone, "#shared", 1)?;
    until_at(phone, "#share-sheet")?;
    phone.tab()?;
    until_at(phone, "#share-link")?;
    phone.tab_back()?;
    until_at(phone, "#share-sheet")?;
    phone.keys(ENTER)?;
    until_count(phone, "#shared", 0)?;
    until_at(phone, "#share-sheet")?;
    // What a print dialog would ask is not the page's; that it is asked for is.
    phone.script::<()>("window.print = () => { document.title = 'printed' }", Vec::new())?;
    tab_back_to(phone, "#print-sheet")?;
    phone.keys(ENTER)?;
    phone.until_true("the print", "return document.title === 'printed'")
}
