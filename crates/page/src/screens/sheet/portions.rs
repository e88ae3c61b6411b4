//! A long list drawn a portion at a time: what is in sight first, the rest between the frames after it.

use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// Rows that fill any phone's screen, and rows drawn at a time after them.
const FIRST: usize = 6;
const NEXT: usize = 8;
/// From one portion to the next, millisecond: time for a frame, and for a tap in between.
const GAP: u32 = 20;
/// From the last portion until the list has settled, millisecond: the browser's own look at new fields is over.
const REST: u32 = 1500;

/// How far a list is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Portion {
    /// So many rows.
    First(usize),
    /// All of a long list, for good.
    Settled,
}

impl Portion {
    /// How many of so many rows to draw.
    pub(super) fn of(self, rows: usize) -> usize {
        match self {
            Self::First(drawn) => drawn.min(rows),
            Self::Settled => rows,
        }
    }

    /// What follows, and after what time, millisecond. Short lists stay as they are.
    fn next(self, rows: usize) -> Option<(u32, Self)> {
        match self {
            Self::First(drawn) if drawn < rows => Some((GAP, Self::First(drawn + NEXT))),
            Self::First(drawn) if drawn > FIRST => Some((REST, Self::Settled)),
            _ => None,
        }
    }
}

/// The portion of a list of so many rows to draw now. All of it at once where one comes back to a place
/// `far` down.
#[hook]
pub(super) fn use_portion(rows: usize, far: bool) -> Portion {
    let portion = use_state_eq(|| Portion::First(if far { usize::MAX } else { FIRST }));
    let next = portion.next(rows);
    let setter = portion.setter();
    use_effect_with(next, move |&next| {
        let timer = next.map(|(gap, then)| Timeout::new(gap, move || setter.set(then)));
        move || drop(timer)
    });
    *portion
}

#[cfg(test)]
mod tests {
    use super::{FIRST, Portion};

    #[test]
    fn a_list_is_drawn_to_its_end_and_settles() {
        for rows in [0, 1, FIRST, FIRST + 1, 40, 1000] {
            let (mut portion, mut steps) = (Portion::First(FIRST), 0);
            while let Some((_, next)) = portion.next(rows) {
                assert!(next.of(rows) >= portion.of(rows), "{rows}: {portion:?} {next:?}");
                portion = next;
                steps += 1;
                assert!(steps < 1000, "{rows}: without end");
            }
            assert_eq!(portion.of(rows), rows);
            assert_eq!(portion == Portion::Settled, rows > FIRST, "{rows}");
        }
    }

    #[test]
    fn a_row_added_to_a_short_list_is_drawn_at_once_or_next() {
        let portion = Portion::First(FIRST);
        assert_eq!(portion.of(FIRST - 1), FIRST - 1);
        assert_eq!(portion.of(FIRST + 1), FIRST);
        assert_eq!(
            portion.next(FIRST + 1).map(|(_, next)| next.of(FIRST + 1)),
            Some(FIRST + 1)
        );
    }
}
