//! Views shared by all screens: results, faults, choices, icons.

pub(crate) mod caution;
pub(crate) mod choice;
pub(crate) mod fault;
pub(crate) mod finding;
pub(crate) mod icon;
pub(crate) mod settings;
