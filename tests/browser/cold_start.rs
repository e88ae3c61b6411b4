//! One visit with a network; after that the page starts from a dead one.

use fenderside_tests::harness::{Outcome, Phone, Server};

const SPEC: &str = "#/convert?q=60%20N%C2%B7m";

#[test]
fn the_page_goes_on_when_the_network_dies() -> Outcome {
    let server = Server::start()?;
    visit_and_lose(server)?.close()?.1.stays_home()
}

#[test]
fn the_page_starts_from_a_dead_network() -> Outcome {
    let server = Server::start()?;
    let site = server.site().to_owned();
    let (profile, traffic) = visit_and_lose(server)?.close()?;
    traffic.stays_home()?;

    let next_day = Phone::with(profile, &site)?;
    next_day.open(SPEC)?;
    assert_eq!(next_day.field("q")?, "60 N·m");
    next_day.until_kept()?;

    let (_, traffic) = next_day.close()?;
    traffic.stays_home()
}

/// A first visit, at the end of which there is no network; what the phone shows then.
fn visit_and_lose(server: Server) -> anyhow::Result<Phone> {
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.until_kept()?;

    server.kill()?;

    phone.reload()?;
    phone.field("q")?;
    phone.until_kept()?;

    phone.open(SPEC)?;
    assert_eq!(phone.field("q")?, "60 N·m");
    phone.screenshot("cold-start")?;

    // Addresses of other days: with the file's name, or from somewhere below.
    for old in ["index.html#/convert?q=35%20psi", "old/link#/convert?q=35%20psi"] {
        phone.open(old)?;
        assert_eq!(phone.field("q")?, "35 psi", "{old}");
    }
    Ok(phone)
}

/// A slow network brings the first words first: nothing of the program is asked for before the style
/// they wait for is there.
#[test]
fn the_first_words_do_not_wait_for_the_program() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.field("q")?;
    let times = "const file = (end) => performance.getEntriesByType('resource').find(({ name }) => name.endsWith(end)); \
         return [file('.css').responseEnd, file('_bg.wasm').startTime]";
    let [styled, asked]: [f64; 2] = phone.script(times, Vec::new())?;
    assert!(
        0.0 < styled && styled <= asked,
        "the style was there after {styled} ms, the program asked for after {asked} ms"
    );
    Ok(())
}
