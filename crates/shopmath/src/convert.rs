//! Convert: a spec as the manual prints it, in every useful unit of its kind.
//!
//! Text is read by [`crate::quantity::read`]; wrenches are matched by
//! [`crate::fastener::wrench_fit`]. Here the rows are put together,
//! and it is told what a line names that is no value.

use crate::caution::{self, Caution};
use crate::drive::belt::Belt;
use crate::fastener::refusal::Refusal;
use crate::fastener::{bolt, class, thread_text, wrench_fit};
use crate::quantity::fault::{Fault, Misread};
use crate::quantity::{Bounds, Kind, Quantity, Unit, exact, fraction, print, read};
use crate::result::{Amount, Difference, Finding, Id, Style, Term, Working};
use crate::source;
use crate::tools::Tools;
use uom::si::f64::Length;

/// No part is a kilometre long: beyond, a length is a way, and no wrench or fraction of an inch fits it.
const LONGEST_PART: Length = Length {
    dimension: core::marker::PhantomData,
    units: core::marker::PhantomData,
    value: 1e3,
};

/// What most tools read in: of its kind these come before all others.
const MAIN: &[Unit] = &[
    Unit::NewtonMetre,
    Unit::PoundForceFoot,
    Unit::Millimetre,
    Unit::Inch,
    Unit::Bar,
    Unit::PoundForcePerSquareInch,
    Unit::Litre,
    Unit::UsQuart,
    Unit::Celsius,
    Unit::Fahrenheit,
];
/// Equivalents a line of a list shows.
const LISTED: usize = 3;
/// The largest torque that a list shows in ounce-force inches.
const SMALL_TORQUE: f64 = 2.0;

/// A line of a spec list, converted.
#[derive(Clone, Debug, PartialEq)]
pub struct Conversion {
    /// What stood before the value.
    pub label: Option<String>,
    /// What makes a limit of the value, such as `min.` or `>`.
    pub limit: Option<String>,
    /// Each stage with its rows; one stage for a plain value.
    pub stages: Vec<Stage>,
    /// The spec alone, as Bolt takes it: the stages as read and how the threads are lubricated.
    pub spec: String,
    /// What to beware of on this line.
    pub cautions: Vec<Caution>,
}

impl Conversion {
    /// Whether it is a torque, alone or with what follows it.
    ///
    /// ```
    /// use shopmath::{convert, tools::Tools};
    /// let is_torque = |text| convert::line(text, Tools::Both).unwrap().is_torque();
    /// assert!(is_torque("30 N·m + 90°") && !is_torque("1.5 qt"));
    /// ```
    #[must_use]
    pub fn is_torque(&self) -> bool {
        let first = self.stages.first();
        first.is_some_and(|stage| stage.typed.kind() == Kind::Torque)
    }
}

/// One value or range of a line, and what it is in other units.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// The value as read.
    pub typed: Bounds,
    /// The equivalents, those of the user's tools first.
    pub rows: Vec<Finding>,
}

impl Stage {
    /// The few rows that a line of a list has room for: neither the unit typed nor one that only small
    /// torques are read in.
    ///
    /// ```
    /// use shopmath::{convert, tools::Tools};
    /// let read = convert::line("2.5 kg-m", Tools::Both).unwrap();
    /// let listed: Vec<_> = read.stages[0].listed().map(|row| row.unit.symbol()).collect();
    /// assert_eq!(listed, ["lbf·ft", "N·m", "lbf·in"]);
    /// ```
    pub fn listed(&self) -> impl Iterator<Item = &Finding> {
        let typed = self.typed.low.unit;
        let large = self.typed.high.quantity().si() > SMALL_TORQUE;
        let shown = move |row: &&Finding| match row.unit {
            Unit::KilogramForceCentimetre => false,
            Unit::OunceForceInch if large => false,
            // The nearest fraction of inches typed.
            Unit::Inch if typed == Unit::Inch => false,
            _ => row.id != Id::Row(typed.symbol()),
        };
        self.rows.iter().filter(shown).take(LISTED)
    }
}

/// What a text is where it is no value: something another bench takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elsewhere {
    /// A thread designation, such as `M10x1.5` or `3/8-16`.
    Thread,
    /// A belt name, such as `6PK1453`.
    Belt,
}

