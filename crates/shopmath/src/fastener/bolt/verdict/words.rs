//! The verdict's one sentence, of what the rules found.

use super::{Case, Slug};
use crate::fastener::bolt::field;
use crate::fastener::bolt::resolve::{Joint, Resolved};
use crate::fastener::si::ratio;
use crate::fastener::tighten::Spread;
use crate::quantity::print::{self, plain};
use crate::quantity::{Quantity, Unit};
use crate::result::Style;
use uom::si::f64::{Force, Ratio, Torque};

/// The units a torque is printed in, of which one is offered that is [`FAR`] from the typed one: between N·m and
/// lbf·ft no right figure breaks a bolt, and a near miss is left alone.
const UNITS: [Unit; 4] = [
    Unit::NewtonMetre,
    Unit::PoundForceFoot,
    Unit::PoundForceInch,
    Unit::KilogramForceMetre,
];
const FAR: f64 = 5.0;

/// The headline.
pub(super) fn word(case: &Case, slug: Slug, by_design: bool) -> &'static str {
    match slug {
        _ if by_design => "Yields by design",
        _ if case.broken.is_some() && slug != Slug::Strips => "Would break",
        Slug::Ok if case.threads_near() => "Threads near their limit",
        Slug::Ok if case.passes.high => "Believable, near the top",
        Slug::Ok => "Believable",
        Slug::Low => "Low",
        Slug::High => "High",
        Slug::PastYield if case.outlasts && !case.torque_yields && case.overstretched.is_none() => {
            "Threads may pull out first"
        }
        Slug::PastYield => "Past yield",
        Slug::Strips => "Strips the hole",
    }
}

/// The one sentence, and what has to be said besides.
pub(super) fn sentence(resolved: &Resolved, case: &Case, slug: Slug) -> String {
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
    let said = match case.broken {
        Some(share) if slug == Slug::Strips => far_past(case, share, class),
        Some(share) => breaks(case, share, class),
        None => said,
    };
    let weaker = if case.outlasts && slug != Slug::Strips && case.broken.is_none() {
        weaker_hole(case)
    } else {
        String::new()
    };
    let mut sentence = format!("{weaker}{said}{}.", assumed(resolved, case.turns));
    if case.threads_near() && weaker.is_empty() {
        sentence.push_str(&threads(case));
    }
    let units = other_units(resolved, case, slug);
    if let Some(units) = &units {
        sentence.push_str(&[" ", units, " would be believable: check the unit."].concat());
    }
    for (holds, words) in [
        (
            units.is_none() && (case.broken.is_some() || case.overstretched.is_some()),
            " The spec is probably a misprint, or for another bolt.",
        ),
        (
            // Common practice, no source.
            slug == Slug::Low,
            " Plugs with a sealing washer, covers and soft gaskets are tightened low on purpose.",
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

fn breaks(case: &Case, share: Spread<Ratio>, class: &str) -> String {
    format!(
        "Too much for {class}: the bolt would break. It holds {} at most, and this torque comes to {} times its yield",
        said(case.most, Unit::Kilonewton),
        times(share)
    )
}

/// A torque that would break the bolt, if the threads in the hole did not give way first.
fn far_past(case: &Case, share: Spread<Ratio>, class: &str) -> String {
    let [strip, needed] = hole(case);
    format!(
        "Too much for {class}: the threads in the hole pull out at {strip}, and this torque comes to {} times the bolt's yield{needed}",
        times(share)
    )
}

fn strips(case: &Case, clamps: &str) -> String {
    let [strip, needed] = hole(case);
    format!("The threads in the hole pull out at {strip}, and this spec clamps with {clamps}{needed}")
}

/// What lies past yield: there the clamp load is reckoned from the least strength of the class, and a real
/// bolt can clamp with all it bears.
fn weaker_hole(case: &Case) -> String {
    let [strip, needed] = hole(case);
    format!(
        "The threads in the hole are weaker than the bolt and may pull out first: past yield it can clamp with up to {}, and they hold {strip}{needed}. ",
        said(case.most, Unit::Kilonewton)
    )
}

/// How much more the hole's threads hold than the bolt clamps with.
fn threads(case: &Case) -> String {
    let [strip, needed] = hole(case);
    let margin = case.strip.map_or(0.0, |strip| (strip / case.clamp.high).value);
    format!(
        " The threads in the hole hold {strip}, {} times the most it clamps with{needed}.",
        plain(margin, 2)
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
    // A slip such as M10x15 reads as a length.
    let long = resolved.thread.given().and_then(|read| {
        let long = said(read.length?, Unit::Millimetre);
        Some([read.thread.name, ", ", &long, "\u{a0}long"].concat())
    });
    let assumed = resolved.assumed.iter().filter_map(|key| words(key));
    let mut parts: Vec<String> = picked.into_iter().chain(long).chain(assumed).collect();
    if turns && resolved.outer.is_empty() {
        parts.push("wide parts".into());
    }
    if parts.is_empty() {
        return String::new();
    }
    format!(" (assumed: {})", parts.join(", "))
}

pub(super) fn tapped(resolved: &Resolved) -> bool {
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
pub(super) fn times(share: Spread<Ratio>) -> String {
    let decimals = u8::from(share.low < ratio(10.0));
    let number = |share: Ratio| plain(share.value, decimals);
    let (low, high) = (number(share.low), number(share.high));
    if low == high { high } else { [low, high].join(" to ") }
}
