//! What a browser asked of the network, from the log of its network stack: the
//! page, its frames and its service worker alike, answered or not.
//!
//! The browser has errands of its own (the time, its start page). They carry no
//! origin; what the page asks for carries the page's.

use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::Path;

/// The requests of one browser, from its start to its end.
#[derive(Debug)]
pub struct Traffic {
    origin: String,
    urls: Vec<String>,
}

impl Traffic {
    pub(super) fn read(log: &Path, site: &str) -> Result<Self> {
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
        Ok(Self {
            origin: origin(site),
            urls,
        })
    }

    /// All addresses the page asked for.
    #[must_use]
    pub fn urls(&self) -> &[String] {
        &self.urls
    }

    /// Fails if the page asked any other origin for anything.
    pub fn stays_home(&self) -> Result<()> {
        if self.urls.is_empty() {
            bail!("no request at all was seen, so this log proves nothing");
        }
        let home = format!("{}/", self.origin);
        let away: Vec<&String> = self.urls.iter().filter(|url| !url.starts_with(&home)).collect();
        if !away.is_empty() {
            bail!("the page asked elsewhere: {away:?}");
        }
        Ok(())
    }
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

fn origin(site: &str) -> String {
    let mut parts = site.splitn(4, '/');
    let scheme = parts.next().unwrap_or_default();
    let host = parts.nth(1).unwrap_or_default();
    format!("{scheme}//{host}")
}
