//! The profiles of ribbed belts: one table of what the standards fix for each.
//!
//! Belt names are [`super::belt`]'s, pulleys [`super::pulley`]'s.

use super::si::{kilograms_per_metre, metres};
use crate::quantity::exact::angle::Degree;
use crate::source::{self, Source};
use uom::si::f64::{Angle, Length, LinearMassDensity};

/// The shape of the ribs, by the name printed on a belt.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Profile {
    /// PH, the finest.
    Ph,
    /// PJ.
    Pj,
    /// PK, the one of vehicle engines.
    #[default]
    Pk,
    /// PL.
    Pl,
    /// PM, the coarsest.
    Pm,
}

/// One profile, millimetres; PK by ISO 9981, the others by ISO 9982.
struct Row {
    name: &'static str,
    pitch: f64,
    minimum_diameter: f64,
    line_differential: f64,
    source: Source,
}

/// In the order of the variants.
#[rustfmt::skip]
const TABLE: [Row; 5] = [
    Row { name: "PH", pitch: 1.60, minimum_diameter: 13.0, line_differential: 0.8, source: source::drive::OTHER_PROFILES },
    Row { name: "PJ", pitch: 2.34, minimum_diameter: 20.0, line_differential: 1.2, source: source::drive::OTHER_PROFILES },
    Row { name: "PK", pitch: 3.56, minimum_diameter: 45.0, line_differential: 2.0, source: source::drive::PK_PROFILE },
    Row { name: "PL", pitch: 4.70, minimum_diameter: 75.0, line_differential: 3.0, source: source::drive::OTHER_PROFILES },
    Row { name: "PM", pitch: 9.40, minimum_diameter: 180.0, line_differential: 4.0, source: source::drive::OTHER_PROFILES },
];

/// Mass of a PK belt per metre and rib, kg/m, low and high (belt data, as published).
const PK_MASS_PER_RIB: (f64, f64) = (0.020, 0.025);

impl Profile {
    /// Every profile, from fine to coarse.
    pub const ALL: [Profile; 5] = [Self::Ph, Self::Pj, Self::Pk, Self::Pl, Self::Pm];

    fn row(self) -> &'static Row {
        &TABLE[self as usize]
    }

    /// The two letters of the belt's name, capitals.
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// assert_eq!(Profile::Pk.name(), "PK");
    /// assert_eq!(Profile::ALL.map(Profile::name).concat(), "PHPJPKPLPM");
    /// ```
    #[must_use]
    pub fn name(self) -> &'static str {
        self.row().name
    }

    /// The profile with these two letters, in any case and with spaces round them; `None` for others.
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// assert_eq!(Profile::named(" pk "), Some(Profile::Pk));
    /// assert_eq!(Profile::named("PX"), None);
    /// ```
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|profile| profile.name().eq_ignore_ascii_case(name.trim()))
    }

    /// Distance from rib to rib (PK: ISO 9981, as published; the others: ISO 9982, from memory).
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// assert!((Profile::Pk.pitch().get::<Millimetre>() - 3.56).abs() < 1e-12);
    /// assert!((Profile::Pm.pitch().get::<Millimetre>() - 9.40).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn pitch(self) -> Length {
        metres(self.row().pitch * 1e-3)
    }

    /// The angle of a groove between its two flanks: 40° for every profile (PK: ISO 9981, as published; the
    /// others: ISO 9982, from memory).
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// use shopmath::quantity::exact::{angle::Degree, length::Millimetre};
    /// assert_eq!(Profile::Pk.groove_angle().get::<Degree>().round(), 40.0);
    /// assert!((Profile::Pk.line_differential().get::<Millimetre>() - 2.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn groove_angle(self) -> Angle {
        Angle::new::<Degree>(40.0)
    }

    /// The smallest effective diameter the standard allows a ribbed pulley (PK: ISO 9981, as published; the
    /// others: ISO 9982, from memory).
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// assert!((Profile::Pk.minimum_diameter().get::<Millimetre>() - 45.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn minimum_diameter(self) -> Length {
        metres(self.row().minimum_diameter * 1e-3)
    }

    /// The effective line differential b_e: how far the cords, which set the speed, lie outside the
    /// effective line; nominal (PK: ISO 9981, as published; the others: ISO 9982, from memory).
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let cords = |effective| effective + 2.0 * Profile::Pk.line_differential().get::<Millimetre>();
    /// // 150 mm over 60 mm is a speed ratio of 2.406, by the cords.
    /// assert!((cords(150.0) / cords(60.0) - 2.406_f64).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn line_differential(self) -> Length {
        metres(self.row().line_differential * 1e-3)
    }

    /// Mass per metre of a belt of this many ribs, low and high: 0.020 to 0.025 kg/m for each rib of PK
    /// (belt data, as published); `None` for the other profiles.
    ///
    /// ```
    /// use shopmath::drive::profile::Profile;
    /// use shopmath::quantity::exact::linear_density::KilogramPerMetre;
    /// let (low, high) = Profile::Pk.mass(6).unwrap();
    /// assert!((low.get::<KilogramPerMetre>() - 0.12).abs() < 1e-12);
    /// assert!((high.get::<KilogramPerMetre>() - 0.15).abs() < 1e-12);
    /// assert!(Profile::Pj.mass(6).is_none());
    /// ```
    #[must_use]
    pub fn mass(self, ribs: u32) -> Option<(LinearMassDensity, LinearMassDensity)> {
        let (low, high) = PK_MASS_PER_RIB;
        let of = |per_rib: f64| kilograms_per_metre(per_rib * f64::from(ribs));
        (self == Self::Pk).then(|| (of(low), of(high)))
    }

    /// Where the profile's figures come from.
    ///
    /// ```
    /// use shopmath::{drive::profile::Profile, source::Mark};
    /// let source = Profile::Pk.source();
    /// assert_eq!((source.publication, source.mark), ("ISO 9981", Mark::Published));
    /// assert_eq!(Profile::Pj.source().mark, Mark::Memory);
    /// ```
    #[must_use]
    pub fn source(self) -> Source {
        self.row().source
    }
}

#[cfg(test)]
mod tests {
    use super::{Profile, TABLE};

    #[test]
    fn the_table_stands_in_the_order_of_the_variants() {
        for profile in Profile::ALL {
            assert_eq!(format!("{profile:?}").to_uppercase(), TABLE[profile as usize].name);
            assert_eq!(Profile::named(&profile.name().to_lowercase()), Some(profile));
        }
        assert!(TABLE.is_sorted_by(|fine, coarse| fine.pitch < coarse.pitch
            && fine.minimum_diameter < coarse.minimum_diameter
            && fine.line_differential < coarse.line_differential));
    }
}
