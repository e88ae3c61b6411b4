//! A device without room: at the first visit, and when a new version comes. When a sheet is saved is in
//! `sheet/storage.rs`.

use super::{
    Work, goes_over_to_the_second, look_for_an_update, phone_that_keeps, running, take_it, until_not_kept,
    until_offered, works,
};
use crate::sheet::{fill_small_store, new_sheet, note, until_kept, until_notes};
use anyhow::ensure;
use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn without_room_for_the_page_it_works_with_a_network_and_is_kept_once_there_is_room() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.leave_room(false)?;
    phone.open("#/convert")?;
    until_not_kept(&phone)?;
    works(&phone)?;
    phone.leave_room(true)?;
    phone.reload()?;
    phone.until_kept()?;
    let work = Work::begin(&phone)?;
    server.kill()?;
    work.take_up_again(&phone)?;
    work.is_whole(&phone)?;
    works(&phone)
}

#[test]
fn without_room_for_a_new_version_the_one_in_use_stays() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = phone_that_keeps(server.site())?;
    let work = Work::begin(&phone)?;
    work.take_up_again(&phone)?;

    // The next day, as the browser remembers for a while how much room there was.
    let (profile, _) = phone.close()?;
    let phone = Phone::with(profile, server.site())?;
    phone.leave_room(false)?;
    copy.deploy_another("second")?;
    phone.open("#/convert")?;
    let end = look_for_an_update(&phone)?;
    ensure!(end == "redundant", "the new version is {end}");
    phone.reload()?;
    ensure!(running(&phone)?.is_none());
    phone.until_kept()?;
    work.is_whole(&phone)?;
    works(&phone)?;

    phone.leave_room(true)?;
    goes_over_to_the_second(&phone)?;
    server.kill()?;
    work.is_whole(&phone)?;
    works(&phone)
}

/// Neither a draft nor a save finds room: the new version loads the page again, and so is not taken.
/// The browser remembers for a while how much room there was, so the store is made to refuse here.
#[test]
fn a_new_version_is_not_taken_over_a_sheet_that_nothing_can_keep() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = phone_that_keeps(server.site())?;
    new_sheet(&phone)?;
    note(&phone, "before it was full")?;
    copy.deploy_another("second")?;
    ensure!(look_for_an_update(&phone)? == "installed");
    until_offered(&phone)?;

    fill_small_store(&phone)?;
    let refuse = "IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError') }";
    phone.script::<()>(refuse, Vec::new())?;
    phone.type_into("sheet-notes", "after it was full")?;
    phone.until_text("#kept", "Not saved")?;
    phone.tap(".newer .button")?;
    phone.until_text(".newer", "cannot be saved")?;
    ensure!(running(&phone)?.is_none(), "the page was loaded again");
    ensure!(phone.field("sheet-notes")? == "after it was full");

    // Room for a draft is enough.
    let free =
        "for (const name of Object.keys(localStorage)) if (name.startsWith('filler')) localStorage.removeItem(name)";
    phone.script::<()>(free, Vec::new())?;
    take_it(&phone, Some("second"))?;
    until_notes(&phone, "after it was full")?;
    until_kept(&phone)
}
