//! `cargo xtask bench`: what the page weighs and how fast it is, each number
//! beside a reference measured in the same run.
//!
//! One module per kind of measurement; each gives rows to one report. A new
//! measurement is a new module and one line in `command`.

mod lighthouse;
mod python;
mod references;
mod report;
mod routes;
mod speed;
mod start;
mod weight;

use crate::browser::{Browser, Engine};
use crate::run::step;
use crate::{dist, options, tools};
use anyhow::{Result, bail};
use lexopt::Parser;
use report::Report;

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let only_lighthouse = match options::word(&mut options)?.as_deref() {
        None => false,
        Some("lighthouse") => true,
        Some(other) => bail!("`bench {other}` is not known. Type `cargo xtask help`."),
    };
    if let Some(argument) = options.next()? {
        return options::unknown(&argument);
    }
    let browser = step("Browser", || Browser::fetch(Engine::Chromium))?;
    dist::build()?;
    let mut report = Report::default();
    if only_lighthouse {
        step("Lighthouse", || lighthouse::measure(&browser, &mut report))?;
        return report.show();
    }
    let tools = tools::fetch()?;
    let references = step("References: hello world and empty page", || references::build(&tools))?;

    step("Weight", || weight::measure(&references, &mut report))?;
    step("Conversions", || speed::measure(&mut report))?;
    step("Routes", || routes::measure(&mut report))?;
    step("Start and typing", || {
        start::measure(&browser, &references, &mut report)
    })?;
    step("Lighthouse", || lighthouse::measure(&browser, &mut report))?;
    report.finish()
}
