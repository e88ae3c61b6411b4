//! The shape of a result, the same for every calculator: what was found, over which range, by
//! which method, from which working and source, with which cautions.
//!
//! A calculator builds [`Finding`]s out of quantities; a view renders any of them. Nothing here
//! is text for the screen beyond the names the trade gives the things.

use crate::caution::Caution;
use crate::quantity::{Quantity, Unit, fraction};
use crate::source::Source;

pub use crate::quantity::print::Style;

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The name other programs read it by.
    pub id: Id,
    /// What it is, as the trade says it.
    pub name: &'static str,
    /// The value or range.
    pub amount: Amount,
    /// The unit to show it in.
    pub unit: Unit,
    /// How to write the number.
    pub style: Style,
    /// How far the value shown is from the one asked for, where the two differ by design.
    pub difference: Option<Difference>,
    /// The method's name, so that two methods are never taken for each other.
    pub method: &'static str,
    /// Equation, the numbers put in, and the source.
    pub working: Working,
    /// What to beware of with this result.
    pub cautions: Vec<Caution>,
}

/// The name a result is read by: an element id, or the symbol of a conversion row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Id {
    /// An id of the contract; a range adds `-low`, `-mid` and `-high`.
    Named(&'static str),
    /// An id of the contract with a number from 1.
    Numbered(&'static str, usize),
    /// A row of Convert by its name, mostly a unit's symbol; its value stands in the unit shown.
    Row(&'static str),
}

/// A value, or a range where the input is uncertain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// One value.
    One(Quantity),
    /// A range; `low` never exceeds `high`.
    Range {
        /// The lower end.
        low: Quantity,
        /// The value at middling inputs, where it has a meaning.
        mid: Option<Quantity>,
        /// The upper end.
        high: Quantity,
    },
}

/// A difference worth stating beside a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference {
    /// What the difference is, such as "slack".
    pub name: &'static str,
    /// Shown minus asked for.
    pub by: Quantity,
    /// The unit to show it in.
    pub unit: Unit,
}

/// How a result came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Working {
    /// The equation in the symbols of its source.
    pub equation: &'static str,
    /// The numbers put in.
    pub terms: Vec<Term>,
    /// Where the equation comes from, and figures in it.
    pub source: Source,
}

/// A number put into an equation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The symbol in the equation.
    pub symbol: &'static str,
    /// What it stands for.
    pub meaning: &'static str,
    /// The number.
    pub amount: Amount,
    /// The unit to show it in.
    pub unit: Unit,
    /// Where it comes from, if it stands in a table and not in a field or in another result.
    pub source: Option<Source>,
}

impl Working {
    /// How a result came about. The equation is written in the symbols of its terms.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::{Term, Working}, source};
    /// let length = Term::new("l", "length typed", Unit::Millimetre.of(41.3), Unit::Millimetre);
    /// let working = Working::new("n = round(l / (1/64 in))", vec![length], source::INCH_FRACTION);
    /// assert_eq!((working.terms, working.source), (vec![length], source::INCH_FRACTION));
    /// ```
    #[must_use]
    #[inline(never)]
    pub fn new(equation: &'static str, terms: Vec<Term>, source: Source) -> Self {
        Self {
            equation,
            terms,
            source,
        }
    }

    /// What the result rests on: the equation's source, then those of the numbers put in, each once.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::{Term, Working}, source::fastener::{CLASS, METRIC_THREAD}};
    /// let strength = Term::new("Rp0.2", "yield strength", Unit::Megapascal.of(640.0), Unit::Megapascal);
    /// let terms = vec![strength.taken_from(CLASS), strength.taken_from(CLASS), strength];
    /// let sources: Vec<_> = Working::new("F = As·Rp0.2", terms, METRIC_THREAD).sources().collect();
    /// assert_eq!(sources, [METRIC_THREAD, CLASS]);
    /// ```
    pub fn sources(&self) -> impl Iterator<Item = Source> + '_ {
        let all = || {
            [Some(self.source)]
                .into_iter()
                .chain(self.terms.iter().map(|term| term.source))
        };
        let first = move |(index, source): (usize, Option<Source>)| {
            source.filter(|_| !all().take(index).any(|earlier| earlier == source))
        };
        all().enumerate().filter_map(first)
    }
}

impl Amount {
    /// A range with a middle: the three in rising order and of one kind, which is not checked.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::Amount};
    /// let clamp = Amount::range(Unit::Kilonewton.of(18.0), Unit::Kilonewton.of(24.0), Unit::Kilonewton.of(31.0));
    /// let ends: Vec<_> = clamp.ends().map(|(_, end)| end.value_in(Unit::Kilonewton).unwrap().round()).collect();
    /// assert_eq!(ends, [18.0, 24.0, 31.0]);
    /// ```
    #[must_use]
    pub fn range(low: impl Into<Quantity>, mid: impl Into<Quantity>, high: impl Into<Quantity>) -> Self {
        Self::Range {
            low: low.into(),
            mid: Some(mid.into()),
            high: high.into(),
        }
    }

