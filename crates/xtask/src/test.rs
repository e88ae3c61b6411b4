//! `cargo xtask test`: every check the project has, in one run.
//!
//! Nothing is skipped: what cannot run here is an error that says what to install.

use crate::run::{cargo, run, step};
use crate::{browser, dist, fuzz, npm, options, paths};
use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser, ValueExt};

const WASM: &[&str] = &["--target", "wasm32-unknown-unknown"];

pub(crate) fn command(mut options: Parser) -> Result<()> {
    match options::word(&mut options)?.as_deref() {
        None => {
            // Asked for first: a missing browser should not come to light after
            // ten minutes of other work.
            let browser = step("Browser", browser::fetch)?;
            native()?;
            fuzz::replay()?;
            dist::build()?;
            journeys(&browser, &[])
        }
        Some("browser") => {
            let names = names(options)?;
            let browser = step("Browser", browser::fetch)?;
            dist::build()?;
            journeys(&browser, &names)
        }
        Some(other) => bail!("`test {other}` is not known. Type `cargo xtask help`."),
    }
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

fn journeys(browser: &browser::Browser, names: &[String]) -> Result<()> {
    let xtask = std::env::current_exe().context("this program cannot find itself")?;
    let axe = step("Accessibility checker", npm::axe)?;
    step("Journeys in a browser", || {
        let mut command = cargo();
        command
            .args(["test", "--package", "fenderside-tests", "--features", "browser"])
            .args(["--test", "browser", "--"])
            .arg("--test-threads=1")
            .args(names)
            .env("FENDERSIDE_XTASK", &xtask)
            .env("FENDERSIDE_DIST", paths::dist())
            .env("FENDERSIDE_AXE", &axe)
            .env("CHROMIUM", &browser.chromium)
            .env("CHROMEDRIVER", &browser.driver);
        run(&mut command)
    })
}
