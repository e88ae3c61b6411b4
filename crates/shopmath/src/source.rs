//! Where a number comes from: each publication once, with what is taken from it and its mark.
//! The sources of each field of calculators stand in a file of their own below.

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

/// NIST SP 811: factors between units, from exact definitions.
pub const UNITS: Source = Source {
    publication: "NIST SP 811:2008, Appendix B",
    part: "exact definitions of the units",
    mark: Mark::Exact,
};

/// The nearest 64th, by exact arithmetic on the inch.
pub const INCH_FRACTION: Source = Source {
    publication: "NIST SP 811:2008, Appendix B",
    part: "1 in = 25.4 mm; nearest 64th in whole nanometres",
    mark: Mark::Exact,
};

/// When a wrench is too loose for its head.
pub const WRENCH_SLACK: Source = Source {
    publication: "",
    part: "a wrench more than 1.5 % wider than the head bears on the corners",
    mark: Mark::CommonPractice,
};

/// What a person wrote down on a sheet.
pub const SHEET_ENTRIES: Source = Source {
    publication: "",
    part: "this sheet's own entries",
    mark: Mark::Exact,
};
