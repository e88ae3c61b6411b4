//! `cargo xtask bench`: what the page weighs and how fast it is, each number
//! beside a reference measured in the same run.
//!
//! One module per kind of measurement; each gives rows to one report. A new
//! measurement is a new module and one line in `command`.

mod crates;
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
use references::References;
use report::Report;

/// What can be measured alone.
const PARTS: [&str; 2] = ["size", "lighthouse"];

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let part = options::word(&mut options)?;
    if let Some(other) = part.as_deref().filter(|part| !PARTS.contains(part)) {
        bail!("`bench {other}` is not known. Type `cargo xtask help`.");
    }
    if let Some(argument) = options.next()? {
        return options::unknown(&argument);
    }
    let mut report = Report::default();
    match part.as_deref() {
        Some("size") => drop(size(&mut report)?),
        Some(_) => {
            let browser = browser()?;
            dist::build()?;
            lighthouse(&browser, &mut report)?;
        }
        None => {
            let browser = browser()?;
            let references = size(&mut report)?;
            step("Conversions", || speed::measure(&mut report))?;
            step("Routes", || routes::measure(&mut report))?;
            step("Start and typing", || {
                start::measure(&browser, &references, &mut report)
            })?;
            lighthouse(&browser, &mut report)?;
            return report.finish();
        }
    }
    report.show()
}

fn browser() -> Result<Browser> {
    step("Browser", || Browser::fetch(Engine::Chromium))
}

/// The sizes, and what they and later numbers are compared with.
fn size(report: &mut Report) -> Result<References> {
    dist::build()?;
    let tools = tools::fetch()?;
    let references = step("References: hello world, the calculators alone, an empty page", || {
        references::build(&tools)
    })?;
    step("Weight", || weight::measure(&references, report))?;
    step("Bytes by crate", || crates::measure(&tools, report))?;
    Ok(references)
}

fn lighthouse(browser: &Browser, report: &mut Report) -> Result<()> {
    step("Lighthouse", || lighthouse::measure(browser, report))
}
