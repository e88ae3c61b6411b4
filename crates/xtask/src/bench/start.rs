//! From navigation to the first field that can be used, from a keystroke or a
//! finger's move to its paint, the work of either, and Sheet with few and many
//! sheets, on a processor slowed four times.
//!
//! A program of the tests' package drives the browser and gives plain lists of
//! milliseconds; what is made of them is here.

use super::references::References;
use super::report::{Limit, Report};
use crate::browser::Browser;
use crate::{paths, run};
use anyhow::{Context, Result, bail};
use serde_json::Value;

/// One frame of a 60 Hz screen.
const FRAME: Limit = Limit::AtMost(1000.0 / 60.0);
/// How many times as long as an empty page ours may take to start from a dead network.
const OFFLINE: Limit = Limit::AtMost(3.0);

/// Adds the rows of the page in a browser.
pub(super) fn measure(browser: &Browser, references: &References, report: &mut Report) -> Result<()> {
    if let Some(load) = load() {
        report.note(format!(
            "Load of the machine before the browser was timed: {load}. Times are worth little above 0.5."
        ));
    }
    let times = times(browser, references)?;
    for network in ["online", "offline"] {
        let ours = median(&list(&times, &["start", network, "page"])?);
        let empty = median(&list(&times, &["start", network, "empty"])?);
        let ratio = ours / empty;
        let name = format!("first usable field, {network}, 4× slower CPU");
        report.row(name.clone(), ours, "ms", Some((ratio, "empty page")));
        if network == "offline" {
            report.gate(format!("{name}, times an empty page"), ratio, "", OFFLINE, None);
        }
    }
    typing(&times, report)?;
    sheets(&times, report)?;
    report.note("Online is loopback: no network delay, so start times compare work, not signal.");
    Ok(())
}

/// The stretches between a key on Convert and its paint, in order, as the timing program
/// names them, and whether a field without a program has one to compare with.
const STRETCHES: [(&str, &str, bool); 4] = [
    ("reach", "- until the page hears of it", true),
    ("handlers", "- the page's handlers", false),
    ("wait", "- wait for the next frame", false),
    ("frame", "- style, layout, paint", true),
];

/// The screens typed on, and where the timing program puts their keys.
const SCREENS: [(&str, &[&str]); 4] = [
    ("Convert", &["typing", "page"]),
    ("Bolt", &["typing", "bolt"]),
    ("Belt", &["typing", "belt"]),
    ("a sheet of 50 rows", &["sheets", "10", "key"]),
];

fn typing(times: &Value, report: &mut Report) -> Result<()> {
    for (key, name, compares) in STRETCHES {
        let ours = list(times, &["typing", "page", key])?;
        let empty = list(times, &["typing", "empty", key])?;
        quantiles(report, name, &ours, compares.then_some(empty.as_slice()), None);
    }
    for (key, name) in [("paint", "keystroke to paint"), ("work", "work of a keystroke")] {
        let empty = list(times, &["typing", "empty", key])?;
        quantiles(report, &format!("{name}, plain field"), &empty, None, None);
        for (screen, path) in SCREENS {
            let ours = list(times, &[path, &[key]].concat())?;
            quantiles(report, &format!("{name}, {screen}"), &ours, Some(&empty), Some(FRAME));
        }
    }
    let dragged = list(times, &["drag", "paint"])?;
    quantiles(report, "finger to paint, six pulleys", &dragged, None, None);
    let work = list(times, &["drag", "work"])?;
    quantiles(report, "work of a finger's move", &work, None, None);
    report.note(
        "To paint counts from the event's own time, so it holds the browser's way to the page and any wait for the \
         next frame: a plain field without a program shows what is left for a page. Work is what the page itself does, \
         its handlers and the frame with style, layout and paint. Both hold what other programs take of the processor.",
    );
    Ok(())
}

/// How many sheets of 50 rows were on the phone, as the timing program names them.
const SHELVES: [&str; 3] = ["10", "100", "1000"];

/// Each beside the same with the fewest sheets.
fn sheets(times: &Value, report: &mut Report) -> Result<()> {
    let paths: [(&str, &[&str]); 7] = [
        ("list of sheets open", &["list"]),
        ("sheet of 50 rows, first rows seen", &["open"]),
        ("sheet of 50 rows, all rows there", &["whole"]),
        ("key in a sheet of 50 rows, to paint", &["key", "paint"]),
        ("- its work", &["key", "work"]),
        ("key of a search, to paint", &["search", "paint"]),
        ("- its work", &["search", "work"]),
    ];
    for (name, path) in paths {
        let middle = |shelf: &str| list(times, &[&["sheets", shelf], path].concat()).map(|found| median(&found));
        let few = middle(SHELVES[0])?;
        for shelf in SHELVES {
            let time = middle(shelf)?;
            let ratio = (shelf != SHELVES[0]).then_some((time / few, "10 sheets"));
            report.row(format!("{name}, {shelf} sheets, p50, 4× slower CPU"), time, "ms", ratio);
        }
    }
    Ok(())
}

/// The middle and the worst of some times, beside those of a plain field; the worst may have a limit.
fn quantiles(report: &mut Report, name: &str, ours: &[f64], plain: Option<&[f64]>, limit: Option<Limit>) {
    let name = |label| format!("{name}, {label} of {}, 4× slower CPU", ours.len());
    let ratio = |share| plain.map(|plain| (quantile(ours, share) / quantile(plain, share), "plain field"));
    report.row(name("p50"), quantile(ours, 0.50), "ms", ratio(0.50));
    let worst = quantile(ours, 0.99);
    match limit {
        Some(limit) => report.gate(name("p99"), worst, "ms", limit, ratio(0.99)),
        None => report.row(name("p99"), worst, "ms", ratio(0.99)),
    }
}

/// How many other programs want the processor just now, where the system tells.
fn load() -> Option<String> {
    let text = std::fs::read_to_string("/proc/loadavg").ok()?;
    text.split_whitespace().next().map(str::to_owned)
}

fn times(browser: &Browser, references: &References) -> Result<Value> {
    let mut timing = browser.driven_by("timing", &paths::dist())?;
    timing.env("FENDERSIDE_EMPTY", &references.empty);
    let text = run::capture(&mut timing)?;
    let line = text.lines().last().context("the timing program printed nothing")?;
    serde_json::from_str(line).with_context(|| format!("not what was expected: {line}"))
}

fn list(times: &Value, path: &[&str]) -> Result<Vec<f64>> {
    let found = path.iter().fold(times, |value, key| &value[*key]);
    let list: Option<Vec<f64>> = found
        .as_array()
        .and_then(|list| list.iter().map(Value::as_f64).collect());
    match list {
        Some(mut list) if !list.is_empty() => {
            list.sort_by(f64::total_cmp);
            Ok(list)
        }
        _ => bail!("there are no times for {path:?} in {times}"),
    }
}

fn median(sorted: &[f64]) -> f64 {
    quantile(sorted, 0.5)
}

/// The smallest value that at least this share of the sorted values does not
/// exceed: a time that was really measured, not one between two.
fn quantile(sorted: &[f64], share: f64) -> f64 {
    let below = sorted.iter().enumerate().find(|(place, _)| {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred values")]
        let reached = (place + 1) as f64 / sorted.len() as f64;
        reached >= share
    });
    below.map_or(f64::NAN, |(_, value)| *value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_are_values_that_were_measured() {
        let times = [1.0, 2.0, 3.0, 4.0];
        assert_eq!([0.5, 0.75, 0.99].map(|share| quantile(&times, share)), [2.0, 3.0, 4.0]);
        assert_eq!(median(&[5.0]), 5.0);
    }
}
