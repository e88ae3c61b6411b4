//! Views shared by all screens: fields, results, faults, drawings, choices, icons.

pub(crate) mod bring;
pub(crate) mod button;
pub(crate) mod caution;
pub(crate) mod choice;
pub(crate) mod fault;
pub(crate) mod field;
pub(crate) mod finding;
pub(crate) mod focus;
pub(crate) mod fold;
pub(crate) mod icon;
pub(crate) mod jumps;
pub(crate) mod large;
pub(crate) mod overlay;
pub(crate) mod settings;
pub(crate) mod sketch;
pub(crate) mod spoken;
pub(crate) mod verdict;
