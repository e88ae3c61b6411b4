//! One sheet on the bench: its head, bolts, parts, checks, belt drives and intervals.

use super::away::Away;
use super::desk::{Desk, Slot, use_desk};
use super::entries::{Entries, Row, open, use_onset, wrong};
use super::fastener::FastenerRow;
use super::job::{Change, Job};
use super::paper::PaperAtHand;
use super::portions::{Portion, use_portion};
use super::said::said;
use super::steps::steps;
use super::summary;
use super::unreadable::unreadable;
use crate::forms::typing;
use crate::link::Places;
use crate::pace;
use crate::route::{Route, Screen};
use crate::scroll::{self, remembered};
use crate::settings::SettingsHandle;
use crate::views::button::Button;
use crate::views::caution::cautions;
use crate::views::jumps::{heading, jumps};
use crate::views::overlay::use_overlay;
use crate::views::settings::tools_choice;
use crate::views::spoken::Spoken;
use shopmath::caution;
use shopmath::field::Field;
use shopmath::sheet::assess::Place;
use shopmath::sheet::fields::{At, BELT, CHECK, HEAD, INTERVAL, MONEY, PART};
use shopmath::sheet::limits::{LONG_TEXT, ROWS};
use shopmath::sheet::order::{Action, List, Row as NewRow, free_id, is_full};
use shopmath::sheet::{Belt, Fastener, Sheet};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The parts of a sheet.
const PARTS: [(&str, &str); 7] = [
    ("bolts", "Bolts"),
    ("parts", "Parts"),
    ("checks", "Checks"),
    ("belts", "Belt drives"),
    ("due", "Next due"),
    ("notes", "Notes"),
    ("away", "Print, save, share"),
];

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    pub(super) id: AttrValue,
    pub(super) places: Places,
    pub(super) settings: SettingsHandle,
    pub(super) desk: Desk,
}

/// The sheet of an id, or what became of it.
#[component]
pub(super) fn Bench(props: &Props) -> Html {
    let desk = &props.desk;
    use_desk(desk);
    {
        let desk = desk.clone();
        use_effect_with((props.id.clone(), props.settings.tools), move |(id, tools)| {
            desk.open(id, *tools);
            desk.read_for(Some(*tools));
        });
    }
    let onchange = {
        let desk = desk.clone();
        use_callback((), move |change, ()| desk.change(change))
    };
    let list = || html! { <a class="button" href={Route::bare(Screen::Sheet).print()}>{ "All sheets" }</a> };
    match desk.slot() {
        Slot::Job(job) if job.sheet.id == *props.id => {
            html! { <Open {job} places={props.places.clone()} settings={props.settings.clone()} desk={desk.clone()} {onchange} /> }
        }
        Slot::Missing(id) if id == *props.id => html! {
            <section class="unbuilt"><p>{ "There is no sheet of this name on this device. A sheet is only where it was written: ask for its file or its shared link." }</p>{ list() }</section>
        },
        Slot::Unreadable(id, found) if id == *props.id => {
            html! { <section class="unbuilt">{ unreadable(&found, html! {}) }{ list() }</section> }
        }
        Slot::Trouble(id, words) if id == *props.id => {
            html! { <section class="unbuilt"><p class="fault" role="alert">{ words }</p>{ list() }</section> }
        }
        _ => html! { <p class="note">{ "Opening the sheet…" }</p> },
    }
}

#[derive(Properties)]
struct OpenProps {
    job: Rc<Job>,
    places: Places,
    settings: SettingsHandle,
    desk: Desk,
    onchange: Callback<Change>,
}

impl PartialEq for OpenProps {
    /// Every change of the sheet makes a new job, so comparing what is in it would be work for
    /// nothing.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.job, &other.job)
            && self.places == other.places
            && self.settings == other.settings
            && self.desk == other.desk
            && self.onchange == other.onchange
    }
}

