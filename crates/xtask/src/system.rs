//! What the machine has: programs on its path, and packages where they may be installed.

use crate::run;
use anyhow::Result;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The first file of that name in the folders of PATH.
pub(crate) fn find_on_path(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}

/// Whether the system's packages can be installed.
pub(crate) fn may_install() -> bool {
    let root = run::capture(Command::new("id").arg("-u")).is_ok_and(|id| id == "0");
    root && Path::new("/etc/debian_version").exists() && find_on_path("apt-get").is_some()
}

/// Installs Debian packages of these names.
pub(crate) fn install(packages: &[&str]) -> Result<()> {
    println!("Installing {} from the system's packages", packages.join(", "));
    apt(&["update"])?;
    apt(&[&["install", "--yes", "--no-install-recommends"], packages].concat())
}

/// Runs Debian's installer, which asks nothing.
fn apt(words: &[&str]) -> Result<()> {
    let mut command = Command::new("apt-get");
    command.args(words).env("DEBIAN_FRONTEND", "noninteractive");
    run::run(&mut command)
}
