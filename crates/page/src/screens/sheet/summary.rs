//! What a sheet comes to: how far it is kept, what is open, the tools, the total, what is next due.

use super::desk::Desk;
use super::entries::focus_row;
use super::job::{Change, Job, Status, Touched};
use crate::route::{Route, Screen};
use crate::views::button::Button;
use crate::views::finding::{Finding, amount};
use shopmath::quantity::{Quantity, Unit, print};
use shopmath::result::{Finding as Found, Style};
use shopmath::sheet::Interval;
use shopmath::sheet::assess::Open;
use shopmath::sheet::bolts::TurnedBy;
use shopmath::sheet::due::{self, Due, Missing};
use shopmath::sheet::fields::{At, get};
use shopmath::sheet::kit::What;
use shopmath::sheet::order::List;
use yew::prelude::*;

/// The way back, and whether the sheet is kept as it stands. What goes wrong is read out; that all
/// is well is not, since it changes with every word.
pub(super) fn status(job: &Job, desk: &Desk) -> Html {
    let words = match &job.status {
        Status::Kept => "✓ Saved",
        Status::Changed => "… Saving",
        Status::Trouble(_) => "! Not saved",
        Status::Removed => "! Removed",
    };
    let again = desk.clone();
    let save = Callback::from(move |_: MouseEvent| drop(again.save()));
    html! {
        <>
            <div class="sheet-head">
                <a class="chip" href={Route::bare(Screen::Sheet).print()}>{ "All sheets" }</a>
                <p id="kept" data-kept={matches!(job.status, Status::Kept).to_string()}>{ words }</p>
            </div>
            <div role="alert">
                if let Status::Trouble(words) = &job.status {
                    <div class="fault" id="kept-trouble"><p>{ words }</p>{ Button::chip("Save again", save).draw() }</div>
                }
                { notice(job.notice.clone(), desk) }
            </div>
        </>
    }
}

/// What the person should know of how the sheet came here, and of the one before, until it was read.
pub(super) fn notice(own: Option<String>, desk: &Desk) -> Html {
    let notices: Vec<String> = desk.notice().into_iter().chain(own).collect();
    if notices.is_empty() {
        return html! {};
    }
    let desk = desk.clone();
    let noted = Callback::from(move |_: MouseEvent| desk.noted());
    html! { <div class="bring" id="kept-notice"><p>{ notices.join(" ") }</p>{ Button::chip("Understood", noted).draw() }</div> }
}

/// How many rows are done, what keeps the sheet open, and the last change to take back.
pub(super) fn progress(job: &Job, onchange: &Callback<Change>) -> Html {
    let found = &job.found;
    let complete = found.complete();
    let (done, of) = (found.progress.done, found.progress.of);
    // With the last change the button goes, and the focus to the row that was changed.
    let row = job.last_undo();
    let undo = onchange.reform(move |_: MouseEvent| {
        row.into_iter().for_each(focus_row);
        Change::Undo
    });
    // In sight until something is typed: by then it would be in the way, as it would be over the fields of a
    // row just added.
    let at_hand = matches!(job.touched, Touched::Row | Touched::TakenBack) && job.fresh.is_none();
    html! {
        <div class="progress">
            if of > 0 {
                <progress max={of.to_string()} value={done.to_string()} aria-label="Rows done" />
                <p id="progress" tabindex="-1" data-complete={complete.to_string()}>
                    <strong>{ if complete { "✓ Complete" } else { "Open" } }</strong>{ format!(": {done} of {of} done") }
                </p>
                if !complete { { open(job) } }
            } else {
                <p id="progress" tabindex="-1" data-complete="false">{ "No bolts, parts or checks yet. Add them below." }</p>
            }
            if let Some(words) = job.undo_words() {
                <div class={classes!("undo", at_hand.then_some("undo-at-hand"))}>{ Button::chip(format!("Undo: {words}"), undo).id("undo").draw() }</div>
            }
        </div>
    }
}

/// How many reasons stand in sight: more would push the bolts themselves out of it.
const IN_SIGHT: usize = 5;

