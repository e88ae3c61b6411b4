//! The entries of one pulley as a person fills them in: what each changes about the drive, and sizes and
//! places that are measured otherwise.

use super::edit::{Edit, check};
use super::{DriveText, resolve};
use crate::drive::fault::MeasureFault;
use crate::drive::place;
use crate::drive::profile::Profile;
use crate::drive::pulley::Pulley;
use crate::drive::tensioner::Tensioner;
use crate::drive::text::{loads, pulleys, tensioner};
use crate::quantity::print::plain;
use crate::quantity::{Quantity, Unit, read};
use uom::si::f64::{Angle, Length};

pub use super::pulley_entry::PulleyEntry;

/// The change that a text in an entry of a pulley, counted from 0, asks for; none for a measure that is
/// left out, or that only together with another gives a place.
///
/// # Errors
/// [`MeasureFault`]: a text that cannot be read or is missing, or a change that leaves no drive.
///
/// ```
/// use shopmath::drive::bench::{DriveText, edit::Edit, entry::{PulleyEntry, change}};
/// use shopmath::drive::fault::MeasureFault;
/// let demo = DriveText::demo();
/// let wider = change(&demo, 2, PulleyEntry::Diameter, "2 1/2 in").unwrap();
/// assert_eq!(wider, Some(Edit::Resize { pulley: 2, diameter: 63.5 }));
/// let around = change(&demo, 2, PulleyEntry::Around, "176 mm").unwrap();
/// assert!(matches!(around, Some(Edit::Resize { diameter, .. }) if (diameter - 56.02).abs() < 0.01));
/// assert_eq!(change(&demo, 2, PulleyEntry::Around, ""), Ok(None));
/// assert!(change(&demo, 2, PulleyEntry::Up, "").is_err());
/// assert_eq!(change(&demo, 2, PulleyEntry::Name, "A/C; 2"), Err(MeasureFault::NameMarked));
/// let stop = change(&demo, 1, PulleyEntry::HighStop, "97,5").unwrap();
/// assert_eq!(stop, Some(Edit::Arm { pulley: 1, pivot: [-128.0, 44.0], stops: [55.0, 97.5] }));
/// let load = change(&demo, 3, PulleyEntry::Load, "0,2 kW").unwrap();
/// assert_eq!(load, Some(Edit::Load { pulley: 3, load: "0,2 kW".into() }));
/// ```
pub fn change(texts: &DriveText, pulley: usize, entry: PulleyEntry, typed: &str) -> Result<Option<Edit>, MeasureFault> {
    let blank = typed.trim().is_empty();
    if blank {
        match entry {
            PulleyEntry::Name | PulleyEntry::Load => {}
            PulleyEntry::LowStop | PulleyEntry::HighStop => return Err(MeasureFault::NoAngle),
            entry if entry.is_of_drive() => return Err(MeasureFault::Nothing),
            _ => return Ok(None),
        }
    }
    let list = pulleys::read(texts.get("pulleys").unwrap_or_default()).map_err(|_| MeasureFault::NoPulley)?;
    let centre = list.get(pulley).ok_or(MeasureFault::NoPulley)?.centre;
    let (x, y) = (in_millimetres(centre.x), in_millimetres(centre.y));
    let typed_length = || length(0, typed).map(in_millimetres);
    let edit = match entry {
        PulleyEntry::Name if pulleys::plain(typed) != typed.trim() => return Err(MeasureFault::NameMarked),
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
            diameter: size(by_ratio(texts, &list, pulley, typed)?)?,
        },
        PulleyEntry::Load => Edit::Load {
            pulley,
            load: typed.to_owned(),
        },
        PulleyEntry::FirstDistance | PulleyEntry::SecondDistance => return length(0, typed).map(|_| None),
        entry => {
            let arm = carried(texts, &list, pulley).ok_or(MeasureFault::NoPulley)?;
            let mut pivot = [arm.pivot.x, arm.pivot.y].map(in_millimetres);
            let mut stops = [arm.low, arm.high].map(in_degrees);
            match entry {
                PulleyEntry::PivotAcross => pivot[0] = typed_length()?,
                PulleyEntry::PivotUp => pivot[1] = typed_length()?,
                PulleyEntry::LowStop => stops[0] = angle(typed)?,
                _ => stops[1] = angle(typed)?,
            }
            Edit::Arm { pulley, pivot, stops }
        }
    };
    check(texts, &edit).map(|()| Some(edit))
}

