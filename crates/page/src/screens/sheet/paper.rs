//! The sheet to read or print: inputs, units, results, sources, version and day. Nothing on it can
//! be changed.

use super::entries::open;
use super::fastener::set;
use super::job::Job;
use super::summary;
use crate::keep;
use crate::route::Route;
use crate::views::finding::{amount, classed};
use crate::views::verdict::sign;
use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use gloo::utils::window;
use shopmath::result::Finding;
use shopmath::sheet::bolts::FastenerAssessment;
use shopmath::sheet::{Belt, Fastener};
use shopmath::source::{Source, fastener::TIGHTENING};
use std::rc::Rc;
use yew::prelude::*;

/// How long a sheet rests before its paper is drawn, milliseconds.
const REST: u32 = 250;

/// A job, the same only if it is the very one.
#[derive(Clone, Properties)]
pub(super) struct Props {
    pub(super) job: Rc<Job>,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.job, &other.job)
    }
}

/// The paper that lies ready out of sight, as Firefox lets nothing be drawn between the word to
/// print and the print. A sheet is long, so it is not drawn at every keystroke but once nothing has
/// been typed for a moment; one that is behind is not printed.
#[component]
pub(super) fn PaperAtHand(props: &Props) -> Html {
    let drawn = use_state(|| None::<Props>);
    let setter = drawn.setter();
    use_effect_with(props.clone(), move |props| {
        let draw = {
            let props = props.clone();
            move || setter.set(Some(props.clone()))
        };
        let at_once = draw.clone();
        let asked = EventListener::new(&window(), "beforeprint", move |_| at_once());
        let rest = Timeout::new(REST, draw);
        move || drop((asked, rest))
    });
    let behind = drawn.as_ref() != Some(props);
    html! {
        <div class={if behind { "print-behind" } else { "print-only" }}>
            if let Some(props) = &*drawn { <Drawn ..props.clone() /> }
        </div>
    }
}

#[component]
fn Drawn(props: &Props) -> Html {
    // The bench is on the page as well, and its results have their ids.
    paper(&props.job, false)
}

/// The sheet. Where it is alone on the page, its results carry their ids.
pub(super) fn paper(job: &Job, alone: bool) -> Html {
    let (sheet, found) = (&*job.sheet, &*job.found);
    let fact = |name: &str, text: &str| {
        (!text.is_empty()).then(|| html! { <><dt>{ name.to_owned() }</dt><dd>{ text.to_owned() }</dd></> })
    };
    let complete = if found.complete() { "complete" } else { "open" };
    html! {
        <article class="paper">
            <h2>{ if sheet.machine.is_empty() { "Job sheet" } else { &sheet.machine } }</h2>
            if sheet.demo { <p>{ "Demo: an invented machine with example figures." }</p> }
            <dl>
                { for fact("Odometer", &sheet.odometer) }
                { for fact("Date", &sheet.date) }
                <dt>{ "Rows" }</dt><dd>{ format!("{} of {} done, {complete}", found.progress.done, found.progress.of) }</dd>
            </dl>
            if !sheet.fasteners.is_empty() {
                <table class="paper-bolts">
                    <caption>{ "Bolts" }</caption>
                    <thead><tr><th><span class="spoken">{ "Done" }</span></th><th>{ "Bolt" }</th><th>{ "Spec" }</th><th>{ "As tightened" }</th></tr></thead>
                    <tbody>{ for sheet.fasteners.iter().zip(&found.fasteners).map(|(row, found)| bolt(row, found, alone)) }</tbody>
                </table>
                { summary::tools(job) }
            }
            if !sheet.parts.is_empty() {
                { table("Parts", ["Part", "How many", "Price of one"], sheet.parts.iter().map(|row| (row.done, [&row.label, &row.count, &row.price])).collect()) }
                { summary::total(job, alone) }
            }
            if !sheet.checks.is_empty() {
                { table("Checks", ["Check", "Before", "After"], sheet.checks.iter().map(|row| (row.done, [&row.label, &row.before, &row.after])).collect()) }
            }
            if !sheet.belts.is_empty() { <h3>{ "Belt drives" }</h3><ul>{ for sheet.belts.iter().map(|row| belt(row, alone)) }</ul> }
            if !sheet.intervals.is_empty() { <h3>{ "Next due" }</h3>{ summary::due(job, alone, true) } }
            if !sheet.notes.is_empty() { <h3>{ "Notes" }</h3><p class="lines">{ &sheet.notes }</p> }
            { sources(job) }
            <p class="paper-foot">{ format!("Fenderside {}, {}. The vehicle maker’s procedure decides; single-use bolts are replaced.", env!("CARGO_PKG_VERSION"), keep::today()) }</p>
        </article>
    }
}