/// The reasons that are more than a row not ticked, bolts not replaced first.
fn open(job: &Job) -> Html {
    let named = |list, id, unnamed: &'static str, words: &'static str| {
        let label = get(&job.sheet, At::Row(list, id), "label");
        let label = if label.is_empty() { unnamed } else { label };
        html! { <li key={format!("{unnamed}{id}{words}")}>{ label }{ ": " }{ words }</li> }
    };
    let part = |id| named(List::Parts, id, "A part", "its count or price cannot be read");
    let reason = |open: &Open| {
        let (id, words) = match *open {
            Open::NotReplaced(id) => (id, "single-use and not replaced"),
            Open::ReadingOutside(id) => (id, "a reading is outside target and tolerance"),
            Open::ReadingMissing(id) => (id, "done, but a bolt has no reading and another has"),
            Open::NotRead(id) => (id, "an entry cannot be read"),
            Open::PartNotRead(id) => return Some(part(id)),
            Open::Fastener(_) | Open::Part(_) | Open::Check(_) => return None,
        };
        Some(named(List::Fasteners, id, "A bolt", words))
    };
    let mut open: Vec<&Open> = job.found.open.iter().collect();
    open.sort_by_key(|open| !matches!(open, Open::NotReplaced(_)));
    let mut reasons: Vec<Html> = open.into_iter().filter_map(reason).collect();
    let folded = reasons.split_off(reasons.len().min(IN_SIGHT));
    html! {
        <>
            if !reasons.is_empty() { <ul class="reasons">{ for reasons }</ul> }
            if !folded.is_empty() {
                <details class="more">
                    <summary>{ format!("and {} more", folded.len()) }</summary>
                    <ul class="reasons">{ for folded }</ul>
                </details>
            }
        </>
    }
}

/// Wheel bolts and drain plugs often have another.
const BY_STANDARD: &str = " by the head’s standard; measure";

/// A wrench's size as it is marked on it: `13 mm`, `9/16 in`.
fn size_of(size: &Found) -> String {
    let numbers = size
        .amount
        .ends()
        .map(|(_, width)| print::number(width, size.unit, size.style));
    let number = numbers.collect::<Vec<_>>().concat();
    let unit = print::suffix(&number, size.unit);
    [&*number, &*unit].concat()
}

/// What to lay out.
pub(super) fn tools(job: &Job) -> Html {
    if job.found.tools.is_empty() {
        return html! {};
    }
    let shown = |quantity: Quantity, unit: Unit| print::quantity(quantity, job.tools().unit(unit));
    let tool = |what: &What| match what {
        What::Head(text) => format!("socket or bit {text}"),
        What::Standard(turned_by) => match &**turned_by {
            TurnedBy::Hexagon(size) => ["socket ", &size_of(size), BY_STANDARD].concat(),
            TurnedBy::Key(size) => ["hexagon key ", &size_of(size), BY_STANDARD].concat(),
        },
        What::Drive(text) => format!("square drive {text}"),
        What::TorqueWrench(low, high) if low == high => {
            format!("torque wrench for {}", shown((*low).into(), Unit::NewtonMetre))
        }
        What::TorqueWrench(low, high) => format!(
            "torque wrench from {} to {}",
            shown((*low).into(), Unit::NewtonMetre),
            shown((*high).into(), Unit::NewtonMetre)
        ),
        What::AngleGauge => "angle gauge or protractor".into(),
    };
    html! {
        <div class="tools">
            <h3>{ "Lay out" }</h3>
            <ul>{ for job.found.tools.iter().map(|found| html! { <li>{ tool(&found.what) }</li> }) }</ul>
        </div>
    }
}

/// What the parts cost; the one on the page that others look for carries the id.
pub(super) fn total(job: &Job, identified: bool) -> Html {
    let sheet = &job.sheet;
    if sheet.parts.is_empty() {
        return html! {};
    }
    let Some(total) = job.found.parts_total else {
        return html! { <p class="note">{ "No total until each count and price can be read." }</p> };
    };
    let text = total.text();
    html! {
        <p class="total">
            { "Total " }<data id={identified.then_some("parts-total")} value={text.clone()} data-unit={sheet.currency.clone()}><strong>{ text }{ " " }{ &sheet.currency }</strong></data>
            if job.found.unpriced > 0 { { format!(" ({} without a price)", job.found.unpriced) } }
        </p>
    }
}