/// An open sheet.
#[component]
fn Open(props: &OpenProps) -> Html {
    let OpenProps {
        job, onchange, desk, ..
    } = props;
    let sheet = &job.sheet;
    let onset = use_onset(At::Head, onchange);
    let overlay = use_overlay();
    let step = use_state(|| 0);
    let stepping = overlay.is_open();
    use_effect_with(*step, move |_| {
        // Each bolt is read from its top; the first is led there as the view opens.
        if stepping {
            scroll::to_top();
        }
    });
    let portion = use_portion(sheet.fasteners.len(), remembered(&Route::sheet(&sheet.id)) > 0.0);
    let head = Entries {
        job,
        at: At::Head,
        row: "sheet".into(),
        wrong: wrong(job, Place::Sheet),
        onset: &onset,
    };
    if overlay.is_open() {
        return steps(job, &step, onchange, &overlay);
    }
    let [on_bolts, on_parts, on_checks, on_belts, on_due, on_notes, on_away] =
        PARTS.map(|(id, title)| heading(id, title));
    html! {
        <>
            <div class="screen-only sheet">
                { summary::status(job, desk) }
                if sheet.demo { { demo(desk) } }
                <form class="entries">{ head.of(HEAD) }</form>
                { summary::progress(job, onchange) }
                if !sheet.fasteners.is_empty() { { overlay.button("Bolt by bolt, in large type", Route::sheet(&sheet.id)) } }

                { cautions(&[caution::fastener::TIGHTENING_CAN_HURT]) }
                { jumps(PARTS.into_iter()) }
                { on_bolts }
                { bolts(props, portion) }
                { tools_choice(&props.settings) }
                { summary::tools(job) }

                { on_parts }
                { rows(job, onchange, List::Parts, PART, sheet.parts.iter().map(|row| (row.id, Some(row.done)))) }
                { add("add-part", "Add a part", job, List::Parts, onchange) }
                <form class="entries">{ head.of(MONEY) }</form>
                { summary::total(job, true) }

                { on_checks }
                { rows(job, onchange, List::Checks, CHECK, sheet.checks.iter().map(|row| (row.id, Some(row.done)))) }
                { add("add-check", "Add a check", job, List::Checks, onchange) }

                { on_belts }
                { belts(props) }

                { on_due }
                { rows(job, onchange, List::Intervals, INTERVAL, sheet.intervals.iter().map(|row| (row.id, None))) }
                { add("add-interval", "Add an interval", job, List::Intervals, onchange) }
                { summary::due(job, true, false) }

                { on_notes }
                <form class="remarks">
                    <label class="spoken" for="sheet-notes">{ "Notes" }</label>
                    <textarea id="sheet-notes" name="notes" rows="3" maxlength={LONG_TEXT.to_string()} value={pace::shown("sheet-notes", &sheet.notes.clone().into())}
                        oninput={typing(&onset.reform(|text| ("notes", text)))} />
                </form>

                { on_away }
                <Away job={job.clone()} desk={desk.clone()} />
                { cautions(&[caution::RECORD_IS_YOURS]) }
            </div>
            <Spoken words={said(job)} />
            <PaperAtHand {job} />
        </>
    }
}

/// The bolts that are drawn yet, and what adds one.
fn bolts(props: &OpenProps, portion: Portion) -> Html {
    let OpenProps {
        job, desk, onchange, ..
    } = props;
    let rows = &job.sheet.fasteners;
    html! {
        <>
            <ol class={classes!("job-rows", (portion == Portion::Settled).then_some("settled"))}>{ for (0..portion.of(rows.len())).map(|place| html! {
                <FastenerRow key={rows[place].id} job={job.clone()} {place} desk={desk.clone()} onchange={onchange.clone()} />
            }) }</ol>
            <div class="chips">
                { add("add-fastener", "Add a bolt", job, List::Fasteners, onchange) }
                { from_bolt(job, &props.places, onchange) }
            </div>
        </>
    }
}

