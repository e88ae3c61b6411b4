//! What stands before the value of a line: a name, most of the time. A number in it may count something,
//! name a thread or a class, or be another value, which must not be passed over in silence.

use super::unit::is_letter;
use super::{Expect, Kind, STAGES, closes, place_in, range, value_starts};
use crate::quantity::Bounds;
use core::ops::Range;

/// Words before a number that counts, or is the size of something.
const COUNTED: &[&str] = &[
    "no", "nr", "pos", "item", "fig", "figure", "row", "seq", "class", "grade", "m", "x", "×", "*",
];
/// Words of which several may be numbered.
const NUMBERED: &[&str] = &[
    "bolt",
    "bolts",
    "screw",
    "screws",
    "nut",
    "nuts",
    "stud",
    "studs",
    "cyl",
    "cylinder",
    "cylinders",
    "pulley",
    "idler",
    "cap",
    "bearing",
];
/// Strength classes, which stand beside a torque.
const CLASSES: &[&str] = &["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"];
/// Marks and words that join two values.
const JOINTS: &[&str] = &[
    "+", "~", "÷", "/", "&", "to", "then", "or", "and", "a", "à", "bis", "plus",
];
/// Words between a value and the state it holds for.
const AT: &[&str] = &["at", "@"];
/// Words and signs that make a limit of a value.
const LIMITS: &[&str] = &[
    "min",
    "max",
    "minimum",
    "maximum",
    ">",
    "<",
    "≥",
    "≤",
    ">=",
    "<=",
    "least",
    "most",
    "than",
    "below",
    "above",
    "over",
    "under",
    "mindestens",
    "höchstens",
];
/// Words that begin such words.
const BEFORE_LIMITS: &[&str] = &["at", "no", "not", "more", "less", "up"];
/// How far apart the ends of a range of one spec may lie; numbers further apart are no two such values.
const APART: f64 = 3.0;

/// A word as the lists have it.
fn known(list: &[&str], word: &str) -> bool {
    let word = word.trim_matches(|letter: char| matches!(letter, '.' | ':' | ',' | '(' | ')' | '#'));
    list.iter().any(|known| known.eq_ignore_ascii_case(word))
}

/// The last word of a label that is more than a mark.
fn last_word(label: &str) -> Option<&str> {
    let mut words = label.split_whitespace().rev();
    words.find(|word| word.contains(char::is_alphanumeric) || matches!(*word, "×" | "*"))
}

/// Whether what follows a label counts something or is a size: the label ends with `Stage`, `M8 x` or the
/// name of a thread.
pub(super) fn counts(label: &str) -> bool {
    last_word(label).is_some_and(|word| known(COUNTED, word) || known(STAGES, word) || is_thread(word))
}

/// Whether a word makes a limit of the value beside it.
pub(super) fn is_limit(word: &str) -> bool {
    known(LIMITS, word)
}

/// The words at the end of a label that make a limit of the value behind it: `min.`, `at least`, `up to`.
pub(super) fn limit(label: &str) -> Option<&str> {
    let mut words = label.split_whitespace().rev();
    let last = words.next()?;
    let mut first = words.next();
    let up_to = last.eq_ignore_ascii_case("to") && first.is_some_and(|word| word.eq_ignore_ascii_case("up"));
    if !up_to && !is_limit(last) {
        return None;
    }
    let mut start = last;
    while let Some(word) = first.filter(|word| known(BEFORE_LIMITS, word)) {
        start = word;
        first = words.next();
    }
    Some(label.get(place_in(label, start)..)?.trim_end())
}

/// Whether a stage without a torque is joined to a label: `snug` before `+ 90`, `snug, then` before `90`.
pub(super) fn joins(label: &str, tail: &str) -> bool {
    let joint = last_word(label).is_some_and(|word| known(&["then", "plus"], word));
    joint || tail.starts_with('+') && !label.trim().is_empty()
}

/// A label without the name of the first stage at its end, where the others are read with it: `Stage 1:`,
/// `1. Stufe`.
pub(super) fn without_first(label: &str) -> &str {
    let mut words = label
        .split_whitespace()
        .rev()
        .filter(|word| word.contains(is_letter) || word.contains('1'));
    let (Some(last), Some(word)) = (words.next(), words.next()) else {
        return label;
    };
    let numbered = known(STAGES, word) && known(&["1"], last);
    let ordinal = known(STAGES, last) && known(&["1", "1st"], word);
    let before = label.get(..place_in(label, word));
    let before = before.filter(|_| numbered || ordinal);
    before.map_or(label, |before| before.trim_end_matches(closes))
}

/// `M10`, `M10x1.5`.
fn is_thread(word: &str) -> bool {
    let digits = word.strip_prefix(['M', 'm']).unwrap_or_default();
    digits.starts_with(|letter: char| letter.is_ascii_digit())
}

/// How far a name goes that a line begins with and that begins with a number: a thread in inches
/// (`3/8-16`), an oil's grade (`0W-20`), a tyre's size (`205/55 R16`), or a count of named things (`4x M8`).
pub(super) fn leading(text: &str) -> Option<usize> {
    let mut words = text.split_whitespace();
    let (first, second) = (words.next()?, words.next().unwrap_or_default());
    let last = match () {
        () if inch_thread(first) || oil(first) || tyre(first, "") => first,
        () if tyre(first, second) => second,
        () if starts_with_letter(second) && first.strip_suffix(TIMES).is_some_and(is_digits) => first,
        () if is_digits(first) && second.strip_suffix(TIMES) == Some("") => {
            words.next().filter(|word| starts_with_letter(word)).map(|_| second)?
        }
        () => return None,
    };
    Some(place_in(text, last) + last.len())
}

