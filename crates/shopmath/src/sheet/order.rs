//! Changes to a sheet's rows, each with the one that takes it back.
//!
//! An [`Action`] is data; [`apply`] makes a new sheet of the old and hands back the inverse. Keeping
//! a pile of inverses is undo, and applying one yields redo. Typing into entries is not handled
//! here: a field's own undo does that.

use super::limits;
use super::model::{Belt, Check, Fastener, Interval, Part, Sheet};

/// A list of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum List {
    /// The bolts.
    Fasteners,
    /// The parts.
    Parts,
    /// The checks.
    Checks,
    /// The belt drives.
    Belts,
    /// The intervals.
    Intervals,
}

/// Does the same with whichever list of a sheet is meant.
macro_rules! in_list {
    ($list:expr, $sheet:ident, |$rows:ident| $does:expr) => {
        match $list {
            List::Fasteners => in_list!($sheet.fasteners $rows $does),
            List::Parts => in_list!($sheet.parts $rows $does),
            List::Checks => in_list!($sheet.checks $rows $does),
            List::Belts => in_list!($sheet.belts $rows $does),
            List::Intervals => in_list!($sheet.intervals $rows $does),
        }
    };
    ($sheet:ident.$list:ident $rows:ident $does:expr) => {{
        let Sheet { $list: $rows, .. } = $sheet;
        $does
    }};
}
pub(super) use in_list;

/// A row of any list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Row {
    /// A row of bolts.
    Fastener(Fastener),
    /// A part.
    Part(Part),
    /// A check.
    Check(Check),
    /// A belt drive.
    Belt(Belt),
    /// An interval.
    Interval(Interval),
}

/// A box that can be ticked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tick {
    /// The row is done: bolts, parts, checks.
    Done,
    /// A new bolt was fitted: bolts only.
    Replaced,
    /// The bolt is to be replaced once loosened: bolts only.
    SingleUse,
}

/// A change to a sheet's rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Action {
    /// Puts a row at another place of its list; places count from 0.
    Move {
        /// The list.
        list: List,
        /// The row's number.
        id: u32,
        /// Its new place.
        to: usize,
    },
    /// Ticks a box, or unticks it.
    Tick {
        /// The list.
        list: List,
        /// The row's number.
        id: u32,
        /// Which box.
        tick: Tick,
        /// Whether it is ticked afterwards.
        on: bool,
    },
    /// Puts a new row into its list.
    Insert {
        /// Where; at the end if the list is shorter.
        at: usize,
        /// The row, whose number is not in the list yet.
        row: Box<Row>,
    },
    /// Puts a row in the place of the one of its number.
    Replace {
        /// The row, whose number is in the list.
        row: Box<Row>,
    },
    /// Takes a row out.
    Remove {
        /// The list.
        list: List,
        /// The row's number.
        id: u32,
    },
}

/// The sheet after an action, and the action that takes it back; nothing where the action does not
/// apply: no such row, place or box, a number already there, a full list.
///
/// ```
/// use shopmath::sheet::{demo, order::{Action, List, apply}};
/// let sheet = demo::sheet();
/// let first = sheet.fasteners[0].id;
/// let (without, undo) = apply(&sheet, Action::Remove { list: List::Fasteners, id: first }).unwrap();
/// assert_eq!(without.fasteners.len() + 1, sheet.fasteners.len());
/// assert_eq!(apply(&without, undo).unwrap().0, sheet);
/// ```
#[must_use]
pub fn apply(sheet: &Sheet, action: Action) -> Option<(Sheet, Action)> {
    let mut sheet = sheet.clone();
    let inverse = match action {
        Action::Move { list, id, to } => moved(&mut sheet, list, id, to)?,
        Action::Tick { list, id, tick, on } => ticked(&mut sheet, list, id, tick, on)?,
        Action::Insert { at, row } => inserted(&mut sheet, at, *row)?,
        Action::Replace { row } => replaced(&mut sheet, *row)?,
        Action::Remove { list, id } => removed(&mut sheet, list, id)?,
    };
    Some((sheet, inverse))
}

