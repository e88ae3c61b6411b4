//! Values with units: single, a range by dash, `to` or `±`, stages joined by `+`, and the figures
//! in brackets beside them.

use super::numeral::{self, Form, Numeral};
use super::{Bounds, Expect, Input, Misread, Reading, STAGES, Stage, Trouble, Typed};
use crate::quantity::{Kind, Unit, print};
use core::ops::Range;
use winnow::ascii::Caseless;
use winnow::combinator::{alt, delimited, not, opt, peek, preceded, repeat, separated};
use winnow::error::{ErrMode, ParserError};
use winnow::prelude::*;
use winnow::stream::{Location, Stream};
use winnow::token::{one_of, take_while};

/// One or more values joined by `+`, `then` or `plus`, angles by a mark or a space too; where
/// `restated`, the same in other units may stand behind any of them.
pub(super) fn stages(input: &mut Input<'_>, expect: Expect, restated: bool) -> Reading<Vec<Stage>> {
    opt((space, '+', space)).parse_next(input)?;
    let mut places = Vec::new();
    let mut read = Vec::new();
    loop {
        let start = input.current_token_start();
        let (times, value) = if read.is_empty() {
            (1, bounds(input, expect)?)
        } else {
            let once = alt((turn_in_words, later)).map(|value| (1, value));
            insist(alt((several_turns, once)).parse_next(input))?
        };
        for _ in 0..times {
            places.push(start..input.current_token_start());
            read.push(Stage::alone(value));
        }
        if restated {
            restatement(input, &mut read)?;
            while opt(|input: &mut Input<'_>| again(input, &mut read))
                .parse_next(input)?
                .is_some()
            {}
        }
        let turns = matches!(value.kind(), Kind::Torque | Kind::Angle);
        let more = move |input: &mut Input<'_>| match turns {
            true => alt((stage_joint, stage_number, angle_follows)).parse_next(input),
            false => alt((stage_joint, stage_number)).parse_next(input),
        };
        if opt(more).parse_next(input)?.is_none() {
            break;
        }
    }
    for (stage, place) in read.iter().zip(places) {
        if read.len() > 1 && !matches!(stage.value.kind(), Kind::Torque | Kind::Angle) {
            return Err(Trouble::cut(place, Misread::NotAStage(stage.value.kind())));
        }
    }
    Ok(read)
}

