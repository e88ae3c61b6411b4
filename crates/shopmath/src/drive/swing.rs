//! A tensioner that swings at idle: what the movement seen at its pulley means.
//!
//! Common practice, no source: a good one stands still; 3/8 to 1/2 in is worn out.

use super::si::{in_metres, metres, radians};
use crate::quantity::exact::length::Inch;
use uom::si::f64::{Angle, Length};

/// What the swing tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It stands still.
    Steady,
    /// It moves, less than a worn-out one.
    Watch,
    /// It moves as worn-out ones do.
    WornOut,
}

/// Swing at the pulley, side to side, from which a tensioner is worn out: 3/8 in (common practice).
///
/// ```
/// use shopmath::drive::swing::worn_out_from;
/// use shopmath::quantity::exact::length::Millimetre;
/// assert!((worn_out_from().get::<Millimetre>() - 9.525).abs() < 1e-9);
/// ```
#[must_use]
pub fn worn_out_from() -> Length {
    Length::new::<Inch>(3.0 / 8.0)
}

/// The arm's angle of a swing seen at the pulley's centre, side to side: 2·asin(s/2l). `None`
/// where the swing is more than the arm can make.
///
/// ```
/// use shopmath::drive::swing::arm_angle;
/// use shopmath::quantity::exact::{angle::Degree, length::Millimetre};
/// use uom::si::f64::Length;
/// let mm = Length::new::<Millimetre>;
/// assert!((arm_angle(mm(80.0), mm(80.0)).unwrap().get::<Degree>() - 60.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn arm_angle(swing: Length, arm: Length) -> Option<Angle> {
    let half = in_metres(swing).abs() / (2.0 * in_metres(arm));
    (half <= 1.0).then(|| radians(2.0 * half.asin()))
}

/// The belt that passes to and fro with such a swing: the arm's |dL/dα|, length per radian, times its
/// angle. Not below zero for an angle not below zero.
///
/// ```
/// use shopmath::drive::swing::belt_moved;
/// use shopmath::quantity::exact::{angle::Degree, length::Millimetre};
/// use uom::si::f64::{Angle, Length};
/// let moved = belt_moved(Angle::new::<Degree>(3.0), Length::new::<Millimetre>(-120.0));
/// assert!((moved.get::<Millimetre>() - 6.283).abs() < 5e-4);
/// ```
#[must_use]
pub fn belt_moved(angle: Angle, growth: Length) -> Length {
    metres(super::si::in_radians(angle) * in_metres(growth).abs())
}

/// What a swing at the pulley tells, side to side, its sign not used: worn out from [`worn_out_from`],
/// steady at nothing, to be watched in between (common practice).
///
/// ```
/// use shopmath::drive::swing::{Verdict, verdict};
/// use shopmath::quantity::exact::length::Inch;
/// use uom::si::f64::Length;
/// let of = |inches: f64| verdict(Length::new::<Inch>(inches));
/// assert_eq!([0.0, 0.25, 0.375].map(of), [Verdict::Steady, Verdict::Watch, Verdict::WornOut]);
/// ```
#[must_use]
pub fn verdict(swing: Length) -> Verdict {
    let swing = in_metres(swing).abs();
    if swing >= in_metres(worn_out_from()) - 1e-9 {
        Verdict::WornOut
    } else if swing > 0.0 {
        Verdict::Watch
    } else {
        Verdict::Steady
    }
}