    /// The ends with the suffix the contract gives each: none for a single value.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::Amount};
    /// let (low, high) = (Unit::NewtonMetre.of(35.0), Unit::NewtonMetre.of(45.0));
    /// assert_eq!(Amount::from(low).ends().collect::<Vec<_>>(), [(None, low)]);
    /// let range = Amount::Range { low, mid: None, high };
    /// assert_eq!(range.ends().collect::<Vec<_>>(), [(Some("low"), low), (Some("high"), high)]);
    /// ```
    pub fn ends(self) -> impl Iterator<Item = (Option<&'static str>, Quantity)> {
        let ends = match self {
            Self::One(only) => [Some((None, only)), None, None],
            Self::Range { low, mid, high } => [
                Some((Some("low"), low)),
                mid.map(|mid| (Some("mid"), mid)),
                Some((Some("high"), high)),
            ],
        };
        ends.into_iter().flatten()
    }
}

impl<Q: Into<Quantity>> From<Q> for Amount {
    fn from(quantity: Q) -> Self {
        Self::One(quantity.into())
    }
}

impl Term {
    /// A number put in, shown in `unit`, which is of the amount's kind. Kept out of line: there are hundreds of
    /// calls.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::{Amount, Term}};
    /// let pitch = Term::new("P", "pitch", Unit::Millimetre.of(1.5), Unit::Millimetre);
    /// assert_eq!((pitch.amount, pitch.source), (Amount::One(Unit::Millimetre.of(1.5)), None));
    /// ```
    #[must_use]
    #[inline(never)]
    pub fn new(symbol: &'static str, meaning: &'static str, amount: impl Into<Amount>, unit: Unit) -> Self {
        Self {
            symbol,
            meaning,
            amount: amount.into(),
            unit,
            source: None,
        }
    }

    /// The same number, with the table it was taken from.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::Term, source::fastener::CLASS};
    /// let strength = Term::new("Rp0.2", "yield strength", Unit::Megapascal.of(640.0), Unit::Megapascal);
    /// assert_eq!(strength.taken_from(CLASS).source, Some(CLASS)); // ISO 898-1, class 8.8
    /// ```
    #[must_use]
    #[inline(never)]
    pub fn taken_from(self, source: Source) -> Self {
        Self {
            source: Some(source),
            ..self
        }
    }
}

impl Finding {
    /// The number other programs read, with its unit: a row's in the unit it shows, that of a row shown as a
    /// fraction in inches, all others in the coherent SI unit.
    ///
    /// ```
    /// use shopmath::{convert, quantity::Unit, tools::Tools};
    /// let read = convert::line("60 N·m", Tools::Both).unwrap();
    /// let row = &read.stages[0].rows[0];
    /// let (value, unit) = row.plain(row.amount.ends().next().unwrap().1);
    /// assert!((value - 44.253_728_957).abs() < 1e-8 && unit == Unit::PoundForceFoot);
    /// ```
    #[must_use]
    pub fn plain(&self, quantity: Quantity) -> (f64, Unit) {
        if let (Id::Row(_), Style::InchFraction, Quantity::Length(length)) = (self.id, self.style, quantity)
            && let Some(fraction) = fraction::nearest(length)
        {
            return (fraction.inches(), Unit::Inch);
        }
        match (self.id, quantity.value_in(self.unit)) {
            (Id::Row(_), Some(value)) => (value, self.unit),
            _ => (quantity.si(), quantity.kind().coherent()),
        }
    }

    /// A finding to three figures, without difference or cautions, shown in `unit`, which is of the amount's kind.
    /// Kept out of line: there are many calls, each the size of this function.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::{Finding, Id, Working}, source};
    /// let (grip, working) = (Unit::Inch.of(1.625), Working::new("l", Vec::new(), source::UNITS));
    /// let found = Finding::new(Id::Named("grip"), "grip", grip, Unit::Inch, "as typed", working);
    /// let (value, unit) = found.plain(grip);
    /// assert!((value - 0.041_275).abs() < 1e-12 && unit == Unit::Metre && found.cautions.is_empty());
    /// ```
    #[must_use]
    #[inline(never)]
    pub fn new(
        id: Id,
        name: &'static str,
        amount: impl Into<Amount>,
        unit: Unit,
        method: &'static str,
        working: Working,
    ) -> Self {
        Self {
            id,
            name,
            amount: amount.into(),
            unit,
            style: Style::Decimal { step: 0.0 },
            difference: None,
            method,
            working,
            cautions: Vec::new(),
        }
    }

    /// The same, written as a decimal to a step of the unit it is shown in.
    ///
    /// ```
    /// use shopmath::{quantity::Unit, result::{Finding, Id, Style, Working}, source};
    /// let (grip, working) = (Unit::Millimetre.of(41.3), Working::new("l", Vec::new(), source::UNITS));
    /// let found = Finding::new(Id::Named("grip"), "grip", grip, Unit::Millimetre, "as typed", working);
    /// assert_eq!(found.to(0.1).style, Style::Decimal { step: 0.1 });
    /// ```
    #[must_use]
    pub fn to(mut self, step: f64) -> Self {
        self.style = Style::Decimal { step };
        self
    }
}
