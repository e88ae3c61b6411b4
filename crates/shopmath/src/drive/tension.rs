//! Tension round the loop: from one known strand and each accessory's pull to every span and hub.
//!
//! Tensions here are what presses the belt on the pulleys, T − m·v²: the belt's own mass takes the
//! rest. Slip is [`super::slip`]'s question.

use super::route::Route;
use super::si::{in_kilograms_per_metre, in_metres, in_metres_per_second, in_newtons, newtons, radians};
use uom::si::f64::{Angle, Force, LinearMassDensity, Velocity};

/// How the tension of the loop is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Setting {
    /// A tensioner's spring holds its two spans at this tension, running or not.
    Tensioner {
        /// The pulley on its arm.
        pulley: usize,
        /// The tension it holds.
        tension: Force,
    },
    /// All pulleys are fixed: the belt's stretch is shared by the spans, so their tensions, by
    /// length, average to that of the belt at rest.
    Fixed {
        /// The tension at rest.
        tension: Force,
    },
}

/// The loop under load.
#[derive(Clone, Debug, PartialEq)]
pub struct Loop {
    /// m·v²: what the belt's own motion takes of each span's tension.
    pub centrifugal: Force,
    /// The pressing tension T − m·v² of each span, by the pulley it leaves; negative where the
    /// belt would have to push.
    pub spans: Vec<Force>,
    /// The load on each pulley's hub.
    pub hubs: Vec<Hub>,
}

/// The belt's load on one hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hub {
    /// How hard.
    pub force: Force,
    /// Which way, from +x, anticlockwise.
    pub direction: Angle,
}

/// The tension the belt's motion takes: m·v², mass per metre of the whole belt, whichever way it runs.
///
/// ```
/// use shopmath::drive::tension::centrifugal;
/// use shopmath::quantity::exact::{force::Newton, linear_density::KilogramPerMetre, speed::MetrePerSecond};
/// use uom::si::f64::{LinearMassDensity, Velocity};
/// // Six PK ribs at 0.020 kg/m each.
/// let mass = LinearMassDensity::new::<KilogramPerMetre>(0.12);
/// let at = |speed| centrifugal(mass, Velocity::new::<MetrePerSecond>(speed)).get::<Newton>();
/// assert!((at(20.0) - 48.0).abs() < 1e-9 && (at(-40.0) - 4.0 * 48.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn centrifugal(mass: LinearMassDensity, speed: Velocity) -> Force {
    let speed = in_metres_per_second(speed);
    newtons(in_kilograms_per_metre(mass) * speed * speed)
}

/// Goes round the loop: across each driven pulley the tension rises by its pull, across the driver
/// it falls by the sum of all, T_out = T_in + F. Hub load: T_out·d_out − T_in·d_in. By the equilibrium of each pulley.
///
/// `pulls` has one entry per pulley, zero for an idler; that of the first pulley, the driver, is
/// not read, and one that is missing counts as zero. `centrifugal` is the m·v² of [`centrifugal`](fn@centrifugal).
///
/// ```
/// use shopmath::drive::{bench::{DriveText, resolve}, tension::{Setting, around}};
/// use shopmath::quantity::exact::force::Newton;
/// use uom::si::f64::Force;
/// // Two pulleys, the second pulled at by 100 N: their two spans are of one length.
/// let route = resolve(&DriveText::begin()).route.unwrap();
/// let newtons = Force::new::<Newton>;
/// let setting = Setting::Fixed { tension: newtons(300.0) };
/// let spans = around(&route, &[newtons(0.0), newtons(100.0)], setting, newtons(0.0)).spans;
/// assert!((spans[0].get::<Newton>() - 250.0).abs() < 1e-9 && (spans[1].get::<Newton>() - 350.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn around(route: &Route, pulls: &[Force], setting: Setting, centrifugal: Force) -> Loop {
    let rises = rises(route, pulls);
    let level = match setting {
        Setting::Tensioner { pulley, tension } => in_newtons(tension) - held(&rises, pulley),
        Setting::Fixed { tension } => in_newtons(tension) - in_newtons(centrifugal) - mean(route, &rises),
    };
    let spans: Vec<f64> = rises.iter().map(|rise| level + rise).collect();
    let hubs = route
        .legs
        .iter()
        .enumerate()
        .map(|(index, leg)| {
            let tight = spans[(index + spans.len() - 1) % spans.len()];
            let load = spans[index] * leg.leaving - tight * leg.arriving;
            Hub {
                force: newtons(load.hypot()),
                direction: radians(load.atan2()),
            }
        })
        .collect();
    Loop {
        centrifugal,
        spans: spans.into_iter().map(newtons).collect(),
        hubs,
    }
}

/// How much more tension each span has than the first, which leaves the driver, newton.
fn rises(route: &Route, pulls: &[Force]) -> Vec<f64> {
    let mut rise = 0.0;
    (0..route.legs.len())
        .map(|index| {
            if index > 0 {
                rise += pulls.get(index).map_or(0.0, |&pull| in_newtons(pull));
            }
            rise
        })
        .collect()
}

/// The rise at a tensioner's pulley: the middle of its two spans, which are equal on an idler.
fn held(rises: &[f64], pulley: usize) -> f64 {
    let count = rises.len().max(1);
    let at = |index: usize| rises.get(index).copied().unwrap_or(0.0);
    0.5 * (at(pulley) + at((pulley + count - 1) % count))
}

/// The rises averaged over the spans by length.
fn mean(route: &Route, rises: &[f64]) -> f64 {
    let total: f64 = route.legs.iter().map(|leg| in_metres(leg.span)).sum();
    route
        .legs
        .iter()
        .zip(rises)
        .map(|(leg, rise)| in_metres(leg.span) / total * rise)
        .sum()
}
