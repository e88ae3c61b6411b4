//! Section Wrench: what to set, how the reading compares, which wrench goes on the head.

use super::Section;
use crate::caution::{FIGURES_DISAGREE, fastener as cautions};
use crate::fastener::bolt::common::Common;
use crate::fastener::bolt::field::SectionId;
use crate::fastener::bolt::resolve::Resolved;
use crate::fastener::head::Shape;
use crate::fastener::refusal::Refusal;
use crate::fastener::thread::{Standard, Thread};
use crate::fastener::wrench::{Adapter, Suits, deviation, permissible, suits};
use crate::fastener::wrench_fit;
use crate::quantity::Unit;
use crate::result::{Difference, Finding, Id, Style, Term, Working};
use crate::source::fastener as sources;
use uom::si::f64::{Length, Ratio, Torque};

/// An adapter whose angle has no more cosine than this is square to the wrench.
const SQUARE: f64 = 1e-9;
/// The ends of a range are shown with three figures in other units; a reading at the figure shown is within,
/// though rounding moved it by up to this share (half of the third figure of 2.00; less above).
const ROUNDING: f64 = 0.0025;

/// Below this gain the share by which L is off comes out larger in the torque: with g = 1 + E·cos α/L,
/// dg/g = (1 − g)/g · dL/L.
const LEAST_GAIN: f64 = 0.5;

/// The adapter's effect, as far as its fields tell.
enum Through {
    /// No adapter, or one square to the wrench, whose lengths do not matter: what is set is what arrives.
    Straight,
    /// Through an adapter of this gain.
    Adapter(Adapter, Ratio),
    /// An adapter whose effect is not known.
    Unknown,
}

impl Through {
    /// By the adapter's fields.
    fn of(resolved: &Resolved) -> Result<Self, Refusal> {
        let Some(adapter) = resolved.adapter.optional() else {
            return Ok(Self::Unknown);
        };
        let Some(adapter) = adapter else {
            return Ok(Self::Straight);
        };
        let angle = resolved.adapter_angle.given();
        if resolved.wrench.is_empty() && angle.is_some_and(|angle| angle.value.cos().abs() < SQUARE) {
            return Ok(Self::Straight);
        }
        let (Some(wrench), Some(angle)) = (resolved.wrench.given(), angle) else {
            return Ok(Self::Unknown);
        };
        let adapter = Adapter { wrench, adapter, angle };
        Ok(Self::Adapter(adapter, adapter.gain()?))
    }
}

/// What the wrench is set to and a reading is judged by: the last torque of a spec, through the adapter.
pub(crate) struct Target {
    low: Torque,
    high: Torque,
    gain: f64,
    unit: Unit,
}

impl Target {
    /// Nothing without a torque, or while the adapter's effect is not known.
    pub(crate) fn of(resolved: &Resolved) -> Option<Self> {
        Self::through(resolved, &Through::of(resolved).ok()?)
    }

    fn through(resolved: &Resolved, through: &Through) -> Option<Self> {
        let (low, high) = resolved.spec.as_given()?.torque()?;
        let gain = match through {
            Through::Straight => 1.0,
            Through::Adapter(_, gain) => gain.value,
            Through::Unknown => return None,
        };
        Some(Self {
            low,
            high,
            gain,
            unit: resolved.torque_unit,
        })
    }

    /// The middle, at the bolt.
    fn middle(&self) -> Torque {
        (self.low + self.high) * 0.5
    }

    /// How far a reading is off: the finding `reading-deviation`, with the caution for one outside the target and
    /// the tool's tolerance, and whether it is outside.
    ///
    /// # Errors
    /// As [`deviation`].
    pub(crate) fn judge(&self, reading: Torque, tool: Ratio) -> Result<(Finding, bool), Refusal> {
        let setting = self.middle() / self.gain;
        let off = deviation(reading, setting)?;
        // A range is the maker's own tolerance; the tool's is not added to it.
        let slack = if self.low < self.high { ROUNDING } else { tool.value };
        let least = self.low * (1.0 - slack) / self.gain;
        let most = self.high * (1.0 + slack) / self.gain;
        let outside = if reading > most {
            Some(cautions::READING_ABOVE)
        } else if reading < least {
            Some(cautions::READING_OUTSIDE)
        } else {
            None
        };
        let mut found = deviation_finding(off, reading, setting, tool, self.unit);
        found.cautions.extend(outside);
        Ok((found, outside.is_some()))
    }
}

pub(in crate::fastener::bolt) fn section(common: &mut Common<'_>) -> Section {
    let mut section = Section::new(SectionId::Wrench, "Wrench");
    let resolved = common.resolved;
    section.want("spec", &resolved.spec);
    let through = common
        .keep("adapter", Through::of(resolved))
        .unwrap_or(Through::Unknown);
    if resolved.adapter.given().is_some() && !matches!(through, Through::Straight) {
        section.want("wrench", &resolved.wrench);
        if resolved.wrench.given().is_some() && resolved.adapter_angle.given().is_some() {
            section.cautions.push(cautions::MEASURE_TO_HAND);
        }
    }
    section.notes.extend(resolved.lengths_apart.clone());
    if let Some(target) = Target::through(resolved, &through) {
        settings(common, &mut section, &target, &through);
    }
    section.want("thread", &resolved.thread);
    if let (Some(read), Some(head)) = (resolved.thread.given(), resolved.head.given()) {
        section.findings.extend(sizes(
            &read.thread,
            head.shape,
            head.across_flats,
            head.across_flats_old,
        ));
    }
    section
}

