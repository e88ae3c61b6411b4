//! What `cargo xtask` hands to the journeys: where the page and the programs are.

use anyhow::{Result, bail};
use std::path::{Path, PathBuf};

/// A path given by an environment variable.
pub(super) fn path(variable: &str) -> Result<PathBuf> {
    match std::env::var_os(variable) {
        Some(value) => Ok(PathBuf::from(value)),
        None => bail!(
            "{variable} is not set: journeys need a built page and a browser. \
             Start them with `cargo xtask test browser`"
        ),
    }
}

/// The engine to run in.
pub(super) fn engine() -> String {
    std::env::var("FENDERSIDE_ENGINE").unwrap_or_else(|_| "chromium".to_owned())
}

/// The program whose `serve` and `dist` the journeys use.
pub(super) fn xtask() -> Result<PathBuf> {
    path("FENDERSIDE_XTASK")
}

/// The built page.
pub(super) fn dist() -> Result<PathBuf> {
    path("FENDERSIDE_DIST")
}

/// The script that finds what keeps people from using a page.
pub fn axe() -> Result<PathBuf> {
    path("FENDERSIDE_AXE")
}

/// Where pictures of the page go.
pub(super) fn screens() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/screens")
}
