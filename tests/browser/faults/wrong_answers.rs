//! Something else in place of a file: the right bytes as a wrong type, or the sign-in page of some
//! Wi-Fi, in person or by a redirect. At the first visit, when a new version comes, and later.

use super::{Work, goes_over_to_the_second, look_for_an_update, phone_that_keeps, running, until_not_kept, works};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Copy, Fault, FaultyServer, Outcome, Phone, SIGN_IN};
use serde_json::json;

const PLACES: &[&str] = &[
    ".wasm",
    "page*.js",
    "boot*.js",
    ".css",
    ".webmanifest",
    "icon.svg",
    "icon-512.png",
    "sw.js",
];
const ANSWERS: &[Fault] = &[
    Fault::Type("text/plain"),
    Fault::Type("text/html"),
    Fault::SignIn,
    Fault::Redirect,
];

/// Whether the page can start at a first visit with this answer in this place. A start script may
/// come as any text, and the module as any type; a script that is imported may not.
fn starts(place: &str, answer: Fault) -> bool {
    match place {
        "page*.js" => false,
        ".wasm" | "boot*.js" => matches!(answer, Fault::Type(_)),
        _ => true,
    }
}

/// Hosts disagree about this type, so it is kept as any but a web page's.
fn is_harmless(place: &str, answer: Fault) -> bool {
    place == ".webmanifest" && answer == Fault::Type("text/plain")
}

/// Each answer in each place.
fn cases() -> impl Iterator<Item = (&'static str, Fault)> {
    let all = PLACES
        .iter()
        .flat_map(|place| ANSWERS.iter().map(|answer| (*place, *answer)));
    all.filter(|(place, answer)| !is_harmless(place, *answer))
}

#[test]
fn a_first_visit_is_not_called_ready_and_the_next_one_makes_it_good() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = FaultyServer::serving(copy.path())?;
    let phone = Phone::fresh(server.site())?;
    for (place, answer) in cases() {
        first_visit(&phone, &server, place, answer).with_context(|| format!("{answer:?} for {place}"))?;
    }
    let work = Work::begin(&phone)?;
    server.kill()?;
    work.take_up_again(&phone)?;
    work.is_whole(&phone)?;
    works(&phone)
}

fn first_visit(phone: &Phone, server: &FaultyServer, place: &str, answer: Fault) -> Outcome {
    forget_all(phone, server.site())?;
    server.spoil(place, answer);
    phone.go(server.site())?;
    if starts(place, answer) {
        phone.until_running()?;
        until_not_kept(phone)?;
        works(phone)?;
    } else if place == "boot*.js" {
        // Without this file nothing runs; what the start page says stands there from the beginning.
        phone.until_text("#boot-says", "load the page again")?;
    } else {
        phone.until_text("#boot-says", "did not start")?;
        until_not_kept(phone)?;
    }
    server.heal()?;
    phone.go(&format!("{}#/convert", server.site()))?;
    phone.reload()?;
    phone.until_kept()?;
    works(phone)
}

/// A phone as if it had never been here.
fn forget_all(phone: &Phone, site: &str) -> Outcome {
    phone.go("about:blank")?;
    phone.devtools("Network.clearBrowserCache", json!({}))?;
    let all = json!({ "origin": site.trim_end_matches('/'), "storageTypes": "all" });
    phone.devtools("Storage.clearDataForOrigin", all).map(|_| ())
}

#[test]
fn a_sign_in_page_at_the_first_visit_leaves_nothing_behind() -> Outcome {
    let copy = Copy::of_the_page()?;
    for answer in [Fault::SignIn, Fault::Redirect] {
        let server = FaultyServer::serving(copy.path())?;
        let phone = Phone::fresh(server.site())?;
        server.spoil("", answer);
        phone.go(server.site())?;
        phone.until_text("body", SIGN_IN)?;
        server.heal()?;
        phone.go("about:blank")?;
        works(&phone)?;
        phone.until_kept()?;
        server.kill()?;
        works(&phone)?;
    }
    Ok(())
}

#[test]
fn a_kept_page_never_sees_a_sign_in_page() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = FaultyServer::serving(copy.path())?;
    let phone = phone_that_keeps(server.site())?;
    let work = Work::begin(&phone)?;
    for answer in ANSWERS {
        let context = || format!("{answer:?} for everything");
        server.spoil("", *answer);
        let end = look_for_an_update(&phone).with_context(context)?;
        ensure!(end == "refused", "{}: a new version is {end}", context());
        work.take_up_again(&phone).with_context(context)?;
        phone.until_kept().with_context(context)?;
        works(&phone).with_context(context)?;
        server.heal().with_context(context)?;
    }
    work.is_whole(&phone)?;
    phone.close()?.1.stays_home()
}

#[test]
fn a_new_version_that_comes_as_something_else_is_not_taken() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = FaultyServer::serving(copy.path())?;
    let phone = phone_that_keeps(server.site())?;
    let work = Work::begin(&phone)?;
    work.take_up_again(&phone)?;
    // The browser looks by itself, at any moment, so nothing comes through whole while it is deployed.
    server.spoil("", Fault::Dead);
    copy.deploy_another("second")?;
    let start_page = [Fault::Type("text/plain"), Fault::SignIn, Fault::Redirect].map(|answer| ("/", answer));
    for (place, answer) in cases().chain(start_page) {
        let tried = update(&phone, &server, place, answer);
        tried.with_context(|| format!("{answer:?} for {place}"))?;
    }
    work.is_whole(&phone)?;
    server.heal()?;

    goes_over_to_the_second(&phone)?;
    server.kill()?;
    work.is_whole(&phone)?;
    works(&phone)
}

fn update(phone: &Phone, server: &FaultyServer, place: &str, answer: Fault) -> Result<()> {
    server.spoil(place, answer);
    let end = look_for_an_update(phone)?;
    let wanted = if place == "sw.js" { "refused" } else { "redundant" };
    ensure!(end == wanted, "the new version is {end}");
    phone.reload()?;
    ensure!(running(phone)?.is_none(), "it runs");
    phone.until_kept()?;
    ensure!(phone.count(".newer")? == 0, "it is offered");
    works(phone)?;
    server.was_asked()
}
