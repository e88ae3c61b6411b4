//! `cargo xtask test`: every check the project has, in one run, but the journeys in WebKit, which are asked
//! for by name.
//!
//! What cannot run here is an error that says what to install. Only advisories are left out without a network,
//! and journeys that an engine cannot run; both are said.

use crate::browser::{Browser, Engine};
use crate::run::{cargo, run, step};
use crate::{deny, dist, fuzz, journeys, options};
use anyhow::{Result, bail};
use lexopt::{Arg, Parser, ValueExt};

/// The engines of every run. In WebKit's a journey or two still needs a second try, so it is asked for by
/// name: `cargo xtask test browser webkit`.
const EVERY_TIME: [Engine; 2] = [Engine::Chromium, Engine::Firefox];

const WASM: &[&str] = &["--target", "wasm32-unknown-unknown"];

pub(crate) fn command(mut options: Parser) -> Result<()> {
    match options::word(&mut options)?.as_deref() {
        None => {
            // Asked for first: a missing browser should not come to light after
            // ten minutes of other work.
            let browsers = fetch(&EVERY_TIME)?;
            native()?;
            fuzz::replay()?;
            fuzz::short_search()?;
            deny::check()?;
            dist::build()?;
            journeys::run_in(&browsers, &[])
        }
        Some("browser") => {
            let mut names = names(options)?;
            // A word for an engine first is the engine, and no part of a name.
            let engine = names.first().and_then(|word| Engine::named(word));
            let browsers = match engine {
                Some(engine) => {
                    names.remove(0);
                    fetch(&[engine])?
                }
                None => fetch(&Engine::ALL)?,
            };
            dist::build()?;
            journeys::run_in(&browsers, &names)
        }
        Some(other) => bail!("`test {other}` is not known. Type `cargo xtask help`."),
    }
}

fn fetch(engines: &[Engine]) -> Result<Vec<Browser>> {
    step("Browsers", || engines.iter().copied().map(Browser::fetch).collect())
}

fn names(mut options: Parser) -> Result<Vec<String>> {
    let mut names = Vec::new();
    while let Some(argument) = options.next()? {
        match argument {
            Arg::Value(name) => names.push(name.string()?),
            other => return options::unknown(&other),
        }
    }
    Ok(names)
}

fn native() -> Result<()> {
    step("Format", || run(cargo().args(["fmt", "--all", "--check"])))?;
    step("Lints", || {
        let everything = ["clippy", "--workspace", "--all-targets"];
        run(cargo()
            .args(everything)
            .args(["--features", "fenderside-tests/browser"])
            .args(DENY))
    })?;
    crate::tools::wasm_target()?;
    step("Lints, page as it runs", || {
        run(cargo().args(["clippy", "--package", "page"]).args(WASM).args(DENY))
    })?;
    step("Unit, property and reference tests", || {
        run(cargo().args(["test", "--workspace"]))
    })?;
    step("Documentation of the core", || {
        let mut doc = cargo();
        doc.args(["doc", "--package", "shopmath", "--no-deps"])
            .env("RUSTDOCFLAGS", "-D warnings");
        run(&mut doc)
    })
}

const DENY: &[&str] = &["--", "-D", "warnings"];
