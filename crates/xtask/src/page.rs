//! Building a page the way it is deployed: Trunk, then the service worker, then
//! the compressed files. The same steps make the page and what it is measured
//! against. Where the result goes is the caller's business.

use crate::folder::clear;
use crate::tools::Tools;
use crate::{compress, run, worker};
use anyhow::{Context, Result};
use std::path::Path;

/// Runs Trunk on an `index.html` into a folder, which is emptied first.
pub(crate) fn bundle(tools: &Tools, index: &Path, into: &Path) -> Result<()> {
    clear(into)?;
    let home = index.parent().context("index.html has no folder")?;
    let mut trunk = tools.trunk();
    trunk.arg("build").arg(index).arg("--dist").arg(into).current_dir(home);
    if tools.wasm_opt {
        trunk.arg("--release");
    } else {
        // Trunk insists on wasm-opt in its own release mode. The profile alone
        // gives the same module without that step.
        trunk.args(["--cargo-profile", "release"]);
    }
    run::run(&mut trunk)?;
    put_aside(&into.join("index.html"))
}

/// Puts the links that load the module ahead of its use into a template, where they load nothing
/// until `boot.js` takes them out: a slow network is to bring the first words first.
fn put_aside(index: &Path) -> Result<()> {
    let html = std::fs::read_to_string(index)?;
    let (before, links) = html
        .split_once("<link rel=\"modulepreload\"")
        .context("Trunk has written no link that loads the module ahead")?;
    let (links, after) = links.split_once("</head>").context("index.html has no head")?;
    let html = format!("{before}<template id=\"program\"><link rel=\"modulepreload\"{links}</template></head>{after}");
    Ok(std::fs::write(index, html)?)
}

/// Makes a bundled folder deployable: the worker that keeps it, then the
/// compressed twin of each file. Returns the version written into the worker.
pub(crate) fn finish(folder: &Path, retired: bool) -> Result<String> {
    let version = worker::write(folder, retired)?;
    compress::beside(folder)?;
    Ok(version)
}