/// What a text without a value in it names, if anything.
///
/// ```
/// use shopmath::convert::{Elsewhere, elsewhere};
/// assert_eq!(elsewhere("3/8-16"), Some(Elsewhere::Thread));
/// assert_eq!(elsewhere("6PK1453"), Some(Elsewhere::Belt));
/// assert_eq!(elsewhere("M8x25-8.8"), Some(Elsewhere::Thread));
/// assert_eq!(elsewhere("60 N·m"), None);
/// assert_eq!(elsewhere("10 1.5"), None);
/// ```
#[must_use]
pub fn elsewhere(text: &str) -> Option<Elsewhere> {
    // A class behind it is for Bolt to tell of.
    if matches!(thread_text::read(text), Ok(_) | Err(Refusal::ClassInThread { .. })) {
        Some(Elsewhere::Thread)
    } else {
        Belt::read(text).is_ok().then_some(Elsewhere::Belt)
    }
}

/// What a line of a list is that has no figure in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Words {
    /// The name of what follows.
    Title,
    /// An entry that says its spec in words, such as `Head bolt - torque to yield`.
    Entry,
}

/// What the words of a line are; nothing where there is a figure among them.
///
/// ```
/// use shopmath::convert::{Words, words};
/// assert_eq!(words("Front suspension:", false), Some(Words::Title));
/// assert_eq!(words("Head bolt - torque to yield", false), Some(Words::Entry));
/// assert_eq!(words("Torques - engine", true), Some(Words::Title));
/// assert_eq!(words("Idler 45 furlongs", false), None);
/// ```
#[must_use]
pub fn words(line: &str, first: bool) -> Option<Words> {
    if line.contains(char::is_numeric) {
        return None;
    }
    let inner = line.trim().trim_end_matches(':');
    let parted = inner.contains(['-', '–', '—', ':', '|', '=', '\t', ',']);
    Some(if parted && !first { Words::Entry } else { Words::Title })
}

/// The thread and the strength class that a label names, such as those of `Wheel bolt M12x1.5 10.9`.
///
/// ```
/// use shopmath::convert::bolt_in;
/// assert_eq!(bolt_in("Wheel bolt M12 x 1.5 10.9"), (Some("M12 x 1.5"), Some("10.9")));
/// assert_eq!(bolt_in("Tensioner 2"), (None, None));
/// ```
#[must_use]
pub fn bolt_in(label: &str) -> (Option<&str>, Option<&str>) {
    let ends = |text: &str| {
        let spaces = text.char_indices().filter(|(_, letter)| letter.is_whitespace());
        spaces.map(|(at, _)| at).chain([text.len()]).take(4).collect::<Vec<_>>()
    };
    let words = || label.split_whitespace().map(|word| read::place_in(label, word));
    let thread = words().find_map(|start| {
        let rest = label.get(start..)?;
        // A bare number is the size of many things.
        let names = rest.starts_with(['M', 'm', '#']) || rest.contains('/');
        let read = |end: &usize| rest.get(..*end).filter(|text| names && thread_text::read(text).is_ok());
        ends(rest).iter().rev().find_map(read)
    });
    let after = thread
        .and_then(|thread| label.split_once(thread))
        .map_or(label, |(_, after)| after);
    let class = after
        .split_whitespace()
        .find(|word| word.contains('.') && class::read(word).is_ok());
    (thread, class)
}

/// Converts one line of text.
///
/// # Errors
/// The [`Fault`] of a line that is no value, range or spec.
///
/// ```
/// use shopmath::{convert, tools::Tools, quantity::Unit};
/// let line = convert::line("60 N·m", Tools::Both).unwrap();
/// let row = &line.stages[0].rows[0];
/// assert_eq!(row.unit, Unit::PoundForceFoot);
/// ```
pub fn line(text: &str, tools: Tools) -> Result<Conversion, Fault> {
    let line = match read::line(text) {
        // `3/8"-16` would be a range of three eighths to sixteen inches.
        Ok(line) if !read::names_inch_thread(text) => line,
        read => {
            let name = match elsewhere(text) {
                Some(Elsewhere::Belt) => Some("belt"),
                Some(Elsewhere::Thread) => Some("thread"),
                None => read.is_ok().then_some("thread"),
            };
            let named = name.map(|name| Fault::new(0..text.len(), Misread::Name(name)));
            named.map_or(read, Err)?
        }
    };
    let stages: Vec<Stage> = line.stages.iter().map(|read| stage(read.value, tools)).collect();
    let mut cautions = cautions(text, &stages);
    if line.stages.iter().any(read::Stage::contradicts) {
        cautions.insert(0, caution::FIGURES_DISAGREE);
    }
    let mut spec = print::stages(&line.stages);
    if let Some(limit) = line.limit {
        spec = [limit, " ", &spec].concat();
    }
    if let Some(word) = bolt::lubrication(text) {
        spec = [&spec, " (", word, ")"].concat();
    }
    Ok(Conversion {
        label: line.label.map(str::to_owned),
        limit: line.limit.map(str::to_owned),
        stages,
        spec,
        cautions,
    })
}

