//! Measures the page in a browser for `cargo xtask bench`: prints one line of JSON
//! with lists of milliseconds. What they are compared with is decided there.

mod start;
mod typing;

use anyhow::{Context, Result};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;
use std::path::Path;

/// How much slower the processor is made: a cheap phone beside a desk machine.
const SLOWER: u32 = 4;

fn main() -> Outcome {
    let start = start::measure()?;
    let typing = typing::measure()?;
    println!("{}", json!({ "start": start, "typing": typing }));
    Ok(())
}

fn slow_down(phone: &Phone) -> Outcome {
    phone.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER }))?;
    Ok(())
}

/// A plain field without a program: what the page is compared with.
fn empty_page() -> Result<Server> {
    let folder = std::env::var_os("FENDERSIDE_EMPTY")
        .context("FENDERSIDE_EMPTY is not set; start this by `cargo xtask bench`")?;
    Server::serving(Path::new(&folder), "/")
}