fn settings(common: &mut Common<'_>, section: &mut Section, target: &Target, through: &Through) {
    let resolved = common.resolved;
    let middle = target.middle();
    let setting = middle / target.gain;
    let mut found = setting_finding(middle, setting, through, resolved.torque_unit);
    if let Some(full_scale) = resolved.scale.given() {
        match suits(setting, full_scale) {
            Suits::TooLow => found.cautions.push(cautions::WRENCH_TOO_LARGE),
            Suits::TooHigh => found.cautions.push(cautions::WRENCH_TOO_SMALL),
            Suits::Yes => {}
        }
    }
    if target.gain < LEAST_GAIN {
        found.cautions.push(cautions::ADAPTER_FOLDED_BACK);
    }
    if resolved.figures_disagree {
        found.cautions.push(FIGURES_DISAGREE);
    }
    section.findings.push(found);
    if let Some(full_scale) = resolved.scale.given() {
        section
            .findings
            .push(tolerance_finding(full_scale, resolved.torque_unit));
    }
    if let (Some(reading), Some(tool)) = (resolved.reading.given(), resolved.tool.given()) {
        let judged = common.keep("reading", target.judge(reading, tool));
        section.findings.extend(judged.map(|(found, _)| found));
    }
}

fn setting_finding(target: Torque, setting: Torque, through: &Through, unit: Unit) -> Finding {
    let mut terms = vec![Term::new("T", "torque at the bolt", target, unit)];
    let equation = if let Through::Adapter(adapter, _) = through {
        terms.push(Term::new(
            "L",
            "wrench, drive to hand",
            adapter.wrench,
            Unit::Millimetre,
        ));
        terms.push(Term::new(
            "E",
            "adapter, drive to bolt",
            adapter.adapter,
            Unit::Millimetre,
        ));
        terms.push(Term::new("α", "adapter from straight out", adapter.angle, Unit::Degree));
        "setting = T·L/(L + E·cos α)"
    } else {
        "setting = T, without an adapter or with one square to the wrench"
    };
    let working = Working {
        equation,
        terms,
        source: sources::ADAPTER,
    };
    Finding::new(
        Id::Named("wrench-setting"),
        "set the wrench to",
        setting,
        unit,
        "lever arms",
        working,
    )
}

fn deviation_finding(off: Ratio, reading: Torque, setting: Torque, tool: Ratio, unit: Unit) -> Finding {
    let working = Working {
        equation: "deviation = reading/setting − 1",
        terms: vec![
            Term::new("reading", "as tightened", reading, unit),
            Term::new("setting", "what the wrench should read", setting, unit),
            Term::new("±", "tool tolerance", tool, Unit::Percent),
        ],
        source: sources::READING,
    };
    let mut finding = Finding::new(
        Id::Named("reading-deviation"),
        "reading off by",
        off,
        Unit::Percent,
        "against the setting",
        working,
    );
    finding.style = Style::Signed { step: 0.1 };
    finding
}

fn tolerance_finding(full_scale: Torque, unit: Unit) -> Finding {
    let working = Working {
        equation: "±4 % for a full scale above 10 N·m, ±6 % at or below",
        terms: vec![Term::new("full scale", "the wrench's largest torque", full_scale, unit)],
        source: sources::READING,
    };
    Finding::new(
        Id::Named("tool-permissible"),
        "tolerance allowed to this wrench, ±",
        permissible(full_scale),
        Unit::Percent,
        "by the tool's largest torque",
        working,
    )
}

/// The hexagon of the head, and the wrench of the other system that goes over it.
fn sizes(thread: &Thread, shape: Shape, flats: Option<Length>, old: Option<Length>) -> Vec<Finding> {
    let Some(flats) = flats else { return Vec::new() };
    let (name, equation) = if shape == Shape::Socket {
        ("hexagon key", "s, width across flats of the socket")
    } else {
        ("hexagon, across flats", "s, width across flats of the head")
    };
    let (unit, style) = match thread.standard {
        Standard::Metric => (Unit::Millimetre, Style::Nominal),
        Standard::Unified => (Unit::Inch, Style::InchFraction),
    };
    let working = Working {
        equation,
        terms: vec![Term::new("d", thread.name, thread.diameter, Unit::Millimetre)],
        source: match (shape, thread.standard) {
            (_, Standard::Unified) => sources::INCH_HEAD,
            (Shape::Flange, _) => sources::FLANGE_HEAD,
            (Shape::Socket, _) => sources::SOCKET_HEAD,
            _ => sources::HEX_HEAD,
        },
    };
    let mut size = Finding::new(
        Id::Named("hex-size"),
        name,
        flats,
        unit,
        "head standard",
        working.clone(),
    );
    size.style = style;
    let older = old.map(|old| {
        let mut older = Finding::new(
            Id::Named("hex-size-old"),
            "hexagon by the older DIN standard",
            old,
            unit,
            "head standard",
            working,
        );
        older.style = style;
        older.difference = Some(Difference {
            name: "wider by",
            by: (old - flats).into(),
            unit: Unit::Millimetre,
        });
        older
    });
    let others = wrench_fit::findings(flats).filter(|found| shape != Shape::Socket && found.unit != unit);
    core::iter::once(size).chain(older).chain(others).collect()
}
