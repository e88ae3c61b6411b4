//! The texts of a whole screen, a key and its text a line: `thread=M10`.

use crate::finite;
use shopmath::drive::bench::{self, DriveText};
use shopmath::fastener::bolt::{self, BoltText};
use shopmath::field::FieldFault;
use shopmath::sketch;

/// Sets the texts and works everything out, of a bolt where a line has one of its keys, of a drive
/// where one has one of its. Every number is finite, and every fault has its sentence.
pub fn screens(input: &[u8]) {
    let text = String::from_utf8_lossy(input);
    let pairs: Vec<(&str, &str)> = text.split('\n').filter_map(|line| line.split_once('=')).collect();
    let mut typed = BoltText::default();
    // No short circuit: every line is set.
    if pairs.iter().filter(|(key, text)| typed.set(key, *text)).count() > 0 {
        a_bolt(&typed);
    }
    if pairs.iter().any(|(key, _)| bench::field(key).is_some()) {
        a_drive(&DriveText::from_link(pairs.iter().copied()));
    }
}

fn a_bolt(typed: &BoltText) {
    let resolved = bolt::resolve(typed);
    let found = bolt::assess(&resolved);
    for section in &found.sections {
        finite::findings(&section.findings);
    }
    said(resolved.errors.iter().chain(&found.errors));
    if let Some(verdict) = &found.verdict {
        assert!(verdict.sentence.ends_with('.'), "{}", verdict.sentence);
        finite::sketch(&sketch::share::share(verdict));
    }
    if let Some(drawing) = &found.drawing {
        finite::sketch(&sketch::joint::joint(drawing));
    }
    if let Some(plot) = &found.plot {
        sketch::plot::plot(plot).iter().for_each(finite::sketch);
    }
}

fn a_drive(typed: &DriveText) {
    linked(typed);
    let found = bench::assess(bench::resolve(typed));
    for section in &found.sections {
        finite::findings(&section.findings);
    }
    said(&found.faults);
    for candidate in &found.candidates {
        finite::numbers([candidate.difference.value]);
        if let Some(Ok((angle, share))) = &candidate.arm {
            finite::numbers([angle.value, share.value]);
        }
    }
    if let Some(frame) = sketch::route::Frame::of(&found.drawing) {
        finite::sketch(&sketch::route::route(&found.drawing, &frame, None));
    }
    if let Some(arm) = &found.drawing.arm {
        finite::numbers([arm.x, arm.y, arm.length, arm.low, arm.high, arm.drawn]);
    }
}

/// A link says the same about every field: its text, or its default where it is empty.
fn linked(typed: &DriveText) {
    let link = typed.link();
    let again = DriveText::from_link(link.iter().map(|(key, text)| (*key, text.as_str())));
    for field in &bench::FIELDS {
        let says = |texts: &DriveText| {
            let text = texts.get(field.key).unwrap_or_default().trim();
            if text.is_empty() { field.default } else { text }.to_owned()
        };
        assert_eq!(says(&again), says(typed), "{}", field.key);
    }
}

fn said<'a>(faults: impl IntoIterator<Item = &'a FieldFault>) {
    for fault in faults {
        assert!(!fault.sentence.is_empty(), "{fault:?}");
        fault
            .remedies
            .iter()
            .for_each(|remedy| assert!(!remedy.trim().is_empty(), "{fault:?}"));
    }
}
