//! The sheet being worked on: what it says, what can be taken back, and how far it is kept.
//!
//! Pure: a change makes a new [`Job`] of the old. Keeping it is [`super::desk`]'s work.

use shopmath::sheet::assess::reassess;
use shopmath::sheet::fields::{self, At};
use shopmath::sheet::order::{Action, List, Row, Tick, apply};
use shopmath::sheet::{Date, Sheet, SheetAssessment};
use shopmath::tools::Tools;
use std::rc::Rc;

/// The most changes that can be taken back.
const REMEMBERED: usize = 50;

/// How far the sheet is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Status {
    /// As it stands.
    Kept,
    /// Not yet: it was changed a moment ago.
    Changed,
    /// Not, and why.
    Trouble(String),
    /// No longer: it was removed in another tab, and nothing was typed since.
    Removed,
}

impl Status {
    /// Whether the sheet is still to be saved.
    pub(crate) fn is_owed(&self) -> bool {
        matches!(self, Self::Changed | Self::Trouble(_))
    }
}

/// A change to the sheet.
#[derive(Clone, Debug)]
pub(crate) enum Change {
    /// Typed into an entry.
    Write(At, &'static str, String),
    /// Typed a reading of a row of bolts: the row, which reading from 0, the text.
    Reading(u32, usize, String),
    /// Changed a row as a whole.
    Do(Action),
    /// Took the last such change back.
    Undo,
}

/// What was changed last: what came of it is heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Touched {
    /// Nothing yet.
    Nothing,
    /// An entry.
    Entry(At, &'static str),
    /// A reading of a row of bolts, counted from 0.
    Reading(u32, usize),
    /// A row as a whole.
    Row,
    /// Such a change, which was taken back.
    TakenBack,
}

/// One change that can be taken back.
#[derive(Clone, Debug, PartialEq)]
struct Undo {
    words: String,
    inverse: Action,
    /// The row as it was added, where that is what is taken back.
    added: Option<Box<Row>>,
}

/// A sheet, read, with its past.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Job {
    pub(crate) sheet: Rc<Sheet>,
    pub(crate) found: Rc<SheetAssessment>,
    pub(crate) status: Status,
    /// What the person should know of how the sheet came here.
    pub(crate) notice: Option<String>,
    /// The row just added, for its first field to take the focus.
    pub(crate) fresh: Option<(List, u32)>,
    pub(crate) touched: Touched,
    /// Grows with every change, so that what was saved can be told from what was typed since.
    pub(crate) edits: u32,
    tools: Tools,
    today: Option<Date>,
    undo: Vec<Undo>,
}

impl Job {
    /// A sheet as it was kept.
    pub(crate) fn new(sheet: Sheet, tools: Tools, today: &str) -> Self {
        let today = Date::read(today);
        Self {
            found: Rc::new(reassess(&sheet, tools, today, None)),
            sheet: Rc::new(sheet),
            status: Status::Kept,
            notice: None,
            fresh: None,
            touched: Touched::Nothing,
            edits: 0,
            tools,
            today,
            undo: Vec::new(),
        }
    }

    /// The job after a change; nothing where it does not apply.
    pub(crate) fn after(&self, change: Change) -> Option<Self> {
        let mut job = self.clone();
        job.fresh = match &change {
            Change::Do(Action::Insert { row, .. }) => Some(row.address()),
            _ => None,
        };
        job.touched = match &change {
            Change::Write(at, key, _) => Touched::Entry(*at, key),
            Change::Reading(row, index, _) => Touched::Reading(*row, *index),
            Change::Do(_) => Touched::Row,
            Change::Undo => Touched::TakenBack,
        };
        let sheet = match change {
            Change::Write(at, key, text) => {
                let mut sheet = (*self.sheet).clone();
                fields::set(&mut sheet, at, key, text).then_some(sheet)?
            }
            Change::Reading(row, index, text) => {
                let mut sheet = (*self.sheet).clone();
                fields::set_reading(&mut sheet, row, index, text);
                sheet
            }
            Change::Do(action) => {
                let words = words(&self.sheet, &action);
                let added = match &action {
                    Action::Insert { row, .. } => Some(row.clone()),
                    _ => None,
                };
                let (sheet, inverse) = apply(&self.sheet, action)?;
                job.undo.push(Undo { words, inverse, added });
                if job.undo.len() > REMEMBERED {
                    job.undo.remove(0);
                }
                sheet
            }
            Change::Undo => {
                let Undo { inverse, added, .. } = job.undo.pop()?;
                let inverse = in_its_row(inverse, &self.sheet);
                let words = words(&self.sheet, &inverse);
                let (sheet, inverse) = apply(&self.sheet, inverse)?;
                // What was typed in a row since it was added is nowhere else.
                if matches!(&inverse, Action::Insert { row, .. } if added.as_ref() != Some(row)) {
                    let added = None;
                    job.undo.push(Undo { words, inverse, added });
                }
                sheet
            }
        };
        if sheet == *self.sheet {
            return None;
        }
        job.edits = job.edits.wrapping_add(1);
        job.status = Status::Changed;
        job.put(sheet);
        Some(job)
    }

