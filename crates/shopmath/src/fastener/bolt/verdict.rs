//! The verdict: is this spec believable for this bolt? The rules live here, the sentence in `words`.

mod words;

use super::common::Common;
use super::resolve::Resolved;
use crate::fastener::engagement::break_load;
use crate::fastener::si::ratio;
use crate::fastener::tighten::Spread;
use uom::si::f64::{Force, Length, Ratio};
use words::{sentence, tapped, times, word};

/// Below this share of yield, even at the top of the range, a spec is low.
const LOW: f64 = 0.3;
/// Up to this share of yield at the middle of the range a torque is what books give: the VDI 2230 tables tighten
/// to 90 %, and their torques in whole newton metres come to 2 % more.
const USUAL: f64 = 0.92;
/// And up to this share at its slippery end: the least tensile strength of 10.9 and 12.9 lies a tenth above
/// their yield strength (1040 over 940, 1220 over 1100 MPa), so that nothing breaks there.
const SLIPPERY: f64 = 1.1;
/// Threads that hold less than this many times the most a bolt clamps with are near pulling out: methods for
/// thread strength differ by up to two times (common practice, no source).
const NEAR: f64 = 1.5;
/// Stretched for good by more than this share of the length that yields, a bolt is near its end: half of what
/// the most brittle class tabled stretches before it breaks (ISO 898-1, least elongation after fracture: 8.8
/// 12 %, 9.8 10 %, 10.9 9 %, 12.9 8 %; from memory). Own estimate.
const MOST_STRETCH: f64 = 0.04;

/// The verdict's name in the contract.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slug {
    /// Between 30 % of yield and what books tighten to: by a torque 92 % at the middle of the range and 110 %
    /// at its slippery end, by an angle yield.
    Ok,
    /// Even the top of the range stays below 30 % of yield.
    Low,
    /// Above that, with the middle of the range still below yield.
    High,
    /// The middle of the range passes yield.
    PastYield,
    /// The threads in the hole give way below the top of the range.
    Strips,
}

impl Slug {
    /// As it stands in `data-verdict`.
    ///
    /// ```
    /// use shopmath::fastener::bolt::{BoltText, assess, resolve};
    /// let mut text = BoltText::default();
    /// for (key, typed) in [("thread", "M6"), ("class", "8.8"), ("spec", "60 N·m")] {
    ///     text.set(key, typed);
    /// }
    /// assert_eq!(assess(&resolve(&text)).verdict.unwrap().slug.id(), "past-yield");
    /// ```
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Ok => "ok",
            Self::Low => "low",
            Self::High => "high",
            Self::PastYield => "past-yield",
            Self::Strips => "strips",
        }
    }
}

/// The verdict and the range it rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// Which one.
    pub slug: Slug,
    /// What it comes to in a word or a few, as a headline.
    pub word: &'static str,
    /// Whether it is believable, yet near a limit: the top of its range passes yield, or the threads in the hole
    /// hold little more.
    pub near: bool,
    /// The sentence: what the spec does, over which range, and what was assumed.
    pub sentence: String,
    /// Whether only the angle goes to yield or past it, as specs with an angle do by design: no wrong
    /// spec, though the slug is that of one.
    pub by_design: bool,
    /// How many times its yield a torque comes to that would break the bolt, such as "17 to 26": there the
    /// share in percent says nothing.
    pub times: Option<String>,
    /// Share of yield at the bottom of the range; past a yield by angle it stays at 1.
    pub low: Ratio,
    /// Share of yield at its middle.
    pub mid: Ratio,
    /// Share of yield at its top.
    pub high: Ratio,
}

/// What the rules look at.
struct Case {
    share: Spread<Ratio>,
    clamp: Spread<Force>,
    /// Whether low, middle and high pass yield.
    passes: Spread<bool>,
    /// Stretch for good at the middle, where an angle takes the bolt past yield.
    stretch: Option<Length>,
    /// The length that yields, where that stretch is more than it bears.
    overstretched: Option<Length>,
    /// Whether an angle is part of the spec.
    turns: bool,
    /// Whether a torque of the spec passes yield by itself, at any friction of the range.
    torque_yields: bool,
    /// Load that pulls the threads out of the hole.
    strip: Option<Force>,
    /// Length of threads that would hold the bolt in that hole, where fewer are engaged.
    needed: Option<Length>,
    /// Whether it goes past yield into threads that hold less than the bolt.
    outlasts: bool,
    /// The most the bolt can clamp with: the load that breaks it.
    most: Force,
    /// Share of yield of a torque that would pull with more than that even at the low end of the range, if the
    /// threads in the hole held.
    broken: Option<Spread<Ratio>>,
}

