//! A stretch bolt measured: what length it has kept. No length makes a single-use bolt fit for
//! reuse; a kept stretch only shows that it is spent.

use super::refusal::{Refusal, finite, within};
use super::si::metres;
use crate::quantity::Unit;
use uom::si::f64::{Length, Ratio};

/// What a bolt has kept of its stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PermanentSet {
    /// Length now minus length new; negative when measured shorter.
    pub set: Length,
    /// The set over the length new.
    pub share: Ratio,
}

/// The permanent set of a bolt from its length new and its length now.
///
/// # Errors
/// [`Refusal::OutOfRange`] for lengths outside 1 mm to 10 m.
///
/// ```
/// use shopmath::fastener::reuse::permanent_set;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let kept = permanent_set(Length::new::<Millimetre>(55.0), Length::new::<Millimetre>(55.3)).unwrap();
/// assert!((kept.set.get::<Millimetre>() - 0.3).abs() < 1e-9);
/// ```
pub fn permanent_set(new: Length, now: Length) -> Result<PermanentSet, Refusal> {
    let limits = (metres(1e-3), metres(10.0));
    within("length of a new bolt", new, limits, Unit::Millimetre)?;
    within("length of this bolt", now, limits, Unit::Millimetre)?;
    let set = finite("permanent set", now - new)?;
    Ok(PermanentSet { set, share: set / new })
}
