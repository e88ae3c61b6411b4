//! What a tensioner makes of a belt: the lengths at both stops, the arm angles at which a belt
//! fits, and how much more length the arm can take up.
//!
//! The length over the sweep is cut into pieces on which it only rises or only falls, so that each
//! piece holds one solution at most; each is found by `kurbo`'s bracketing ITP solver.

use super::fault::{RouteFault, TensionerFault};
use super::route::Route;
use super::si::{in_metres, in_radians, metres, radians, ratio};
use super::tensioner::{Arm, Reading};
use crate::bound::between;
use kurbo::common::solve_itp;
use uom::si::f64::{Angle, Length, Ratio};

/// The widest step between two looks at the length, radian: half a degree.
const STEP: f64 = core::f64::consts::PI / 360.0;
/// Solutions are found to this angle, radian.
const CLOSE: f64 = 1e-12;
/// A belt this near to the length at a stop fits there, metre.
const AT_STOP: f64 = 1e-9;

/// Where the arm can stand with a route that a belt can take, and the lengths there.
#[derive(Clone, Debug)]
pub struct TakeUp {
    /// Length at the low stop, or why there is none.
    pub at_low: Result<Length, RouteFault>,
    /// Length at the high stop, or why there is none.
    pub at_high: Result<Length, RouteFault>,
    /// The shortest length of the whole sweep.
    pub shortest: Length,
    /// The longest length of the whole sweep.
    pub longest: Length,
    /// Angles between the stops where the length turns from growing to shrinking or back.
    pub dead_centres: Vec<Angle>,
    pieces: Vec<Piece>,
}

/// The arm holding a belt.
#[derive(Clone, Debug)]
pub struct Fit {
    /// The arm's angle.
    pub angle: Angle,
    /// The route there.
    pub route: Route,
    /// dL/dα, length per radian anticlockwise.
    pub growth: Length,
    /// How far the arm has gone from the stop where the shortest belt sits (0) to the stop
    /// where it runs out (1).
    pub share: Ratio,
    /// How much longer the belt may get before the arm runs out of travel.
    pub remaining: Length,
}

/// A part of the sweep on which the length only rises or only falls.
#[derive(Clone, Copy, Debug)]
struct Piece {
    start: (f64, Reading),
    end: (f64, Reading),
}

/// Goes over the sweep, looking at it every half degree: a clear stretch narrower than that between
/// two that are not may be passed over. Lengths are effective lengths.
///
/// # Errors
/// [`TensionerFault::NeverRoutes`] where the belt can run at no angle.
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, take_up::take_up};
/// let bench = resolve(&DriveText::demo());
/// let arm = bench.arm().unwrap();
/// let travel = take_up(&arm).unwrap();
/// assert_eq!(travel.at_low, Ok(arm.route_at(arm.tensioner().low).unwrap().effective_length));
/// let belt = bench.belt.unwrap().effective_length();
/// assert!(travel.shortest < belt && belt < travel.longest && travel.dead_centres.is_empty());
/// ```
pub fn take_up(arm: &Arm<'_>) -> Result<TakeUp, TensionerFault> {
    let pieces = pieces(arm);
    let ends = || {
        pieces
            .iter()
            .flat_map(|piece| [piece.start.1.length, piece.end.1.length])
    };
    // The pieces are clear of what the arm moves; once for all, nothing else is in the way either.
    if pieces
        .first()
        .is_none_or(|piece| arm.route_in_sense(piece.start.0).is_err())
    {
        return Err(TensionerFault::NeverRoutes);
    }
    let at = |angle: Angle| match arm.route_in_sense(in_radians(angle)) {
        Ok(route) => Ok(route.effective_length),
        Err(faults) => Err(faults
            .first()
            .copied()
            .unwrap_or(RouteFault::Missed(arm.tensioner().pulley))),
    };
    let joints = pieces
        .windows(2)
        .filter(|pair| pair[0].end.0.to_bits() == pair[1].start.0.to_bits());
    Ok(TakeUp {
        at_low: at(arm.tensioner().low),
        at_high: at(arm.tensioner().high),
        shortest: metres(ends().fold(f64::INFINITY, f64::min)),
        longest: metres(ends().fold(f64::NEG_INFINITY, f64::max)),
        dead_centres: joints.map(|pair| radians(pair[0].end.0)).collect(),
        pieces,
    })
}

