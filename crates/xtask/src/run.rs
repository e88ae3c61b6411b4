//! Running other programs, and saying how long each step took.

use anyhow::{Context, Result, bail};
use std::process::{Command, Stdio};
use std::time::Instant;

/// Runs a program to its end with its output shown; a failure is an error.
///
/// Standard input is closed: a tool that asks a question would wait for ever
/// where nobody sits.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let shown = describe(command);
    let status = command
        .stdin(Stdio::null())
        .status()
        .with_context(|| format!("`{shown}` could not be started"))?;
    if !status.success() {
        bail!("`{shown}` failed ({status}); what it printed is above");
    }
    Ok(())
}

/// Runs a program and gives back what it printed, without surrounding space.
pub(crate) fn capture(command: &mut Command) -> Result<String> {
    let shown = describe(command);
    let output = command
        .stdin(Stdio::null())
        .output()
        .with_context(|| format!("`{shown}` could not be started"))?;
    if !output.status.success() {
        bail!(
            "`{shown}` failed ({}): {}",
            output.status,
            String::from_utf8_lossy(&output.stderr).trim()
        );
    }
    Ok(String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Does a piece of work under a heading and prints the time it took.
pub(crate) fn step<T>(name: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("\n== {name}");
    let start = Instant::now();
    let done = work().with_context(|| format!("{name}: failed"))?;
    println!("== {name}: {:.1} s", start.elapsed().as_secs_f64());
    Ok(done)
}

/// Cargo, as the one that started this program.
pub(crate) fn cargo() -> Command {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(cargo);
    command.current_dir(crate::paths::root());
    command
}

fn describe(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(command.get_args().map(|word| word.to_string_lossy().into_owned()));
    words.join(" ")
}
