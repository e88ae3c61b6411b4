//! `cargo xtask shots`: the pictures that the README shows, taken of the page as it is deployed.
//!
//! A program of the tests' package drives the browser and hands the pictures over;
//! they go to `web/shots`, which no build copies into the page.

use crate::browser::{Browser, Engine};
use crate::run::{self, step};
use crate::{dist, folder, options, paths};
use anyhow::{Context, Result, ensure};
use base64::{Engine as _, engine::general_purpose::STANDARD};
use lexopt::{Arg, Parser};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// A README that loads slowly on a phone is not read there.
const LARGEST: usize = 150 * 1024;

/// Pictures in base64, by name.
type Pictures = BTreeMap<String, String>;

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let mut built = None;
    while let Some(argument) = options.next()? {
        match argument {
            Arg::Long("dir") => built = Some(PathBuf::from(options.value()?)),
            other => return options::unknown(&other),
        }
    }
    let browser = step("Browser", || Browser::fetch(Engine::Chromium))?;
    let folder = match built {
        Some(folder) => std::path::absolute(folder)?,
        None => {
            dist::build()?;
            paths::dist()
        }
    };
    let pictures = step("Pictures", || take(&browser, &folder))?;
    ensure!(!pictures.is_empty(), "no picture was taken");
    keep(&pictures)
}

fn take(browser: &Browser, folder: &Path) -> Result<Pictures> {
    let mut shots = browser.driven_by("shots", folder)?;
    let text = run::capture(&mut shots)?;
    serde_json::from_str(&text).context("the program that takes pictures printed something else")
}

/// Puts the pictures in the place of those of the last time.
fn keep(pictures: &Pictures) -> Result<()> {
    let home = paths::root().join("web/shots");
    folder::clear(&home)?;
    std::fs::create_dir_all(&home)?;
    for (name, data) in pictures {
        let picture = STANDARD.decode(data)?;
        let size = picture.len();
        std::fs::write(home.join(format!("{name}.png")), picture)?;
        println!("web/shots/{name}.png: {} KB", size.div_ceil(1024));
        ensure!(
            size <= LARGEST,
            "that is more than {} KB; show less on it",
            LARGEST / 1024
        );
    }
    Ok(())
}
