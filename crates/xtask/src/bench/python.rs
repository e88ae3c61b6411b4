//! A Python of our own, for what the core is measured against. Packages go into
//! `target/bench/venv`, in the versions the caller names.

use crate::{paths, run};
use anyhow::Result;
use std::path::PathBuf;
use std::process::Command;

/// The Python with these packages; none when there is no Python here.
pub(super) fn with(packages: &[&str]) -> Result<Option<PathBuf>> {
    let home = paths::target().join("bench/venv");
    let python = home.join("bin/python");
    let has = "import importlib.metadata as m, sys\n\
               sys.exit(any(p != f'{(n := p.split(\"==\")[0])}=={m.version(n)}' for p in sys.argv[1:]))";
    if run::capture(Command::new(&python).args(["-c", has]).args(packages)).is_ok() {
        return Ok(Some(python));
    }
    let made = run::capture(Command::new("python3").args(["-m", "venv"]).arg(&home));
    if made.is_err() {
        return Ok(None);
    }
    println!("Installing {} into target/bench/venv", packages.join(", "));
    let install = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check"];
    run::run(Command::new(&python).args(install).args(packages))?;
    Ok(Some(python))
}
