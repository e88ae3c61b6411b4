//! What goes out of a phone and comes into it: files, paper, and what a camera sees of its screen.

use super::{Phone, setting};
use anyhow::{Context, Result};
use serde_json::json;
use std::path::{Path, PathBuf};
use thirtyfour::By;
use thirtyfour::common::print::{PrintPage, PrintParameters};

impl Phone {
    /// Chooses a file in a field for files.
    pub fn choose_file(&self, key: &str, file: &Path) -> Result<()> {
        let path = file.to_str().context("a path that WebDriver can send")?;
        let selector = format!("input[id='{key}'][type='file']");
        let field = self.until(&format!("`{selector}`"), || {
            Ok(self.wait_on(self.browser().find(By::Css(&*selector))).ok())
        })?;
        self.wait_on(field.send_keys(path))
            .with_context(|| format!("`{key}` did not take {path}"))
    }

    /// Taps what hands over a file, and waits until it is there whole: its name and its bytes.
    pub fn download(&self, selector: &str) -> Result<(String, Vec<u8>)> {
        for earlier in files(self.downloads())? {
            std::fs::remove_file(earlier)?;
        }
        self.tap(selector)?;
        let file = self.until("the file", || {
            let found = files(self.downloads())?;
            let [file] = &found[..] else { return Ok(None) };
            Ok((is_whole(file)? && !is_on_its_way(file)).then(|| file.clone()))
        })?;
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        Ok((name, std::fs::read(file)?))
    }

    /// The page on paper, as a PDF: A4 upright, with the page's own margins.
    pub fn print(&self) -> Result<Vec<u8>> {
        let paper = PrintParameters {
            page: PrintPage {
                width: 21.0,
                height: 29.7,
            },
            // In Chromium this is what lets the page decide on its margins.
            shrink_to_fit: false,
            ..PrintParameters::default()
        };
        self.wait_on(self.browser().print_page(paper))
            .context("there is no paper")
    }

    /// What a camera sees of an element that is on the screen, as PNG.
    pub fn photograph(&self, selector: &str) -> Result<Vec<u8>> {
        let element = self.until(&format!("`{selector}`"), || {
            Ok(self.wait_on(self.browser().find(By::Css(selector))).ok())
        })?;
        // Clear of the bars at the top and bottom, which would be in the picture.
        let scroll = "document.querySelector(arguments[0]).scrollIntoView({ block: 'center' })";
        self.script::<()>(scroll, vec![json!(selector)])?;
        self.wait_on(element.screenshot_as_png())
            .with_context(|| format!("there is no picture of `{selector}`"))
    }
}

/// Keeps something to look at in `target/screens`; where it is.
pub fn keep_to_look_at(name: &str, bytes: &[u8]) -> Result<PathBuf> {
    let folder = setting::screens();
    std::fs::create_dir_all(&folder)?;
    let file = folder.join(name);
    std::fs::write(&file, bytes)?;
    Ok(file)
}

fn files(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries = std::fs::read_dir(folder)?;
    entries.map(|entry| Ok(entry?.path())).collect()
}

/// Firefox puts an empty file in place before it has the bytes.
fn is_whole(file: &Path) -> Result<bool> {
    Ok(std::fs::metadata(file)?.len() > 0)
}

/// While it is on its way it has another ending, or a name that begins with a point.
fn is_on_its_way(file: &Path) -> bool {
    let hidden = file
        .file_name()
        .is_some_and(|name| name.to_string_lossy().starts_with('.'));
    hidden
        || file
            .extension()
            .is_some_and(|ending| ending == "crdownload" || ending == "part")
}
