//! What goes out of a phone and comes into it: files, paper, and what a camera sees of its screen.

use super::{Phone, setting};
use anyhow::{Context, Result};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;
use std::path::{Path, PathBuf};
use thirtyfour::By;

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
        let folder = tempfile::tempdir()?;
        let to = json!({ "behavior": "allow", "downloadPath": folder.path() });
        self.devtools("Browser.setDownloadBehavior", to)?;
        self.tap(selector)?;
        let file: PathBuf = self.until("the file", || {
            let first = std::fs::read_dir(folder.path())?.next().transpose()?;
            // While it is on its way it has another ending, or a name that begins with a point.
            let whole = first.map(|file| file.path()).filter(|path| {
                let hidden = path
                    .file_name()
                    .is_some_and(|name| name.to_string_lossy().starts_with('.'));
                !hidden && path.extension().is_some_and(|ending| ending != "crdownload")
            });
            Ok(whole)
        })?;
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        Ok((name, std::fs::read(file)?))
    }

    /// The page on paper, as a PDF: A4 as millimetres, upright, with the page's own margins.
    pub fn print(&self) -> Result<Vec<u8>> {
        let inch = 25.4;
        let paper = json!({ "paperWidth": 210.0 / inch, "paperHeight": 297.0 / inch, "preferCSSPageSize": true });
        let answer = self.devtools("Page.printToPDF", paper)?;
        let letters = answer["data"].as_str().context("there is no paper")?;
        Ok(STANDARD.decode(letters)?)
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
