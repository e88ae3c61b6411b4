//! A day of the calendar, and counting days from one to another.
//!
//! Only what an interval needs: no clock, no time of day, no zone. Days are counted by shifting the
//! year to begin in March, so that the leap day comes last and the months' lengths form a straight
//! line (153 days in five months).

use core::fmt;

/// Days from the first of March of the year 0 to the first of January 1970.
const EPOCH: i64 = 719_468;
/// Days in four hundred years.
const DAYS_PER_ERA: i64 = 146_097;
/// The years a date may lie in.
const YEARS: core::ops::RangeInclusive<i64> = 1900..=2199;

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// A day, 1900-01-01 to 2199-12-31 in the Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: i64,
    month: i64,
    day: i64,
}

impl Date {
    /// Reads `YYYY-MM-DD`; nothing else, and no day that the calendar lacks.
    ///
    /// ```
    /// use shopmath::sheet::Date;
    /// assert_eq!(Date::read("2024-02-29").unwrap().to_string(), "2024-02-29");
    /// assert!(Date::read("2023-02-29").is_none());
    /// assert!(Date::read("29.02.2024").is_none());
    /// ```
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let text = text.trim();
        let shape = text.bytes().enumerate().all(|(index, byte)| match index {
            4 | 7 => byte == b'-',
            _ => byte.is_ascii_digit(),
        });
        if text.len() != 10 || !shape {
            return None;
        }
        let number = |range: core::ops::Range<usize>| text.get(range)?.parse::<i64>().ok();
        Self::new(number(0..4)?, number(5..7)?, number(8..10)?)
    }

    /// The days that a text can mean in the other ways people write them: three numbers with the day first
    /// or the month first, or with the month's name. A year of two digits is one of this century. Nothing
    /// for any other text.
    ///
    /// ```
    /// use shopmath::sheet::Date;
    /// let days = |text| Date::guesses(text).iter().map(Date::to_string).collect::<Vec<_>>();
    /// assert_eq!(days("31.03.25"), ["2025-03-31"]);
    /// assert_eq!(days("3/4/2025"), ["2025-04-03", "2025-03-04"]);
    /// assert_eq!(days("2025/4/3"), ["2025-04-03"]);
    /// assert_eq!(days("3 April 2025"), ["2025-04-03"]);
    /// ```
    #[must_use]
    pub fn guesses(text: &str) -> Vec<Self> {
        let parts = text.split(|letter: char| !letter.is_ascii_digit());
        let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
        let numbers: Vec<i64> = parts.iter().filter_map(|part| part.parse().ok()).collect();
        let year = |number: i64| if number < 100 { 2000 + number } else { number };
        let begins_with_year = parts.first().is_some_and(|begin| begin.len() > 2);
        let orders = match (numbers.as_slice(), named_month(text)) {
            (&[first, middle, last], None) if begins_with_year => vec![(first, middle, last)],
            (&[first, middle, last], None) => vec![(year(last), middle, first), (year(last), first, middle)],
            (&[first, last], Some(month)) if begins_with_year => vec![(first, month, last)],
            (&[first, last], Some(month)) => vec![(year(last), month, first)],
            _ => Vec::new(),
        };
        let mut days: Vec<Self> = orders
            .into_iter()
            .filter_map(|(year, month, day)| Self::new(year, month, day))
            .collect();
        days.dedup();
        days
    }

    /// The day the given number of days later (earlier if negative); nothing past the range.
    ///
    /// ```
    /// use shopmath::sheet::Date;
    /// let done = Date::read("2024-02-28").unwrap();
    /// assert_eq!(done.plus_days(2).unwrap().to_string(), "2024-03-01");
    /// ```
    #[must_use]
    pub fn plus_days(self, days: i64) -> Option<Self> {
        Self::of_number(self.number().checked_add(days)?)
    }

    /// The same day the given number of months later, or the month's last where it is shorter; nothing past
    /// the range.
    ///
    /// ```
    /// use shopmath::sheet::Date;
    /// let done = Date::read("2024-02-29").unwrap();
    /// assert_eq!(done.plus_months(24).unwrap().to_string(), "2026-02-28");
    /// assert_eq!(done.plus_months(11).unwrap().to_string(), "2025-01-29");
    /// ```
    #[must_use]
    pub fn plus_months(self, months: i64) -> Option<Self> {
        let all = (self.year * 12 + self.month - 1).checked_add(months)?;
        let (year, month) = (all.div_euclid(12), all.rem_euclid(12) + 1);
        Self::new(year, month, self.day.min(month_length(year, month)))
    }

    /// Days from another day to this one; negative where the other is later.
    ///
    /// ```
    /// use shopmath::sheet::Date;
    /// let day = |text| Date::read(text).unwrap();
    /// assert_eq!(day("2024-03-01").days_since(day("2024-02-28")), 2);
    /// assert_eq!(day("2024-01-01").days_since(day("2025-01-01")), -366);
    /// ```
    #[must_use]
    pub fn days_since(self, other: Self) -> i64 {
        self.number() - other.number()
    }

    fn new(year: i64, month: i64, day: i64) -> Option<Self> {
        let known = YEARS.contains(&year) && (1..=12).contains(&month);
        (known && (1..=month_length(year, month)).contains(&day)).then_some(Self { year, month, day })
    }

    /// Days since 1970-01-01.
    fn number(self) -> i64 {
        let year = if self.month <= 2 { self.year - 1 } else { self.year };
        let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
        let of_year = (153 * ((self.month + 9) % 12) + 2) / 5 + self.day - 1;
        era * DAYS_PER_ERA + of_era * 365 + of_era / 4 - of_era / 100 + of_year - EPOCH
    }

    fn of_number(number: i64) -> Option<Self> {
        let shifted = number.checked_add(EPOCH)?;
        let (era, of_era) = (shifted.div_euclid(DAYS_PER_ERA), shifted.rem_euclid(DAYS_PER_ERA));
        let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year + year / 4 - year / 100);
        let shifted_month = (5 * of_year + 2) / 153;
        let day = of_year - (153 * shifted_month + 2) / 5 + 1;
        let month = (shifted_month + 2) % 12 + 1;
        Self::new(era * 400 + year + i64::from(month <= 2), month, day)
    }
}

