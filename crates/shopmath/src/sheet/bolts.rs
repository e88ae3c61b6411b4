//! A row of bolts read: the spec in the user's units, the verdict, the setting, each reading judged.
//!
//! The answers come from [`crate::fastener::bolt`] and the conversions from [`crate::convert`]; here
//! they are asked for. No rule of a bolt's own stands here.

use super::entry_fault::EntryFault;
use super::model::Fastener;
use super::total;
use crate::caution::Caution;
use crate::convert;
use crate::fastener::bolt::{self, Assessment, BoltText, Resolved, Target, Verdict, resolve};
use crate::fastener::head::Shape;
use crate::field::{FieldFault, is_bare};
use crate::quantity::Unit;
use crate::result::{Finding, Id};
use crate::tools::Tools;

/// The most bolts of one row.
const MOST_BOLTS: u64 = 999;
/// One row of bolts, read.
#[derive(Clone, Debug, PartialEq)]
pub struct FastenerAssessment {
    /// The row's number.
    pub id: u32,
    /// How many bolts; one where nothing is typed, nothing where it cannot be read.
    pub count: Option<u64>,
    /// The spec's stages, each in the unit that serves the user's tools first.
    pub spec: Vec<Finding>,
    /// The spec as it was read, where a number in it has no unit.
    pub read_as: Option<String>,
    /// The verdict of the Bolt screen; absent until the entries it needs are given.
    pub verdict: Option<Verdict>,
    /// The Bolt screen's keys that the verdict waits for.
    pub waiting: Vec<&'static str>,
    /// What to set the wrench to, through the adapter if one is given: the finding `wrench-setting`.
    pub setting: Option<Finding>,
    /// The unit a bare reading is in: that of the spec's last torque, N·m while there is none.
    pub reading_unit: Unit,
    /// The readings, in order.
    pub readings: Vec<Reading>,
    /// What to beware of with these bolts as a whole.
    pub cautions: Vec<Caution>,
    /// Whether the spec turns by an angle, as it does for bolts that are used once, and yet the
    /// row is not marked single-use.
    pub single_use_likely: bool,
    /// What goes on its head by the head's standard; absent without a thread and for a head that is
    /// measured.
    pub turned_by: Option<TurnedBy>,
    /// Whether the spec turns by an angle.
    pub turns: bool,
    /// What is wrong with the row's entries, those of its readings apart.
    pub faults: Vec<FieldFault>,
}

/// What turns a head by its standard.
#[derive(Clone, Debug, PartialEq)]
pub enum TurnedBy {
    /// A socket for a hexagon head: the finding `hex-size` of the Bolt screen.
    Hexagon(Finding),
    /// A hexagon key for a socket head: the same finding.
    Key(Finding),
}

impl TurnedBy {
    /// Whether both are the same tool: threads of one size of hexagon differ in their workings.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Hexagon(one), Self::Hexagon(other)) | (Self::Key(one), Self::Key(other)) => {
                one.amount == other.amount
            }
            _ => false,
        }
    }
}

/// One reading as tightened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading {
    /// Reading over what the wrench should read, minus one: the finding `reading-deviation`, a
    /// ratio. Absent without a spec, for an empty text, and for one that cannot be read.
    pub deviation: Option<Finding>,
    /// Whether it is a bare number, and so in [`FastenerAssessment::reading_unit`].
    pub bare: bool,
    /// Whether it lies outside the target and the tool's tolerance.
    pub outside: bool,
    /// What is wrong with its text; its key is `reading`.
    pub fault: Option<FieldFault>,
}

impl FastenerAssessment {
    /// Whether one of its entries or readings cannot be read.
    ///
    /// ```
    /// use shopmath::{sheet::{assess, demo}, tools::Tools};
    /// let mut sheet = demo::sheet();
    /// sheet.fasteners[0].readings[1] = "45 N·m or so".into();
    /// let found = assess(&sheet, Tools::Metric, None);
    /// assert!(found.fasteners[0].is_unread() && !found.fasteners[1].is_unread());
    /// ```
    #[must_use]
    pub fn is_unread(&self) -> bool {
        !self.faults.is_empty() || self.readings.iter().any(|reading| reading.fault.is_some())
    }
}

