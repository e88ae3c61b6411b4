//! A belt that has stretched or worn into its grooves: the length that frees, and the rib it
//! has lost.

use super::fault::RouteFault;
use super::layout::Layout;
use super::profile::Profile;
use super::pulley::Side;
use super::route;
use super::si::{in_metres, in_radians, metres, ratio};
use crate::bound::between;
use core::f64::consts::TAU;
use uom::si::f64::{Length, Ratio};

/// Rib loss that matters already: 5 % (belt makers' literature, as published).
pub const LOSS_MATTERS: f64 = 0.05;
/// Rib loss of a belt at the end of its life: 10 % (belt makers' literature, as published).
pub const LOSS_WORN: f64 = 0.10;

/// The belt freed when it sinks by `depth` into the grooves of a route: depth · Σ wraps of ribbed
/// pulleys. Without back-side pulleys that is 2π·depth; each back-side wrap adds as much again,
/// because the ribbed wraps then close more than one turn. Own calculation; the wraps are those before
/// it sinks, so for depths that are small beside the pulleys.
///
/// # Errors
/// The [`RouteFault`]s of a route no belt can take.
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, wear::freed_by_seat};
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let freed = |texts| freed_by_seat(&resolve(&texts).layout.unwrap(), Length::new::<Millimetre>(0.1)).unwrap();
/// // Ribs only: 2π·0.1 mm. With flat pulleys more.
/// assert!((freed(DriveText::begin()).get::<Millimetre>() - 0.62832).abs() < 5e-6);
/// assert!(freed(DriveText::demo()).get::<Millimetre>() > 0.7);
/// ```
pub fn freed_by_seat(layout: &Layout, depth: Length) -> Result<Length, Vec<RouteFault>> {
    Ok(depth * ribbed_turn(&route::solve(layout)?))
}

/// The wraps of all ribbed pulleys together, as a number of radians.
pub(super) fn ribbed_turn(route: &route::Route) -> Ratio {
    let wraps = route
        .legs
        .iter()
        .filter(|leg| leg.side == Side::Rib)
        .map(|leg| in_radians(leg.wrap));
    ratio(wraps.sum())
}

/// How much more belt the arm has to take up once the belt has stretched by a share of its length
/// and sunk by `seat` into the grooves: L·stretch + seat · Σ ribbed wraps, the wraps as they are at
/// the arm's place now (they change by a few degrees over the sweep, which a wear depth makes
/// hundredths of a millimetre). Lengths in, length out.
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, wear::growth};
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Percent};
/// use uom::si::f64::{Length, Ratio};
/// // Ribs only, so the wraps close one turn: 7.3 mm of stretch and 2π·0.1 mm of wear.
/// let route = resolve(&DriveText::begin()).route.unwrap();
/// let mm = Length::new::<Millimetre>;
/// let grown = growth(mm(1460.0), Ratio::new::<Percent>(0.5), mm(0.1), &route);
/// assert!((grown.get::<Millimetre>() - 7.92832).abs() < 5e-6);
/// ```
#[must_use]
pub fn growth(belt: Length, stretch: Ratio, seat: Length, route: &route::Route) -> Length {
    belt * stretch + seat * ribbed_turn(route)
}

/// The stretch, as a share of the belt's length, that uses up the travel left: ΔL/L, for a belt longer
/// than nothing.
///
/// ```
/// use shopmath::drive::wear::stretch_left;
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Percent};
/// use uom::si::f64::Length;
/// let left = stretch_left(Length::new::<Millimetre>(7.3), Length::new::<Millimetre>(1460.0));
/// assert!((left.get::<Percent>() - 0.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn stretch_left(remaining: Length, belt: Length) -> Ratio {
    remaining / belt
}

/// The depth the belt may still sink until the travel left is used up: ΔL over the ribbed wraps
/// together, in radians, the other way round from [`freed_by_seat`].
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, wear::seat_left};
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// // Ribs only: each 2π·0.1 mm of belt is 0.1 mm of depth.
/// let route = resolve(&DriveText::begin()).route.unwrap();
/// let left = seat_left(Length::new::<Millimetre>(0.62832), &route);
/// assert!((left.get::<Millimetre>() - 0.1).abs() < 1e-6);
/// ```
#[must_use]
pub fn seat_left(remaining: Length, route: &route::Route) -> Length {
    remaining / ribbed_turn(route)
}

/// How deep a belt sits for having grown by `growth` on a measuring bench, if all of it were wear
/// of the ribs: growth/2π. Stretch looks the same there, so this is the most it can be. Below zero for
/// a belt that is shorter.
///
/// ```
/// use shopmath::drive::wear::seat_from_growth;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let depth = seat_from_growth(Length::new::<Millimetre>(3.0));
/// assert!((depth.get::<Millimetre>() - 0.47746).abs() < 5e-6);
/// ```
#[must_use]
pub fn seat_from_growth(growth: Length) -> Length {
    growth / TAU
}

/// The share of rib material lost when the belt sits `depth` lower: both flanks recede by
/// depth·tan(α/2) on a rib half a pitch wide in the middle, so 4·depth·tan(α/2)/pitch. An own
/// estimate that takes ribs and grooves as equally wide; 0 to 1, for depths not below zero.
///
/// ```
/// use shopmath::drive::{profile::Profile, wear::rib_loss};
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Percent};
/// use uom::si::f64::Length;
/// let loss = rib_loss(Length::new::<Millimetre>(0.25), Profile::Pk).get::<Percent>();
/// assert!((loss - 10.22).abs() < 0.01);
/// ```
#[must_use]
pub fn rib_loss(depth: Length, profile: Profile) -> Ratio {
    let flank = (0.5 * in_radians(profile.groove_angle())).tan();
    ratio(between(
        4.0 * in_metres(depth) * flank / in_metres(profile.pitch()),
        0.0,
        1.0,
    ))
}

/// How deep a belt sits when that share of its ribs is gone, 0 to 1: [`rib_loss`] the other way round,
/// and as much an own estimate.
///
/// ```
/// use shopmath::drive::{profile::Profile, wear::{LOSS_WORN, rib_loss, seat_from_loss}};
/// use shopmath::quantity::exact::{length::Millimetre, ratio::Number};
/// use uom::si::f64::Ratio;
/// let worn = seat_from_loss(Ratio::new::<Number>(LOSS_WORN), Profile::Pk);
/// assert!((worn.get::<Millimetre>() - 0.2445).abs() < 5e-5);
/// assert!((rib_loss(worn, Profile::Pk).get::<Number>() - 0.10).abs() < 1e-12);
/// ```
#[must_use]
pub fn seat_from_loss(loss: Ratio, profile: Profile) -> Length {
    let flank = (0.5 * in_radians(profile.groove_angle())).tan();
    metres(loss.get::<crate::quantity::exact::ratio::Number>() * in_metres(profile.pitch()) / (4.0 * flank))
}
