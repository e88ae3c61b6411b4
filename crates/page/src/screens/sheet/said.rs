//! What is heard of the last change to a sheet: what is wrong with the text, or what came of it.

use super::job::{Job, Touched};
use crate::views::finding::in_words;
use shopmath::sheet::assess::Place;
use shopmath::sheet::bolts::{FastenerAssessment, Reading};
use shopmath::sheet::fields::At;
use shopmath::sheet::order::List;

/// The words; none where the change has no result.
pub(super) fn said(job: &Job) -> String {
    match job.touched {
        Touched::Nothing => String::new(),
        Touched::Entry(at, key) => fault(job, at, key).or_else(|| result(job, at)).unwrap_or_default(),
        Touched::Reading(row, index) => {
            let reading = bolts(job, row).and_then(|found| found.readings.get(index));
            reading.map(judged).unwrap_or_default()
        }
        Touched::Row => job.undo_words().map(str::to_owned).unwrap_or_default(),
        Touched::TakenBack => "Taken back.".into(),
    }
}

fn bolts(job: &Job, row: u32) -> Option<&FastenerAssessment> {
    job.found
        .fasteners
        .iter()
        .find(|found| found.id == row)
        .map(AsRef::as_ref)
}

/// The sentence on an entry that cannot be read.
fn fault(job: &Job, at: At, key: &str) -> Option<String> {
    let place = match at {
        At::Head => Place::Sheet,
        At::Row(List::Fasteners, id) => Place::Fastener(id),
        At::Row(List::Parts, id) => Place::Part(id),
        At::Row(List::Intervals, id) => Place::Interval(id),
        At::Row(List::Checks | List::Belts, _) => return None,
    };
    let mut faults = job.found.all_faults();
    let found = faults.find(|(stands, fault)| *stands == place && fault.key == key);
    found.map(|(_, fault)| fault.sentence.clone())
}

/// What an entry that can be read has a part in.
fn result(job: &Job, at: At) -> Option<String> {
    match at {
        At::Row(List::Fasteners, id) => Some(bolts(job, id)?.verdict.as_ref()?.sentence.clone()),
        At::Row(List::Parts, _) => {
            let total = job.found.parts_total?.text();
            Some(["Total ", &total, " ", &job.sheet.currency].concat())
        }
        _ => None,
    }
}

fn judged(reading: &Reading) -> String {
    let fault = reading.fault.as_ref().map(|fault| fault.sentence.clone());
    let place = if reading.outside { "Outside. " } else { "Within. " };
    let judged = || reading.deviation.as_ref().map(|off| [place, &in_words(off)].concat());
    fault.or_else(judged).unwrap_or_default()
}
