//! What must hold for any input whatever: a function per kind of input, which panics where it does
//! not. The fuzzer searches with them, and the replay tries what was found before.

mod finite;
mod link;
mod screens;
mod sheet;
mod text;

pub use link::link;
pub use screens::screens;
pub use sheet::sheet;
pub use text::text;
