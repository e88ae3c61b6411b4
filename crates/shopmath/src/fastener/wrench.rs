//! The torque wrench: what to set with an adapter on it, what that delivers, how a reading compares
//! with its target, and whether the wrench is meant for the torque at all.

use super::refusal::{Refusal, finite, within};
use super::si::{metres, newton_metres, radians, ratio};
use crate::quantity::Unit;
use core::f64::consts::TAU;
use uom::si::f64::{Angle, Length, Ratio, Torque};

/// Below this share of full scale a torque wrench promises nothing.
const LOWEST_SHARE: f64 = 0.2;
/// ISO 6789-1: up to this largest torque, newton metre, the wider tolerance holds.
const SMALL_WRENCH: f64 = 10.0;

/// An adapter between drive and bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adapter {
    /// From the drive's centre to the middle of the hand, L. Not to the end of the handle.
    pub wrench: Length,
    /// From the drive's centre to the bolt's, E.
    pub adapter: Length,
    /// Between wrench and adapter, 0 straight out, a quarter turn square, half a turn back along
    /// the handle.
    pub angle: Angle,
}

impl Adapter {
    /// Torque at the bolt over torque on the scale, (L + E·cos α)/L (TM 1-1500-204-23-9, NAVEDTRA 14315).
    ///
    /// Valid for a wrench from 1 cm to 10 m, an adapter up to 10 m and any angle up to a full turn
    /// either way.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] for lengths or an angle outside; [`Refusal::AdapterPastHandle`]
    /// where the adapter reaches back past the hand.
    ///
    /// ```
    /// use shopmath::fastener::wrench::Adapter;
    /// use shopmath::quantity::exact::{angle::Degree, length::Inch, ratio::Number};
    /// use uom::si::f64::{Angle, Length};
    /// let [wrench, adapter] = [12.0, 6.0].map(Length::new::<Inch>);
    /// let at = |angle| Adapter { wrench, adapter, angle: Angle::new::<Degree>(angle) };
    /// let gain = |angle| at(angle).gain().unwrap().get::<Number>();
    /// assert!((gain(0.0) - 100.0 / 66.7).abs() < 0.001); // NAVEDTRA 14315: set 66.7 for 100
    /// assert!((gain(90.0) - 1.0).abs() < 1e-12 && (gain(180.0) - 0.5).abs() < 1e-12);
    /// ```
    pub fn gain(self) -> Result<Ratio, Refusal> {
        within(
            "wrench length",
            self.wrench,
            (metres(0.01), metres(10.0)),
            Unit::Millimetre,
        )?;
        within(
            "adapter length",
            self.adapter,
            (metres(0.0), metres(10.0)),
            Unit::Millimetre,
        )?;
        within("adapter angle", self.angle, (radians(-TAU), radians(TAU)), Unit::Degree)?;
        let gain = 1.0 + self.adapter.value * self.angle.value.cos() / self.wrench.value;
        if gain < 1e-3 {
            return Err(Refusal::AdapterPastHandle);
        }
        finite("wrench setting", ratio(gain))
    }

    /// What to set for a torque at the bolt, T·L/(L + E·cos α). Square to the wrench nothing
    /// changes, straight out the setting falls, folded back it rises.
    ///
    /// # Errors
    /// As [`Adapter::gain`].
    ///
    /// ```
    /// use shopmath::fastener::wrench::Adapter;
    /// use shopmath::quantity::exact::{angle::Degree, length::Inch, torque::PoundForceInch};
    /// use uom::si::f64::{Angle, Length, Torque};
    /// let straight = Adapter {
    ///     wrench: Length::new::<Inch>(10.0),
    ///     adapter: Length::new::<Inch>(4.0),
    ///     angle: Angle::new::<Degree>(0.0),
    /// };
    /// let setting = straight.setting(Torque::new::<PoundForceInch>(300.0)).unwrap();
    /// assert!((setting.get::<PoundForceInch>() - 214.0).abs() < 0.5);
    /// ```
    pub fn setting(self, at_bolt: Torque) -> Result<Torque, Refusal> {
        finite("wrench setting", newton_metres(at_bolt.value / self.gain()?.value))
    }

