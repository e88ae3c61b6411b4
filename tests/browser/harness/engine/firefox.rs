//! Firefox and its driver.

use super::Setup;
use crate::harness::driver::Driver;
use crate::harness::setting;
use anyhow::Result;
use serde_json::{Map, Value, json};
use std::process::Command;
use thirtyfour::Capabilities;

pub(super) fn driver() -> Result<Driver> {
    let mut command = Command::new(setting::path("GECKODRIVER")?);
    // Its second port, for BiDi, is any free one as well.
    command.args(["--port", "0", "--websocket-port", "0"]);
    Driver::that_says_its_port(&mut command, "Listening on 127.0.0.1:")
}

/// The browser's settings. The size of the window is set by BiDi once it runs: Firefox draws none
/// that is as narrow as a phone.
pub(super) fn capabilities(setup: &Setup<'_>) -> Result<Capabilities> {
    let options = json!({
        "binary": setting::path("FIREFOX")?,
        "args": ["-headless", "-profile", setup.profile],
        "prefs": preferences(setup),
    });
    let mut settings = Map::new();
    settings.insert("moz:firefoxOptions".to_owned(), options);
    settings.insert("webSocketUrl".to_owned(), json!(true));
    Ok(settings.into())
}

fn preferences(setup: &Setup<'_>) -> Value {
    let mut preferences = json!({
        // A screen that is touched.
        "dom.w3c_touch_events.enabled": 1,
        "ui.useOverlayScrollbars": 1,
        // Files are kept without a question, in a folder of the journey's own.
        "browser.download.folderList": 2,
        "browser.download.dir": setup.downloads,
        "browser.download.always_ask_before_handling_new_types": false,
        "browser.helperApps.neverAsk.saveToDisk": "application/json,text/csv,text/plain,application/octet-stream",
        // Its own errands: whether there is a network, and messages from its makers.
        "network.captive-portal-service.enabled": false,
        "network.connectivity-service.enabled": false,
        "dom.push.connection.enabled": false,
        "font.size.variable.x-western": setup.wishes.text,
        // To read what was copied needs a hand on a menu that no screen shows.
        "dom.events.testing.asyncClipboard": true,
    });
    if let Some(port) = setup.watch.port() {
        preferences["network.proxy.type"] = json!(1);
        for kind in ["http", "ssl"] {
            preferences[format!("network.proxy.{kind}")] = json!("127.0.0.1");
            preferences[format!("network.proxy.{kind}_port")] = json!(port);
        }
        // Servers on this machine are asked by way of it too.
        preferences["network.proxy.allow_hijacking_localhost"] = json!(true);
    }
    if !setup.wishes.keeps {
        preferences["network.cookie.cookieBehavior"] = json!(2);
    }
    preferences
}