/// What is wrong with a text in an entry of a pulley. A load that cannot be read is one too, though the
/// drive takes it over: only the results that need it are then missing.
///
/// ```
/// use shopmath::drive::bench::{DriveText, entry::{PulleyEntry, fault}};
/// let demo = DriveText::demo();
/// assert!(fault(&demo, 2, PulleyEntry::Load, "90 A 14 V").is_none());
/// assert!(fault(&demo, 2, PulleyEntry::Load, "a lot").is_some());
/// assert!(fault(&demo, 2, PulleyEntry::Diameter, "0").is_some());
/// ```
#[must_use]
pub fn fault(texts: &DriveText, pulley: usize, entry: PulleyEntry, typed: &str) -> Option<MeasureFault> {
    if entry == PulleyEntry::Load && !typed.trim().is_empty() && !loads::is_one(typed) {
        return Some(MeasureFault::NoLoad(typed.to_owned()));
    }
    change(texts, pulley, entry, typed).err()
}

/// The entries of the arm that carries a pulley.
#[derive(Clone, Debug, PartialEq)]
pub struct ArmEntries {
    /// What the drive holds: the pivot to the right and up, the low and the high stop.
    pub standing: [String; 4],
    /// What is wrong with them together, such as a sweep that is backwards.
    pub wrong: Option<String>,
}

/// The entries of the arm that carries a pulley; `None` for one that is not the tensioner's.
///
/// ```
/// use shopmath::drive::bench::{DriveText, entry::arm};
/// let demo = DriveText::demo();
/// assert_eq!(arm(&demo, 1).unwrap().standing, ["-128", "44", "55", "95"]);
/// assert!(arm(&demo, 1).unwrap().wrong.is_none() && arm(&demo, 2).is_none());
/// ```
#[must_use]
pub fn arm(texts: &DriveText, pulley: usize) -> Option<ArmEntries> {
    let list = pulleys::read(texts.get("pulleys")?).ok()?;
    let arm = carried(texts, &list, pulley)?;
    let [x, y] = [arm.pivot.x, arm.pivot.y].map(|place| plain(in_millimetres(place), 2));
    let [low, high] = [arm.low, arm.high].map(|stop| plain(in_degrees(stop), 2));
    let mut faults = resolve(texts).faults.into_iter();
    Some(ArmEntries {
        standing: [x, y, low, high],
        wrong: faults
            .find(|fault| fault.key == "tensioner")
            .map(|fault| fault.sentence),
    })
}

/// The load the drive has for a pulley, as typed, empty for an idler; `None` for the driver, which carries
/// the sum of all.
///
/// ```
/// use shopmath::drive::bench::{DriveText, entry::load};
/// let demo = DriveText::demo();
/// assert_eq!(load(&demo, 4).as_deref(), Some("0.6 kW"));
/// assert_eq!((load(&demo, 3).as_deref(), load(&demo, 0)), (Some(""), None));
/// ```
#[must_use]
pub fn load(texts: &DriveText, pulley: usize) -> Option<String> {
    let name = names(texts).into_iter().nth(pulley).filter(|_| pulley > 0)?;
    Some(loads::of(texts.get("loads")?, &name).to_owned())
}

/// The arm, where it carries this pulley.
fn carried(texts: &DriveText, list: &[Pulley], pulley: usize) -> Option<Tensioner> {
    let arm = tensioner::read(texts.get("tensioner")?, list).ok()?;
    (arm.pulley == pulley).then_some(arm)
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
fn by_ratio(texts: &DriveText, list: &[Pulley], pulley: usize, typed: &str) -> Result<Option<Length>, MeasureFault> {
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

fn in_degrees(angle: Angle) -> f64 {
    angle.get::<crate::quantity::exact::angle::Degree>()
}

fn angle(text: &str) -> Result<f64, MeasureFault> {
    match value(0, text, Unit::Degree)? {
        Quantity::Angle(angle) => Ok(in_degrees(angle)),
        _ => Err(MeasureFault::NoAngle),
    }
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
