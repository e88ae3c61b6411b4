//! Which wrenches fit a hexagon, by exact arithmetic: a wrench must not be smaller than the head,
//! and one that is much larger rounds its corners.

use crate::caution;
use crate::quantity::fraction::nanometres;
use crate::quantity::{Quantity, Unit, exact, print};
use crate::result::{Difference, Finding, Id, Style, Term, Working};
use crate::source;
use crate::tools::Tools;
use uom::si::f64::Length;

/// Metric wrench sizes in the usual set, millimetre.
const METRIC: &[i64] = &[
    4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 26, 27, 28, 29, 30, 32, 34, 36, 38,
    41, 46, 50,
];
/// Inch wrench sizes in the usual set, 32nds of an inch.
const INCH: &[i64] = &[
    5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 19, 20, 22, 24, 25, 26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 46, 48, 52, 56,
    60, 64,
];
/// One millimetre, nanometre.
const MILLIMETRE: i64 = 1_000_000;
/// One 32nd of an inch, nanometre: 25 400 000 / 32, exact.
const THIRTY_SECOND: i64 = 793_750;
/// Slack past which a wrench bears on the corners, per thousand of the head (common practice).
const LOOSE_PER_THOUSAND: i64 = 15;
/// Heads a wrench of the set can be meant for, nanometre.
const HEADS: core::ops::RangeInclusive<i64> = 3 * MILLIMETRE..=51 * MILLIMETRE;

/// A wrench and how it sits on a head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fit {
    /// Width of the jaw, nanometre.
    pub wrench: i64,
    /// Jaw minus head, nanometre; never negative.
    pub slack: i64,
    /// Whether it is loose enough to round the corners.
    pub rounds_corners: bool,
}

/// The smallest metric wrench that goes over a head; `None` for a head outside 3–51 mm.
///
/// ```
/// use shopmath::fastener::wrench_fit::{inch, metric};
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let fit = inch(Length::new::<Millimetre>(19.0)).unwrap();
/// assert_eq!((fit.wrench, fit.slack, fit.rounds_corners), (19_050_000, 50_000, false));
/// assert_eq!(metric(Length::new::<Millimetre>(19.0)).unwrap().slack, 0);
/// ```
#[must_use]
pub fn metric(head: Length) -> Option<Fit> {
    smallest_over(head, METRIC, MILLIMETRE)
}

/// The smallest inch wrench that goes over a head; `None` for a head outside 3–51 mm. An inch is taken as
/// exactly 25.4 mm.
///
/// ```
/// use shopmath::{fastener::wrench_fit::inch, quantity::exact::length::Millimetre};
/// use uom::si::f64::Length;
/// let fit = inch(Length::new::<Millimetre>(14.0)).unwrap(); // 9/16 in, 0.2875 mm wider
/// assert_eq!((fit.wrench, fit.slack, fit.rounds_corners), (14_287_500, 287_500, true));
/// assert_eq!(inch(Length::new::<Millimetre>(60.0)), None);
/// ```
#[must_use]
pub fn inch(head: Length) -> Option<Fit> {
    smallest_over(head, INCH, THIRTY_SECOND)
}

fn smallest_over(head: Length, sizes: &[i64], unit: i64) -> Option<Fit> {
    let head = nanometres(head).filter(|head| HEADS.contains(head))?;
    let wrench = sizes.iter().map(|size| size * unit).find(|&wrench| wrench >= head)?;
    let slack = wrench - head;
    Some(Fit {
        wrench,
        slack,
        rounds_corners: slack * 1000 > head * LOOSE_PER_THOUSAND,
    })
}

/// The wrenches for a head, as findings: the metric one first, but where it would round the corners and the
/// inch one sits closer.
pub(crate) fn findings(head: Length) -> impl Iterator<Item = Finding> {
    let (metric, inch) = (metric(head), inch(head));
    let closer = |inch: Fit| metric.is_some_and(|metric| metric.rounds_corners && inch.slack < metric.slack);
    let inch_first = inch.is_some_and(closer);
    let metric = metric.map(|fit| {
        finding(
            fit,
            head,
            "wrench-metric",
            "metric wrench",
            Unit::Millimetre,
            Style::Nominal,
        )
    });
    let inch = inch.map(|fit| finding(fit, head, "wrench-inch", "inch wrench", Unit::Inch, Style::InchFraction));
    let pair = if inch_first { [inch, metric] } else { [metric, inch] };
    pair.into_iter().flatten()
}

/// What to say in place of a wrench that is too loose: of the system that the tools are not of alone. None for
/// any other finding.
///
/// ```
/// use shopmath::{fastener::wrench_fit::none_fits, quantity::Unit, tools::Tools};
/// use shopmath::fastener::bolt::{BoltText, assess, resolve};
/// let mut text = BoltText::default();
/// text.set("thread", "M10");
/// let sections = assess(&resolve(&text)).sections;
/// let inch = sections[0].findings.iter().find(|found| found.unit == Unit::Inch).unwrap();
/// assert_eq!(none_fits(inch, Tools::Both).unwrap(), "No inch wrench fits: 11/16\u{a0}in is +1.46\u{a0}mm.");
/// assert_eq!(none_fits(inch, Tools::Inch), None);
/// ```
#[must_use]
pub fn none_fits(found: &Finding, tools: Tools) -> Option<String> {
    let own = match found.unit {
        Unit::Inch => Tools::Inch,
        _ => Tools::Metric,
    };
    let loose = found.cautions.contains(&caution::ROUNDS_CORNERS) && tools != own;
    let slack = found.difference.filter(|_| loose)?;
    let (_, jaw) = found.amount.ends().next()?;
    let number = print::number(jaw, found.unit, found.style);
    let unit = print::suffix(&number, found.unit);
    let slack = print::difference(slack.by, slack.unit);
    Some(["No ", found.name, " fits: ", &number, &unit, " is ", &slack, "."].concat())
}

fn finding(fit: Fit, head: Length, id: &'static str, name: &'static str, unit: Unit, style: Style) -> Finding {
    let working = Working {
        equation: "slack = jaw − head ≥ 0",
        terms: vec![
            Term::new(
                "jaw",
                "smallest wrench that goes on",
                length(fit.wrench),
                Unit::Millimetre,
            ),
            Term::new("head", "width across flats", Quantity::from(head), Unit::Millimetre),
        ],
        source: source::WRENCH_SLACK,
    };
    let mut finding = Finding::new(Id::Row(id), name, length(fit.wrench), unit, "exact sizes", working);
    finding.style = style;
    finding.difference = Some(Difference {
        name: "slack",
        by: length(fit.slack),
        unit: Unit::Millimetre,
    });
    if fit.rounds_corners {
        finding.cautions.push(caution::ROUNDS_CORNERS);
    }
    finding
}

fn length(nanometres: i64) -> Quantity {
    #[allow(clippy::cast_precision_loss)] // a wrench's nanometres are far below 2⁵³
    Length::new::<exact::length::Metre>(nanometres as f64 / 1e9).into()
}