/// Figures in brackets, `(44 lbf·ft)` or `(6.1 kgf·m, 44 lbf·ft)`, put beside the stages they
/// restate: the last ones that measure the same. Words in brackets, `(oiled)`, are passed over.
fn restatement(input: &mut Input<'_>, read: &mut [Stage]) -> Reading<()> {
    let words = take_while(1.., |letter: char| !letter.is_numeric() && !matches!(letter, '(' | ')'))
        .verify(|words: &str| !super::unit::is_measure(words));
    let _: Option<()> = opt((space, '(', words, ')').void()).parse_next(input)?;
    if peek((space, one_of(['(', '[', '{']))).parse_next(input).is_err() {
        return Ok(());
    }
    // Of a single value, the bracket's unit is read as one of its kind; stages have their own.
    let expect = Expect {
        kind: match read {
            [only] => Some(only.value.kind()),
            _ => None,
        },
        bare: None,
    };
    let figure = (move |input: &mut Input<'_>| stages(input, expect, false)).with_span();
    let figures = delimited(
        (space, one_of(['(', '[', '{']), space),
        separated(1.., figure, (space, one_of([',', ';', '/']), space)),
        (space, one_of([')', ']', '}'])),
    );
    let figures: Option<Vec<(Vec<Stage>, Range<usize>)>> = opt(figures).parse_next(input)?;
    for (figure, place) in figures.unwrap_or_default() {
        let restates = |&from: &usize| {
            let pairs = read.iter().skip(from).zip(&figure);
            pairs
                .filter(|(stage, said)| stage.value.kind() == said.value.kind())
                .count()
                == figure.len()
        };
        let Some(from) = (0..read.len()).rev().find(restates) else {
            return Err(Trouble::cut(place, Misread::Leftover));
        };
        for (stage, said) in read.iter_mut().skip(from).zip(figure) {
            stage.beside.push(said.value);
        }
    }
    Ok(())
}

/// The last value once more without brackets, `60 N·m / 44 lbf·ft` or `60 N·m = 44 lbf·ft`. With no
/// mark between them only where two values side by side cannot add up, as feet and inches do, and
/// behind a comma only where both are the same: else they are two.
fn again(input: &mut Input<'_>, read: &mut [Stage]) -> Reading<()> {
    let Some(last) = read.last_mut() else {
        return Err(ErrMode::from_input(input));
    };
    let kind = last.value.kind();
    let mark = alt((one_of(['/', '=', '|', ',', ';']), Caseless("or").value('/')));
    let (_, mark, _) = (space, opt(mark), space).parse_next(input)?;
    let said = tried(
        input,
        Expect {
            kind: Some(kind),
            bare: None,
        },
    )?;
    let alone = matches!(
        kind,
        Kind::Torque | Kind::Pressure | Kind::Temperature | Kind::Power | Kind::Speed
    );
    last.beside.push(said);
    let another = said.low.unit == last.value.low.unit
        || mark.is_none() && !alone
        || matches!(mark, Some(',' | ';')) && last.contradicts();
    if another {
        last.beside.pop();
        return Err(ErrMode::from_input(input));
    }
    Ok(())
}

/// `+`, `then` or `plus` and the words after them, and not the `+` of `+/-`.
fn stage_joint(input: &mut Input<'_>) -> Reading<()> {
    let word = (
        opt((Caseless("and"), space)),
        alt((Caseless("then").void(), Caseless("plus").void())),
    );
    let plus = (one_of(['+', '→', '⇒', '➔', '➜']), space).void();
    (
        space,
        opt((one_of([',', ';']), space)),
        alt((plus, word.void())),
        space,
        opt(stage_number),
        filler,
    )
        .void()
        .parse_next(input)
}

/// `Stage 2:` or `2. Stufe` before a further stage, which joins as a `+` does. What goes on behind its digit
/// is no number of a stage: `Stage 2.5 N·m`.
fn stage_number(input: &mut Input<'_>) -> Reading<()> {
    let on = alt((one_of('0'..='9').void(), (one_of(['.', ',']), one_of('0'..='9')).void()));
    let number = (stage_word, space, one_of('1'..='9'), not(on)).void();
    let ordinal = (
        one_of('1'..='9'),
        alt((".", "st", "nd", "rd", "th", "e")),
        space,
        stage_word,
    )
        .void();
    let before = (space, opt((one_of([',', ';', '.', '-', '–', '|']), space)));
    let after = (space, opt((one_of([':', '.', ')', '-', '–', '=']), space)));
    (before, alt((number, ordinal)), after, filler).void().parse_next(input)
}

fn stage_word(input: &mut Input<'_>) -> Reading<()> {
    take_while(1.., super::unit::is_letter)
        .verify(|word: &str| STAGES.iter().any(|known| known.eq_ignore_ascii_case(word)))
        .void()
        .parse_next(input)
}

/// An angle turned more than once: `2 x 90°`, `twice 90°`.
fn several_turns(input: &mut Input<'_>) -> Reading<(u32, Bounds)> {
    let times = one_of('2'..='4').verify_map(|digit: char| digit.to_digit(10));
    let cross = alt((one_of(['x', 'X', '×', '*']).void(), Caseless("times").void()));
    let counted = (times, space, cross).map(|(times, ..)| times);
    let times = alt((counted, Caseless("twice").value(2)));
    let angle = alt((turn_in_words, later)).verify(|angle: &Bounds| angle.kind() == Kind::Angle);
    let (times, _, _, angle) = (times, space, filler, angle).parse_next(input)?;
    Ok((times, angle))
}

/// What stands between a torque and an angle where no joint does: `30 N·m / 90°`, `30 N·m, 90°`.
fn angle_follows(input: &mut Input<'_>) -> Reading<()> {
    let mark = alt((one_of([',', ';', '/', '&', '∠']).void(), Caseless("and").void()));
    (space, opt(mark), space, filler).void().parse_next(input)?;
    let angle = |input: &mut Input<'_>| tried(input, Expect::default());
    let angle = angle.verify(|angle: &Bounds| angle.kind() == Kind::Angle).void();
    peek(alt((angle, turn_in_words.void()))).parse_next(input)
}

/// Words before a further stage that say no more than its joint did: `a further`, `turn`.
fn filler(input: &mut Input<'_>) -> Reading<()> {
    const WORDS: [&str; 13] = [
        "a",
        "an",
        "further",
        "another",
        "additional",
        "extra",
        "turn",
        "tighten",
        "rotate",
        "by",
        "through",
        "angle",
        "of",
    ];
    let word = take_while(1.., |letter: char| letter.is_ascii_alphabetic())
        .verify(|word: &str| WORDS.iter().any(|known| known.eq_ignore_ascii_case(word)));
    repeat::<_, _, (), _, _>(0.., (word, take_while(1.., char::is_whitespace))).parse_next(input)
}

/// A part of a turn in words: `half turn`, `quarter of a turn`, `1/4 turn` being figures already.
fn turn_in_words(input: &mut Input<'_>) -> Reading<Bounds> {
    let share = alt((
        Caseless("half").value(0.5),
        Caseless("quarter").value(0.25),
        alt((Caseless("full"), Caseless("one"))).value(1.0),
    ));
    let (share, _, _, _, _, _) = (
        share,
        space,
        opt((Caseless("of"), space)),
        opt((Caseless("a"), space)),
        Caseless("turn"),
        not(one_of(|letter: char| letter.is_alphanumeric())),
    )
        .parse_next(input)?;
    Ok(Bounds::single(Typed {
        value: share,
        unit: Unit::Turn,
        step: 0.0,
    }))
}

/// A stage behind the first.
fn later(input: &mut Input<'_>) -> Reading<Bounds> {
    let rest: &str = input.peek_finish();
    bounds(input, Expect::default()).map_err(|error| {
        error.map(|mut trouble: Trouble| {
            if let Some(fault) = trouble.fault.as_mut() {
                expect_turn(&mut fault.misread, rest);
            }
            trouble
        })
    })
}

/// Where no unit follows a later stage at all it was most likely an angle, but for a few degrees, which may
/// be a tolerance.
pub(super) fn expect_turn(misread: &mut Misread, stage: &str) {
    let stage = stage.trim_start_matches(['+', ' ']);
    let bare = stage
        .chars()
        .all(|letter| letter.is_ascii_digit() || matches!(letter, ' ' | '+'));
    let first = stage.split('+').next().unwrap_or_default().trim();
    let turn = bare && numeral::nearest(first).is_some_and(|degrees| degrees >= 15.0);
    if turn && *misread == (Misread::NoUnit { expected: None }) {
        *misread = Misread::NoUnit {
            expected: Some(Kind::Angle),
        };
    }
}

/// A value or a range if one stands here; what is wrong with it otherwise is not the point.
fn tried(input: &mut Input<'_>, expect: Expect) -> Reading<Bounds> {
    bounds(input, expect).map_err(|_| ErrMode::from_input(input))
}

/// A value or a range.
fn bounds(input: &mut Input<'_>, expect: Expect) -> Reading<Bounds> {
    space.parse_next(input)?;
    let start = input.current_token_start();
    let _ = opt((one_of(['~', '≈', 'Ø', '⌀']), space)).parse_next(input)?;
    let (first, place) = numeral::signed.with_span().parse_next(input)?;
    let first_unit = optional_unit(input, expect)?;
    if let Some(tolerance) = opt(plus_minus).parse_next(input)? {
        return tolerated(input, expect, (first, first_unit), tolerance, start);
    }
    if let Some(inches) = opt(|input: &mut Input<'_>| inches_behind(input, first, first_unit)).parse_next(input)? {
        return Ok(Bounds::single(inches));
    }
    let second = opt(preceded(range_joint, numeral::signed.with_span())).parse_next(input)?;
    let Some((second, second_place)) = second else {
        let unit = insist(unit_or_bare(first_unit, expect, input))?;
        if first.step == 0.0 && first_unit.is_none() && unit == Unit::Millimetre {
            let decimals = print::rounded(first.value, 0.0);
            return Err(Trouble::cut(place, Misread::Fraction(decimals)));
        }
        one_meaning(first, unit, place)?;
        let single = typed(first, unit, &(start..input.current_token_start()))?;
        return Ok(Bounds::single(single));
    };
    let second_unit = match optional_unit(input, expect)?.or(first_unit) {
        Some(unit) => unit,
        None => insist(unit_or_bare(None, expect, input))?,
    };
    one_meaning(first, first_unit.unwrap_or(second_unit), place)?;
    one_meaning(second, second_unit, second_place)?;
    let place = start..input.current_token_start();
    // `60-90 000 km` may begin at sixty, or at sixty thousand.
    let shortened = first_unit.is_none() && second.form == Form::Spaced && first.form == Form::Plain;
    if shortened && first.value >= 1.0 && first.value * 100.0 <= second.value {
        return Err(Trouble::cut(place, Misread::TwoValues));
    }
    let low = typed(first, first_unit.unwrap_or(second_unit), &place)?;
    ordered(low, typed(second, second_unit, &place)?, place)
}

/// The inches behind whole feet, below twelve: `5 ft 3 in`, `5'-3"`; all of it in inches.
fn inches_behind(input: &mut Input<'_>, feet: Numeral, unit: Option<Unit>) -> Reading<Typed> {
    let whole = feet.form == Form::Plain && feet.step == 1.0 && feet.value >= 1.0;
    if unit != Some(Unit::Foot) || !whole {
        return Err(ErrMode::from_input(input));
    }
    let (_, _, _, inches) = (space, opt(one_of([',', '-'])), space, numeral::unsigned).parse_next(input)?;
    let inch = super::unit::unit(input, Some(Kind::Length)).is_ok_and(|unit| unit == Unit::Inch);
    if !inch || inches.value >= 12.0 {
        return Err(ErrMode::from_input(input));
    }
    Ok(Typed {
        value: feet.value * 12.0 + inches.value,
        unit: Unit::Inch,
        step: inches.step,
    })
}

/// Refuses a number that means another one in some places, where its unit leaves that open: `60.000 km`,
/// `32/35 psi`.
fn one_meaning(number: Numeral, unit: Unit, place: Range<usize>) -> Reading<()> {
    if number.form.is_two(unit.kind()) {
        return Err(Trouble::cut(place, Misread::TwoValues));
    }
    if number.form == Form::Pointed && unit.runs_into_thousands() {
        return Err(Trouble::cut(
            place,
            Misread::AmbiguousComma {
                as_thousands: print::plain(number.value * 1000.0, 0),
                as_decimal: print::one_meaning(print::plain(number.value, 3), unit),
            },
        ));
    }
    Ok(())
}

/// The range of a value and its tolerance: `60 ± 5 N·m`, `60 N·m ± 4 %`.
fn tolerated(
    input: &mut Input<'_>,
    expect: Expect,
    (middle, unit): (Numeral, Option<Unit>),
    tolerance: Numeral,
    start: usize,
) -> Reading<Bounds> {
    let percent = opt((space, '%')).parse_next(input)?.is_some();
    let own = if percent { None } else { optional_unit(input, expect)? };
    let unit = insist(unit_or_bare(unit.or(own), expect, input))?;
    let place = start..input.current_token_start();
    one_meaning(middle, unit, place.clone())?;
    if own.is_some_and(|own| own != unit) {
        return Err(Trouble::cut(
            place,
            Misread::MixedKinds(unit.kind(), own.unwrap_or(unit).kind()),
        ));
    }
    let reach = if percent {
        middle.value.abs() * tolerance.value / 100.0
    } else {
        tolerance.value
    };
    let end = |value: f64| {
        typed(
            Numeral {
                value,
                step: middle.step.min(tolerance.step),
                form: Form::Plain,
            },
            unit,
            &place,
        )
    };
    ordered(end(middle.value - reach)?, end(middle.value + reach)?, place.clone())
}

/// A range, once its ends measure the same and stand in order.
fn ordered(low: Typed, high: Typed, place: Range<usize>) -> Reading<Bounds> {
    let (one, other) = (low.unit.kind(), high.unit.kind());
    if one != other {
        return Err(Trouble::cut(place, Misread::MixedKinds(one, other)));
    }
    if low.quantity().si() > high.quantity().si() {
        return Err(Trouble::cut(place, Misread::Backwards));
    }
    Ok(Bounds { low, high })
}

/// A value, refused where physics refuses it.
fn typed(number: Numeral, unit: Unit, place: &Range<usize>) -> Reading<Typed> {
    let value = Typed {
        value: number.value,
        unit,
        step: number.step,
    };
    if unit.kind() == Kind::Temperature && value.quantity().si() < -1e-9 {
        return Err(Trouble::cut(place.clone(), Misread::BelowAbsoluteZero));
    }
    Ok(value)
}

fn optional_unit(input: &mut Input<'_>, expect: Expect) -> Reading<Option<Unit>> {
    opt(move |input: &mut Input<'_>| super::unit::unit(input, expect.kind)).parse_next(input)
}

fn unit_or_bare(unit: Option<Unit>, expect: Expect, input: &Input<'_>) -> Reading<Unit> {
    let at = input.current_token_start();
    unit.or(expect.bare)
        .ok_or_else(|| Trouble::cut(at..at, Misread::NoUnit { expected: expect.kind }))
}

/// Makes a failure final: past this point no other reading is possible.
fn insist<T>(reading: Reading<T>) -> Reading<T> {
    reading.map_err(ErrMode::cut)
}

fn plus_minus(input: &mut Input<'_>) -> Reading<Numeral> {
    let sign = alt(("±".void(), "+/-".void(), "+-".void()));
    preceded((space, sign, space), |input: &mut Input<'_>| {
        insist(numeral::unsigned(input))
    })
    .parse_next(input)
}

/// A dash, dots or a word between the ends of a range. A single dot behind the dash is a decimal point:
/// `.015-.018 in`.
fn range_joint(input: &mut Input<'_>) -> Reading<()> {
    let mark = one_of(['-', '–', '—', '−', '‐', '‑', '‒', '…', '~', '∼', '～', '〜', '÷']).void();
    let dots = ("..", take_while(0.., '.')).void();
    let word = alt((Caseless("to"), Caseless("bis"), "à"));
    (space, alt((mark, dots, word.void())), space).void().parse_next(input)
}

fn space(input: &mut Input<'_>) -> Reading<()> {
    let _: &str = take_while(0.., |letter: char| letter.is_whitespace()).parse_next(input)?;
    Ok(())
}