impl TakeUp {
    /// Every arm angle at which a belt of this effective length fits and runs clear, in the order
    /// of the sweep. More than one is possible where the arm passes dead centre. The arm is the one that
    /// was swept.
    ///
    /// # Errors
    /// [`TensionerFault::TooShort`], [`TensionerFault::TooLong`], or
    /// [`TensionerFault::NoPosition`] where the length is in reach and no position is clear.
    ///
    /// ```
    /// use shopmath::drive::{bench::{DriveText, resolve}, fault::TensionerFault, take_up::take_up};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// use uom::si::f64::Length;
    /// let bench = resolve(&DriveText::demo());
    /// let arm = bench.arm().unwrap();
    /// let fits = |mm: f64| take_up(&arm).unwrap().fits(&arm, Length::new::<Millimetre>(mm));
    /// let held = fits(1460.0).unwrap();
    /// assert!((held[0].route.effective_length.get::<Millimetre>() - 1460.0).abs() < 1e-6);
    /// assert!(matches!(fits(1600.0), Err(TensionerFault::TooLong { .. })));
    /// ```
    pub fn fits(&self, arm: &Arm<'_>, belt: Length) -> Result<Vec<Fit>, TensionerFault> {
        let target = in_metres(belt);
        let mut angles: Vec<(f64, Piece)> = Vec::new();
        for &piece in &self.pieces {
            let found = solve(arm, piece, target);
            let known = |angle: f64| angles.iter().any(|(other, _)| (angle - other).abs() < 1e-7);
            if let Some(angle) = found.filter(|&angle| !known(angle)) {
                angles.push((angle, piece));
            }
        }
        if angles.is_empty() {
            return Err(self.refusal(belt));
        }
        let fits: Vec<Fit> = angles
            .into_iter()
            .filter_map(|(angle, piece)| fit(arm, angle, piece, target))
            .collect();
        if fits.is_empty() {
            Err(TensionerFault::NoPosition)
        } else {
            Ok(fits)
        }
    }

    fn refusal(&self, belt: Length) -> TensionerFault {
        let (shortest, longest) = (self.shortest, self.longest);
        if in_metres(belt) < in_metres(shortest) {
            TensionerFault::TooShort { belt, shortest }
        } else if in_metres(belt) > in_metres(longest) {
            TensionerFault::TooLong { belt, longest }
        } else {
            TensionerFault::NoPosition
        }
    }
}

/// The one angle of a piece at which the length is the target.
fn solve(arm: &Arm<'_>, piece: Piece, target: f64) -> Option<f64> {
    let (low, high) = (piece.start.1.length - target, piece.end.1.length - target);
    for (miss, (angle, _)) in [(low, piece.start), (high, piece.end)] {
        if miss.abs() <= AT_STOP {
            return Some(angle);
        }
    }
    let miss = |angle: f64| arm.reading(angle).map_or(f64::NAN, |reading| reading.length - target);
    bracketed(miss, (piece.start.0, low), (piece.end.0, high))
}

/// The root of a function between two points where its signs differ.
fn bracketed(mut miss: impl FnMut(f64) -> f64, low: (f64, f64), high: (f64, f64)) -> Option<f64> {
    if low.1 * high.1 >= 0.0 {
        return None;
    }
    let up = if high.1 > 0.0 { 1.0 } else { -1.0 };
    let width = high.0 - low.0;
    let close = CLOSE.max(width * 1e-15);
    let root = solve_itp(
        |angle| up * miss(angle),
        low.0,
        high.0,
        close,
        1,
        0.2 / width,
        up * low.1,
        up * high.1,
    );
    Some(root)
}

fn fit(arm: &Arm<'_>, angle: f64, piece: Piece, target: f64) -> Option<Fit> {
    let route = arm.route_in_sense(angle).ok()?;
    if (in_metres(route.effective_length) - target).abs() > AT_STOP {
        return None;
    }
    let growth = arm.growth(&route, radians(angle));
    let (low, high) = arm.stops();
    let rises = piece.end.1.length >= piece.start.1.length;
    let (from, longest) = if rises {
        (angle - low, piece.end.1.length)
    } else {
        (high - angle, piece.start.1.length)
    };
    Some(Fit {
        angle: radians(angle),
        route,
        growth,
        share: ratio(between(from / (high - low), 0.0, 1.0)),
        remaining: metres((longest - target).max(0.0)),
    })
}

/// The route's reading where a belt can take it.
fn clear(arm: &Arm<'_>, angle: f64) -> Option<(f64, Reading)> {
    arm.reading(angle)
        .filter(|reading| reading.clear)
        .map(|reading| (angle, reading))
}

