//! `cargo xtask dist`: the page in `dist/`, ready for any static host.

use crate::run::step;
use crate::{folder, options, page, paths, tools};
use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser};
use std::path::{Path, PathBuf};

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let (mut finish, mut retire) = (None, false);
    while let Some(argument) = options.next()? {
        match argument {
            Arg::Long("finish") => finish = Some(PathBuf::from(options.value()?)),
            Arg::Long("retire") => retire = true,
            other => return options::unknown(&other),
        }
    }
    match finish {
        Some(folder) => {
            println!("version {}", page::finish(&folder, retire)?);
            Ok(())
        }
        None if retire => bail!("--retire goes with --finish FOLDER, on a copy of dist/"),
        None => build(),
    }
}

/// Builds the page and puts it where the last build was.
///
/// The old build stays in place until the new one is complete, so a failed
/// build leaves a page that works.
pub(crate) fn build() -> Result<()> {
    let tools = step("Build tools", tools::fetch)?;
    let stage = paths::target().join("stage");
    step("Page, release build", || {
        page::bundle(&tools, &paths::root().join("index.html"), &stage)
    })?;
    let version = step("Service worker and compressed files", || page::finish(&stage, false))?;
    swap(&stage, &paths::dist())?;
    println!("\nThe page is in {} (version {version})", paths::dist().display());
    Ok(())
}

fn swap(new: &Path, place: &Path) -> Result<()> {
    let old = paths::target().join("dist-before");
    folder::clear(&old)?;
    if place.exists() {
        std::fs::rename(place, &old)?;
    }
    std::fs::rename(new, place).with_context(|| format!("{} cannot be put in place", place.display()))?;
    folder::clear(&old)
}
