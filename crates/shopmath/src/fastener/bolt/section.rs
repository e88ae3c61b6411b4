//! The sections of the screen, one file each: findings built from the calculators' answers.

pub(super) mod angle;
pub(super) mod clamp;
pub(super) mod engagement;
pub(super) mod reuse;
pub(super) mod stuck;
pub(super) mod wrench;

use super::field::SectionId;
use super::resolve::Entry;
use crate::caution::Caution;
use crate::fastener::tighten::Spread;
use crate::quantity::{Quantity, Unit};
use crate::result::{Amount, Finding, Id, Style, Term, Working};
use uom::si::f64::{Area, Force, Length, Pressure};

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
    pub notes: Vec<String>,
    /// Whether the notes say how to take the numbers, and so stand before them.
    pub notes_first: bool,
    /// The keys that are empty and would bring more findings.
    pub missing: Vec<&'static str>,
}

impl Section {
    pub(super) fn new(id: SectionId, title: &'static str) -> Self {
        Self {
            id,
            title,
            findings: Vec::new(),
            cautions: Vec::new(),
            notes: Vec::new(),
            notes_first: matches!(id, SectionId::Wrench | SectionId::Stuck),
            missing: Vec::new(),
        }
    }

    /// Notes the key as missing where its entry is empty.
    pub(super) fn want<T>(&mut self, key: &'static str, entry: &Entry<T>) {
        self.want_unless(key, !entry.is_empty());
    }

    /// Notes the key as missing unless it is given.
    pub(super) fn want_unless(&mut self, key: &'static str, given: bool) {
        if !given && !self.missing.contains(&key) {
            self.missing.push(key);
        }
    }
}

/// A spread as the range of a finding: the middle stays the middle one's, the ends are the least
/// and the greatest of the three, whatever the spread runs by.
fn amount<Q: Into<Quantity> + Copy>(spread: Spread<Q>) -> Amount {
    let [low, mid, high]: [Quantity; 3] = [spread.low.into(), spread.mid.into(), spread.high.into()];
    let less = |one: Quantity, other: Quantity| if other.si() < one.si() { other } else { one };
    let more = |one: Quantity, other: Quantity| if other.si() > one.si() { other } else { one };
    Amount::Range {
        low: less(less(low, mid), high),
        mid: Some(mid),
        high: more(more(low, mid), high),
    }
}

/// A finding of one value or a range.
fn found(
    id: &'static str,
    name: &'static str,
    amount: impl Into<Amount>,
    unit: Unit,
    (method, working): (&'static str, Working),
) -> Finding {
    let mut finding = Finding::new(Id::Named(id), name, amount, unit, method, working);
    if unit == Unit::Percent {
        finding.style = Style::Decimal { step: 0.1 };
    }
    finding
}

/// A share of yield: friction leaves nothing to say of tenths.
fn whole_percent(mut finding: Finding) -> Finding {
    finding.style = Style::Whole;
    finding
}

fn length(symbol: &'static str, meaning: &'static str, value: Length) -> Term {
    Term::new(symbol, meaning, value, Unit::Millimetre)
}

fn area(symbol: &'static str, meaning: &'static str, value: Area) -> Term {
    Term::new(symbol, meaning, value, Unit::SquareMillimetre)
}

fn stress(symbol: &'static str, meaning: &'static str, value: Pressure) -> Term {
    Term::new(symbol, meaning, value, Unit::Megapascal)
}

fn load(symbol: &'static str, meaning: &'static str, value: Force) -> Term {
    Term::new(symbol, meaning, value, Unit::Kilonewton)
}
