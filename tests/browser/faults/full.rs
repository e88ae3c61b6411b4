//! A device without room: at the first visit, and when a new version comes. When a sheet is saved is in
//! `sheet/storage.rs`.

use super::{Work, goes_over_to_the_second, look_for_an_update, phone_that_keeps, running, until_not_kept, works};
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
