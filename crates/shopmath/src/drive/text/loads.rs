//! The accessory loads as text: `pulley=load` joined by `;`, a load being a torque at its shaft
//! (`compressor=12 N·m`), a power at the engine speed given (`water pump=0.6 kW`), or an
//! alternator's output (`alternator=90 A 14 V`; 14 V where no voltage is typed).

use super::super::fault::TextFault;
use super::super::load::Load;
use super::super::pulley::Pulley;
use super::named;
use crate::quantity::exact::voltage::Volt;
use crate::quantity::{Quantity, Unit, read};
use uom::si::f64::ElectricPotential;

/// The charging voltage taken where none is typed (common practice).
pub const CHARGING_VOLTAGE: f64 = 14.0;

/// The load of one pulley.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// The pulley, by its place in the belt order, from 0.
    pub pulley: usize,
    /// What it asks.
    pub load: Load,
}

/// Reads the loads of a drive. Pulleys without an entry are idlers.
///
/// # Errors
/// The [`TextFault`] of each entry that could not be read, names no pulley, names the driver, or
/// names a pulley twice.
///
/// ```
/// use shopmath::drive::load::Load;
/// use shopmath::drive::text::{loads, pulleys};
/// let drive = pulleys::read("crank:rib:0,0:150;alternator:rib:200,90:56;fan:rib:-90,200:120").unwrap();
/// let read = loads::read("alternator=90 A 14 V; fan=3 hp", &drive).unwrap();
/// assert!(matches!(read[0].load, Load::Electric { .. }) && matches!(read[1].load, Load::Power(_)));
/// ```
pub fn read(text: &str, pulleys: &[Pulley]) -> Result<Vec<Entry>, Vec<TextFault>> {
    let mut entries: Vec<Entry> = Vec::new();
    let mut faults = Vec::new();
    for part in parts(text) {
        match entry(part, pulleys) {
            Ok(new) if entries.iter().any(|known| known.pulley == new.pulley) => {
                faults.push(TextFault::LoadTwice(pulleys[new.pulley].name.clone()));
            }
            Ok(new) => entries.push(new),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() { Ok(entries) } else { Err(faults) }
}

/// Whether a text is the load of one pulley: a torque or a power from 0 to 10⁶ N·m or W, or a
/// current and a voltage not below 0.
///
/// ```
/// use shopmath::drive::text::loads::is_one;
/// assert!(["12 N·m", "0.6 kW", "90 A 14 V"].into_iter().all(is_one));
/// assert!(!["-3 kW", "60 mm", "fan=3 hp"].into_iter().any(is_one));
/// ```
#[must_use]
pub fn is_one(text: &str) -> bool {
    load(text).is_some_and(takes)
}

/// The load that a text gives a pulley of this name, as typed; empty for none.
///
/// ```
/// use shopmath::drive::text::loads;
/// assert_eq!(loads::of("alternator=90 A 14 V; fan=3 hp", "Fan"), "3 hp");
/// ```
#[must_use]
pub fn of<'a>(text: &'a str, name: &str) -> &'a str {
    parts(text).find_map(|part| of_part(part, name)).unwrap_or_default()
}

/// The text with another load for a pulley of this name, the last of the list where it had none; an
/// empty one takes it off the list. A mark that would part it from its pulley becomes a space.
///
/// ```
/// use shopmath::drive::text::loads;
/// let loads = loads::with("alternator=90 A 14 V; fan=3 hp", "alternator", "0,6 kW");
/// assert_eq!(loads, "alternator=0,6 kW; fan=3 hp");
/// assert_eq!(loads::with(&loads, "fan", ""), "alternator=0,6 kW");
/// ```
#[must_use]
pub fn with(text: &str, name: &str, load: &str) -> String {
    let load = load.replace([';', '\n'], " ");
    let own = || format!("{name}={}", load.trim());
    let mut placed = load.trim().is_empty();
    let mut kept: Vec<String> = Vec::new();
    for part in parts(text) {
        if of_part(part, name).is_none() {
            kept.push(part.to_owned());
        } else if !placed {
            placed = true;
            kept.push(own());
        }
    }
    if !placed {
        kept.push(own());
    }
    kept.join("; ")
}

/// The text with another name for a pulley that it gives a load.
///
/// ```
/// use shopmath::drive::text::loads;
/// assert_eq!(loads::renamed("alternator=90 A 14 V\nfan=3 hp", "Fan", "blower"), "alternator=90 A 14 V; blower=3 hp");
/// ```
#[must_use]
pub fn renamed(text: &str, old: &str, new: &str) -> String {
    let follow = |part: &str| match of_part(part, old) {
        Some(load) => format!("{new}={load}"),
        None => part.to_owned(),
    };
    parts(text).map(follow).collect::<Vec<_>>().join("; ")
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty())
}

/// The load of a part, where it is that of a pulley of this name.
fn of_part<'a>(part: &'a str, name: &str) -> Option<&'a str> {
    let (own, load) = part.split_once('=')?;
    own.trim().eq_ignore_ascii_case(name.trim()).then(|| load.trim())
}

fn entry(part: &str, pulleys: &[Pulley]) -> Result<Entry, TextFault> {
    let not_one = || TextFault::Load(part.to_owned());
    let (name, load) = part.split_once('=').ok_or_else(not_one)?;
    let names = || pulleys.iter().map(|pulley| pulley.name.as_str());
    let pulley = named(name, names()).ok_or_else(|| TextFault::UnknownPulley {
        name: name.trim().to_owned(),
        known: names().skip(1).map(str::to_owned).collect(),
    })?;
    if pulley == 0 {
        return Err(TextFault::LoadOnDriver(pulleys[0].name.clone()));
    }
    let load = self::load(load).filter(|&load| takes(load)).ok_or_else(not_one)?;
    Ok(Entry { pulley, load })
}

/// Whether a load takes from the belt, or nothing; an accessory that drives the belt is none.
fn takes(load: Load) -> bool {
    let amount = match load {
        Load::Torque(torque) => torque.value,
        Load::Power(power) => power.value,
        Load::Electric { current, voltage } => current.value.min(voltage.value),
    };
    (0.0..=1e6).contains(&amount)
}

fn load(text: &str) -> Option<Load> {
    match quantity(text) {
        Some(Quantity::Torque(torque)) => Some(Load::Torque(torque)),
        Some(Quantity::Power(power)) => Some(Load::Power(power)),
        _ => electric(text),
    }
}

/// Amperes, and volts after them.
fn electric(text: &str) -> Option<Load> {
    let end = text.find(['A', 'a'])?;
    let (current, rest) = text.split_at(end + 1);
    let rest = rest
        .strip_prefix("mp")
        .map_or(rest, |rest| rest.trim_start_matches('s'));
    let joint = |letter: char| letter.is_whitespace() || matches!(letter, '×' | '*' | 'x' | '@' | ',' | '/');
    let rest = rest.trim_matches(joint);
    let Some(Quantity::Current(current)) = quantity(current) else {
        return None;
    };
    let voltage = if rest.is_empty() {
        ElectricPotential::new::<Volt>(CHARGING_VOLTAGE)
    } else {
        match quantity(rest.strip_prefix("at").unwrap_or(rest).trim_start()) {
            Some(Quantity::Voltage(voltage)) => voltage,
            _ => return None,
        }
    };
    Some(Load::Electric { current, voltage })
}

fn quantity(text: &str) -> Option<Quantity> {
    let anything = read::Expect {
        kind: None,
        bare: Some(Unit::NewtonMetre),
    };
    read::value(text.trim(), anything).ok().map(|typed| typed.quantity())
}
