//! The bolts of a sheet one by one in large type, to read and tick at arm's length.

use super::entries::row_tick;
use super::fastener::readings;
use super::job::{Change, Job};
use crate::views::button::Button;
use crate::views::caution::caution;
use crate::views::large::{adapter, stages};
use crate::views::overlay::Overlay;
use shopmath::caution::fastener::MARKED_SINGLE_USE;
use shopmath::sheet::order::{Action, List, Tick};
use yew::prelude::*;

/// The bolt at `step`; the view replaces the screen until it is closed.
pub(super) fn steps(job: &Job, step: &UseStateHandle<usize>, onchange: &Callback<Change>, overlay: &Overlay) -> Html {
    let count = job.sheet.fasteners.len();
    let place = (**step).min(count.saturating_sub(1));
    let (Some(row), Some(found)) = (job.sheet.fasteners.get(place), job.found.fasteners.get(place)) else {
        return html! { <section class="large">{ overlay.closer() }</section> };
    };
    let to = |place: Option<usize>| {
        let step = step.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(place) = place {
                step.set(place);
            }
        })
    };
    let (before, after) = (place.checked_sub(1), place.checked_add(1).filter(|next| *next < count));
    let done = {
        let (id, on, onchange, step) = (row.id, !row.done, onchange.clone(), step.clone());
        Callback::from(move |_: MouseEvent| {
            onchange.emit(Change::Do(Action::Tick {
                list: List::Fasteners,
                id,
                tick: Tick::Done,
                on,
            }));
            if let (true, Some(next)) = (on, after) {
                step.set(next);
            }
        })
    };
    let through_adapter = row.bolt.contains_key("adapter");
    html! {
        <section class="large screen-only" data-step={(place + 1).to_string()}>
            <p class="large-name">{ format!("Bolt {} of {count}", place + 1) }{ if row.done { ", ✓ done" } else { "" } }</p>
            <p class="large-bolt">{ &row.label }{ " " }{ &row.thread }{ " " }{ &row.class }{ if row.count.is_empty() { String::new() } else { format!(" × {}", row.count) } }</p>
            if found.spec.is_empty() { <p>{ "No spec that can be read stands in this row." }</p><p class="large-other">{ &row.spec }</p> }
            { for found.setting.iter().filter(|_| through_adapter).map(|setting| adapter(setting, job.tools())) }
            { stages(&row.bolt_text().stages(), through_adapter, job.tools()) }
            { Button::wide(if row.done { "Not done after all" } else { "Done" }, done).id("step-done").draw() }
            <div class="pad">
                { Button::chip("Back", to(before)).id("step-back").off(before.is_none()).draw() }
                { Button::chip("Next", to(after)).id("step-next").off(after.is_none()).draw() }
            </div>
            { readings(row, found, onchange) }
            if row.single_use { { row_tick((List::Fasteners, row.id), "step", ("replaced", "New one fitted"), (Tick::Replaced, row.replaced), onchange) } }
            if row.single_use && !row.replaced { { caution(&MARKED_SINGLE_USE) } }
            { overlay.closer() }
        </section>
    }
}
