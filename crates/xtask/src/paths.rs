//! Where things live in the workspace. Creates nothing.

use std::path::{Path, PathBuf};

/// The workspace's root folder.
pub(crate) fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// The built page, ready for a static host.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// Everything that may be deleted at any time.
pub(crate) fn target() -> PathBuf {
    root().join("target")
}

/// Build tools this crate installs, so that nothing outside the project changes.
pub(crate) fn tools() -> PathBuf {
    target().join("tools")
}

/// The template the service worker of a build is made from.
pub(crate) fn worker_template() -> PathBuf {
    root().join("web/sw.js")
}
