//! The sections of the screen, one file each: findings built from the calculators' answers.

pub(super) mod angle;
pub(super) mod clamp;
pub(super) mod engagement;
pub(super) mod reuse;
pub(super) mod stuck;
pub(super) mod wrench;

use crate::fastener::tighten::Spread;
use crate::quantity::{Quantity, Unit};
use crate::result::{Amount, Finding, Id, Style, Term, Working};
use uom::si::f64::{Area, Force, Length, Pressure};

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
