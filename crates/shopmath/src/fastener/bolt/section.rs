//! The sections of the screen, one file each: findings built from the calculators' answers.

pub(super) mod clamp;
pub(super) mod wrench;

use crate::fastener::tighten::Spread;
use crate::quantity::Quantity;
use crate::result::Amount;

/// A spread as the range of a finding, in order whatever the spread runs by.
pub(super) fn amount<Q: Into<Quantity> + Copy>(spread: Spread<Q>) -> Amount {
    let (one, other): (Quantity, Quantity) = (spread.low.into(), spread.high.into());
    let (low, high) = if one.si() <= other.si() {
        (one, other)
    } else {
        (other, one)
    };
    Amount::Range {
        low,
        mid: Some(spread.mid.into()),
        high,
    }
}
