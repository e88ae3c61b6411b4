//! A screw thread: its basic geometry, its limits of size and its stress area. The rows stand in
//! [`super::thread_table`], reading one from text in [`super::thread_text`].

use super::si::{metres, square_metres};
use crate::source::Mark;
use core::f64::consts::FRAC_PI_4;
use uom::si::f64::{Area, Length};

/// √3.
const SQRT_3: f64 = 1.732_050_807_568_877_2;
/// Thread height over pitch, H/P = √3/2, of the 60° profile (ISO 68-1; exact).
const HEIGHT: f64 = SQRT_3 / 2.0;
/// What the unified stress diameter lacks from the major diameter, in pitches: 9√3/16, printed
/// 0.974 279 in ASME B1.1. A different definition from the metric one.
const UNIFIED_STRESS: f64 = 9.0 * SQRT_3 / 16.0;

/// The standard a thread belongs to; it decides the definition of the stress area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standard {
    /// ISO metric, limits 6g and 6H.
    Metric,
    /// Unified inch, limits 2A and 2B.
    Unified,
}

/// The series within a standard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Series {
    /// The usual pitch of the diameter; UNC.
    Coarse,
    /// A finer one; UNF.
    Fine,
}

/// A pair of limits of size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The largest allowed.
    pub max: Length,
    /// The smallest allowed.
    pub min: Length,
}

/// The limits of a bolt's thread, 6g or 2A.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct External {
    /// Major (outside) diameter.
    pub major: Limit,
    /// Pitch diameter.
    pub pitch: Limit,
    /// Smallest root diameter, d3 min.
    pub root_min: Length,
    /// What the figures rest on.
    pub mark: Mark,
}

/// The limits of a hole's thread, 6H or 2B.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Internal {
    /// Minor (bore) diameter.
    pub minor: Limit,
    /// Pitch diameter.
    pub pitch: Limit,
    /// What the figures rest on.
    pub mark: Mark,
}

/// One thread of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// The full designation, such as `M10×1.5` or `3/8-16 UNC`.
    pub name: &'static str,
    /// The diameter's part of it, such as `M10` or `3/8`.
    pub size: &'static str,
    /// The standard.
    pub standard: Standard,
    /// The series.
    pub series: Series,
    /// Nominal diameter d.
    pub diameter: Length,
    /// Pitch P.
    pub pitch: Length,
    /// Limits of the bolt.
    pub external: External,
    /// Limits of the hole.
    pub internal: Internal,
}

impl Thread {
    /// Height of the sharp triangle, H = (√3/2)·P (ISO 68-1): 0.6 to 2.2 mm over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let height = read("M10").unwrap().thread.height();
    /// assert!((height.get::<Millimetre>() - 0.866_025 * 1.5).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn height(&self) -> Length {
        self.pitch * HEIGHT
    }

    /// Basic pitch diameter, d2 = d − 3H/4 (ISO 724): 3.5 to 21.0 mm over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let d2 = read("M10").unwrap().thread.pitch_diameter();
    /// assert!((d2.get::<Millimetre>() - 9.026).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn pitch_diameter(&self) -> Length {
        self.diameter - self.height() * 0.75
    }

    /// Basic minor diameter of the hole, D1 = d − 5H/4 (ISO 724): 3.2 to 20.4 mm over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let bore = read("M10").unwrap().thread.minor_diameter();
    /// assert!((bore.get::<Millimetre>() - 8.376).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn minor_diameter(&self) -> Length {
        self.diameter - self.height() * 1.25
    }

    /// Root diameter of the bolt, d3 = d − 17H/12 (ISO 898-1): 3.1 to 20.2 mm over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let d3 = read("M10").unwrap().thread.root_diameter();
    /// assert!((d3.get::<Millimetre>() - (10.0 - 1.226_869 * 1.5)).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn root_diameter(&self) -> Length {
        self.diameter - self.height() * (17.0 / 12.0)
    }

    /// Diameter of the circle that has the stress area: d0 = (d2 + d3)/2 for metric threads
    /// (ISO 898-1), D − 0.974 279 P for unified ones (ASME B1.1); 3.3 to 20.6 mm over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::length::Inch;
    /// let d0 = read("3/8-16").unwrap().thread.stress_diameter();
    /// assert!((d0.get::<Inch>() - (0.375 - 0.974_279 / 16.0)).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn stress_diameter(&self) -> Length {
        match self.standard {
            Standard::Metric => self.diameter - self.height() * (13.0 / 12.0),
            Standard::Unified => self.diameter - self.pitch * UNIFIED_STRESS,
        }
    }

    /// Tensile stress area, As = π/4·d0².
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::area::SquareMillimetre;
    /// let area = read("M10").unwrap().thread.stress_area();
    /// assert!((area.get::<SquareMillimetre>() - 58.0).abs() < 0.05);
    /// ```
    #[must_use]
    pub fn stress_area(&self) -> Area {
        circle(self.stress_diameter())
    }

    /// Area of the root circle, A_d3 = π/4·d3², which the free thread stretches over (VDI 2230): 7.7 to 320 mm²
    /// over the table, always less than the stress area.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::area::SquareMillimetre;
    /// let m10 = read("M10").unwrap().thread;
    /// assert!((m10.root_area().get::<SquareMillimetre>() - 52.3).abs() < 0.05);
    /// assert!(m10.root_area() < m10.stress_area());
    /// ```
    #[must_use]
    pub fn root_area(&self) -> Area {
        circle(self.root_diameter())
    }

    /// Area of the full shank, π/4·d²: 12.6 to 380 mm² over the table.
    ///
    /// ```
    /// use shopmath::fastener::thread_text::read;
    /// use shopmath::quantity::exact::area::SquareMillimetre;
    /// let area = read("M10").unwrap().thread.shank_area();
    /// assert!((area.get::<SquareMillimetre>() - 78.54).abs() < 5e-3);
    /// ```
    #[must_use]
    pub fn shank_area(&self) -> Area {
        circle(self.diameter)
    }

    /// Tangent of half the profile angle, tan 30° = 1/√3, a plain number (ISO 68-1).
    ///
    /// ```
    /// use shopmath::fastener::thread::Thread;
    /// assert!((Thread::flank_tangent() - 30_f64.to_radians().tan()).abs() < 1e-15);
    /// ```
    #[must_use]
    pub fn flank_tangent() -> f64 {
        1.0 / SQRT_3
    }

    /// 1/cos 30° = 2/√3, which VDI 2230 prints as 1.155: how much the flank angle adds to the
    /// thread's friction. A plain number.
    ///
    /// ```
    /// use shopmath::fastener::thread::Thread;
    /// assert!((Thread::flank_factor() - 1.155).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn flank_factor() -> f64 {
        2.0 / SQRT_3
    }
}

fn circle(diameter: Length) -> Area {
    square_metres(FRAC_PI_4 * diameter.value * diameter.value)
}

/// A pair of limits from metres.
pub(super) fn limit(max: f64, min: f64) -> Limit {
    Limit {
        max: metres(max),
        min: metres(min),
    }
}
