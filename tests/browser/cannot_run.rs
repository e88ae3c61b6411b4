//! Browsers that cannot run the page, or only half of it, are told so in words.

use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn a_browser_without_webassembly_is_told_what_can_run_the_page() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.before_page("delete window.WebAssembly")?;
    phone.go(server.site())?;
    phone.until_text("#boot-says", "no WebAssembly")
}

#[test]
fn a_page_that_is_only_half_there_says_that_it_did_not_start() -> Outcome {
    let copy = Copy::of_the_page()?;
    copy.lose(".wasm")?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = Phone::fresh(server.site())?;
    phone.go(server.site())?;
    phone.until_text("#boot-says", "did not start")?;
    phone.until_true(
        "the page to admit that it is not kept",
        "return document.documentElement.dataset.offline === 'unavailable'",
    )
}

#[test]
fn a_browser_that_blocks_storage_runs_the_page_and_says_what_is_missing() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let block = "for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) \
         Object.defineProperty(window, name, { get() { throw new DOMException('blocked', 'SecurityError'); } })";
    phone.before_page(block)?;
    phone.open("#/convert?q=60%20N%C2%B7m")?;
    phone.until_text("#boot-note", "keeps nothing")?;
    phone.until_row("lbf·ft", 44.253_729, 1e-7)
}
