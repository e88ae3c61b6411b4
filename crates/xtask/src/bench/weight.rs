//! What a first visit has to fetch, in bytes as brotli sends them.

use super::references::References;
use super::report::{Limit, Report};
use crate::{folder, paths};
use anyhow::{Result, bail};
use std::path::Path;

/// What the module and its glue may weigh together, for all four screens, KB.
const BUDGET: f64 = 150.0;

/// Whether a file of that name belongs to a kind.
type Kind = fn(&str) -> bool;

/// Adds a row per kind of file, and one for the module with its glue.
pub(super) fn measure(references: &References, report: &mut Report) -> Result<()> {
    let parts: [(&str, Kind); 4] = [
        ("wasm", is_wasm),
        ("JavaScript glue", is_glue),
        ("CSS", is_css),
        ("HTML", is_html),
    ];
    let mut start = [0.0, 0.0];
    for (name, belongs) in parts {
        let ours = bytes(&paths::dist(), belongs)?;
        let hello = bytes(&references.hello, belongs)?;
        report.row(
            format!("{name}, brotli"),
            ours,
            "B",
            Some((ours / hello, "hello world")),
        );
        if name == "wasm" || name == "JavaScript glue" {
            start = [start[0] + ours, start[1] + hello];
        }
    }
    let [ours, hello] = start;
    let ratio = Some((ours / hello, "hello world"));
    report.gate("wasm + glue, brotli", ours / 1000.0, "KB", Limit::AtMost(BUDGET), ratio);
    let alone = bytes(&references.core, is_wasm)? + bytes(&references.core, is_glue)?;
    let ratio = Some((alone / hello, "hello world"));
    report.row("the calculators without a page, brotli", alone / 1000.0, "KB", ratio);
    report.row("boot.js, brotli", bytes(&paths::dist(), is_boot)?, "B", None);
    Ok(())
}

fn is_wasm(name: &str) -> bool {
    name.ends_with(".wasm.br")
}

/// What wasm-bindgen wrote: every script but our own two.
fn is_glue(name: &str) -> bool {
    name.ends_with(".js.br") && !is_boot(name) && name != "sw.js.br"
}

fn is_boot(name: &str) -> bool {
    name.starts_with("boot-") && name.ends_with(".js.br")
}

fn is_css(name: &str) -> bool {
    name.ends_with(".css.br")
}

fn is_html(name: &str) -> bool {
    name.ends_with(".html.br")
}

fn bytes(folder: &Path, belongs: Kind) -> Result<f64> {
    let mut sum = 0;
    for path in folder::files(folder)?
        .iter()
        .filter(|path| belongs(&path.to_string_lossy()))
    {
        sum += std::fs::metadata(folder.join(path))?.len();
    }
    if sum == 0 {
        bail!("{} lacks a kind of file that every build has", folder.display());
    }
    // A page is far too small for a whole number of bytes not to fit.
    Ok(f64::from(u32::try_from(sum)?))
}
