//! One line of text, as it could be typed into any field.

use crate::finite;
use shopmath::convert;
use shopmath::drive::belt::Belt;
use shopmath::drive::text::{pulleys, tensioner};
use shopmath::fastener::{class, thread_text};
use shopmath::quantity::fault::Fault;
use shopmath::quantity::read::{self, Expect};
use shopmath::quantity::{Bounds, Typed, Unit, print};
use shopmath::sheet::Date;
use shopmath::tools::Tools;

/// A unit of each kind that a field asks for.
const FIELDS: [Unit; 8] = [
    Unit::NewtonMetre,
    Unit::Millimetre,
    Unit::Degree,
    Unit::Percent,
    Unit::Number,
    Unit::KelvinDifference,
    Unit::Newton,
    Unit::Hertz,
];

/// Puts the input through every reader of a single text. What is read is finite, and printed it is
/// read the same; what is not read has a sentence, and each text offered instead is one.
pub fn text(input: &[u8]) {
    let text = &*String::from_utf8_lossy(input);
    quantities(text);
    converted(text);
    names(text);
    drive(text);
}

fn quantities(text: &str) {
    for unit in FIELDS {
        // Its fault is not put into words: that takes longer than all else, and `converted` does it.
        if let Ok(bounds) = read::range(text, Expect::field(unit)) {
            assert_eq!(bounds.kind(), unit.kind());
            range(bounds);
        }
    }
    if let Ok(stages) = read::stages(text, Expect::field(Unit::NewtonMetre)) {
        stages.into_iter().for_each(|stage| range(stage.value));
    }
}

fn range(bounds: Bounds) {
    for end in [bounds.low, bounds.high] {
        finite::numbers([end.value, end.step, end.quantity().si()]);
        assert_eq!(again(&print::exact(end), end), (end.value, end.unit));
    }
    assert_eq!(bounds.low.unit.kind(), bounds.high.unit.kind());
    assert!(bounds.low.quantity().si() <= bounds.high.quantity().si(), "{bounds:?}");
    assert!(!print::bounds(bounds).is_empty());
}

/// What a printed value reads as, in a field for values like it.
fn again(printed: &str, typed: Typed) -> (f64, Unit) {
    let read = read::value(printed, Expect::field(typed.unit));
    read.map_or_else(
        |fault| panic!("{printed}: {}", fault.sentence(printed)),
        |read| (read.value, read.unit),
    )
}

fn converted(text: &str) {
    match convert::line(text, Tools::Both) {
        Ok(line) => {
            assert!(!line.stages.is_empty());
            for read in line.stages {
                range(read.typed);
                rows(&read);
                rows(&convert::stage(read.typed, Tools::Metric));
                rows(&convert::stage(read.typed, Tools::Inch));
            }
        }
        Err(fault) => said(&fault, text),
    }
}

fn rows(stage: &convert::Stage) {
    // Convert has no rows for what nobody converts, such as shares.
    assert_eq!(stage.rows.is_empty(), stage.typed.kind().rows().next().is_none());
    finite::findings(&stage.rows);
}

fn said(fault: &Fault, text: &str) {
    let sentence = fault.sentence(text);
    assert!(sentence.ends_with(['.', '?']), "{sentence:?}");
    fault
        .remedies(text)
        .iter()
        .for_each(|remedy| assert!(!remedy.trim().is_empty()));
}

/// Threads, classes, belts and days: printed, they are read as the same.
fn names(text: &str) {
    let _ = convert::elsewhere(text);
    if let Ok(read) = thread_text::read(text) {
        assert_eq!(
            thread_text::read(read.thread.name).map(|again| again.thread),
            Ok(read.thread)
        );
        assert!(read.length.is_none_or(|length| length.value.is_finite()));
    }
    if let Ok(name) = class::read(text) {
        assert_eq!(class::read(name), Ok(name));
    }
    if let Ok(belt) = Belt::read(text) {
        assert_eq!(Belt::read(&belt.to_string()), Ok(belt));
    }
    if let Some(day) = Date::read(text) {
        assert_eq!(Date::read(&day.to_string()), Some(day));
    }
}

/// A list of pulleys, and behind a bar an arm that carries one of them.
fn drive(text: &str) {
    let (list, arm) = text.split_once('|').unwrap_or((text, ""));
    let Ok(read) = pulleys::read(list) else { return };
    let printed = pulleys::print(&read);
    let again = pulleys::read(&printed).unwrap_or_else(|faults| panic!("{printed}: {faults:?}"));
    assert_eq!(pulleys::print(&again), printed);
    if let Ok(arm) = tensioner::read(arm, &read) {
        let printed = tensioner::print(&arm, &read);
        let again = tensioner::read(&printed, &read).unwrap_or_else(|fault| panic!("{printed}: {fault:?}"));
        assert_eq!(tensioner::print(&again, &read), printed);
    }
}
