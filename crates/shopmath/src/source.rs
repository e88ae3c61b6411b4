//! Where a number comes from: each publication once, with what is taken from it and its mark.
//! The sources of each field of calculators stand in a file of their own below.

/// Sources by name, publication, part and mark, behind the name of the list that has them all.
macro_rules! sources {
    ($(#[$said:meta])* $seen:vis $list:ident $($(#[$doc:meta])* $name:ident = $publication:literal, $part:literal, $mark:ident;)*) => {
        $($(#[$doc])* pub const $name: Source = Source { publication: $publication, part: $part, mark: Mark::$mark };)*
        $(#[$said])* $seen const $list: &[Source] = &[$($name),*];
    };
}

pub mod drive;
pub mod fastener;

/// How far a figure can be trusted to be what the publication prints.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Exact by definition.
    Exact,
    /// Printed in the named publication.
    Published,
    /// Recalled from the named publication, not read again.
    Memory,
    /// Our own number from the stated equation.
    Calculated,
    /// Common practice, no source.
    CommonPractice,
}

impl Mark {
    /// The mark in words.
    ///
    /// ```
    /// use shopmath::source::{Mark, UNITS};
    /// assert_eq!((UNITS.mark.words(), Mark::Memory.words()), ("exact by definition", "from memory"));
    /// ```
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Exact => "exact by definition",
            Self::Published => "as published",
            Self::Memory => "from memory",
            Self::Calculated => "own calculation",
            Self::CommonPractice => "common practice, no source",
        }
    }
}

/// What one figure or equation rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// The publication; empty for common practice and own calculation.
    pub publication: &'static str,
    /// What is taken from it.
    pub part: &'static str,
    /// How far it can be trusted.
    pub mark: Mark,
}

impl Source {
    /// The source as it is cited beside a number: publication, part and mark.
    ///
    /// ```
    /// use shopmath::source::fastener::{PROOF, STOP};
    /// assert_eq!(PROOF.cited(), "ISO 898-1, SAE J429: proof load = As·Sp (as published)");
    /// assert_eq!(STOP.cited(), "80 % of the twist-yield torque (common practice, no source)");
    /// ```
    #[must_use]
    pub fn cited(&self) -> String {
        let join = if self.publication.is_empty() { "" } else { ": " };
        [self.publication, join, self.part, " (", self.mark.words(), ")"].concat()
    }
}

sources! {
    /// What units, wrenches and sheets rest on.
    OWN

    /// NIST SP 811: factors between units, from exact definitions.
    UNITS = "NIST SP 811:2008, Appendix B", "exact definitions of the units", Exact;

    /// The nearest 64th, by exact arithmetic on the inch.
    INCH_FRACTION = "NIST SP 811:2008, Appendix B", "1 in = 25.4 mm; nearest 64th in whole nanometres", Exact;

    /// When a wrench is too loose for its head.
    WRENCH_SLACK = "", "a wrench more than 1.5 % wider than the head bears on the corners", CommonPractice;

    /// What a person wrote down on a sheet.
    SHEET_ENTRIES = "", "this sheet's own entries", Exact;
}

/// Every source of the page, grouped by publication in alphabetical order; common practice and own
/// calculation, which have none, come last. A source used by several calculators stands once.
///
/// ```
/// let listed = shopmath::source::publications();
/// assert!(listed.iter().any(|(publication, parts)| publication.contains("SP 811") && !parts.is_empty()));
/// ```
#[must_use]
pub fn publications() -> Vec<(&'static str, Vec<Source>)> {
    let mut listed: Vec<(&'static str, Vec<Source>)> = Vec::new();
    for &source in OWN.iter().chain(fastener::ALL).chain(drive::ALL) {
        let place = listed
            .iter()
            .position(|(publication, _)| *publication >= source.publication)
            .unwrap_or(listed.len());
        match listed.get_mut(place) {
            Some((publication, parts)) if *publication == source.publication => {
                if !parts.contains(&source) {
                    parts.push(source);
                }
            }
            _ => listed.insert(place, (source.publication, vec![source])),
        }
    }
    // The empty name sorts first and belongs last.
    if listed.first().is_some_and(|(publication, _)| publication.is_empty()) {
        listed.rotate_left(1);
    }
    listed
}

#[cfg(test)]
mod tests {
    use super::publications;

    #[test]
    fn publications_stand_once_and_in_order() {
        let listed: Vec<&str> = publications().iter().map(|(publication, _)| *publication).collect();
        let (none, named) = listed.split_last().unwrap();
        assert_eq!(*none, "");
        assert!(named.windows(2).all(|pair| pair[0] < pair[1]), "{named:?}");
    }
}
