//! Reading text: numbers, units, values and ranges, stages, labelled lines.
//!
//! One grammar serves the fields, the link and a pasted spec list. `numeral` reads a number,
//! `unit` a unit, `amount` puts them together, `label` looks at what stands before; the entry points for callers are here.

mod amount;
mod label;
mod numeral;
mod unit;

pub use super::typed::Stage;
pub use numeral::like_thousands;

use super::fault::{Fault, Misread};
use super::typed::{Bounds, Typed};
use super::{Kind, Unit};
use core::ops::Range;
use winnow::error::{ErrMode, ParserError};
use winnow::prelude::*;
use winnow::stream::{LocatingSlice, Location, Stream};

/// What the parsers run over: a text that knows how far it has been read.
type Input<'a> = LocatingSlice<&'a str>;
/// What they return; a `Cut` is final, a `Backtrack` lets another reading be tried.
type Reading<T> = Result<T, ErrMode<Trouble>>;

/// Why a reading failed. Small, and free to make where the text merely is not of the form tried.
#[derive(Debug)]
struct Trouble {
    /// How far the text had been read, in bytes.
    at: usize,
    /// What is wrong there; a missing number where nothing else is known.
    fault: Option<Box<Fault>>,
}

impl Trouble {
    /// A fault that ends the reading.
    fn cut(place: Range<usize>, misread: Misread) -> ErrMode<Self> {
        ErrMode::Cut(Self {
            at: place.start,
            fault: Some(Box::new(Fault::new(place, misread))),
        })
    }

    fn into_fault(self) -> Fault {
        self.fault
            .map_or_else(|| Fault::new(self.at..self.at, Misread::NoNumber), |fault| *fault)
    }
}

impl<'a> ParserError<Input<'a>> for Trouble {
    type Inner = Self;

    fn from_input(input: &Input<'a>) -> Self {
        Self {
            at: input.current_token_start(),
            fault: None,
        }
    }

    fn into_inner(self) -> Result<Self::Inner, Self> {
        Ok(self)
    }
}

/// What a caller expects of a text.
#[derive(Clone, Copy, Debug, Default)]
pub struct Expect {
    /// The only kind accepted; any kind when absent.
    pub kind: Option<Kind>,
    /// The unit of a bare number; a bare number is a fault when absent.
    pub bare: Option<Unit>,
}

impl Expect {
    /// A field for one kind, whose bare numbers are in `unit`; other units of the kind are taken too.
    ///
    /// ```
    /// use shopmath::quantity::{Unit, read};
    /// let grip = read::Expect::field(Unit::Millimetre);
    /// assert_eq!(read::value("40", grip).unwrap().unit, Unit::Millimetre);
    /// assert!(read::value("40 N·m", grip).is_err());
    /// ```
    #[must_use]
    pub fn field(unit: Unit) -> Self {
        Self {
            kind: Some(unit.kind()),
            bare: Some(unit),
        }
    }
}

/// A line of a spec list: an optional label and one or more stages.
#[derive(Clone, Debug, PartialEq)]
pub struct Line<'a> {
    /// What stood before the value, such as "Tensioner bolt".
    pub label: Option<&'a str>,
    /// What makes a limit of the value, before or behind it, such as `min.` or `>`.
    pub limit: Option<&'a str>,
    /// The values joined by `+`; one for a plain value. Several are torques and angles only.
    pub stages: Vec<Stage>,
}

/// Reads one value, no range, no stages.
///
/// # Errors
/// A [`Fault`] naming the place in `text` and what to type instead.
///
/// ```
/// use shopmath::quantity::{read, Unit};
/// let grip = read::value("1-5/8 in", read::Expect::field(Unit::Millimetre)).unwrap();
/// assert_eq!((grip.value, grip.unit), (1.625, Unit::Inch));
/// let bare = read::value("40", read::Expect::field(Unit::Millimetre)).unwrap();
/// assert_eq!((bare.value, bare.unit), (40.0, Unit::Millimetre));
/// ```
pub fn value(text: &str, expect: Expect) -> Result<Typed, Fault> {
    let bounds = range(text, expect)?;
    if bounds.is_range() {
        return Err(Fault::new(0..text.len(), Misread::RangeNotWanted));
    }
    Ok(bounds.low)
}

