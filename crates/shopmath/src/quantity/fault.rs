//! What can be wrong with a text, where in it, and the sentence that says what to type instead.
//!
//! This is the one place that words such a message. Finding the fault is [`super::read`]'s work.

use super::{Kind, Unit};
use core::fmt;
use core::ops::Range;

/// A text that could not be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The part of the text that is at fault, in bytes; empty where something is missing.
    pub place: Range<usize>,
    /// What is wrong with that part.
    pub misread: Misread,
}

/// The ways a text can fail to be a quantity or a spec.
#[derive(Clone, Debug, PartialEq)]
pub enum Misread {
    /// Nothing was typed.
    Empty,
    /// A number was expected here.
    NoNumber,
    /// `1,234`, or `60.000` of a unit that runs into thousands: thousands or decimals.
    AmbiguousComma {
        /// The number without the mark.
        as_thousands: String,
        /// The number with a decimal point.
        as_decimal: String,
    },
    /// Decimal marks and separators that make no number, such as `1.2.3`.
    Malformed,
    /// A fraction over zero.
    ZeroDenominator,
    /// A number beyond what a shop can mean, ±10¹⁵.
    OutOfRange,
    /// A number without a unit where none is implied.
    NoUnit {
        /// The kind expected, where one is.
        expected: Option<Kind>,
    },
    /// A fraction without a unit where numbers are in millimetres, and its decimals.
    Fraction(String),
    /// A word that is no unit; the nearest one where a near one exists.
    UnknownUnit(Option<Unit>),
    /// A spelling whose capitals make it another unit, such as `mPa`.
    OtherUnit {
        /// What the spelling means by the standard.
        meaning: &'static str,
        /// The symbol to type.
        instead: &'static str,
    },
    /// A unit that is not read: what one of it is in a unit that is.
    Multiple(&'static str),
    /// A unit with two meanings, such as `oz`.
    AmbiguousUnit(&'static [&'static str]),
    /// A quantity of the wrong kind for the field.
    WrongKind {
        /// The kind the field takes.
        expected: Kind,
        /// The kind that was read.
        found: Kind,
    },
    /// Two ends of a range, or figures side by side, that measure different things.
    MixedKinds(Kind, Kind),
    /// A range whose first end is the larger.
    Backwards,
    /// A temperature below −273.15 °C.
    BelowAbsoluteZero,
    /// A stage that is neither torque nor angle.
    NotAStage(Kind),
    /// One value was wanted and a range was typed.
    RangeNotWanted,
    /// Several stages where one value was wanted.
    StagesNotWanted,
    /// Text left over after a complete value.
    Leftover,
    /// Two values in one line that neither belong together nor restate one another.
    TwoValues,
    /// No plain number in a field that takes nothing else.
    NumberAlone,
    /// A stage that turns back; the spec from the next torque on, empty where none follows.
    TurnsBack(String),
    /// A limit where a torque to tighten to is wanted; the text without what makes it one.
    Limit(String),
    /// The name of a thing that another bench takes, such as a thread.
    Name(&'static str),
}

impl Fault {
    /// A fault at `place`, counted in bytes from the start of the text.
    ///
    /// ```
    /// use shopmath::quantity::{fault::{Fault, Misread}, read};
    /// let fault = Fault::new(3..11, Misread::UnknownUnit(None));
    /// assert_eq!(read::line("60 furlongs"), Err(fault));
    /// ```
    #[must_use]
    pub fn new(place: Range<usize>, misread: Misread) -> Self {
        Self { place, misread }
    }

    /// The same fault in a longer text of which the faulty one began at `offset`, in bytes.
    ///
    /// ```
    /// use shopmath::quantity::fault::{Fault, Misread};
    /// let fault = Fault::new(3..11, Misread::UnknownUnit(None)).shifted("Idler ".len());
    /// assert_eq!(&"Idler 60 furlongs"[fault.place], "furlongs");
    /// ```
    #[must_use]
    pub fn shifted(self, offset: usize) -> Self {
        Self {
            place: self.place.start + offset..self.place.end + offset,
            ..self
        }
    }

