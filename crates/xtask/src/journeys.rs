//! Runs the journeys in each engine, but for those that `journeys/beyond.rs` says it cannot run,
//! and says at the end what that left out.

mod beyond;

use crate::browser::{Browser, Engine};
use crate::run::{capture, cargo, step};
use crate::{npm, paths, system};
use anyhow::{Context, Result, bail, ensure};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

/// The journeys whose name contains one of some names, or all of them, in some engines.
pub(crate) fn run_in(browsers: &[Browser], names: &[String]) -> Result<()> {
    let all = all()?;
    beyond::check(&all)?;
    let chosen: Vec<&str> = all
        .iter()
        .map(String::as_str)
        .filter(|journey| names.is_empty() || names.iter().any(|name| journey.contains(name.as_str())))
        .collect();
    ensure!(!chosen.is_empty(), "no journey's name contains {}", names.join(" or "));
    let axe = step("Accessibility checker", npm::axe)?;
    let mut said = Vec::new();
    for browser in browsers {
        let engine = browser.engine;
        let (out, run): (Vec<&str>, Vec<&str>) = chosen
            .iter()
            .partition(|journey| beyond::reason(engine, journey).is_some());
        let unsteady = step(&format!("Journeys in {}", engine.word()), || {
            one_engine(browser, &axe, &run)
        })?;
        said.push(summary(engine, run.len(), &out, &unsteady));
    }
    println!("\n{}", said.join("\n"));
    Ok(())
}

fn summary(engine: Engine, run: usize, out: &[&str], unsteady: &[String]) -> String {
    let mut lines = vec![format!("{}: {run} of {} journeys", engine.word(), run + out.len())];
    for (reason, journeys) in beyond::by_reason(engine, out) {
        lines.push(format!("  not there, as {reason}:"));
        lines.extend(journeys.iter().map(|journey| format!("    {journey}")));
    }
    lines.extend(
        unsteady
            .iter()
            .map(|name| format!("  passed at the second try only: {name}")),
    );
    lines.extend(beyond::weaker(engine).map(|what| format!("  shown less well: {what}")));
    lines.join("\n")
}

/// The names of all journeys.
fn all() -> Result<Vec<String>> {
    let mut command = journeys(cargo());
    command.args(["--", "--list", "--format", "terse"]);
    let listed = capture(&mut command)?;
    let names = listed.lines().filter_map(|line| line.strip_suffix(": test"));
    Ok(names.map(str::to_owned).collect())
}

/// Runs journeys one after another, each in a program of its own. One that fails is tried once more,
/// as browsers stumble on busy machines. Gives the names of those, to be said at the end.
fn one_engine(browser: &Browser, axe: &Path, names: &[&str]) -> Result<Vec<String>> {
    let mut unsteady = Vec::new();
    let mut failed = Vec::new();
    for name in names {
        let start = Instant::now();
        let passed = one(browser, axe, name)? || {
            unsteady.push((*name).to_owned());
            one(browser, axe, name)?
        };
        println!(
            "{} {name}, {} s",
            if passed { "ok    " } else { "FAILED" },
            start.elapsed().as_secs()
        );
        if !passed {
            failed.push(*name);
        }
    }
    ensure!(
        failed.is_empty(),
        "{} failed twice: {}",
        browser.engine.word(),
        failed.join(", ")
    );
    Ok(unsteady)
}

/// Runs one journey; whether it passed. What it said is shown where it did not.
fn one(browser: &Browser, axe: &Path, name: &str) -> Result<bool> {
    let mut command = journeys(on_a_screen(browser.engine)?);
    command
        .args(["--", "--exact", name])
        .env(
            "FENDERSIDE_XTASK",
            std::env::current_exe().context("this program cannot find itself")?,
        )
        .env("FENDERSIDE_DIST", paths::dist())
        .env("FENDERSIDE_AXE", axe);
    browser.hand_to(&mut command);
    let output = command
        .stdin(Stdio::null())
        .output()
        .context("cargo could not be started")?;
    if !output.status.success() {
        println!("{}", String::from_utf8_lossy(&output.stdout));
        println!("{}", String::from_utf8_lossy(&output.stderr));
    }
    Ok(output.status.success())
}

fn journeys(mut cargo: Command) -> Command {
    cargo.args(["test", "--quiet", "--package", "fenderside-tests"]).args([
        "--features",
        "browser",
        "--test",
        "browser",
    ]);
    cargo
}

/// Cargo, and around it what the browser needs to have a window.
fn on_a_screen(engine: Engine) -> Result<Command> {
    let cargo = cargo();
    if engine != Engine::WebKit {
        return Ok(cargo);
    }
    let Some(bus) = system::find_on_path("dbus-run-session") else {
        bail!("dbus-run-session has gone");
    };
    let mut command = Command::new(bus);
    command
        .args(["--", "xvfb-run", "--auto-servernum"])
        .arg("--server-args=-screen 0 1024x1024x24")
        .arg(cargo.get_program())
        .current_dir(paths::root());
    Ok(command)
}
