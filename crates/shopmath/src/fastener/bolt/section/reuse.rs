//! Section Stretch bolt: what a measured bolt has kept, beside what the spec does to it. It never
//! says that a single-use bolt may be used again.

use super::{Section, found, length};
use crate::caution::fastener as cautions;
use crate::fastener::bolt::common::Common;
use crate::fastener::bolt::field::SectionId;
use crate::fastener::reuse::permanent_set;
use crate::fastener::si::metres;
use crate::quantity::Unit;
use crate::result::Working;
use crate::source::fastener as sources;

const NOTE_NO_LEAVE: &str =
    "No measured stretch is no leave to use a single-use bolt again: threads and surfaces are spent as well.";

pub(in crate::fastener::bolt) fn section(common: &mut Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Reuse, "Stretch bolt");
    let resolved = common.resolved;
    section.want("length-new", &resolved.length_new);
    section.want("length-now", &resolved.length_now);
    if !(resolved.length_new.is_empty() && resolved.length_now.is_empty()) {
        section.cautions.push(cautions::SINGLE_USE);
    }
    let (Some(new), Some(now)) = (resolved.length_new.given(), resolved.length_now.given()) else {
        return section;
    };
    let Some(kept) = common.keep("length-now", permanent_set(new, now)) else {
        return section;
    };
    let terms = vec![length("l", "length now", now), length("l0", "length new", new)];
    section.findings.push(found(
        "permanent-set",
        "stretched for good, measured",
        kept.set,
        Unit::Millimetre,
        (
            "length against length",
            Working::new("l − l0", terms.clone(), sources::LENGTHS),
        ),
    ));
    section.findings.push(found(
        "permanent-set-share",
        "that is, of its length",
        kept.share,
        Unit::Percent,
        (
            "length against length",
            Working::new("(l − l0)/l0", terms, sources::LENGTHS),
        ),
    ));
    section.notes.push(NOTE_NO_LEAVE.into());
    if kept.set < metres(0.0) {
        section.cautions.push(cautions::MEASURED_SHORTER);
    } else if kept.set > metres(0.0) {
        section.cautions.push(cautions::BOLT_SPENT);
    }
    section
}