    /// The whole sentence for a person: where, what was read, what to type instead. The place is counted in
    /// characters from 1; of a long text 24 characters are quoted. `text` is the one that was read.
    ///
    /// ```
    /// use shopmath::quantity::read;
    /// let text = "45-35 N·m";
    /// let sentence = read::line(text).unwrap_err().sentence(text);
    /// assert!(sentence.starts_with("At character 1, “45-35 N·m”: the range runs from large to small."), "{sentence}");
    /// ```
    #[must_use]
    pub fn sentence(&self, text: &str) -> String {
        let read = head(text.get(self.place.clone()).unwrap_or_default().trim());
        let position = text.get(..self.place.start).map_or(0, |before| before.chars().count()) + 1;
        if read.is_empty() {
            let before = tail(text.get(..self.place.start).unwrap_or(text).trim());
            if text.trim().is_empty() {
                self.misread.to_string()
            } else if before.is_empty() {
                format!("At the start: {}", self.misread)
            } else {
                format!("After “{before}”: {}", self.misread)
            }
        } else {
            format!("At character {position}, “{read}”: {}", self.misread)
        }
    }

    /// The text around the place at fault in three parts: before it, the place, behind it. What is long is
    /// cut, so that the place is seen. Nothing where the fault is no part of the text.
    ///
    /// ```
    /// use shopmath::quantity::read;
    /// let text = "60 furlongs";
    /// let fault = read::line(text).unwrap_err();
    /// assert_eq!(fault.excerpt(text), Some(["60 ".into(), "furlongs".into(), String::new()]));
    /// ```
    #[must_use]
    pub fn excerpt(&self, text: &str) -> Option<[String; 3]> {
        let wrong = text.get(self.place.clone())?;
        let part = !wrong.is_empty() && wrong.len() < text.len();
        let (before, after) = (text.get(..self.place.start)?, text.get(self.place.end..)?);
        part.then(|| [tail(before), head(wrong), head(after)])
    }

