//! Section Clamp load: torque to clamp load, share of yield, the torque at 90 % of yield.

use super::{Section, amount, area, found, length, load, stress, whole_percent};
use crate::fastener::bolt::common::Common;
use crate::fastener::bolt::field::SectionId;
use crate::fastener::class::Class;
use crate::fastener::friction::FrictionRange;
use crate::fastener::si::{newtons, ratio};
use crate::fastener::thread::{Standard, Thread};
use crate::fastener::tighten::{Applied, Bolt, clamp_at, nut_factor, torque_for, torque_per_clamp, twist_factor};
use crate::quantity::Unit;
use crate::result::{Amount, Finding, Term, Working};
use crate::source::fastener as sources;

const FRICTION: &str = "VDI 2230 friction";
const TWIST: &str = "tension with twist";
const NOTE_LUBRICATION: &str =
    "What the spec says of oil or dry threads changes no figure here: choose it under Friction.";

pub(in crate::fastener::bolt) fn section(common: &Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Clamp, "Clamp load");
    let resolved = common.resolved;
    section.want("thread", &resolved.thread);
    section.want_unless("class", resolved.class_typed);
    section.want("spec", &resolved.spec);
    if resolved.lubrication_in_words {
        section.notes.push(NOTE_LUBRICATION.into());
    }
    let class = resolved.class.given();
    let turns = resolved.spec.as_given().is_some_and(|spec| spec.turns());
    if let Some(bolt) = common.bolt {
        if let (Some(applied), Some(clamp)) = (common.applied, common.clamp) {
            let mut finding = clamp_load(&bolt, applied, amount(clamp), resolved.torque_unit);
            if turns {
                finding.name = "clamp load after the torque alone, before the angle";
            }
            section.findings.push(finding);
        }
        if let (Some(class), Some(share)) = (class, common.share) {
            let mut finding = yield_use(&bolt, &class, common, amount(share));
            if turns {
                finding.name = "share of yield after the torque alone, before the angle";
            }
            section.findings.push(finding);
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
    let term = Term::new(symbol, meaning, amount, Unit::Number);
    let usual = range.usual();
    usual.map_or(term, |source| term.taken_from(source))
}

fn geometry_terms(thread: &Thread) -> [Term; 2] {
    [
        length("P", "pitch", thread.pitch),
        length("d2", "pitch diameter", thread.pitch_diameter()),
    ]
}

fn clamp_load(bolt: &Bolt, applied: Applied, amount: Amount, unit: Unit) -> Finding {
    let torque = if applied.low < applied.high {
        Amount::range(applied.low, (applied.low + applied.high) * 0.5, applied.high)
    } else {
        Amount::from(applied.low)
    };
    let [pitch, pitch_diameter] = geometry_terms(&bolt.thread);
    let terms = vec![
        Term::new("M", "torque", torque, unit),
        Term::new("±", "tool tolerance", applied.tool, Unit::Percent),
        pitch,
        pitch_diameter,
        friction_term("μG", "friction in the thread", bolt.friction.thread),
        friction_term("μK", "friction under the head", bolt.friction.head),
        length(
            "DKm",
            "mean of bearing and hole diameter",
            bolt.head.friction_diameter(),
        )
        .taken_from(bolt.head.source),
    ];
    let working = Working::new(
        "F = M / [P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]; low at the largest friction and torque × (1 − tool), high at the smallest and torque × (1 + tool)",
        terms,
        sources::TIGHTENING,
    );
    found("clamp", "clamp load", amount, Unit::Kilonewton, (FRICTION, working))
}

fn yield_use(bolt: &Bolt, class: &Class, common: &Common<'_>, share: Amount) -> Finding {
    let clamp = common
        .clamp
        .map(|clamp| Term::new("F", "clamp load", amount(clamp), Unit::Kilonewton));
    let terms = clamp
        .into_iter()
        .chain(geometry_terms(&bolt.thread))
        .chain([
            length("d0", "stress diameter", bolt.thread.stress_diameter()),
            friction_term("μG", "friction in the thread", bolt.friction.thread),
            area("As", "stress area", bolt.thread.stress_area()),
            stress("Rp", class.name, class.yield_strength).taken_from(class.source),
        ])
        .collect();
    let working = Working::new(
        "ν = F·√(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) + 1.155·μG)]²) / (As·Rp)",
        terms,
        sources::YIELD_SHARE,
    );
    whole_percent(found(
        "yield-use",
        "share of yield",
        share,
        Unit::Percent,
        (TWIST, working),
    ))
}

/// Torque and clamp load at 90 % of yield, at middling friction.
fn at_90(bolt: &Bolt, class: &Class, unit: Unit) -> [Finding; 2] {
    let friction = bolt.friction.middle();
    let clamp = clamp_at(&bolt.thread, class.yield_strength, friction.thread, ratio(0.9));
    let torque = torque_for(&bolt.thread, &bolt.head, friction, clamp);
    let twist = ratio(twist_factor(&bolt.thread, friction.thread));
    let clamp_working = Working::new(
        "F90 = 0.9·As·Rp / √(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) + 1.155·μG)]²)",
        vec![
            area("As", "stress area", bolt.thread.stress_area()),
            stress("Rp", class.name, class.yield_strength).taken_from(class.source),
            Term::new("μG", "middling friction in the thread", friction.thread, Unit::Number),
            Term::new("√…", "what twist adds", twist, Unit::Number),
        ],
        sources::YIELD_SHARE,
    );
    let per_clamp = torque_per_clamp(&bolt.thread, &bolt.head, friction);
    let torque_working = Working::new(
        "M90 = F90·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]",
        vec![
            load("F90", "clamp load at 90 % of yield", clamp),
            length("[…]", "torque per clamp load at middling friction", per_clamp).taken_from(bolt.head.source),
        ],
        sources::TIGHTENING,
    );
    [
        found(
            "torque-90",
            "torque at 90 % of yield",
            torque,
            unit,
            (FRICTION, torque_working),
        ),
        found(
            "clamp-90",
            "clamp load at 90 % of yield",
            clamp,
            Unit::Kilonewton,
            (TWIST, clamp_working),
        ),
    ]
}

fn factor(bolt: &Bolt) -> Finding {
    let friction = bolt.friction.middle();
    let per_clamp = torque_per_clamp(&bolt.thread, &bolt.head, friction);
    let working = Working::new(
        "K = M/(F·d)",
        vec![
            length("M/F", "torque per clamp load at middling friction", per_clamp).taken_from(bolt.head.source),
            length("d", "diameter", bolt.thread.diameter),
        ],
        sources::NUT_FACTOR,
    );
    found(
        "nut-factor",
        "nut factor K, to compare",
        nut_factor(&bolt.thread, &bolt.head, friction),
        Unit::Number,
        ("from the friction model", working),
    )
}

fn proof_load(thread: &Thread, class: &Class) -> Option<Finding> {
    let proof = class.proof?;
    let terms = vec![
        area("As", "stress area", thread.stress_area()),
        stress("Sp", class.name, proof).taken_from(class.source),
    ];
    Some(found(
        "proof-load",
        "proof load",
        newtons(thread.stress_area().value * proof.value),
        Unit::Kilonewton,
        ("stress area", Working::new("Fp = As·Sp", terms, sources::PROOF)),
    ))
}

fn stress_area(thread: &Thread) -> Finding {
    let (method, equation, source) = match thread.standard {
        Standard::Metric => ("ISO 898-1", "As = π/4·((d2 + d3)/2)²", sources::METRIC_THREAD),
        Standard::Unified => ("ASME B1.1", "At = π/4·(D − 0.974279·P)²", sources::UNIFIED_THREAD),
    };
    let terms = vec![
        length("d", "diameter", thread.diameter),
        length("P", "pitch", thread.pitch),
    ];
    found(
        "stress-area",
        "stress area",
        thread.stress_area(),
        Unit::SquareMillimetre,
        (method, Working::new(equation, terms, source)),
    )
}

#[cfg(test)]
mod tests {
    use super::NOTE_LUBRICATION;
    use crate::fastener::bolt::field::SectionId;
    use crate::fastener::bolt::{BoltText, assess, resolve};

    #[test]
    fn words_on_lubrication_are_seen_while_no_friction_is_given() {
        for (spec, mu, noted) in [
            ("60 N·m oiled", "", true),
            ("60 N·m (dry)", "", true),
            ("60 N·m (anti-seize)", "", true),
            ("60 N·m oiled", "0.10..0.16", false),
            ("Oil drain plug 60 N·m", "", false),
            ("60 N·m", "", false),
        ] {
            let mut text = BoltText::default();
            text.set("thread", "M10");
            text.set("spec", spec);
            text.set("mu", mu);
            let whole = assess(&resolve(&text));
            let clamp = whole.sections.iter().find(|section| section.id == SectionId::Clamp);
            let notes = &clamp.expect("the section").notes;
            assert_eq!(notes.iter().any(|note| note == NOTE_LUBRICATION), noted, "{spec}, {mu}");
        }
    }
}
