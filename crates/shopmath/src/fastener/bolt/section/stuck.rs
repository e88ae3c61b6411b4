//! Section Stuck: how hard to turn a seized bolt, and what heat does.

use super::{Section, found, length, stress};
use crate::caution::{Caution, fastener as cautions};
use crate::fastener::bolt::common::{Common, Stiffness};
use crate::fastener::bolt::field::SectionId;
use crate::fastener::class::Class;
use crate::fastener::heat::{ROOM, clamp_change, clearance};
use crate::fastener::material::{Family, Material, Temper};
use crate::fastener::si::{kelvins, metres_per_newton};
use crate::fastener::stuck::{hand_force, stop, twist_break, twist_yield};
use crate::fastener::thread::Thread;
use crate::fastener::tighten::head_share;
use crate::quantity::print::{self, plain};
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Term, Working};
use crate::source::fastener as sources;
use uom::si::f64::{TemperatureCoefficient, TemperatureInterval, Torque};

/// °C from which an aged alloy loses strength, and from which it does so within a job.
const AGED: [f64; 2] = [150.0, 175.0];
/// °C above which castings of light alloy soften (common practice, no source), and about where bolts of
/// classes 8.8 to 12.9 are tempered at the least (ISO 898-1: 425, or 380 for some; from memory).
const SOFT: f64 = 200.0;
const TEMPERED: f64 = 400.0;
/// °C that seals of NBR, EPDM and FKM stand for long.
const SEALS: [(f64, Caution); 3] = [
    (120.0, cautions::SEAL_NBR),
    (150.0, cautions::SEAL_EPDM),
    (200.0, cautions::SEAL_FKM),
];
const NOTE_TWIST: &str =
    "While the head is still pressed down it rubs, and a wrench reads more than what twists the bolt.";
const NOTE_NO_BREAK: &str =
    "No torque that twists the bolt off: ISO 898-7 covers M1 to M10 in classes 8.8 to 12.9 only.";
const NOTE_ROOM: &str = "Temperatures count from a room at 20 °C, with bolt and part equally warm. A part heated alone opens further; a bolt heated alone closes.";

pub(in crate::fastener::bolt) fn section(common: &mut Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Stuck, "Stuck");
    let resolved = common.resolved;
    section.want("thread", &resolved.thread);
    section.want_unless("class", resolved.class_typed);
    section.want("lever", &resolved.lever);
    section.want("heat", &resolved.heat);
    if let (Some(read), Some(class)) = (resolved.thread.given(), resolved.class.given()) {
        twists(common, &mut section, &read.thread, &class);
        if let Some(change) = resolved.heat.given() {
            warm(common, &mut section, &read.thread, &class, change);
        }
    }
    if let Some(change) = resolved.heat.given() {
        let parts = [resolved.into.given(), resolved.clamped.given()];
        section.cautions.extend(heat_cautions(change, &parts));
        section.notes.push(NOTE_ROOM.into());
    }
    section
}

fn twists(common: &mut Common<'_>, section: &mut Section, thread: &Thread, class: &Class) {
    let unit = common.resolved.torque_unit;
    let Some(yields) = common.keep("thread", twist_yield(thread, class.yield_strength)) else {
        return;
    };
    let stops = stop(yields);
    let stop_terms = vec![Term::new("M", "torque that twists the bolt past yield", yields, unit)];
    section.findings.push(found(
        "stop-torque",
        "once the head turns free, stop at",
        stops,
        unit,
        ("80 % of twist-yield", Working::new("0.8·M", stop_terms, sources::STOP)),
    ));
    if let Some(lever) = common.resolved.lever.given()
        && let Some(force) = common.keep("lever", hand_force(stops, lever))
    {
        let terms = vec![
            Term::new("M", "torque to stop at", stops, unit),
            length("l", "bolt to hand", lever),
        ];
        section.findings.push(found(
            "hand-force",
            "that is, at the hand",
            force,
            Unit::Newton,
            ("lever arm", Working::new("F = M/l", terms, sources::LEVER)),
        ));
    }
    let yield_terms = vec![
        length("d3", "root diameter", thread.root_diameter()),
        stress("Rp", class.name, class.yield_strength).taken_from(class.source),
    ];
    section.findings.push(found(
        "twist-yield-torque",
        "twists the bolt for good at",
        yields,
        unit,
        (
            "pure twist of the core",
            Working::new("(π/16)·d3³·Rp/√3", yield_terms, sources::TWIST_YIELD),
        ),
    ));
    let breaks = twist_break(thread, class);
    if breaks.is_none() {
        section.notes.push(NOTE_NO_BREAK.into());
    }
    section.findings.extend(breaks.map(|breaks| {
        let mut terms = vec![
            length("d3,min", "smallest root diameter", thread.external.root_min),
            stress("Rm", class.name, class.tensile).taken_from(class.source),
        ];
        terms.extend(
            class
                .twist_break
                .map(|share| Term::new("X", "share of the class", share, Unit::Number)),
        );
        found(
            "twist-break-torque",
            "twists the bolt off from",
            breaks,
            unit,
            (
                "ISO 898-7",
                Working::new("X·Rm·(π/16)·d3,min³", terms, sources::TWIST_BREAK),
            ),
        )
    }));
    section.cautions.push(cautions::TWIST_IS_NO_SPEC);
    section.notes.push(NOTE_TWIST.into());
    section.notes.extend(tightened_above(common, stops));
}

