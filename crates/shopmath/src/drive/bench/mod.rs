//! The belt bench: the texts of the Belt screen, read, calculated and ready to be shown.
//!
//! Raw texts ([`DriveText`]) become a drive ([`Bench`]) with one sentence per field that could not
//! be read; [`assess`] puts every calculator's findings into sections. A bad text takes away only
//! the results that need it. [`drawing`] gives the shapes, [`edit`] changes the pulley list, [`entry`] as
//! a person types it.

mod assess;
mod checks;
pub mod drawing;
pub mod edit;
pub mod entry;
mod fields;
mod guess;
mod held;
mod lengths;
mod loads;
mod pulley_entry;
mod resolve;
mod springs;
mod strands;
mod tensioner;
#[cfg(test)]
mod tests;
mod texts;
mod travel;

pub use assess::{Assessment, Section, assess, cautions, glance};
pub use fields::{FIELDS, field};
pub use lengths::Candidate;
pub use resolve::{Bench, resolve};
pub use texts::DriveText;