impl Row {
    /// A new row for a list of a sheet. An interval begins at the job's odometer and on its day.
    ///
    /// ```
    /// use shopmath::sheet::{Sheet, order::{List, Row}};
    /// let job = Sheet { odometer: "150 240 km".into(), ..Sheet::new("a") };
    /// let Row::Interval(row) = Row::blank(&job, List::Intervals) else { panic!() };
    /// assert_eq!((row.id, row.done_at_odometer.as_str()), (1, "150 240 km"));
    /// ```
    #[must_use]
    pub fn blank(sheet: &Sheet, list: List) -> Self {
        let id = free_id(sheet, list);
        match list {
            List::Fasteners => Self::Fastener(Fastener {
                id,
                ..Fastener::default()
            }),
            List::Parts => Self::Part(Part { id, ..Part::default() }),
            List::Checks => Self::Check(Check { id, ..Check::default() }),
            List::Belts => Self::Belt(Belt { id, ..Belt::default() }),
            List::Intervals => Self::Interval(Interval {
                id,
                done_at_odometer: sheet.odometer.clone(),
                done_on: sheet.date.clone(),
                ..Interval::default()
            }),
        }
    }
}

/// A number for a new row of a list: one past the largest there, or the smallest one free.
///
/// ```
/// use shopmath::sheet::{Sheet, order::{List, free_id}};
/// assert_eq!(free_id(&Sheet::new("a"), List::Parts), 1);
/// ```
#[must_use]
pub fn free_id(sheet: &Sheet, list: List) -> u32 {
    let ids: Vec<u32> = in_list!(list, sheet, |rows| rows.iter().map(|row| row.id).collect());
    let past = ids.iter().max().map_or(Some(1), |most| most.checked_add(1));
    past.or_else(|| (1..).find(|id| !ids.contains(id))).unwrap_or(0)
}

/// Whether a list has no room for another row: it has 500.
///
/// ```
/// use shopmath::sheet::{Part, Sheet, order::{List, is_full}};
/// let sheet = Sheet { parts: vec![Part::default(); 500], ..Sheet::new("a") };
/// assert!(is_full(&sheet, List::Parts) && !is_full(&sheet, List::Checks));
/// ```
#[must_use]
pub fn is_full(sheet: &Sheet, list: List) -> bool {
    in_list!(list, sheet, |rows| rows.len()) >= limits::ROWS
}

fn place(sheet: &Sheet, list: List, id: u32) -> Option<usize> {
    in_list!(list, sheet, |rows| rows.iter().position(|row| row.id == id))
}

fn moved(sheet: &mut Sheet, list: List, id: u32, to: usize) -> Option<Action> {
    let from = place(sheet, list, id)?;
    in_list!(list, sheet, |rows| shift(rows, from, to))?;
    Some(Action::Move { list, id, to: from })
}

fn shift<T>(rows: &mut [T], from: usize, to: usize) -> Option<()> {
    if from <= to {
        rows.get_mut(from..=to)?.rotate_left(1);
    } else {
        rows.get_mut(to..=from)?.rotate_right(1);
    }
    Some(())
}

fn ticked(sheet: &mut Sheet, list: List, id: u32, tick: Tick, on: bool) -> Option<Action> {
    let place = place(sheet, list, id)?;
    let flag = match (list, tick) {
        (List::Fasteners, Tick::Done) => &mut sheet.fasteners.get_mut(place)?.done,
        (List::Fasteners, Tick::Replaced) => &mut sheet.fasteners.get_mut(place)?.replaced,
        (List::Fasteners, Tick::SingleUse) => &mut sheet.fasteners.get_mut(place)?.single_use,
        (List::Parts, Tick::Done) => &mut sheet.parts.get_mut(place)?.done,
        (List::Checks, Tick::Done) => &mut sheet.checks.get_mut(place)?.done,
        _ => return None,
    };
    let was = core::mem::replace(flag, on);
    Some(Action::Tick {
        list,
        id,
        tick,
        on: was,
    })
}

fn inserted(sheet: &mut Sheet, at: usize, row: Row) -> Option<Action> {
    let (list, id) = row.address();
    if place(sheet, list, id).is_some() || is_full(sheet, list) {
        return None;
    }
    let at = at.min(in_list!(list, sheet, |rows| rows.len()));
    match row {
        Row::Fastener(row) => sheet.fasteners.insert(at, row),
        Row::Part(row) => sheet.parts.insert(at, row),
        Row::Check(row) => sheet.checks.insert(at, row),
        Row::Belt(row) => sheet.belts.insert(at, row),
        Row::Interval(row) => sheet.intervals.insert(at, row),
    }
    Some(Action::Remove { list, id })
}

