//! Belt routes per second, for 2, 6, 12 and 50 pulleys: all ribbed round a ring, and with flat
//! pulleys pressed in between.
//!
//! `cargo bench -p shopmath --bench routes` prints a table; `-- --json` a line per drive with the
//! pulleys as text, so that `tests/oracles/drive_rate.py` measures the very same drives.

use shopmath::drive::fault::RouteFault;
use shopmath::drive::layout::Layout;
use shopmath::drive::profile::Profile;
use shopmath::drive::pulley::{Pulley, Side, Spot};
use shopmath::drive::route;
use shopmath::drive::text::pulleys;
use shopmath::quantity::exact::length::Millimetre;
use std::f64::consts::TAU;
use std::hint::black_box;
use std::time::{Duration, Instant};
use uom::si::f64::Length;

/// How long each number is measured.
const TIME: Duration = Duration::from_millis(600);

fn mm(value: f64) -> Length {
    Length::new::<Millimetre>(value)
}

/// A ring of pulleys; `flat` sets every second one outside it, pressed in.
fn ring(count: u32, flat: bool) -> Layout {
    let radius = if flat { 45.0 } else { 32.0 } * f64::from(count).max(4.0);
    let pulley = |index: u32| {
        let pressed = flat && index % 2 == 1;
        let (sin, cos) = (TAU * f64::from(index) / f64::from(count)).sin_cos();
        // From the middle to the span between the ribbed neighbours, then 57 mm out: a flat pulley of
        // 30 mm radius there pushes the span some 20 mm in.
        let out = if pressed {
            radius * (TAU / f64::from(count)).cos() + 57.0
        } else {
            radius
        };
        Pulley {
            name: format!("p{index}"),
            side: if pressed { Side::Back } else { Side::Rib },
            centre: Spot {
                x: mm(out * cos),
                y: mm(out * sin),
            },
            diameter: mm(if pressed {
                60.0
            } else {
                80.0 + f64::from(index % 3) * 15.0
            }),
        }
    };
    Layout {
        profile: Profile::Pk,
        back: mm(2.3),
        pulleys: (0..count).map(pulley).collect(),
    }
}

/// How often a job runs in a second.
fn per_second(mut job: impl FnMut()) -> f64 {
    let (start, mut rounds) = (Instant::now(), 0_u32);
    while start.elapsed() < TIME {
        for _ in 0..64 {
            job();
        }
        rounds += 64;
    }
    f64::from(rounds) / start.elapsed().as_secs_f64()
}

fn main() -> Result<(), Vec<RouteFault>> {
    let json = std::env::args().any(|argument| argument == "--json");
    if !json {
        println!("{:<16}{:>16}{:>16}", "drive", "checked /s", "length only /s");
    }
    for (count, flat) in [
        (2, false),
        (6, false),
        (6, true),
        (12, false),
        (12, true),
        (50, false),
        (50, true),
    ] {
        let layout = ring(count, flat);
        let solved = route::solve(&layout)?;
        let sense = solved.sense;
        let checked = per_second(|| {
            let _ = black_box(route::solve(black_box(&layout)));
        });
        let length = per_second(|| {
            let _ = black_box(route::effective_length(black_box(&layout), sense));
        });
        let kind = if flat { "backed" } else { "convex" };
        if json {
            let check = solved.effective_length.get::<Millimetre>();
            let text = pulleys::print(&layout.pulleys);
            println!(
                r#"{{"bench":"routes","kind":"{kind}","count":{count},"per_second":{checked},"length_per_second":{length},"check":{check},"pulleys":"{text}"}}"#
            );
        } else {
            println!("{:<16}{checked:>16.0}{length:>16.0}", format!("{count} {kind}"));
        }
    }
    Ok(())
}
