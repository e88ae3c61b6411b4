//! The arm of the tensioner as the belt holds it: what the findings about it rest on.

use super::Bench;
use crate::drive::fault::{RouteFault, TensionerFault};
use crate::drive::si::in_radians;
use crate::drive::spring;
use crate::drive::take_up::{self, Fit, TakeUp};
use crate::quantity::{Quantity, Unit};
use crate::result::{Amount, Finding, Id, Working};
use uom::si::f64::{Angle, Force, Length, Ratio};

/// The method of a finding from the arm's sweep.
pub(super) const METHOD: &str = "arm swept through its travel";

/// The tensioner's range, and the arm holding the belt.
#[derive(Clone, Debug)]
pub(super) struct Held {
    /// The range.
    pub(super) take_up: TakeUp,
    /// The position that counts, nearest to the drawn one first, and any other.
    pub(super) fits: Vec<Fit>,
    /// dL/dα where the arm stands: with the belt, or as drawn within its stops where no belt is named.
    /// A belt that cannot be, or that the arm does not hold, puts it nowhere.
    pub(super) growth: Option<(Angle, Length)>,
    /// From pivot to pulley.
    pub(super) arm: Length,
}

impl Held {
    /// The method of a finding about where the arm stands.
    pub(super) fn method(&self) -> &'static str {
        if self.fits.is_empty() {
            "arm as drawn, since no belt is named"
        } else {
            METHOD
        }
    }

    /// The arm for a belt: angle and share of the sweep, or the sentence why not.
    pub(super) fn arm_for(&self, bench: &Bench, belt: Length) -> Result<(Angle, Ratio), String> {
        let Some(arm) = bench.arm() else {
            return Err(TensionerFault::NoSuchPulley.to_string());
        };
        let mut fits = self.take_up.fits(&arm, belt).map_err(|fault| fault.to_string())?;
        nearest_first(&mut fits, arm.drawn_at());
        fits.first()
            .map(|fit| (fit.angle, fit.share))
            .ok_or_else(|| TensionerFault::NoPosition.to_string())
    }

    /// The strand tension the spring typed holds, where the arm stands.
    pub(super) fn spring_tension(&self, bench: &Bench) -> Option<Force> {
        let (_, growth) = self.growth?;
        match bench.value("spring") {
            Some(Quantity::Torque(torque)) => spring::tension(torque, growth).ok(),
            _ => None,
        }
    }
}

/// Sweeps the arm and fits the belt; says where either fails.
pub(super) fn held(bench: &mut Bench) -> Option<Held> {
    if bench.is_stale() {
        return None;
    }
    let read = bench.clone();
    let arm = read.arm()?;
    let take_up = match take_up::take_up(&arm) {
        Ok(take_up) => take_up,
        Err(fault) => {
            // Where other pulleys are at fault, their sentences say what to change.
            let own = |fault: &RouteFault| fault.pulleys().contains(&arm.tensioner().pulley);
            if read.route_faults.iter().all(own) {
                bench.fault("tensioner", fault);
            }
            return None;
        }
    };
    let mut fits = Vec::new();
    if let Some(belt) = read.belt {
        match take_up.fits(&arm, belt.effective_length()) {
            Ok(found) => fits = found,
            Err(fault) => bench.fault("belt", fault),
        }
    }
    nearest_first(&mut fits, arm.drawn_at());
    let drawn = || {
        let named = read.belt.is_some() || read.faults.iter().any(|fault| fault.key == "belt");
        read.route
            .as_ref()
            .filter(|_| !named && arm.drawn_within())
            .map(|route| (arm.drawn_at(), arm.growth(route, arm.drawn_at())))
    };
    Some(Held {
        growth: fits.first().map(|fit| (fit.angle, fit.growth)).or_else(drawn),
        arm: arm.length(),
        take_up,
        fits,
    })
}

fn nearest_first(fits: &mut [Fit], drawn: Angle) {
    let off = |fit: &Fit| (in_radians(fit.angle) - in_radians(drawn)).abs();
    fits.sort_unstable_by(|one, other| off(one).total_cmp(&off(other)));
}

/// A finding from the arm's sweep.
pub(super) fn named(
    id: &'static str,
    name: &'static str,
    amount: impl Into<Amount>,
    unit: Unit,
    working: Working,
) -> Finding {
    Finding::new(Id::Named(id), name, amount, unit, METHOD, working)
}