/// Reads a value or a range. Numbers lie within ±10¹⁵; a range runs from the smaller end to the larger.
///
/// # Errors
/// A [`Fault`] naming the place in `text` and what to type instead.
///
/// ```
/// use shopmath::quantity::{Unit, fault::Misread, read};
/// let spec = read::range("35-45 ft-lb", read::Expect::default()).unwrap();
/// assert_eq!((spec.low.value, spec.high.value, spec.low.unit), (35.0, 45.0, Unit::PoundForceFoot));
/// let backwards = read::range("45-35 ft-lb", read::Expect::default()).unwrap_err();
/// assert_eq!(backwards.misread, Misread::Backwards);
/// ```
pub fn range(text: &str, expect: Expect) -> Result<Bounds, Fault> {
    let read = whole(text, |input: &mut Input<'_>| amount::stages(input, expect, false)).map_err(|mut fault| {
        let no_number = matches!(
            fault.misread,
            Misread::NoNumber | Misread::UnknownUnit(_) | Misread::WrongKind { .. }
        );
        if no_number && expect.bare == Some(Unit::Number) {
            fault.misread = Misread::NumberAlone;
        }
        fault
    })?;
    match read.as_slice() {
        [only] => Ok(only.value),
        _ => Err(Fault::new(0..text.len(), Misread::StagesNotWanted)),
    }
}

/// Reads stages joined by `+`: `10 N·m + 90°`, `20 N·m (15 lbf·ft) + 60°`, `30 N·m, then a further half
/// turn`. A single value of any expected kind is one stage; of several, each is a torque or an angle.
///
/// # Errors
/// A [`Fault`] naming the place in `text` and what to type instead.
///
/// ```
/// use shopmath::quantity::{Kind, read};
/// let spec = read::stages("20 N·m (15 lbf·ft) + 60°", read::Expect::default()).unwrap();
/// assert_eq!((spec.len(), spec[0].beside[0].low.value, spec[1].value.kind()), (2, 15.0, Kind::Angle));
/// assert!(read::stages("20 N·m + 60 mm", read::Expect::default()).is_err());
/// ```
pub fn stages(text: &str, expect: Expect) -> Result<Vec<Stage>, Fault> {
    whole_stages(text, expect).map_err(|fault| turns_back(text).unwrap_or(fault))
}

fn whole_stages(text: &str, expect: Expect) -> Result<Vec<Stage>, Fault> {
    whole(text, |input: &mut Input<'_>| amount::stages(input, expect, true))
}

/// Reads a line of a spec list: `Tensioner bolt: 60 N·m (44 lbf·ft)`.
///
/// # Errors
/// A [`Fault`] naming the place in `text` and what to type instead.
///
/// ```
/// use shopmath::quantity::read;
/// let line = read::line("Idler bolt 45 N·m (33 lbf·ft)").unwrap();
/// assert_eq!(line.label, Some("Idler bolt"));
/// assert_eq!(line.stages[0].beside.len(), 1);
/// ```
pub fn line(text: &str) -> Result<Line<'_>, Fault> {
    line_from(text, 0).or_else(|fault| {
        // What begins with a number may be a name: `3/8-16 30 lbf·ft`. Not before an angle: `2x turn 90°`.
        let name = label::leading(text);
        let read = name.and_then(|from| line_from(text, from).ok());
        let turns = |line: &Line<'_>| {
            line.stages
                .iter()
                .take(1)
                .any(|first| first.value.kind() == Kind::Angle)
        };
        read.filter(|line| !turns(line))
            .ok_or_else(|| turns_back(text).unwrap_or(fault))
    })
}

