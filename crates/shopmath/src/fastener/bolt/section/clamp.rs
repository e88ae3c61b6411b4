//! Section Clamp load: torque to clamp load, share of yield, the torque at 90 % of yield.

use super::amount;
use crate::fastener::bolt::assess::{Common, Section};
use crate::fastener::bolt::field::SectionId;
use crate::fastener::class::Class;
use crate::fastener::friction::FrictionRange;
use crate::fastener::si::{newtons, ratio};
use crate::fastener::thread::{Standard, Thread};
use crate::fastener::tighten::{Applied, Bolt, clamp_at, nut_factor, torque_for, torque_per_clamp, twist_factor};
use crate::quantity::Unit;
use crate::result::{Amount, Finding, Id, Term, Working};
use crate::source::{Source, fastener as sources};

const METHOD: &str = "VDI 2230 friction";

pub(in crate::fastener::bolt) fn section(common: &mut Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Clamp, "Clamp load");
    let resolved = common.resolved;
    section.want("thread", &resolved.thread);
    section.want("class", &resolved.class);
    section.want("spec", &resolved.spec);
    let class = resolved.class.given();
    if let Some(bolt) = common.bolt {
        if let (Some(applied), Some(clamp)) = (common.applied, common.clamp) {
            section
                .findings
                .push(clamp_load(&bolt, applied, amount(clamp), resolved.torque_unit));
        }
        if let (Some(class), Some(share)) = (class, common.share) {
            section.findings.push(yield_use(&bolt, &class, common, amount(share)));
        }
        if let Some(class) = class {
            section.findings.extend(at_90(&bolt, &class, resolved.torque_unit));
        }
        section.findings.push(factor(&bolt));
    }
    if let Some(read) = resolved.thread.given() {
        section
            .findings
            .extend(class.and_then(|class| proof_load(&read.thread, &class)));
        section.findings.push(stress_area(&read.thread));
    }
    section
}

/// A coefficient of friction as a term.
fn friction_term(symbol: &'static str, meaning: &'static str, range: FrictionRange) -> Term {
    let amount = Amount::range(range.low, range.middle(), range.high);
    Term::new(symbol, meaning, amount, Unit::Number)
}

fn geometry_terms(thread: &Thread) -> Vec<Term> {
    vec![
        Term::new("P", "pitch", thread.pitch, Unit::Millimetre),
        Term::new("d2", "pitch diameter", thread.pitch_diameter(), Unit::Millimetre),
    ]
}

fn clamp_load(bolt: &Bolt, applied: Applied, amount: Amount, unit: Unit) -> Finding {
    let mut terms = vec![
        Term::new(
            "M",
            "torque",
            if applied.low < applied.high {
                Amount::range(applied.low, (applied.low + applied.high) * 0.5, applied.high)
            } else {
                Amount::from(applied.low)
            },
            unit,
        ),
        Term::new("±", "tool tolerance", applied.tool, Unit::Percent),
    ];
    terms.extend(geometry_terms(&bolt.thread));
    terms.push(friction_term("μG", "friction in the thread", bolt.friction.thread));
    terms.push(friction_term("μK", "friction under the head", bolt.friction.head));
    terms.push(Term::new(
        "DKm",
        "friction diameter of the head, (dW + dh)/2",
        bolt.head.friction_diameter(),
        Unit::Millimetre,
    ));
    let working = Working {
        equation: "F = M / [P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]; low at the largest friction and torque × (1 − tool), high at the smallest and torque × (1 + tool)",
        terms,
        source: sources::TIGHTENING,
    };
    Finding::new(
        Id::Named("clamp"),
        "clamp load",
        amount,
        Unit::Kilonewton,
        METHOD,
        working,
    )
}

fn yield_use(bolt: &Bolt, class: &Class, common: &Common<'_>, amount: Amount) -> Finding {
    let mut terms = geometry_terms(&bolt.thread);
    if let Some(clamp) = common.clamp {
        terms.insert(0, Term::new("F", "clamp load", super::amount(clamp), Unit::Kilonewton));
    }
    terms.push(Term::new(
        "d0",
        "stress diameter",
        bolt.thread.stress_diameter(),
        Unit::Millimetre,
    ));
    terms.push(friction_term("μG", "friction in the thread", bolt.friction.thread));
    terms.push(Term::new(
        "As",
        "stress area",
        bolt.thread.stress_area(),
        Unit::SquareMillimetre,
    ));
    terms.push(Term::new("Rp", class.name, class.yield_strength, Unit::Megapascal));
    let working = Working {
        equation: "ν = F·√(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) + 1.155·μG)]²) / (As·Rp)",
        terms,
        source: sources::YIELD_SHARE,
    };
    let mut finding = Finding::new(
        Id::Named("yield-use"),
        "share of yield",
        amount,
        Unit::Percent,
        "tension with twist",
        working,
    );
    finding.style = crate::result::Style::Decimal { step: 0.1 };
    finding
}

