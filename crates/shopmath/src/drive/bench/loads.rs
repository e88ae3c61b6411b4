//! Findings under load: tension round the loop, load on the hubs, reserve against slip.

use super::Bench;
use super::held::Held;
use super::strands::{mass, measured, unlikely};
use crate::caution;
use crate::drive::load::Load;
use crate::drive::pulley::Side;
use crate::drive::route::{Leg, Route};
use crate::drive::si::{in_newtons, in_ones, newtons};
use crate::drive::slip;
use crate::drive::tension::{self, Loop, Setting};
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Id, Term, Working};
use crate::source;
use uom::si::f64::{AngularVelocity, Force, Ratio};

/// Reserve below which a wet or oily belt slips (common practice).
const LITTLE: f64 = 1.5;

/// The name of the reserve where no load asks for it.
const IDLE: &str = "grip of its wrap, no load";

/// The fields that set the tension: a text in one of them that cannot be read leaves it unknown.
const SETS_TENSION: [&str; 6] = ["belt", "tensioner", "strand", "frequency", "mass", "spring"];

/// The loop under load, and what it was worked out from.
struct Loaded {
    around: Loop,
    pulls: Vec<Force>,
    setting: Force,
    assumed: bool,
    friction: Ratio,
    /// Whether that is the low end of a range.
    low_end: bool,
}

pub(super) fn findings(bench: &Bench, held: Option<&Held>) -> Vec<Finding> {
    let (Some(layout), Some(route), Some(loaded)) = (&bench.layout, &bench.route, loaded(bench, held)) else {
        return Vec::new();
    };
    let groove = layout.profile.groove_angle();
    let mut findings = vec![setting(bench, &loaded)];
    for (index, leg) in route.legs.iter().enumerate() {
        let arriving = loaded.around.spans[(index + route.legs.len() - 1) % route.legs.len()];
        let leaving = loaded.around.spans[index];
        let capacity = slip::capacity(loaded.friction, leg.wrap, leg.side, groove);
        findings.extend(capacity.map(|capacity| reserve(index + 1, leg, capacity, (arriving, leaving), &loaded)));
        findings.extend(pull(bench, index, leg, &loaded));
        findings.push(hub(index + 1, leg, (arriving, leaving), &loaded));
        findings.push(span(index + 1, leaving, &loaded));
    }
    findings
}

fn loaded(bench: &Bench, held: Option<&Held>) -> Option<Loaded> {
    let route = bench.route.as_ref()?;
    if bench.faults.iter().any(|fault| SETS_TENSION.contains(&fault.key)) {
        return None;
    }
    let (Some(Quantity::Rotation(speed)), Some(Quantity::Ratio(friction))) = (bench.value("rpm"), bench.value("mu"))
    else {
        return None;
    };
    let pulls = pulls(bench, route, speed)?;
    let (level, assumed) = level(bench, held)?;
    let setting = match bench.tensioner {
        Some(tensioner) => Setting::Tensioner {
            pulley: tensioner.pulley,
            tension: level,
        },
        None => Setting::Fixed { tension: level },
    };
    let centrifugal = tension::centrifugal(mass(bench)?.mid, route.belt_speed(speed));
    Some(Loaded {
        around: tension::around(route, &pulls, setting, centrifugal),
        pulls,
        setting: level,
        assumed,
        friction,
        low_end: bench.is_range("mu"),
    })
}

/// The tension the loop is set to: the strand measured, else the spring's, else the one assumed.
fn level(bench: &Bench, held: Option<&Held>) -> Option<(Force, bool)> {
    let known = measured(bench).or_else(|| held.and_then(|held| held.spring_tension(bench)));
    match (known, bench.value("tension")) {
        (Some(known), _) => Some((known, false)),
        (None, Some(Quantity::Force(assumed))) => Some((assumed, true)),
        _ => None,
    }
}

/// The pull of each pulley's load, zero for idlers.
fn pulls(bench: &Bench, route: &Route, speed: AngularVelocity) -> Option<Vec<Force>> {
    let Some(Quantity::Ratio(efficiency)) = bench.value("efficiency") else {
        return None;
    };
    let mut pulls = vec![newtons(0.0); route.legs.len()];
    for entry in bench.loads.as_ref()? {
        let pull = entry
            .load
            .pull(route.legs.get(entry.pulley)?, route.legs.first()?, speed, efficiency)?;
        *pulls.get_mut(entry.pulley)? = pull;
    }
    Some(pulls)
}

fn setting(bench: &Bench, loaded: &Loaded) -> Finding {
    let working = Working {
        // A tensioner's spring takes the belt's motion up; a fixed drive loses it from what was set.
        equation: if bench.tensioner.is_some() {
            "T′ = T at the tensioner's spans; m·v² is part of it"
        } else {
            "T′ = T − m·v²"
        },
        terms: vec![Term::new(
            "m·v²",
            "taken by the belt's own motion",
            loaded.around.centrifugal,
            Unit::Newton,
        )],
        source: source::drive::LOOP,
    };
    let method = "strand measured, else spring, else assumed";
    let mut finding = Finding::new(
        Id::Named("set-tension"),
        "tension the loop is set to",
        loaded.setting,
        Unit::Newton,
        method,
        working,
    );
    finding.cautions.extend(unlikely(bench, loaded.setting));
    if loaded.assumed {
        finding.cautions.push(caution::drive::TENSION_ASSUMED);
    }
    finding
}

