//! Ways to place and size a pulley from what can be measured at the engine: a tape between
//! centres, a string round the rim, or a speed ratio.

use super::fault::PlaceFault;
use super::profile::Profile;
use super::pulley::{Side, Spot};
use super::si::{in_metres, in_ones, metres};
use core::f64::consts::PI;
use kurbo::Vec2;
use uom::si::f64::{Length, Ratio};

/// Both places that are `from_first` and `from_second` away from two placed pulleys, centre to
/// centre; first the one to the left of the line from the first to the second. The two are the
/// same where the distances just meet.
///
/// Answers, with D the centres' distance, a = (D² + r₁² − r₂²)/(2·D) along the line and
/// √(r₁² − a²) across it.
///
/// # Errors
/// [`PlaceFault`] where the distances do not meet.
///
/// ```
/// use shopmath::drive::{place::by_distances, pulley::Spot};
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let mm = Length::new::<Millimetre>;
/// let at = |x, y| Spot { x: mm(x), y: mm(y) };
/// let [left, right] = by_distances(at(0.0, 0.0), mm(300.0), at(500.0, 0.0), mm(400.0)).unwrap();
/// assert!((left.x.get::<Millimetre>() - 180.0).abs() < 1e-9 && (left.y.get::<Millimetre>() - 240.0).abs() < 1e-9);
/// assert!((right.y.get::<Millimetre>() + 240.0).abs() < 1e-9);
/// ```
pub fn by_distances(
    first: Spot,
    from_first: Length,
    second: Spot,
    from_second: Length,
) -> Result<[Spot; 2], PlaceFault> {
    let line = second.point() - first.point();
    let (apart, one, other) = (line.hypot(), in_metres(from_first), in_metres(from_second));
    if !(one > 0.0 && other > 0.0 && one < 1e6 && other < 1e6) {
        return Err(PlaceFault::NoDistance);
    }
    if apart < 1e-9 || apart.is_nan() {
        return Err(PlaceFault::SamePlace);
    }
    if one + other < apart {
        return Err(PlaceFault::TooShort);
    }
    if (one - other).abs() > apart {
        return Err(PlaceFault::TooLong);
    }
    let along = (apart * apart + one * one - other * other) / (2.0 * apart);
    let across = (one * one - along * along).max(0.0).sqrt();
    let unit = line / apart;
    let left = Vec2::new(-unit.y, unit.x);
    let spot = |side: f64| {
        let point = first.point() + along * unit + side * across * left;
        Spot {
            x: metres(point.x),
            y: metres(point.y),
        }
    };
    Ok([spot(1.0), spot(-1.0)])
}

/// The diameter from a string laid once round the rim: d = U/π. Length in, length out.
///
/// ```
/// use shopmath::drive::place::diameter_from_circumference;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// // A measuring pulley for PK belts: 300 mm round.
/// let diameter = diameter_from_circumference(Length::new::<Millimetre>(300.0));
/// assert!((diameter.get::<Millimetre>() - 95.493).abs() < 5e-4);
/// ```
#[must_use]
pub fn diameter_from_circumference(circumference: Length) -> Length {
    circumference / PI
}

/// The diameter from the speed relative to a driver of known diameter: pitch radii are as
/// 1/|ratio|, so d + 2·b_e = (d₁ + 2·b_e)/|ratio| for ribbed pulleys; a back-side pulley has
/// OD + 2·(back − b_e) in place of d + 2·b_e. `None` where that leaves no pulley.
///
/// ```
/// use shopmath::drive::{place::diameter_from_ratio, profile::Profile, pulley::Side};
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Number};
/// use uom::si::f64::{Length, Ratio};
/// let mm = Length::new::<Millimetre>;
/// let speed = Ratio::new::<Number>(154.0 / 64.0);
/// let diameter = diameter_from_ratio(mm(150.0), speed, Side::Rib, Profile::Pk, mm(2.3)).unwrap();
/// assert!((diameter.get::<Millimetre>() - 60.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn diameter_from_ratio(driver: Length, speed: Ratio, side: Side, profile: Profile, back: Length) -> Option<Length> {
    let differential = in_metres(profile.line_differential());
    let pitch = (in_metres(driver) + 2.0 * differential) / in_ones(speed).abs();
    let diameter = match side {
        Side::Rib => pitch - 2.0 * differential,
        Side::Back => pitch - 2.0 * (in_metres(back) - differential),
    };
    (diameter.is_finite() && diameter > 0.0).then(|| metres(diameter))
}
