//! Fasteners: everything about one bolt and the tools on it.
//!
//! One concept a file: the data ([`thread_table`], [`class`], [`material`], [`head`]), the
//! calculators, and [`bolt`], which puts a bolt as typed through all of them.

pub mod angle;
pub mod bolt;
pub mod class;
mod class_table;
pub mod engagement;
pub mod friction;
pub mod head;
pub mod heat;
pub mod material;
#[cfg(test)]
mod properties;
pub mod refusal;
pub mod resilience;
pub mod reuse;
mod si;
pub mod spec;
pub mod stuck;
pub mod thread;
pub mod thread_table;
pub mod thread_text;
pub mod tighten;
pub mod wrench;
pub mod wrench_fit;
