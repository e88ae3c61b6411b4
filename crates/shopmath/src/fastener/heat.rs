//! What heat does to a bolted joint: the clearance of the thread and the clamp load. Both bolt and
//! part are taken as equally warm.

use super::refusal::{Refusal, finite, within};
use super::si::{kelvins, metres, metres_per_newton, newtons};
use crate::quantity::Unit;
use crate::quantity::compliance::Compliance;
use uom::si::f64::{Force, Length, TemperatureCoefficient, TemperatureInterval};

/// What counts as room temperature, °C; a rise counts from here.
pub(super) const ROOM: f64 = 20.0;
/// Changes of temperature from there that are calculated with, kelvin.
const LIMITS: (f64, f64) = (-250.0, 1200.0);

/// A change of temperature, from −250 K to 1200 K.
pub(super) fn within_reach(change: TemperatureInterval) -> Result<TemperatureInterval, Refusal> {
    let limits = (kelvins(LIMITS.0), kelvins(LIMITS.1));
    within("heat", change, limits, Unit::KelvinDifference)
}

/// Growth of the thread's clearance on diameter, (α_hole − α_bolt)·d·ΔT; negative where the hole
/// closes on the bolt.
///
/// # Errors
/// [`Refusal::OutOfRange`] for a change outside −250–1200 K.
///
/// ```
/// use shopmath::fastener::{heat::clearance, material};
/// use shopmath::quantity::exact::{length::{Micrometre, Millimetre}, temperature_difference::KelvinDifference};
/// use uom::si::f64::{Length, TemperatureInterval};
/// let (hole, bolt) = (material::read("a380").unwrap(), material::read("steel").unwrap());
/// let warm = TemperatureInterval::new::<KelvinDifference>(100.0);
/// let grown = clearance(hole.expansion, bolt.expansion, Length::new::<Millimetre>(10.0), warm).unwrap();
/// assert!((grown.get::<Micrometre>() - 10.1).abs() < 1e-9);
/// ```
pub fn clearance(
    hole: TemperatureCoefficient,
    bolt: TemperatureCoefficient,
    diameter: Length,
    change: TemperatureInterval,
) -> Result<Length, Refusal> {
    within_reach(change)?;
    finite(
        "clearance",
        metres((hole.value - bolt.value) * change.value * diameter.value),
    )
}

/// Change of clamp load, ΔF = (α_parts − α_bolt)·ΔT·lK/(δS + δP): a clamped part that expands more
/// than the bolt *gains* clamp load with heat. An own calculation from the difference of expansion, with both
/// equally warm and no yielding.
///
/// # Errors
/// [`Refusal::OutOfRange`] for a change outside −250–1200 K or a resilience outside 10⁻¹²–1 m/N.
///
/// ```
/// use shopmath::fastener::{heat::clamp_change, material};
/// use shopmath::quantity::compliance::{Compliance, InUnits};
/// use shopmath::quantity::exact::compliance::MicrometrePerKilonewton;
/// use shopmath::quantity::exact::{force::Kilonewton, length::Millimetre, temperature_difference::KelvinDifference};
/// use uom::si::f64::{Length, TemperatureInterval};
/// let [parts, bolt] = ["a380", "steel"].map(|id| material::read(id).unwrap().expansion);
/// let (warm, grip) = (TemperatureInterval::new::<KelvinDifference>(80.0), Length::new::<Millimetre>(25.0));
/// let joint = Compliance::new::<MicrometrePerKilonewton>(6.94);
/// let gained = clamp_change(parts, bolt, warm, grip, joint).unwrap();
/// assert!((gained.get::<Kilonewton>() - 2.91).abs() < 0.005);
/// assert_eq!(clamp_change(parts, bolt, -warm, grip, joint).unwrap(), -gained);
/// ```
pub fn clamp_change(
    parts: TemperatureCoefficient,
    bolt: TemperatureCoefficient,
    change: TemperatureInterval,
    grip: Length,
    joint: Compliance,
) -> Result<Force, Refusal> {
    within_reach(change)?;
    let limits = (metres_per_newton(1e-12), metres_per_newton(1.0));
    within("resilience of the joint", joint, limits, Unit::MicrometrePerKilonewton)?;
    let stretch = (parts.value - bolt.value) * change.value * grip.value;
    finite("clamp change", newtons(stretch / joint.value))
}

#[cfg(test)]
mod tests {
    use super::{clamp_change, clearance};
    use crate::fastener::bolt::{BoltText, resolve};
    use crate::fastener::si::{kelvins, metres, metres_per_newton};
    use crate::fastener::{material, refusal::Refusal};

    #[test]
    fn what_can_be_typed_can_be_calculated_with_and_nothing_else() {
        let expansion = material::read("steel").unwrap().expansion;
        for (change, holds) in [(-251.0, false), (-250.0, true), (1200.0, true), (1201.0, false)] {
            let mut text = BoltText::default();
            text.set("heat", format!("{change} K"));
            assert_eq!(resolve(&text).heat.given().is_some(), holds, "{change}");
            let change = kelvins(change);
            let found = [
                clearance(expansion, expansion, metres(0.01), change).map(drop),
                clamp_change(expansion, expansion, change, metres(0.04), metres_per_newton(1e-9)).map(drop),
            ];
            let right = |found: &Result<(), Refusal>| match found {
                Ok(()) => holds,
                Err(refusal) => !holds && matches!(refusal, Refusal::OutOfRange { .. }),
            };
            assert!(found.iter().all(right), "{change:?}: {found:?}");
        }
    }
}