/// When each interval is next due, the first by distance as a result: with its working and its id, or
/// as a line of a copy. What is not counted says why. On paper the entries stand with it, as typed.
pub(super) fn due(job: &Job, identified: bool, on_paper: bool) -> Html {
    let (sheet, found) = (&job.sheet, &job.found);
    let next = found.next_due_distance.map(|(id, _)| id);
    let first = next.and_then(|next| sheet.intervals.iter().find(|row| row.id == next));
    let line = |(row, (id, due)): (&Interval, &(u32, Due))| {
        let label = if row.label.trim().is_empty() {
            "Work without a name"
        } else {
            &row.label
        };
        let words = due_words(row, due, &sheet.odometer);
        let typed = if on_paper { typed(row) } else { String::new() };
        let parts = if words.is_empty() { "" } else { ": " };
        let empty = words.is_empty() && typed.is_empty();
        (!empty).then(|| html! { <li key={*id}>{ label }{ typed }{ parts }{ words.join(", ") }</li> })
    };
    let unread = found
        .intervals
        .iter()
        .any(|(_, due)| due.no_reading.is_some_and(|why| why != Missing::LastDone));
    html! {
        <div class="due">
            if let Some(finding) = first.and_then(|row| due::finding(row, &sheet.odometer)) {
                if identified {
                    <Finding unit={finding.unit} {finding} />
                } else {
                    <p>{ amount(&finding, finding.unit, false) }{ " " }{ finding.name }</p>
                }
            }
            if unread { <p class="note">{ "No next reading until each interval by distance can be read." }</p> }
            <ul>{ for sheet.intervals.iter().zip(&found.intervals).filter_map(line) }</ul>
        </div>
    }
}

/// What is said of one interval.
fn due_words(row: &Interval, due: &Due, odometer: &str) -> Vec<String> {
    let unit = due::road_unit(row, odometer);
    let way =
        |length| print::number(Quantity::Length(length), unit, Style::Decimal { step: 1.0 }) + &print::suffix("", unit);
    let days = |count: u64| {
        if count == 1 {
            "1 day".into()
        } else {
            format!("{count} days")
        }
    };
    let mut words = Vec::new();
    words.extend(due.at.map(|at| format!("due at {}", way(at))));
    words.extend(due.left.map(|left| {
        if left.value < 0.0 {
            format!("{} overdue", way(-left))
        } else {
            format!("{} to go", way(left))
        }
    }));
    words.extend(due.on.map(|day| format!("due on {day}")));
    words.extend(due.days_left.map(|left| {
        let count = days(left.unsigned_abs());
        if left < 0 {
            format!("{count} overdue")
        } else {
            format!("{count} to go")
        }
    }));
    for (what, missing) in [("by distance", due.no_reading), ("by time", due.no_day)] {
        words.extend(missing.map(|missing| {
            let why = match missing {
                Missing::Entry => "an entry cannot be read",
                Missing::Odometer => "the odometer cannot be read",
                Missing::LastDone => "when it was last done is missing",
            };
            [what, " not counted: ", why].concat()
        }));
    }
    if due.ahead {
        words.push("last done lies ahead: check the odometer and the day".into());
    }
    if due::is_mixed(row, odometer) {
        words.push("the odometer without a unit taken as km".into());
    }
    words
}

/// The entries of an interval but its name, as typed.
fn typed(row: &Interval) -> String {
    let bare = row.every_days.trim().bytes().all(|byte| byte.is_ascii_digit());
    let entries = [
        (", every ", &row.every_distance, ""),
        (", every ", &row.every_days, if bare { " days" } else { "" }),
        (", last at ", &row.done_at_odometer, ""),
        (", last on ", &row.done_on, ""),
    ];
    let typed = entries.into_iter().filter(|(_, text, _)| !text.trim().is_empty());
    typed
        .flat_map(|(before, text, behind)| [before, text, behind])
        .collect()
}
