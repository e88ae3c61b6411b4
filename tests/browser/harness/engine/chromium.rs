//! Chromium and its driver.

use super::{HEIGHT, Setup, WIDTH};
use crate::harness::driver::Driver;
use crate::harness::setting;
use crate::harness::traffic::Watch;
use anyhow::Result;
use serde_json::json;
use std::process::Command;
use thirtyfour::{Capabilities, ChromeCapabilities, ChromiumLikeCapabilities};

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

pub(super) fn driver() -> Result<Driver> {
    let mut command = Command::new(setting::path("CHROMEDRIVER")?);
    command.arg("--port=0");
    Driver::that_says_its_port(&mut command, "successfully on port ")
}

/// The browser's settings: a phone's window, a profile, a log of its requests.
pub(super) fn capabilities(setup: &Setup<'_>) -> Result<Capabilities> {
    let mut settings = ChromeCapabilities::new();
    settings.set_binary(&setting::path("CHROMIUM")?.to_string_lossy())?;
    for switch in SWITCHES {
        settings.add_arg(switch)?;
    }
    settings.add_arg(&format!("--window-size={WIDTH},{HEIGHT}"))?;
    settings.add_arg(&format!("--user-data-dir={}", setup.profile.display()))?;
    if let Watch::Log(file) = setup.watch {
        settings.add_arg(&format!("--log-net-log={}", file.display()))?;
    }
    let screen = json!({
        "width": WIDTH, "height": HEIGHT, "pixelRatio": 2.0, "touch": true, "mobile": true,
    });
    settings.add_experimental_option("mobileEmulation", json!({ "deviceMetrics": screen }))?;
    let mut preferences = json!({
        "download.default_directory": setup.downloads,
        "webkit.webprefs.default_font_size": setup.wishes.text,
        // Its own start page, which some builds have elsewhere, would be asked for like a page of ours.
        "session.restore_on_startup": 4,
        "session.startup_urls": ["about:blank"],
    });
    if !setup.wishes.keeps {
        preferences["profile.default_content_setting_values.cookies"] = json!(2);
    }
    settings.add_experimental_option("prefs", preferences)?;
    Ok(settings.into())
}
