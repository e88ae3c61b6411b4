//! A row of bolts: what was typed, the spec in the user's units, the verdict, the readings.

use super::desk::Desk;
use super::entries::{Entries, open, row_buttons, row_name, row_tick, use_focus, use_onset};
use super::job::{Change, Job};
use crate::route::{Route, Screen};
use crate::views::caution::caution;
use crate::views::field::Field as View;
use crate::views::finding::{amount, classed};
use crate::views::fold::use_fold;
use crate::views::verdict::{sentence, sign};
use shopmath::caution::fastener::{MARKED_SINGLE_USE, TIGHTENING_CAN_HURT};
use shopmath::fastener::bolt::field;
use shopmath::field::{Choice, Field, Reads};
use shopmath::quantity::Kind;
use shopmath::result::Finding;
use shopmath::sheet::bolts::FastenerAssessment;
use shopmath::sheet::fields::{At, FASTENER, FASTENER_MORE, get, reading_fields, readings_beyond};
use shopmath::sheet::limits::TEXT;
use shopmath::sheet::order::{List, Tick};
use shopmath::sheet::{Fastener, Sheet};
use std::rc::Rc;
use yew::prelude::*;

/// What the fold of a row holds.
const MORE: &str = "Tools, adapter, grip";
/// Readings have no common entries.
const NONE: &[Choice] = &[];

#[derive(Properties)]
pub(super) struct Props {
    pub(super) job: Rc<Job>,
    pub(super) place: usize,
    pub(super) desk: Desk,
    pub(super) onchange: Callback<Change>,
}

impl Props {
    fn row(&self) -> Option<(&Fastener, &Rc<FastenerAssessment>)> {
        let row = self.job.sheet.fasteners.get(self.place)?;
        Some((row, self.job.found.fasteners.get(self.place)?))
    }
}

impl PartialEq for Props {
    /// A row is drawn again only when it, its place or the tools change.
    fn eq(&self, other: &Self) -> bool {
        let (Some((row, found)), Some((other_row, other_found))) = (self.row(), other.row()) else {
            return false;
        };
        let count = |props: &Self| props.job.sheet.fasteners.len();
        Rc::ptr_eq(found, other_found)
            && row == other_row
            && self.place == other.place
            && count(self) == count(other)
            && self.job.tools() == other.job.tools()
            && self.desk == other.desk
            && self.onchange == other.onchange
    }
}

/// The row.
#[component]
pub(super) fn FastenerRow(props: &Props) -> Html {
    let id = props.row().map_or(0, |(row, _)| row.id);
    let at = At::Row(List::Fasteners, id);
    let onset = use_onset(at, &props.onchange);
    let name = row_name(List::Fasteners, id);
    use_focus(props.job.fresh == Some((List::Fasteners, id)), &name);
    let wrong = |field: &Field| {
        let found = props.row().map(|(_, found)| found);
        found.is_some_and(|found| found.faults.iter().any(|fault| fault.key == field.key))
    };
    let more = use_fold(FASTENER_MORE.iter().any(wrong));
    let Some((row, found)) = props.row() else {
        return html! {};
    };
    let entries = Entries {
        job: &props.job,
        at,
        row: name.clone().into(),
        wrong: found.faults.clone(),
        onset: &onset,
    };
    let box_of = |of, words, on| row_tick((List::Fasteners, id), &name, words, (of, on), &props.onchange);
    html! {
        <li class="job-row" id={name.clone()} data-fastener={id.to_string()}>
            <form class="entries">{ entries.of(FASTENER) }</form>
            { answer(row, found, &props.desk) }
            { readings(row, found, &props.onchange) }
            <div class="ticks">
                { box_of(Tick::SingleUse, ("replace", "Single-use: replace"), row.single_use) }
                if row.single_use { { box_of(Tick::Replaced, ("replaced", "New one fitted"), row.replaced) } }
            </div>
            if row.single_use && !row.replaced { { caution(&MARKED_SINGLE_USE) } }
            if found.single_use_likely { <p class="note">{ "A torque and an angle usually mean a single-use bolt. Tick it if the vehicle maker says so." }</p> }
            { more.draw(Some("more"), tools(&props.job.sheet, at).into(), || html! { <form class="entries">{ entries.of(FASTENER_MORE) }</form> }) }
            <div class="row-foot">
                { box_of(Tick::Done, ("done", "Done"), row.done) }
                { row_buttons((List::Fasteners, id), props.place, props.job.sheet.fasteners.len(), &props.onchange) }
            </div>
        </li>
    }
}

/// What the fold holds, with what was typed there.
fn tools(sheet: &Sheet, at: At) -> String {
    let typed = FASTENER_MORE
        .iter()
        .map(|field| (field.label, get(sheet, at, field.key)));
    let typed = typed.filter(|(_, text)| !text.trim().is_empty());
    let mut words = String::from(MORE);
    for (place, (label, text)) in typed.enumerate() {
        words.extend([if place == 0 { ": " } else { ", " }, label, " ", text]);
    }
    words
}

