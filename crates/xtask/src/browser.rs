//! The browser the journeys run in: found, or installed from the system's
//! packages where that is allowed. Driving it is the business of `tests/browser`.

use crate::{run, tools};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;

const MISSING: &str = "no Chromium with its driver is here. Install the packages `chromium` and \
     `chromium-driver` (their Debian names), or set CHROMIUM and CHROMEDRIVER to the two programs";

/// A browser and the driver of the same version.
pub(crate) struct Browser {
    /// The browser itself.
    pub(crate) chromium: PathBuf,
    /// The program that speaks WebDriver for it.
    pub(crate) driver: PathBuf,
}

/// Finds the browser, or installs it if this is a Debian-like system and we may.
pub(crate) fn fetch() -> Result<Browser> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    if !may_install() {
        bail!(MISSING);
    }
    println!("Installing chromium and chromium-driver from the system's packages");
    apt(&["update"])?;
    apt(&[
        "install",
        "--yes",
        "--no-install-recommends",
        "chromium",
        "chromium-driver",
    ])?;
    find().context(MISSING)
}

fn find() -> Option<Browser> {
    let chromium = program("CHROMIUM", &["chromium", "chromium-browser", "google-chrome"])?;
    let driver = program("CHROMEDRIVER", &["chromedriver"])?;
    Some(Browser { chromium, driver })
}

fn program(variable: &str, names: &[&str]) -> Option<PathBuf> {
    match std::env::var_os(variable) {
        Some(path) => Some(PathBuf::from(path)).filter(|path| path.is_file()),
        None => names.iter().find_map(|name| tools::find_on_path(name)),
    }
}

/// Whether the system's packages can be installed.
pub(crate) fn may_install() -> bool {
    let root = run::capture(Command::new("id").arg("-u")).is_ok_and(|id| id == "0");
    root && Path::new("/etc/debian_version").exists() && tools::find_on_path("apt-get").is_some()
}

/// Runs Debian's installer, which asks nothing.
pub(crate) fn apt(words: &[&str]) -> Result<()> {
    let mut command = Command::new("apt-get");
    command.args(words).env("DEBIAN_FRONTEND", "noninteractive");
    run::run(&mut command)
}