    /// The job read for these tools on this day; nothing where it is.
    pub(crate) fn read_for(&self, tools: Tools, today: &str) -> Option<Self> {
        let today = Date::read(today);
        if (tools, today) == (self.tools, self.today) {
            return None;
        }
        let mut job = self.clone();
        (job.tools, job.today) = (tools, today);
        job.found = Rc::new(reassess(&job.sheet, tools, today, None));
        Some(job)
    }

    /// The job with the name, number of saves and day that keeping has given it.
    pub(crate) fn kept_as(&self, kept: &Sheet) -> Self {
        let mut job = self.clone();
        let sheet = Rc::make_mut(&mut job.sheet);
        (sheet.id, sheet.rev, sheet.updated) = (kept.id.clone(), kept.rev, kept.updated.clone());
        job
    }

    pub(crate) fn tools(&self) -> Tools {
        self.tools
    }

    /// What would be taken back.
    pub(crate) fn undo_words(&self) -> Option<&str> {
        self.undo.last().map(|undo| undo.words.as_str())
    }

    /// The row of the only change that could be taken back; none where there are more.
    pub(crate) fn last_undo(&self) -> Option<(List, u32)> {
        let [only] = &self.undo[..] else {
            return None;
        };
        Some(match &only.inverse {
            Action::Move { list, id, .. } | Action::Tick { list, id, .. } | Action::Remove { list, id } => (*list, *id),
            Action::Insert { row, .. } | Action::Replace { row } => row.address(),
        })
    }

    fn put(&mut self, sheet: Sheet) {
        let before = (&*self.sheet, self.tools, &*self.found);
        self.found = Rc::new(reassess(&sheet, self.tools, self.today, Some(before)));
        self.sheet = Rc::new(sheet);
    }
}

/// What puts the former bolt back, in its row as that is now: label, count and readings may have been typed since.
fn in_its_row(inverse: Action, sheet: &Sheet) -> Action {
    if let Action::Replace { row } = &inverse
        && let Row::Fastener(before) = &**row
        && let Some(now) = sheet.fasteners.iter().find(|row| row.id == before.id)
    {
        let row = Box::new(Row::Fastener(now.with_bolt_of(before)));
        return Action::Replace { row };
    }
    inverse
}

/// What an action did, for the button that takes it back.
fn words(sheet: &Sheet, action: &Action) -> String {
    let (verb, list, id) = match action {
        Action::Move { list, id, .. } => ("moved", *list, *id),
        Action::Tick { list, id, on, tick } => (tick_words(*tick, *on), *list, *id),
        Action::Remove { list, id } => ("removed", *list, *id),
        Action::Replace { row } => {
            let (list, id) = row.address();
            ("changed", list, id)
        }
        Action::Insert { row, .. } => {
            let (list, _) = row.address();
            return ["added ", noun(list)].concat();
        }
    };
    let label = fields::get(sheet, At::Row(list, id), "label");
    if label.is_empty() {
        format!("{verb} {}", noun(list))
    } else {
        format!("{verb} {label}")
    }
}

fn tick_words(tick: Tick, on: bool) -> &'static str {
    match (tick, on) {
        (Tick::Done, true) => "ticked",
        (Tick::Done, false) => "unticked",
        (Tick::Replaced, true) => "noted a new bolt for",
        (Tick::Replaced, false) => "unticked the new bolt for",
        (Tick::SingleUse, true) => "marked single-use:",
        (Tick::SingleUse, false) => "unmarked single-use:",
    }
}

