//! Section Angle: stiffness of the joint, the clamp load an angle gives, yield and what lies past.

use super::{Section, amount, found, length, load, stress, whole_percent};
use crate::caution::fastener as cautions;
use crate::fastener::angle::{Joint as Turning, Turned};
use crate::fastener::bolt::common::{Common, Stiffness};
use crate::fastener::bolt::field::SectionId;
use crate::fastener::bolt::resolve::Joint;
use crate::fastener::resilience::{Form, frusta};
use crate::fastener::si::{metres, ratio};
use crate::fastener::tighten::Spread;
use crate::quantity::Unit;
use crate::quantity::compliance::Compliance;
use crate::result::{Finding, Term, Working};
use crate::source::fastener as sources;
use uom::si::f64::Angle;

const STIFFNESS: &str = "stiffness of bolt and parts, VDI 2230";

pub(in crate::fastener::bolt) fn section(common: &Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Angle, "Angle");
    let resolved = common.resolved;
    section.want("thread", &resolved.thread);
    section.want_unless("class", resolved.class_typed);
    section.want("spec", &resolved.spec);
    section.want("grip", &resolved.grip);
    if resolved.joint.given() == Some(Joint::Tapped) {
        section.want("into", &resolved.into);
    }
    let turns = resolved.spec.as_given().is_some_and(|spec| spec.turns());
    if turns {
        section.cautions.push(cautions::SINGLE_USE);
        if let Some(spec) = resolved.spec.as_given() {
            section.findings.push(turn(spec.turn()));
        }
    }
    if let (Some(turning), Some(turned)) = (common.turning, common.turned) {
        // A bolt that a torque alone takes past yield is somewhere no torque tells.
        if turns || !turned.torque_yields.high {
            section.findings.extend(clamp(common, &turning, &turned, turns));
        }
        section.findings.extend(past(common, &turning, &turned));
        if turns {
            section.findings.extend(scatter(common, &turned));
        }
        if turned.idle_torque {
            section.notes.push(NOTE_IDLE.into());
        }
        if turned.torque_yields.high {
            section.cautions.push(cautions::TORQUE_PASSES_YIELD);
        }
    }
    if let Some(stiffness) = common.stiffness {
        section.findings.extend(resiliences(common, &stiffness));
        section.notes.push(NOTE_STIFFNESS.into());
    }
    section
}

const NOTE_IDLE: &str = "A torque behind an angle is below what the bolt has by then: the wrench is there before it turns, and it adds nothing. Check the order of the spec.";
const NOTE_STIFFNESS: &str = "Resilience is how far a part gives under a load. Counts one solid part, a full-diameter shank and no washers or gaskets; each makes the joint softer, and the same angle then gives less clamp load.";

/// The whole angle of the spec.
fn turn(angle: Spread<Angle>) -> Finding {
    let angle = if angle.low < angle.high {
        amount(angle)
    } else {
        angle.mid.into()
    };
    let working = Working::new("sum of the angles of the spec", Vec::new(), sources::ANGLE);
    found(
        "angle-total",
        "turn after the torque",
        angle,
        Unit::Degree,
        ("as typed", working),
    )
}

fn joint_terms(turning: &Turning) -> Vec<Term> {
    vec![
        length("P", "pitch", turning.bolt.thread.pitch),
        compliance("δS", "resilience of the bolt", turning.bolt_resilience),
        compliance("δP", "resilience of the parts", turning.parts_resilience),
    ]
}

fn compliance(symbol: &'static str, meaning: &'static str, value: Compliance) -> Term {
    Term::new(symbol, meaning, value, Unit::MicrometrePerKilonewton)
}

