//! Lighthouse on a phone: its four scores, and what the start of the page costs on a slow one, the
//! median of five runs, each beside its limit.

use super::report::{Limit, Report};
use crate::browser::Browser;
use crate::server::{self, Site};
use crate::{npm, paths, run};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::Path;
use std::process::Command;

const RUNS: usize = 5;

/// Chromium's switches: as root, and without a screen.
const SWITCHES: &str = "--chrome-flags=--headless=new --no-sandbox --disable-gpu --disable-dev-shm-usage";

/// What is read out of a report, and how far it may go.
struct Measure {
    name: &'static str,
    /// Where the number stands in a report.
    path: &'static str,
    /// A share becomes a score of 100.
    times: f64,
    unit: &'static str,
    limit: Limit,
}

const MEASURES: [Measure; 7] = [
    score("performance", "/categories/performance/score", 99.0),
    score("accessibility", "/categories/accessibility/score", 100.0),
    score("best practices", "/categories/best-practices/score", 100.0),
    score("search engines", "/categories/seo/score", 100.0),
    metric(
        "largest contentful paint",
        "/audits/largest-contentful-paint/numericValue",
        "ms",
        1500.0,
    ),
    metric(
        "total blocking time",
        "/audits/total-blocking-time/numericValue",
        "ms",
        50.0,
    ),
    metric(
        "cumulative layout shift",
        "/audits/cumulative-layout-shift/numericValue",
        "",
        0.0,
    ),
];

/// A number that is taken as it stands.
const PLAIN: Measure = Measure {
    name: "",
    path: "",
    times: 1.0,
    unit: "",
    limit: Limit::AtMost(0.0),
};

const fn score(name: &'static str, path: &'static str, least: f64) -> Measure {
    Measure {
        name,
        path,
        times: 100.0,
        limit: Limit::AtLeast(least),
        ..PLAIN
    }
}

const fn metric(name: &'static str, path: &'static str, unit: &'static str, most: f64) -> Measure {
    Measure {
        name,
        path,
        unit,
        limit: Limit::AtMost(most),
        ..PLAIN
    }
}

/// Adds a row per measure, and a note on what keeps a score below 100.
pub(super) fn measure(browser: &Browser, report: &mut Report) -> Result<()> {
    let program = npm::lighthouse()?;
    let site = server::serve_beside(&Site::here(paths::dist(), 0))?;
    let runs: Vec<Value> = (0..RUNS)
        .map(|_| once(&program, browser, &site))
        .collect::<Result<_>>()?;
    for measure in &MEASURES {
        let value = middle(&runs, measure)?;
        report.gate(
            format!("Lighthouse, {}", measure.name),
            value,
            measure.unit,
            measure.limit,
            None,
        );
    }
    for title in lost(&runs) {
        report.note(format!("Lighthouse takes points for: {title}."));
    }
    Ok(())
}

/// One run, on Lighthouse's own slow phone and network.
fn once(program: &Path, browser: &Browser, site: &str) -> Result<Value> {
    let mut lighthouse = Command::new("node");
    lighthouse
        .arg(program)
        .arg(site)
        .args([
            "--form-factor=mobile",
            "--output=json",
            "--quiet",
            "--max-wait-for-load=60000",
        ])
        .args([
            "--only-categories=performance,accessibility,best-practices,seo",
            SWITCHES,
        ])
        .env("CHROME_PATH", browser.program());
    let text = run::capture(&mut lighthouse)?;
    let found: Value = serde_json::from_str(&text).context("Lighthouse printed something else than a report")?;
    match found["runtimeError"]["message"].as_str() {
        Some(words) => bail!("Lighthouse could not measure: {words}"),
        None => Ok(found),
    }
}

/// The middle of the runs.
fn middle(runs: &[Value], measure: &Measure) -> Result<f64> {
    let values: Option<Vec<f64>> = runs
        .iter()
        .map(|run| run.pointer(measure.path)?.as_f64())
        .map(|value| value.map(|value| value * measure.times))
        .collect();
    let mut values = values.with_context(|| format!("a report lacks {}", measure.path))?;
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied().context("there was no run")
}

/// The audits that took points in the last run, of those that count.
fn lost(runs: &[Value]) -> Vec<String> {
    let Some(run) = runs.last() else {
        return Vec::new();
    };
    let categories = run["categories"].as_object().into_iter().flatten();
    let counted = categories
        .flat_map(|(_, category)| category["auditRefs"].as_array().into_iter().flatten())
        .filter(|audit| audit["weight"].as_f64().is_some_and(|weight| weight > 0.0))
        .filter_map(|audit| run["audits"].get(audit["id"].as_str()?));
    counted
        .filter(|audit| audit["score"].as_f64().is_some_and(|score| score < 1.0))
        .map(|audit| {
            let shown = audit["displayValue"].as_str().unwrap_or_default();
            format!("{} {shown}", audit["title"].as_str().unwrap_or_default())
                .trim_end()
                .to_owned()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn the_median_is_a_run_and_what_costs_points_is_named() {
        let run = |score: f64| {
            let refs = json!([{ "id": "fast", "weight": 10 }, { "id": "idle", "weight": 0 }]);
            let audits = json!({ "fast": { "title": "Fast", "score": score, "displayValue": "2 s" }, "idle": { "title": "Idle", "score": 0 } });
            json!({ "categories": { "performance": { "score": score, "auditRefs": refs } }, "audits": audits })
        };
        let runs = [run(0.9), run(1.0), run(0.95)];
        assert!((middle(&runs, &MEASURES[0]).unwrap() - 95.0).abs() < 1e-9);
        assert_eq!(lost(&runs), ["Fast 2 s"]);
        assert!(middle(&runs, &MEASURES[4]).is_err());
    }
}
