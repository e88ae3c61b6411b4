//! A benchmark of the core as WebAssembly, built with the page's own profile and run in Node: the
//! engine is the one of a Chromium, and nothing of a page is around it.

use crate::{run, system};
use anyhow::{Context, Result};
use serde_json::Value;
use std::process::Command;

/// The target whose programs print and read a clock without a browser.
const TARGET: &str = "wasm32-wasip1";

/// Runs the program whose path is the first argument.
const RUN: &str = "const { WASI } = require('node:wasi');
const wasi = new WASI({ version: 'preview1', args: ['bench', '--json'] });
WebAssembly.compile(require('node:fs').readFileSync(process.argv[1]))
    .then((module) => WebAssembly.instantiate(module, wasi.getImportObject()))
    .then((instance) => wasi.start(instance));";

/// What a benchmark prints as WebAssembly; the sentence why not where something is missing.
pub(super) fn printed(bench: &str) -> Result<Result<String, String>> {
    if system::find_on_path("node").is_none() {
        return Ok(Err("Node.js is not here".into()));
    }
    if let Err(error) = run::capture(Command::new("rustup").args(["target", "add", TARGET])) {
        return Ok(Err(format!("the target {TARGET} could not be installed ({error:#})")));
    }
    let built = run::capture(
        run::cargo()
            .args(["build", "--quiet", "--release", "--package", "shopmath"])
            .args(["--bench", bench, "--target", TARGET, "--message-format", "json"]),
    )?;
    let program = executable(&built, bench).with_context(|| format!("cargo named no program for {bench}"))?;
    run::capture(Command::new("node").args(["--no-warnings", "--eval", RUN, &program])).map(Ok)
}

/// The program that cargo says it has made of a benchmark.
fn executable(messages: &str, bench: &str) -> Option<String> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<Value>(line).ok())
        .find(|message| message["target"]["name"] == bench && message["executable"].is_string())
        .and_then(|message| message["executable"].as_str().map(str::to_owned))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_program_is_that_of_the_benchmark() {
        let messages = r#"{"target":{"name":"other"},"executable":"/a.wasm"}
{"target":{"name":"routes"},"executable":null}
not JSON
{"target":{"name":"routes"},"executable":"/b.wasm"}"#;
        assert_eq!(executable(messages, "routes").as_deref(), Some("/b.wasm"));
        assert_eq!(executable(messages, "conversions"), None);
    }
}
