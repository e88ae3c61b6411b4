//! The program between a journey and its browser, on a port of its own.

use super::setting;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use thirtyfour::{ChromeCapabilities, ChromiumLikeCapabilities};

/// As root and without a screen. The background switches keep the browser's own
/// requests out of the way; those that remain are told apart in `traffic.rs`.
const SWITCHES: &[&str] = &[
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    // Small shared memory is common in containers.
    "--disable-dev-shm-usage",
];

/// A phone that is held upright, the size every screen is drawn for.
const WIDTH: u32 = 390;
const HEIGHT: u32 = 844;

/// A running chromedriver.
#[derive(Debug)]
pub(super) struct Driver {
    process: Child,
    pub(super) url: String,
}

impl Driver {
    pub(super) fn start() -> Result<Self> {
        let mut process = Command::new(setting::path("CHROMEDRIVER")?)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("chromedriver could not be started")?;
        let port = port(&mut process);
        let mut driver = Self {
            process,
            url: String::new(),
        };
        driver.url = format!("http://127.0.0.1:{}", port?);
        Ok(driver)
    }

    /// Its process.
    pub(super) fn id(&self) -> u32 {
        self.process.id()
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// Chromedriver chooses a free port and says so in a sentence.
fn port(process: &mut Child) -> Result<u16> {
    let output = process.stdout.take().context("chromedriver has no output")?;
    for line in BufReader::new(output).lines() {
        if let Some((_, rest)) = line?.split_once("successfully on port ") {
            return Ok(rest.trim_end_matches('.').parse()?);
        }
    }
    bail!("chromedriver ended before it listened")
}

/// The browser's settings: a phone's window, a profile, a log of its requests.
pub(super) fn settings(profile: &Path, log: &Path) -> Result<ChromeCapabilities> {
    let mut settings = ChromeCapabilities::new();
    settings.set_binary(&setting::path("CHROMIUM")?.to_string_lossy())?;
    for switch in SWITCHES {
        settings.add_arg(switch)?;
    }
    settings.add_arg(&format!("--window-size={WIDTH},{HEIGHT}"))?;
    settings.add_arg(&format!("--user-data-dir={}", profile.display()))?;
    settings.add_arg(&format!("--log-net-log={}", log.display()))?;
    let screen = serde_json::json!({
        "width": WIDTH, "height": HEIGHT, "pixelRatio": 2.0, "touch": true, "mobile": true,
    });
    settings.add_experimental_option("mobileEmulation", serde_json::json!({ "deviceMetrics": screen }))?;
    Ok(settings)
}
