//! Compliance, deflection per force (M⁻¹T²): the quantity `uom` lacks, in `uom`'s own terms.
//!
//! `uom` cannot be given a new quantity from outside, so the type is spelled by its dimension and
//! the two methods every other quantity has come from a trait.

use uom::Conversion as AnyConversion;
use uom::si::{ISQ, Quantity, SI, Unit as AnyUnit};
use uom::typenum::{N1, P2, Z0};

/// Compliance, metre per newton inside: the resilience of a bolt or of the parts it clamps.
pub type Compliance = Quantity<ISQ<Z0, N1, P2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Marks the units of compliance.
pub trait Unit: AnyUnit {}

/// Marks the units of compliance that have a factor for the number type.
pub trait Conversion<V>: Unit + AnyConversion<V, T = <V as AnyConversion<V>>::T>
where
    V: AnyConversion<V>,
{
}

/// `new` and `get`, as every quantity of `uom` has them.
///
/// ```
/// use shopmath::quantity::compliance::{Compliance, InUnits as _};
/// use shopmath::quantity::exact::compliance::{MetrePerNewton, MicrometrePerKilonewton};
/// let bolt = Compliance::new::<MicrometrePerKilonewton>(4.133);
/// assert!((bolt.get::<MetrePerNewton>() - 4.133e-9).abs() < 1e-20);
/// ```
pub trait InUnits {
    /// The compliance of `value` of the unit `N`.
    fn new<N: Unit + AnyConversion<f64, T = f64>>(value: f64) -> Self;
    /// The value in the unit `N`.
    fn get<N: Unit + AnyConversion<f64, T = f64>>(&self) -> f64;
}

impl InUnits for Compliance {
    fn new<N: Unit + AnyConversion<f64, T = f64>>(value: f64) -> Self {
        Self {
            dimension: core::marker::PhantomData,
            units: core::marker::PhantomData,
            value: value * N::coefficient(),
        }
    }

    fn get<N: Unit + AnyConversion<f64, T = f64>>(&self) -> f64 {
        self.value / N::coefficient()
    }
}
