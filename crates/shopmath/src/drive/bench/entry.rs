//! The entries of one pulley as a person fills them in: what each changes about the drive, and sizes and
//! places that are measured otherwise.

use super::DriveText;
use super::edit::{Edit, check};
use crate::drive::fault::MeasureFault;
use crate::drive::place;
use crate::drive::profile::Profile;
use crate::drive::text::pulleys;
use crate::quantity::{Quantity, Unit, read};
use uom::si::f64::Length;

/// An entry of a pulley.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PulleyEntry {
    /// Its name.
    Name,
    /// Its centre, to the right, millimetre.
    Across,
    /// Its centre, up, millimetre.
    Up,
    /// Effective or outside diameter, millimetre.
    Diameter,
    /// A string laid once round the rim, millimetre.
    Around,
    /// Turns per turn of pulley 1.
    Ratio,
    /// A tape from the first other pulley, centre to centre, millimetre.
    FirstDistance,
    /// A tape from the second.
    SecondDistance,
}

impl PulleyEntry {
    /// The entry that shows what this one sets.
    #[must_use]
    pub fn sets(self) -> Self {
        match self {
            Self::Around | Self::Ratio => Self::Diameter,
            entry => entry,
        }
    }

    /// Whether the drive has it: a measure can be left out, and changes nothing by itself.
    #[must_use]
    pub fn is_of_drive(self) -> bool {
        matches!(self, Self::Name | Self::Across | Self::Up | Self::Diameter)
    }
}

/// The change that a text in an entry of a pulley, counted from 0, asks for; none for a measure that is
/// left out, or that only together with another gives a place.
///
/// # Errors
/// [`MeasureFault`]: a text that cannot be read or is missing, or a change that leaves no drive.
///
/// ```
/// use shopmath::drive::bench::{DriveText, edit::Edit, entry::{PulleyEntry, change}};
/// let demo = DriveText::demo();
/// let wider = change(&demo, 2, PulleyEntry::Diameter, "2 1/2 in").unwrap();
/// assert_eq!(wider, Some(Edit::Resize { pulley: 2, diameter: 63.5 }));
/// let around = change(&demo, 2, PulleyEntry::Around, "176 mm").unwrap();
/// assert!(matches!(around, Some(Edit::Resize { diameter, .. }) if (diameter - 56.02).abs() < 0.01));
/// assert_eq!(change(&demo, 2, PulleyEntry::Around, ""), Ok(None));
/// assert!(change(&demo, 2, PulleyEntry::Up, "").is_err());
/// ```
pub fn change(texts: &DriveText, pulley: usize, entry: PulleyEntry, typed: &str) -> Result<Option<Edit>, MeasureFault> {
    let blank = typed.trim().is_empty();
    if blank && entry != PulleyEntry::Name {
        return if entry.is_of_drive() {
            Err(MeasureFault::Nothing)
        } else {
            Ok(None)
        };
    }
    let list = pulleys::read(texts.get("pulleys").unwrap_or_default()).map_err(|_| MeasureFault::NoPulley)?;
    let centre = list.get(pulley).ok_or(MeasureFault::NoPulley)?.centre;
    let (x, y) = (in_millimetres(centre.x), in_millimetres(centre.y));
    let typed_length = || length(0, typed).map(in_millimetres);
    let edit = match entry {
        PulleyEntry::Name => Edit::Rename {
            pulley,
            name: typed.to_owned(),
        },
        PulleyEntry::Across => Edit::Move {
            pulley,
            x: typed_length()?,
            y,
        },
        PulleyEntry::Up => Edit::Move {
            pulley,
            x,
            y: typed_length()?,
        },
        PulleyEntry::Diameter => Edit::Resize {
            pulley,
            diameter: typed_length()?,
        },
        PulleyEntry::Around => Edit::Resize {
            pulley,
            diameter: size(Some(place::diameter_from_circumference(length(0, typed)?)))?,
        },
        PulleyEntry::Ratio => Edit::Resize {
            pulley,
            diameter: size(by_ratio(texts, pulley, typed)?)?,
        },
        PulleyEntry::FirstDistance | PulleyEntry::SecondDistance => return length(0, typed).map(|_| None),
    };
    check(texts, &edit).map(|()| Some(edit))
}