/// The belt drives, and what attaches one.
fn belts(props: &OpenProps) -> Html {
    let OpenProps { job, onchange, .. } = props;
    let rows = &job.sheet.belts;
    html! {
        <>
            <ol class="job-rows">{ for rows.iter().enumerate().map(|(place, row)| html! {
                <Row key={row.id} job={job.clone()} list={List::Belts} id={row.id} {place} of={rows.len()} fields={BELT} done={None::<bool>} onchange={onchange.clone()}>
                    { open("Open in Belt", Route::parse(&format!("belt?{}", row.query)), None) }
                </Row>
            }) }</ol>
            { from_belt(job, &props.places, onchange) }
        </>
    }
}

/// Rows of a plain list.
fn rows(
    job: &Rc<Job>,
    onchange: &Callback<Change>,
    list: List,
    fields: &'static [Field],
    rows: impl ExactSizeIterator<Item = (u32, Option<bool>)>,
) -> Html {
    let of = rows.len();
    html! {
        <ol class="job-rows">{ for rows.enumerate().map(|(place, (id, done))| html! {
            <Row key={id} job={job.clone()} {list} {id} {place} {of} {fields} {done} onchange={onchange.clone()} />
        }) }</ol>
    }
}

/// A button that adds an empty row at the end of its list.
fn add(id: &'static str, words: &'static str, job: &Rc<Job>, list: List, onchange: &Callback<Change>) -> Html {
    html! {
        <>
            { add_row((id, words), list, job, onchange, move |sheet| NewRow::blank(sheet, list)) }
            { no_room(job, list) }
        </>
    }
}

/// A button that adds a row at the end of its list, where there is room for one.
fn add_row(
    (id, words): (&'static str, &'static str),
    list: List,
    job: &Rc<Job>,
    onchange: &Callback<Change>,
    row: impl Fn(&Sheet) -> NewRow + 'static,
) -> Html {
    let full = is_full(&job.sheet, list);
    let job = job.clone();
    let onclick = onchange.reform(move |_: MouseEvent| {
        Change::Do(Action::Insert {
            at: usize::MAX,
            row: Box::new(row(&job.sheet)),
        })
    });
    Button::chip(words, onclick).id(id).off(full).draw()
}

/// Why nothing can be added to a list that is full.
fn no_room(job: &Job, list: List) -> Html {
    html! {
        if is_full(&job.sheet, list) { <p class="note">{ format!("A sheet has room for {ROWS} of these. Begin another for more.") }</p> }
    }
}

/// Takes over what the Bolt screen shows.
fn from_bolt(job: &Rc<Job>, places: &Places, onchange: &Callback<Change>) -> Html {
    let Some(route) = places.known(Screen::Bolt).filter(|route| !route.values.is_empty()) else {
        return html! {};
    };
    let words = ("add-from-bolt", "Add the bolt from Bolt");
    add_row(words, List::Fasteners, job, onchange, move |sheet| {
        let id = free_id(sheet, List::Fasteners);
        NewRow::Fastener(Fastener::of_bolt(
            id,
            route.values.iter().map(|(key, text)| (key.as_str(), text.as_str())),
        ))
    })
}

/// Takes over what the Belt screen shows.
fn from_belt(job: &Rc<Job>, places: &Places, onchange: &Callback<Change>) -> Html {
    let Some(route) = places.known(Screen::Belt) else {
        return html! { <p class="note">{ "A drive worked out on Belt can be attached here: open Belt first." }</p> };
    };
    let words = ("add-from-belt", "Attach the drive from Belt");
    let row = move |sheet: &Sheet| {
        NewRow::Belt(Belt {
            id: free_id(sheet, List::Belts),
            label: String::new(),
            query: route.query(),
        })
    };
    html! {
        <>
            { add_row(words, List::Belts, job, onchange, row) }
            { no_room(job, List::Belts) }
        </>
    }
}

/// The demo says that it is one, and goes with one tap.
fn demo(desk: &Desk) -> Html {
    let desk = desk.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        let desk = desk.clone();
        spawn_local(async move { desk.remove().await });
    });
    html! {
        <div class="bring bring-tall">
            <p>{ "Demo: an invented van with example figures. No maker’s values." }</p>
            { Button::chip("Remove the demo", onclick).id("remove-demo").draw() }
        </div>
    }
}
