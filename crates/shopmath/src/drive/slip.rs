//! Whether a belt slips on a pulley: what the wrap can hold against what the load asks.

use super::pulley::Side;
use super::si::{in_newtons, in_ones, in_radians, ratio};
use uom::si::f64::{Angle, Force, Ratio};

/// The largest ratio of the two pressing tensions a wrap can hold: exp(μ·θ/sin(α/2)) in grooves of
/// angle α, exp(μ·θ) on the back, where there is no wedge. `None` past the range of a number
/// (μ·θ/sin above 700).
///
/// ```
/// use core::f64::consts::PI;
/// use shopmath::drive::{profile::Profile, pulley::Side, slip::capacity};
/// use shopmath::quantity::exact::{angle::Radian, ratio::Number};
/// use uom::si::f64::{Angle, Ratio};
/// let holds = |side| capacity(Ratio::new::<Number>(0.3), Angle::new::<Radian>(PI), side, Profile::Pk.groove_angle())
///     .unwrap().get::<Number>();
/// assert!((holds(Side::Back) - 2.5663).abs() < 5e-5);
/// assert!((holds(Side::Rib) - 15.7308).abs() < 5e-5);
/// ```
#[must_use]
pub fn capacity(friction: Ratio, wrap: Angle, side: Side, groove: Angle) -> Option<Ratio> {
    let wedge = match side {
        Side::Rib => (0.5 * in_radians(groove)).sin(),
        Side::Back => 1.0,
    };
    let exponent = in_ones(friction) * in_radians(wrap) / wedge;
    (exponent.is_finite() && exponent <= 700.0).then(|| ratio(exponent.exp()))
}

/// How many times the tension ratio asked for the wrap can hold: below 1 it slips.
///
/// `capacity` is that of the wrap, by [`capacity`](fn@capacity), a plain number. `arriving` and `leaving`
/// are the pressing tensions T − m·v² of the pulley's two spans, the larger over the smaller the ratio
/// asked for. 0 where either is slack.
///
/// ```
/// use shopmath::drive::slip::reserve;
/// use shopmath::quantity::exact::{force::Newton, ratio::Number};
/// use uom::si::f64::{Force, Ratio};
/// // A flat pulley over half a turn at a friction of 0.3.
/// let (capacity, newtons) = (Ratio::new::<Number>(2.5663), Force::new::<Newton>);
/// let left = |one, other| reserve(capacity, newtons(one), newtons(other));
/// assert!((left(100.0, 200.0).get::<Number>() - 1.28315).abs() < 1e-9);
/// assert!(left(300.0, 100.0).get::<Number>() < 1.0);
/// assert_eq!(left(300.0, 0.0).get::<Number>(), 0.0);
/// ```
#[must_use]
pub fn reserve(capacity: Ratio, arriving: Force, leaving: Force) -> Ratio {
    let (one, other) = (in_newtons(arriving), in_newtons(leaving));
    let asked = one.max(other) / one.min(other);
    if one.min(other) > 0.0 && asked.is_finite() {
        capacity / asked
    } else {
        ratio(0.0)
    }
}
