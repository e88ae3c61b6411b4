//! Texts that are no belt.

use crate::drive::belt::MOST_RIBS;
use core::fmt;

/// What is wrong with a belt's name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BeltFault {
    /// Not ribs, profile and length.
    NotAName(String),
    /// Letters that are no profile.
    NoSuchProfile(String),
    /// A number of ribs no belt has.
    Ribs(u32),
    /// A length no belt has, millimetre.
    Length(u32),
}

impl fmt::Display for BeltFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAName(text) => write!(
                out,
                "“{text}” is no belt name. Type ribs, profile and length in millimetres, such as 6PK1453."
            ),
            Self::NoSuchProfile(letters) => {
                write!(
                    out,
                    "“{letters}” is no ribbed profile. Type PH, PJ, PK, PL or PM, as in 6PK1453."
                )
            }
            Self::Ribs(ribs) => write!(out, "{ribs} ribs make no belt. Type 1 to {MOST_RIBS}, as in 6PK1453."),
            Self::Length(length) => write!(
                out,
                "{length} mm is no belt length. Type 100 to 20000 mm after the profile, as in 6PK1453."
            ),
        }
    }
}
