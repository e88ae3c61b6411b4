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

/// The largest gap a ribbed belt takes over a span: the span times [`LIMIT`], 1/16 in per ft (a belt
/// alignment table, as published). Length in, length out, for spans not below zero.
///
/// ```
/// use shopmath::drive::alignment::largest_offset;
/// use shopmath::quantity::exact::length::{Foot, Inch};
/// use uom::si::f64::Length;
/// let gap = largest_offset(Length::new::<Foot>(2.0)).get::<Inch>();
/// assert!((gap - 1.0 / 8.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn largest_offset(span: Length) -> Length {
    span * LIMIT
}

/// Whether a gap over a span is more than a ribbed belt takes, by [`largest_offset`]. The gap counts
/// either way round; one that just meets the limit does not exceed it.
///
/// ```
/// use shopmath::drive::alignment::exceeds;
/// use shopmath::quantity::exact::length::Millimetre;
/// use uom::si::f64::Length;
/// let mm = Length::new::<Millimetre>;
/// // 1/16 in per ft is 1.5625 mm over 300 mm.
/// assert!(!exceeds(mm(1.5), mm(300.0)) && exceeds(mm(-1.6), mm(300.0)));
/// ```
#[must_use]
pub fn exceeds(offset: Length, span: Length) -> bool {
    in_metres(offset).abs() > in_metres(largest_offset(span)) * (1.0 + 1e-12)
}