impl Case {
    /// Whether the threads in the hole give way below the top of the range, with a torque so many times as
    /// large; the bolt breaks where it is the weaker.
    fn strips(&self, times: f64) -> bool {
        let pulls = (self.clamp.high * times).min(self.most);
        self.strip.is_some_and(|strip| strip < pulls)
    }

    /// Whether the threads in the hole give way before the bolt and hold little more than it clamps with.
    fn threads_near(&self) -> bool {
        let near = |strip: Force| strip < self.most && strip < self.clamp.high * NEAR;
        !self.strips(1.0) && self.strip.is_some_and(near)
    }

    /// Whether a torque alone, so many times as large, is one that books give.
    fn believable(&self, times: f64) -> bool {
        let share = self.share.map(|share| share.value * times);
        !self.strips(times) && share.high >= LOW && share.mid <= USUAL && share.high <= SLIPPERY
    }
}

/// The verdict, or the keys it waits for.
pub(super) fn verdict(common: &Common<'_>) -> (Option<Verdict>, Vec<&'static str>) {
    let found = case(common).map(|case| {
        let slug = slug(&case);
        let doubted = case.torque_yields || case.overstretched.is_some() || case.outlasts;
        let by_design = slug == Slug::PastYield && case.turns && !doubted;
        Verdict {
            slug,
            word: word(&case, slug, by_design),
            near: slug == Slug::Ok && (case.passes.high || case.threads_near()),
            sentence: sentence(common.resolved, &case, slug),
            by_design,
            times: case.broken.map(times),
            low: case.share.low,
            mid: case.share.mid,
            high: case.share.high,
        }
    });
    let waiting = if found.is_some() {
        Vec::new()
    } else {
        waiting(common.resolved)
    };
    (found, waiting)
}

fn case(common: &Common<'_>) -> Option<Case> {
    let resolved = common.resolved;
    let turns = resolved.spec.as_given()?.turns();
    // What cannot be read may be what the threads in the hole hang on.
    if resolved.into.is_bad() || resolved.engaged.is_bad() || resolved.boss.is_bad() {
        return None;
    }
    let clamp = common.final_clamp()?;
    let most = break_load(&common.bolt?.thread, resolved.class.given()?.tensile);
    // Threads in a hole that are given count, even beside a nut: the section shows their margin.
    let strip = common.hold.as_ref().and_then(|hold| hold.strip);
    let strip = strip.map(|strip| strip.load);
    let needed = common.hold.as_ref().map(|hold| hold.required.length);
    let needed = needed.filter(|needed| resolved.engaged.given().is_some_and(|engaged| engaged < *needed));
    let outlasts = common.outlasts_hole();
    // Twist is left out, so that it would break sooner.
    let broken = common
        .share
        .filter(|_| common.clamp.is_some_and(|clamp| clamp.low > most));
    if !turns {
        let share = common.share?;
        return Some(Case {
            share,
            clamp,
            passes: share.map(|share| share > ratio(1.0)),
            stretch: None,
            overstretched: None,
            turns,
            torque_yields: share.high > ratio(1.0),
            strip,
            needed,
            outlasts,
            most,
            broken,
        });
    }
    let turned = common.turned?;
    let past = |stretch: Length, torque: bool| torque || stretch.value > 0.0;
    let yielding = common.stiffness?.body.yielding();
    Some(Case {
        share: turned.share,
        clamp,
        passes: turned.past_yield.zip(turned.torque_yields, past),
        stretch: Some(turned.past_yield.mid).filter(|_| !turned.torque_yields.mid),
        overstretched: Some(yielding).filter(|&length| turned.past_yield.mid > length * MOST_STRETCH),
        turns,
        torque_yields: turned.torque_yields.low || turned.torque_yields.mid || turned.torque_yields.high,
        strip,
        needed,
        outlasts,
        most,
        broken,
    })
}

/// The rules, in the order in which they count.
fn slug(case: &Case) -> Slug {
    let believed = if case.turns {
        !case.passes.high && !case.passes.low
    } else {
        case.believable(1.0)
    };
    if case.strips(1.0) {
        Slug::Strips
    } else if case.passes.mid {
        Slug::PastYield
    } else if case.share.high < ratio(LOW) {
        Slug::Low
    } else if believed {
        Slug::Ok
    } else {
        Slug::High
    }
}

/// The empty keys without which nothing can be said.
fn waiting(resolved: &Resolved) -> Vec<&'static str> {
    let turns = resolved.spec.as_given().is_some_and(|spec| spec.turns());
    let tapped = tapped(resolved);
    [
        ("thread", resolved.thread.is_empty()),
        ("class", !resolved.class_typed),
        ("spec", resolved.spec.is_empty()),
        ("grip", turns && resolved.grip.is_empty()),
        ("into", turns && tapped && resolved.into.is_empty()),
    ]
    .into_iter()
    .filter_map(|(key, empty)| empty.then_some(key))
    .collect()
}
