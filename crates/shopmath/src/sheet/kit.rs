//! The tools a job needs, gathered from its bolts.
//!
//! What was typed for a head or a drive counts as typed, spaces and Latin capitals apart. A bolt without
//! a typed head is taken by the standard's hexagon, as the Bolt screen does.

use super::bolts::{FastenerAssessment, TurnedBy};
use super::model::Sheet;
use crate::quantity::Quantity;
use crate::result::Amount;
use std::rc::Rc;
use uom::si::f64::Torque;

/// One thing to lay out, with the rows of bolts it is for.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// What it is.
    pub what: What,
    /// The rows' numbers, in the sheet's order.
    pub rows: Vec<u32>,
}

/// What a tool is.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A socket, key or bit, as typed for the head.
    Head(String),
    /// What turns a head by its standard.
    Standard(Box<TurnedBy>),
    /// A square drive, as typed.
    Drive(String),
    /// A torque wrench that covers these settings, lowest and highest.
    TorqueWrench(Torque, Torque),
    /// A protractor or angle gauge.
    AngleGauge,
}

/// The tools of a sheet: heads, hexagons, drives in the order of work, then the torque wrench and the
/// angle gauge. `found` is the sheet's bolts as assessed, in its order.
///
/// ```
/// use shopmath::{sheet::{assess, demo, kit::What}, tools::Tools};
/// let tools = assess(&demo::sheet(), Tools::Metric, None).tools;
/// assert!(tools.iter().any(|tool| matches!(tool.what, What::AngleGauge)));
/// ```
#[must_use]
pub fn gather(sheet: &Sheet, found: &[Rc<FastenerAssessment>]) -> Vec<Tool> {
    let (mut heads, mut drives, mut angle) = (Vec::new(), Vec::new(), Vec::new());
    let mut wrench: Option<(Torque, Torque, Vec<u32>)> = None;
    for (row, found) in sheet.fasteners.iter().zip(found) {
        if !row.head.trim().is_empty() {
            add(&mut heads, What::Head(row.head.trim().into()), row.id);
        } else if let Some(turned_by) = &found.turned_by {
            add(&mut heads, What::Standard(Box::new(turned_by.clone())), row.id);
        }
        if !row.drive.trim().is_empty() {
            add(&mut drives, What::Drive(row.drive.trim().into()), row.id);
        }
        if found.turns {
            add(&mut angle, What::AngleGauge, row.id);
        }
        if let Some(setting) = setting(found) {
            let (low, high, mut rows) = wrench.unwrap_or((setting, setting, Vec::new()));
            rows.push(row.id);
            wrench = Some((low.min(setting), high.max(setting), rows));
        }
    }
    let wrench = wrench.map(|(low, high, rows)| Tool {
        what: What::TorqueWrench(low, high),
        rows,
    });
    heads.into_iter().chain(drives).chain(wrench).chain(angle).collect()
}

fn setting(found: &FastenerAssessment) -> Option<Torque> {
    match found.setting.as_ref()?.amount {
        Amount::One(Quantity::Torque(setting)) => Some(setting),
        _ => None,
    }
}

fn add(tools: &mut Vec<Tool>, what: What, row: u32) {
    match tools.iter_mut().find(|tool| alike(&tool.what, &what)) {
        Some(tool) => tool.rows.push(row),
        None => tools.push(Tool { what, rows: vec![row] }),
    }
}

fn alike(one: &What, other: &What) -> bool {
    let folded = |text: &str| -> String {
        text.chars()
            .filter(|letter| !letter.is_whitespace())
            .map(|letter| letter.to_ascii_lowercase())
            .collect()
    };
    match (one, other) {
        (What::Head(one), What::Head(other)) | (What::Drive(one), What::Drive(other)) => folded(one) == folded(other),
        (What::Standard(one), What::Standard(other)) => one.is_like(other),
        _ => one == other,
    }
}

#[cfg(test)]
mod tests {
    use super::{Tool, TurnedBy, What};
    use crate::quantity::Unit;
    use crate::quantity::exact::length::Millimetre;
    use crate::result::Amount;
    use crate::sheet::{Fastener, Sheet, assess};
    use crate::tools::Tools;
    use uom::si::f64::Length;

    fn row(id: u32, thread: &str, spec: &str, head: &str, drive: &str) -> Fastener {
        Fastener {
            id,
            thread: thread.into(),
            spec: spec.into(),
            head: head.into(),
            drive: drive.into(),
            ..Fastener::default()
        }
    }

    fn turned_by(what: &What) -> Option<&TurnedBy> {
        match what {
            What::Standard(turned_by) => Some(turned_by),
            _ => None,
        }
    }

    #[test]
    fn each_tool_is_named_once_with_its_rows() {
        let job = Sheet {
            fasteners: vec![
                row(1, "M8", "25 N·m", "13 mm", "3/8 in"),
                row(2, "M8", "20 N·m + 90°", "13MM", "1/2 in"),
                row(3, "M10", "45 N·m", "", ""),
                row(4, "", "", "", ""),
            ],
            ..Sheet::new("a")
        };
        let tools = assess(&job, Tools::Metric, None).tools;
        let rows: Vec<&[u32]> = tools.iter().map(|tool| tool.rows.as_slice()).collect();
        assert_eq!(rows, [&[1, 2][..], &[3], &[1], &[2], &[1, 2, 3], &[2]]);
        let Tool {
            what: What::TorqueWrench(low, high),
            ..
        } = &tools[4]
        else {
            panic!("{tools:?}");
        };
        assert!((low.value - 20.0).abs() < 1e-9 && (high.value - 45.0).abs() < 1e-9);
        let wide = Amount::from(Length::new::<Millimetre>(16.0));
        assert!(matches!(turned_by(&tools[1].what), Some(TurnedBy::Hexagon(size)) if size.amount == wide));
    }

    #[test]
    fn a_head_has_the_wrench_of_its_standard() {
        let tool = |thread, head: &str| {
            let mut row = row(1, thread, "", "", "");
            row.bolt.insert("head".into(), head.into());
            let job = Sheet {
                fasteners: vec![row],
                ..Sheet::new("a")
            };
            assess(&job, Tools::Both, None).tools.remove(0).what
        };
        let (inch, key) = (tool("3/8-16", "hex"), tool("M10", "socket"));
        let (Some(TurnedBy::Hexagon(inch)), Some(TurnedBy::Key(key))) = (turned_by(&inch), turned_by(&key)) else {
            panic!("another wrench");
        };
        assert_eq!(inch.unit, Unit::Inch);
        assert_eq!(key.amount, Amount::from(Length::new::<Millimetre>(8.0)));
    }
}