/// A belt drive by its name and its belt's; on the screen with a way to it.
fn belt(row: &Belt, alone: bool) -> Html {
    let drive = Route::parse(&["belt?", &row.query].concat());
    let label = if row.label.trim().is_empty() {
        "Drive without a name"
    } else {
        &row.label
    };
    html! {
        <li>
            { label }
            { for drive.value("belt").map(|name| [", belt ", name].concat()) }
            if alone { <div class="screen-only">{ open("Open in Belt", drive, None) }</div> }
        </li>
    }
}

/// A table of plain rows, each with its tick.
fn table(caption: &'static str, heads: [&'static str; 3], rows: Vec<(bool, [&String; 3])>) -> Html {
    let row = |(ticked, cells): &(bool, [&String; 3])| {
        html! { <tr><td>{ done(*ticked) }</td>{ for cells.iter().map(|cell| html! { <td>{ *cell }</td> }) }</tr> }
    };
    html! {
        <table>
            <caption>{ caption }</caption>
            <thead><tr><th><span class="spoken">{ "Done" }</span></th>{ for heads.iter().map(|head| html! { <th>{ *head }</th> }) }</tr></thead>
            <tbody>{ for rows.iter().map(row) }</tbody>
        </table>
    }
}

fn done(done: bool) -> &'static str {
    if done { "✓" } else { "☐" }
}

fn bolt(row: &Fastener, found: &FastenerAssessment, alone: bool) -> Html {
    let count = if row.count.is_empty() { "1" } else { &row.count };
    let setting = found.setting.as_ref().filter(|_| row.bolt.contains_key("adapter"));
    let judged = |deviation: &Finding| match alone {
        true => classed(deviation, deviation.unit, "deviation"),
        false => amount(deviation, deviation.unit, false),
    };
    let reading = |(typed, read): (&String, &shopmath::sheet::bolts::Reading)| {
        html! { <span class="read">{ typed }
        // The unit follows the spec, so it stands beside the number.
        if read.bare { { " " }{ found.reading_unit.symbol() } }
        { for read.deviation.iter().map(|deviation| html! { <>{ " (" }{ judged(deviation) }{ ")" }</> }) }
        if read.outside { { " ✕ outside" } } else if read.fault.is_some() { { " ✕ cannot be read" } }</span> }
    };
    let replaced = match (row.single_use, row.replaced) {
        (true, true) => "Single-use, replaced.",
        (true, false) => "Single-use, NOT replaced.",
        (false, _) => "",
    };
    html! {
        <tr key={row.id}>
            <td>{ done(row.done) }</td>
            <td>{ &row.label }<br />{ format!("{count} × {} {}", row.thread, row.class) }</td>
            <td>
                { &row.spec }
                if !found.spec.is_empty() { <br />{ for found.spec.iter().map(|stage| html! { <span class="stage">{ amount(stage, stage.unit, false) }</span> }) } }
                if let Some(setting) = setting { <br />{ "Set with the adapter: " }{ set(found, setting) } }
                if let Some(verdict) = &found.verdict { <br />{ sign(verdict) }{ " " }{ &verdict.sentence } }
            </td>
            <td class={(!row.readings.is_empty()).then_some("tightened")}>{ for row.readings.iter().zip(&found.readings).map(reading) }{ " " }{ replaced }</td>
        </tr>
    }
}

/// Every source that a number on the paper rests on, once.
fn sources(job: &Job) -> Html {
    let of = |finding: &Finding| finding.working.sources().collect::<Vec<_>>();
    let mut all: Vec<Source> = Vec::new();
    let mut note = |source: Source| {
        if !all.contains(&source) {
            all.push(source);
        }
    };
    for (typed, row) in job.sheet.fasteners.iter().zip(&job.found.fasteners) {
        let setting = row.setting.iter().filter(|_| typed.bolt.contains_key("adapter"));
        row.spec.iter().chain(setting).flat_map(of).for_each(&mut note);
        row.readings
            .iter()
            .flat_map(|reading| &reading.deviation)
            .flat_map(of)
            .for_each(&mut note);
        if row.verdict.is_some() {
            note(TIGHTENING);
        }
    }
    let line = |source: &Source| html! { <li>{ source.cited() }</li> };
    if all.is_empty() {
        return html! {};
    }
    html! { <><h3>{ "Sources" }</h3><ul>{ for all.iter().map(line) }</ul></> }
}
