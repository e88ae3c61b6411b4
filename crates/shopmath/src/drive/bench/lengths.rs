//! Findings of the route: lengths, the belts to order, wraps, spans and speeds.

use super::Bench;
use super::held::Held;
use super::tensioner::{HARDLY_ANY, LITTLE_LEFT};
use crate::caution;
use crate::drive::belt::Belt;
use crate::drive::profile::Profile;
use crate::drive::pulley::Side;
use crate::drive::route::{self, Leg, Route};
use crate::drive::si::{in_metres, in_ones, metres};
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Id, Style, Term, Working};
use crate::source;
use uom::si::f64::{Angle, Length, Ratio};

/// The method of all route findings.
const THIN_BELT: &str = "thin belt on the effective line";

/// A belt to order.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The belt; prints as its name.
    pub belt: Belt,
    /// The belt's length minus the route's, the arm as drawn.
    pub difference: Length,
    /// Where the tensioner stands with it and how much of the sweep that uses, or why it cannot;
    /// absent without a tensioner.
    pub arm: Option<Result<(Angle, Ratio), String>>,
}

impl Candidate {
    /// What the arm's place means for a belt that it holds; none without such.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, assess, resolve};
    /// let words: Vec<_> = assess(resolve(&DriveText::demo())).candidates.iter().map(|belt| belt.standing()).collect();
    /// assert_eq!(words, [Some("held"); 3]);
    /// ```
    #[must_use]
    pub fn standing(&self) -> Option<&'static str> {
        let (_, share) = self.arm.as_ref()?.as_ref().ok()?;
        Some(match in_ones(*share) {
            share if share > LITTLE_LEFT => "held, with little travel left",
            share if share < HARDLY_ANY => "hardly goes on",
            _ => "held",
        })
    }
}

pub(super) fn findings(bench: &Bench) -> Vec<Finding> {
    let (Some(layout), Some(route)) = (&bench.layout, &bench.route) else {
        return Vec::new();
    };
    let profile = layout.profile;
    let mut findings = vec![effective(bench, route), pitch(route, profile)];
    findings.extend(nearest(bench, route));
    findings.extend(speed(bench, route));
    findings
}

fn effective(bench: &Bench, route: &Route) -> Finding {
    let spans: Length = route
        .legs
        .iter()
        .map(|leg| leg.span)
        .fold(metres(0.0), |sum, span| sum + span);
    let working = Working {
        equation: "L = Σ √(D² − (ρᵢ − ρⱼ)²) + Σ |ρ|·θ",
        terms: vec![
            Term::new("Σ √…", "straight spans", spans, Unit::Millimetre),
            Term::new(
                "Σ |ρ|·θ",
                "belt on the pulleys",
                route.effective_length - spans,
                Unit::Millimetre,
            ),
        ],
        source: source::drive::ROUTE,
    };
    let mut finding = length("effective-length", "effective length", route.effective_length, working).to(0.1);
    finding.cautions.extend(back_caution(bench));
    finding.cautions.extend(two_routes(bench, route));
    finding
}

/// A belt that can run the other way as well.
fn two_routes(bench: &Bench, route: &Route) -> Option<caution::Caution> {
    let other = route::solve_in(bench.layout.as_ref()?, -route.sense.sign());
    other.is_ok().then_some(caution::drive::TWO_ROUTES)
}

/// The usual back distance with another profile than PK.
fn back_caution(bench: &Bench) -> Option<caution::Caution> {
    let layout = bench.layout.as_ref()?;
    let usual = (in_metres(layout.back) - 2.3e-3).abs() < 1e-9 && layout.profile != Profile::Pk;
    let used = layout.pulleys.iter().any(|pulley| pulley.side == Side::Back);
    (usual && used).then_some(caution::drive::BACK_IS_FOR_PK)
}

fn pitch(route: &Route, profile: Profile) -> Finding {
    let working = Working {
        equation: "Lp = L + 2π·b_e",
        terms: vec![
            Term::new("L", "effective length", route.effective_length, Unit::Millimetre),
            differential(profile),
        ],
        source: profile.source(),
    };
    length("pitch-length", "pitch length", route.pitch_length, working).to(0.1)
}

fn differential(profile: Profile) -> Term {
    let by = profile.line_differential();
    Term::new("b_e", "effective line differential", by, Unit::Millimetre)
}

fn nearest(bench: &Bench, route: &Route) -> Option<Finding> {
    let profile = bench.layout.as_ref()?.profile;
    let belt = Belt::nearest(bench.ribs.unwrap_or(1), profile, route.effective_length).ok()?;
    let working = Working {
        equation: "n = round(L / 1 mm)",
        terms: vec![Term::new(
            "L",
            "effective length as drawn",
            route.effective_length,
            Unit::Millimetre,
        )],
        source: source::drive::BELT_NAME,
    };
    let mut finding = length(
        "nearest-length",
        "nearest whole length",
        belt.effective_length(),
        working,
    );
    finding.style = Style::Nominal;
    finding.difference = Some(crate::result::Difference {
        name: "off by",
        by: (belt.effective_length() - route.effective_length).into(),
        unit: Unit::Millimetre,
    });
    Some(finding)
}