/// The sweep cut where a belt can no longer run and where the length turns.
fn pieces(arm: &Arm<'_>) -> Vec<Piece> {
    let (low, high) = arm.stops();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a turn has 720 half degrees
    let steps = (((high - low) / STEP).ceil() as usize).max(8);
    #[allow(clippy::cast_precision_loss)] // see above
    let angle = |step: usize| low + (high - low) * (step as f64 / steps as f64);
    let mut pieces: Vec<Piece> = Vec::new();
    let mut before: Option<(f64, Reading)> = None;
    for step in 0..=steps {
        let at = angle(step);
        let here = clear(arm, at);
        match (before, here) {
            (Some(start), Some(end)) => join(arm, &mut pieces, start, end),
            (Some(start), None) => join(arm, &mut pieces, start, edge(arm, start, at)),
            (None, Some(end)) if step > 0 => {
                let start = edge(arm, end, angle(step - 1));
                join(arm, &mut pieces, start, end);
            }
            _ => {}
        }
        before = here;
    }
    pieces
}

/// Adds a step to the pieces, cut in two where the length turns within it.
fn join(arm: &Arm<'_>, pieces: &mut Vec<Piece>, start: (f64, Reading), end: (f64, Reading)) {
    let growth = |angle: f64| arm.reading(angle).map_or(f64::NAN, |reading| reading.growth);
    let turn = bracketed(growth, (start.0, start.1.growth), (end.0, end.1.growth)).and_then(|angle| clear(arm, angle));
    match pieces.last() {
        Some(last) if last.end.0.to_bits() == start.0.to_bits() => {}
        _ => pieces.push(Piece { start, end: start }),
    }
    if let Some(turn) = turn {
        extend(pieces, turn);
        pieces.push(Piece { start: turn, end });
    } else {
        extend(pieces, end);
    }
}

/// Moves the end of the last piece.
fn extend(pieces: &mut [Piece], end: (f64, Reading)) {
    if let Some(last) = pieces.last_mut() {
        last.end = end;
    }
}

/// The last angle, from one where a belt can run towards one where it cannot, at which it can.
fn edge(arm: &Arm<'_>, runs: (f64, Reading), not: f64) -> (f64, Reading) {
    let (mut inside, mut outside) = (runs, not);
    for _ in 0..40 {
        let middle = 0.5 * (inside.0 + outside);
        match clear(arm, middle) {
            Some(reading) => inside = reading,
            None => outside = middle,
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drive::layout::Layout;
    use crate::drive::profile::Profile;
    use crate::drive::text::{pulleys, tensioner};
    use core::f64::consts::TAU;

    /// A flat pulley that presses the upper span down, past the lower one if it is let.
    fn pressing(low: f64, high: f64) -> (Layout, String) {
        let list = pulleys::read("crank:rib:0,0:100;fan:rib:400,0:100;idler:back:202,66:60").unwrap();
        let layout = Layout {
            profile: Profile::Pk,
            back: metres(0.0023),
            pulleys: list,
        };
        (layout, format!("idler@350,40,{low}..{high}"))
    }

    fn swept(low: f64, high: f64) -> (TakeUp, Result<Vec<Fit>, TensionerFault>) {
        let (layout, text) = pressing(low, high);
        let arm = Arm::fit(&layout, tensioner::read(&text, &layout.pulleys).unwrap()).unwrap();
        let take_up = take_up(&arm).unwrap();
        // By the thin-belt formula alone, the arm would hold this one at 215°, on the far side of the lower span.
        let beyond = arm.reading(215_f64.to_radians()).unwrap();
        assert!(!beyond.clear);
        let fits = take_up.fits(&arm, metres(beyond.length));
        (take_up, fits)
    }

    #[test]
    fn a_belt_past_the_opposite_span_is_too_long() {
        let (take_up, fits) = swept(170.0, 240.0);
        let Err(TensionerFault::TooLong { longest, .. }) = fits else {
            panic!("{fits:?}");
        };
        // The arm's reach ends where the pulley meets the lower span, 50 mm below the line of centres.
        let (layout, text) = pressing(170.0, 240.0);
        let arm = Arm::fit(&layout, tensioner::read(&text, &layout.pulleys).unwrap()).unwrap();
        let down = 40.0 + 50.0 - (30.0 + 2.3);
        let touching = TAU / 2.0 + (down / (in_metres(arm.length()) * 1e3)).asin();
        assert!((arm.reading(touching).unwrap().length - in_metres(longest)).abs() < 1e-6);
        assert_eq!(in_metres(take_up.longest), in_metres(longest));
        assert!(take_up.at_low.is_ok() && take_up.at_high.is_err());
    }

    #[test]
    fn a_sweep_that_stops_short_of_the_span_has_both_stops() {
        let (take_up, _) = swept(170.0, 195.0);
        assert_eq!(in_metres(take_up.longest), in_metres(take_up.at_high.unwrap()));
    }
}
