//! Findings of the tensioner: its range, where the belt puts it, what is left of its travel.

use super::held::{Held, METHOD, named};
use super::{Bench, springs, travel};
use crate::caution::{self, Caution};
use crate::drive::si::{in_metres, in_ones, in_radians, metres};
use crate::drive::take_up::Fit;
use crate::quantity::Unit;
use crate::quantity::exact::angle::Degree;
use crate::result::{Amount, Finding, Id, Term, Working};
use crate::source;
use uom::si::f64::Angle;

/// The share of the sweep past which little travel is left (common practice).
pub(super) const LITTLE_LEFT: f64 = 0.8;
/// The share of the sweep below which there is hardly any travel to slip the belt on (common practice).
pub(super) const HARDLY_ANY: f64 = 0.05;

pub(super) fn findings(bench: &mut Bench, held: Option<&Held>) -> Vec<Finding> {
    let Some(held) = held else {
        return Vec::new();
    };
    let mut findings = vec![range(bench, held)];
    findings.extend(most(held));
    findings.extend(position(bench, held));
    findings.extend(per_degree(held));
    if let (Some(fit), Some(belt)) = (held.fits.first(), bench.belt) {
        findings.extend(travel::left(fit, belt.effective_length()));
        findings.extend(travel::after(bench, held, fit, belt.effective_length()));
    }
    findings.extend(springs::findings(bench, held));
    findings
}

/// The belts the arm holds: the lengths at both stops, the shorter first.
fn range(bench: &Bench, held: &Held) -> Finding {
    let take_up = &held.take_up;
    let (one, other, whole) = match (take_up.at_low, take_up.at_high) {
        (Ok(low), Ok(high)) => (low, high, true),
        _ => (take_up.shortest, take_up.longest, false),
    };
    let (low, high) = if in_metres(one) <= in_metres(other) {
        (one, other)
    } else {
        (other, one)
    };
    let mut terms = vec![Term::new("l", "pivot to pulley", held.arm, Unit::Millimetre)];
    if let Some(tensioner) = bench.tensioner {
        terms.push(Term::new("α₁", "low stop", tensioner.low, Unit::Degree));
        terms.push(Term::new("α₂", "high stop", tensioner.high, Unit::Degree));
    }
    let amount = Amount::Range {
        low: low.into(),
        mid: None,
        high: high.into(),
    };
    let mut finding = named(
        "take-up",
        "belts the tensioner takes",
        amount,
        Unit::Millimetre,
        Working::new("L(α₁) and L(α₂)", terms, source::drive::TAKE_UP),
    )
    .to(0.1);
    let drawn_within = bench.arm().is_none_or(|arm| arm.drawn_within());
    let cautions = [
        (!whole, caution::drive::STOP_NOT_CLEAR),
        (!take_up.dead_centres.is_empty(), caution::drive::DEAD_CENTRE),
        (!drawn_within, caution::drive::OUTSIDE_SWEEP),
    ];
    finding.cautions.extend(told(cautions));
    finding
}

/// The cautions whose condition holds.
fn told<const N: usize>(cautions: [(bool, Caution); N]) -> impl Iterator<Item = Caution> {
    cautions
        .into_iter()
        .filter_map(|(holds, caution)| holds.then_some(caution))
}

/// The longest belt, where the arm takes up most between its stops.
fn most(held: &Held) -> Option<Finding> {
    let take_up = &held.take_up;
    let dead_centre = *take_up.dead_centres.first()?;
    let terms = vec![Term::new("α", "dead centre", dead_centre, Unit::Degree)];
    let working = Working::new("L(α) where dL/dα = 0", terms, source::drive::TAKE_UP);
    Some(
        named(
            "take-up-most",
            "longest route of the sweep",
            take_up.longest,
            Unit::Millimetre,
            working,
        )
        .to(0.1),
    )
}

fn position(bench: &Bench, held: &Held) -> Vec<Finding> {
    let (Some(fit), Some(belt)) = (held.fits.first(), bench.belt) else {
        return Vec::new();
    };
    let of_belt = || {
        vec![Term::new(
            "L",
            "belt's effective length",
            belt.effective_length(),
            Unit::Millimetre,
        )]
    };
    let angle = |id: Id, name: &'static str, angle: Angle| {
        let working = Working::new("L(α) = L", of_belt(), source::drive::TAKE_UP);
        Finding::new(id, name, angle, Unit::Degree, METHOD, working).to(0.1)
    };
    let mut first = angle(Id::Named("arm-angle"), "arm angle with this belt", fit.angle);
    let cautions = [
        (held.fits.len() > 1, caution::drive::SEVERAL_POSITIONS),
        (
            bench.ribs.is_some_and(|ribs| ribs != belt.ribs),
            caution::drive::RIBS_DIFFER,
        ),
    ];
    first.cautions.extend(told(cautions));
    let mut findings = vec![first, share("arm-share", "travel used", fit)];
    let others = held.fits.iter().skip(1).enumerate();
    findings.extend(
        others.map(|(index, fit)| angle(Id::Numbered("arm-angle-also", index + 1), "fits as well at", fit.angle)),
    );
    findings
}

fn share(id: &'static str, name: &'static str, fit: &Fit) -> Finding {
    let terms = vec![Term::new("α", "arm angle", fit.angle, Unit::Degree)];
    let working = Working::new("|α − α_slack| / |α₂ − α₁|", terms, source::drive::TAKE_UP);
    let mut finding = named(id, name, fit.share, Unit::Percent, working);
    let share = in_ones(fit.share);
    finding.cautions.extend(told([
        (share > LITTLE_LEFT, caution::drive::NEAR_STOP),
        (share < HARDLY_ANY, caution::drive::NEAR_SLACK_STOP),
    ]));
    finding
}

/// Belt taken up by one degree of the arm, whichever way.
fn per_degree(held: &Held) -> Option<Finding> {
    let (angle, growth) = held.growth?;
    let degree = in_radians(Angle::new::<Degree>(1.0));
    let terms = vec![
        Term::new("α", "arm angle", angle, Unit::Degree),
        Term::new("dL/dα", "per radian, anticlockwise", growth, Unit::Millimetre),
    ];
    let working = Working::new("|dL/dα|·π/180", terms, source::drive::TAKE_UP);
    let amount = metres(in_metres(growth).abs() * degree);
    let mut finding = named(
        "belt-per-degree",
        "belt per degree of arm",
        amount,
        Unit::Millimetre,
        working,
    );
    finding.method = held.method();
    Some(finding)
}
