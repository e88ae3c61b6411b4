//! Quantities as text: rounded for the eye, or exact for a link or a field.
//!
//! Reading is [`super::read`]'s work. Nothing here knows markup.

use super::fraction::{self, InchFraction};
use super::typed::Stage;
use super::{Bounds, Quantity, Typed, Unit};

/// Between groups of three digits: does not break, and the reader takes it back.
const GROUP: char = '\u{202f}';
/// The figures shown at least.
const FIGURES: i32 = 3;
/// The figures within which a value that ends is shown whole: 304.8, not 305.
const WHOLE_WITHIN: i32 = 5;

/// How a number is written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Style {
    /// Decimal, to the given step of the unit shown but to three figures at least; a step of zero
    /// means three figures.
    Decimal {
        /// The smallest difference worth showing, in the unit shown.
        step: f64,
    },
    /// The same for a deviation, with a plus sign where it is above nothing.
    Signed {
        /// The smallest difference worth showing, in the unit shown.
        step: f64,
    },
    /// Inches and a fraction down to 1/64.
    InchFraction,
    /// A whole number where it is one, such as a wrench's nominal size.
    Nominal,
    /// To the nearest whole number.
    Whole,
    /// Every digit, for the numbers put into an equation.
    Exactly,
}

/// The shortest text that reads back as exactly this value, in its own unit.
///
/// ```
/// use shopmath::quantity::{print, read, Typed, Unit};
/// let torque = Typed { value: 0.1 + 0.2, unit: Unit::PoundForceFoot, step: 0.0 };
/// let text = print::exact(torque);
/// assert_eq!(text, "0.30000000000000004 lbf·ft");
/// assert_eq!(read::value(&text, read::Expect::default()).unwrap().value, torque.value);
/// ```
#[must_use]
pub fn exact(typed: Typed) -> String {
    match typed.unit {
        // Its symbol is for a column of units; behind a number it would be a second number.
        Unit::Number => typed.value.to_string(),
        unit => format!("{} {}", one_meaning(typed.value.to_string(), unit), unit.symbol()),
    }
}

/// Digits that read back in a unit: three decimals, which may look like thousands in some, get a zero behind
/// them.
pub(super) fn one_meaning(mut digits: String, unit: Unit) -> String {
    let decimals = digits.split_once('.').map(|(_, decimals)| decimals.len());
    if unit.runs_into_thousands() && decimals == Some(3) {
        digits.push('0');
    }
    digits
}

/// A value or range as it was read, so that a person sees what the page understood; each end in the unit
/// typed, as [`rounded`] writes it to the step typed.
///
/// ```
/// use shopmath::quantity::{print, read};
/// let read = read::range("35-45 lb-ft", read::Expect::default()).unwrap();
/// assert_eq!(print::bounds(read), "35–45\u{a0}lbf·ft");
/// ```
#[must_use]
pub fn bounds(bounds: Bounds) -> String {
    let number = |typed: Typed| rounded(typed.value, typed.step);
    let measured = |typed: Typed| {
        let number = number(typed);
        let unit = suffix(&number, typed.unit);
        number + &unit
    };
    let high = measured(bounds.high);
    if !bounds.is_range() {
        high
    } else if bounds.low.unit == bounds.high.unit {
        format!("{}–{high}", number(bounds.low))
    } else {
        format!("{}–{high}", measured(bounds.low))
    }
}

/// A spec as it was read, on one line that reads back: `30 N·m + 90°`. Parts of a turn are in degrees, and
/// a figure beside a value that contradicts it stays.
///
/// ```
/// use shopmath::quantity::{print, read};
/// let line = read::line("Cap bolt: 20 Nm (15 lb-ft), then 1/6 turn").unwrap();
/// assert_eq!(print::stages(&line.stages), "20 N·m + 60°");
/// ```
#[must_use]
pub fn stages(read: &[Stage]) -> String {
    let one = |stage: &Stage| {
        let degrees = |end: Typed| match end.unit {
            Unit::Turn | Unit::HexFlat | Unit::TwelvePoint => {
                let value = end.quantity().value_in(Unit::Degree).unwrap_or(end.value);
                let unit = Unit::Degree;
                Typed { value, unit, ..end }
            }
            _ => end,
        };
        let (low, high) = (degrees(stage.value.low), degrees(stage.value.high));
        let mut text = bounds(Bounds { low, high });
        for beside in stage.beside.iter().filter(|_| stage.contradicts()) {
            text = [&text, " (", &bounds(*beside), ")"].concat();
        }
        text
    };
    let texts: Vec<String> = read.iter().map(one).collect();
    texts.join(" + ").replace('\u{a0}', " ")
}

