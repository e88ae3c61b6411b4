//! `cargo xtask fuzz`: searches for inputs that break what must hold for any input, with the
//! targets of `tests/fuzz`; and the replay of the inputs kept, which is part of `cargo xtask test`.

use crate::run::{cargo, run, step};
use crate::{options, paths, tools};
use anyhow::{Result, bail};
use lexopt::{Arg, Parser, ValueExt};
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// The targets, with the longest input tried, bytes: past it a search only becomes slower.
const TARGETS: [(&str, u32); 4] = [("text", 400), ("screens", 800), ("link", 4096), ("sheet", 4096)];
const MANIFEST: [&str; 2] = ["--manifest-path", "tests/fuzz/Cargo.toml"];
/// How long a target is searched with unless told otherwise.
const SECONDS: u32 = 600;
/// How long it is searched with among all other checks.
const SHORT: u32 = 20;

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let (mut seconds, mut wanted) = (SECONDS, Vec::new());
    while let Some(argument) = options.next()? {
        match argument {
            Arg::Long("seconds") => seconds = options::value(&mut options)?,
            Arg::Value(name) => wanted.push(target(&name.string()?)?),
            other => return options::unknown(&other),
        }
    }
    if wanted.is_empty() {
        wanted.extend(TARGETS);
    }
    searches(&wanted, seconds)
}

/// A short search with each target: what has just been broken is often found at once.
pub(crate) fn short_search() -> Result<()> {
    searches(&TARGETS, SHORT)
}

fn searches(wanted: &[(&str, u32)], seconds: u32) -> Result<()> {
    tools::cpp_compiler()?;
    wanted.iter().try_for_each(|target| {
        step(&format!("Search with `{}`", target.0), || {
            search(*target, &[&format!("-max_total_time={seconds}")])
        })
    })
}

fn target(name: &str) -> Result<(&'static str, u32)> {
    let known = TARGETS.into_iter().find(|(known, _)| *known == name);
    let Some(known) = known else {
        bail!(
            "there is no target `{name}`; there are: {}",
            TARGETS.map(|(name, _)| name).join(", ")
        );
    };
    Ok(known)
}

/// The inputs that are kept, tried natively; with format and lints of the crate that does it, which
/// is outside the workspace.
pub(crate) fn replay() -> Result<()> {
    step("Inputs kept from fuzzing", || {
        run(fuzz_crate("fmt").arg("--check"))?;
        run(fuzz_crate("clippy").args(["--locked", "--all-targets", "--", "-D", "warnings"]))?;
        run(fuzz_crate("test").arg("--locked"))
    })
}

fn fuzz_crate(command: &str) -> Command {
    let mut cargo = build_in_target(cargo());
    cargo.arg(command).args(MANIFEST);
    cargo
}

/// Runs a target from the inputs that are kept and those found here before. New ones go to `target/`.
fn search((name, longest): (&str, u32), flags: &[&str]) -> Result<()> {
    let (found, broken) = (folder("found", name)?, folder("broken", name)?);
    let mut command = fuzzer(name)?;
    command.args([&found, &kept(name)]).arg("--").args(flags);
    command
        .args([
            format!("-max_len={longest}"),
            format!("-artifact_prefix={}/", broken.display()),
        ])
        .arg(format!(
            "-dict={}",
            paths::root().join(format!("tests/fuzz/dict/{name}.dict")).display()
        ))
        .args([
            "-timeout=10",
            "-rss_limit_mb=4096",
            "-print_final_stats=1",
            "-verbosity=0",
        ]);
    run(&mut command)
}

fn kept(name: &str) -> PathBuf {
    paths::root().join("tests/fuzz/corpus").join(name)
}

fn folder(kind: &str, name: &str) -> Result<PathBuf> {
    let folder = paths::target().join("fuzz").join(kind).join(name);
    fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// cargo-fuzz on a target. The compiler's support for it is not stable yet, so it is asked for by
/// name; the pinned compiler makes that repeatable. There is no watch on memory: the core has no
/// unsafe code, and without it a search tries four times as many inputs.
fn fuzzer(name: &str) -> Result<Command> {
    let mut fuzzer = build_in_target(Command::new(tools::cargo_fuzz()?));
    fuzzer
        .current_dir(paths::root())
        .args(["run", "--fuzz-dir", "tests/fuzz", "--sanitizer", "none"])
        .args(["--features", "search", name])
        .env("RUSTC_BOOTSTRAP", "1");
    Ok(fuzzer)
}

/// Cargo would build a crate outside the workspace in a folder beside it.
fn build_in_target(mut command: Command) -> Command {
    if std::env::var_os("CARGO_TARGET_DIR").is_none() {
        command.env("CARGO_TARGET_DIR", paths::target().join("fuzz/build"));
    }
    command
}