    /// Whole texts to offer instead, each one tap away; empty where none can be guessed. `text` is the one that
    /// was read.
    ///
    /// ```
    /// use shopmath::quantity::read;
    /// let remedies = |text| read::line(text).unwrap_err().remedies(text);
    /// assert_eq!(remedies("1,234 N·m"), ["1234 N·m", "1.234 N·m"]);
    /// assert_eq!(remedies("1O N·m"), ["10 N·m"]);
    /// ```
    #[must_use]
    pub fn remedies(&self, text: &str) -> Vec<String> {
        if let Misread::TurnsBack(whole) | Misread::Limit(whole) = &self.misread {
            return Some(whole.clone())
                .filter(|whole| !whole.is_empty())
                .into_iter()
                .collect();
        }
        if self.misread == Misread::NumberAlone {
            let number = text.get(..self.place.start).unwrap_or_default().trim();
            let ends = number.ends_with(|letter: char| letter.is_ascii_digit());
            return Some(number.to_owned()).filter(|_| ends).into_iter().collect();
        }
        let options: Vec<String> = match &self.misread {
            Misread::AmbiguousComma {
                as_thousands,
                as_decimal,
            } => vec![as_thousands.clone(), as_decimal.clone()],
            Misread::Fraction(decimals) => {
                let read = text.get(self.place.clone()).unwrap_or_default();
                vec![format!("{} in", read.trim()), format!("{decimals} mm")]
            }
            Misread::UnknownUnit(_) if let Some(digits) = look_alike(text, &self.place) => vec![digits],
            Misread::UnknownUnit(Some(unit)) => vec![unit.symbol().into()],
            // A fraction alone may name a thread, or a length.
            Misread::Name(_)
                if text
                    .chars()
                    .all(|letter| letter.is_ascii_digit() || matches!(letter, ' ' | '/')) =>
            {
                vec![format!("{} in", text.trim())]
            }
            Misread::OtherUnit { instead, .. } => vec![(*instead).into()],
            Misread::AmbiguousUnit(options) => options.iter().map(|option| (*option).into()).collect(),
            Misread::NoUnit { .. } if in_brackets(text, self.place.start) || number_follows(text, self.place.end) => {
                Vec::new()
            }
            Misread::NoUnit { expected } => match expected {
                Some(Kind::Angle) => vec!["°".into()],
                Some(kind) => kind.rows().take(2).map(|unit| format!(" {}", unit.symbol())).collect(),
                // A stage is a torque or an angle.
                None if text.contains('+') => [" N·m", " lbf·ft"].map(String::from).to_vec(),
                None => [" N·m", " lbf·ft", " mm", " in"].map(String::from).to_vec(),
            },
            _ => Vec::new(),
        };
        let (Some(before), Some(after)) = (text.get(..self.place.start), text.get(self.place.end..)) else {
            return Vec::new();
        };
        options
            .iter()
            .map(|option| format!("{before}{option}{after}"))
            .collect()
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(out, "nothing typed yet. Type a value and its unit, such as 60 N·m."),
            Self::NoNumber => write!(
                out,
                "a number is missing here. Type digits, such as 60 or 1 5/8, then the unit."
            ),
            Self::AmbiguousComma {
                as_thousands,
                as_decimal,
            } => write!(
                out,
                "the mark can mean thousands or decimals. Type {as_thousands} or {as_decimal}."
            ),
            Self::Malformed => write!(
                out,
                "these marks make no number. Type one decimal mark at most, such as 1234.5."
            ),
            Self::ZeroDenominator => write!(out, "a fraction cannot have 0 below the line. Type one such as 3/8."),
            Self::OutOfRange => write!(
                out,
                "no shop value is this far from 1. Type a number between −10¹⁵ and 10¹⁵."
            ),
            Self::NoUnit { expected: Some(kind) } => {
                let unit = kind.rows().next().unwrap_or(kind.coherent());
                write!(
                    out,
                    "the unit is missing. Add a unit of {}, such as {}.",
                    kind.name(),
                    unit.symbol()
                )
            }
            Self::NoUnit { expected: None } => {
                write!(out, "the unit is missing. Add one, such as N·m, lbf·ft, mm or psi.")
            }
            Self::Fraction(decimals) => write!(out, "a fraction is mostly of an inch. Add in, or type {decimals} mm."),
            Self::UnknownUnit(Some(unit)) => write!(
                out,
                "no unit known here. Did you mean {} ({})?",
                unit.symbol(),
                unit.name()
            ),
            Self::UnknownUnit(None) => write!(
                out,
                "no unit known here. Type one such as N·m, ft-lb, mm, in, bar, psi, L or °C."
            ),
            Self::OtherUnit { meaning, instead } => {
                write!(out, "with these capitals it means {meaning}. Type {instead}.")
            }
            Self::Multiple(one) => write!(
                out,
                "this unit is not read here. One of it is {one}: type the value in that."
            ),
            Self::AmbiguousUnit(options) => write!(out, "this has two meanings. Type {}.", options.join(" or ")),
            Self::WrongKind { expected, found } => write!(
                out,
                "this is {}, and {} is wanted here. Type one such as {}.",
                a(*found),
                a(*expected),
                example(*expected)
            ),
            Self::MixedKinds(one, other) => write!(
                out,
                "{} and {} cannot go together here. Use the same kind of unit for both.",
                a(*one),
                a(*other)
            ),
            Self::Backwards => write!(
                out,
                "the range runs from large to small. Type the smaller end first, such as 35-45."
            ),
            Self::BelowAbsoluteZero => write!(out, "nothing is colder than −273.15 °C. Check the sign and the unit."),
            Self::NotAStage(kind) => write!(
                out,
                "{} is no tightening stage. Join torques and angles by +, such as 10 N·m + 90°.",
                a(*kind)
            ),
            Self::RangeNotWanted => write!(out, "one value is wanted here, not a range. Type a single number."),
            Self::StagesNotWanted => write!(out, "one value is wanted here, not stages. Type a single value."),
            Self::TwoValues => write!(
                out,
                "more than one value may stand here. Give each a line or a field of its own, join stages by +, and write a large number without spaces."
            ),
            Self::NumberAlone => write!(out, "a number alone is wanted here."),
            Self::TurnsBack(_) => write!(
                out,
                "turning back cannot be kept here. Type the stages after it alone, such as 40 N·m + 90°."
            ),
            Self::Limit(whole) => write!(
                out,
                "this is a limit, not a torque to tighten to. Type the torque, such as {whole}."
            ),
            Self::Name(what) => write!(out, "this names a {what}; alone there is nothing to convert in it."),
            Self::Leftover => write!(
                out,
                "this does not belong to the value before it. Remove it, or put it in a line or a field of its own."
            ),
        }
    }
}

