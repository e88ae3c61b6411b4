//! Findings of the tensioner: its range, where the belt puts it, what is left of its travel.

use super::Bench;
use crate::caution::{self, Caution};
use crate::drive::fault::TensionerFault;
use crate::drive::si::{in_metres, in_radians, metres, radians};
use crate::drive::take_up::{self, Fit, TakeUp};
use crate::drive::{spring, wear};
use crate::quantity::exact::angle::Degree;
use crate::quantity::{Quantity, Unit};
use crate::result::{Amount, Finding, Id, Style, Term, Working};
use crate::source::{self, Source};
use uom::si::f64::{Angle, Force, Length, Ratio};

/// The share of the sweep past which little travel is left (common practice).
const LITTLE_LEFT: f64 = 0.8;
const METHOD: &str = "arm swept through its travel";

/// The tensioner's range, and the arm holding the belt.
#[derive(Clone, Debug)]
pub(super) struct Held {
    /// The range.
    pub(super) take_up: TakeUp,
    /// The position that counts, nearest to the drawn one first, and any other.
    pub(super) fits: Vec<Fit>,
    /// dL/dα where the arm stands: with the belt, or as drawn.
    pub(super) growth: Option<(Angle, Length)>,
    /// From pivot to pulley.
    pub(super) arm: Length,
}

impl Held {
    /// The arm for a belt: angle and share of the sweep, or the sentence why not.
    pub(super) fn arm_for(&self, bench: &Bench, belt: Length) -> Result<(Angle, Ratio), String> {
        let Some(arm) = bench.arm() else {
            return Err(TensionerFault::NoSuchPulley.to_string());
        };
        let mut fits = self.take_up.fits(&arm, belt).map_err(|fault| fault.to_string())?;
        nearest_first(&mut fits, arm.drawn_at());
        fits.first()
            .map(|fit| (fit.angle, fit.share))
            .ok_or_else(|| TensionerFault::NoPosition.to_string())
    }
}

/// Sweeps the arm and fits the belt; says where either fails.
pub(super) fn held(bench: &mut Bench) -> Option<Held> {
    let read = bench.clone();
    let arm = read.arm()?;
    let take_up = match take_up::take_up(&arm) {
        Ok(take_up) => take_up,
        Err(fault) => {
            bench.fault("tensioner", fault);
            return None;
        }
    };
    let mut fits = Vec::new();
    if let Some(belt) = read.belt {
        match take_up.fits(&arm, belt.effective_length()) {
            Ok(found) => fits = found,
            Err(fault) => bench.fault("belt", fault),
        }
    }
    nearest_first(&mut fits, arm.drawn_at());
    let drawn = || {
        read.route
            .as_ref()
            .map(|route| (arm.drawn_at(), arm.growth(route, arm.drawn_at())))
    };
    Some(Held {
        growth: fits.first().map(|fit| (fit.angle, fit.growth)).or_else(drawn),
        arm: arm.length(),
        take_up,
        fits,
    })
}

fn nearest_first(fits: &mut [Fit], drawn: Angle) {
    let off = |fit: &Fit| (in_radians(fit.angle) - in_radians(drawn)).abs();
    fits.sort_by(|one, other| off(one).total_cmp(&off(other)));
}

pub(super) fn findings(bench: &mut Bench, held: Option<&Held>) -> Vec<Finding> {
    let Some(held) = held else {
        return Vec::new();
    };
    let mut findings = vec![range(bench, held)];
    findings.extend(most(held));
    findings.extend(position(bench, held));
    findings.extend(per_degree(held));
    if let (Some(fit), Some(belt)) = (held.fits.first(), bench.belt) {
        findings.extend(left(fit, belt.effective_length()));
        findings.extend(after(bench, held, fit, belt.effective_length()));
    }
    findings.extend(springs(bench, held));
    findings
}

fn named(id: &'static str, name: &'static str, amount: impl Into<Amount>, unit: Unit, working: Working) -> Finding {
    Finding::new(Id::Named(id), name, amount, unit, METHOD, working)
}

fn working(equation: &'static str, terms: Vec<Term>, source: Source) -> Working {
    Working {
        equation,
        terms,
        source,
    }
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
        working("L(α₁) and L(α₂)", terms, source::drive::TAKE_UP),
    );
    finding.style = Style::Decimal { step: 0.1 };
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
    let working = working("L(α) where dL/dα = 0", terms, source::drive::TAKE_UP);
    let mut finding = named(
        "take-up-most",
        "longest route of the sweep",
        take_up.longest,
        Unit::Millimetre,
        working,
    );
    finding.style = Style::Decimal { step: 0.1 };
    Some(finding)
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
        let working = working("L(α) = L", of_belt(), source::drive::TAKE_UP);
        let mut finding = Finding::new(id, name, angle, Unit::Degree, METHOD, working);
        finding.style = Style::Decimal { step: 0.1 };
        finding
    };
    let mut first = angle(Id::Named("arm-angle"), "arm angle with this belt", fit.angle);
    let cautions = [
        (held.fits.len() > 1, caution::drive::SEVERAL_POSITIONS),
        (Some(belt.ribs) != bench.ribs, caution::drive::RIBS_DIFFER),
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
    let working = working("|α − α_slack| / |α₂ − α₁|", terms, source::drive::TAKE_UP);
    let mut finding = named(id, name, fit.share, Unit::Percent, working);
    let near = fit.share.get::<crate::quantity::exact::ratio::Number>() > LITTLE_LEFT;
    finding.cautions.extend(told([(near, caution::drive::NEAR_STOP)]));
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
    let working = working("|dL/dα|·π/180", terms, source::drive::TAKE_UP);
    let amount = metres(in_metres(growth).abs() * degree);
    Some(named(
        "belt-per-degree",
        "belt per degree of arm",
        amount,
        Unit::Millimetre,
        working,
    ))
}

