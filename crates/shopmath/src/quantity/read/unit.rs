//! Units as people type them. The spellings are in the unit table; here is where a unit ends in
//! a text, and what a spelling means when capitals or the field decide it.

use super::{Input, Misread, NOTES, Reading, STAGES, Trouble, place_in};
use crate::quantity::spelling::fold;
use crate::quantity::{Kind, Unit};
use winnow::error::{ErrMode, ParserError};
use winnow::prelude::*;
use winnow::stream::Stream;

/// Spellings whose capitals make them another unit than the one probably meant.
const OTHER: &[(&str, &str, &str)] = &[
    ("mPa", "millipascal", "MPa"),
    ("Mm", "megametre", "mm"),
    ("ML", "megalitre", "mL"),
    ("MN", "meganewton", "kN"),
    ("mN", "millinewton", "N"),
    ("MNm", "meganewton metre", "N·m"),
    ("mNm", "millinewton metre", "N·m"),
    ("MW", "megawatt", "kW"),
    ("mW", "milliwatt", "kW"),
    ("lb/ft", "pounds per foot", "lbf·ft"),
];

/// Units that are not read, folded, and what one of them is in a unit that is.
const MULTIPLES: &[(&str, &str)] = &[
    ("mbar", "0.1 kPa"),
    ("hpa", "0.1 kPa"),
    ("knm", "1000 N·m"),
    ("kgf/mm2", "9.807 MPa"),
    ("kg/mm2", "9.807 MPa"),
    ("n/cm2", "0.01 MPa"),
    ("gcm", "0.001 kgf·cm"),
    ("gfcm", "0.001 kgf·cm"),
    ("cl", "10 mL"),
    ("dl", "100 mL"),
    ("cc/min", "1 mL a minute"),
    ("l/min", "1 L a minute"),
    ("mmhg", "0.1333 kPa"),
    ("torr", "0.1333 kPa"),
];

/// Words that end a unit because they join values; those that say something of one end it too.
const JOINTS: &[&str] = &["to", "bis", "à", "then", "plus", "and", "or"];

/// Units in which a digit stands: a minute below the line, as European rating plates print it.
const WITH_DIGITS: &[&str] = &["1/min", "min-1", "min−1", "min⁻¹", "min^-1"];

/// Reads a unit and resolves it; backtracks where no unit stands here.
pub(super) fn unit(input: &mut Input<'_>, expected: Option<Kind>) -> Reading<Unit> {
    let rest: &str = input.peek_finish();
    let length = extent(rest);
    let (token, place) = winnow::token::take(length).with_span().parse_next(input)?;
    let trimmed: &str = token;
    let name = trimmed.trim_matches(|letter: char| letter.is_whitespace() || matches!(letter, '.' | '·' | '-' | '*'));
    if name.is_empty() {
        return Err(ErrMode::from_input(input));
    }
    // `5 pints (imp)`
    if let Some((measure, words)) = measured(rest.get(token.len()..).unwrap_or_default())
        && let Ok(unit) = resolve(&[measure, name].concat(), expected)
    {
        input.next_slice(words);
        return Ok(unit);
    }
    resolve(name, expected).map_err(|misread| {
        let start = place.start + place_in(trimmed, name);
        Trouble::cut(start..start + name.len(), misread)
    })
}

/// Words that say whose measure a unit is, as the spellings begin with them.
const MEASURES: &[(&str, &str)] = &[
    ("imp", "imp"),
    ("imperial", "imp"),
    ("uk", "imp"),
    ("british", "imp"),
    ("us", "us"),
    ("u.s", "us"),
    ("ft", "ft"),
    ("in", "in"),
];

/// The measure that words name, as the spellings of its units begin.
fn measure(words: &str) -> Option<&'static str> {
    let word = words.trim_matches(|letter: char| letter.is_whitespace() || letter == '.');
    let known = MEASURES.iter().find(|(known, _)| known.eq_ignore_ascii_case(word));
    known.map(|(_, measure)| *measure)
}

/// Whether words in brackets say whose measure a unit is: `(imp)` is no mere remark.
pub(super) fn is_measure(words: &str) -> bool {
    measure(words).is_some()
}

/// A measure in brackets at the start of a text, and the bytes it takes.
fn measured(text: &str) -> Option<(&'static str, usize)> {
    let words = text.trim_start().strip_prefix('(')?;
    let (words, after) = words.split_once(')')?;
    Some((measure(words)?, text.len() - after.len()))
}

/// How many characters (not bytes) from the start of `text` belong to a unit.
fn extent(text: &str) -> usize {
    let letters: Vec<char> = text.chars().collect();
    let mut end = letters.iter().take_while(|letter| letter.is_whitespace()).count();
    let here: String = letters.iter().skip(end).take(6).collect();
    if let Some(whole) = WITH_DIGITS
        .iter()
        .find(|whole| here.to_ascii_lowercase().starts_with(**whole))
    {
        return end + whole.chars().count();
    }
    end = 0;
    while let Some(&letter) = letters.get(end) {
        let next = letters.iter().skip(end + 1).find(|letter| !letter.is_whitespace());
        let belongs = match letter {
            '-' | '‐' | '‑' | '‒' | '–' | '.' | '/' | '·' | '⋅' | '*' | '∙' | '•' | '‧' | '×' => {
                next.is_some_and(|&next| is_letter(next)) || letter == '.'
            }
            '2' | '3' => {
                end > 0
                    && matches!(letters[end - 1], 'm' | 'n' | '^')
                    && !letters.get(end + 1).is_some_and(char::is_ascii_digit)
            }
            '°' | 'º' | '˚' | '"' | '″' | '”' | '“' | '\'' | '′' | '’' | '²' | '³' | '%' | '∆' | '⁄' | '℃' | '℉'
            | 'ℓ' | '^' => true,
            '\n' => false,
            space if space.is_whitespace() => !joint_follows(letters.iter().skip(end)),
            other => is_letter(other),
        };
        if !belongs {
            break;
        }
        end += 1;
    }
    end
}