fn removed(sheet: &mut Sheet, list: List, id: u32) -> Option<Action> {
    let at = place(sheet, list, id)?;
    let row = match list {
        List::Fasteners => Row::Fastener(sheet.fasteners.remove(at)),
        List::Parts => Row::Part(sheet.parts.remove(at)),
        List::Checks => Row::Check(sheet.checks.remove(at)),
        List::Belts => Row::Belt(sheet.belts.remove(at)),
        List::Intervals => Row::Interval(sheet.intervals.remove(at)),
    };
    Some(Action::Insert { at, row: Box::new(row) })
}

fn replaced(sheet: &mut Sheet, row: Row) -> Option<Action> {
    let (list, id) = row.address();
    let Action::Insert { at, row: before } = removed(sheet, list, id)? else {
        return None;
    };
    inserted(sheet, at, row)?;
    Some(Action::Replace { row: before })
}

impl Row {
    /// The list it belongs to, and its number there.
    ///
    /// ```
    /// use shopmath::sheet::{demo, order::{List, Row}};
    /// let row = Row::Part(demo::sheet().parts[2].clone());
    /// assert_eq!(row.address(), (List::Parts, 3));
    /// ```
    #[must_use]
    pub fn address(&self) -> (List, u32) {
        match self {
            Self::Fastener(row) => (List::Fasteners, row.id),
            Self::Part(row) => (List::Parts, row.id),
            Self::Check(row) => (List::Checks, row.id),
            Self::Belt(row) => (List::Belts, row.id),
            Self::Interval(row) => (List::Intervals, row.id),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Action, List, Row, Tick, apply, free_id};
    use crate::sheet::{Part, Sheet, limits};

    fn parts(ids: impl IntoIterator<Item = u32>) -> Sheet {
        let part = |id| Part { id, ..Part::default() };
        Sheet {
            parts: ids.into_iter().map(part).collect(),
            ..Sheet::new("a")
        }
    }

    fn order(sheet: &Sheet) -> Vec<u32> {
        sheet.parts.iter().map(|row| row.id).collect()
    }

    #[test]
    fn rows_move_both_ways() {
        let sheet = parts([1, 2, 3, 4]);
        for (id, to, after) in [(1, 2, [2, 3, 1, 4]), (4, 0, [4, 1, 2, 3]), (2, 1, [1, 2, 3, 4])] {
            let (moved, undo) = apply(
                &sheet,
                Action::Move {
                    list: List::Parts,
                    id,
                    to,
                },
            )
            .unwrap();
            assert_eq!(order(&moved), after);
            assert_eq!(apply(&moved, undo).unwrap().0, sheet);
        }
    }

    #[test]
    fn a_row_is_replaced_where_it_stands_and_taken_back() {
        let sheet = parts([1, 2, 3]);
        let row = Row::Part(Part {
            id: 2,
            label: "Belt".into(),
            ..Part::default()
        });
        let (after, undo) = apply(&sheet, Action::Replace { row: Box::new(row) }).unwrap();
        assert_eq!((order(&after), after.parts[1].label.as_str()), (vec![1, 2, 3], "Belt"));
        assert_eq!(apply(&after, undo).unwrap().0, sheet);
        let unknown = Box::new(Row::Part(Part::default()));
        assert_eq!(apply(&sheet, Action::Replace { row: unknown }), None);
    }

    #[test]
    fn what_does_not_apply_changes_nothing() {
        let sheet = parts([1, 2]);
        let list = List::Parts;
        let again = Row::Part(sheet.parts[0].clone());
        for action in [
            Action::Move { list, id: 1, to: 2 },
            Action::Move { list, id: 3, to: 0 },
            Action::Tick {
                list,
                id: 1,
                tick: Tick::Replaced,
                on: true,
            },
            Action::Remove {
                list: List::Checks,
                id: 1,
            },
            Action::Insert {
                at: 0,
                row: Box::new(again),
            },
        ] {
            assert_eq!(apply(&sheet, action.clone()), None, "{action:?}");
        }
        let full = parts((0..).take(limits::ROWS));
        let row = Box::new(Row::Part(Part {
            id: u32::MAX,
            ..Part::default()
        }));
        assert_eq!(apply(&full, Action::Insert { at: 0, row }), None);
    }

    #[test]
    fn a_new_row_has_a_number_of_its_own() {
        assert_eq!(free_id(&parts([3, 9, 4]), List::Parts), 10);
        assert_eq!(free_id(&parts([1, u32::MAX]), List::Parts), 2);
    }
}
