//! Numbers as people write them: `60`, `12,5`, `1 234.5`, `3/8`, `1-5/8`, `1⅝`, `6e3`.

use super::{Input, Misread, Reading, Trouble};
use crate::quantity::Kind;
use core::ops::Range;
use lexical_parse_float::FromLexical;
use winnow::ascii::digit1;
use winnow::combinator::{alt, not, opt, preceded, terminated};
use winnow::error::{ErrMode, ParserError};
use winnow::prelude::*;
use winnow::stream::{Location, Stream};
use winnow::token::{any, one_of, take_while};

/// The largest magnitude read, so that no conversion can overflow.
const LIMIT: f64 = 1e15;

/// A number and the step of its last digit; the step is zero for a fraction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Numeral {
    pub(super) value: f64,
    pub(super) step: f64,
    pub(super) form: Form,
}

/// How a number was written, where its unit may say that another one was meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Form {
    /// Leaves nothing open.
    Plain,
    /// With spaces before groups of three digits.
    Spaced,
    /// With a point before three last digits: decimals, or thousands as much of Europe writes them.
    Pointed,
    /// `3/8`: a fraction, or two values with a stroke between them.
    Ratio(f64, f64),
}

impl Form {
    /// Whether two values were meant, and no fraction: below the line of one stands what a rule or a part
    /// of a turn is divided into.
    pub(super) fn is_two(self, kind: Kind) -> bool {
        let Self::Ratio(above, below) = self else { return false };
        let parts: &[f64] = match kind {
            Kind::Length | Kind::Volume => &[2.0, 3.0, 4.0, 8.0, 16.0, 32.0, 64.0],
            Kind::Angle => &[1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0],
            _ if above > below => &[],
            _ => &[2.0, 3.0, 4.0, 5.0, 8.0],
        };
        !parts.contains(&below)
    }
}

/// A number with an optional sign.
pub(super) fn signed(input: &mut Input<'_>) -> Reading<Numeral> {
    let sign = opt(one_of(['-', '−', '–', '+'])).parse_next(input)?;
    let number = unsigned(input)?;
    let value = if matches!(sign, None | Some('+')) {
        number.value
    } else {
        -number.value
    };
    Ok(Numeral { value, ..number })
}

/// A number without a sign.
pub(super) fn unsigned(input: &mut Input<'_>) -> Reading<Numeral> {
    alt((mixed, fraction, decimal)).parse_next(input)
}

/// The value of a vulgar fraction character.
pub(super) fn vulgar(letter: char) -> Option<f64> {
    Some(match letter {
        '½' => 1.0 / 2.0,
        '¼' => 1.0 / 4.0,
        '¾' => 3.0 / 4.0,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '⅙' => 1.0 / 6.0,
        '⅚' => 5.0 / 6.0,
        '⅛' => 1.0 / 8.0,
        '⅜' => 3.0 / 8.0,
        '⅝' => 5.0 / 8.0,
        '⅞' => 7.0 / 8.0,
        _ => return None,
    })
}

/// A space inside a number; what parts the cells of a table is none.
fn is_space(letter: char) -> bool {
    letter.is_whitespace() && !matches!(letter, '\n' | '\t')
}

/// A whole number with a fraction below one: `1 5/8`, `1-5/8`, `1⅝`; or a vulgar fraction alone.
fn mixed(input: &mut Input<'_>) -> Reading<Numeral> {
    let joint = alt((take_while(1.., is_space).void(), '-'.void()));
    let mut below_one = alt((
        preceded(joint, ratio.verify(|part: &Numeral| part.value < 1.0)),
        preceded(take_while(0.., is_space), any.verify_map(vulgar).map(exact)),
    ));
    match opt(digit1.with_span()).parse_next(input)? {
        None => any.verify_map(vulgar).map(exact).parse_next(input),
        // `0-3/8` runs from nothing.
        Some(("0", _)) => Err(ErrMode::from_input(input)),
        Some((whole, place)) => {
            let part = below_one.parse_next(input)?;
            Ok(exact(parse(whole, &place)? + part.value))
        }
    }
}

/// `3/8`, or an improper `13/8`.
fn fraction(input: &mut Input<'_>) -> Reading<Numeral> {
    ratio(input)
}

fn ratio(input: &mut Input<'_>) -> Reading<Numeral> {
    let slash = one_of(is_slash);
    let ((above, below), place) = (terminated(digit1, slash), terminated(digit1, not(one_of(['.', ',']))))
        .with_span()
        .parse_next(input)?;
    let (above, below) = (parse(above, &place)?, parse(below, &place)?);
    if below == 0.0 {
        return Err(Trouble::cut(place, Misread::ZeroDenominator));
    }
    Ok(Numeral {
        form: Form::Ratio(above, below),
        ..exact(above / below)
    })
}

fn exact(value: f64) -> Numeral {
    Numeral {
        value,
        step: 0.0,
        form: Form::Plain,
    }
}

/// Digits with decimal marks and separators, and an optional power of ten.
fn decimal(input: &mut Input<'_>) -> Reading<Numeral> {
    let start = input.current_token_start();
    let rest: &str = input.peek_finish();
    let mantissa = mantissa(rest);
    if mantissa.is_empty() {
        return Err(ErrMode::from_input(input));
    }
    let exponent = exponent(rest.get(mantissa.len()..).unwrap_or_default());
    let length = mantissa.len() + exponent.len();
    input.next_slice(length);
    interpret(mantissa, exponent, &(start..start + length))
}

