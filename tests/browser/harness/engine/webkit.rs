//! WebKit: the small browser that comes with it, and its driver.
//!
//! It forgets everything when it ends, draws no window narrower than its own bar, and has neither
//! fingers nor paper. It needs a screen, which `cargo xtask test browser webkit` brings.

use super::{Setup, USUAL};
use crate::harness::driver::Driver;
use crate::harness::setting;
use anyhow::{Result, ensure};
use serde_json::{Map, json};
use std::process::Command;
use thirtyfour::Capabilities;

pub(super) fn driver() -> Result<Driver> {
    ensure!(
        std::env::var_os("DISPLAY").is_some(),
        "WebKit's browser needs a screen. Start these journeys with `cargo xtask test browser webkit`"
    );
    Driver::on_a_free_port(&mut Command::new(setting::path("WEBKITDRIVER")?), "--port=")
}

/// The browser's settings. A name of the browser must not be asked for.
pub(super) fn capabilities(setup: &Setup<'_>) -> Result<Capabilities> {
    ensure!(
        setup.wishes == USUAL,
        "WebKit's driver has no setting that keeps a site from storing, or for the size of text"
    );
    let options = json!({ "binary": setting::path("MINIBROWSER")?, "args": ["--automation"] });
    let mut settings = Map::new();
    settings.insert("webkitgtk:browserOptions".to_owned(), options);
    if let Some(port) = setup.watch.port() {
        let proxy = json!({ "proxyType": "manual", "httpProxy": format!("127.0.0.1:{port}"), "sslProxy": format!("127.0.0.1:{port}") });
        settings.insert("proxy".to_owned(), proxy);
    }
    Ok(settings.into())
}
