//! The verdict: is this spec believable for this bolt? The rules and the one sentence live here.

use super::common::Common;
use super::field;
use super::resolve::{Joint, Resolved};
use crate::fastener::engagement::break_load;
use crate::fastener::si::ratio;
use crate::fastener::tighten::Spread;
use crate::quantity::print::{self, plain};
use crate::quantity::{Quantity, Unit};
use crate::result::Style;
use uom::si::f64::{Force, Length, Ratio, Torque};

/// Below this share of yield, even at the top of the range, a spec is low.
const LOW: f64 = 0.3;
/// Up to this share of yield at the middle of the range a torque is what books give: the VDI 2230 tables tighten
/// to 90 %, and their torques in whole newton metres come to 2 % more.
const USUAL: f64 = 0.92;
/// And up to this share at its slippery end: the least tensile strength of 10.9 and 12.9 lies a tenth above
/// their yield strength (1040 over 940, 1220 over 1100 MPa), so that nothing breaks there.
const SLIPPERY: f64 = 1.1;
/// The units a torque is printed in, of which one is offered that is [`FAR`] from the typed one: between N·m and
/// lbf·ft no right figure breaks a bolt, and a near miss is left alone.
const UNITS: [Unit; 4] = [
    Unit::NewtonMetre,
    Unit::PoundForceFoot,
    Unit::PoundForceInch,
    Unit::KilogramForceMetre,
];
const FAR: f64 = 5.0;
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
    /// The load that breaks the bolt, where the threads in the hole hold less.
    outlasts: Option<Force>,
    /// What would break the bolt before the torque is reached.
    broken: Option<Broken>,
}

impl Case {
    /// Whether a torque alone, so many times as large, is one that books give.
    fn believable(&self, times: f64) -> bool {
        let share = self.share.map(|share| share.value * times);
        let holds = self.strip.is_none_or(|strip| strip >= self.clamp.high * times);
        holds && share.high >= LOW && share.mid <= USUAL && share.high <= SLIPPERY
    }
}

/// A torque that would pull with more than the bolt holds, even at the low end of the range.
struct Broken {
    /// The load that breaks the bolt.
    at: Force,
    /// Share of yield that the torque comes to.
    share: Spread<Ratio>,
}