fn reserve(number: usize, leg: &Leg, capacity: Ratio, spans: (Force, Force), loaded: &Loaded) -> Finding {
    let reserve = slip::reserve(capacity, spans.0, spans.1);
    let mut terms = strands(spans);
    let of_range = if loaded.low_end {
        "friction, the low end typed"
    } else {
        "friction"
    };
    terms.push(Term::new("μ", of_range, loaded.friction, Unit::Number));
    terms.push(Term::new("θ", "wrap", leg.wrap, Unit::Degree));
    terms.push(Term::new("e^…", "ratio the wrap can hold", capacity, Unit::Number));
    let working = Working {
        equation: match leg.side {
            Side::Rib => "e^(μθ/sin(α/2)) / (T′max/T′min), α = 40°",
            Side::Back => "e^(μθ) / (T′max/T′min)",
        },
        terms,
        source: source::drive::SLIP,
    };
    let id = Id::Numbered("slip-reserve", number);
    let method = "belt friction, wedge on the ribbed side only";
    // An idler asks nothing: what its wrap could hold is no reserve, and no warning.
    let pulls = in_newtons(spans.0 - spans.1).abs() > 1e-9;
    let name = if pulls { "slip reserve" } else { IDLE };
    let mut finding = Finding::new(id, name, reserve, Unit::Number, method, working);
    let share = in_ones(reserve);
    finding
        .cautions
        .extend(if in_newtons(spans.0).min(in_newtons(spans.1)) <= 0.0 {
            Some(caution::drive::GOES_SLACK)
        } else if share < 1.0 {
            Some(caution::drive::SLIPS)
        } else {
            (pulls && share < LITTLE).then_some(caution::drive::LITTLE_RESERVE)
        });
    finding
}

/// The pull of a pulley's load at the pitch line; none for idlers and the driver.
fn pull(bench: &Bench, index: usize, leg: &Leg, loaded: &Loaded) -> Option<Finding> {
    let entry = bench.loads.as_ref()?.iter().find(|entry| entry.pulley == index)?;
    let speed = match bench.value("rpm") {
        Some(Quantity::Rotation(speed)) => bench.route.as_ref()?.belt_speed(speed),
        _ => return None,
    };
    let of_speed = Term::new("v", "belt speed", speed, Unit::MetrePerSecond);
    let (equation, terms, source) = match entry.load {
        Load::Torque(torque) => {
            let torque = Term::new("M", "torque at its shaft", torque, Unit::NewtonMetre);
            let radius = Term::new("r", "pitch radius", leg.pitch_radius, Unit::Millimetre);
            ("F = M/r", vec![torque, radius], source::drive::LOAD)
        }
        Load::Power(power) => {
            let power = Term::new("P", "power it takes", power, Unit::Kilowatt);
            ("F = P/v", vec![power, of_speed], source::drive::LOAD)
        }
        Load::Electric { current, voltage } => {
            let mut terms = vec![
                Term::new("I", "current it gives", current, Unit::Ampere),
                Term::new("U", "voltage", voltage, Unit::Volt),
                of_speed,
            ];
            if let Some(Quantity::Ratio(efficiency)) = bench.value("efficiency") {
                terms.push(Term::new("η", "efficiency", efficiency, Unit::Percent));
            }
            ("F = U·I/(η·v)", terms, source::drive::ALTERNATOR)
        }
    };
    let working = Working {
        equation,
        terms,
        source,
    };
    let id = Id::Numbered("belt-pull", index + 1);
    let amount = *loaded.pulls.get(index)?;
    Some(Finding::new(
        id,
        "pull of its load",
        amount,
        Unit::Newton,
        "at the pitch line",
        working,
    ))
}

fn hub(number: usize, leg: &Leg, spans: (Force, Force), loaded: &Loaded) -> Finding {
    let hub = loaded.around.hubs[number - 1];
    let mut terms = strands(spans);
    terms.push(Term::new("θ", "wrap", leg.wrap, Unit::Degree));
    terms.push(Term::new("δ", "direction, from +x", hub.direction, Unit::Degree));
    let working = Working {
        equation: "R = |T′₂·d₂ − T′₁·d₁|",
        terms,
        source: source::drive::LOOP,
    };
    let id = Id::Numbered("hub-load", number);
    Finding::new(
        id,
        "load on the hub",
        hub.force,
        Unit::Newton,
        "sum of both spans",
        working,
    )
}

fn span(number: usize, pressing: Force, loaded: &Loaded) -> Finding {
    let working = Working {
        equation: "T = T′ + m·v²",
        terms: vec![
            Term::new("T′", "pressing tension", pressing, Unit::Newton),
            Term::new(
                "m·v²",
                "taken by the belt's own motion",
                loaded.around.centrifugal,
                Unit::Newton,
            ),
        ],
        source: source::drive::LOOP,
    };
    let total = pressing + loaded.around.centrifugal;
    let id = Id::Numbered("span-tension", number);
    Finding::new(
        id,
        "tension of the span to the next",
        total,
        Unit::Newton,
        "equilibrium pulley by pulley",
        working,
    )
}

fn strands(spans: (Force, Force)) -> Vec<Term> {
    vec![
        Term::new("T′₁", "pressing tension arriving", spans.0, Unit::Newton),
        Term::new("T′₂", "pressing tension leaving", spans.1, Unit::Newton),
        Term::new(
            "T′min",
            "the lesser of both",
            if spans.0.value < spans.1.value {
                spans.0
            } else {
                spans.1
            },
            Unit::Newton,
        ),
    ]
}
