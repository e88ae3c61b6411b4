//! Shared helpers of the checks.

#[cfg(feature = "browser")]
#[path = "browser/harness/mod.rs"]
pub mod harness;