/// The digits at the start of a text with the marks and spaces inside them; empty where it starts
/// with anything else. A space belongs to the number only before a group of exactly three digits, behind
/// one to three first ones and no decimal mark: `1.5 110` is two numbers.
fn mantissa(text: &str) -> &str {
    let mut end = 0;
    let mut group = 0;
    for (at, letter) in text.char_indices() {
        let tail = text.get(at + letter.len_utf8()..).unwrap_or_default();
        let digits_after = tail.bytes().take_while(u8::is_ascii_digit).count();
        let belongs = match letter {
            '0'..='9' => true,
            '.' | ',' => digits_after > 0,
            space if is_space(space) => {
                (1..=3).contains(&group)
                    && digits_after == 3
                    && !tail.get(3..).is_some_and(|after| after.starts_with(is_slash))
            }
            _ => false,
        };
        if !belongs {
            break;
        }
        // Behind a decimal mark no group follows; each further one is of three.
        group = match letter {
            '0'..='9' => group + 1,
            '.' | ',' => 4,
            _ => 0,
        };
        end = at + letter.len_utf8();
    }
    text.get(..end).unwrap_or_default()
}

/// A power of ten such as `e-3`, or nothing.
fn exponent(text: &str) -> &str {
    let Some(power) = text.strip_prefix(['e', 'E']) else {
        return "";
    };
    let digits = power.strip_prefix(['+', '-', '−']).unwrap_or(power);
    let count = digits.bytes().take_while(u8::is_ascii_digit).count();
    if count == 0 {
        ""
    } else {
        text.get(..text.len() - digits.len() + count).unwrap_or_default()
    }
}

fn is_slash(letter: char) -> bool {
    matches!(letter, '/' | '⁄' | '∕')
}

/// Decides which mark is the decimal one, or that it cannot be told.
fn interpret(mantissa: &str, exponent: &str, place: &Range<usize>) -> Reading<Numeral> {
    let fault = |misread| Err(Trouble::cut(place.clone(), misread));
    let joined: String = mantissa.chars().filter(|letter| !is_space(*letter)).collect();
    let spaced = joined.len() < mantissa.len();
    let marks: Vec<char> = joined.chars().filter(|letter| !letter.is_ascii_digit()).collect();
    let last = marks.last().copied();
    let mut pointed = false;
    let decimal_mark = match (marks.as_slice(), last) {
        ([], _) => None,
        ([only], _) => {
            let (before, after) = joined.split_once(*only).unwrap_or((&joined, ""));
            let like_thousands = like_thousands(before, after);
            if *only == ',' && like_thousands && !spaced && exponent.is_empty() {
                return fault(Misread::AmbiguousComma {
                    as_thousands: format!("{before}{after}"),
                    as_decimal: format!("{before}.{after}"),
                });
            }
            pointed = *only == '.' && like_thousands && !spaced && exponent.is_empty();
            Some(*only)
        }
        ([first, ..], Some(last)) if *first != last => Some(last),
        _ => None,
    };
    let (whole, part) = match decimal_mark {
        Some(mark) => joined.rsplit_once(mark).unwrap_or((&joined, "")),
        None => (joined.as_str(), ""),
    };
    let groups: Vec<&str> = whole.split(['.', ',']).collect();
    if groups.len() > 1 && !well_grouped(&groups)
        || groups.len() > 1 && spaced
        || whole.contains(decimal_mark.unwrap_or(' '))
    {
        return fault(Misread::Malformed);
    }
    let exponent = exponent.replace('−', "-");
    let value = parse(&format!("0{}.{part}0{exponent}", groups.concat()), place)?;
    let power: i32 = exponent.trim_start_matches(['e', 'E']).parse().unwrap_or(0);
    let decimals = i32::try_from(part.len()).unwrap_or(i32::MAX);
    Ok(Numeral {
        value,
        // Of nothing, such as `0e999`, any power of ten is read; its step stays a number.
        step: 10_f64.powi(power.saturating_sub(decimals)).min(LIMIT),
        form: if pointed {
            Form::Pointed
        } else if spaced {
            Form::Spaced
        } else {
            Form::Plain
        },
    })
}

/// Whether a mark between these digits may part thousands from the rest: `1,234`. One to three digits before
/// it, no zero first, and three behind it. Both texts are digits only.
///
/// ```
/// use shopmath::quantity::read::like_thousands;
/// assert!(like_thousands("1", "234"));
/// assert!(!like_thousands("0", "234") && !like_thousands("1234", "567") && !like_thousands("12", "5"));
/// ```
#[must_use]
pub fn like_thousands(before: &str, after: &str) -> bool {
    (1..=3).contains(&before.len()) && !before.starts_with('0') && after.len() == 3
}

/// Whether groups are of three digits, the first of one to three.
fn well_grouped(groups: &[&str]) -> bool {
    groups.iter().enumerate().all(|(index, group)| {
        if index == 0 {
            (1..=3).contains(&group.len())
        } else {
            group.len() == 3
        }
    })
}

/// The number nearest to a decimal text. The library's compact tables weigh 9 KB less in the page
/// than those of the standard library's own parser, after compression.
pub(super) fn nearest(text: &str) -> Option<f64> {
    f64::from_lexical(text.as_bytes()).ok()
}

fn parse(text: &str, place: &Range<usize>) -> Reading<f64> {
    nearest(text)
        .filter(|value| value.abs() <= LIMIT)
        .ok_or_else(|| Trouble::cut(place.clone(), Misread::OutOfRange))
}
