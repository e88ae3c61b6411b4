//! The service worker of a build: which files it keeps, and under which version.
//!
//! How the worker behaves is in `web/sw.js`; only its constants are filled in here.

use crate::{folder, paths};
use anyhow::{Context, Result, bail};
use base64::{Engine, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};
use std::path::Path;

/// Writes `sw.js` into a bundled folder and returns the version it carries.
pub(crate) fn write(folder: &Path, retired: bool) -> Result<String> {
    let template =
        std::fs::read_to_string(paths::worker_template()).context("the worker's template web/sw.js cannot be read")?;
    let files = kept(folder)?;
    let version = version(&template, &files);
    let list = serde_json::to_string(
        &files
            .iter()
            .map(|file| [file.url.clone(), file.integrity()])
            .collect::<Vec<_>>(),
    )?;
    let script = fill(&template, "VERSION", &serde_json::to_string(&version)?)?;
    let script = fill(&script, "FILES", &list)?;
    let script = fill(&script, "RETIRED", if retired { "true" } else { "false" })?;
    std::fs::write(folder.join("sw.js"), script)?;
    Ok(version)
}

struct Kept {
    url: String,
    sum: [u8; 32],
}

impl Kept {
    fn integrity(&self) -> String {
        format!("sha256-{}", STANDARD.encode(self.sum))
    }
}

fn kept(folder: &Path) -> Result<Vec<Kept>> {
    let mut files = Vec::new();
    for path in folder::files(folder)?.into_iter().filter(|path| is_kept(path)) {
        let bytes = std::fs::read(folder.join(&path))?;
        files.push(Kept {
            url: url(&path)?,
            sum: Sha256::digest(&bytes).into(),
        });
    }
    if !files.iter().any(|file| file.url == "./") {
        bail!("{} holds no index.html; is it a built page?", folder.display());
    }
    Ok(files)
}

/// The worker cannot keep itself, and a browser never asks for the compressed
/// twins by name.
fn is_kept(path: &Path) -> bool {
    let twin = path.extension().is_some_and(|end| end == "br" || end == "gz");
    !twin && path != Path::new("sw.js")
}

/// The address of a file, relative to the worker.
///
/// The start page goes by its folder: some hosts answer `index.html` with a
/// redirect, and a redirected answer is of no use to a navigation.
fn url(path: &Path) -> Result<String> {
    let name = path
        .components()
        .map(|part| part.as_os_str().to_string_lossy())
        .collect::<Vec<_>>()
        .join("/");
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_./".contains(c);
    if !name.chars().all(plain) {
        bail!("the file name `{name}` would need escaping in an address; rename it");
    }
    Ok(if name == "index.html" {
        "./".to_owned()
    } else {
        format!("./{name}")
    })
}

/// A hash over the names and bytes of all files, and over the worker itself: a
/// worker that behaves differently must not share a cache with the one before.
fn version(template: &str, files: &[Kept]) -> String {
    let mut hash = Sha256::new();
    hash.update(template);
    for file in files {
        hash.update(&file.url);
        hash.update([0]);
        hash.update(file.sum);
    }
    hash.finalize()
        .iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Replaces the value of a constant that stands on a line of its own.
fn fill(script: &str, name: &str, value: &str) -> Result<String> {
    let start = format!("const {name} = ");
    let mut lines: Vec<String> = script.lines().map(str::to_owned).collect();
    let mut found = lines.iter_mut().filter(|line| line.starts_with(&start));
    let (Some(line), None) = (found.next(), found.next()) else {
        bail!("web/sw.js must have exactly one line that starts with `{start}`");
    };
    *line = format!("{start}{value};");
    Ok(lines.join("\n") + "\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_start_page_goes_by_its_folder() {
        assert_eq!(url(Path::new("index.html")).unwrap(), "./");
        assert_eq!(url(Path::new("icons/icon.svg")).unwrap(), "./icons/icon.svg");
        assert!(url(Path::new("a b.css")).is_err());
    }

    #[test]
    fn twins_and_the_worker_are_left_out() {
        let kept: Vec<&str> = ["sw.js", "a.css", "a.css.br", "a.css.gz", "icons/sw.js"]
            .into_iter()
            .filter(|name| is_kept(Path::new(name)))
            .collect();
        assert_eq!(kept, ["a.css", "icons/sw.js"]);
    }

    #[test]
    fn a_constant_is_filled_once_or_not_at_all() {
        assert_eq!(fill("const A = 0;\nrest", "A", "7").unwrap(), "const A = 7;\nrest\n");
        assert!(fill("rest", "A", "7").is_err());
        assert!(fill("const A = 0;\nconst A = 1;", "A", "7").is_err());
    }

    #[test]
    fn names_bytes_and_worker_all_make_the_version() {
        let file = |url: &str, byte| Kept {
            url: url.to_owned(),
            sum: [byte; 32],
        };
        let first = version("t", &[file("./a", 1)]);
        assert_eq!(first, version("t", &[file("./a", 1)]));
        assert_ne!(first, version("t", &[file("./b", 1)]));
        assert_ne!(first, version("t", &[file("./a", 2)]));
        assert_ne!(first, version("u", &[file("./a", 1)]));
    }
}
