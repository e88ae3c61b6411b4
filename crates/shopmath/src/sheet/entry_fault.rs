//! What can be wrong with a text of a sheet that only sheets read: a count, a price, a distance on the road, a day, a
//! time. Here are the sentences; the quantities have theirs in [`crate::quantity::fault`].

use crate::field::FieldFault;

/// Why an entry cannot be used.
pub(super) enum EntryFault {
    /// No count of bolts.
    NotBolts,
    /// No price.
    NotPrice,
    /// No count of parts.
    NotCount,
    /// Something stands around a number, which is this.
    NotAlone(String),
    /// A price whose mark can stand for thousands or decimals: the price, and both written out.
    TwoMeanings(String, [String; 2]),
    /// More than any sum is made of.
    TooMuch,
    /// More decimals than these.
    TooFine(u32),
    /// A length in a unit no road is measured in; the same in others.
    NotOnRoad([String; 2]),
    /// Farther than any odometer reads, or below nothing.
    TooFar,
    /// An interval of no distance.
    NoDistance,
    /// No day; those that can be meant.
    NotDay(Vec<String>),
    /// No time between two times.
    NotTime,
}

impl EntryFault {
    /// The fault of an entry, which its key names.
    pub(super) fn of(self, key: &'static str) -> FieldFault {
        let plain = |words: &str| (words.to_owned(), Vec::new());
        let (sentence, remedies) = match self {
            Self::NotBolts => plain("Type a whole number of bolts from 1 to 999."),
            Self::NotPrice => plain("Type the price as a number alone, such as 45.00."),
            Self::NotCount => plain("Type the count as a number alone, such as 2 or 4.5."),
            Self::NotAlone(number) => (format!("The {key} is a number alone, such as {number}."), vec![number]),
            Self::TwoMeanings(read, [thousands, decimals]) => (
                format!(
                    "“{read}”: the mark can stand for thousands or decimals. Type {thousands}, or {decimals} with a fourth decimal."
                ),
                vec![thousands, decimals],
            ),
            Self::TooMuch => plain(&format!("The {key} is to be 1 000 000 000 at most.")),
            Self::TooFine(decimals) => plain(&format!(
                "The {key} is read to {decimals} decimals; type it with no more."
            )),
            Self::NotOnRoad(remedies) => ("A way on the road is read in km or mi.".into(), remedies.into()),
            Self::TooFar => plain("A distance from 0 to 10 000 000 km is read here."),
            Self::NoDistance => plain("An interval is longer than nothing."),
            Self::NotDay(days) => ("Type the day as year-month-day, such as 2025-03-31.".into(), days),
            Self::NotTime => plain("Type days from 1 to 36500, or a time such as 2 years, 18 months or 6 weeks."),
        };
        FieldFault {
            key,
            sentence,
            remedies,
        }
    }
}
