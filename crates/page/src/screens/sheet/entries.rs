//! The fields of a row, drawn from the core's lists, and the buttons every row has.

use super::job::{Change, Job};
use crate::link::go;
use crate::route::Route;
use crate::views::button::Button;
use crate::views::field::Field as View;
use crate::views::focus::{focus, focus_beside, keep_focus};
use crate::views::icon::signed;
use gloo::timers::callback::Timeout;
use shopmath::field::{Field, FieldFault, Reads};
use shopmath::sheet::assess::Place;
use shopmath::sheet::fields::{At, get};
use shopmath::sheet::limits::TEXT;
use shopmath::sheet::order::{Action, List, Tick};
use std::cell::Cell;
use std::rc::Rc;
use yew::prelude::*;

/// How long after a row was removed a tap on Remove is taken for the second one of that, milliseconds.
const SECOND_TAP: f64 = 500.0;

thread_local! {
    /// When a row was last removed, by the clock of the page's events.
    static REMOVED: Cell<Option<f64>> = const { Cell::new(None) };
}

/// Whose fields they are.
pub(super) struct Entries<'a> {
    pub(super) job: &'a Job,
    pub(super) at: At,
    /// What the ids of its elements begin with.
    pub(super) row: AttrValue,
    pub(super) wrong: Vec<FieldFault>,
    pub(super) onset: &'a Callback<(&'static str, String)>,
}

impl Entries<'_> {
    /// The fields of a list, in its order.
    pub(super) fn of(&self, fields: &'static [Field]) -> Html {
        fields.iter().map(|field| self.field(field)).collect()
    }

    fn field(&self, field: &'static Field) -> Html {
        let key = field.key;
        let wrong: Vec<FieldFault> = self.wrong.iter().filter(|fault| fault.key == key).cloned().collect();
        let text = get(&self.job.sheet, self.at, key);
        html! {
            <View {key} name={key} row={self.row.clone()} label={field.label} unit={field.reads.assumed(text)} text={text.to_owned()}
                empty={field.empty()} most={TEXT} closed={field.reads == Reads::Listed} entries={field.choices} {wrong} onset={self.onset} />
        }
    }
}

/// Writes into the entries of one place.
#[hook]
pub(super) fn use_onset(at: At, onchange: &Callback<Change>) -> Callback<(&'static str, String)> {
    use_callback((at, onchange.clone()), move |(key, text), (at, onchange)| {
        onchange.emit(Change::Write(*at, key, text))
    })
}

/// Puts the focus into the first field of a row that was just added.
#[hook]
pub(super) fn use_focus(fresh: bool, row: &str) {
    let field = format!("{row}-label");
    use_effect_with((), move |()| {
        if fresh {
            focus(&field);
        }
    });
}

/// What is wrong with the entries of a place other than a row of bolts.
pub(super) fn wrong(job: &Job, place: Place) -> Vec<FieldFault> {
    let faults = job.found.faults.iter().filter(|found| found.place == place);
    faults.map(|found| found.fault.clone()).collect()
}

/// A box to tick.
pub(super) fn tick(id: String, name: &'static str, words: &'static str, on: bool, onset: Callback<bool>) -> Html {
    let onchange = onset.reform(|event: Event| event.target_unchecked_into::<web_sys::HtmlInputElement>().checked());
    html! {
        <label class="tick">
            <input type="checkbox" {id} {name} checked={on} {onchange} /><span>{ words }</span>
        </label>
    }
}

/// A box of a row.
pub(super) fn row_tick(
    (list, id): (List, u32),
    row: &str,
    (name, words): (&'static str, &'static str),
    (tick_of, on): (Tick, bool),
    onchange: &Callback<Change>,
) -> Html {
    let onset = onchange.reform(move |on| {
        Change::Do(Action::Tick {
            list,
            id,
            tick: tick_of,
            on,
        })
    });
    tick(format!("{row}-{name}"), name, words, on, onset)
}