/// Whether a character can be part of a word. By blocks of the character set: the library's exact
/// tables would weigh more than the rest of this parser.
pub(super) fn is_letter(letter: char) -> bool {
    matches!(letter, 'a'..='z' | 'A'..='Z' | 'µ' | 'À'..='\u{1fff}' | '\u{3040}'..) && letter != '×' && letter != '÷'
}

/// Whether the next word joins values or says something of one, rather than names a unit.
fn joint_follows<'a>(letters: impl Iterator<Item = &'a char>) -> bool {
    let word: String = letters
        .skip_while(|letter| letter.is_whitespace())
        .take_while(|letter| is_letter(**letter))
        .collect();
    let mut ends = JOINTS.iter().chain(NOTES).chain(STAGES);
    ends.any(|end| end.eq_ignore_ascii_case(&word))
}

/// What a spelling means in a field of the expected kind.
fn resolve(name: &str, expected: Option<Kind>) -> Result<Unit, Misread> {
    let bare: String = name
        .chars()
        .filter(|letter| !letter.is_whitespace() && !matches!(letter, '·' | '⋅' | '.' | '-' | '*' | '×'))
        .collect();
    let folded = fold(name);
    if expected == Some(Kind::LinearDensity) && folded == "lb/ft" {
        return Err(Misread::Multiple("1.488 kg/m"));
    }
    if let Some((_, meaning, instead)) = OTHER.iter().find(|(spelling, _, _)| *spelling == bare) {
        return Err(Misread::OtherUnit { meaning, instead });
    }
    if let Some((_, one)) = MULTIPLES.iter().find(|(spelling, _)| *spelling == folded) {
        return Err(Misread::Multiple(one));
    }
    let in_context = expected.and_then(|kind| by_context(&folded, kind));
    match in_context.or_else(|| Unit::spelled(&folded)) {
        Some(unit) => match expected {
            Some(expected) if unit.kind() != expected => Err(Misread::WrongKind {
                expected,
                found: unit.kind(),
            }),
            _ => Ok(unit),
        },
        None if matches!(folded.as_str(), "oz" | "ounce" | "ounces") => {
            Err(Misread::AmbiguousUnit(&["fl oz", "oz wt"]))
        }
        None if matches!(folded.as_str(), "impoz" | "ukoz") => Err(Misread::AmbiguousUnit(&["imp fl oz", "oz wt"])),
        None => Err(Misread::UnknownUnit(nearest(&folded))),
    }
}

/// Spellings that mean another unit in a field of a certain kind: `lb` of force, `K` of difference.
fn by_context(folded: &str, kind: Kind) -> Option<Unit> {
    Some(match (kind, folded) {
        (Kind::Mass, "oz" | "ounce" | "ounces") => Unit::Ounce,
        (Kind::Volume, "oz" | "ounce" | "ounces") => Unit::UsFluidOunce,
        (Kind::Force, "lb" | "lbs" | "pound" | "pounds") => Unit::PoundForce,
        (Kind::Force, "kg" | "kgs" | "kilo" | "kilos") => Unit::KilogramForce,
        (Kind::TemperatureDifference, "k" | "c" | "°c") => Unit::KelvinDifference,
        (Kind::TemperatureDifference, "f" | "°f") => Unit::FahrenheitDifference,
        _ => return None,
    })
}

/// The unit with the closest spelling, a slip or two of the thumb away at most. What begins with another
/// letter is more likely another unit, and so is a short one with another letter in it: `cl` is no `cm`.
fn nearest(folded: &str) -> Option<Unit> {
    let letters = folded.chars().count();
    if letters < 2 || folded.len() > 24 {
        return None;
    }
    let slips = if letters < 6 { 1 } else { 2 };
    let near = |spelling: &str| {
        folded.chars().next() == spelling.chars().next() && (letters > 3 || !is_other_letter(folded, spelling))
    };
    Unit::all()
        .flat_map(|unit| unit.spellings().map(move |spelling| (unit, spelling)))
        .filter(|(_, spelling)| near(spelling))
        .map(|(unit, spelling)| (strsim::osa_distance(folded, spelling), unit))
        .filter(|(distance, _)| *distance <= slips)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, unit)| unit)
}

/// Whether two words of one length differ in one letter.
fn is_other_letter(one: &str, other: &str) -> bool {
    let differing = one.chars().zip(other.chars()).filter(|(a, b)| a != b).count();
    one.chars().count() == other.chars().count() && differing == 1
}