fn noun(list: List) -> &'static str {
    match list {
        List::Fasteners => "a bolt",
        List::Parts => "a part",
        List::Checks => "a check",
        List::Belts => "a belt drive",
        List::Intervals => "an interval",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use shopmath::sheet::{Interval, demo};

    fn job() -> Job {
        Job::new(demo::sheet(), Tools::Metric, "2025-04-01")
    }

    #[test]
    fn a_removed_row_comes_back_where_it_was() {
        let before = job();
        let remove = Change::Do(Action::Remove {
            list: List::Fasteners,
            id: 2,
        });
        let without = before.after(remove).unwrap();
        assert_eq!(without.sheet.fasteners.len(), 2);
        assert_eq!(without.undo_words(), Some("removed Tensioner bolt"));
        assert_eq!(without.last_undo(), Some((List::Fasteners, 2)));
        let back = without.after(Change::Undo).unwrap();
        assert_eq!(back.sheet, before.sheet);
        assert_eq!(back.found, before.found);
        assert_eq!(back.undo_words(), None);
    }

    #[test]
    fn what_was_typed_in_a_row_comes_back_though_the_row_was_taken_back() {
        let bolts = List::Fasteners;
        let demo = job();
        let row = Box::new(Row::blank(&demo.sheet, bolts));
        let (_, id) = row.address();
        let added = demo.after(Change::Do(Action::Insert { at: 9, row })).unwrap();
        // Nothing was typed: nothing is lost.
        let back = added.after(Change::Undo).unwrap();
        assert_eq!((&back.sheet, back.undo_words()), (&demo.sheet, None));

        let typed = Change::Write(At::Row(bolts, id), "spec", "45 N·m".into());
        let typed = added.after(typed).unwrap();
        let back = typed.after(Change::Undo).unwrap();
        assert_eq!((&back.sheet, back.undo_words()), (&demo.sheet, Some("removed a bolt")));
        let again = back.after(Change::Undo).unwrap();
        assert_eq!((&again.sheet, again.undo_words()), (&typed.sheet, None));
    }

    #[test]
    fn taking_back_a_bolt_leaves_the_rest_of_its_row() {
        let before = job();
        let mut row = before.sheet.fasteners[1].clone();
        row.spec = "37 N·m".into();
        row.bolt.insert("grip".into(), "33 mm".into());
        let (at, id) = (At::Row(List::Fasteners, row.id), row.id);
        let row = Box::new(Row::Fastener(row));
        let put = before.after(Change::Do(Action::Replace { row })).unwrap();
        let typed = put.after(Change::Write(at, "label", "Upper bolt".into())).unwrap();
        let typed = typed.after(Change::Reading(id, 0, "36".into())).unwrap();
        let back = typed.after(Change::Undo).unwrap();
        let mut wanted = before.sheet.fasteners[1].clone();
        wanted.label = "Upper bolt".into();
        wanted.readings.clone_from(&typed.sheet.fasteners[1].readings);
        assert_eq!(back.sheet.fasteners[1], wanted);
        assert!(wanted.readings.iter().any(|reading| reading == "36"));
    }

    #[test]
    fn what_can_be_taken_back_has_its_article() {
        let row = Row::Interval(Interval {
            id: 7,
            ..Interval::default()
        });
        let added = job()
            .after(Change::Do(Action::Insert {
                at: 9,
                row: Box::new(row),
            }))
            .unwrap();
        assert_eq!(added.undo_words(), Some("added an interval"));
    }

    #[test]
    fn typing_the_same_is_no_change() {
        let same = Change::Write(At::Head, "currency", "EUR".into());
        assert_eq!(job().after(same), None);
        let other = job().after(Change::Write(At::Head, "currency", "CHF".into())).unwrap();
        assert_eq!((other.status, other.edits), (Status::Changed, 1));
    }

    #[test]
    fn the_next_day_is_counted_from() {
        let before = job();
        assert_eq!(before.read_for(Tools::Metric, "2025-04-01"), None);
        let after = before.read_for(Tools::Metric, "2025-04-02").unwrap();
        let left = |job: &Job| job.found.intervals.iter().find_map(|(_, due)| due.days_left);
        assert_eq!(left(&after), left(&before).map(|left| left - 1));
        assert!(left(&after).is_some());
    }

    #[test]
    fn keeping_changes_only_the_label() {
        let typed = job().after(Change::Write(At::Head, "notes", "x".into())).unwrap();
        let mut kept = demo::sheet();
        (kept.rev, kept.updated) = (3, "2025-04-02".into());
        let after = typed.kept_as(&kept);
        assert_eq!((after.sheet.rev, after.sheet.notes.as_str()), (3, "x"));
    }
}
