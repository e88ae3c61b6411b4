//! What can be wrong with a drive and what is typed about it, and the sentence for each that says
//! what was read and what to type instead: the one place that words such a message.
//!
//! A file per thing that can be wrong. Finding the fault is the calculators' work.

mod belt;
mod place;
mod route;
mod tensioner;
mod text;

pub use belt::BeltFault;
pub use place::{MeasureFault, PlaceFault};
pub use route::RouteFault;
pub use tensioner::TensionerFault;
pub use text::{PulleyPart, TextFault};

use super::si::in_metres;
use crate::quantity::print;
use uom::si::f64::Length;

/// A length as a person reads it, to a tenth of a millimetre.
fn millimetres(length: Length) -> String {
    format!("{} mm", print::rounded(in_metres(length) * 1e3, 0.1))
}