const TIMES: [char; 3] = ['x', 'X', '×'];

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn starts_with_letter(text: &str) -> bool {
    text.starts_with(|letter: char| letter.is_ascii_alphabetic())
}

/// `3/8-16`, `7/8"-14`, also with a length behind it: `1/4-20x3/4`.
pub(super) fn inch_thread(word: &str) -> bool {
    let parts = word.split_once('-').and_then(|(size, pitch)| {
        let (above, below) = size.trim_end_matches(['"', '″', '”']).split_once('/')?;
        let (pitch, length) = pitch.split_once(TIMES).unwrap_or((pitch, "1"));
        let is_length = length.starts_with(|letter: char| letter.is_ascii_digit())
            && !length.contains(|letter: char| letter.is_ascii_alphabetic());
        is_length.then_some([above, below, pitch])
    });
    parts.is_some_and(|parts| parts.into_iter().all(is_digits))
}

/// `5W-30`, `5W30`.
pub(super) fn oil(word: &str) -> bool {
    let parts = word.trim_end_matches(':').split_once(['W', 'w']);
    let grade = |text: &str| text.len() <= 2 && is_digits(text);
    parts.is_some_and(|(cold, hot)| grade(cold) && grade(hot.trim_start_matches('-')))
}

/// `205/55R16`, or its `205/55` before an `R16`.
fn tyre(word: &str, next: &str) -> bool {
    let Some((width, rest)) = word.split_once('/') else {
        return false;
    };
    let (height, rim) = if next.is_empty() {
        rest.split_once('R').unwrap_or_default()
    } else {
        (rest, next.strip_prefix('R').unwrap_or_default())
    };
    let size = |text: &str, digits| text.len() == digits && is_digits(text);
    size(width, 3) && size(height.trim_end_matches('Z'), 2) && size(rim.trim_end_matches(['C', ':']), 2)
}

/// Whether a text begins with two numbers before any unit: `1 100 N·m`, `5 to 60 N·m`. A fraction, and a
/// value with its tolerance, are one.
pub(super) fn begins_with_two(tail: &str) -> bool {
    let parts = tail.split(|letter: char| {
        letter.is_whitespace() && letter != '\u{202f}' && letter != '\u{a0}' && letter != '\u{2009}'
            || matches!(letter, '-' | '–' | '—' | '−' | '…' | '~' | '÷')
    });
    let numbers = parts
        .filter(|part| !part.is_empty() && !known(JOINTS, part))
        .take_while(|part| part.starts_with(|letter: char| letter.is_ascii_digit() || matches!(letter, '.' | ',')));
    // The last of them may have its unit behind it.
    numbers.take(3).filter(|part| !part.contains(['/', '⁄'])).count() > 1
}

/// Whether the first of two numbers may count something, so far is it from a value: `bolt 5 to 60 N·m`,
/// `bolts 40 160 N·m`.
pub(super) fn could_count(label: &str, read: Bounds) -> bool {
    let turns = matches!(read.kind(), Kind::Torque | Kind::Angle | Kind::Pressure);
    let wide = read.low.quantity().si() * APART < read.high.quantity().si();
    !label.trim().is_empty() && turns && (wide || !read.is_range())
}

/// A value in a label that could as well be the one meant: of the same kind, another stage, one whose state
/// is what was read (`2 bar at 80 °C`), or a number alone that is as large (`40, 60, 80 N·m`).
pub(super) fn rival(label: &str, read: Bounds) -> Option<Range<usize>> {
    let turns = |kind| matches!(kind, Kind::Torque | Kind::Angle);
    let meant = read.kind();
    let state = last_word(label).is_some_and(|word| known(AT, word)) || label.trim_end().ends_with('@');
    let mut starts = value_starts(label, 0);
    let measured = starts.find_map(|start| {
        let tail = label.get(start..)?;
        // A value and its unit are no more than four words.
        let ends = tail
            .char_indices()
            .filter(|(_, letter)| letter.is_whitespace())
            .map(|(end, _)| end);
        ends.chain([tail.len()]).take(4).find_map(|end| {
            let value = tail.get(..end)?;
            let kind = range(value, Expect::default()).ok()?.kind();
            let end = start + value.trim_end_matches(closes).len();
            (kind == meant || state || turns(kind) && turns(meant)).then_some(start..end)
        })
    });
    measured.or_else(|| alone(label, read))
}

/// A number without a unit in a label that is no count, size or class: one joined to the value, or about as
/// large.
fn alone(label: &str, read: Bounds) -> Option<Range<usize>> {
    let mut before = "";
    let mut words = label.split_whitespace().peekable();
    while let Some(word) = words.next() {
        let number = word.trim_end_matches([',', ';', ':', '+']);
        let counted = known(COUNTED, before) || known(STAGES, before) || is_thread(before) || known(CLASSES, number);
        let numbered = known(NUMBERED, before) || word.ends_with(':');
        before = word;
        let value = super::decimal(&number.replace(',', ".")).filter(|value| !counted && *value > 0.0);
        let Some(value) = value else { continue };
        let joint = words.peek().copied().filter(|joint| known(JOINTS, joint));
        let joined = joint.is_some() && words.clone().nth(1).is_none() || word.ends_with('+');
        let as_large = value * APART >= read.low.value && value <= read.high.value * APART;
        if joined || as_large && !numbered {
            let last = joint.unwrap_or(word);
            let place = |word: &str| place_in(label, word);
            return Some(place(number)..place(last) + last.len());
        }
    }
    None
}
