//! What the parts cost, in whole ten-millionths of the currency: no sum of money is ever rounded.
//!
//! A count has at most three decimals and a price four, so each product is a whole number of
//! ten-millionths. How the total is shown is the view's affair; [`Total::text`] writes it exactly.

use super::entry_fault::EntryFault;
use super::model::Part;
use crate::field::FieldFault;
use crate::quantity::Unit;
use crate::quantity::fault::Misread;
use crate::quantity::read::{self, Expect};

/// Decimals of a count.
pub const COUNT_DECIMALS: u32 = 3;
/// Decimals of a price.
pub const PRICE_DECIMALS: u32 = 4;
/// Decimals of a total.
const TOTAL_DECIMALS: usize = 7;
/// The most a count or a price may be.
pub const MOST: f64 = 1e9;
/// What reading a decimal and multiplying it may add, relative: half an `f64` step each.
const NOISE: f64 = 2.0 * f64::EPSILON;

/// A sum of money, exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Total {
    /// Ten-millionths of the currency's unit; never negative.
    pub ten_millionths: u128,
}

impl Total {
    /// The sum written out: a point, two decimals at least, and more where there are more.
    ///
    /// ```
    /// use shopmath::sheet::total::Total;
    /// assert_eq!(Total { ten_millionths: 405_000_000 }.text(), "40.50");
    /// assert_eq!(Total { ten_millionths: 1 }.text(), "0.0000001");
    /// ```
    #[must_use]
    pub fn text(self) -> String {
        let digits = format!("{:08}", self.ten_millionths);
        let (whole, part) = digits
            .split_at_checked(digits.len() - TOTAL_DECIMALS)
            .unwrap_or((&digits, ""));
        let part = part.trim_end_matches('0');
        format!("{whole}.{part:0<2}")
    }
}

/// The cost of one row: count times price; nothing while there is no price.
///
/// # Errors
/// A [`FieldFault`] of `count` or `price`: no number, not between 0 and 10⁹, with more decimals than
/// [`COUNT_DECIMALS`] or [`PRICE_DECIMALS`], or a price whose mark can stand for thousands, such as
/// `1.250` or `1,250`.
///
/// ```
/// use shopmath::sheet::{Part, total};
/// let oil = Part { count: "4.5".into(), price: "9,90".into(), ..Part::default() };
/// assert_eq!(total::cost(&oil).unwrap().unwrap().text(), "44.55");
/// let unpriced = Part { count: "4".into(), ..Part::default() };
/// assert_eq!(total::cost(&unpriced).unwrap(), None);
/// ```
pub fn cost(part: &Part) -> Result<Option<Total>, FieldFault> {
    let count = if part.count.trim().is_empty() {
        "1"
    } else {
        part.count.as_str()
    };
    let count = decimal("count", count, COUNT_DECIMALS)?;
    if part.price.trim().is_empty() {
        return Ok(None);
    }
    two_meanings(&part.price)?;
    let price = decimal("price", &part.price, PRICE_DECIMALS)?;
    Ok(Some(Total {
        ten_millionths: u128::from(count) * u128::from(price),
    }))
}

/// A price of three digits behind one mark is asked about, whichever the mark: half of Europe writes
/// `1.250` for what the other half writes `1,250`. What is offered has one meaning.
fn two_meanings(price: &str) -> Result<(), FieldFault> {
    let alone = price.trim_matches(|letter: char| !letter.is_ascii_digit());
    let Some((whole, part)) = alone.split_once(['.', ',']) else {
        return Ok(());
    };
    let digits = |text: &str| text.bytes().all(|letter| letter.is_ascii_digit());
    if !read::like_thousands(whole, part) || !digits(whole) || !digits(part) {
        return Ok(());
    }
    let meant = [format!("{whole}{part}"), format!("{whole}.{part}0")];
    Err(EntryFault::TwoMeanings(alone.into(), meant).of("price"))
}