/// The names of a drive's pulleys in belt order, also of a list that cannot be read.
///
/// ```
/// use shopmath::drive::bench::{DriveText, entry::names};
/// let mut text = DriveText::default();
/// text.set("pulleys", "crank:rib:0,0:150; idler:ba");
/// assert_eq!(names(&text), ["crank", "idler"]);
/// ```
#[must_use]
pub fn names(texts: &DriveText) -> Vec<String> {
    pulleys::names(texts.get("pulleys").unwrap_or_default())
        .map(Into::into)
        .collect()
}

/// Both places a tape measure gives, millimetres: distances, as typed, centre to centre from two
/// pulleys of the list.
///
/// # Errors
/// [`MeasureFault`].
///
/// ```
/// use shopmath::drive::bench::{DriveText, entry::from_tape};
/// let places = from_tape(&DriveText::demo(), (0, "300 mm"), (5, "200")).unwrap();
/// assert!(places[0] != places[1]);
/// ```
pub fn from_tape(texts: &DriveText, one: (usize, &str), other: (usize, &str)) -> Result<[(f64, f64); 2], MeasureFault> {
    let list = pulleys::read(texts.get("pulleys").unwrap_or_default()).map_err(|_| MeasureFault::NoPulley)?;
    let centre = |index: usize| {
        list.get(index)
            .map(|pulley| pulley.centre)
            .ok_or(MeasureFault::NoPulley)
    };
    let (first, second) = (centre(one.0)?, centre(other.0)?);
    let places =
        place::by_distances(first, length(0, one.1)?, second, length(1, other.1)?).map_err(MeasureFault::Place)?;
    Ok(places.map(|spot| (in_millimetres(spot.x), in_millimetres(spot.y))))
}

/// The diameter of a pulley whose speed relative to the driver was measured.
fn by_ratio(texts: &DriveText, pulley: usize, typed: &str) -> Result<Option<Length>, MeasureFault> {
    let list = pulleys::read(texts.get("pulleys").unwrap_or_default()).map_err(|_| MeasureFault::NoPulley)?;
    let (driver, own) = list.first().zip(list.get(pulley)).ok_or(MeasureFault::NoPulley)?;
    let profile = Profile::named(texts.effective("profile")).unwrap_or_default();
    let back = length(1, texts.effective("back"))?;
    match value(0, typed, Unit::Number)? {
        Quantity::Ratio(speed) => Ok(place::diameter_from_ratio(
            driver.diameter,
            speed,
            own.side,
            profile,
            back,
        )),
        _ => Ok(None),
    }
}

/// A diameter that leaves a pulley, millimetre.
fn size(diameter: Option<Length>) -> Result<f64, MeasureFault> {
    diameter
        .map(in_millimetres)
        .filter(|diameter| diameter.is_finite() && *diameter > 0.0)
        .ok_or(MeasureFault::NoDiameter)
}

fn in_millimetres(length: Length) -> f64 {
    length.get::<crate::quantity::exact::length::Millimetre>()
}

fn length(which: usize, text: &str) -> Result<Length, MeasureFault> {
    match value(which, text, Unit::Millimetre)? {
        Quantity::Length(length) => Ok(length),
        _ => Err(MeasureFault::NoDiameter),
    }
}

fn value(which: usize, text: &str, unit: Unit) -> Result<Quantity, MeasureFault> {
    read::value(text, read::Expect::field(unit))
        .map(|typed| typed.quantity())
        .map_err(|fault| MeasureFault::Text(which, fault.sentence(text)))
}
