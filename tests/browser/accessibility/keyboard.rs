//! The keyboard alone: every stop is reached, seen and in order, and every journey can be made.
//!
//! `hand` presses the keys and looks where the focus is.

mod belt;
mod bolt;
mod convert;
mod hand;
mod sheet;
mod stops;