/// Up, down and remove.
pub(super) fn row_buttons((list, id): (List, u32), place: usize, of: usize, onchange: &Callback<Change>) -> Html {
    let moved = |to: Option<usize>| {
        onchange.reform(move |click: MouseEvent| {
            keep_focus(&click);
            Change::Do(Action::Move {
                list,
                id,
                to: to.unwrap_or(place),
            })
        })
    };
    let up = place.checked_sub(1);
    let down = place.checked_add(1).filter(|to| *to < of);
    let remove = {
        let onchange = onchange.clone();
        Callback::from(move |click: MouseEvent| {
            let now = click.time_stamp();
            // The next row's button slides under the thumb, and a second tap was not meant for it.
            if REMOVED.get().is_some_and(|last| now - last < SECOND_TAP) {
                return;
            }
            REMOVED.set(Some(now));
            focus_beside(&click, "[name=remove]", adder(list));
            onchange.emit(Change::Do(Action::Remove { list, id }));
        })
    };
    html! {
        <div class="row-buttons">
            { Button::chip(signed("↑", "Earlier"), moved(up)).name("earlier").off(up.is_none()).draw() }
            { Button::chip(signed("↓", "Later"), moved(down)).name("later").off(down.is_none()).draw() }
            { Button::chip("Remove", remove).name("remove").id(format!("{}-remove", row_name(list, id))).draw() }
        </div>
    }
}

/// Leads from a row to the screen that works it out. A button and no link: Chromium looks a tenth of a
/// second after each frame whether some of a page's links are in sight, one in a hundred picked at random,
/// and a key that falls on that look is seen a frame later.
/// `first` hears of it before.
pub(super) fn open(words: &'static str, route: Route, first: Option<Callback<()>>) -> Html {
    let onclick = Callback::from(move |_| {
        if let Some(first) = &first {
            first.emit(());
        }
        go(None, &route);
    });
    Button::chip(words, onclick).name("open").draw()
}

/// The button that adds a row to a list.
fn adder(list: List) -> &'static str {
    match list {
        List::Fasteners => "add-fastener",
        List::Parts => "add-part",
        List::Checks => "add-check",
        List::Belts => "add-from-belt",
        List::Intervals => "add-interval",
    }
}

/// What the id of a row, and of what is in it, begins with.
pub(super) fn row_name(list: List, id: u32) -> String {
    let kind = match list {
        List::Fasteners => "bolt",
        List::Parts => "part",
        List::Checks => "check",
        List::Belts => "drive",
        List::Intervals => "interval",
    };
    format!("{kind}-{id}")
}

/// Puts the focus on the last button of a row, once it is there, or on the one that adds to its list.
pub(super) fn focus_row((list, id): (List, u32)) {
    Timeout::new(0, move || {
        if !focus(&format!("{}-remove", row_name(list, id))) {
            focus(adder(list));
        }
    })
    .forget();
}

/// A row other than of bolts.
#[derive(Properties)]
pub(super) struct Props {
    pub(super) job: Rc<Job>,
    pub(super) list: List,
    pub(super) id: u32,
    pub(super) place: usize,
    pub(super) of: usize,
    pub(super) fields: &'static [Field],
    /// Whether it can be ticked, and is.
    pub(super) done: Option<bool>,
    /// What else it shows.
    #[prop_or_default]
    pub(super) children: Html,
    pub(super) onchange: Callback<Change>,
}

impl PartialEq for Props {
    /// Rows of this kind are few and small: any change of the sheet draws them anew.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.job, &other.job)
    }
}

/// The row.
#[component]
pub(super) fn Row(props: &Props) -> Html {
    let (list, id) = (props.list, props.id);
    let at = At::Row(list, id);
    let onset = use_onset(at, &props.onchange);
    let row = row_name(list, id);
    let place = match list {
        List::Parts => Some(Place::Part(id)),
        List::Intervals => Some(Place::Interval(id)),
        List::Fasteners | List::Checks | List::Belts => None,
    };
    use_focus(props.job.fresh == Some((list, id)), &row);
    let entries = Entries {
        job: &props.job,
        at,
        row: row.clone().into(),
        wrong: place.map(|place| wrong(&props.job, place)).unwrap_or_default(),
        onset: &onset,
    };
    let part = (list == List::Parts).then(|| id.to_string());
    html! {
        <li class="job-row" id={row.clone()} data-part={part}>
            <form class="entries">{ entries.of(props.fields) }</form>
            { props.children.clone() }
            <div class="row-foot">
                if let Some(done) = props.done { { row_tick((list, id), &row, ("done", "Done"), (Tick::Done, done), &props.onchange) } }
                { row_buttons((list, id), props.place, props.of, &props.onchange) }
            </div>
        </li>
    }
}
