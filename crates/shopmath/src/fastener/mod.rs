//! Fasteners: everything about one bolt and the tools on it.

pub mod wrench_fit;
