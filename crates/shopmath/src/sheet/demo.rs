//! The demo: the belt service of the Larkfield delivery van, an invented machine. Its figures are
//! examples and no maker's.

use super::model::{Belt, Check, Fastener, Interval, Part, SCHEMA, Sheet};

/// The demo's id.
pub const ID: &str = "demo-larkfield";

/// The demo sheet, half done: one single-use bolt is not replaced yet.
///
/// ```
/// let sheet = shopmath::sheet::demo::sheet();
/// assert!(sheet.demo && sheet.machine.contains("Larkfield"));
/// ```
#[must_use]
pub fn sheet() -> Sheet {
    Sheet {
        schema: SCHEMA,
        id: ID.into(),
        demo: true,
        machine: "Larkfield delivery van, 2.2 L diesel (invented)".into(),
        odometer: "150 240 km".into(),
        date: "2025-03-31".into(),
        notes: "Demo: an invented machine with example figures. Belt service at 150 000 km.".into(),
        currency: "EUR".into(),
        fasteners: fasteners(),
        parts: parts(),
        checks: checks(),
        belts: vec![Belt {
            id: 1,
            label: "Front accessory drive".into(),
            query: "belt=6PK1460".into(),
        }],
        intervals: intervals(),
        ..Sheet::default()
    }
}

fn fasteners() -> Vec<Fastener> {
    let row = |id, [label, thread, class, spec, count, head, drive]: [&str; 7]| Fastener {
        id,
        label: label.into(),
        thread: thread.into(),
        class: class.into(),
        spec: spec.into(),
        count: count.into(),
        head: head.into(),
        drive: drive.into(),
        ..Fastener::default()
    };
    let mut idler = row(
        1,
        ["Idler pulley bolt", "M10x1.5", "8.8", "45 N·m", "2", "16 mm", "1/2 in"],
    );
    idler.done = true;
    idler.readings = vec!["45.5".into(), "44.8".into()];
    let mut tensioner = row(
        2,
        [
            "Tensioner bolt",
            "M10x1.5",
            "10.9",
            "30 N·m + 90°",
            "1",
            "16 mm",
            "1/2 in",
        ],
    );
    tensioner.single_use = true;
    tensioner.bolt.insert("grip".into(), "42 mm".into());
    let cover = row(3, ["Lower cover", "M6", "8.8", "10 N·m", "5", "10 mm", "1/4 in"]);
    vec![idler, tensioner, cover]
}

fn parts() -> Vec<Part> {
    let part = |id, label: &str, count: &str, price: &str, done| Part {
        id,
        label: label.into(),
        count: count.into(),
        price: price.into(),
        done,
    };
    vec![
        part(1, "Ribbed belt 6PK1460", "1", "34.50", true),
        part(2, "Idler pulley", "2", "31.90", true),
        part(3, "Tensioner bolt, new", "1", "3.75", false),
    ]
}

fn checks() -> Vec<Check> {
    vec![
        Check {
            id: 1,
            label: "Tensioner swing at idle".into(),
            before: "9 mm".into(),
            after: "2 mm".into(),
            done: true,
        },
        Check {
            id: 2,
            label: "Pulley offset, straight edge".into(),
            before: "0.4 mm".into(),
            ..Check::default()
        },
    ]
}

fn intervals() -> Vec<Interval> {
    vec![Interval {
        id: 1,
        label: "Belt service".into(),
        every_distance: "150 000 km".into(),
        every_days: "3650".into(),
        done_at_odometer: "150 240 km".into(),
        done_on: "2025-03-31".into(),
    }]
}

#[cfg(test)]
mod tests {
    use super::sheet;
    use crate::sheet::assess::{Open, assess};
    use crate::tools::Tools;

    #[test]
    fn the_demo_has_no_faults_and_stays_open_until_its_bolt_is_new() {
        let found = assess(&sheet(), Tools::Both, None);
        assert_eq!(found.all_faults().count(), 0);
        assert!(found.fasteners.iter().all(|row| row.verdict.is_some()));
        assert!(found.open.contains(&Open::NotReplaced(2)));
        assert_eq!(found.parts_total.unwrap().text(), "102.05");
    }
}
