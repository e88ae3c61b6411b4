//! The fields of the Belt screen: key, label, unit, default, limits. Data only.

use crate::field::{Choice, Field, Reads};
use crate::quantity::Unit;

/// The demo drive: the invented Larkfield delivery van, 2.2 L diesel, seen from the front, the
/// crank's centre at 0,0. All figures are made up.
pub(super) mod demo {
    pub(in super::super) const PULLEYS: &str = "crank:rib:0,0:156;tensioner:back:-104,122:70;alternator:rib:-205,262:56;idler:back:-75,268:70;water pump:rib:55,210:118;compressor:rib:240,78:112";
    pub(in super::super) const BELT: &str = "6PK1460";
    pub(in super::super) const TENSIONER: &str = "tensioner@-128,44,55..95";
    pub(in super::super) const SPRING: &str = "19 N·m";
    pub(in super::super) const STRAND: &str = "227 mm";
    pub(in super::super) const FREQUENCY: &str = "105 Hz";
    pub(in super::super) const LOADS: &str = "alternator=90 A 14 V; water pump=0.6 kW; compressor=12 N·m";
}

const PROFILES: &[Choice] = &[
    Choice {
        text: "PH",
        label: "PH, 1.60 mm",
    },
    Choice {
        text: "PJ",
        label: "PJ, 2.34 mm",
    },
    Choice {
        text: "PK",
        label: "PK, 3.56 mm",
    },
    Choice {
        text: "PL",
        label: "PL, 4.70 mm",
    },
    Choice {
        text: "PM",
        label: "PM, 9.40 mm",
    },
];

/// A field and what it may hold.
pub(super) struct Row {
    /// The descriptor.
    pub(super) field: Field,
    /// Least and most, in the field's own unit.
    pub(super) limits: (f64, f64),
    /// The demo drive's text where it differs from the default.
    pub(super) demo: Option<&'static str>,
}

const fn row(
    section: &'static str,
    key: &'static str,
    label: &'static str,
    reads: Reads,
    default: &'static str,
    hint: &'static str,
    limits: (f64, f64),
) -> Row {
    Row {
        field: Field {
            key,
            label,
            reads,
            default,
            hint,
            choices: &[],
            section,
        },
        limits,
        demo: None,
    }
}

const fn shown(row: Row, demo: &'static str) -> Row {
    Row {
        demo: Some(demo),
        ..row
    }
}

const fn listed(mut row: Row, choices: &'static [Choice]) -> Row {
    row.field.choices = choices;
    row
}

const NO_LIMITS: (f64, f64) = (0.0, 0.0);
const MM: Reads = Reads::Value(Unit::Millimetre);

/// Every field of the screen, in the order it is laid out.
#[rustfmt::skip]
pub(super) const ROWS: &[Row] = &[
    shown(row("drive", "belt", "Belt", Reads::Text, "", "such as 6PK1453", NO_LIMITS), demo::BELT),
    listed(row("drive", "profile", "Rib profile", Reads::Listed, "PK", "PK", NO_LIMITS), PROFILES),
    row("drive", "ribs", "Ribs", Reads::Value(Unit::Number), "6", "6", (1.0, 100.0)),
    row("drive", "back", "Back face to effective line", MM, "2.3 mm", "2.3 mm", (0.0, 50.0)),
    row("drive", "step", "Next lengths, apart", MM, "5 mm", "5 mm", (1.0, 200.0)),
    row("drive", "pulleys", "Pulleys as one line, in belt order", Reads::Text, demo::PULLEYS, "such as crank:rib:0,0:150; …", NO_LIMITS),
    shown(row("tensioner", "spring", "Spring torque at the arm", Reads::Value(Unit::NewtonMetre), "", "such as 19 N·m", (0.1, 1000.0)), demo::SPRING),
    row("tensioner", "stretch", "Belt stretched by", Reads::Value(Unit::Percent), "", "such as 0.5 %", (0.0, 20.0)),
    row("tensioner", "seat", "Belt sunk in the grooves by", MM, "", "such as 0.1 mm", (0.0, 5.0)),
    shown(row("tensioner", "tensioner", "Tensioner as one line", Reads::Text, "", "such as tensioner@-128,44,55..95", NO_LIMITS), demo::TENSIONER),
    shown(row("tension", "strand", "Free strand, tangent to tangent", MM, "", "such as 170 mm", (20.0, 5000.0)), demo::STRAND),
    shown(row("tension", "frequency", "Strand frequency", Reads::Value(Unit::Hertz), "", "such as 220 Hz", (1.0, 5000.0)), demo::FREQUENCY),
    row("tension", "mass", "Belt mass per metre", Reads::Value(Unit::KilogramPerMetre), "", "by rib profile", (0.001, 10.0)),
    row("tension", "tension", "Strand tension, if not measured", Reads::Value(Unit::Newton), "300 N", "300 N", (1.0, 50_000.0)),
    row("loads", "rpm", "Driver speed", Reads::Value(Unit::RevolutionPerMinute), "2000 rpm", "2000 rpm", (1.0, 30_000.0)),
    row("loads", "efficiency", "Alternator efficiency", Reads::Value(Unit::Percent), "60 %", "60 %", (10.0, 100.0)),
    row("loads", "mu", "Friction, belt on pulley", Reads::Range(Unit::Number), "0.3", "0.3", (0.01, 2.0)),
    shown(row("loads", "loads", "Accessory loads as one line", Reads::Text, "", "such as alternator=90 A 14 V; …", NO_LIMITS), demo::LOADS),
    row("checks", "offset", "Gap under the straightedge", MM, "", "such as 1 mm", (0.0, 100.0)),
    row("checks", "apart", "Distance of the two pulleys", MM, "", "such as 300 mm", (10.0, 5000.0)),
    row("checks", "measured", "Belt measured, effective length", MM, "", "such as 1455 mm", (100.0, 20_000.0)),
    row("checks", "sink", "Gauge sits deeper than new by", MM, "", "such as 0.1 mm", (0.0, 5.0)),
    row("checks", "swing", "Tensioner swing at idle", MM, "", "such as 5 mm", (0.0, 200.0)),
];

/// Every field of the screen, in the order it is laid out.
pub const FIELDS: [Field; ROWS.len()] = {
    let mut fields = [ROWS[0].field; ROWS.len()];
    let mut index = 0;
    while index < ROWS.len() {
        fields[index] = ROWS[index].field;
        index += 1;
    }
    fields
};

/// The field of a key, as links spell it; `None` for a key the screen has not got.
///
/// ```
/// use shopmath::drive::bench::field;
/// assert_eq!(field("back").unwrap().default, "2.3 mm");
/// assert!(field("Back").is_none());
/// ```
#[must_use]
pub fn field(key: &str) -> Option<&'static Field> {
    row_of(key).map(|row| &row.field)
}

/// The row of a key.
pub(super) fn row_of(key: &str) -> Option<&'static Row> {
    ROWS.iter().find(|row| row.field.key == key)
}
