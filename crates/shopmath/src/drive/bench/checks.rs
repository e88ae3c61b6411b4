//! Findings of the checks at the engine: straightedge, rib wear, tensioner swing.

use super::Bench;
use super::held::Held;
use crate::caution;
use crate::drive::si::{in_metres, metres, ratio};
use crate::drive::swing::Verdict;
use crate::drive::{alignment, swing, wear};
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Id, Term, Working};
use crate::source;
use uom::si::f64::{Length, Ratio};

/// The share of its length by which a belt is made shorter at most, with room (common practice).
const SHORTER: f64 = 0.006;

pub(super) fn findings(bench: &Bench, held: Option<&Held>) -> Vec<Finding> {
    let mut findings = aligned(bench);
    let mut worn: Vec<Finding> = worn_by_length(bench).into_iter().flatten().collect();
    worn.extend(worn_by_depth(bench));
    // Once, beside the first figure of rib loss.
    if let Some(loss) = worn.iter_mut().find(|finding| finding.unit == Unit::Percent) {
        loss.cautions.insert(0, caution::drive::CRACKS);
    }
    findings.extend(worn);
    findings.extend(swinging(bench, held));
    findings
}

fn length(bench: &Bench, key: &str) -> Option<Length> {
    match bench.value(key) {
        Some(Quantity::Length(length)) => Some(length),
        _ => None,
    }
}

fn aligned(bench: &Bench) -> Vec<Finding> {
    let (Some(offset), Some(apart)) = (length(bench, "offset"), length(bench, "apart")) else {
        return Vec::new();
    };
    let Some(angle) = alignment::misalignment(offset, apart) else {
        return Vec::new();
    };
    let terms = || {
        vec![
            Term::new("o", "gap under the straightedge", offset, Unit::Millimetre),
            Term::new("a", "distance of the two pulleys", apart, Unit::Millimetre),
        ]
    };
    let method = "straightedge";
    let mut misalignment = Finding::new(
        Id::Named("misalignment"),
        "out of line by",
        angle,
        Unit::Degree,
        method,
        Working::new("atan(o/a)", terms(), source::drive::ALIGNMENT),
    );
    if alignment::exceeds(offset, apart) {
        misalignment.cautions.push(caution::drive::OUT_OF_LINE);
    }
    let limit = Finding::new(
        Id::Named("offset-limit"),
        "largest gap for ribbed belts",
        alignment::largest_offset(apart),
        Unit::Millimetre,
        method,
        Working::new("a/192, 1/16 in per ft", terms(), source::drive::ALIGNMENT),
    );
    vec![misalignment, limit]
}

/// How much longer than its name the belt was measured.
fn growth(bench: &Bench) -> Option<Length> {
    Some(length(bench, "measured")? - bench.belt?.effective_length())
}

/// Rib loss from that, if all of it were wear.
fn loss_by_length(bench: &Bench) -> Option<Ratio> {
    let growth = growth(bench)?;
    let depth = wear::seat_from_growth(if in_metres(growth) > 0.0 { growth } else { metres(0.0) });
    Some(wear::rib_loss(depth, bench.profile?))
}

fn worn_by_length(bench: &Bench) -> Option<[Finding; 2]> {
    let (measured, profile) = (length(bench, "measured")?, bench.profile?);
    let (growth, loss) = (growth(bench)?, loss_by_length(bench)?);
    let terms = vec![
        Term::new("ΔL", "belt longer than its name", growth, Unit::Millimetre),
        Term::new("p", "rib pitch", profile.pitch(), Unit::Millimetre).taken_from(profile.source()),
    ];
    let equation = "4·w·tan(α/2)/p, w = ΔL/2π";
    let working = Working::new(equation, terms, source::drive::WEAR);
    let lost = rib_loss("rib-loss-length", "rib loss at most, by length", loss, working);
    Some([growth_finding(growth, measured), lost])
}

fn growth_finding(growth: Length, measured: Length) -> Finding {
    let terms = vec![Term::new("L", "measured", measured, Unit::Millimetre)];
    let working = Working::new("ΔL = L − name", terms, source::drive::BELT_NAME);
    let mut finding = Finding::new(
        Id::Named("belt-growth"),
        "against its name",
        growth,
        Unit::Millimetre,
        "measuring bench",
        working,
    )
    .to(0.1);
    let name = in_metres(measured - growth);
    if in_metres(growth) < -SHORTER * name {
        finding.cautions.push(caution::drive::BELT_SHORTER);
    }
    finding
}

fn worn_by_depth(bench: &Bench) -> Option<Finding> {
    let (depth, profile) = (length(bench, "sink")?, bench.profile?);
    let terms = vec![
        Term::new("w", "gauge deeper than on a new belt", depth, Unit::Millimetre),
        Term::new("p", "rib pitch", profile.pitch(), Unit::Millimetre).taken_from(profile.source()),
    ];
    let working = Working::new("4·w·tan(α/2)/p", terms, source::drive::WEAR);
    let loss = wear::rib_loss(depth, profile);
    let mut finding = rib_loss("rib-loss-depth", "rib loss, by depth", loss, working);
    // By its length it lost that much at most.
    if loss_by_length(bench).is_some_and(|most| loss > most + ratio(wear::LOSS_MATTERS)) {
        finding.cautions.push(caution::drive::WEAR_DISAGREES);
    }
    Some(finding)
}

fn rib_loss(id: &'static str, name: &'static str, loss: Ratio, working: Working) -> Finding {
    let method = "own estimate from the profile";
    let mut finding = Finding::new(Id::Named(id), name, loss, Unit::Percent, method, working);
    let share = crate::drive::si::in_ones(loss);
    finding.cautions.extend(if share >= wear::LOSS_WORN {
        Some(caution::drive::RIBS_WORN_OUT)
    } else {
        (share >= wear::LOSS_MATTERS).then_some(caution::drive::RIBS_WORN)
    });
    finding
}

fn swinging(bench: &Bench, held: Option<&Held>) -> Vec<Finding> {
    let (Some(seen), Some(held)) = (length(bench, "swing"), held) else {
        return Vec::new();
    };
    let Some(angle) = swing::arm_angle(seen, held.arm) else {
        return Vec::new();
    };
    let terms = vec![
        Term::new("s", "swing at the pulley, side to side", seen, Unit::Millimetre),
        Term::new("l", "pivot to pulley", held.arm, Unit::Millimetre),
    ];
    let method = "by eye, at idle";
    let own = Working::new("2·asin(s/2l)", terms, source::drive::SWING);
    let mut first = Finding::new(
        Id::Named("swing-angle"),
        "arm swings by",
        angle,
        Unit::Degree,
        method,
        own,
    );
    first.cautions.extend(match swing::verdict(seen) {
        Verdict::Steady => None,
        Verdict::Watch => Some(caution::drive::SWING_WATCH),
        Verdict::WornOut => Some(caution::drive::SWING_WORN_OUT),
    });
    let mut findings = vec![first];
    if let Some((_, growth)) = held.growth {
        let terms = vec![Term::new("dL/dα", "per radian", growth, Unit::Millimetre)];
        let own = Working::new("|dL/dα|·β", terms, source::drive::SWING);
        let moved = swing::belt_moved(angle, growth);
        let name = "belt passing to and fro";
        findings.push(Finding::new(
            Id::Named("swing-belt"),
            name,
            moved,
            Unit::Millimetre,
            method,
            own,
        ));
    }
    findings
}