/// Clamp load and torque at 90 % of yield, at middling friction.
fn at_90(bolt: &Bolt, class: &Class, unit: Unit) -> [Finding; 2] {
    let friction = bolt.friction.middle();
    let clamp = clamp_at(&bolt.thread, class.yield_strength, friction.thread, ratio(0.9));
    let torque = torque_for(&bolt.thread, &bolt.head, friction, clamp);
    let clamp_working = Working {
        equation: "F90 = 0.9·As·Rp / √(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) + 1.155·μG)]²)",
        terms: vec![
            Term::new("As", "stress area", bolt.thread.stress_area(), Unit::SquareMillimetre),
            Term::new("Rp", class.name, class.yield_strength, Unit::Megapascal),
            Term::new("μG", "middling friction in the thread", friction.thread, Unit::Number),
            Term::new(
                "√…",
                "what twist adds",
                ratio(twist_factor(&bolt.thread, friction.thread)),
                Unit::Number,
            ),
        ],
        source: sources::YIELD_SHARE,
    };
    let torque_working = Working {
        equation: "M90 = F90·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]",
        terms: vec![
            Term::new("F90", "clamp load at 90 % of yield", clamp, Unit::Kilonewton),
            Term::new(
                "[…]",
                "torque per clamp load at middling friction",
                torque_per_clamp(&bolt.thread, &bolt.head, friction),
                Unit::Millimetre,
            ),
        ],
        source: sources::TIGHTENING,
    };
    [
        Finding::new(
            Id::Named("torque-90"),
            "torque at 90 % of yield",
            torque,
            unit,
            METHOD,
            torque_working,
        ),
        Finding::new(
            Id::Named("clamp-90"),
            "clamp load at 90 % of yield",
            clamp,
            Unit::Kilonewton,
            "tension with twist",
            clamp_working,
        ),
    ]
}

fn factor(bolt: &Bolt) -> Finding {
    let friction = bolt.friction.middle();
    let working = Working {
        equation: "K = M/(F·d)",
        terms: vec![
            Term::new(
                "M/F",
                "torque per clamp load at middling friction",
                torque_per_clamp(&bolt.thread, &bolt.head, friction),
                Unit::Millimetre,
            ),
            Term::new("d", "diameter", bolt.thread.diameter, Unit::Millimetre),
        ],
        source: sources::NUT_FACTOR,
    };
    Finding::new(
        Id::Named("nut-factor"),
        "nut factor K, to compare",
        nut_factor(&bolt.thread, &bolt.head, friction),
        Unit::Number,
        "from the friction model",
        working,
    )
}

fn proof_load(thread: &Thread, class: &Class) -> Option<Finding> {
    let proof = class.proof?;
    let working = Working {
        equation: "Fp = As·Sp",
        terms: vec![
            Term::new("As", "stress area", thread.stress_area(), Unit::SquareMillimetre),
            Term::new("Sp", class.name, proof, Unit::Megapascal),
        ],
        source: sources::PROOF,
    };
    let load = newtons(thread.stress_area().value * proof.value);
    Some(Finding::new(
        Id::Named("proof-load"),
        "proof load",
        load,
        Unit::Kilonewton,
        "stress area",
        working,
    ))
}

fn stress_area(thread: &Thread) -> Finding {
    let source: Source = match thread.standard {
        Standard::Metric => sources::METRIC_THREAD,
        Standard::Unified => sources::UNIFIED_THREAD,
    };
    let working = Working {
        equation: match thread.standard {
            Standard::Metric => "As = π/4·((d2 + d3)/2)²",
            Standard::Unified => "At = π/4·(D − 0.974279·P)²",
        },
        terms: vec![
            Term::new("d", "diameter", thread.diameter, Unit::Millimetre),
            Term::new("P", "pitch", thread.pitch, Unit::Millimetre),
        ],
        source,
    };
    Finding::new(
        Id::Named("stress-area"),
        "stress area",
        thread.stress_area(),
        Unit::SquareMillimetre,
        source.publication,
        working,
    )
}