/// Reads a line whose value begins no earlier than a place, 0 for anywhere.
fn line_from(text: &str, from: usize) -> Result<Line<'_>, Fault> {
    let mut first_fault: Option<Fault> = None;
    let mut counted = false;
    for start in value_starts(text, from) {
        let (label, tail) = text.split_at_checked(start).unwrap_or_default();
        match labelled(label, tail) {
            Ok(stages) => {
                let Some(first) = stages.first().map(|stage| stage.value) else {
                    continue;
                };
                let two = label::begins_with_two(tail);
                if two && label::counts(label) {
                    first_fault.get_or_insert(Fault::new(start..text.len(), Misread::TwoValues));
                    counted = false;
                    continue;
                }
                if two && label::could_count(label, first) {
                    return Err(Fault::new(start..text.len(), Misread::TwoValues));
                }
                // `Main cap 65 + 90°`: the joint is read with the angle.
                let joint = tail.len() - tail.trim_start_matches(['+', ' ']).len();
                let before = text.get(from..start + joint).unwrap_or(label);
                if let Some(place) = label::rival(before, first) {
                    let place = place.start + from..place.end + from;
                    let fault = first_fault.filter(|fault| matches!(fault.misread, Misread::NoUnit { .. }));
                    let joined = text.get(place.clone()).is_some_and(|rival| rival.ends_with('+'));
                    return Err(fault
                        .filter(|_| joined)
                        .unwrap_or(Fault::new(place, Misread::TwoValues)));
                }
                let limit = label::limit(label);
                let label = limit
                    .and_then(|limit| label.trim_end().strip_suffix(limit))
                    .unwrap_or(label);
                let label = if stages.len() > 1 {
                    label::without_first(label)
                } else {
                    label
                };
                let label = Some(trim_label(label)).filter(|label| !label.is_empty());
                let limit = limit.or_else(|| limit_behind(text));
                return Ok(Line { label, limit, stages });
            }
            // What is wrong with the number of a stage, `Stage 1: 20 N·m`, says less than what is behind it.
            Err(mut fault) if counted || first_fault.is_none() => {
                // `snug + 90`, `snug, then 90`
                if label::joins(label, tail) {
                    amount::expect_turn(&mut fault.misread, tail);
                }
                first_fault = Some(fault.shifted(start));
                counted = label::counts(label);
            }
            Err(_) => {}
        }
    }
    Err(first_fault.unwrap_or_else(|| {
        let misread = if text.trim().is_empty() {
            Misread::Empty
        } else {
            Misread::NoNumber
        };
        Fault::new(0..text.len(), misread)
    }))
}

/// The stages behind a label. A dash stuck to them, `Idler bolt -60 N·m`, is no sign but of a temperature.
fn labelled(label: &str, tail: &str) -> Result<Vec<Stage>, Fault> {
    let read = whole_stages(tail, Expect::default());
    let first = read.as_ref().ok().and_then(|stages| stages.first());
    let below = first.is_some_and(|first| first.value.low.value < 0.0 && first.value.kind() != Kind::Temperature);
    match tail
        .strip_prefix(['-', '–', '−'])
        .filter(|_| below && !label.trim().is_empty())
    {
        Some(unsigned) => whole_stages(unsigned, Expect::default()),
        None => read,
    }
}

/// Whether a text is a thread in inches and nothing else, such as `7/8"-14`, of any size.
///
/// ```
/// use shopmath::quantity::read::names_inch_thread;
/// assert!(names_inch_thread("7/8\"-14") && names_inch_thread("3/8-16"));
/// assert!(!names_inch_thread("1/4-1/2 in"));
/// ```
#[must_use]
pub fn names_inch_thread(text: &str) -> bool {
    let text: String = text.split_whitespace().collect();
    label::inch_thread(&text)
}

/// A plain decimal with a point, such as a pitch in a designation; nothing around it, not even a space. A sign
/// and a power of ten are read too, and so are `NaN` and `inf`: check the range where the text is a person's.
///
/// ```
/// use shopmath::quantity::read::decimal;
/// assert_eq!(decimal("1.25"), Some(1.25));
/// assert_eq!((decimal("1,25"), decimal("1.25 mm")), (None, None));
/// ```
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    numeral::nearest(text)
}