/// What is left until the arm runs out.
fn left(fit: &Fit, belt: Length) -> Vec<Finding> {
    let term = || {
        vec![Term::new(
            "ΔL",
            "belt the arm can still take up",
            fit.remaining,
            Unit::Millimetre,
        )]
    };
    let turn = wear::ribbed_turn(&fit.route);
    let mut seat_terms = term();
    seat_terms.push(Term::new("Σθ", "ribbed wraps together, radian", turn, Unit::Number));
    let tenth = metres(1e-4);
    vec![
        named(
            "belt-left",
            "growth until the arm runs out",
            fit.remaining,
            Unit::Millimetre,
            working("L_max − L", Vec::new(), source::drive::TAKE_UP),
        ),
        named(
            "stretch-left",
            "stretch until the arm runs out",
            wear::stretch_left(fit.remaining, belt),
            Unit::Percent,
            working("ΔL/L", term(), source::drive::TAKE_UP),
        ),
        named(
            "seat-left",
            "wear into the grooves until the arm runs out",
            wear::seat_left(fit.remaining, &fit.route),
            Unit::Millimetre,
            working("ΔL/Σθ", seat_terms, source::drive::SEAT),
        ),
        named(
            "seat-frees",
            "belt freed by 0.1 mm of seat wear",
            tenth * turn,
            Unit::Millimetre,
            working(
                "w·Σθ",
                vec![Term::new("Σθ", "ribbed wraps together, radian", turn, Unit::Number)],
                source::drive::SEAT,
            ),
        ),
    ]
}

/// Where the arm stands once the belt has stretched and sunk by what was typed.
fn after(bench: &mut Bench, held: &Held, fit: &Fit, belt: Length) -> Vec<Finding> {
    let (stretch, seat) = (bench.value("stretch"), bench.value("seat"));
    let key = if stretch.is_some() { "stretch" } else { "seat" };
    if stretch.is_none() && seat.is_none() {
        return Vec::new();
    }
    let none = (Ratio::new::<crate::quantity::exact::ratio::Number>(0.0), metres(0.0));
    let stretch = if let Some(Quantity::Ratio(stretch)) = stretch {
        stretch
    } else {
        none.0
    };
    let seat = if let Some(Quantity::Length(seat)) = seat {
        seat
    } else {
        none.1
    };
    let grown = belt + wear::growth(belt, stretch, seat, &fit.route);
    match held.arm_for(bench, grown) {
        Ok((angle, share)) => {
            let terms = || {
                vec![
                    Term::new("ε", "stretch", stretch, Unit::Percent),
                    Term::new("w", "seat wear", seat, Unit::Millimetre),
                    Term::new("L′", "length the arm must hold", grown, Unit::Millimetre),
                ]
            };
            let equation = "L(α) = L·(1 + ε) + w·Σθ";
            let angle = named(
                "arm-angle-worn",
                "arm angle then",
                angle,
                Unit::Degree,
                working(equation, terms(), source::drive::SEAT),
            );
            let share = named(
                "arm-share-worn",
                "travel used then",
                share,
                Unit::Percent,
                working(equation, terms(), source::drive::SEAT),
            );
            vec![angle, share]
        }
        Err(sentence) => {
            bench.fault(key, sentence);
            Vec::new()
        }
    }
}

/// Spring torque to strand tension, at the arm's place.
fn springs(bench: &Bench, held: &Held) -> Vec<Finding> {
    let Some((angle, growth)) = held.growth else {
        return Vec::new();
    };
    let terms = |own: Term| {
        vec![
            own,
            Term::new("dL/dα", "per radian", growth, Unit::Millimetre),
            Term::new("α", "arm angle", angle, Unit::Degree),
        ]
    };
    let mut findings = Vec::new();
    if let (Some(Quantity::Torque(torque)), Some(tension)) = (bench.value("spring"), spring_tension(bench, held)) {
        let own = Term::new("M", "spring torque", torque, Unit::NewtonMetre);
        let working = working("T = M/|dL/dα|", terms(own), source::drive::VIRTUAL_WORK);
        findings.push(named(
            "spring-tension",
            "strand tension the spring holds",
            tension,
            Unit::Newton,
            working,
        ));
    }
    if let Some(tension) = super::strands::measured(bench) {
        let own = Term::new("T", "strand tension measured", tension, Unit::Newton);
        let working = working("M = T·|dL/dα|", terms(own), source::drive::VIRTUAL_WORK);
        let torque = spring::torque(tension, growth);
        findings.push(named(
            "spring-torque",
            "spring torque of the strand measured",
            torque,
            Unit::NewtonMetre,
            working,
        ));
    }
    findings
}

/// The strand tension the spring typed holds, where the arm stands.
pub(super) fn spring_tension(bench: &Bench, held: &Held) -> Option<Force> {
    let (_, growth) = held.growth?;
    match bench.value("spring") {
        Some(Quantity::Torque(torque)) => spring::tension(torque, growth).ok(),
        _ => None,
    }
}

/// The angle of a degree count, for drawings.
pub(super) fn degrees(angle: Angle) -> f64 {
    in_radians(angle) / in_radians(radians(core::f64::consts::PI)) * 180.0
}
