//! Fasteners, sections 2 to 8 of the domain notes: one file per section, one row per printed or
//! stated value, each with its mark.

#![allow(clippy::unwrap_used, clippy::panic)] // a helper that fails is a check that fails

mod angle;
mod engagement;
mod oracle;
mod practice;
mod strength;
mod stuck;
mod threads;
mod tightening;
mod traps;
mod wrench;

use fenderside_tests::{Mark, Tolerance, agree};
use shopmath::fastener::bolt::{Assessment, BoltText, assess, resolve};
use shopmath::fastener::class::{self, Class};
use shopmath::fastener::friction::{Friction, FrictionAt, FrictionRange};
use shopmath::fastener::head::{self, Head, Shape};
use shopmath::fastener::thread::Thread;
use shopmath::fastener::thread_text;
use shopmath::quantity::Quantity;
use shopmath::quantity::exact::length::Millimetre;
use shopmath::quantity::exact::pressure::Megapascal;
use shopmath::quantity::exact::ratio::Number;
use shopmath::result::Id;
use uom::si::f64::{Length, Pressure, Ratio};

fn thread(text: &str) -> Thread {
    thread_text::read(text).unwrap().thread
}

fn class_on(name: &str, thread: &Thread) -> Class {
    class::at(class::read(name).unwrap(), thread.diameter).unwrap()
}

fn hex(thread: &Thread) -> Head {
    head::on(Shape::Hex, thread, None, None).unwrap()
}

fn mm(value: f64) -> Length {
    Length::new::<Millimetre>(value)
}

fn mpa(value: f64) -> Pressure {
    Pressure::new::<Megapascal>(value)
}

fn ratio(value: f64) -> Ratio {
    Ratio::new::<Number>(value)
}

fn friction_at(mu: f64) -> FrictionAt {
    FrictionAt {
        thread: ratio(mu),
        head: ratio(mu),
    }
}

fn friction(low: f64, high: f64) -> Friction {
    Friction::both(FrictionRange::new(ratio(low), ratio(high)).unwrap())
}

/// A row that says where its value comes from when it fails.
fn row(what: &str, mark: Mark, actual: f64, expected: f64, tolerance: Tolerance) {
    agree(&format!("{what} [{mark:?}]"), actual, expected, tolerance);
}

/// The whole answer for a bolt as typed.
fn assessed(typed: &[(&str, &str)]) -> Assessment {
    let mut text = BoltText::default();
    for (key, value) in typed {
        assert!(text.set(key, *value), "no field {key}");
    }
    let resolved = resolve(&text);
    assert_eq!(resolved.errors, vec![], "{typed:?}");
    assess(&resolved)
}

/// A result of the contract by its full id, in its coherent SI unit.
fn result(assessment: &Assessment, id: &str) -> Option<f64> {
    let findings = assessment.sections.iter().flat_map(|section| &section.findings);
    findings
        .flat_map(|finding| {
            finding
                .amount
                .ends()
                .map(move |(end, quantity)| (finding.id, end, quantity))
        })
        .find(|(named, end, _)| match (named, end) {
            (Id::Named(name), None) => *name == id,
            (Id::Named(name), Some(end)) => id.strip_prefix(name) == Some(&format!("-{end}")),
            _ => false,
        })
        .map(|(_, _, quantity): (_, _, Quantity)| quantity.si())
}
