//! Shop math: the calculators behind Fenderside, as plain functions.
//!
//! Data flows one way: text → [`mod@quantity`] → a calculator → [`mod@result`] → a view that lives in
//! another crate. This crate knows no browser, formats no HTML and reads no clock; everything
//! in it is tested natively.

#[macro_use]
extern crate uom;

mod bound;
pub mod caution;
pub mod convert;
pub mod drive;
pub mod fastener;
pub mod field;
pub mod quantity;
pub mod result;
pub mod sheet;
pub mod sketch;
pub mod source;
pub mod tools;

/// The example of the crate's front page is a test too.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct FrontPage;
