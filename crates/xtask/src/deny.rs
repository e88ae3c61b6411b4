//! `cargo xtask deny`: licences, duplicates and sources of every crate, and advisories where their
//! database can be reached. What is allowed stands in `deny.toml`.

use crate::run::{run, step};
use crate::{options, paths, tools};
use anyhow::{Context, Result};
use lexopt::Parser;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// The root manifests: the workspace's, and that of the fuzz crate, which is one of its own.
const MANIFESTS: [&str; 2] = ["Cargo.toml", "tests/fuzz/Cargo.toml"];
/// Where a network swallows requests instead of refusing them, nobody waits longer.
const PATIENCE: Duration = Duration::from_secs(60);

pub(crate) fn command(mut options: Parser) -> Result<()> {
    match options.next()? {
        None => check(),
        Some(argument) => options::unknown(&argument),
    }
}

/// Checks every crate of both lock files.
pub(crate) fn check() -> Result<()> {
    step("Licences, duplicates and sources of all crates", || {
        let program = tools::cargo_deny()?;
        for manifest in MANIFESTS {
            let mut deny = deny(&program, manifest);
            run(deny
                .args(["--all-features", "check", "bans", "licenses", "sources"])
                .args(QUIET))?;
        }
        if !fetched(&program)? {
            println!(
                "ADVISORIES NOT CHECKED: their database cannot be reached from here. \
                 Run `cargo xtask deny` where github.com can be."
            );
            return Ok(());
        }
        MANIFESTS.iter().try_for_each(|manifest| {
            let mut deny = deny(&program, manifest);
            run(deny.args(["--offline", "check", "advisories"]))
        })
    })
}

/// One configuration serves two lists of crates, so neither meets all of it.
const QUIET: [&str; 4] = [
    "--allow",
    "unmatched-skip",
    "--allow",
    "license-exception-not-encountered",
];

fn deny(program: &Path, manifest: &str) -> Command {
    let mut command = Command::new(program);
    command
        .current_dir(paths::root())
        .args(["--config", "deny.toml", "--locked", "--manifest-path", manifest]);
    command
}

/// Whether the advisories are here, fetched anew.
fn fetched(program: &Path) -> Result<bool> {
    let mut fetching = deny(program, "Cargo.toml")
        .args(["fetch", "db"])
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .context("cargo-deny could not be started")?;
    let start = Instant::now();
    loop {
        if let Some(status) = fetching.try_wait()? {
            return Ok(status.success());
        }
        if start.elapsed() > PATIENCE {
            fetching.kill()?;
            fetching.wait()?;
            return Ok(false);
        }
        std::thread::sleep(Duration::from_millis(100));
    }
}