/// Where a part of a text begins in it, in bytes.
pub(crate) fn place_in(text: &str, part: &str) -> usize {
    part.as_ptr().addr() - text.as_ptr().addr()
}

/// Runs a parser over the whole text; what is left over is a fault.
fn whole<'a, T>(text: &'a str, mut parser: impl FnMut(&mut Input<'a>) -> Reading<T>) -> Result<T, Fault> {
    if text.trim().is_empty() {
        return Err(Fault::new(0..text.len(), Misread::Empty));
    }
    let mut input = LocatingSlice::new(text);
    let read = parser.parse_next(&mut input).map_err(|error| match error {
        ErrMode::Backtrack(trouble) | ErrMode::Cut(trouble) => trouble.into_fault(),
        ErrMode::Incomplete(_) => Fault::new(text.len()..text.len(), Misread::NoNumber),
    })?;
    let rest: &str = input.peek_finish();
    if is_note(rest) {
        Ok(read)
    } else {
        let start = text.len() - rest.trim_start().len();
        Err(Fault::new(start..text.len(), Misread::Leftover))
    }
}

/// Words before the number of a stage.
const STAGES: &[&str] = &[
    "stage", "step", "pass", "phase", "schritt", "stufe", "étape", "Étape", "etape", "fase", "paso",
];

/// Words that turn a bolt back.
const BACK: &[&str] = &[
    "loosen",
    "slacken",
    "lösen",
    "zurück",
    "zurückdrehen",
    "desserrer",
    "dévisser",
];

/// Where a spec turns back behind a figure of it, which no stage here can say, and what tightens after that.
fn turns_back(text: &str) -> Option<Fault> {
    let from = text.find(|letter: char| letter.is_ascii_digit())?;
    let mut words = text.get(from..)?.split_whitespace().peekable();
    while let Some(word) = words.next() {
        let next = words.peek().copied().unwrap_or_default();
        let bare = word.trim_matches(closes);
        let off = matches!(next, "off" | "out" | "by") || next.starts_with(|letter: char| letter.is_ascii_digit());
        if BACK.iter().any(|known| known.eq_ignore_ascii_case(bare)) || off && bare.eq_ignore_ascii_case("back") {
            let start = place_in(text, bare);
            let end = start + bare.len();
            let on = |start: usize| {
                let tail = text.get(start..)?;
                let first = whole_stages(tail, Expect::default()).ok()?.first()?.value.kind();
                (first == Kind::Torque).then(|| tail.to_owned())
            };
            let after = value_starts(text, end).find_map(on).unwrap_or_default();
            return Some(Fault::new(start..end, Misread::TurnsBack(after)));
        }
    }
    None
}

/// Words that say something of the value before them.
const NOTES: &[&str] = &[
    "max",
    "min",
    "maximum",
    "minimum",
    "dry",
    "oiled",
    "lubricated",
    "approx",
    "each",
    "cold",
    "af",
];

/// The word behind the value of a text that reads that makes a limit of it: `40 N·m max.`
///
/// ```
/// use shopmath::quantity::read::limit_behind;
/// assert_eq!(limit_behind("40 N·m max."), Some("max"));
/// assert_eq!((limit_behind("40 N·m"), limit_behind("850 rev / min")), (None, None));
/// ```
#[must_use]
pub fn limit_behind(text: &str) -> Option<&str> {
    let text = text.trim_end_matches(|letter: char| closes(letter) || letter == ')');
    let parts = |letter: char| letter.is_whitespace() || letter == '(';
    let word = text.rsplit(parts).next()?;
    let before = text.strip_suffix(word)?.trim_end();
    // `rev / min`
    (label::is_limit(word) && !before.is_empty() && !before.ends_with('/')).then_some(word)
}