/// The spec in the user's units, the setting through an adapter, and the verdict.
fn answer(row: &Fastener, found: &FastenerAssessment, desk: &Desk) -> Html {
    let (id, desk) = (row.id, desk.clone());
    let lend = Callback::from(move |()| desk.lend(id));
    let stages = found
        .spec
        .iter()
        .map(|stage| html! { <span class="stage">{ amount(stage, stage.unit, false) }</span> });
    let adapter = row.bolt.contains_key("adapter");
    html! {
        <div class="row-answer">
            if !found.spec.is_empty() { <p class="row-spec">{ for stages }</p> }
            if let Some(read) = &found.read_as { <p class="note">{ "Read as " }{ read }{ "." }</p> }
            if let Some(setting) = found.setting.as_ref().filter(|_| adapter) {
                <p>{ "Set the wrench to " }<strong>{ set(found, setting) }</strong></p>
            }
            if let Some(verdict) = &found.verdict {
                <p class="row-verdict" data-verdict={verdict.slug.id()}>{ sign(verdict) }{ " " }{ sentence(verdict) }</p>
            }
            { waits(found) }
            { open("Open in Bolt", bolt_route(row), Some(lend)) }
            { for found.cautions.iter().filter(|words| words.slug != TIGHTENING_CAN_HURT.slug).map(caution) }
        </div>
    }
}

/// What a verdict waits for, once there is a spec to judge, and where to give it.
fn waits(found: &FastenerAssessment) -> Html {
    let wanted = found.waiting.iter().filter_map(|key| field::of(key));
    let wanted: Vec<String> = wanted
        .map(|wanted| {
            let within = |fields: &[Field]| fields.iter().any(|field| field.key == wanted.key);
            if within(FASTENER) {
                wanted.label.to_owned()
            } else if within(FASTENER_MORE) {
                [wanted.label, ", under “", MORE, "” below"].concat()
            } else {
                [wanted.label, ", in Bolt"].concat()
            }
        })
        .collect();
    if found.verdict.is_some() || found.spec.is_empty() || wanted.is_empty() {
        return html! {};
    }
    html! { <p class="note">{ "For a verdict give: " }{ wanted.join("; ") }{ "." }</p> }
}

/// What to set a wrench to: in the unit of the spec, in which a bare reading is too, and in that of the
/// torque it stands beside, where that is another.
pub(super) fn set(found: &FastenerAssessment, setting: &Finding) -> Html {
    let mut units = found.spec.iter().map(|stage| stage.unit);
    let beside = units.find(|unit| unit.kind() == Kind::Torque && *unit != setting.unit);
    html! {
        <>
            { amount(setting, setting.unit, false) }
            if let Some(other) = beside { { " (" }{ amount(setting, other, false) }{ ")" } }
        </>
    }
}

/// The Bolt screen with the row filled in.
pub(super) fn bolt_route(row: &Fastener) -> Route {
    let mut route = Route::bare(Screen::Bolt);
    for (key, typed) in row.bolt_text().typed() {
        route.set(key, typed.to_owned());
    }
    route
}

/// One field a bolt, as far as they are filled, and the next one.
pub(super) fn readings(row: &Fastener, found: &FastenerAssessment, onchange: &Callback<Change>) -> Html {
    let shown = reading_fields(row, found.count);
    let several = shown > 1;
    let reading = |index: usize| {
        let id = row.id;
        let onset = onchange.reform(move |(_, text)| Change::Reading(id, index, text));
        let read = found.readings.get(index);
        let wrong = read.and_then(|read| read.fault.clone()).into_iter().collect::<Vec<_>>();
        // An angle is read by no torque wrench.
        let of = if found.turns {
            "Reading before the angle"
        } else {
            "Reading"
        };
        let label = if several {
            AttrValue::from(format!("{of}, bolt {}", index + 1))
        } else if found.turns {
            AttrValue::Static(of)
        } else {
            AttrValue::Static("Reading as tightened")
        };
        let text = row.readings.get(index).cloned().unwrap_or_default();
        let outside = read.is_some_and(|read| read.outside);
        html! {
            <div class="reading" key={index}>
                <View name="reading" row={format!("{}-{index}", row_name(List::Fasteners, id))} {label} unit={Reads::Value(found.reading_unit).assumed(&text)} {text} empty={found.reading_unit.symbol()} most={TEXT} closed=false entries={NONE} {wrong} {onset} />
                if let Some(deviation) = read.and_then(|read| read.deviation.as_ref()) {
                    <p class={classes!("judged", outside.then_some("outside"))}>
                        { if outside { "✕ outside " } else { "✓ within " } }{ classed(deviation, deviation.unit, "deviation") }
                        if read.is_some_and(|read| read.bare) { { ", read in " }{ found.reading_unit.symbol() } }
                    </p>
                }
            </div>
        }
    };
    let beyond = readings_beyond(row, found.count);
    html! {
        // In the form the note would be a part of the list, whose other parts it would put in disorder.
        <>
            <form class="readings">{ for (0..shown).map(reading) }</form>
            if beyond > 0 { <p class="note">{ format!("Readings beyond the count of bolts: {beyond}. Raise the count or clear them.") }</p> }
        </>
    }
}
