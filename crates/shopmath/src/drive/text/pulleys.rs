//! The pulley list as text: `name:side:x,y:diameter` joined by `;`, in belt order, driver first.
//! Millimetres where no unit is typed; the numbers take a point in decimals, since the comma parts
//! x from y.

use super::super::fault::{PulleyPart, TextFault};
use super::super::layout::MOST_PULLEYS;
use super::super::pulley::{Pulley, Side, Spot};
use super::{LARGEST, MARKS, millimetres};
use crate::quantity::exact::length::Millimetre;
use crate::quantity::fault::{Fault, Misread};
use crate::quantity::{Quantity, Unit, read};
use uom::si::f64::Length;

/// Reads a pulley list. Empty entries are passed over, so a last `;` does no harm.
///
/// # Errors
/// The [`TextFault`] of each pulley that could not be read.
///
/// ```
/// use shopmath::drive::text::pulleys;
/// let list = pulleys::read("crank:rib:0,0:150; idler:back:95.5,120:2 3/4 in").unwrap();
/// assert_eq!(pulleys::print(&list), "crank:rib:0,0:150;idler:back:95.5,120:69.85");
/// ```
pub fn read(text: &str) -> Result<Vec<Pulley>, Vec<TextFault>> {
    let mut pulleys: Vec<Pulley> = Vec::new();
    let mut faults = Vec::new();
    let entries = entries(text);
    // One past the most is enough to say that there are too many.
    for (index, entry) in entries.take(MOST_PULLEYS + 1).enumerate() {
        let same_name = |name: &str| super::named(name, pulleys.iter().map(|pulley| pulley.name.as_str())).is_some();
        match pulley(entry, same_name) {
            Ok(pulley) => pulleys.push(pulley),
            Err(part) => faults.push(TextFault::Pulley {
                number: index + 1,
                text: entry.to_owned(),
                part,
            }),
        }
    }
    if faults.is_empty() { Ok(pulleys) } else { Err(faults) }
}

fn entries(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', '\n']).map(str::trim).filter(|entry| !entry.is_empty())
}

/// The names in a pulley list, also where the rest of it cannot be read.
///
/// ```
/// use shopmath::drive::text::pulleys::names;
/// let names: Vec<&str> = names("crank:rib:0,0:150; water pump:ba;").collect();
/// assert_eq!(names, ["crank", "water pump"]);
/// ```
pub fn names(text: &str) -> impl Iterator<Item = &str> {
    entries(text).map(|entry| entry.split(':').next().unwrap_or_default().trim())
}

/// The list as text; reads back to the same list, centres and diameters to the nanometre. Lengths are in
/// millimetres, whatever they were typed in.
///
/// ```
/// use shopmath::drive::text::pulleys::{print, read};
/// let list = read("crank:RIB:0,0:6 in; idler:back:-3 in,120.5:70").unwrap();
/// assert_eq!(print(&list), "crank:rib:0,0:152.4;idler:back:-76.2,120.5:70");
/// ```
#[must_use]
pub fn print(pulleys: &[Pulley]) -> String {
    let entries: Vec<String> = pulleys
        .iter()
        .map(|pulley| {
            let Pulley { name, side, centre, .. } = pulley;
            let (x, y) = (millimetres(centre.x), millimetres(centre.y));
            format!("{}:{}:{x},{y}:{}", plain(name), side.id(), millimetres(pulley.diameter))
        })
        .collect();
    entries.join(";")
}

/// A name without the marks that would cut the text, `: ; , @ =` and a new line: a space for each.
///
/// ```
/// use shopmath::drive::text::pulleys::plain;
/// assert_eq!(plain(" A/C=left; "), "A/C left");
/// ```
#[must_use]
pub fn plain(name: &str) -> String {
    let name: String = name
        .chars()
        .map(|letter| if MARKS.contains(&letter) { ' ' } else { letter })
        .collect();
    name.trim().to_owned()
}

fn pulley(entry: &str, same_name: impl Fn(&str) -> bool) -> Result<Pulley, PulleyPart> {
    let parts: Vec<&str> = entry.split(':').map(str::trim).collect();
    let [name, side, centre, diameter] = parts.as_slice() else {
        return Err(PulleyPart::Shape);
    };
    if name.is_empty() || name.contains(MARKS) {
        return Err(PulleyPart::Name);
    }
    if same_name(name) {
        return Err(PulleyPart::SameName);
    }
    let diameter = length(diameter)?;
    // What is printed as nothing is nothing.
    if diameter.value <= 0.0 || millimetres(diameter) == "0" {
        return Err(PulleyPart::Diameter);
    }
    Ok(Pulley {
        name: (*name).to_owned(),
        side: Side::named(side).ok_or(PulleyPart::Side)?,
        centre: spot(centre)?,
        diameter,
    })
}

/// Reads `x,y`.
pub(super) fn spot(text: &str) -> Result<Spot, PulleyPart> {
    let parts: Vec<&str> = text.split(',').collect();
    let [x, y] = parts.as_slice() else {
        return Err(PulleyPart::Place);
    };
    Ok(Spot {
        x: length(x)?,
        y: length(y)?,
    })
}

fn length(text: &str) -> Result<Length, PulleyPart> {
    match read::value(text, read::Expect::field(Unit::Millimetre)).map(|typed| typed.quantity()) {
        Ok(Quantity::Length(length)) if length.get::<Millimetre>().abs() > LARGEST => {
            let fault = Fault::new(0..text.len(), Misread::OutOfRange);
            Err(PulleyPart::Number(fault.sentence(text)))
        }
        Ok(Quantity::Length(length)) => Ok(length),
        Ok(_) => Err(PulleyPart::Shape),
        Err(fault) => Err(PulleyPart::Number(fault.sentence(text))),
    }
}