impl fmt::Display for Date {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// The month whose name, or its first three letters or more, is the only word of a text.
fn named_month(text: &str) -> Option<i64> {
    let mut words = text
        .split(|letter: char| !letter.is_ascii_alphabetic())
        .filter(|word| !word.is_empty());
    let (word, None) = (words.next()?, words.next()) else {
        return None;
    };
    let named = |name: &&str| {
        let begins = name.get(..word.len());
        word.len() > 2 && begins.is_some_and(|begins| begins.eq_ignore_ascii_case(word))
    };
    let month = MONTHS.iter().position(named)?;
    i64::try_from(month + 1).ok()
}

fn month_length(year: i64, month: i64) -> i64 {
    let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    match month {
        2 => 28 + i64::from(leap),
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::Date;
    use jiff::civil;

    #[test]
    fn every_day_of_the_range_is_the_one_another_calendar_counts() {
        let first = Date::read("1900-01-01").unwrap();
        let mut other = civil::date(1900, 1, 1);
        let last = civil::date(2199, 12, 31);
        for days in 0.. {
            let ours = first.plus_days(days).unwrap();
            assert_eq!(ours.to_string(), other.strftime("%Y-%m-%d").to_string());
            assert_eq!(Date::read(&ours.to_string()), Some(ours));
            assert_eq!(ours.days_since(first), days);
            if other == last {
                assert_eq!(first.plus_days(days + 1), None);
                return;
            }
            other = other.tomorrow().unwrap();
        }
    }

    #[test]
    fn what_is_no_day_is_refused() {
        for text in [
            "",
            "2024-13-01",
            "2024-00-10",
            "2024-04-31",
            "1899-12-31",
            "2200-01-01",
            "2024-4-1",
            "２024-04-01",
            "+024-04-01",
        ] {
            assert_eq!(Date::read(text), None, "{text}");
        }
        for text in [
            "",
            "soon",
            "2025",
            "31.03.",
            "99.99.2025",
            "31.02.2025",
            "1.2.3.4",
            "31.03.99999999999999999999",
            "12 ma 2025",
            "12 mayor 2025",
            "31 April 2025",
            "12 May",
            "1 2 May 2025",
            "May or June 12 2025",
        ] {
            assert_eq!(Date::guesses(text), [], "{text}");
        }
        assert_eq!(Date::read("2024-01-01").unwrap().plus_days(i64::MAX), None);
    }
}
