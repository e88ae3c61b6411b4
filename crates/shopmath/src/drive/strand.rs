//! A strand as a string: its tension from the note it gives, and back.

use super::si::{in_kilograms_per_metre, in_metres, in_newtons, newtons};
use crate::quantity::exact::frequency::Hertz;
use uom::si::f64::{Force, Frequency, Length, LinearMassDensity};

/// Tension of a plucked strand: T = 4·m·L²·f², with m the mass per metre of the whole belt's
/// width, L tangent to tangent, f the fundamental. The belt's stiffness is left out.
///
/// The second harmonic taken for the fundamental gives four times the tension; see
/// [`if_second_harmonic`].
///
/// ```
/// use shopmath::drive::strand::tension;
/// use shopmath::quantity::exact::{force::Newton, frequency::Hertz, length::Metre, linear_density::KilogramPerMetre};
/// use uom::si::f64::{Frequency, Length, LinearMassDensity};
/// let held = tension(
///     LinearMassDensity::new::<KilogramPerMetre>(0.11),
///     Length::new::<Metre>(0.17),
///     Frequency::new::<Hertz>(220.0),
/// );
/// assert!((held.get::<Newton>() - 615.5).abs() < 0.05);
/// ```
#[must_use]
pub fn tension(mass: LinearMassDensity, length: Length, frequency: Frequency) -> Force {
    let speed = 2.0 * in_metres(length) * frequency.get::<Hertz>();
    newtons(in_kilograms_per_metre(mass) * speed * speed)
}

/// What the tension is if the note heard was the second harmonic: a quarter, since T goes by f².
///
/// ```
/// use shopmath::drive::strand::{if_second_harmonic, tension};
/// use shopmath::quantity::exact::{force::Newton, frequency::Hertz, length::Metre, linear_density::KilogramPerMetre};
/// use uom::si::f64::{Frequency, Length, LinearMassDensity};
/// // The strand that holds 615.5 N at 220 Hz, heard an octave high.
/// let (mass, length) = (LinearMassDensity::new::<KilogramPerMetre>(0.11), Length::new::<Metre>(0.17));
/// let real = if_second_harmonic(tension(mass, length, Frequency::new::<Hertz>(440.0)));
/// assert!((real.get::<Newton>() - 615.5).abs() < 0.05);
/// ```
#[must_use]
pub fn if_second_harmonic(tension: Force) -> Force {
    tension / 4.0
}

/// The fundamental of a strand: f = √(T/m)/(2·L), the string equation of [`tension`] turned round;
/// `None` unless mass and length are above zero and the tension not below.
///
/// ```
/// use shopmath::drive::strand::frequency;
/// use shopmath::quantity::exact::{force::Newton, frequency::Hertz, length::Metre, linear_density::KilogramPerMetre};
/// use uom::si::f64::{Force, Length, LinearMassDensity};
/// let (mass, length) = (LinearMassDensity::new::<KilogramPerMetre>(0.11), Length::new::<Metre>(0.17));
/// let note = |newtons: f64| frequency(mass, length, Force::new::<Newton>(newtons));
/// assert!((note(615.5).unwrap().get::<Hertz>() - 220.0).abs() < 0.01);
/// assert!(note(-1.0).is_none());
/// ```
#[must_use]
pub fn frequency(mass: LinearMassDensity, length: Length, tension: Force) -> Option<Frequency> {
    let (mass, length, tension) = (in_kilograms_per_metre(mass), in_metres(length), in_newtons(tension));
    let note = (tension / mass).sqrt() / (2.0 * length);
    (mass > 0.0 && length > 0.0 && note.is_finite()).then(|| Frequency::new::<Hertz>(note))
}