/// Reads one row of bolts.
pub(super) fn fastener(row: &Fastener, tools: Tools) -> FastenerAssessment {
    let text = row.bolt_text();
    let resolved = resolve(&text);
    let found = bolt::assess(&resolved);
    let mut faults = wrong(&resolved, &found);
    let turns = resolved.spec.as_given().is_some_and(|spec| spec.turns());
    let target = Target::of(&resolved);
    let judged = |typed: &String| reading(&resolved, target.as_ref(), typed);
    FastenerAssessment {
        id: row.id,
        count: count(&row.count).map_err(|fault| faults.push(fault)).ok(),
        spec: spec(&text, tools),
        read_as: resolved.unitless.as_ref().map(|[read, _]| read.clone()),
        single_use_likely: turns && !row.single_use,
        turned_by: turned_by(&resolved, &found),
        turns,
        reading_unit: resolved.reading_unit,
        readings: row.readings.iter().map(judged).collect(),
        setting: named(&found, "wrench-setting"),
        verdict: found.verdict,
        waiting: found.waiting,
        cautions: found.cautions,
        faults,
    }
}

/// Whether [`fastener`] reads the same in two rows. Every entry is named, so that a new one is
/// either compared or passed over on purpose.
pub(super) fn read_alike(one: &Fastener, other: &Fastener) -> bool {
    let Fastener {
        id,
        thread,
        class,
        spec,
        count,
        single_use,
        readings,
        bolt,
        label: _,
        head: _,
        drive: _,
        replaced: _,
        done: _,
    } = one;
    *id == other.id
        && *thread == other.thread
        && *class == other.class
        && *spec == other.spec
        && *count == other.count
        && *single_use == other.single_use
        && *readings == other.readings
        && *bolt == other.bolt
}

/// What goes on a head by its standard.
fn turned_by(resolved: &Resolved, found: &Assessment) -> Option<TurnedBy> {
    let socket = resolved.head.given()?.shape == Shape::Socket;
    let what = if socket { TurnedBy::Key } else { TurnedBy::Hexagon };
    named(found, "hex-size").map(what)
}

/// All that is wrong with the entries of a bolt.
fn wrong(resolved: &Resolved, found: &Assessment) -> Vec<FieldFault> {
    resolved.errors.iter().chain(&found.errors).cloned().collect()
}

/// One reading, judged by the Bolt screen's own rule: by the target of its row, where it has one.
fn reading(row: &Resolved, target: Option<&Target>, typed: &str) -> Reading {
    if typed.trim().is_empty() {
        return Reading::default();
    }
    let read = bolt::torque_in(row.reading_unit, "reading", typed);
    let bare = read.is_ok() && is_bare(typed, row.reading_unit);
    let judged = read.and_then(|torque| {
        let judged = target
            .zip(row.tool.given())
            .map(|(target, tool)| target.judge(torque, tool));
        bolt::refused("reading", judged.transpose())
    });
    let (judged, fault) = judged.map_or_else(|fault| (None, Some(fault)), |judged| (judged, None));
    Reading {
        bare,
        outside: judged.as_ref().is_some_and(|(_, outside)| *outside),
        deviation: judged.map(|(deviation, _)| deviation),
        fault,
    }
}

fn named(found: &Assessment, name: &str) -> Option<Finding> {
    let mut findings = found.sections.iter().flat_map(|section| &section.findings);
    findings
        .find(|finding| matches!(finding.id, Id::Named(id) if id == name))
        .cloned()
}

/// The stages of a bolt's spec, each converted.
fn spec(text: &BoltText, tools: Tools) -> Vec<Finding> {
    text.stages()
        .into_iter()
        .filter_map(|typed| convert::stage(typed, tools).rows.into_iter().next())
        .collect()
}

fn count(text: &str) -> Result<u64, FieldFault> {
    if text.trim().is_empty() {
        return Ok(1);
    }
    let count = total::decimal("count", text, 0)?;
    if (1..=MOST_BOLTS).contains(&count) {
        return Ok(count);
    }
    Err(EntryFault::NotBolts.of("count"))
}

#[cfg(test)]
mod tests {
    use crate::fastener::bolt::Slug;
    use crate::quantity::{Quantity, Unit};
    use crate::result::Amount;
    use crate::sheet::assess::{Open, Place, assess};
    use crate::sheet::{Fastener, Sheet};
    use crate::tools::Tools;

    fn bolts(readings: &[&str]) -> Fastener {
        Fastener {
            id: 7,
            thread: "M10".into(),
            class: "10.9".into(),
            spec: "60 N·m".into(),
            readings: readings.iter().map(|&reading| reading.to_owned()).collect(),
            done: true,
            ..Fastener::default()
        }
    }

    fn sheet(row: Fastener) -> Sheet {
        Sheet {
            fasteners: vec![row],
            ..Sheet::new("a")
        }
    }

