//! Findings of the tensioner's spring against the strand, where the arm stands.

use super::Bench;
use super::held::{Held, named};
use crate::drive::spring;
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Term, Working};
use crate::source;

/// Spring torque to strand tension, and back, at the arm's place.
pub(super) fn findings(bench: &Bench, held: &Held) -> Vec<Finding> {
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
    if let (Some(Quantity::Torque(torque)), Some(tension)) = (bench.value("spring"), held.spring_tension(bench)) {
        let own = Term::new("M", "spring torque", torque, Unit::NewtonMetre);
        let working = Working::new("T = M/|dL/dα|", terms(own), source::drive::VIRTUAL_WORK);
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
        let working = Working::new("M = T·|dL/dα|", terms(own), source::drive::VIRTUAL_WORK);
        let torque = spring::torque(tension, growth);
        findings.push(named(
            "spring-torque",
            "spring torque of the strand measured",
            torque,
            Unit::NewtonMetre,
            working,
        ));
    }
    for finding in &mut findings {
        finding.method = held.method();
    }
    findings
}
