//! Belt drives: the route of a ribbed belt, its length and name, the tensioner, tension and slip,
//! wear and alignment.
//!
//! Geometry: [`pulley`] and [`layout`] say what is there, [`route`] goes round it. [`tensioner`]
//! moves one pulley, [`take_up`] finds where a belt puts it. [`mod@bench`] ties the calculators to the
//! texts of the screen. Nothing here draws, and no text is made but the sentences of [`fault`],
//! the notations of [`text`], and names and words of results in [`mod@bench`].

pub mod alignment;
pub mod belt;
pub mod bench;
mod crossing;
pub mod fault;
pub mod layout;
pub mod load;
pub mod place;
pub mod profile;
#[cfg(test)]
mod properties;
pub mod pulley;
pub mod route;
mod si;
pub mod slip;
pub mod spring;
pub mod strand;
pub mod swing;
pub mod take_up;
mod tangent;
pub mod tension;
pub mod tensioner;
pub mod text;
mod trace;
pub mod wear;