/// A value in every unit of its kind: first the rows most tools read in, those that serve the user's own
/// before the others, then what a length is as a fraction and which wrenches fit it, then the other rows,
/// those of a readable size first.
///
/// ```
/// use shopmath::{convert, quantity::{Unit, read}, tools::Tools};
/// let typed = read::range("100 lbf·ft", read::Expect::default()).unwrap();
/// let row = &convert::stage(typed, Tools::Metric).rows[0];
/// let (_, torque) = row.amount.ends().next().unwrap();
/// assert!((torque.value_in(Unit::NewtonMetre).unwrap() - 135.581_794_833_14).abs() < 1e-9);
/// assert_eq!(row.unit, Unit::NewtonMetre);
/// ```
#[must_use]
pub fn stage(typed: Bounds, tools: Tools) -> Stage {
    let mut units = tools.rows(typed.kind(), typed.low.unit);
    // With both kinds in the drawer the unit typed is the one that is not asked for.
    let main = |unit: &Unit| MAIN.contains(unit) && (tools != Tools::Both || *unit != typed.low.unit);
    let place = |unit: &Unit| (!readable(typed, *unit), !main(unit));
    units.sort_by_key(place);
    let first = units.iter().take_while(|unit| place(unit) == (false, false)).count();
    let mut rows: Vec<Finding> = units.into_iter().map(|unit| row(typed, unit)).collect();
    if let (false, Quantity::Length(length)) = (typed.is_range(), typed.low.quantity()) {
        let extras = inch_fraction(length).into_iter().chain(wrench_fit::findings(length));
        // Of a way nobody asks for it, yet a program may.
        let behind = if length < LONGEST_PART {
            first.max(1)
        } else {
            rows.len()
        };
        rows.splice(behind..behind, extras);
    }
    Stage { typed, rows }
}

/// Whether a value in a unit is of a size people read: neither 0.000 0118 mi nor 492 126 ft.
fn readable(typed: Bounds, unit: Unit) -> bool {
    let size = typed.high.quantity().value_in(unit).unwrap_or_default().abs();
    // A way is read in kilometres or miles.
    let most = match unit {
        Unit::Kilometre | Unit::Mile => 1e7,
        _ if unit.kind() == Kind::Length => 1e5,
        _ => 1e6,
    };
    size == 0.0 || (0.001..most).contains(&size)
}

/// The value in one unit.
fn row(typed: Bounds, unit: Unit) -> Finding {
    let amount = |quantity: Quantity| unit.of(quantity.value_in(unit).unwrap_or(f64::NAN));
    let (low, high) = (amount(typed.low.quantity()), amount(typed.high.quantity()));
    let amount = if typed.is_range() {
        Amount::Range { low, mid: None, high }
    } else {
        Amount::One(low)
    };
    let from = typed.low.unit;
    let working = Working {
        equation: if from.kind() == Kind::Temperature {
            "T = (t + offset)·u, back by the other scale's"
        } else {
            "x₂ = x₁·u₁/u₂"
        },
        terms: factor_term("u₁", "one of the unit typed", from)
            .into_iter()
            .chain(factor_term("u₂", "one of this unit", unit))
            .collect(),
        source: source::UNITS,
    };
    let step = typed.low.step.max(typed.high.step) * from.factor() / unit.factor();
    let mut finding = Finding::new(
        Id::Row(unit.symbol()),
        unit.name(),
        amount,
        unit,
        "exact unit definitions",
        working,
    );
    finding.style = Style::Decimal { step };
    finding
}

/// A unit's size in the coherent unit of its kind.
fn factor_term(symbol: &'static str, meaning: &'static str, unit: Unit) -> Option<Term> {
    let coherent = unit.kind().coherent();
    (unit.kind() != Kind::Temperature).then(|| Term::new(symbol, meaning, unit.of(1.0), coherent))
}