    /// What a setting delivers at the bolt, T·(L + E·cos α)/L, the inverse of [`Adapter::setting`].
    ///
    /// # Errors
    /// As [`Adapter::gain`].
    ///
    /// ```
    /// use shopmath::fastener::wrench::Adapter;
    /// use shopmath::quantity::exact::{angle::Degree, length::Inch, torque::PoundForceInch};
    /// use uom::si::f64::{Angle, Length, Torque};
    /// let [wrench, adapter] = [12.0, 2.0].map(Length::new::<Inch>);
    /// let straight = Adapter { wrench, adapter, angle: Angle::new::<Degree>(0.0) };
    /// let delivered = straight.delivered(Torque::new::<PoundForceInch>(60.0)).unwrap();
    /// assert!((delivered.get::<PoundForceInch>() - 70.0).abs() < 1e-9); // TM 9-254
    /// ```
    pub fn delivered(self, setting: Torque) -> Result<Torque, Refusal> {
        finite("torque", newton_metres(setting.value * self.gain()?.value))
    }
}

/// Reading over target, minus one.
///
/// # Errors
/// [`Refusal::OutOfRange`] for a target below 1 mN·m, [`Refusal::NotFinite`] for readings past any
/// number.
///
/// ```
/// use shopmath::fastener::wrench::deviation;
/// use shopmath::quantity::exact::{ratio::Percent, torque::NewtonMetre};
/// use uom::si::f64::Torque;
/// let off = deviation(Torque::new::<NewtonMetre>(60.7), Torque::new::<NewtonMetre>(60.0)).unwrap();
/// assert!((off.get::<Percent>() - 1.1667).abs() < 1e-3);
/// ```
pub fn deviation(reading: Torque, target: Torque) -> Result<Ratio, Refusal> {
    let limits = (newton_metres(1e-3), newton_metres(1e6));
    within("target torque", target, limits, Unit::NewtonMetre)?;
    finite("deviation", reading / target - ratio(1.0))
}

/// The permissible deviation of a wrench by its *largest* torque: ±4 % above 10 N·m, ±6 % at or
/// below (ISO 6789-1, indicating and setting wrenches).
///
/// ```
/// use shopmath::{fastener::wrench::permissible, quantity::exact::{ratio::Percent, torque::NewtonMetre}};
/// use uom::si::f64::Torque;
/// let percent = |largest| permissible(Torque::new::<NewtonMetre>(largest)).get::<Percent>();
/// assert!((percent(10.0) - 6.0).abs() < 1e-9 && (percent(200.0) - 4.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn permissible(full_scale: Torque) -> Ratio {
    ratio(if full_scale > newton_metres(SMALL_WRENCH) {
        0.04
    } else {
        0.06
    })
}

/// How a torque sits in the range of a wrench.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Suits {
    /// Below a fifth of full scale: no promise of accuracy.
    TooLow,
    /// Within the range.
    Yes,
    /// Above full scale.
    TooHigh,
}

/// Whether a wrench suits a setting: from a fifth of its full scale, below which the US Army's manuals promise
/// nothing, up to full scale.
///
/// ```
/// use shopmath::{fastener::wrench::{Suits, suits}, quantity::exact::torque::NewtonMetre};
/// use uom::si::f64::Torque;
/// let on_200 = |setting| suits(Torque::new::<NewtonMetre>(setting), Torque::new::<NewtonMetre>(200.0));
/// assert_eq!([39.9, 40.0, 200.1].map(on_200), [Suits::TooLow, Suits::Yes, Suits::TooHigh]);
/// ```
#[must_use]
pub fn suits(setting: Torque, full_scale: Torque) -> Suits {
    if setting > full_scale {
        Suits::TooHigh
    } else if setting < full_scale * LOWEST_SHARE {
        Suits::TooLow
    } else {
        Suits::Yes
    }
}
