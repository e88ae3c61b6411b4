//! Shared helpers of the checks: one comparison, one table of accepted differences, one row shape.

/// How closely a value must agree, and why not closer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tolerance {
    /// Relative difference, against the larger magnitude of the two.
    Relative(f64),
    /// Absolute difference in the unit of the row: half of the last printed digit, as a rule.
    Absolute(f64),
}

/// SP 811 prints seven figures: half a unit of the last, taken relative at the worst first digit.
pub const SEVEN_FIGURES: Tolerance = Tolerance::Relative(5e-7);
/// Chains of exact factors differ only by the rounding of a few operations.
pub const EXACT_CHAIN: Tolerance = Tolerance::Relative(1e-12);

/// Where a check's expected value comes from: the marks of the project's domain notes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Printed in the named publication.
    Published,
    /// From memory of the named publication.
    Memory,
    /// Our own number from the stated equation: a regression value, no evidence.
    Calculated,
    /// Common practice, no source.
    CommonPractice,
}

/// Says of a check, in place of a mark, that it has the same figure written down twice: it guards against a slip
/// of the pen and is no evidence for the figure.
pub const TRANSCRIPTION: &str = "transcription";

/// Fails unless the two values agree; the same whichever way round they are given.
///
/// # Panics
/// When they differ by more than the tolerance, or either is not finite.
#[allow(clippy::panic)] // failing is what a check is for
pub fn agree(what: &str, actual: f64, expected: f64, tolerance: Tolerance) {
    let difference = (actual - expected).abs();
    let allowed = match tolerance {
        Tolerance::Relative(share) => share * actual.abs().max(expected.abs()),
        Tolerance::Absolute(reach) => reach,
    };
    assert!(
        actual.is_finite() && expected.is_finite() && difference <= allowed,
        "{what}: {actual} against {expected}, apart by {difference:e}, allowed {allowed:e}"
    );
}

#[cfg(feature = "browser")]
#[path = "browser/harness/mod.rs"]
pub mod harness;