/// The verdict, or the keys it waits for.
pub(super) fn verdict(common: &Common<'_>) -> (Option<Verdict>, Vec<&'static str>) {
    let found = case(common).map(|case| {
        let slug = slug(&case);
        let doubted = case.torque_yields || case.overstretched.is_some() || case.outlasts.is_some();
        Verdict {
            slug,
            sentence: sentence(common.resolved, &case, slug),
            by_design: slug == Slug::PastYield && case.turns && !doubted,
            times: case.broken.as_ref().map(|broken| times(broken.share)),
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
    let clamp = common.final_clamp()?;
    // Threads in a hole that are given count, even beside a nut: the section shows their margin.
    let strip = common.hold.as_ref().and_then(|hold| hold.strip);
    let strip = strip.map(|strip| strip.load);
    let needed = common.hold.as_ref().map(|hold| hold.required.length);
    let needed = needed.filter(|needed| resolved.engaged.given().is_some_and(|engaged| engaged < *needed));
    let outlasts = common.outlasts_hole();
    let broken = broken(common);
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
        broken,
    })
}

/// Whether the torque alone breaks the bolt throughout the range. Twist is left out, so that it would
/// break sooner.
fn broken(common: &Common<'_>) -> Option<Broken> {
    let class = common.resolved.class.given()?;
    let at = break_load(&common.bolt?.thread, class.tensile);
    let share = common
        .share
        .filter(|_| common.clamp.is_some_and(|clamp| clamp.low > at))?;
    Some(Broken { at, share })
}

/// The same number in the units in which it would be believable.
fn other_units(resolved: &Resolved, case: &Case, slug: Slug) -> Option<String> {
    let spec = resolved.spec.as_given().filter(|spec| spec.stages().len() == 1)?;
    let (low, high) = spec.torque()?;
    let typed = resolved.torque_unit;
    let of = |unit| Quantity::from(high).value_in(unit);
    let fits = |unit: &Unit| {
        let times = of(typed)? / of(*unit)?;
        Some(()).filter(|()| !(1.0 / FAR..FAR).contains(&times) && case.believable(times))
    };
    let number = |torque: Torque| print::number(torque.into(), typed, Style::Exactly);
    let number = if low < high {
        [number(low), number(high)].join("–")
    } else {
        number(high)
    };
    let found: Vec<String> = UNITS
        .into_iter()
        .filter(|unit| slug != Slug::Ok && fits(unit).is_some())
        .map(|unit| [&number, "\u{a0}", unit.symbol()].concat())
        .collect();
    Some(found.join(" or ")).filter(|found| !found.is_empty())
}

/// What the top of the range of a torque comes to, and why.
fn top(resolved: &Resolved, case: &Case) -> String {
    let friction = resolved.friction.given();
    let slips = friction.is_some_and(|of| of.thread.low < of.thread.high || of.head.low < of.head.high);
    let when = if slips {
        "with slippery threads"
    } else {
        "at the wrench's upper end"
    };
    format!("{when} up to {} of yield", percent(case.share.high))
}

fn percent(share: Ratio) -> String {
    format!("{}\u{a0}%", plain(share.value * 100.0, 0))
}

/// `17 to 26`; below ten with one decimal.
fn times(share: Spread<Ratio>) -> String {
    let decimals = u8::from(share.low < ratio(10.0));
    let number = |share: Ratio| plain(share.value, decimals);
    let (low, high) = (number(share.low), number(share.high));
    if low == high { high } else { [low, high].join(" to ") }
}

/// The rules, in the order in which they count.
fn slug(case: &Case) -> Slug {
    if case.strip.is_some_and(|strip| strip < case.clamp.high) {
        Slug::Strips
    } else if case.passes.mid {
        Slug::PastYield
    } else if case.share.high < ratio(LOW) {
        Slug::Low
    } else if if case.turns {
        case.passes.high || case.passes.low
    } else {
        !case.believable(1.0)
    } {
        Slug::High
    } else {
        Slug::Ok
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

/// The one sentence, and what has to be said besides.
fn sentence(resolved: &Resolved, case: &Case, slug: Slug) -> String {
    let class = resolved.class.given().map_or("", |class| class.name);
    let clamps = range(case.clamp);
    let said = match slug {
        Slug::Ok if case.passes.high => {
            format!(
                "Believable for {class}, near the top: it clamps with {clamps}, {}",
                top(resolved, case)
            )
        }
        Slug::Ok => format!("Believable for {class}: it clamps with {clamps}, below yield throughout"),
        Slug::Low => {
            format!("Low for {class}: it clamps with only {clamps}, so check the thread, the class and the figure")
        }
        Slug::High if case.turns => {
            format!("High for {class}: it clamps with {clamps}, and with some friction in the range it passes yield")
        }
        Slug::High => format!(
            "High for {class}: it clamps with {clamps}, in the middle at {} and {}",
            percent(case.share.mid),
            top(resolved, case)
        ),
        Slug::PastYield => past_yield(case, class, &clamps),
        Slug::Strips => strips(case, &clamps),
    };
    let said = case.broken.as_ref().map_or(said, |broken| breaks(broken, class));
    let weaker = case.outlasts.filter(|_| slug != Slug::Strips && case.broken.is_none());
    let weaker = weaker.map_or_else(String::new, |breaks| weaker_hole(case, breaks));
    let mut sentence = format!("{weaker}{said}{}.", assumed(resolved, case.turns));
    let units = other_units(resolved, case, slug);
    if let Some(units) = &units {
        sentence.push_str(&[" ", units, " would be believable: check the unit."].concat());
    }
    for (holds, words) in [
        (
            units.is_none() && (case.broken.is_some() || case.overstretched.is_some()),
            " The spec is probably a misprint, or for another bolt.",
        ),
        (case.turns, " Torque plus angle: fit a new bolt."),
        (
            tapped(resolved) && case.strip.is_none(),
            " The threads in the hole are not checked.",
        ),
        (
            case.strip.is_some() && !tapped(resolved),
            " A nut is chosen, yet threads in a hole are given: clear these if there is no hole.",
        ),
        (
            resolved.figures_disagree,
            " The figure beside it says otherwise: check the manual.",
        ),
    ] {
        if holds {
            sentence.push_str(words);
        }
    }
    sentence
}

fn breaks(broken: &Broken, class: &str) -> String {
    format!(
        "Too much for {class}: the bolt would break. It holds {} at most, and this torque comes to {} times its yield",
        said(broken.at, Unit::Kilonewton),
        times(broken.share)
    )
}

fn strips(case: &Case, clamps: &str) -> String {
    let [strip, needed] = hole(case);
    format!("The threads in the hole pull out at {strip}, and this spec clamps with {clamps}{needed}")
}

/// What lies past yield: there the clamp load is reckoned from the least strength of the class, and a real
/// bolt can clamp with all it bears.
fn weaker_hole(case: &Case, breaks: Force) -> String {
    let [strip, needed] = hole(case);
    format!(
        "The threads in the hole are weaker than the bolt and may pull out first: past yield it can clamp with up to {}, and they hold {strip}{needed}. ",
        said(breaks, Unit::Kilonewton)
    )
}

/// The load that the hole's threads hold, and how many would hold the bolt.
fn hole(case: &Case) -> [String; 2] {
    let strip = case.strip.map(|strip| said(strip, Unit::Kilonewton));
    let needed = case.needed.map(|needed| {
        [
            "; ",
            &said(needed, Unit::Millimetre),
            " of full threads would outlast the bolt",
        ]
        .concat()
    });
    [strip, needed].map(Option::unwrap_or_default)
}

fn past_yield(case: &Case, class: &str, clamps: &str) -> String {
    if let (Some(stretch), Some(yielding)) = (case.stretch, case.overstretched) {
        return format!(
            "Too much for {class}: the angle stretches the bolt for good by {}, {} of the {} that yield, and may break it",
            said(stretch, Unit::Millimetre),
            percent(stretch / yielding),
            said(yielding, Unit::Millimetre)
        );
    }
    match case.stretch {
        Some(_) if case.torque_yields => {
            format!(
                "Too much for {class} where the threads are slippery: there the torque alone passes yield, before the angle. It clamps with {clamps}"
            )
        }
        Some(stretch) => format!(
            "The angle takes this {class} bolt past yield, as such specs do by design: it clamps with {clamps} and stays {} longer",
            said(stretch, Unit::Millimetre)
        ),
        None if case.turns => format!("Too much for {class}: the torque alone passes yield, clamping with {clamps}"),
        None => format!("Too much for {class}: to clamp with {clamps} takes it past yield"),
    }
}

/// What the verdict took for granted, in brackets; nothing where all was given.
fn assumed(resolved: &Resolved, turns: bool) -> String {
    let tapped = tapped(resolved);
    let words = |key: &str| {
        let default = field::of(key).map_or("", |field| field.default);
        Some(match key {
            "mu" => format!("friction {}", default.replace("..", " to ")),
            "head" => format!("{default} head"),
            "tool" if !resolved.scale_given() => format!("wrench within {}", default.replace(' ', "\u{a0}")),
            "shank" if turns => "no shank".into(),
            "clamped" if turns => format!("{default} parts"),
            // Tapped without being told so is what the hole's fields say.
            "joint" if turns && !tapped => format!("a {default}"),
            _ => return None,
        })
    };
    let picked = resolved.thread.given().filter(|read| read.picked);
    let picked = picked.map(|read| [read.thread.name, " as fine"].concat());
    let assumed = resolved.assumed.iter().filter_map(|key| words(key));
    let mut parts: Vec<String> = picked.into_iter().chain(assumed).collect();
    if turns && resolved.outer.is_empty() {
        parts.push("wide parts".into());
    }
    if parts.is_empty() {
        return String::new();
    }
    format!(" (assumed: {})", parts.join(", "))
}

fn tapped(resolved: &Resolved) -> bool {
    resolved.joint.given() == Some(Joint::Tapped)
}

/// `27.1 to 44.9 kN`; one figure where both print alike.
fn range(clamp: Spread<Force>) -> String {
    let number = |clamp: Force| print::number(clamp.into(), Unit::Kilonewton, Style::Decimal { step: 0.0 });
    let high = said(clamp.high, Unit::Kilonewton);
    if number(clamp.low) == number(clamp.high) {
        high
    } else {
        [number(clamp.low), high].join(" to ")
    }
}

fn said(quantity: impl Into<Quantity>, unit: Unit) -> String {
    print::quantity(quantity.into(), unit)
}
