//! Conversions per second on one list of specs: the core, a general units
//! library (pint, Python) and a plain table in JavaScript.
//!
//! Each converter is a program that prints one line of JSON with `per_second`
//! and `check`; the checks must agree, or they did not do the same work.

use super::python;
use super::report::Report;
use crate::{paths, run, system};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::PathBuf;
use std::process::Command;

const PINT: &str = "pint==0.25.3";
/// Sums of logarithms in another order of operations differ in the last digits.
const AGREEMENT: f64 = 1e-9;

struct Rate {
    per_second: f64,
    check: f64,
}

/// Adds a row for the core and its ratio to each of the others that is here.
pub(super) fn measure(report: &mut Report) -> Result<()> {
    let core = core()?;
    report.row("conversions, core, native", core.per_second, "/s", None);
    match table()? {
        Some(table) => {
            compare(report, "plain JavaScript table", &core, &table)?;
        }
        None => report.note("Node.js is not here: no comparison with a plain JavaScript table."),
    }
    match pint()? {
        Some(pint) => {
            compare(report, "pint", &core, &pint)?;
        }
        None => report.note("Python 3 with venv is not here: no comparison with pint."),
    }
    Ok(())
}

fn compare(report: &mut Report, name: &'static str, core: &Rate, other: &Rate) -> Result<()> {
    let apart = (core.check - other.check).abs();
    if apart > AGREEMENT * core.check.abs().max(other.check.abs()) {
        bail!(
            "the core and {name} disagree on the results: {} and {}",
            core.check,
            other.check
        );
    }
    let ratio = core.per_second / other.per_second;
    report.row(format!("conversions, {name}"), other.per_second, "/s", None);
    report.row(format!("core against {name}"), ratio, "×", None);
    Ok(())
}

fn workload() -> PathBuf {
    assets().join("workload.json")
}

fn assets() -> PathBuf {
    paths::root().join("crates/xtask/assets")
}

fn core() -> Result<Rate> {
    let mut bench = run::cargo();
    bench.args([
        "bench",
        "--package",
        "shopmath",
        "--bench",
        "conversions",
        "--",
        "--json",
    ]);
    rate(&mut bench)
}

fn table() -> Result<Option<Rate>> {
    if system::find_on_path("node").is_none() {
        return Ok(None);
    }
    let script = assets().join("table_rate.mjs");
    rate(Command::new("node").arg(script).arg(workload())).map(Some)
}

fn pint() -> Result<Option<Rate>> {
    let Some(python) = python::with(&[PINT])? else {
        return Ok(None);
    };
    let script = assets().join("pint_rate.py");
    rate(Command::new(python).arg(script).arg(workload())).map(Some)
}

fn rate(command: &mut Command) -> Result<Rate> {
    let text = run::capture(command)?;
    let line = text.lines().rev().find(|line| line.starts_with('{'));
    let line = line.with_context(|| format!("no line of JSON in what it printed: {text}"))?;
    let json: Value = serde_json::from_str(line)?;
    let read = |name: &str| json[name].as_f64().with_context(|| format!("no `{name}` in {line}"));
    Ok(Rate {
        per_second: read("per_second")?,
        check: read("check")?,
    })
}