/// The number of a quantity in `unit`, without the unit; empty when the unit measures something
/// else.
///
/// ```
/// use shopmath::quantity::{Unit, print::{Style, number}};
/// let torque = Unit::NewtonMetre.of(60.0);
/// assert_eq!(number(torque, Unit::PoundForceFoot, Style::Decimal { step: 0.0 }), "44.3");
/// assert_eq!(number(torque, Unit::Millimetre, Style::Whole), "");
/// assert_eq!(number(Unit::Millimetre.of(9.5), Unit::Inch, Style::InchFraction), "3/8");
/// ```
#[must_use]
pub fn number(quantity: Quantity, unit: Unit, style: Style) -> String {
    let Some(value) = quantity.value_in(unit) else {
        return String::new();
    };
    match (style, quantity) {
        (Style::InchFraction, Quantity::Length(length)) => {
            fraction::nearest(length).map_or_else(|| rounded(value, 0.0), inch_fraction)
        }
        (Style::Decimal { step }, _) => rounded(value, step),
        (Style::Signed { step }, _) => signed(value, rounded(value, step)),
        (Style::InchFraction | Style::Nominal, _) => rounded(value, 0.0),
        (Style::Whole, _) => plain(value, 0),
        (Style::Exactly, _) => significant(value),
    }
}

/// A quantity in `unit` with the unit behind it, to three figures; the unit alone where it measures something
/// else.
///
/// ```
/// use shopmath::quantity::{Unit, print};
/// assert_eq!(print::quantity(Unit::NewtonMetre.of(60.0), Unit::PoundForceFoot), "44.3\u{a0}lbf·ft");
/// ```
#[must_use]
pub fn quantity(quantity: Quantity, unit: Unit) -> String {
    let number = number(quantity, unit, Style::Decimal { step: 0.0 });
    let unit = suffix(&number, unit);
    number + &unit
}

/// A difference in `unit`, to three figures at most and with its sign always written.
///
/// ```
/// use shopmath::quantity::{Unit, print};
/// assert_eq!(print::difference(Unit::Millimetre.of(0.081_25), Unit::Millimetre), "+0.0813\u{a0}mm");
/// assert_eq!(print::difference(Unit::Millimetre.of(0.05), Unit::Millimetre), "+0.05\u{a0}mm");
/// ```
#[must_use]
pub fn difference(by: Quantity, unit: Unit) -> String {
    let value = by.value_in(unit).unwrap_or_default();
    let figures = if value == 0.0 {
        1.0
    } else {
        10_f64.powi(FIGURES - 1 - floor_log10(value.abs()))
    };
    let number = rounded((value * figures).round() / figures, 0.0);
    let unit = suffix(&number, unit);
    signed(value, number + &unit)
}

/// A value's text with a plus sign where the value is above nothing; the minus it has.
fn signed(value: f64, text: String) -> String {
    if value > 0.0 { format!("+{text}") } else { text }
}

/// The unit as it follows a number: the degree sign close up, all others after a space; a unit that
/// is a word in the plural, unless the number is one.
///
/// ```
/// use shopmath::quantity::{Unit, print::suffix};
/// assert_eq!(suffix("1.5", Unit::HexFlat), "\u{a0}flats");
/// assert_eq!(suffix("1", Unit::HexFlat), "\u{a0}flat");
/// assert_eq!(suffix("1.5", Unit::NewtonMetre), "\u{a0}N·m");
/// ```
#[must_use]
pub fn suffix(number: &str, unit: Unit) -> String {
    let symbol = unit.symbol();
    match unit {
        Unit::Number => String::new(),
        Unit::Degree => symbol.to_owned(),
        Unit::Turn | Unit::HexFlat | Unit::TwelvePoint if number != "1" => format!("\u{a0}{symbol}s"),
        _ => format!("\u{a0}{symbol}"),
    }
}

