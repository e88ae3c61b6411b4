//! Findings of the strand: tension from its note, with what the second harmonic would mean.

use super::Bench;
use super::held::Held;
use crate::caution;
use crate::drive::profile::Profile;
use crate::drive::si::in_newtons;
use crate::drive::strand;
use crate::quantity::{Quantity, Unit};
use crate::result::{Amount, Finding, Id, Term, Working};
use crate::source;
use uom::si::f64::{Force, Frequency, Length, LinearMassDensity};

/// Measured over spring, between which the second harmonic is the likelier cause.
const LIKE_FOUR: core::ops::RangeInclusive<f64> = 3.0..=5.5;

/// What a PK belt is run at, newton for each rib, with room on both sides (common practice, no source).
/// A weak tensioner holds some 20, a new belt on fixed pulleys is set to some 130.
const USUAL: core::ops::RangeInclusive<f64> = 10.0..=200.0;

/// What is to be said of a tension that lies beyond what PK belts run at; of other profiles nothing
/// is known here.
pub(super) fn unlikely(bench: &Bench, tension: Force) -> Option<caution::Caution> {
    let ribs = bench.belt.map(|belt| belt.ribs).or(bench.ribs)?;
    let of_each = in_newtons(tension) / f64::from(ribs);
    (bench.profile == Some(Profile::Pk) && !USUAL.contains(&of_each)).then_some(caution::drive::TENSION_UNLIKELY)
}

/// The belt's mass per metre: typed, or low, middle and high for its ribs.
#[derive(Clone, Copy)]
pub(super) struct BeltMass {
    pub(super) mid: LinearMassDensity,
    pub(super) assumed: Option<(LinearMassDensity, LinearMassDensity)>,
}

/// The mass typed, or the one of such a belt.
pub(super) fn mass(bench: &Bench) -> Option<BeltMass> {
    if let Some(Quantity::LinearDensity(mid)) = bench.value("mass") {
        return Some(BeltMass { mid, assumed: None });
    }
    let misread = |key: &str| bench.faults.iter().any(|fault| fault.key == key);
    // Of a belt that cannot be read the ribs are unknown, whatever those of the drive.
    if misread("mass") || (bench.belt.is_none() && misread("belt")) {
        return None;
    }
    let (low, high) = bench.profile?.mass(bench.belt.map(|belt| belt.ribs).or(bench.ribs)?)?;
    Some(BeltMass {
        mid: 0.5 * (low + high),
        assumed: Some((low, high)),
    })
}

fn plucked(bench: &Bench) -> Option<(Length, Frequency)> {
    match (bench.value("strand"), bench.value("frequency")) {
        (Some(Quantity::Length(length)), Some(Quantity::Frequency(frequency))) => Some((length, frequency)),
        _ => None,
    }
}

/// The tension of the plucked strand.
pub(super) fn measured(bench: &Bench) -> Option<Force> {
    let (length, frequency) = plucked(bench)?;
    mass(bench).map(|mass| strand::tension(mass.mid, length, frequency))
}

pub(super) fn findings(bench: &Bench, held: Option<&Held>) -> Vec<Finding> {
    let (Some((length, frequency)), Some(mass)) = (plucked(bench), mass(bench)) else {
        return Vec::new();
    };
    let of = |mass: LinearMassDensity| strand::tension(mass, length, frequency);
    let working = |amount: Amount| Working {
        equation: "T = 4·m·L²·f²",
        terms: vec![
            Term::new("m", "mass per metre of the whole belt", amount, Unit::KilogramPerMetre),
            Term::new("L", "strand, tangent to tangent", length, Unit::Millimetre),
            Term::new("f", "frequency", frequency, Unit::Hertz),
        ],
        source: source::drive::STRAND,
    };
    let finding = |id: &'static str, name: &'static str, amount: Amount, mass: Amount| {
        Finding::new(
            Id::Named(id),
            name,
            amount,
            Unit::Newton,
            "vibrating string, no stiffness",
            working(mass),
        )
    };
    let tension = of(mass.mid);
    let mut first = finding("strand-tension", "strand tension", tension.into(), mass.mid.into());
    let spring = held.and_then(|held| held.spring_tension(bench));
    let likely = spring.is_some_and(|spring| LIKE_FOUR.contains(&(in_newtons(tension) / in_newtons(spring))));
    first.cautions.extend(unlikely(bench, tension));
    first.cautions.push(if likely {
        caution::drive::LIKELY_SECOND_HARMONIC
    } else {
        caution::drive::SECOND_HARMONIC
    });
    let quarter = strand::if_second_harmonic(tension);
    let mut findings = vec![first];
    if let Some((low, high)) = mass.assumed {
        let name = "strand tension over the mass of such belts";
        let (range, masses) = (
            Amount::range(of(low), tension, of(high)),
            Amount::range(low, mass.mid, high),
        );
        let mut bounds = finding("strand-tension-span", name, range, masses);
        bounds.cautions.push(caution::drive::MASS_ASSUMED);
        findings.push(bounds);
    }
    findings.push(finding(
        "strand-tension-second",
        "if the second harmonic was heard",
        quarter.into(),
        mass.mid.into(),
    ));
    findings
}
