//! Conversions per second: each spec of the shared workload read from text and taken to every unit
//! of its kind, the way Convert does it.
//!
//! `cargo bench -p shopmath --bench conversions`; with `-- --json` the last line is an object with
//! `per_second` and `check`, the sum of ln(1 + |value|) over one round, by which the same workload
//! in other programs shows that it computes the same.

use shopmath::quantity::read::{self, Expect};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// How long it is measured.
const TIME: Duration = Duration::from_millis(800);
/// The texts of the workload, one per line of it that holds one.
const WORKLOAD: &str = include_str!("../../xtask/assets/workload.json");

fn texts() -> Vec<&'static str> {
    WORKLOAD
        .lines()
        .filter_map(|line| line.trim().strip_prefix("{ \"text\": \"")?.split('"').next())
        .collect()
}

/// One round: how many conversions, and their check sum. A text that does not read makes the sum
/// no number, which no other program agrees with.
fn round(texts: &[&str]) -> (u32, f64) {
    let mut count = 0;
    let mut check = 0.0;
    for text in texts {
        let Ok(typed) = read::value(black_box(text), Expect::default()) else {
            return (count, f64::NAN);
        };
        let quantity = typed.quantity();
        for unit in typed.unit.kind().rows() {
            check += quantity.value_in(unit).unwrap_or(f64::NAN).abs().ln_1p();
            count += 1;
        }
    }
    (count, check)
}

fn main() {
    let texts = texts();
    let (count, check) = round(&texts);
    let (start, mut rounds) = (Instant::now(), 0_u32);
    while start.elapsed() < TIME {
        black_box(round(&texts));
        rounds += 1;
    }
    let per_second = f64::from(rounds) * f64::from(count) / start.elapsed().as_secs_f64();
    if std::env::args().any(|argument| argument == "--json") {
        println!("{{\"per_second\": {per_second}, \"check\": {check}}}");
    } else {
        println!("{count} conversions a round, {per_second:.0} a second, check sum {check:.10}");
    }
}
