//! Measures the page in a browser for `cargo xtask bench`: prints one line of JSON
//! with lists of milliseconds. What they are compared with is decided there.

mod drag;
mod record;
mod sheets;
mod start;
mod typing;

use anyhow::{Context, Result};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Map, Value, json};
use std::path::Path;

/// How much slower the processor is made: a cheap phone beside a desk machine.
const SLOWER: u32 = 4;

type Measure = fn() -> Result<Value>;

/// What there is to measure, by name.
const PARTS: [(&str, Measure); 4] = [
    ("start", start::measure),
    ("typing", typing::measure),
    ("drag", drag::measure),
    ("sheets", sheets::measure),
];

/// Measures the parts named, or all.
fn main() -> Outcome {
    let named: Vec<String> = std::env::args().skip(1).collect();
    let mut times = Map::new();
    for (name, measure) in PARTS {
        if named.is_empty() || named.iter().any(|wanted| wanted == name) {
            times.insert(name.to_owned(), measure()?);
        }
    }
    println!("{}", Value::Object(times));
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
