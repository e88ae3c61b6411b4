//! What must hold for every drive, tried on random ones.

use super::belt::Belt;
use super::fault::TensionerFault;
use super::layout::Layout;
use super::profile::Profile;
use super::pulley::{Pulley, Side, Spot};
use super::route::{self, Route};
use super::si::{in_metres, in_newtons, in_ones, in_radians, kilograms_per_metre, metres, newtons, radians, ratio};
use super::tension::{self, Setting};
use super::tensioner::{Arm, Tensioner};
use super::text::{pulleys, tensioner};
use super::{place, slip, spring, strand, take_up};
use crate::quantity::exact::frequency::Hertz;
use core::f64::consts::TAU;
use kurbo::{Affine, Point};
use proptest::prelude::*;
use uom::si::f64::Frequency;

/// A random drive that routes: ribbed pulleys round a ring, flat ones pressed between some.
fn drive() -> impl Strategy<Value = (Layout, Route)> {
    let pulley = (
        0.046..0.15_f64,
        -0.2..0.2_f64,
        prop::option::weighted(0.4, (0.05..0.09_f64, 0.0..0.05_f64)),
    );
    let ring = (
        prop::collection::vec(pulley, 2..9),
        0.12..0.4_f64,
        0.0..TAU,
        any::<bool>(),
    );
    ring.prop_filter_map("no belt takes this route", |(ring, radius, turn, backwards)| {
        let mut layout = laid_out(&ring, radius, turn);
        if backwards {
            layout.pulleys[1..].reverse();
        }
        route::solve(&layout).ok().map(|route| (layout, route))
    })
}

type OnRing = (f64, f64, Option<(f64, f64)>);

fn laid_out(ring: &[OnRing], radius: f64, turn: f64) -> Layout {
    #[allow(clippy::cast_precision_loss)] // a handful of pulleys
    let place = |index: usize, shift: f64, radius: f64| {
        Point::ORIGIN + radius * kurbo::Vec2::from_angle(turn + TAU * (index as f64 + shift) / ring.len() as f64)
    };
    let mut list = Vec::new();
    for (index, &(diameter, shift, pressed)) in ring.iter().enumerate() {
        list.push(pulley(
            format!("rib {index}"),
            Side::Rib,
            place(index, shift, radius),
            diameter,
        ));
        if let Some((diameter, depth)) = pressed {
            let next = place(index + 1, ring[(index + 1) % ring.len()].1, radius);
            let between = place(index, shift, radius).midpoint(next);
            let out = between.to_vec2().normalize() * (0.06 + diameter / 2.0 - depth);
            list.push(pulley(format!("flat {index}"), Side::Back, between + out, diameter));
        }
    }
    Layout {
        profile: Profile::Pk,
        back: metres(0.0023),
        pulleys: list,
    }
}

fn pulley(name: String, side: Side, centre: Point, diameter: f64) -> Pulley {
    Pulley {
        name,
        side,
        centre: spot(centre),
        diameter: metres(diameter),
    }
}

fn spot(point: Point) -> Spot {
    Spot {
        x: metres(point.x),
        y: metres(point.y),
    }
}

fn moved(layout: &Layout, by: Affine) -> Layout {
    let mut layout = layout.clone();
    for pulley in &mut layout.pulleys {
        pulley.centre = spot(by * pulley.centre.point());
    }
    layout
}

/// An arm for the second pulley, its pivot off to some side.
fn armed(layout: &Layout, length: f64, angle: f64, half_sweep: f64) -> Tensioner {
    let pivot = layout.pulleys[1].centre.point() - length * kurbo::Vec2::from_angle(angle);
    Tensioner {
        pulley: 1,
        pivot: spot(pivot),
        low: radians(angle - half_sweep),
        high: radians(angle + half_sweep),
    }
}

