//! A tensioner's arm for a pulley that has none yet: a guess to put the measured figures into.

use super::resolve::Bench;
use crate::drive::layout::Layout;
use crate::drive::pulley::{Pulley, Spot};
use crate::drive::si::metres;
use crate::drive::take_up::take_up;
use crate::drive::tensioner::{Arm, Tensioner};
use crate::quantity::exact::angle::Degree;
use kurbo::{Line, ParamCurveNearest, Point, Vec2};
use uom::si::f64::Angle;

/// Arms as tensioners have them, metre, the most usual first.
const ARMS: [f64; 5] = [0.08, 0.1, 0.06, 0.13, 0.05];
/// How far the arm swings to either side of where it is drawn, degree.
const SWEEPS: [f64; 5] = [20.0, 15.0, 10.0, 6.0, 3.0];
/// What a pivot needs round it, metre.
const PIVOT: f64 = 0.012;

/// The arm that carries a pulley across the middle of its two spans, where it takes up most. Its whole
/// sweep lets the belt run and passes no dead centre where there is such a one, and else it is the first
/// that was thought of. `None` where there is no such pulley.
pub(super) fn guess(bench: &Bench, list: &[Pulley], pulley: usize) -> Option<Tensioner> {
    let centre = list.get(pulley)?.centre.point();
    let leg = bench.route.as_ref().and_then(|route| route.legs.get(pulley));
    let pull = leg.map_or(Vec2::ZERO, |leg| leg.arriving - leg.leaving);
    let along = if pull.hypot() > 1e-6 {
        pull.normalize()
    } else {
        Vec2::new(1.0, 0.0)
    };
    let across = Vec2::new(along.y, -along.x);
    let arms = SWEEPS.into_iter().flat_map(|sweep| {
        let lengths = ARMS.into_iter().flat_map(|length| [length, -length]);
        lengths.map(move |length| standing(pulley, centre, centre + length * across, sweep))
    });
    let spans = || bench.route.iter().flat_map(|route| &route.legs);
    let off_the_belt =
        |pivot: Point| spans().all(|leg| Line::new(leg.from, leg.to).nearest(pivot, 1e-6).distance_sq > PIVOT * PIVOT);
    let holds = |arm: &Tensioner| {
        off_the_belt(arm.pivot.point()) && bench.layout.as_ref().is_some_and(|layout| holds(layout, *arm))
    };
    arms.clone().find(holds).or_else(|| arms.into_iter().next())
}

/// An arm in whole millimetres and degrees.
fn standing(pulley: usize, centre: Point, pivot: Point, sweep: f64) -> Tensioner {
    let whole = |place: f64| (place * 1e3).round() * 1e-3;
    let pivot = Point::new(whole(pivot.x), whole(pivot.y));
    let drawn = (centre - pivot).atan2().to_degrees();
    Tensioner {
        pulley,
        pivot: Spot {
            x: metres(pivot.x),
            y: metres(pivot.y),
        },
        low: Angle::new::<Degree>((drawn - sweep).round()),
        high: Angle::new::<Degree>((drawn + sweep).round()),
    }
}

/// Whether the arm holds belts all through its sweep, and its pivot stands clear of the other pulleys.
fn holds(layout: &Layout, arm: Tensioner) -> bool {
    let pivot = arm.pivot.point();
    let mut others = (0..).zip(&layout.pulleys).filter(|(index, _)| *index != arm.pulley);
    let clear = others.all(|(_, other)| pivot.distance(other.centre.point()) > other.body_radius() + PIVOT);
    let swept = Arm::fit(layout, arm).ok().and_then(|arm| take_up(&arm).ok());
    clear && swept.is_some_and(|swept| swept.at_low.is_ok() && swept.at_high.is_ok() && swept.dead_centres.is_empty())
}