/// What the limit means beside a tightening torque above it: the wrench then also turned against friction
/// under the head.
fn tightened_above(common: &Common<'_>, stops: Torque) -> Option<String> {
    let torque = common.applied?.high;
    let bolt = common.bolt.filter(|_| torque > stops)?;
    let share = head_share(&bolt.thread, &bolt.head, bolt.friction.middle());
    Some(format!(
        "It is tightened with {}; about {} % of that is friction under the head, which twists nothing.",
        print::quantity(torque.into(), common.resolved.torque_unit),
        plain(share.value * 100.0, 0)
    ))
}

fn warm(common: &mut Common<'_>, section: &mut Section, thread: &Thread, class: &Class, change: TemperatureInterval) {
    let resolved = common.resolved;
    let bolt = class.metal.expansion();
    section.want("into", &resolved.into);
    if let Some(into) = resolved.into.given()
        && let Some(grown) = common.keep("heat", clearance(into.expansion, bolt, thread.diameter, change))
    {
        let mut terms = expansion_terms("α hole", &into, class, change);
        terms.push(length("d", "diameter", thread.diameter));
        section.findings.push(found(
            "heat-clearance",
            "thread opens on diameter by",
            grown,
            Unit::Micrometre,
            (
                "both warm",
                Working::new("(α hole − α bolt)·d·ΔT", terms, sources::HEAT),
            ),
        ));
    }
    section.want("grip", &resolved.grip);
    if let (Some(stiffness), Some(clamped)) = (common.stiffness, resolved.clamped.given()) {
        section
            .findings
            .extend(clamp_changes(common, class, &clamped, change, &stiffness));
    }
}

/// The change of clamp load with the stiffness of bolt and parts.
fn clamp_changes(
    common: &mut Common<'_>,
    class: &Class,
    clamped: &Material,
    change: TemperatureInterval,
    stiffness: &Stiffness,
) -> Vec<Finding> {
    let (bolt, parts) = (stiffness.body_resilience.total, stiffness.parts_resilience.total);
    let joint = metres_per_newton(bolt.value + parts.value);
    let grip = stiffness.parts.grip;
    let answer = clamp_change(clamped.expansion, class.metal.expansion(), change, grip, joint);
    let Some(force) = common.keep("heat", answer) else {
        return Vec::new();
    };
    let mut terms = expansion_terms("α parts", clamped, class, change);
    terms.extend([
        length("lK", "grip", grip),
        Term::new("δS", "resilience of the bolt", bolt, Unit::MicrometrePerKilonewton),
        Term::new("δP", "resilience of the parts", parts, Unit::MicrometrePerKilonewton),
    ]);
    let name = if force.value > 0.0 {
        "clamp load rises by"
    } else {
        "clamp load changes by"
    };
    let working = Working::new("ΔF = (α parts − α bolt)·ΔT·lK/(δS + δP)", terms, sources::HEAT);
    vec![found(
        "heat-clamp-change",
        name,
        force,
        Unit::Kilonewton,
        ("with the stiffness of the joint", working),
    )]
}

/// An expansion shown as a ratio per kelvin.
fn expansion_terms(symbol: &'static str, part: &Material, class: &Class, change: TemperatureInterval) -> Vec<Term> {
    let per_kelvin = |coefficient: TemperatureCoefficient| -> Quantity { (coefficient * kelvins(1.0)).into() };
    vec![
        Term::new(symbol, part.name, per_kelvin(part.expansion), Unit::Number).taken_from(part.source),
        Term::new("α bolt", class.name, per_kelvin(class.metal.expansion()), Unit::Number)
            .taken_from(class.metal.source()),
        Term::new("ΔT", "rise of temperature", change, Unit::KelvinDifference),
    ]
}

fn heat_cautions(change: TemperatureInterval, parts: &[Option<Material>]) -> Vec<Caution> {
    let celsius = ROOM + change.value;
    let has = |temper: Temper| parts.iter().flatten().any(|part| part.temper == temper);
    let mut found = Vec::new();
    if change > kelvins(0.0) {
        found.push(cautions::HOT_WORK);
        if has(Temper::Magnesium) {
            found.push(cautions::MAGNESIUM_BURNS);
        }
    }
    if has(Temper::Aged) {
        if celsius >= AGED[1] {
            found.push(cautions::TEMPER_LOST);
        } else if celsius >= AGED[0] {
            found.push(cautions::TEMPER_AT_RISK);
        }
    }
    let light = |part: &Material| part.family == Family::LightAlloy;
    if celsius > SOFT && parts.iter().flatten().any(light) {
        found.push(cautions::LIGHT_ALLOY_SOFTENS);
    }
    if celsius > TEMPERED {
        found.push(cautions::BOLT_SOFTENS);
    }
    found.extend(
        SEALS
            .iter()
            .filter(|(limit, _)| celsius > *limit)
            .map(|(_, caution)| *caution),
    );
    found
}