/// A number to the digits worth showing: three figures at least, finer where `step` (the smallest
/// difference worth showing; zero for none) is finer, and whole where it ends within five figures.
///
/// ```
/// use shopmath::quantity::print::rounded;
/// assert_eq!(rounded(44.253_728_957, 0.74), "44.3");
/// assert_eq!(rounded(304.8, 0.0), "304.8");
/// assert_eq!(rounded(-40.000_000_000_000_03, 1.0), "−40");
/// ```
#[must_use]
pub fn rounded(value: f64, step: f64) -> String {
    if !value.is_finite() {
        return "—".into();
    }
    // Below the normal numbers no power of ten is left to divide by.
    if value.abs() < f64::MIN_POSITIVE {
        return "0".into();
    }
    let order = floor_log10(value.abs());
    if !(-5..9).contains(&order) {
        return scientific(value);
    }
    let wanted = (FIGURES - 1 - order).max(if step > 0.0 { decimals_of(step) } else { i32::MIN });
    let decimals = (0..WHOLE_WITHIN - order)
        .find(|&decimals| ends_at(value, decimals))
        .unwrap_or(wanted);
    at_decimals(value, decimals)
}

/// A number to ten figures without trailing zeros: all that an input of a shop has.
fn significant(value: f64) -> String {
    if value == 0.0 || !value.is_finite() || !(-5..9).contains(&floor_log10(value.abs())) {
        return rounded(value, 0.0);
    }
    let text = at_decimals(value, 9 - floor_log10(value.abs()));
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// The exponent of ten of a positive number, safe against values such as 999.9999999999999.
fn floor_log10(value: f64) -> i32 {
    #[allow(clippy::cast_possible_truncation)] // the exponent of a finite f64 is within ±324
    let order = (value * (1.0 + 1e-12)).log10().floor() as i32;
    order
}

/// The decimals whose step is nearest to `step` on a logarithmic scale.
fn decimals_of(step: f64) -> i32 {
    #[allow(clippy::cast_possible_truncation)] // the exponent of a finite f64 is within ±324
    let decimals = (-step.log10()).round() as i32;
    decimals
}

/// Whether the value has no digits past `decimals`, within the noise of conversion.
fn ends_at(value: f64, decimals: i32) -> bool {
    let scaled = value * 10_f64.powi(decimals);
    (scaled - scaled.round()).abs() <= scaled.abs() * 1e-12 + 1e-11
}

/// Plain digits to at most `decimals` places, trailing zeros dropped: for coordinates, where a
/// reader takes neither grouped digits nor a typographic minus. `0` for what is no number, and for one
/// past 10¹⁵ steps of the last place.
///
/// ```
/// use shopmath::quantity::print::plain;
/// assert_eq!(plain(12_345.678, 2), "12345.68");
/// assert_eq!(plain(-0.001, 2), "0");
/// assert_eq!(plain(f64::NAN, 2), "0");
/// ```
#[must_use]
pub fn plain(value: f64, decimals: u8) -> String {
    let steps = 10_f64.powi(i32::from(decimals));
    let scaled = (value * steps).round();
    if !scaled.is_finite() || scaled.abs() > 1e15 {
        return "0".to_owned();
    }
    #[allow(clippy::cast_possible_truncation)] // at most 10¹⁵
    let scaled = scaled as i64;
    let digits = format!("{:0width$}", scaled.unsigned_abs(), width = usize::from(decimals) + 1);
    let (whole, part) = digits
        .split_at_checked(digits.len() - usize::from(decimals))
        .unwrap_or((&digits, ""));
    let sign = if scaled < 0 { "-" } else { "" };
    let part = part.trim_end_matches('0');
    if part.is_empty() {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{part}")
    }
}

/// Rounded at a decimal place; negative places round left of the decimal mark. Fifteen figures at
/// most, so that the digits are those of a whole number an `f64` holds exactly.
fn at_decimals(value: f64, decimals: i32) -> String {
    let decimals = decimals.min(14 - floor_log10(value.abs()));
    let scaled = (value.abs() * 10_f64.powi(decimals)).round();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // positive and below 10¹⁶
    let digits = (scaled as u64).to_string();
    let sign = if value < 0.0 && scaled > 0.0 { "−" } else { "" };
    match usize::try_from(decimals) {
        Ok(0) => format!("{sign}{}", grouped(&digits)),
        Ok(places) => {
            let padded = format!("{}{digits}", "0".repeat((places + 1).saturating_sub(digits.len())));
            let (whole, part) = padded.split_at_checked(padded.len() - places).unwrap_or((&padded, ""));
            format!("{sign}{}.{part}", grouped(whole))
        }
        Err(_) => format!(
            "{sign}{}",
            grouped(&format!("{digits}{}", "0".repeat(decimals.unsigned_abs() as usize)))
        ),
    }
}

/// Digits in groups of three, from five digits up.
fn grouped(digits: &str) -> String {
    if digits.len() < 5 {
        return digits.to_owned();
    }
    let mut text = String::with_capacity(digits.len() * 2);
    for (index, digit) in digits.char_indices() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(GROUP);
        }
        text.push(digit);
    }
    text
}

