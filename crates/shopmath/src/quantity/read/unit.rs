//! Units as people type them. The spellings are in the unit table; here is where a unit ends in
//! a text, and what a spelling means when capitals or the field decide it.

use super::{Input, Misread, NOTES, Reading, Trouble};
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
    ("mbar", "millibar", "kPa"),
    ("lb/ft", "pounds per foot", "lbf·ft"),
];

/// Words that end a unit because they join values; those that say something of one end it too.
const JOINTS: &[&str] = &["to", "then", "plus", "and", "or"];

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
    resolve(name, expected).map_err(|misread| {
        let start = place.start + (name.as_ptr().addr() - trimmed.as_ptr().addr());
        Trouble::cut(start..start + name.len(), misread)
    })
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
            '-' | '‐' | '‑' | '.' | '/' | '·' | '⋅' | '*' | '∙' | '•' | '×' => {
                next.is_some_and(|&next| is_letter(next)) || letter == '.'
            }
            '2' | '3' => {
                end > 0
                    && (letters[end - 1] == 'm' || letters[end - 1] == 'n')
                    && !letters.get(end + 1).is_some_and(char::is_ascii_digit)
            }
            '°' | 'º' | '˚' | '"' | '″' | '”' | '“' | '\'' | '′' | '’' | '²' | '³' | '%' | '∆' | '⁄' => {
                true
            }
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
fn is_letter(letter: char) -> bool {
    matches!(letter, 'a'..='z' | 'A'..='Z' | 'µ' | 'À'..='\u{1fff}' | '\u{3040}'..) && letter != '×' && letter != '÷'
}

/// Whether the next word joins values or says something of one, rather than names a unit.
fn joint_follows<'a>(letters: impl Iterator<Item = &'a char>) -> bool {
    let word: String = letters
        .skip_while(|letter| letter.is_whitespace())
        .take_while(|letter| is_letter(**letter))
        .collect();
    let mut ends = JOINTS.iter().chain(NOTES);
    ends.any(|end| end.eq_ignore_ascii_case(&word))
}

/// What a spelling means in a field of the expected kind.
fn resolve(name: &str, expected: Option<Kind>) -> Result<Unit, Misread> {
    let bare: String = name
        .chars()
        .filter(|letter| !letter.is_whitespace() && !matches!(letter, '·' | '⋅' | '.' | '-' | '*' | '×'))
        .collect();
    if let Some((_, meaning, instead)) = OTHER.iter().find(|(spelling, _, _)| *spelling == bare) {
        return Err(Misread::OtherUnit { meaning, instead });
    }
    let folded = fold(name);
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

/// The unit with the closest spelling, two slips of the thumb away at most.
fn nearest(folded: &str) -> Option<Unit> {
    if folded.chars().count() < 2 || folded.len() > 24 {
        return None;
    }
    Unit::all()
        .flat_map(|unit| unit.spellings().map(move |spelling| (unit, spelling)))
        .map(|(unit, spelling)| (strsim::osa_distance(folded, spelling), unit))
        .filter(|(distance, _)| *distance <= if folded.chars().count() < 4 { 1 } else { 2 })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, unit)| unit)
}
