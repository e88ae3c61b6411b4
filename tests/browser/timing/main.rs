//! Measures the page in a browser for `cargo xtask bench`: prints one line of JSON
//! with lists of milliseconds. What they are compared with is decided there.

mod start;
mod typing;

use fenderside_tests::harness::{Outcome, Phone};
use serde_json::json;

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