/// The characters of a text that are quoted at most.
const QUOTED: usize = 24;

/// The beginning of a text, to quote it.
fn head(text: &str) -> String {
    match text.char_indices().nth(QUOTED).and_then(|(end, _)| text.get(..end)) {
        Some(begins) => [begins, "…"].concat(),
        None => text.to_owned(),
    }
}

/// The end of a text, to quote it.
fn tail(text: &str) -> String {
    let cut = text
        .char_indices()
        .rev()
        .nth(QUOTED - 1)
        .filter(|(start, _)| *start > 0);
    match cut.and_then(|(start, _)| text.get(start..)) {
        Some(ends) => ["…", ends].concat(),
        None => text.to_owned(),
    }
}

/// Whether a place lies in brackets, where a lone number may lead to a footnote.
fn in_brackets(text: &str, place: usize) -> bool {
    let before = text.get(..place).unwrap_or_default();
    before.rfind('(') > before.rfind(')')
}

/// Whether another number follows a place, which has a unit of its own.
fn number_follows(text: &str, place: usize) -> bool {
    let after = text.get(place..).unwrap_or_default().trim_start();
    after.starts_with(|letter: char| letter.is_ascii_digit() || letter == '/')
}

/// A place right behind a digit with its first letters as the digits they look like: `1O N·m`, as a scan
/// of a page has it.
fn look_alike(text: &str, place: &Range<usize>) -> Option<String> {
    let (before, read) = (text.get(..place.start)?, text.get(place.clone())?);
    let digit = |letter| match letter {
        'O' | 'o' => Some('0'),
        'l' | 'I' => Some('1'),
        _ => None,
    };
    let digits: String = read.chars().map_while(digit).collect();
    let rest = read.get(digits.len()..)?;
    let alone = !digits.is_empty() && !rest.starts_with(char::is_alphanumeric);
    let behind_digit = before.ends_with(|letter: char| letter.is_ascii_digit());
    (alone && behind_digit).then(|| [&digits, rest].concat())
}

/// The name of a kind with its article.
fn a(kind: Kind) -> String {
    let name = kind.name();
    let article = if name.starts_with(['a', 'e']) { "an " } else { "a " };
    [article, name].concat()
}

/// A text that a field for `kind` takes.
fn example(kind: Kind) -> &'static str {
    match kind {
        Kind::Torque => "60 N·m",
        Kind::Length => "40 mm",
        Kind::Pressure => "2.5 bar",
        Kind::Volume => "4.5 L",
        Kind::Mass => "12 kg",
        Kind::Force => "300 N",
        Kind::Power => "3 kW",
        Kind::Temperature => "90 °C",
        Kind::Speed => "80 km/h",
        Kind::Rotation => "850 rpm",
        Kind::Angle => "90°",
        Kind::TemperatureDifference => "80 K",
        Kind::Area => "58 mm²",
        Kind::Ratio => "4 %",
        Kind::Compliance => "4.1 µm/kN",
        Kind::Frequency => "220 Hz",
        Kind::LinearDensity => "0.11 kg/m",
        Kind::Current => "90 A",
        Kind::Voltage => "14 V",
    }
}
