//! The whole answer: every section of the screen from one resolved bolt, each calculator run once.

use super::drawing::{self, JointDrawing};
use super::field::SectionId;
use super::plot::{self, Plot};
use super::resolve::{Entry, FieldError, Resolved};
use super::section::{clamp, wrench};
use super::verdict::{self, Verdict};
use crate::caution::{Caution, fastener as cautions};
use crate::fastener::refusal::Refusal;
use crate::fastener::tighten::{Applied, Bolt, Spread};
use crate::result::Finding;
use uom::si::f64::{Force, Ratio};

/// Everything the screen shows about one bolt.
#[derive(Clone, Debug, PartialEq)]
pub struct Assessment {
    /// The one sentence; absent until the fields it needs are given.
    pub verdict: Option<Verdict>,
    /// The keys that are missing for a verdict.
    pub waiting: Vec<&'static str>,
    /// The sections, in the order of the screen.
    pub sections: Vec<Section>,
    /// The caution for the screen as a whole.
    pub cautions: Vec<Caution>,
    /// The joint to scale; absent without a thread.
    pub drawing: Option<JointDrawing>,
    /// Clamp load and torque against angle; absent without a grip.
    pub plot: Option<Plot>,
    /// What is wrong with fields only in combination; a field's own errors are the resolver's.
    pub errors: Vec<FieldError>,
}

/// One section of the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Which one.
    pub id: SectionId,
    /// Its title.
    pub title: &'static str,
    /// What was found, most wanted first.
    pub findings: Vec<Finding>,
    /// What to beware of in this section.
    pub cautions: Vec<Caution>,
    /// What was taken for granted, or stands beside the numbers.
    pub notes: Vec<&'static str>,
    /// The keys that are empty and would bring more findings.
    pub missing: Vec<&'static str>,
}

/// What the sections share, each worked out once.
pub(super) struct Common<'a> {
    pub(super) resolved: &'a Resolved,
    /// Thread, head and friction together.
    pub(super) bolt: Option<Bolt>,
    /// The torque the wrench is set to, with the tool's tolerance.
    pub(super) applied: Option<Applied>,
    /// Clamp load after the torque alone.
    pub(super) clamp: Option<Spread<Force>>,
    /// Share of yield after the torque alone.
    pub(super) share: Option<Spread<Ratio>>,
    pub(super) errors: Vec<FieldError>,
}

impl Common<'_> {
    /// A calculator's answer; a refusal is kept for the field it is about.
    pub(super) fn keep<T>(&mut self, key: &'static str, answer: Result<T, Refusal>) -> Option<T> {
        answer
            .map_err(|refusal| {
                self.errors.push(FieldError {
                    key,
                    sentence: refusal.to_string(),
                    remedies: Vec::new(),
                });
            })
            .ok()
    }
}

impl Section {
    pub(super) fn new(id: SectionId, title: &'static str) -> Self {
        Self {
            id,
            title,
            findings: Vec::new(),
            cautions: Vec::new(),
            notes: Vec::new(),
            missing: Vec::new(),
        }
    }

    /// Notes the key as missing where its entry is empty.
    pub(super) fn want<T>(&mut self, key: &'static str, entry: &Entry<T>) {
        if entry.is_empty() && !self.missing.contains(&key) {
            self.missing.push(key);
        }
    }
}

/// Every answer for a bolt.
///
/// Cheap enough for every keystroke: closed formulas, no iteration.
///
/// ```
/// use shopmath::fastener::bolt::{BoltText, Slug, assess, resolve};
/// let mut text = BoltText::default();
/// for (key, typed) in [("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")] {
///     text.set(key, typed);
/// }
/// let assessment = assess(&resolve(&text));
/// assert_eq!(assessment.verdict.unwrap().slug, Slug::Ok);
/// ```
#[must_use]
pub fn assess(resolved: &Resolved) -> Assessment {
    let mut common = common(resolved);
    let sections = vec![wrench::section(&mut common), clamp::section(&mut common)];
    let (verdict, waiting) = verdict::verdict(&common);
    Assessment {
        verdict,
        waiting,
        sections,
        cautions: vec![cautions::TIGHTENING_CAN_HURT],
        drawing: drawing::drawing(resolved),
        plot: plot::plot(&common),
        errors: common.errors,
    }
}

fn common(resolved: &Resolved) -> Common<'_> {
    let bolt = match (&resolved.thread, &resolved.head, &resolved.friction) {
        (Entry::Given(read), Entry::Given(head), Entry::Given(friction)) => Some(Bolt {
            thread: read.thread,
            head: *head,
            friction: *friction,
        }),
        _ => None,
    };
    let torque = resolved.spec.as_given().and_then(|spec| spec.torque());
    let applied = torque
        .zip(resolved.tool.given())
        .map(|((low, high), tool)| Applied { low, high, tool });
    let mut common = Common {
        resolved,
        bolt,
        applied,
        clamp: None,
        share: None,
        errors: Vec::new(),
    };
    if let (Some(bolt), Some(applied)) = (bolt, applied) {
        common.clamp = common.keep("spec", bolt.clamp_range(applied));
        if let Some(class) = resolved.class.given() {
            common.share = common.keep("spec", bolt.yield_range(applied, class.yield_strength));
        }
    }
    common
}