    #[test]
    fn a_reading_is_judged_against_target_and_tolerance() {
        let found = assess(&sheet(bolts(&["60.7", "66 N·m", "", "sixty"])), Tools::Metric, None);
        let row = &found.fasteners[0];
        assert_eq!(row.verdict.as_ref().map(|verdict| verdict.slug), Some(Slug::Ok));
        let off = row.readings[0].deviation.as_ref().unwrap();
        let Amount::One(Quantity::Ratio(ratio)) = off.amount else {
            panic!("{off:?}");
        };
        assert!((ratio.value - 0.7 / 60.0).abs() < 1e-12);
        let outside: Vec<bool> = row.readings.iter().map(|reading| reading.outside).collect();
        assert_eq!(outside, [false, true, false, false]);
        let at_fault: Vec<bool> = row.readings.iter().map(|reading| reading.fault.is_some()).collect();
        assert_eq!(at_fault, [false, false, false, true]);
        let faults: Vec<(Place, &str)> = found.all_faults().map(|(place, fault)| (place, fault.key)).collect();
        assert_eq!(faults, [(Place::Fastener(7), "reading")]);
        assert_eq!(found.open, [Open::ReadingOutside(7), Open::NotRead(7)]);
    }

    #[test]
    fn a_range_is_not_widened_by_the_tool() {
        // 25.8 and 33.2 lbf·ft are what the row shows of it, 34.98 and 45.01 N·m.
        let mut row = bolts(&["34", "35", "45", "46", "25.8 lbf·ft", "33.2 lbf·ft", "34.8", "45.2"]);
        row.spec = "35-45 N·m".into();
        let found = assess(&sheet(row), Tools::Metric, None);
        let outside: Vec<bool> = found.fasteners[0]
            .readings
            .iter()
            .map(|reading| reading.outside)
            .collect();
        assert_eq!(outside, [true, false, false, true, false, false, true, true]);
    }

    #[test]
    fn a_spec_of_another_kind_is_not_converted_and_keeps_the_sheet_open() {
        let mut row = bolts(&[]);
        row.spec = "44 lbs".into();
        let found = assess(&sheet(row), Tools::Both, None);
        assert!(found.fasteners[0].spec.is_empty());
        assert_eq!(found.open, [Open::NotRead(7)]);
    }

    #[test]
    fn a_bare_reading_is_in_the_unit_of_the_torque_it_is_judged_against() {
        for (spec, reading, bare, unit, outside) in [
            ("18 ft-lb", "18", true, Unit::PoundForceFoot, false),
            ("18 ft-lb", "24.4 N·m", false, Unit::PoundForceFoot, false),
            ("18 ft-lb", "24.4", true, Unit::PoundForceFoot, true),
            ("18", "18", true, Unit::NewtonMetre, false),
            ("90 in-lb", "90", true, Unit::PoundForceInch, false),
            ("10 N·m + 30 ft-lb", "30", true, Unit::PoundForceFoot, false),
            ("30 N·m + 90°", "30", true, Unit::NewtonMetre, false),
            ("20 ft-lb + 90°", "20", true, Unit::PoundForceFoot, false),
            ("", "18", true, Unit::NewtonMetre, false),
        ] {
            let mut row = bolts(&[reading]);
            row.spec = spec.into();
            let found = assess(&sheet(row), Tools::Both, None);
            let row = &found.fasteners[0];
            let read = &row.readings[0];
            assert_eq!(
                (row.reading_unit, read.bare, read.outside),
                (unit, bare, outside),
                "{spec}: {reading}"
            );
        }
    }

    #[test]
    fn a_spec_stands_in_the_unit_of_the_tools() {
        let units = |tools| -> Vec<Unit> {
            let found = assess(&sheet(bolts(&[])), tools, None);
            found.fasteners[0].spec.iter().map(|finding| finding.unit).collect()
        };
        assert_eq!(units(Tools::Metric), [Unit::NewtonMetre]);
        assert_eq!(units(Tools::Inch), [Unit::PoundForceFoot]);
    }

    #[test]
    fn an_adapter_changes_what_a_reading_should_be() {
        let mut row = bolts(&["50"]);
        row.bolt.insert("wrench".into(), "500 mm".into());
        row.bolt.insert("adapter".into(), "100 mm".into());
        let found = assess(&sheet(row), Tools::Metric, None);
        let Amount::One(Quantity::Torque(setting)) = found.fasteners[0].setting.as_ref().unwrap().amount else {
            panic!("no torque");
        };
        assert!((setting.value - 50.0).abs() < 1e-9);
        assert!(!found.fasteners[0].readings[0].outside);
    }

    #[test]
    fn a_bolt_turned_by_an_angle_is_likely_single_use() {
        let mut row = bolts(&[]);
        row.spec = "30 N·m + 90°".into();
        assert!(assess(&sheet(row.clone()), Tools::Both, None).fasteners[0].single_use_likely);
        row.single_use = true;
        assert!(!assess(&sheet(row), Tools::Both, None).fasteners[0].single_use_likely);
    }
}
