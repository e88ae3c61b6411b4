//! The log of Chromium's network stack.
//!
//! The browser has errands of its own (the time, its start page). They carry no
//! origin; what the page asks for carries the page's.

use anyhow::{Context, Result};
use serde_json::Value;
use std::path::Path;

/// All addresses that pages and workers asked for.
pub(super) fn urls(log: &Path) -> Result<Vec<String>> {
    let log: Value = serde_json::from_str(&std::fs::read_to_string(log)?)?;
    let started = log["constants"]["logEventTypes"]["URL_REQUEST_START_JOB"]
        .as_u64()
        .context("the log knows no start of a request")?;
    let events = log["events"].as_array().context("the log has no events")?;
    let urls = events
        .iter()
        .filter(|event| event["type"].as_u64() == Some(started))
        .filter(|event| is_of_a_page(&event["params"]))
        .filter_map(|event| event["params"]["url"].as_str().map(str::to_owned))
        .collect();
    Ok(urls)
}

/// A page's requests name the origin they come from; a navigation says which
/// frame it is for.
fn is_of_a_page(request: &Value) -> bool {
    let from = request["initiator"].as_str().unwrap_or_default();
    let kind = request["request_type"].as_str().unwrap_or_default();
    let local = ["data:", "blob:", "chrome:"];
    let url = request["url"].as_str().unwrap_or_default();
    let goes_out = !local.iter().any(|scheme| url.starts_with(scheme));
    goes_out && (from.starts_with("http") || kind.contains("frame"))
}
