//! The tensioner as text: `pulley@pivot-x,pivot-y,low..high`, millimetres and degrees.

use super::super::fault::TextFault;
use super::super::pulley::Pulley;
use super::super::tensioner::Tensioner;
use super::pulleys::{plain, spot};
use super::{LARGEST, digits, millimetres, named};
use crate::quantity::exact::angle::Degree;
use crate::quantity::{Quantity, Unit, read};
use uom::si::f64::Angle;

/// Reads a tensioner of a drive.
///
/// # Errors
/// [`TextFault::Tensioner`], or [`TextFault::UnknownPulley`] for a name the drive has not got.
///
/// ```
/// use shopmath::drive::text::{pulleys, tensioner};
/// let drive = pulleys::read("crank:rib:0,0:150;arm:back:200,90:70").unwrap();
/// let read = tensioner::read("arm@120,80,-30..40", &drive).unwrap();
/// assert_eq!(read.pulley, 1);
/// assert_eq!(tensioner::print(&read, &drive), "arm@120,80,-30..40");
/// ```
pub fn read(text: &str, pulleys: &[Pulley]) -> Result<Tensioner, TextFault> {
    let not_one = || TextFault::Tensioner(text.trim().to_owned());
    let (name, rest) = text.split_once('@').ok_or_else(not_one)?;
    let parts: Vec<&str> = rest.splitn(3, ',').collect();
    let [x, y, sweep] = parts.as_slice() else {
        return Err(not_one());
    };
    let pivot = spot(&format!("{x},{y}")).map_err(|_| not_one())?;
    let (low, high) = stops(sweep).ok_or_else(not_one)?;
    if [low, high].iter().any(|angle| angle.get::<Degree>().abs() > LARGEST) {
        return Err(not_one());
    }
    let names = || pulleys.iter().map(|pulley| pulley.name.as_str());
    let pulley = named(name, names()).ok_or_else(|| TextFault::UnknownPulley {
        name: name.trim().to_owned(),
        known: names().map(str::to_owned).collect(),
    })?;
    Ok(Tensioner {
        pulley,
        pivot,
        low,
        high,
    })
}

/// Both angles of a sweep, also of one that is typed backwards: what is wrong with that, the arm knows.
fn stops(text: &str) -> Option<(Angle, Angle)> {
    let degree = read::Expect::field(Unit::Degree);
    let both = match (read::range(text, degree), text.split_once("..")) {
        (Ok(sweep), _) => [sweep.low, sweep.high],
        (Err(_), Some((low, high))) => {
            let both = [read::value(low, degree).ok()?, read::value(high, degree).ok()?];
            // A unit behind the second alone would be another one than the first is read in.
            Some(both).filter(|[low, high]| low.unit == high.unit)?
        }
        _ => return None,
    };
    match both.map(|stop| stop.quantity()) {
        [Quantity::Angle(low), Quantity::Angle(high)] => Some((low, high)),
        _ => None,
    }
}

/// The tensioner as text, millimetres and degrees; empty when its pulley is not in the list.
///
/// ```
/// use shopmath::drive::text::{pulleys, tensioner};
/// let drive = pulleys::read("crank:rib:0,0:150;arm:back:200,90:70").unwrap();
/// let read = tensioner::read("ARM @ 4 in, 80, -30..40°", &drive).unwrap();
/// assert_eq!(tensioner::print(&read, &drive), "arm@101.6,80,-30..40");
/// assert_eq!(tensioner::print(&read, &drive[..1]), "");
/// ```
#[must_use]
pub fn print(tensioner: &Tensioner, pulleys: &[Pulley]) -> String {
    let Some(pulley) = pulleys.get(tensioner.pulley) else {
        return String::new();
    };
    format!(
        "{}@{},{},{}..{}",
        plain(&pulley.name),
        millimetres(tensioner.pivot.x),
        millimetres(tensioner.pivot.y),
        degrees(tensioner.low),
        degrees(tensioner.high)
    )
}

/// An angle in degrees, to a millionth, in the fewest digits.
fn degrees(angle: Angle) -> String {
    digits(angle.get::<Degree>())
}