fn speed(bench: &Bench, route: &Route) -> Option<Finding> {
    let Some(Quantity::Rotation(driver)) = bench.value("rpm") else {
        return None;
    };
    let radius = route.legs.first()?.pitch_radius;
    let working = Working {
        equation: "v = ω·r",
        terms: vec![
            Term::new("ω", "driver speed", driver, Unit::RevolutionPerMinute),
            Term::new("r", "driver's pitch radius", radius, Unit::Millimetre),
        ],
        source: bench.layout.as_ref()?.profile.source(),
    };
    let speed = route.belt_speed(driver);
    Some(Finding::new(
        Id::Named("belt-speed"),
        "belt speed",
        speed,
        Unit::MetrePerSecond,
        "pitch line",
        working,
    ))
}

fn length(id: &'static str, name: &'static str, length: Length, working: Working) -> Finding {
    Finding::new(Id::Named(id), name, length, Unit::Millimetre, THIN_BELT, working)
}

/// Wrap, span and speed of each pulley, numbered from 1.
pub(super) fn per_pulley(bench: &Bench) -> Vec<Finding> {
    let (Some(layout), Some(route)) = (&bench.layout, &bench.route) else {
        return Vec::new();
    };
    let driver = route.legs.first().map_or(metres(0.0), |leg| leg.pitch_radius);
    let of = |(index, leg): (usize, &Leg)| {
        let radius = metres(layout.pulleys[index].effective_radius(layout.back));
        [
            wrap(index + 1, leg, radius),
            span(index + 1, leg),
            relative_speed(index + 1, leg, driver, layout.profile),
        ]
    };
    route.legs.iter().enumerate().flat_map(of).collect()
}

fn wrap(number: usize, leg: &Leg, radius: Length) -> Finding {
    let working = Working {
        equation: "θ = turn from the span arriving to the span leaving",
        terms: vec![Term::new("|ρ|", "effective radius", radius, Unit::Millimetre)],
        source: source::drive::ROUTE,
    };
    Finding::new(
        Id::Numbered("wrap", number),
        "wrap",
        leg.wrap,
        Unit::Degree,
        THIN_BELT,
        working,
    )
    .to(0.1)
}

fn span(number: usize, leg: &Leg) -> Finding {
    let working = Working {
        equation: "l = √(D² − (ρᵢ − ρⱼ)²)",
        terms: Vec::new(),
        source: source::drive::ROUTE,
    };
    Finding::new(
        Id::Numbered("span", number),
        "span to the next",
        leg.span,
        Unit::Millimetre,
        THIN_BELT,
        working,
    )
    .to(0.1)
}

fn relative_speed(number: usize, leg: &Leg, driver: Length, profile: Profile) -> Finding {
    let working = Working {
        equation: match leg.side {
            Side::Rib => "i = r₁/r, r = d/2 + b_e",
            Side::Back => "i = −r₁/r, r = OD/2 + back − b_e",
        },
        terms: vec![
            Term::new("r₁", "driver's pitch radius", driver, Unit::Millimetre),
            Term::new("r", "its own pitch radius", leg.pitch_radius, Unit::Millimetre),
            differential(profile),
        ],
        source: profile.source(),
    };
    let name = "speed, driver = 1";
    Finding::new(
        Id::Numbered("speed", number),
        name,
        leg.speed,
        Unit::Number,
        "pitch line",
        working,
    )
}

/// The belt of whole millimetres nearest to the route.
pub(super) fn nearest_belt(bench: &Bench) -> Option<Belt> {
    let length = bench.route.as_ref()?.effective_length;
    Belt::nearest(bench.ribs?, bench.layout.as_ref()?.profile, length).ok()
}

/// The belt named, or the nearest whole length, with the next ones down and up.
pub(super) fn candidates(bench: &Bench, held: Option<&Held>) -> Vec<Candidate> {
    let (Some(route), Some(_)) = (&bench.route, bench.ribs) else {
        return Vec::new();
    };
    let Some(middle) = bench.belt.or_else(|| nearest_belt(bench)) else {
        return Vec::new();
    };
    // Where the step cannot be read, the middle one is all that can be said.
    let step = bench.value("step").map_or(0.0, |step| step.si() * 1e3).round();
    #[allow(clippy::cast_possible_truncation)] // within 1–200 by the field's limits
    let step = step as i32;
    let candidate = |belt: Belt| Candidate {
        belt,
        difference: belt.effective_length() - route.effective_length,
        arm: held.map(|held| held.arm_for(bench, belt.effective_length())),
    };
    [-step, 0, step]
        .into_iter()
        .take(if step > 0 { 3 } else { 1 })
        .filter_map(|by| middle.longer_by(by))
        .map(candidate)
        .collect()
}
