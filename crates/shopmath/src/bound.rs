//! Keeping a number between two others.

/// The number, or the end it lies beyond; `high` wins where the ends are crossed. The library's
/// `clamp` panics there, and the text of that panic brings 5 KB of number printing into the page.
#[allow(clippy::manual_clamp)] // see above: this is the one place that does without
pub(crate) fn between(value: f64, low: f64, high: f64) -> f64 {
    value.max(low).min(high)
}
