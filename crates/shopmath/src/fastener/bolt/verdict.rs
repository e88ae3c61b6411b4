//! The verdict: is this spec believable for this bolt? The rules and the one sentence live here.

use super::assess::Common;
use super::field;
use super::resolve::{Joint, Resolved};
use crate::fastener::si::ratio;
use crate::fastener::tighten::Spread;
use crate::quantity::Unit;
use crate::quantity::print::{rounded, suffix};
use crate::quantity::{Quantity, exact::ratio::Percent};
use uom::si::f64::{Force, Length, Ratio};

/// Below this share of yield, even at the top of the range, a spec is low.
const LOW: f64 = 0.3;

/// The verdict's name in the contract.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slug {
    /// Between 30 % of yield and yield.
    Ok,
    /// Even the top of the range stays below 30 % of yield.
    Low,
    /// Only the top of the range passes yield.
    High,
    /// The middle of the range passes yield.
    PastYield,
    /// The threads in the hole give way below the top of the range.
    Strips,
}

impl Slug {
    /// As it stands in `data-verdict`.
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
    /// Whether an angle is part of the spec.
    turns: bool,
    /// Load that pulls the threads out of a tapped hole.
    strip: Option<Force>,
}

/// The verdict, or the keys it waits for.
pub(super) fn verdict(common: &Common<'_>) -> (Option<Verdict>, Vec<&'static str>) {
    let found = case(common).map(|case| {
        let slug = slug(&case);
        Verdict {
            slug,
            sentence: sentence(common.resolved, &case, slug),
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
    let tapped = resolved.joint.given() == Some(Joint::Tapped);
    let strip = common.hold.as_ref().filter(|_| tapped).and_then(|hold| hold.strip);
    let strip = strip.map(|strip| strip.load);
    if !turns {
        let share = common.share?;
        return Some(Case {
            share,
            clamp,
            passes: share.map(|share| share > ratio(1.0)),
            stretch: None,
            turns,
            strip,
        });
    }
    let turned = common.turned?;
    let past = |stretch: Length, torque: bool| torque || stretch.value > 0.0;
    Some(Case {
        share: ordered(turned.share()),
        clamp,
        passes: turned.past_yield.zip(turned.torque_yields, past),
        stretch: Some(turned.past_yield.mid).filter(|_| !turned.torque_yields.mid),
        turns,
        strip,
    })
}

/// The rules, in the order in which they count.
fn slug(case: &Case) -> Slug {
    if case.strip.is_some_and(|strip| strip < case.clamp.high) {
        Slug::Strips
    } else if case.passes.mid {
        Slug::PastYield
    } else if case.passes.high || case.passes.low {
        Slug::High
    } else if case.share.high < ratio(LOW) {
        Slug::Low
    } else {
        Slug::Ok
    }
}

/// The empty keys without which nothing can be said.
fn waiting(resolved: &Resolved) -> Vec<&'static str> {
    let turns = resolved.spec.as_given().is_some_and(|spec| spec.turns());
    let tapped = resolved.joint.given() == Some(Joint::Tapped);
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

fn ordered(share: Spread<Ratio>) -> Spread<Ratio> {
    Spread {
        low: share.low.min(share.mid).min(share.high),
        mid: share.mid,
        high: share.low.max(share.mid).max(share.high),
    }
}

/// The one sentence.
fn sentence(resolved: &Resolved, case: &Case, slug: Slug) -> String {
    let class = resolved.class.given().map_or("", |class| class.name);
    let share = range(case.share);
    let clamp = said(case.clamp.mid, Unit::Kilonewton);
    let verdict = match slug {
        Slug::Ok => format!("Believable for {class}: {share} of yield, {clamp} of clamp load."),
        Slug::Low => format!("Low for {class}: {share} of yield. Check the thread, the class and the figure."),
        Slug::High if case.turns => {
            format!("High for {class}: with some friction in the range the angle passes yield ({share}).")
        }
        Slug::High => format!("High for {class}: {share} of yield, past it where the threads are slippery."),
        Slug::PastYield => past_yield(case, class, &share),
        Slug::Strips => format!(
            "The threads in the hole pull out at {}, below the {} this spec can reach.",
            case.strip
                .map_or_else(String::new, |strip| said(strip, Unit::Kilonewton)),
            said(case.clamp.high, Unit::Kilonewton)
        ),
    };
    let replace = if case.turns {
        " Torque plus angle: fit a new bolt."
    } else {
        ""
    };
    format!(
        "{verdict}{replace}{}{}",
        unchecked(resolved, case),
        assumed(resolved, case.turns)
    )
}

fn past_yield(case: &Case, class: &str, share: &str) -> String {
    match case.stretch {
        Some(stretch) => format!(
            "The angle takes this {class} bolt past yield, as such specs do by design: {} of stretch for good.",
            said(stretch, Unit::Millimetre)
        ),
        None if case.turns => format!("Too much for {class}: the torque alone passes yield."),
        None => format!("Too much for {class}: {share} of yield."),
    }
}

/// What would matter and was not given.
fn unchecked(resolved: &Resolved, case: &Case) -> &'static str {
    let tapped = resolved.joint.given() == Some(Joint::Tapped);
    if tapped && case.strip.is_none() {
        " The threads in the hole are not checked."
    } else {
        ""
    }
}

/// What the verdict took for granted.
fn assumed(resolved: &Resolved, turns: bool) -> String {
    let counts = |key: &str| match key {
        "mu" | "head" => true,
        "tool" => !resolved.scale_given(),
        "shank" | "clamped" | "joint" => turns,
        _ => false,
    };
    let mut parts: Vec<String> = resolved
        .assumed
        .iter()
        .filter(|key| counts(key))
        .filter_map(|key| field::of(key))
        .map(|field| format!("{} {}", field.label.to_ascii_lowercase(), field.default))
        .collect();
    if turns && resolved.outer.is_empty() {
        parts.push("outer diameter three bearing diameters".into());
    }
    if parts.is_empty() {
        return String::new();
    }
    format!(" Assumed: {}.", parts.join(", "))
}

/// `72 % (58–91 %)`.
fn range(share: Spread<Ratio>) -> String {
    let percent = |share: Ratio| rounded(share.get::<Percent>().round(), 1.0);
    if percent(share.low) == percent(share.high) {
        return format!("{}{}", percent(share.mid), suffix(Unit::Percent));
    }
    let sign = suffix(Unit::Percent);
    format!(
        "{}{sign} ({}–{}{sign})",
        percent(share.mid),
        percent(share.low),
        percent(share.high)
    )
}

fn said(quantity: impl Into<Quantity>, unit: Unit) -> String {
    let value = quantity.into().value_in(unit).unwrap_or(f64::NAN);
    format!("{}{}", rounded(value, 0.0), suffix(unit))
}
