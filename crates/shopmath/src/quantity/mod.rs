//! Quantities: the table of units, reading them from text, and printing them.
//!
//! The homes: [`table`] knows every unit, [`read`] turns text into quantities, [`mod@print`] turns
//! quantities into text, [`fraction`] those in inches, [`fault`] says what was wrong with a text. Calculations live elsewhere.

pub mod compliance;
pub mod fault;
pub mod fraction;
pub mod print;
pub mod read;
pub mod spelling;
pub mod table;
pub mod typed;

pub use table::{Kind, Quantity, System, Unit, exact};
pub use typed::{Bounds, Typed};
