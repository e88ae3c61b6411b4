//! That every number which reaches a screen is one.

use shopmath::quantity::print;
use shopmath::result::{Amount, Finding};
use shopmath::sketch::{Shape, Sketch};

/// Of findings: the values, the numbers put in, and what other programs read.
pub(crate) fn findings<'a>(found: impl IntoIterator<Item = &'a Finding>) {
    for finding in found {
        amount(finding.amount, finding);
        for (_, end) in finding.amount.ends() {
            let (plain, _) = finding.plain(end);
            assert!(plain.is_finite(), "{finding:?}");
            let shown = print::number(end, finding.unit, finding.style);
            assert!(!shown.is_empty() && shown != "—", "{finding:?}");
        }
        for term in &finding.working.terms {
            amount(term.amount, finding);
        }
        if let Some(difference) = finding.difference {
            numbers([difference.by.si()]);
        }
    }
}

fn amount(amount: Amount, finding: &Finding) {
    for (_, end) in amount.ends() {
        assert!(end.si().is_finite(), "{finding:?}");
    }
    if let Amount::Range { low, high, .. } = amount {
        assert!(low.si() <= high.si(), "{finding:?}");
    }
}

/// Of a drawing.
pub(crate) fn sketch(sketch: &Sketch) {
    numbers([sketch.height]);
    for mark in &sketch.marks {
        match &mark.shape {
            Shape::Area(points) | Shape::Line(points) => numbers(points.iter().flatten().copied()),
            Shape::Circle(centre, radius) => numbers(centre.iter().copied().chain([*radius])),
            Shape::Words(at, ..) => numbers(at.iter().copied()),
        }
    }
}

/// Of anything else.
pub(crate) fn numbers(values: impl IntoIterator<Item = f64>) {
    for value in values {
        assert!(value.is_finite(), "{value}");
    }
}
