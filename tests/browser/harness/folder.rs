//! A copy of the built page that a journey may change.

use super::setting;
use anyhow::{Context, Result, ensure};
use std::path::Path;
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// A deployed folder of one's own.
#[derive(Debug)]
pub struct Copy(TempDir);

impl Copy {
    /// A copy of the page as it was built.
    pub fn of_the_page() -> Result<Self> {
        let copy = Self(TempDir::with_prefix("fenderside-site-")?);
        copy_folder(&setting::dist()?, copy.path())?;
        Ok(copy)
    }

    /// The folder to serve.
    #[must_use]
    pub fn path(&self) -> &Path {
        self.0.path()
    }

    /// Deploys a new version: the same page with one line more in its start page.
    pub fn deploy_another(&self, mark: &str) -> Result<()> {
        let file = self.path().join("index.html");
        let page = std::fs::read_to_string(&file)?;
        let line = format!("<meta name=\"deployed\" content=\"{mark}\">\n</head>");
        ensure!(page.contains("</head>"), "the start page has no head to mark");
        std::fs::write(&file, page.replace("</head>", &line))?;
        self.finish(&[])
    }

    /// Deploys the page as it was built, over whatever is there.
    pub fn roll_back(&self) -> Result<()> {
        copy_folder(&setting::dist()?, self.path())
    }

    /// Loses every file with this ending: a deployment that was interrupted.
    pub fn lose(&self, ending: &str) -> Result<()> {
        let mut lost = 0;
        for entry in std::fs::read_dir(self.path())? {
            let entry = entry?;
            let name = entry.file_name().to_string_lossy().into_owned();
            // The compressed twins go too, or the server would send those.
            if name.trim_end_matches(".br").trim_end_matches(".gz").ends_with(ending) {
                std::fs::remove_file(entry.path())?;
                lost += 1;
            }
        }
        ensure!(lost > 0, "no file ends in {ending}");
        Ok(())
    }

    /// Adds a line to the deployed worker.
    pub fn add_to_worker(&self, line: &str) -> Result<()> {
        let file = self.path().join("sw.js");
        let worker = std::fs::read_to_string(&file)? + line + "\n";
        std::fs::write(&file, worker)?;
        for twin in ["sw.js.br", "sw.js.gz"] {
            std::fs::remove_file(self.path().join(twin))?;
        }
        Ok(())
    }

    /// Deploys the worker that takes itself back.
    pub fn retire(&self) -> Result<()> {
        self.finish(&["--retire"])
    }

    fn finish(&self, more: &[&str]) -> Result<()> {
        let status = Command::new(setting::xtask()?)
            .args(["dist", "--finish"])
            .arg(self.path())
            .args(more)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .status()
            .context("xtask could not be started")?;
        ensure!(status.success(), "the copy could not be finished ({status})");
        Ok(())
    }
}

fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    let entries = std::fs::read_dir(from).with_context(|| format!("{} is no built page", from.display()))?;
    for entry in entries {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
