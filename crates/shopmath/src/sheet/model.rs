//! What a sheet holds: every entry as the text that was typed.
//!
//! Reading the texts is [`mod@super::assess`]'s work, keeping them within bounds [`super::limits`]'s.
//! In JSON an empty text, an empty list and an unticked box are left out, which keeps links short.

use crate::fastener::bolt::BoltText;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The number of the form described here; a change that older pages cannot read raises it.
pub const SCHEMA: u32 = 1;

/// One job.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// The form it is written in, [`SCHEMA`].
    pub schema: u32,
    /// Its name among all sheets: 1–64 of `a–z`, `0–9` and `-`.
    pub id: String,
    /// How often it has been saved; of two saves of one sheet the higher is the later.
    #[serde(default)]
    pub rev: u64,
    /// The day of the last save, `YYYY-MM-DD`; empty before the first.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub updated: String,
    /// Whether it is the demo, which one tap removes.
    #[serde(default, skip_serializing_if = "is_false")]
    pub demo: bool,
    /// The machine worked on.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub machine: String,
    /// Its odometer at the job; a bare number is in kilometres.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub odometer: String,
    /// The day of the job, `YYYY-MM-DD`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub date: String,
    /// Whatever else is worth keeping.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// The currency of all prices, such as `EUR`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub currency: String,
    /// The bolts, in the order of work.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fasteners: Vec<Fastener>,
    /// The parts, in the order of work.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<Part>,
    /// What was measured, before and after.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub checks: Vec<Check>,
    /// Belt drives worked out on the Belt screen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub belts: Vec<Belt>,
    /// What comes round again.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub intervals: Vec<Interval>,
}

/// A bolt, or several alike.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fastener {
    /// The row's number, unique among the fasteners of its sheet.
    pub id: u32,
    /// What it holds.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// The thread, such as `M10x1.25`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub thread: String,
    /// The strength class, such as `10.9`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub class: String,
    /// The spec as the manual prints it, such as `30 N·m + 90°`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub spec: String,
    /// How many there are, 1–999; one where empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub count: String,
    /// What grips its head, such as `13 mm` or `T50`; the standard's hexagon where empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub head: String,
    /// The square of the tool that turns it, such as `1/2 in`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub drive: String,
    /// Whether it must be replaced once loosened.
    #[serde(default, skip_serializing_if = "is_false")]
    pub single_use: bool,
    /// Whether a new one was fitted.
    #[serde(default, skip_serializing_if = "is_false")]
    pub replaced: bool,
    /// Whether the row is done.
    #[serde(default, skip_serializing_if = "is_false")]
    pub done: bool,
    /// Torques as tightened, one text a bolt; a bare number is in the unit of the spec's last torque.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<String>,
    /// What else the Bolt screen was told, by its keys: `adapter`, `grip`, `tool` and so on.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub bolt: BTreeMap<String, String>,
}

/// A part fitted or used up.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// The row's number, unique among the parts of its sheet.
    pub id: u32,
    /// What it is.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// How many, to three decimals (4.5 litres of oil); one where empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub count: String,
    /// The price of one, to four decimals, in the sheet's currency.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub price: String,
    /// Whether it is fitted.
    #[serde(default, skip_serializing_if = "is_false")]
    pub done: bool,
}

/// Something measured before and after: wear, swing, alignment.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    /// The row's number, unique among the checks of its sheet.
    pub id: u32,
    /// What was measured.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// What it was before the work.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub before: String,
    /// What it was after.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub after: String,
    /// Whether the row is done.
    #[serde(default, skip_serializing_if = "is_false")]
    pub done: bool,
}

/// A belt drive of the Belt screen.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Belt {
    /// The row's number, unique among the belts of its sheet.
    pub id: u32,
    /// What it drives.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// What follows `#/belt?` in the address that brings it back; never a whole address, so that
    /// a sheet from elsewhere leads nowhere else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub query: String,
}

/// Work that comes round again by distance, by time, or by whichever is first.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Interval {
    /// The row's number, unique among the intervals of its sheet.
    pub id: u32,
    /// What is due.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// The distance between two times; a bare number is in the odometer's unit.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub every_distance: String,
    /// The days between two times, a whole number.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub every_days: String,
    /// The odometer when it was last done; a bare number is in the sheet's odometer's unit.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub done_at_odometer: String,
    /// The day it was last done, `YYYY-MM-DD`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub done_on: String,
}

#[allow(clippy::trivially_copy_pass_by_ref)] // the signature serde calls
fn is_false(flag: &bool) -> bool {
    !*flag
}

impl Sheet {
    /// An empty sheet.
    ///
    /// ```
    /// use shopmath::sheet::Sheet;
    /// assert!(Sheet::new("front-belt").fasteners.is_empty());
    /// ```
    #[must_use]
    pub fn new(id: impl Into<String>) -> Self {
        Self {
            schema: SCHEMA,
            id: id.into(),
            ..Self::default()
        }
    }

    /// Whether two sheets say the same, whatever they are called and however often saved.
    ///
    /// ```
    /// use shopmath::sheet::Sheet;
    /// let mut saved = Sheet { rev: 4, updated: "2025-03-31".into(), ..Sheet::new("belt-2") };
    /// assert!(saved.says_the_same(&Sheet::new("belt")));
    /// saved.notes = "Squeals when cold.".into();
    /// assert!(!saved.says_the_same(&Sheet::new("belt")));
    /// ```
    #[must_use]
    pub fn says_the_same(&self, other: &Self) -> bool {
        let bare = |sheet: &Self| Self {
            id: String::new(),
            rev: 0,
            updated: String::new(),
            ..sheet.clone()
        };
        bare(self) == bare(other)
    }
}

impl Fastener {
    /// The row as the Bolt screen takes it, without a reading.
    ///
    /// ```
    /// use shopmath::sheet::Fastener;
    /// let row = Fastener { thread: "M8".into(), ..Fastener::default() };
    /// assert_eq!(row.bolt_text().get("thread"), "M8");
    /// ```
    #[must_use]
    pub fn bolt_text(&self) -> BoltText {
        let mut text = BoltText::default();
        for (key, typed) in &self.bolt {
            text.set(key, typed.as_str());
        }
        for (key, typed) in [("thread", &self.thread), ("class", &self.class), ("spec", &self.spec)] {
            text.set(key, typed.as_str());
        }
        text.set("reading", "");
        text
    }
}