/// The nearest 64th of an inch and how far off it is.
fn inch_fraction(length: Length) -> Option<Finding> {
    let nearest = fraction::nearest(length)?;
    let working = Working {
        equation: "n = round(l / (1/64 in))",
        terms: vec![Term::new("l", "length typed", Quantity::from(length), Unit::Millimetre)],
        source: source::INCH_FRACTION,
    };
    let mut finding = Finding::new(
        Id::Row("in-fraction"),
        "nearest 1/64 inch",
        Quantity::from(nearest.length()),
        Unit::Inch,
        "nearest 64th",
        working,
    );
    finding.style = Style::InchFraction;
    finding.difference = Some(Difference {
        name: "off by",
        by: exact_difference(nearest.length(), length),
        unit: Unit::Millimetre,
    });
    Some(finding)
}

/// The difference of two lengths in whole nanometres.
fn exact_difference(shown: Length, asked: Length) -> Quantity {
    match (fraction::nanometres(shown), fraction::nanometres(asked)) {
        #[allow(clippy::cast_precision_loss)] // nanometres of a workshop length are below 2⁵³
        (Some(shown), Some(asked)) => Length::new::<exact::length::Metre>((shown - asked) as f64 / 1e9).into(),
        _ => (shown - asked).into(),
    }
}

/// What to beware of on a line.
fn cautions(text: &str, stages: &[Stage]) -> Vec<Caution> {
    let first = stages.first().map(|stage| stage.typed);
    let mut cautions = Vec::new();
    let us_measure = |unit: Unit| matches!(unit, Unit::UsGallon | Unit::UsQuart | Unit::UsPint | Unit::UsFluidOunce);
    if first.is_some_and(|first| us_measure(first.low.unit)) && !names_us(text) {
        cautions.push(caution::US_MEASURE_ASSUMED);
    }
    if first.is_some_and(|first| first.low.unit == Unit::Pound) {
        cautions.push(caution::POUNDS_ARE_WEIGHT);
    }
    if stages.len() > 1 && stages.iter().any(|stage| stage.typed.kind() == Kind::Angle) {
        cautions.push(caution::ANGLE_MEANS_STRETCH);
    }
    cautions
}

/// Whether a text says that it means US measure.
fn names_us(text: &str) -> bool {
    text.split(|letter: char| !letter.is_ascii_alphabetic() && letter != '.')
        .any(|word| {
            let word = word.replace('.', "").to_ascii_lowercase();
            let of_what = word.strip_prefix("us");
            of_what.is_some_and(|unit| matches!(unit, "" | "a") || unit.starts_with(['g', 'q', 'p', 'f']))
        })
}

#[cfg(test)]
mod tests {
    use super::{Elsewhere, bolt_in, elsewhere, line};
    use crate::quantity::Unit;
    use crate::quantity::fault::Misread;
    use crate::result::Id;
    use crate::tools::Tools;

    #[test]
    fn what_names_a_thread_or_a_belt_is_no_value() {
        for (text, name) in [
            ("M10x1.5", "thread"),
            ("3/8-16", "thread"),
            ("3/8\"-16", "thread"),
            ("3/8-16 UNC", "thread"),
            ("6PK1453", "belt"),
        ] {
            assert_eq!(
                line(text, Tools::Both).unwrap_err().misread,
                Misread::Name(name),
                "{text}"
            );
            assert!(elsewhere(text).is_some(), "{text}");
        }
        for text in ["10-32 mm", "1/4-1/2 in", "3/8\"-1/2\"", "0.012\"-0.016\""] {
            assert!(line(text, Tools::Both).is_ok(), "{text}");
        }
        assert_eq!(elsewhere("10-32"), Some(Elsewhere::Thread));
        // Larger than the tables here, and no range of 7/8 to 14 inches for that.
        let large = line("7/8\"-14", Tools::Both).unwrap_err().misread;
        assert_eq!(large, Misread::Name("thread"));
    }

    #[test]
    fn pounds_alone_are_no_torque() {
        let slugs = |text| {
            let cautions = line(text, Tools::Both).unwrap().cautions;
            cautions.iter().map(|caution| caution.slug).collect::<Vec<_>>()
        };
        for text in ["45 lbs", "Drain plug: 25 lb"] {
            assert_eq!(slugs(text), ["pounds-are-weight"], "{text}");
        }
        for text in ["45 ft-lbs", "45 lbf", "45 kg"] {
            assert!(slugs(text).is_empty(), "{text}");
        }
    }

    #[test]
    fn a_line_that_begins_with_its_thread_goes_to_bolt() {
        let read = line("1/2-20 UNF lug nut 75-85 lb-ft", Tools::Both).unwrap();
        assert_eq!(bolt_in(&read.label.unwrap_or_default()), (Some("1/2-20 UNF"), None));
    }