/// Stretches of a sweep where the belt runs in a sense, as angles a thousandth of a radian apart and
/// the belt's length at each. Some places of the pulley allow both senses.
fn scanned(arm: &Arm<'_>, sense: route::Sense, low: f64) -> Vec<Vec<(f64, f64)>> {
    let length = |angle: f64| {
        let route = route::solve_in(&arm.layout_at(radians(angle)), sense.sign()).ok()?;
        Some((angle, in_metres(route.effective_length)))
    };
    let looks: Vec<_> = (0..=800).map(|step| length(low + f64::from(step) * 1e-3)).collect();
    looks
        .split(Option::is_none)
        .map(|stretch| stretch.iter().flatten().copied().collect())
        .collect()
}

/// The least and the greatest length of some stretches.
fn extent<'a>(stretches: impl Iterator<Item = &'a Vec<(f64, f64)>>) -> (f64, f64) {
    stretches
        .flatten()
        .fold((f64::INFINITY, 0.0), |(least, most): (f64, f64), &(_, length)| {
            (least.min(length), most.max(length))
        })
}

fn close(one: f64, other: f64, share: f64) -> bool {
    (one - other).abs() <= share * one.abs().max(other.abs())
}

fn length(layout: &Layout) -> f64 {
    in_metres(route::solve(layout).unwrap().effective_length)
}

