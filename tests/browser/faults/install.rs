//! A download that ends half-way: the page never says that it is kept before it is whole, the version
//! in use stays, and the next visit makes it good.

use super::{Work, goes_over_to_the_second, look_for_an_update, phone_that_keeps, running, until_not_kept, works};
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Copy, Fault, FaultyServer, Outcome, Phone};

/// Ways for a download to end early, each with the files it happens to. What the start page itself
/// asks for is whole in the first table.
const BESIDE_THE_PAGE: &[(&str, Fault)] = &[
    ("icon-512.png", Fault::Cut),
    ("icon-512.png", Fault::Half),
    ("icon-512.png", Fault::Dead),
    ("maskable-512.png", Fault::Cut),
];
const ANY: &[(&str, Fault)] = &[
    (".wasm", Fault::Cut),
    (".wasm", Fault::Half),
    (".wasm", Fault::Dead),
    (".css", Fault::Cut),
    (".css", Fault::Half),
    ("page*.js", Fault::Half),
    ("boot*.js", Fault::Cut),
    ("sw.js", Fault::Cut),
    ("sw.js", Fault::Half),
    ("/", Fault::Cut),
    ("/", Fault::Half),
    ("/", Fault::Dead),
    ("icon.svg", Fault::Dead),
    ("", Fault::Dead),
    ("", Fault::Cut),
];

#[test]
fn a_first_install_that_is_cut_is_not_called_ready_and_the_next_visit_ends_it() -> Outcome {
    let copy = Copy::of_the_page()?;
    for (ending, fault) in BESIDE_THE_PAGE {
        let context = || format!("{fault:?} of {ending}");
        let server = FaultyServer::serving(copy.path())?;
        let phone = Phone::fresh(server.site())?;
        server.spoil(ending, *fault);
        phone.open("#/convert").with_context(context)?;
        until_not_kept(&phone).with_context(context)?;
        let work = Work::begin(&phone).with_context(context)?;

        server.heal().with_context(context)?;
        work.take_up_again(&phone).with_context(context)?;
        phone.until_kept().with_context(context)?;
        server.kill()?;
        work.is_whole(&phone).with_context(context)?;
        works(&phone).with_context(context)?;
    }
    Ok(())
}

/// The module itself is cut on its way to the first visit: the page says so.
#[test]
fn a_module_that_is_cut_is_said_and_loaded_at_the_next_visit() -> Outcome {
    let copy = Copy::of_the_page()?;
    for fault in [Fault::Cut, Fault::Dead] {
        module_that_is(&copy, fault).with_context(|| format!("{fault:?}"))?;
    }
    Ok(())
}

/// Half a module that looks whole.
#[test]
fn half_a_module_is_said_and_loaded_whole_at_the_next_visit() -> Outcome {
    module_that_is(&Copy::of_the_page()?, Fault::Half)
}

fn module_that_is(copy: &Copy, fault: Fault) -> Outcome {
    let server = FaultyServer::serving(copy.path())?;
    let phone = Phone::fresh(server.site())?;
    server.spoil(".wasm", fault);
    phone.go(server.site())?;
    phone.until_text("#boot-says", "did not start")?;
    until_not_kept(&phone)?;
    server.heal()?;
    phone.go("about:blank")?;
    works(&phone)?;
    phone.until_kept()?;
    server.kill()?;
    works(&phone)
}

#[test]
fn an_update_that_is_cut_leaves_the_version_in_use() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = FaultyServer::serving(copy.path())?;
    let phone = phone_that_keeps(server.site())?;
    let work = Work::begin(&phone)?;
    // The browser looks by itself, at any moment, so nothing comes through whole while it is deployed.
    server.spoil("", Fault::Dead);
    copy.deploy_another("second")?;
    for (ending, fault) in ANY {
        let context = || format!("{fault:?} of {ending}");
        server.spoil(ending, *fault);
        let worker_is_hit = ["", "sw.js"].contains(ending);
        let end = look_for_an_update(&phone).with_context(context)?;
        let wanted = if worker_is_hit { "refused" } else { "redundant" };
        ensure!(end == wanted, "{}: the new version is {end}", context());
        work.take_up_again(&phone).with_context(context)?;
        ensure!(running(&phone)?.is_none(), "{}: it runs", context());
        phone.until_kept().with_context(context)?;
        ensure!(phone.count(".newer")? == 0, "{}: it is offered", context());
        server.was_asked().with_context(context)?;
    }
    server.heal()?;

    // A visit that nothing disturbs.
    goes_over_to_the_second(&phone)?;
    server.kill()?;
    work.is_whole(&phone)?;
    works(&phone)?;
    phone.close()?.1.stays_home()
}
