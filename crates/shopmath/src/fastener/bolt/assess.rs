//! The whole answer: every section of the screen from one resolved bolt, each calculator run once.

use super::common::Common;
use super::drawing::{self, JointDrawing};
use super::plot::{self, Plot};
use super::resolve::Resolved;
use super::section::{Section, angle, clamp, engagement, reuse, stuck, wrench};
use super::verdict::{self, Verdict};
use crate::caution::{Caution, fastener as cautions};
use crate::field::FieldFault;

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
    pub errors: Vec<FieldFault>,
}

/// Every answer for a bolt.
///
/// Cheap enough for every keystroke: closed formulas, of which only the ends after an angle are worked out
/// for many frictions.
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
    let mut common = Common::of(resolved);
    let sections = vec![
        wrench::section(&mut common),
        clamp::section(&common),
        angle::section(&common),
        engagement::section(&common),
        stuck::section(&mut common),
        reuse::section(&mut common),
    ];
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
