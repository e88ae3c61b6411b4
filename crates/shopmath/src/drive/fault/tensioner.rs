//! Tensioners that cannot be, and belts they cannot hold.

use super::millimetres;
use core::fmt;
use uom::si::f64::Length;

/// What is wrong with a tensioner, or with a belt on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TensionerFault {
    /// It names a pulley the drive has not got.
    NoSuchPulley,
    /// The pivot is the pulley's own centre, or absurdly far from it.
    NoArm,
    /// A sweep of nothing, backwards, or more than a turn.
    NoSweep,
    /// At no angle of the sweep can the belt take the route.
    NeverRoutes,
    /// The belt is shorter than the arm's slackest position allows.
    TooShort {
        /// The belt.
        belt: Length,
        /// The shortest that goes on.
        shortest: Length,
    },
    /// The belt is longer than the arm can take up.
    TooLong {
        /// The belt.
        belt: Length,
        /// The longest that is held.
        longest: Length,
    },
    /// The belt's length is in reach, and no position of the arm with that length lets it run.
    NoPosition,
    /// The arm stands where its motion takes up no belt.
    DeadCentre,
    /// A figure of the arm that was typed at its pulley cannot be used.
    Unread,
}

impl fmt::Display for TensionerFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NoSuchPulley => write!(
                out,
                "No pulley has the tensioner's name. Use a name from the pulley list."
            ),
            Self::NoArm => write!(
                out,
                "The pivot must stand beside the pulley's centre, 1 mm to 10 m away. Type the pivot's place in millimetres."
            ),
            Self::NoSweep => write!(
                out,
                "The sweep runs from the low stop up to the high one, a full turn at most. Type a high stop above the low one, such as 200..260."
            ),
            Self::NeverRoutes => write!(
                out,
                "At no angle of this sweep can the belt take the route. Check pivot, sweep and the side the belt runs on."
            ),
            Self::TooShort { belt, shortest } => write!(
                out,
                "A belt of {} does not go on: the slack end of the sweep needs {}. Take a longer one.",
                millimetres(belt),
                millimetres(shortest)
            ),
            Self::TooLong { belt, longest } => write!(
                out,
                "A belt of {} stays slack: the arm takes up {} at most. Take a shorter one.",
                millimetres(belt),
                millimetres(longest)
            ),
            Self::NoPosition => write!(
                out,
                "No position of the arm lets this belt run clear. Check pivot and sweep."
            ),
            Self::Unread => write!(
                out,
                "A figure typed for the tensioner cannot be used, so nothing that needs it is worked out. Put it right at its pulley."
            ),
            Self::DeadCentre => write!(
                out,
                "The arm stands at dead centre, where its motion takes up no belt. Check pivot and sweep."
            ),
        }
    }
}
