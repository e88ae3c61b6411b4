//! Pulleys out of line: the angle from a straightedge's gap.

use super::si::{in_metres, radians};
use uom::si::f64::{Angle, Length};

/// The most a ribbed belt takes: 1/16 in per ft, that is 1 in 192 (a belt alignment table, as
/// published; it prints 0.298°).
pub const LIMIT: f64 = 1.0 / 192.0;

/// The angle of a span between pulleys whose faces stand `offset` apart along their shafts:
/// atan(offset/span). `None` for a span of nothing.
///
/// ```
/// use shopmath::drive::alignment::misalignment;
/// use shopmath::quantity::exact::{angle::Degree, length::{Foot, Inch}};
/// use uom::si::f64::Length;
/// let angle = misalignment(Length::new::<Inch>(1.0 / 16.0), Length::new::<Foot>(1.0)).unwrap();
/// assert!((angle.get::<Degree>() - 0.298).abs() < 5e-4);
/// ```
#[must_use]
pub fn misalignment(offset: Length, span: Length) -> Option<Angle> {
    let (offset, span) = (in_metres(offset).abs(), in_metres(span));
    (span > 0.0 && offset.is_finite()).then(|| radians(offset.atan2(span)))
}

/// The largest gap a ribbed belt takes over a span.
#[must_use]
pub fn largest_offset(span: Length) -> Length {
    span * LIMIT
}

/// Whether a gap over a span is more than a ribbed belt takes.
#[must_use]
pub fn exceeds(offset: Length, span: Length) -> bool {
    in_metres(offset).abs() > in_metres(largest_offset(span)) * (1.0 + 1e-12)
}
