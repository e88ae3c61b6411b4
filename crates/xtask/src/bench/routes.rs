//! Belt routes per second: the core, and on the very same drives a polygon
//! library (shapely, ribbed pulleys only) and a minimiser (scipy, with flat ones).
//!
//! The script that measures the others refuses lengths that disagree.

use super::python;
use super::report::Report;
use crate::{paths, run};
use anyhow::{Context, Result};
use serde_json::Value;
use std::fs::File;
use std::process::{Command, Stdio};

/// The versions `tests/oracles/drive_routes.csv` was made with.
const PACKAGES: [&str; 3] = ["numpy==2.4.6", "scipy==1.17.1", "shapely==2.2.0"];

/// Adds a row per drive for the core, and one for its ratio to the other.
pub(super) fn measure(report: &mut Report) -> Result<()> {
    let printed = run::capture(
        run::cargo()
            .args(["bench", "--package", "shopmath", "--bench", "routes"])
            .args(["--", "--json"]),
    )?;
    for drive in lines(&printed)? {
        let name = name(&drive)?;
        report.row(
            format!("routes, {name}, core, native"),
            number(&drive, "per_second")?,
            "/s",
            None,
        );
    }
    match python::with(&PACKAGES)? {
        Some(python) => {
            let drives = paths::target().join("bench/routes.jsonl");
            std::fs::write(&drives, printed + "\n")?;
            let script = paths::root().join("tests/oracles/drive_rate.py");
            let mut other = Command::new(python);
            other.arg(script);
            compare(&capture_with(&mut other, File::open(&drives)?)?, report)?;
        }
        None => report.note("Python 3 with venv is not here: no comparison of routes with shapely and scipy."),
    }
    report.note("Routes per second in the browser are not measured.");
    Ok(())
}

fn compare(printed: &str, report: &mut Report) -> Result<()> {
    for drive in lines(printed)? {
        let (name, against) = (name(&drive)?, text(&drive, "against")?);
        let rate = number(&drive, "per_second")?;
        report.row(format!("routes, {name}, {against}"), rate, "/s", None);
        let ratio = number(&drive, "ratio")?;
        report.row(format!("routes, {name}, core against {against}"), ratio, "×", None);
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
    fn a_line_becomes_a_rate_and_a_ratio() {
        let line = r#"{"kind": "backed", "count": 12, "against": "scipy", "per_second": 2.0, "ratio": 5e4}"#;
        let mut report = Report::default();
        compare(line, &mut report).unwrap();
        let shown = report.table();
        assert!(
            shown.contains("routes, 12 pulleys, ribbed and flat, core against scipy"),
            "{shown}"
        );
        assert!(shown.contains("50 000 ×"), "{shown}");
        assert!(compare("nothing", &mut report).is_err());
    }
}