/// Three figures and a power of ten.
fn scientific(value: f64) -> String {
    let order = floor_log10(value.abs());
    // What rounds to 10.00 is 1.00 of the next power.
    let order = order + i32::from((value.abs() / 10_f64.powi(order) * 100.0).round() >= 1000.0);
    let raised: String = order
        .to_string()
        .chars()
        .map(|digit| match digit {
            '-' => '⁻',
            digit => digit
                .to_digit(10)
                .and_then(|digit| "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().nth(digit as usize))
                .unwrap_or(digit),
        })
        .collect();
    format!("{}\u{a0}×\u{a0}10{raised}", at_decimals(value / 10_f64.powi(order), 2))
}

/// Inches and a fraction: `1 5/8`, `3/8`, `2`.
///
/// ```
/// use shopmath::quantity::{exact::length::Millimetre, fraction::nearest, print::inch_fraction};
/// use uom::si::f64::Length;
/// let shown = |millimetres| inch_fraction(nearest(Length::new::<Millimetre>(millimetres)).unwrap());
/// assert_eq!([41.3, 9.5, -50.8].map(shown), ["1\u{a0}5/8", "3/8", "−2"]);
/// ```
#[must_use]
pub fn inch_fraction(fraction: InchFraction) -> String {
    let sign = if fraction.negative { "−" } else { "" };
    match (fraction.whole, fraction.numerator) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, numerator) => format!("{sign}{numerator}/{}", fraction.denominator),
        (whole, numerator) => format!("{sign}{whole}\u{a0}{numerator}/{}", fraction.denominator),
    }
}

#[cfg(test)]
mod tests {
    use super::{exact, rounded};
    use crate::quantity::read::{Expect, value};
    use crate::quantity::{Typed, Unit};

    #[test]
    fn a_value_in_any_unit_is_read_back_as_printed() {
        for unit in Unit::all() {
            let typed = Typed {
                value: 40.5,
                unit,
                step: 0.0,
            };
            let text = exact(typed);
            let read = value(&text, Expect::field(unit)).unwrap_or_else(|fault| panic!("{}", fault.sentence(&text)));
            assert_eq!((read.value, read.unit), (typed.value, typed.unit), "{text}");
        }
    }

    #[test]
    fn numbers_are_shown_to_the_digits_worth_showing() {
        for (value, step, text) in [
            (44.253_728_957, 0.74, "44.3"),
            (88.507_457_91, 0.885, "88.5"),
            (135.581_794_8, 1.36, "136"),
            (9.525, 0.0, "9.525"),
            (41.275, 0.0, "41.275"),
            (25.4, 25.4, "25.4"),
            (100.000_000_000_000_1, 0.56, "100"),
            (93_205.678_8, 0.62, "93\u{202f}206"),
            (1_609_344.0, 1e6, "1\u{202f}610\u{202f}000"),
            (0.039_370_078, 0.039, "0.0394"),
            (999.962_4, 0.0, "1000"),
            (-17.777_8, 0.56, "−17.8"),
            (1.609e21, 1.0, "1.61\u{a0}×\u{a0}10²¹"),
            (3.94e-17, 0.0, "3.94\u{a0}×\u{a0}10⁻¹⁷"),
            (0.0, 1.0, "0"),
            (1e-311, 0.0, "0"),
            (9.996e10, 0.0, "1.00\u{a0}×\u{a0}10¹¹"),
            (9.994e10, 0.0, "9.99\u{a0}×\u{a0}10¹⁰"),
            (-9.996e-6, 0.0, "−1.00\u{a0}×\u{a0}10⁻⁵"),
            (3e-308, 0.0, "3.00\u{a0}×\u{a0}10⁻³⁰⁸"),
        ] {
            assert_eq!(rounded(value, step), text, "{value} at {step}");
        }
    }
}
