//! The record of a job: what was tightened to what, what it cost, and when it is next due.
//!
//! [`model`] is what is kept, text as typed; [`fields`] names its entries. [`assess`](mod@assess)
//! reads it into verdicts, totals and due dates; [`head`] is what a list of sheets shows; [`order`]
//! changes it so that every change can be taken back. [`file`](mod@file), [`record`], [`link`] and
//! [`csv`] carry it elsewhere, [`code`](mod@code) to a camera; [`from_list`] takes a list of specs in. Nothing here reads a clock or stores
//! anything: dates come in as text, and what is kept where is the page's affair.

pub mod assess;
pub mod bolts;
pub mod code;
pub mod csv;
pub mod date;
pub mod demo;
pub mod due;
mod entry_fault;
pub mod fault;
pub mod fields;
pub mod file;
pub mod from_list;
pub mod head;
pub mod kit;
pub mod limits;
pub mod link;
pub mod merge;
mod migrate;
pub mod model;
pub mod order;
#[cfg(test)]
mod properties;
pub mod record;
#[cfg(test)]
mod schema;
pub mod total;

pub use assess::{SheetAssessment, assess, reassess};
pub use date::Date;
pub use fault::SheetFault;
pub use head::Head;
pub use model::{Belt, Check, Fastener, Interval, Part, SCHEMA, Sheet};
