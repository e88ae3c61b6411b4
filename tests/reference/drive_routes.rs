//! Lengths of random drives against a polygon library and a numerical minimisation: what
//! `tests/oracles/drive_routes.py` wrote down.

#![allow(clippy::unwrap_used, clippy::panic)] // a helper that fails is a check that fails

use fenderside_tests::{Tolerance, agree};
use shopmath::drive::layout::Layout;
use shopmath::drive::profile::Profile;
use shopmath::drive::route;
use shopmath::drive::text::pulleys;
use shopmath::quantity::exact::length::Millimetre;
use uom::si::f64::Length;

const ROWS: &str = include_str!("../oracles/drive_routes.csv");

/// The polygon's discs have 32768 corners, which shortens a rim by 1.5e-9 of itself; the file holds
/// six decimals.
const HULL: Tolerance = Tolerance::Relative(5e-9);
/// The minimiser's line is extrapolated from ray spacings of 3° and 1.5°; its last term left is
/// some 1e-4 mm on drives of two metres.
const MINIMUM: Tolerance = Tolerance::Relative(2e-7);

#[test]
fn random_drives_have_the_lengths_of_the_independent_ways() {
    let (mut convex, mut backed) = (0, 0);
    for row in ROWS.lines().filter(|row| !row.starts_with('#')).skip(1) {
        let (kind, rest) = row.split_once(',').unwrap();
        let (length, text) = rest.split_once(',').unwrap();
        let layout = Layout {
            profile: Profile::Pk,
            back: Length::new::<Millimetre>(2.3),
            pulleys: pulleys::read(text.trim_matches('"')).unwrap(),
        };
        let tolerance = match kind {
            "convex" => HULL,
            _ => MINIMUM,
        };
        *(if kind == "convex" { &mut convex } else { &mut backed }) += 1;
        let route = route::solve(&layout).unwrap_or_else(|faults| panic!("{text}: {faults:?}"));
        agree(
            text,
            route.effective_length.get::<Millimetre>(),
            length.parse().unwrap(),
            tolerance,
        );
    }
    assert!(convex >= 100 && backed >= 100, "{convex} and {backed} drives");
}
