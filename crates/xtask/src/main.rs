//! The project's own commands: `cargo xtask serve | test | dist | bench | shots | fuzz | deny`.
//!
//! Only the dispatch lives here. One file per command; what commands share is
//! in the other modules. Nothing in this crate is part of the page.

mod bench;
mod browser;
mod compress;
mod deny;
mod dist;
mod folder;
mod fuzz;
mod journeys;
mod npm;
mod options;
mod page;
mod paths;
mod run;
mod serve;
mod server;
mod shots;
mod system;
mod test;
mod tools;
mod worker;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask <command>

  serve [--port N] [--host ADDR] [--prefix /PATH/] [--dir FOLDER]
        build the page as it is deployed and serve it; with --dir, serve a
        folder that has been built before, without building
  test  run every check there is: format, lints, unit, property and reference
        tests, a short search with each fuzzer, licences and sources, then
        journeys in Chromium and Firefox
  test browser [chromium|firefox|webkit] [NAME...]
        only the journeys, or only those whose name contains NAME, in one
        engine or in all of them
  dist  build the page into dist/, ready for any static host
  dist --finish FOLDER [--retire]
        write the service worker and the compressed files of a folder that
        Trunk has built; with --retire, a worker that removes itself
  bench measure sizes, start, typing and conversions, each beside a reference,
        and Lighthouse's scores; fails where a budget is missed
  bench size, bench lighthouse
        only that
  shots [--dir FOLDER]
        take the README's pictures into web/shots; with --dir, of a folder that
        has been built before, without building
  fuzz [TARGET...] [--seconds N]
        search for inputs that break the core, 600 s with each target
  deny  check licences, duplicates and sources of all crates, and advisories
        where their database can be reached
";

fn main() -> ExitCode {
    match dispatch() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\nxtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch() -> anyhow::Result<()> {
    let mut options = lexopt::Parser::from_env();
    let Some(command) = options::word(&mut options)? else {
        print!("{USAGE}");
        return Ok(());
    };
    match command.as_str() {
        "serve" => serve::command(options),
        "test" => test::command(options),
        "dist" => dist::command(options),
        "bench" => bench::command(options),
        "shots" => shots::command(options),
        "fuzz" => fuzz::command(options),
        "deny" => deny::command(options),
        "help" => {
            print!("{USAGE}");
            Ok(())
        }
        other => anyhow::bail!("there is no command `{other}`. Type `cargo xtask help`."),
    }
}
