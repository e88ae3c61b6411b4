//! One module per screen.

pub(crate) mod belt;
pub(crate) mod bolt;
pub(crate) mod convert;
pub(crate) mod sheet;
pub(crate) mod sources;