proptest! {
    #[test]
    fn length_keeps_when_the_drive_is_turned_moved_mirrored_or_run_backwards(
        (layout, route) in drive(), angle in 0.0..TAU, x in -2.0..2.0_f64, y in -2.0..2.0_f64,
    ) {
        let here = in_metres(route.effective_length);
        for by in [Affine::rotate(angle), Affine::translate((x, y)), Affine::FLIP_X] {
            prop_assert!(close(length(&moved(&layout, by)), here, 1e-12));
        }
        let mut backwards = layout.clone();
        backwards.pulleys.reverse();
        prop_assert!(close(length(&backwards), here, 1e-12));
    }

    #[test]
    fn length_scales_with_the_drive((layout, route) in drive(), scale in 1.0..5.0_f64) {
        let mut larger = moved(&layout, Affine::scale(scale));
        larger.back *= scale;
        for pulley in &mut larger.pulleys {
            pulley.diameter *= scale;
        }
        prop_assert!(close(length(&larger), scale * in_metres(route.effective_length), 1e-12));
    }

    #[test]
    fn pitch_exceeds_effective_by_the_differential_once_round((_, route) in drive()) {
        let more = in_metres(route.pitch_length) - in_metres(route.effective_length);
        prop_assert!(close(more, TAU * 0.002, 1e-9));
    }

    #[test]
    fn wraps_close_one_turn_and_belt_speed_is_one((layout, route) in drive()) {
        let turned: f64 = route.legs.iter().map(|leg| leg.side.sign() * in_radians(leg.wrap)).sum();
        prop_assert!(close(turned, TAU, 1e-12));
        for (leg, pulley) in route.legs.iter().zip(&layout.pulleys) {
            // Rim speed at the pitch line is the same everywhere.
            let rim = in_ones(leg.speed) * in_metres(leg.pitch_radius);
            let own = pulley.side.sign() * layout.pulleys[0].side.sign();
            prop_assert!(close(rim, own * in_metres(route.legs[0].pitch_radius), 1e-12));
        }
    }

    #[test]
    fn arm_growth_is_the_slope_of_the_length_and_the_moment_of_the_spans(
        (layout, route) in drive(), arm in 0.03..0.15_f64, angle in 0.0..TAU,
    ) {
        let tensioner = armed(&layout, arm, angle, 0.3);
        let fitted = Arm::fit(&layout, tensioner).unwrap();
        // The difference quotient errs by step²·L‴/6, and L‴ grows as a span shrinks.
        prop_assume!(in_metres(route.legs[0].span).min(in_metres(route.legs[1].span)) > 5e-3);
        let at = |by: f64| fitted.reading(angle + by).map(|reading| reading.length);
        let step = 1e-5;
        prop_assume!(at(step).is_some() && at(-step).is_some());
        let slope = (at(step).unwrap() - at(-step).unwrap()) / (2.0 * step);
        let growth = fitted.growth(&route, radians(angle));
        prop_assert!((in_metres(growth) - slope).abs() < 1e-7, "{growth:?} {slope}");
        // The loop's own hub load at that pulley, about the pivot, works against the spring.
        let pulls = vec![newtons(0.0); layout.pulleys.len()];
        let setting = Setting::Tensioner { pulley: 1, tension: newtons(300.0) };
        let hub = tension::around(&route, &pulls, setting, newtons(0.0)).hubs[1];
        let load = in_newtons(hub.force) * kurbo::Vec2::from_angle(in_radians(hub.direction));
        let lever = layout.pulleys[1].centre.point() - tensioner.pivot.point();
        let moment = lever.cross(load);
        prop_assert!((moment + 300.0 * in_metres(growth)).abs() < 1e-9, "{moment}");
        let held = super::si::in_newton_metres(spring::torque(newtons(300.0), growth));
        prop_assert!(close(held, moment.abs(), 1e-9) || moment.abs() < 1e-9);
    }

    #[test]
    fn every_arm_angle_found_holds_the_belt_and_none_in_reach_is_missed(
        (layout, drawn) in drive(), arm in 0.03..0.15_f64, angle in 0.0..TAU, share in 0.01..0.99_f64,
    ) {
        let tensioner = armed(&layout, arm, angle, 0.4);
        let fitted = Arm::fit(&layout, tensioner).unwrap();
        let take_up = take_up::take_up(&fitted).unwrap();
        let (shortest, longest) = (in_metres(take_up.shortest), in_metres(take_up.longest));
        let belt = shortest + share * (longest - shortest);
        let fits = take_up.fits(&fitted, metres(belt)).unwrap_or_default();
        for fit in &fits {
            let there = route::solve_in(&fitted.layout_at(fit.angle), drawn.sense.sign()).unwrap();
            prop_assert!((in_metres(there.effective_length) - belt).abs() < 1e-9);
            prop_assert!((0.0..=1.0).contains(&in_ones(fit.share)) && in_metres(fit.remaining) >= 0.0);
        }
        // Looked at more closely and by the whole check: no angle is missed, and no length beyond, but
        // where the belt runs for less than the half degree between two looks.
        let scanned = scanned(&fitted, drawn.sense, angle - 0.4);
        let wide = || scanned.iter().filter(|stretch| stretch.len() > 10);
        // The length changes by two arms per radian at most.
        let slack = 2.0 * arm * 1e-3;
        let ((all_least, all_most), (least, most)) = (extent(scanned.iter()), extent(wide()));
        prop_assert!(all_least - slack < shortest && shortest <= least + 1e-12, "{shortest} {all_least} {least}");
        prop_assert!(all_most + slack > longest && longest >= most - 1e-12, "{longest} {all_most} {most}");
        for pair in wide().flat_map(|stretch| stretch.windows(2)) {
            let ((one, before), (other, after)) = (pair[0], pair[1]);
            if (before - belt) * (after - belt) < 0.0 {
                let within = |fit: &take_up::Fit| (one..=other).contains(&in_radians(fit.angle));
                prop_assert!(fits.iter().any(within), "{one} {fits:?}");
            }
        }
        let (short, long) = (metres(shortest - 1e-3), metres(longest + 1e-3));
        let refused = |belt| take_up.fits(&fitted, belt).unwrap_err();
        prop_assert_eq!(refused(short), TensionerFault::TooShort { belt: short, shortest: take_up.shortest });
        prop_assert_eq!(refused(long), TensionerFault::TooLong { belt: long, longest: take_up.longest });
    }

    #[test]
    fn slip_reserve_falls_as_the_load_rises(
        (layout, route) in drive(), load in 1.0..80.0_f64, more in 1.0..50.0_f64, friction in 0.1..0.6_f64,
    ) {
        let reserve = |pull: f64| {
            let mut pulls = vec![newtons(0.0); layout.pulleys.len()];
            pulls[1] = newtons(pull);
            let setting = Setting::Tensioner { pulley: layout.pulleys.len() - 1, tension: newtons(400.0) };
            let spans = tension::around(&route, &pulls, setting, newtons(20.0)).spans;
            let leg = route.legs[1];
            let holds = slip::capacity(ratio(friction), leg.wrap, leg.side, layout.profile.groove_angle()).unwrap();
            in_ones(slip::reserve(holds, spans[0], spans[1]))
        };
        prop_assert!(reserve(load + more) < reserve(load));
    }

    #[test]
    fn loads_and_hubs_are_in_balance((layout, route) in drive(), pull in 0.0..200.0_f64) {
        let mut pulls = vec![newtons(pull); layout.pulleys.len()];
        pulls[0] = newtons(0.0);
        let setting = Setting::Fixed { tension: newtons(500.0) };
        let around = tension::around(&route, &pulls, setting, newtons(30.0));
        // All hub loads together vanish: the belt as a whole is in balance.
        let sum: kurbo::Vec2 = around
            .hubs
            .iter()
            .map(|hub| in_newtons(hub.force) * kurbo::Vec2::from_angle(in_radians(hub.direction)))
            .fold(kurbo::Vec2::ZERO, |sum, load| sum + load);
        prop_assert!(sum.hypot() < 1e-8, "{sum:?}");
        // And the belt's length is kept: tensions by length average to that at rest.
        let (mut held, mut total) = (0.0, 0.0);
        for (leg, span) in route.legs.iter().zip(&around.spans) {
            held += in_metres(leg.span) * (in_newtons(*span) + 30.0);
            total += in_metres(leg.span);
        }
        prop_assert!(close(held / total, 500.0, 1e-12));
    }

    #[test]
    fn strand_and_note_are_each_others_inverse(mass in 0.01..0.5_f64, span in 0.05..1.0_f64, hertz in 10.0..500.0_f64) {
        let (mass, span) = (kilograms_per_metre(mass), metres(span));
        let tension = strand::tension(mass, span, Frequency::new::<Hertz>(hertz));
        let back = strand::frequency(mass, span, tension).unwrap().get::<Hertz>();
        prop_assert!(close(back, hertz, 1e-12));
    }

    #[test]
    fn places_from_two_distances_are_that_far_away(
        x in -0.5..0.5_f64, y in -0.5..0.5_f64, px in -0.5..0.5_f64, py in -0.5..0.5_f64,
    ) {
        let (first, second, third) = (Point::new(x, y), Point::new(0.7, 0.1), Point::new(px, py));
        let (one, other) = (first.distance(third), second.distance(third));
        let placed = place::by_distances(spot(first), metres(one), spot(second), metres(other));
        prop_assume!(placed.is_ok());
        let placed = placed.unwrap();
        for found in placed {
            prop_assert!((found.point().distance(first) - one).abs() < 1e-7);
            prop_assert!((found.point().distance(second) - other).abs() < 1e-7);
        }
        prop_assert!(placed.iter().any(|found| found.point().distance(third) < 1e-6));
    }

    #[test]
    fn texts_printed_read_back((layout, _) in drive(), low in -180.0..180.0_f64, sweep in 1.0..90.0_f64) {
        let text = pulleys::print(&layout.pulleys);
        let again = pulleys::read(&text).unwrap();
        prop_assert_eq!(pulleys::print(&again), text);
        for (one, other) in again.iter().zip(&layout.pulleys) {
            prop_assert!(one.name == other.name && one.side == other.side);
            prop_assert!(one.centre.point().distance(other.centre.point()) < 1e-9);
        }
        let arm = Tensioner { low: radians(low.to_radians()), high: radians((low + sweep).to_radians()), ..armed(&layout, 0.08, 1.0, 0.2) };
        let text = tensioner::print(&arm, &layout.pulleys);
        prop_assert_eq!(tensioner::print(&tensioner::read(&text, &layout.pulleys).unwrap(), &layout.pulleys), text);
    }

    #[test]
    fn belt_names_read_back(ribs in 1..=100_u32, profile in 0..5_usize, millimetres in 100..=20_000_u32) {
        let belt = Belt::new(ribs, Profile::ALL[profile], millimetres).unwrap();
        prop_assert_eq!(Belt::read(&belt.to_string()).unwrap(), belt);
        prop_assert_eq!(Belt::nearest(ribs, belt.profile, belt.effective_length()).unwrap(), belt);
    }
}