/// What the spec comes to at its end. The share of yield stays at 1 past yield, for the clamp load does
/// once an angle has taken the bolt there; after a torque alone the section Clamp load has it in full.
fn clamp(common: &Common<'_>, turning: &Turning, turned: &Turned, turns: bool) -> Vec<Finding> {
    let mut terms = vec![
        Term::new(
            "F0",
            "clamp load after the torque",
            amount(turned.snug),
            Unit::Kilonewton,
        ),
        Term::new(
            "Fy",
            "clamp load at yield, which holds past it",
            amount(turned.yield_clamp),
            Unit::Kilonewton,
        ),
    ];
    terms.extend(joint_terms(turning));
    let clamp = Working::new("F = min(F0 + θ·P/(2π·(δS + δP)), Fy)", terms.clone(), sources::ANGLE);
    let share = Working::new(
        "ν = F/Fy at one friction; the ends over those of thread and head apart",
        vec![
            Term::new(
                "F",
                "clamp load after the angle",
                amount(turned.clamp),
                Unit::Kilonewton,
            ),
            Term::new(
                "Fy",
                "clamp load at yield",
                amount(turned.yield_clamp),
                Unit::Kilonewton,
            ),
        ],
        sources::YIELD_SHARE,
    );
    let torque_working = Working::new(
        "M = F·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]",
        vec![Term::new(
            "F",
            "clamp load after the angle",
            amount(turned.clamp),
            Unit::Kilonewton,
        )],
        sources::TIGHTENING,
    );
    let mut findings = vec![found(
        "angle-clamp",
        "clamp load at the end",
        amount(turned.clamp),
        Unit::Kilonewton,
        (STIFFNESS, clamp),
    )];
    if turns {
        findings.push(whole_percent(found(
            "angle-yield-use",
            "share of yield at the end",
            amount(turned.share),
            Unit::Percent,
            ("tension with twist", share),
        )));
    }
    findings.push(found(
        "angle-torque",
        "torque felt at the end",
        amount(turned.torque),
        common.resolved.torque_unit,
        ("VDI 2230 friction", torque_working),
    ));
    findings
}

fn past(common: &Common<'_>, turning: &Turning, turned: &Turned) -> Vec<Finding> {
    let mut terms = vec![
        load("Fy", "clamp load at yield, middling friction", turned.yield_clamp.mid),
        load("F0", "clamp load after the torque, middling friction", turned.snug.mid),
        common.of_class(stress("Rp", "yield strength", turning.yield_strength), |class| {
            class.source
        }),
    ];
    terms.extend(joint_terms(turning));
    let to_yield = Working::new("θy = 2π·(Fy − F0)·(δS + δP)/P, from the torque", terms, sources::ANGLE);
    let plastic = Working::new(
        "(θ − θy)·P/(2π), at middling friction; 0 before yield",
        vec![
            Term::new(
                "θy",
                "angle from the torque to yield",
                turned.angle_to_yield,
                Unit::Degree,
            ),
            length("P", "pitch", turning.bolt.thread.pitch),
        ],
        sources::PLASTIC,
    );
    let elastic = Working::new(
        "δS·F, at middling friction",
        vec![
            compliance("δS", "resilience of the bolt", turning.bolt_resilience),
            load("F", "clamp load at the end", turned.clamp.mid),
        ],
        sources::ANGLE,
    );
    // How far the torque alone has stretched it no torque tells.
    let told = !turned.torque_yields.mid;
    let mut findings = vec![found(
        "angle-to-yield",
        "angle from the torque to yield",
        turned.angle_to_yield,
        Unit::Degree,
        (STIFFNESS, to_yield),
    )];
    findings.extend(told.then(|| {
        found(
            "past-yield",
            "stretched for good",
            turned.past_yield.mid,
            Unit::Millimetre,
            ("clamp load held at yield", plastic),
        )
    }));
    findings.extend(common.stiffness.filter(|_| told).map(|stiffness| {
        let yielding = stiffness.body.yielding();
        let share = Working::new(
            "stretch for good over the length that yields; a full shank is stronger and does not",
            vec![
                length("s", "stretch for good", turned.past_yield.mid),
                length("l", "free thread and 0.5 d of engaged core", yielding),
            ],
            sources::PLASTIC,
        );
        found(
            "past-yield-share",
            "that is, of the length that yields",
            turned.past_yield.mid / yielding,
            Unit::Percent,
            ("over free thread and engaged core", share),
        )
    }));
    findings.push(found(
        "bolt-stretch",
        "elastic stretch of the bolt",
        metres(turning.bolt_resilience.value * turned.clamp.mid.value),
        Unit::Millimetre,
        ("stiffness of the bolt", elastic),
    ));
    findings
}