/// Whether what stands behind a value says something of it and is no value itself: `max.`, `(oiled)`, the
/// mark of a footnote, or what closes an entry of a pasted list.
fn is_note(rest: &str) -> bool {
    // A range whose second end is missing, and no full stop.
    if rest.trim_start().starts_with("..") {
        return false;
    }
    let rest = rest.trim_matches(closes);
    let bracketed = rest.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'));
    rest.is_empty()
        || NOTES.iter().any(|note| note.eq_ignore_ascii_case(rest))
        || bracketed
            .is_some_and(|words| !words.contains(|letter: char| letter.is_numeric()) && !unit::is_measure(words))
        || is_footnote(rest)
}

/// `¹` or `1)`.
fn is_footnote(rest: &str) -> bool {
    let raised = |letter: char| matches!(letter, '¹' | '²' | '³' | '⁴' | '⁵' | '⁶' | '⁷' | '⁸' | '⁹');
    let digit = rest.strip_suffix(')').unwrap_or_default();
    rest.trim_end_matches(raised).is_empty()
        || digit.len() == 1 && digit.starts_with(|letter: char| letter.is_ascii_digit())
}

/// Marks that close an entry of a list, or lead to a footnote.
fn closes(letter: char) -> bool {
    letter.is_whitespace() || matches!(letter, '.' | ',' | ';' | '*' | '†' | '‡')
}

/// Places from a place on where a value may begin: the start of a line that begins with a number, else
/// each number that begins a word (so `M10` in a label is no value).
fn value_starts(text: &str, from: usize) -> impl Iterator<Item = usize> + '_ {
    let opens = |letter: char| {
        letter.is_ascii_digit()
            || matches!(letter, '+' | '-' | '−' | '–' | '.' | ',' | '±')
            || numeral::vulgar(letter).is_some()
    };
    // `1st stage` and `2)` count the lines of a list.
    let counts = |tail: &str| {
        let after = tail.trim_start_matches(|letter: char| letter.is_ascii_digit());
        let word = after.split(|letter: char| !letter.is_alphabetic()).next();
        after.len() < tail.len()
            && (after.starts_with([')', '\u{ff09}'])
                || after.starts_with(". ")
                || matches!(word, Some("st" | "nd" | "rd" | "th")))
    };
    let grade = |tail: &str| {
        let word = tail.split_whitespace().next();
        word.is_some_and(|word| label::oil(word.trim_end_matches(closes)))
    };
    // `- Idler` is an entry of a list.
    let bullet = |tail: &str| {
        let after = tail.trim_start_matches(['-', '–', '−']);
        after.len() < tail.len() && after.trim_start().starts_with(char::is_alphabetic)
    };
    let tail = text.trim_start();
    let begins_with_value = from == 0 && tail.starts_with(opens) && !counts(tail) && !bullet(tail) && !grade(tail);
    let (mut before, mut previous) = (' ', ' ');
    text.char_indices()
        .filter(move |(_, letter)| {
            // `>40 N·m`, and not the end of a tag.
            let sign = before.is_whitespace() && matches!(previous, '>' | '<' | '≥' | '≤');
            let starts_word = previous.is_whitespace() || sign || matches!(previous, ':' | '=' | '~' | '≈' | 'Ø' | '⌀');
            (before, previous) = (previous, *letter);
            starts_word && opens(*letter)
        })
        .map(|(index, _)| index)
        .filter(move |index| *index >= from && !text.get(*index..).is_some_and(|tail| counts(tail) || grade(tail)))
        .take(if begins_with_value { 1 } else { usize::MAX })
}

/// Drops what joins a label to its value.
fn trim_label(label: &str) -> &str {
    label.trim_matches(|letter: char| {
        letter.is_whitespace()
            || matches!(
                letter,
                ':' | '=' | '-' | '–' | '—' | '•' | '*' | '|' | '~' | '≈' | 'Ø' | '⌀'
            )
    })
}

#[cfg(test)]
mod tests;