    #[test]
    fn a_spec_goes_to_bolt_without_what_stands_around_it() {
        for (text, spec) in [
            (
                "• Head bolt M10x1.5x120 30 Nm then 90° then 1/4 turn",
                "30 N·m + 90° + 90°",
            ),
            ("60 N·m", "60 N·m"),
            ("Drain plug: 25 Nm (18 lb-ft)", "25 N·m"),
            ("Drain plug: 25 Nm (30 lb-ft)", "25 N·m (30 lbf·ft)"),
            ("Rod 35-45 ft-lb, oiled", "35–45 lbf·ft (oiled)"),
            ("Plug: at least 12 Nm", "at least 12 N·m"),
            ("Plug 12 Nm max.", "max 12 N·m"),
            ("Plug 12 N·m (with anti-seize)", "12 N·m (anti-seize)"),
            ("Cap 20.25 N·m + 1/6 turn", "20.25 N·m + 60°"),
        ] {
            let read = line(text, Tools::Both).unwrap();
            assert_eq!(read.spec, spec, "{text}");
            assert_eq!(line(spec, Tools::Both).unwrap().spec, spec);
        }
    }

    #[test]
    fn of_two_wrenches_the_one_that_fits_stands_first() {
        for (text, first) in [
            ("1 5/8 in", "inch wrench"),
            ("19 mm", "metric wrench"),
            ("3/4 in", "inch wrench"),
        ] {
            let read = line(text, Tools::Both).unwrap();
            let mut names = read.stages[0].rows.iter().map(|row| row.name.to_string());
            let wrench = names.find(|name| name.ends_with("wrench"));
            assert_eq!(wrench.as_deref(), Some(first), "{text}");
        }
    }

    #[test]
    fn what_most_tools_read_in_stands_first() {
        for (text, tools, first) in [
            ("2.5 kg-m", Tools::Both, ["lbf·ft", "N·m", "lbf·in"]),
            ("2,5 daN.m", Tools::Both, ["lbf·ft", "N·m", "lbf·in"]),
            ("60 N·m", Tools::Both, ["lbf·ft", "lbf·in", "kgf·m"]),
            ("60 N·m", Tools::Metric, ["lbf·ft", "kgf·m", "lbf·in"]),
            ("120 in-lb", Tools::Both, ["N·m", "lbf·ft", "kgf·m"]),
            ("120 in-lb", Tools::Inch, ["lbf·ft", "N·m", "kgf·m"]),
            ("1.2 N·m", Tools::Both, ["lbf·ft", "lbf·in", "ozf·in"]),
            ("2.5 kgf/cm²", Tools::Both, ["psi", "bar", "inHg"]),
            ("30 psi", Tools::Both, ["bar", "kPa", "MPa"]),
            ("1 gal", Tools::Both, ["L", "US·qt", "mL"]),
            ("250 °F", Tools::Both, ["°C", "K", ""]),
            ("350 K", Tools::Both, ["°F", "°C", ""]),
            ("80 km/h", Tools::Both, ["mph", "", ""]),
            ("20 Δ°F", Tools::Both, ["ΔK", "", ""]),
            ("5 ft 3 in", Tools::Both, ["mm", "cm", "m"]),
            ("1.9 cm", Tools::Both, ["in", "mm", "in-fraction"]),
        ] {
            let read = line(text, tools).unwrap();
            let rows: Vec<Id> = read.stages[0].listed().map(|row| row.id).collect();
            let wanted = first.into_iter().filter(|name| !name.is_empty()).map(Id::Row);
            assert_eq!(rows, wanted.collect::<Vec<_>>(), "{text}, {tools:?}");
        }
    }

    #[test]
    fn the_first_row_is_the_one_people_read_and_of_a_way_the_fraction_of_an_inch_is_last() {
        for (text, first) in [
            ("150 km", Unit::Mile),
            ("200 000 km", Unit::Mile),
            ("93 000 mi", Unit::Kilometre),
            ("900 MPa", Unit::PoundForcePerSquareInch),
        ] {
            let read = line(text, Tools::Both).unwrap();
            assert_eq!(read.stages[0].rows[0].unit, first, "{text}");
            let rows = &read.stages[0].rows;
            let fraction = rows.iter().position(|row| row.name == "nearest 1/64 inch");
            assert!(fraction.is_none_or(|at| at + 1 == rows.len()), "{text}");
            assert!(fraction.is_some() || text != "150 km");
        }
        let part = line("1.5 m", Tools::Both).unwrap();
        assert!(part.stages[0].rows.iter().any(|row| row.name == "nearest 1/64 inch"));
    }
}