/// How wide the range is after the torque alone and after the angle.
fn scatter(common: &Common<'_>, turned: &Turned) -> Vec<Finding> {
    let half = |id, name, range| {
        let working = Working::new(
            "± = (high − low)/(2·mid)",
            vec![Term::new("F", "clamp load", amount(range), Unit::Kilonewton)],
            sources::ANGLE,
        );
        found(
            id,
            name,
            Turned::scatter(range),
            Unit::Percent,
            ("half the range over its middle", working),
        )
    };
    let alone = common
        .clamp
        .map(|clamp| half("torque-scatter", "range after torque alone, ±", clamp));
    let after = half("angle-scatter", "range after the angle, ±", turned.clamp);
    alone.into_iter().chain([after]).collect()
}

fn resiliences(common: &Common<'_>, stiffness: &Stiffness) -> Vec<Finding> {
    let Stiffness {
        body,
        body_resilience,
        parts,
        parts_resilience,
    } = stiffness;
    let bolt_terms = vec![
        compliance("head", "head", body_resilience.head),
        compliance("shank", "plain shank", body_resilience.shank),
        compliance("thread", "free thread over d3", body_resilience.free_thread),
        compliance("core", "engaged core over d3", body_resilience.engaged),
        compliance("held", "nut, or tapped hole with the block's E", body_resilience.held),
        common.of_class(stress("E", "Young's modulus of the bolt", body.modulus), |class| {
            class.metal.source()
        }),
    ];
    let parts_terms = vec![
        length("lK", "grip", parts.grip),
        common.of_head(length("dW", "bearing diameter", parts.bearing)),
        common.of_head(length("dh", "hole", parts.hole)),
        length("D_A", "outer diameter", parts.outer),
        stress("E", "Young's modulus of the parts", parts.modulus).taken_from(sources::MODULUS),
        Term::new(
            "tanφ",
            "slope of the cone",
            ratio(parts_resilience.tangent),
            Unit::Number,
        ),
    ];
    let (method, equation) = match parts_resilience.form {
        Form::Cone => (
            "VDI 2230 cone",
            "δP = 2·ln{[(dW + dh)(dW + w·lK·tanφ − dh)]/[(dW − dh)(dW + w·lK·tanφ + dh)]}/(w·E·π·dh·tanφ)",
        ),
        Form::ConeAndSleeve => (
            "VDI 2230 cone and sleeve",
            "δP = {2/(w·dh·tanφ)·ln[(dW + dh)(D_A − dh)/((dW − dh)(D_A + dh))] + 4/(D_A² − dh²)·[lK − (D_A − dW)/(w·tanφ)]}/(E·π)",
        ),
    };
    let mut findings = vec![
        found(
            "bolt-resilience",
            "resilience of the bolt",
            body_resilience.total,
            Unit::MicrometrePerKilonewton,
            (
                "VDI 2230",
                Working::new("δS = Σ l/(E·A)", bolt_terms, sources::RESILIENCE),
            ),
        ),
        found(
            "parts-resilience",
            "resilience of the parts",
            parts_resilience.total,
            Unit::MicrometrePerKilonewton,
            (method, Working::new(equation, parts_terms.clone(), sources::RESILIENCE)),
        ),
    ];
    let diameter = body.thread.diameter;
    let second = (!parts.tapped).then(|| frusta(parts.modulus, parts.grip, parts.bearing, diameter));
    if let (Some(Ok(total)), Some(_)) = (second, common.resolved.grip.given()) {
        findings.push(found(
            "parts-resilience-frusta",
            "resilience of the parts, by a second method",
            total,
            Unit::MicrometrePerKilonewton,
            (
                "Shigley's 30° frusta",
                Working::new(
                    "1/k = ln{[(1.155t + D − d)(D + d)]/[(1.155t + D + d)(D − d)]}/(0.5774·π·E·d), twice over half the grip",
                    parts_terms,
                    sources::FRUSTA,
                ),
            ),
        ));
    }
    findings
}
