//! Belt routes per second: the core, natively and as WebAssembly, and on the very same drives a polygon
//! library (shapely, ribbed pulleys only) and a minimiser (scipy, with flat ones).
//!
//! The script that measures the others refuses lengths that disagree.

mod wasm;

use super::python;
use super::report::Report;
use crate::{paths, run};
use anyhow::{Context, Result};
use serde_json::Value;
use std::fs::File;
use std::process::{Command, Stdio};

/// The versions `tests/oracles/drive_routes.csv` was made with.
const PACKAGES: [&str; 3] = ["numpy==2.4.6", "scipy==1.17.1", "shapely==2.2.0"];

/// Adds rows per drive for the core, natively and as WebAssembly, and for its ratios to the other.
pub(super) fn measure(report: &mut Report) -> Result<()> {
    let printed = run::capture(
        run::cargo()
            .args(["bench", "--package", "shopmath", "--bench", "routes"])
            .args(["--", "--json"]),
    )?;
    let native = lines(&printed)?;
    rates(&native, "native", report)?;
    let wasm = match wasm::printed("routes")? {
        Ok(printed) => lines(&printed)?,
        Err(missing) => {
            report.note(format!("{missing}: no routes per second as WebAssembly."));
            Vec::new()
        }
    };
    agree(&native, &wasm)?;
    rates(&wasm, WASM, report)?;
    let Some(python) = python::with(&PACKAGES)? else {
        report.note("Python 3 with venv is not here: no comparison of routes with shapely and scipy.");
        return Ok(());
    };
    let drives = paths::target().join("bench/routes.jsonl");
    std::fs::write(&drives, printed + "\n")?;
    let script = paths::root().join("tests/oracles/drive_rate.py");
    let mut other = Command::new(python);
    other.arg(script);
    compare(&capture_with(&mut other, File::open(&drives)?)?, &wasm, report)
}

/// As what the core runs where the page does.
const WASM: &str = "wasm, opt-level z";

/// A row for each drive.
fn rates(drives: &[Value], built: &str, report: &mut Report) -> Result<()> {
    for drive in drives {
        let name = format!("routes, {}, core, {built}", name(drive)?);
        report.row(name, number(drive, "per_second")?, "/s", None);
    }
    Ok(())
}

/// The same drives have the same lengths on both, or they did not do the same work.
fn agree(native: &[Value], wasm: &[Value]) -> Result<()> {
    for (one, other) in native.iter().zip(wasm) {
        let (length, again) = (number(one, "check")?, number(other, "check")?);
        let same = name(one)? == name(other)? && (length - again).abs() <= 1e-12 * length;
        anyhow::ensure!(same, "natively {one}, but as WebAssembly {other}");
    }
    Ok(())
}

fn compare(printed: &str, wasm: &[Value], report: &mut Report) -> Result<()> {
    for (place, drive) in lines(printed)?.iter().enumerate() {
        let (name, against) = (name(drive)?, text(drive, "against")?);
        let rate = number(drive, "per_second")?;
        report.row(format!("routes, {name}, {against}"), rate, "/s", None);
        let ratio = number(drive, "ratio")?;
        report.row(
            format!("routes, {name}, core, native, against {against}"),
            ratio,
            "×",
            None,
        );
        if let Some(wasm) = wasm.get(place) {
            let ratio = number(wasm, "per_second")? / rate;
            report.row(
                format!("routes, {name}, core, {WASM}, against {against}"),
                ratio,
                "×",
                None,
            );
        }
    }
    Ok(())
}

/// What a program prints that reads a file.
fn capture_with(command: &mut Command, input: File) -> Result<String> {
    let output = command
        .stdin(Stdio::from(input))
        .stderr(Stdio::inherit())
        .output()
        .context("the comparison of routes could not be started")?;
    anyhow::ensure!(output.status.success(), "the comparison of routes failed; why is above");
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

fn lines(printed: &str) -> Result<Vec<Value>> {
    let drives: Vec<Value> = printed
        .lines()
        .filter(|line| line.starts_with('{'))
        .map(serde_json::from_str)
        .collect::<Result<_, _>>()?;
    anyhow::ensure!(!drives.is_empty(), "no line of JSON in what it printed: {printed}");
    Ok(drives)
}

fn name(drive: &Value) -> Result<String> {
    let kind = match text(drive, "kind")? {
        "backed" => "ribbed and flat",
        _ => "ribbed",
    };
    let count = drive["count"].as_u64().context("a drive without a count")?;
    Ok(format!("{count} pulleys, {kind}"))
}

fn text<'a>(drive: &'a Value, key: &str) -> Result<&'a str> {
    drive[key].as_str().with_context(|| format!("no `{key}` in {drive}"))
}

fn number(drive: &Value, key: &str) -> Result<f64> {
    drive[key].as_f64().with_context(|| format!("no `{key}` in {drive}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_becomes_a_rate_and_its_ratios() {
        let line = r#"{"kind": "backed", "count": 12, "against": "scipy", "per_second": 2.0, "ratio": 5e4}"#;
        let wasm = [serde_json::json!({ "kind": "backed", "count": 12, "per_second": 3e4, "check": 1000.0 })];
        let mut report = Report::default();
        compare(line, &wasm, &mut report).unwrap();
        let shown = report.table();
        for (row, ratio) in [("native", "50 000 ×"), (WASM, "15 000 ×")] {
            let name = format!("routes, 12 pulleys, ribbed and flat, core, {row}, against scipy");
            let line = shown.lines().find(|line| line.starts_with(&name));
            assert!(line.is_some_and(|line| line.ends_with(ratio)), "{shown}");
        }
        assert!(compare("nothing", &wasm, &mut report).is_err());
    }

    #[test]
    fn another_length_as_wasm_is_refused() {
        let drive = |check: f64| [serde_json::json!({ "kind": "convex", "count": 2, "check": check })];
        assert!(agree(&drive(1000.0), &drive(1000.0)).is_ok());
        assert!(agree(&drive(1000.0), &drive(1000.001)).is_err());
    }
}
