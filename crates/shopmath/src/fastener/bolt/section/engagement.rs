//! Section Thread engagement: how deep the bolt has to go, and what pulls the threads out.

use super::{Section, area, found, length, load, stress};
use crate::caution::fastener as cautions;
use crate::fastener::bolt::common::{Common, Hold};
use crate::fastener::bolt::field::SectionId;
use crate::fastener::bolt::resolve::Entry;
use crate::fastener::engagement::{Required, Strip, Weaker, boss_factor, break_load, external_area, internal_area};
use crate::fastener::material::Material;
use crate::fastener::si::{metres, newton_metres, ratio};
use crate::quantity::Unit;
use crate::result::{Finding, Term, Working};
use crate::source::fastener as sources;
use uom::si::f64::Length;

const NOTE_FULL_THREADS: &str = "Count full threads only: the bolt's chamfer and the hole's countersink do not hold.";
const NOTE_METHODS: &str = "Methods for thread strength differ by up to two times. These take the thinnest bolt in the widest hole the standard allows.";
const NOTE_INSERT: &str =
    "A wire thread insert is taken as long as the threads now engaged, in a hole tapped 1.3 pitches larger.";

pub(in crate::fastener::bolt) fn section(common: &Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Engagement, "Thread engagement");
    let resolved = common.resolved;
    section.want("thread", &resolved.thread);
    section.want_unless("class", resolved.class_typed);
    section.want("into", &resolved.into);
    if resolved.into.given().is_some() {
        section.want("engaged", &resolved.engaged);
    }
    if let Some(hold) = &common.hold {
        if let (Some(strip), Some(engaged)) = (hold.strip, resolved.engaged.given()) {
            section.findings.extend(strips(common, hold, &strip, engaged));
        }
        if common.outlasts_hole() {
            section.cautions.push(cautions::HOLE_IS_WEAKER);
        }
        section.findings.extend(lengths(hold, &resolved.engaged));
        if let (Some(insert), Some(engaged)) = (hold.with_insert, resolved.engaged.given()) {
            section.findings.push(with_insert(hold, &insert, engaged));
            section.notes.push(NOTE_INSERT.into());
        }
        section
            .notes
            .extend([NOTE_FULL_THREADS, NOTE_METHODS].map(String::from));
    }
    if let (Some(read), Some(class)) = (resolved.thread.given(), resolved.class.given()) {
        let terms = vec![
            area("As", "stress area", read.thread.stress_area()),
            stress("Rm", class.name, class.tensile).taken_from(class.source),
        ];
        section.findings.push(found(
            "break-load",
            "load that breaks the bolt",
            break_load(&read.thread, class.tensile),
            Unit::Kilonewton,
            ("stress area", Working::new("As·Rm", terms, sources::PROOF)),
        ));
    }
    section
}

fn strips(common: &Common<'_>, hold: &Hold, strip: &Strip, engaged: Length) -> Vec<Finding> {
    let mut findings = vec![found(
        "strip-load",
        "load that pulls the threads out",
        strip.load,
        Unit::Kilonewton,
        (weaker(strip), strip_working(hold, engaged)),
    )];
    if let Some(clamp) = common.final_clamp() {
        let terms = vec![
            load("strip", "load that pulls the threads out", strip.load),
            load("F", "top of the clamp range", clamp.high),
        ];
        findings.push(found(
            "strip-margin",
            "margin over the highest clamp load, times",
            strip.load / clamp.high,
            Unit::Number,
            (
                weaker(strip),
                Working::new("strip load / F high", terms, sources::ENGAGEMENT),
            ),
        ));
    }
    let broken = break_load(&hold.engagement.thread, hold.engagement.bolt_tensile);
    let terms = vec![
        load("strip", "load that pulls the threads out", strip.load),
        load("As·Rm", "load that breaks the bolt", broken),
    ];
    findings.push(found(
        "strip-over-break",
        "margin over the load that breaks the bolt, times",
        strip.load / broken,
        Unit::Number,
        (
            weaker(strip),
            Working::new("strip load / (As·Rm)", terms, sources::ENGAGEMENT),
        ),
    ));
    if let Some(bolt) = common.bolt {
        let lever = bolt.torque_per_clamp().high;
        let terms = vec![
            load("F", "load that pulls the threads out", strip.load),
            length("[…]", "torque per clamp load at the smallest friction", lever).taken_from(bolt.head.source),
        ];
        findings.push(found(
            "strip-torque",
            "torque that can pull the threads out",
            newton_metres(strip.load.value * lever.value),
            common.resolved.torque_unit,
            (
                "VDI 2230 friction, slippery end",
                Working::new(
                    "M = F·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]",
                    terms,
                    sources::TIGHTENING,
                ),
            ),
        ));
    }
    findings
}

fn weaker(strip: &Strip) -> &'static str {
    match strip.weaker {
        Weaker::Hole => "shear areas; the hole's thread is the weaker",
        Weaker::Bolt => "shear areas; the bolt's thread is the weaker",
    }
}

