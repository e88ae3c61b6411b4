//! Folders of files: listed, and removed.

use anyhow::{Context, Result};
use std::path::{Path, PathBuf};

/// Every file below a folder as a path relative to it, in one fixed order.
pub(crate) fn files(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    collect(folder, Path::new(""), &mut found)?;
    found.sort();
    Ok(found)
}

fn collect(folder: &Path, below: &Path, found: &mut Vec<PathBuf>) -> Result<()> {
    let here = folder.join(below);
    let entries =
        std::fs::read_dir(&here).with_context(|| format!("{} is not a folder that can be read", here.display()))?;
    for entry in entries {
        let entry = entry?;
        let path = below.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            collect(folder, &path, found)?;
        } else {
            found.push(path);
        }
    }
    Ok(())
}

/// Removes a folder if it is there.
pub(crate) fn clear(folder: &Path) -> Result<()> {
    match std::fs::remove_dir_all(folder) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
            Err(error).with_context(|| format!("{} cannot be removed", folder.display()))
        }
        _ => Ok(()),
    }
}
