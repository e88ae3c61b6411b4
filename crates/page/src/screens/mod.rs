//! One module per screen.

pub(crate) mod convert;
pub(crate) mod unbuilt;
