//! The verdict: is this spec believable for this bolt? The rules and the one sentence live here.

use super::assess::Common;
use super::field::Field;
use super::resolve::Resolved;
use crate::fastener::si::ratio;
use crate::fastener::tighten::Spread;
use uom::si::f64::Ratio;

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
    /// Share of yield at the bottom of the range.
    pub low: Ratio,
    /// Share of yield at its middle.
    pub mid: Ratio,
    /// Share of yield at its top.
    pub high: Ratio,
}

/// The verdict, or the keys it waits for.
pub(super) fn verdict(common: &Common<'_>) -> (Option<Verdict>, Vec<&'static str>) {
    let resolved = common.resolved;
    let waiting: Vec<&'static str> = [
        ("thread", resolved.thread.is_empty()),
        ("class", resolved.class.is_empty()),
        ("spec", resolved.spec.is_empty()),
    ]
    .into_iter()
    .filter_map(|(key, empty)| empty.then_some(key))
    .collect();
    let Some(share) = common.share else {
        return (None, waiting);
    };
    let slug = if share.mid > ratio(1.0) {
        Slug::PastYield
    } else if share.high > ratio(1.0) {
        Slug::High
    } else if share.high < ratio(LOW) {
        Slug::Low
    } else {
        Slug::Ok
    };
    let verdict = Verdict {
        slug,
        sentence: sentence(resolved, slug, share),
        low: share.low,
        mid: share.mid,
        high: share.high,
    };
    (Some(verdict), waiting)
}

fn sentence(resolved: &Resolved, slug: Slug, share: Spread<Ratio>) -> String {
    let class = resolved.class.given().map_or("", |class| class.name);
    let range = format!(
        "{} ({}–{})",
        percent(share.mid),
        percent(share.low),
        percent(share.high)
    );
    let finding = match slug {
        Slug::Ok => format!("Believable: {range} of yield for {class}."),
        Slug::Low => format!("Low for {class}: {range} of yield. Check thread, class and figure."),
        Slug::High => format!("High for {class}: {range} of yield, past it when the threads are slippery."),
        Slug::PastYield => format!("Too much for {class}: {range} of yield."),
        Slug::Strips => String::new(),
    };
    format!("{finding}{}", assumed(resolved))
}

/// What the verdict took for granted.
fn assumed(resolved: &Resolved) -> String {
    let labels: Vec<String> = resolved
        .assumed
        .iter()
        .filter(|key| ["mu", "tool", "head"].contains(key))
        .filter_map(|key| Field::of(key))
        .map(|field| format!("{} {}", field.label.to_lowercase(), field.default.unwrap_or_default()))
        .collect();
    if labels.is_empty() {
        String::new()
    } else {
        format!(" Assumed: {}.", labels.join(", "))
    }
}

fn percent(share: Ratio) -> String {
    format!("{} %", (share.value * 100.0).round())
}