/// A text as a whole number of its last decimal's steps.
///
/// The reader yields the `f64` nearest to what was typed. Below 10⁹ with four decimals that is
/// within 10⁻⁷ of the decimal, so the nearest whole number of steps is the one typed. More
/// decimals are refused, as is a fraction that no decimal ends.
pub(super) fn decimal(key: &'static str, text: &str, decimals: u32) -> Result<u64, FieldFault> {
    let wanted = || match (key, decimals) {
        (_, 0) => EntryFault::NotBolts.of(key),
        ("price", _) => EntryFault::NotPrice.of(key),
        _ => EntryFault::NotCount.of(key),
    };
    let expect = Expect::field(Unit::Number);
    let typed = read::value(text, expect).map_err(|misread| {
        // `€ 34.50`, `34,50 EUR`, `2 x`: what stands around the number has no place here.
        let alone = text.trim_matches(|letter: char| !letter.is_ascii_digit());
        let whole = decimals > 0 || alone.bytes().all(|letter| letter.is_ascii_digit());
        match (read::value(alone, expect), &misread.misread) {
            (Ok(_), _) if whole => EntryFault::NotAlone(alone.into()).of(key),
            (_, Misread::AmbiguousComma { .. }) if decimals > 0 => FieldFault::misread(key, text, &misread),
            _ => wanted(),
        }
    })?;
    if typed.unit != Unit::Number || typed.value < 0.0 {
        return Err(wanted());
    }
    if typed.value > MOST {
        return Err(EntryFault::TooMuch.of(key));
    }
    let per_one = f64::from(10_u32.pow(decimals));
    let steps = typed.value * per_one;
    let finer = typed.step > 0.0 && typed.step * per_one < 0.5;
    if finer || (steps - steps.round()).abs() > steps * NOISE {
        return Err(match decimals {
            0 => wanted(),
            _ => EntryFault::TooFine(decimals).of(key),
        });
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 10¹³, and whole
    let steps = steps.round() as u64;
    Ok(steps)
}

#[cfg(test)]
mod tests {
    use super::{Total, cost, decimal};
    use crate::sheet::Part;
    use proptest::prelude::*;

    fn part(count: &str, price: &str) -> Part {
        Part {
            count: count.into(),
            price: price.into(),
            ..Part::default()
        }
    }

    #[test]
    fn tenths_add_up_without_a_remainder() {
        let mut sum = Total::default();
        for _ in 0..10 {
            sum.ten_millionths += cost(&part("", "0.10")).unwrap().unwrap().ten_millionths;
        }
        assert_eq!(sum.text(), "1.00");
        assert_eq!(cost(&part("3", "0.07")).unwrap().unwrap().text(), "0.21");
        assert_eq!(
            cost(&part("1000000000", "1000000000")).unwrap().unwrap().text(),
            "1000000000000000000.00"
        );
    }

    #[test]
    fn the_number_is_offered_without_what_stands_around_it() {
        for (count, price, remedy) in [
            ("1", "€ 34.50", "34.50"),
            ("1", "34,50 EUR", "34,50"),
            ("1", "$12", "12"),
            ("2 x", "1", "2"),
            ("x2", "1", "2"),
            ("4 pcs", "1", "4"),
        ] {
            assert_eq!(
                cost(&part(count, price)).unwrap_err().remedies,
                [remedy],
                "{count} × {price}"
            );
        }
    }

    #[test]
    fn what_is_no_number_says_what_this_entry_takes() {
        for (count, price, sentence) in [
            ("1", "45 + 19%", "Type the price as a number alone, such as 45.00."),
            ("1", "free", "Type the price as a number alone, such as 45.00."),
            ("1", "-5", "Type the price as a number alone, such as 45.00."),
            ("1", "2e9", "The price is to be 1 000 000 000 at most."),
            (
                "1",
                "1,234",
                "“1,234”: the mark can stand for thousands or decimals. Type 1234, or 1.2340 with a fourth decimal.",
            ),
            ("four", "1", "Type the count as a number alone, such as 2 or 4.5."),
            ("-1", "1", "Type the count as a number alone, such as 2 or 4.5."),
        ] {
            assert_eq!(cost(&part(count, price)).unwrap_err().sentence, sentence);
        }
        for count in ["2,5", "-1", "four", "1,234", "2,5 x"] {
            assert_eq!(
                decimal("count", count, 0).unwrap_err().sentence,
                "Type a whole number of bolts from 1 to 999.",
                "{count}"
            );
        }
        assert_eq!(decimal("count", "4 pcs", 0).unwrap_err().remedies, ["4"]);
    }

    #[test]
    fn a_mark_that_can_stand_for_thousands_is_asked_about() {
        for (price, remedies) in [
            ("1.250", ["1250", "1.2500"]),
            ("1,250", ["1250", "1.2500"]),
            ("€ 12.500", ["12500", "12.5000"]),
            ("150.000 EUR", ["150000", "150.0000"]),
        ] {
            let fault = cost(&part("1", price)).unwrap_err();
            assert_eq!(
                (fault.key, &fault.remedies[..]),
                ("price", &remedies.map(String::from)[..]),
                "{price}"
            );
            for whole in &fault.remedies {
                assert!(cost(&part("1", whole)).is_ok(), "{whole}");
            }
        }
        for (price, text) in [
            ("1.25", "1.25"),
            ("1.2500", "1.25"),
            ("0.125", "0.125"),
            ("1.250,50", "1250.50"),
            ("1 250", "1250.00"),
        ] {
            assert_eq!(cost(&part("1", price)).unwrap().unwrap().text(), text, "{price}");
        }
    }

    #[test]
    fn what_is_no_price_says_so() {
        for (count, price, key) in [
            ("1", "1,234", "price"),
            ("1", "-2", "price"),
            ("1", "0.00001", "price"),
            ("1", "0.0000000001", "price"),
            ("1", "999999999.99999", "price"),
            ("1", "1e-9", "price"),
            ("1", "12.50000000000000001", "price"),
            ("1", "1/3", "price"),
            ("1", "12 %", "price"),
            ("1", "2e9", "price"),
            ("four", "1", "count"),
            ("0.0001", "1", "count"),
            ("1", "nothing", "price"),
        ] {
            assert_eq!(cost(&part(count, price)).unwrap_err().key, key, "{count} × {price}");
        }
    }

    proptest! {
        #[test]
        fn every_price_is_the_decimal_typed(steps in 0_u64..10_000_000_000_000) {
            let price = format!("{}.{:04}", steps / 10_000, steps % 10_000);
            let total = cost(&part("0.001", &price)).unwrap().unwrap();
            prop_assert_eq!(total.ten_millionths, u128::from(steps));
        }
    }
}