fn strip_working(hold: &Hold, engaged: Length) -> Working {
    let engagement = &hold.engagement;
    Working::new(
        "C1 times the least of A_Sn·τ (hole) and A_Ss·0.6·Rm (bolt); A_Sn = π·(Le/P)·Ds,min·[P/2 + (Ds,min − En,max)/√3], A_Ss = π·(Le/P)·Kn,max·[P/2 + (Es,min − Kn,max)/√3]",
        vec![
            length("Le", "full threads engaged", engaged),
            length(
                "Ds,min",
                "smallest major diameter of the bolt",
                engagement.thread.external.major.min,
            ),
            length(
                "En,max",
                "largest pitch diameter of the hole",
                engagement.thread.internal.pitch.max,
            ),
            length(
                "Es,min",
                "smallest pitch diameter of the bolt",
                engagement.thread.external.pitch.min,
            ),
            length(
                "Kn,max",
                "largest bore of the hole",
                engagement.thread.internal.minor.max,
            ),
            area(
                "A_Sn",
                "shear area of the hole's thread",
                internal_area(&engagement.thread, engaged),
            ),
            area(
                "A_Ss",
                "shear area of the bolt's thread",
                external_area(&engagement.thread, engaged),
            ),
            stress("τ", hold.material.name, engagement.hole_shear).taken_from(hold.material.source),
            boss_term(hold),
        ],
        sources::ENGAGEMENT,
    )
}

fn boss_term(hold: &Hold) -> Term {
    let factor = boss_factor(&hold.engagement.thread, hold.engagement.boss);
    Term::new("C1", "thin boss", factor.unwrap_or(ratio(1.0)), Unit::Number)
}

fn lengths(hold: &Hold, engaged: &Entry<Length>) -> Vec<Finding> {
    let unread = engaged.is_bad();
    let engaged = engaged.given();
    let Hold {
        engagement,
        material,
        required,
        ..
    } = hold;
    let thread = &engagement.thread;
    let turns_of = engaged.unwrap_or(required.length);
    let handbook = Working::new(
        "max(Le, J·Le); Le = 2·At/{C1·π·Kn,max·[1/2 + (Es,min − Kn,max)/(√3·P)]}, J = A_Ss·Rm,bolt/(A_Sn·Rm,hole)",
        required_terms(hold, required),
        sources::ENGAGEMENT,
    );
    let by_shear = Working::new(
        "A_Sn·τ·C1 = As·Rm",
        vec![
            area("As", "stress area", thread.stress_area()),
            stress("Rm", "tensile strength of the bolt", engagement.bolt_tensile).taken_from(hold.bolt_source),
            stress("τ", material.name, engagement.hole_shear).taken_from(material.source),
            boss_term(hold),
        ],
        sources::ENGAGEMENT,
    );
    let chamfer = Working::new("0.8·P", vec![length("P", "pitch", thread.pitch)], sources::CHAMFER);
    let turns = Working::new(
        "Le/P",
        vec![
            length("Le", "full threads", turns_of),
            length("P", "pitch", thread.pitch),
        ],
        sources::ENGAGEMENT,
    );
    let turns_name = if engaged.is_some() {
        "full threads engaged"
    } else {
        "full threads needed"
    };
    let mut findings = vec![
        found(
            "engagement-required",
            "full threads needed, length",
            required.length,
            Unit::Millimetre,
            ("handbook, by tensile strength", handbook),
        ),
        found(
            "engagement-chamfer",
            "add for chamfer and countersink",
            required.chamfer,
            Unit::Millimetre,
            ("VDI 2230", chamfer),
        ),
        found(
            "engagement-by-shear",
            "full threads needed, by a second method",
            required.by_shear,
            Unit::Millimetre,
            ("shear strength of the hole", by_shear),
        ),
        rule_of_thumb(thread.diameter, material),
    ];
    if !unread {
        findings.push(found(
            "engagement-turns",
            turns_name,
            turns_of / thread.pitch,
            Unit::Number,
            ("length over pitch", turns),
        ));
    }
    findings
}

fn required_terms(hold: &Hold, required: &Required) -> Vec<Term> {
    let thread = &hold.engagement.thread;
    vec![
        length(
            "Le",
            "so that the bolt breaks before its own thread strips",
            required.basic,
        ),
        Term::new(
            "J",
            "how much weaker the hole's thread is",
            required.weakness,
            Unit::Number,
        ),
        area("At", "stress area", thread.stress_area()),
        stress("Rm,bolt", "tensile strength of the bolt", hold.engagement.bolt_tensile).taken_from(hold.bolt_source),
        stress("Rm,hole", hold.material.name, hold.engagement.hole_tensile).taken_from(hold.material.source),
        boss_term(hold),
    ]
}

fn rule_of_thumb(diameter: Length, material: &Material) -> Finding {
    let times = material.family.rule_of_thumb();
    let working = Working::new(
        "1 d in steel, 1.5 d in cast iron, 2 d in aluminium and magnesium",
        vec![
            length("d", "diameter", diameter),
            Term::new("times", material.name, ratio(times), Unit::Number),
        ],
        sources::RULE_OF_THUMB,
    );
    found(
        "engagement-rule",
        "full threads by the rule of thumb",
        metres(diameter.value * times),
        Unit::Millimetre,
        ("rule of thumb", working),
    )
}

fn with_insert(hold: &Hold, insert: &Strip, engaged: Length) -> Finding {
    let working = Working::new(
        "as the strip load, with Ds,min and En,max of the hole 1.3·P larger",
        vec![
            length("Le", "full threads engaged", engaged),
            load("hole", "the larger thread in the hole", insert.hole),
            load("bolt", "the bolt's thread", insert.bolt),
            stress("τ", hold.material.name, hold.engagement.hole_shear).taken_from(hold.material.source),
        ],
        sources::INSERT,
    );
    found(
        "strip-load-insert",
        "load that pulls a wire thread insert out",
        insert.load,
        Unit::Kilonewton,
        (weaker(insert), working),
    )
}
