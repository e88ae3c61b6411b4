//! A sheet that came in a link: shown to read, kept only when asked to.

use super::carry;
use super::desk::Desk;
use super::job::Job;
use super::paper::paper;
use crate::keep;
use crate::route::{Route, Screen};
use crate::settings::SettingsHandle;
use crate::views::button::Button;
use shopmath::sheet::Sheet;
use shopmath::tools::Tools;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    pub(super) payload: AttrValue,
    pub(super) settings: SettingsHandle,
    pub(super) desk: Desk,
}

/// The preview. Each link has its own; it is drawn once the browser has unpacked it.
#[component]
pub(super) fn Shared(props: &Props) -> Html {
    let read = use_state(|| None::<Result<Sheet, String>>);
    {
        let read = read.clone();
        use_effect_with(props.payload.clone(), move |payload| {
            let payload = payload.clone();
            spawn_local(async move { read.set(Some(carry::unpack(&payload).await)) });
        });
    }
    let tools = props.settings.tools;
    let job = use_memo((read.is_some(), tools), |(_, tools)| {
        let sheet = read.as_ref()?.as_ref().ok()?;
        Some(Job::new(sheet.clone(), *tools, &keep::today()))
    });
    let list = html! { <a class="chip" href={Route::bare(Screen::Sheet).print()}>{ "All sheets" }</a> };
    let job = match (&*read, &*job) {
        (_, Some(job)) => job,
        (Some(Err(words)), _) => {
            return html! { <section class="unbuilt"><p class="fault" id="link-error" role="alert">{ words.clone() }</p>{ list }</section> };
        }
        _ => return html! {},
    };
    let onclick = {
        let (sheet, desk) = ((*job.sheet).clone(), props.desk.clone());
        Callback::from(move |_: MouseEvent| keep_copy(sheet.clone(), tools, desk.clone()))
    };
    html! {
        <>
            <div class="bring bring-tall screen-only" role="status">
                <p>{ "A shared sheet, shown to read. It is not kept on this device yet. Check its figures against the vehicle maker’s before you use them." }</p>
                { Button::main("Keep a copy", onclick).id("save-copy").draw() }
            </div>
            <div class="screen-only">{ list }</div>
            <div class="paper-preview">{ paper(job, true) }</div>
        </>
    }
}

/// Keeps a sheet under a new name and opens it there.
pub(super) fn keep_copy(sheet: Sheet, tools: Tools, desk: Desk) {
    let sheet = Sheet {
        id: keep::new_id(),
        rev: 0,
        updated: String::new(),
        demo: false,
        ..sheet
    };
    begin(sheet, tools, desk);
}

/// Keeps a new sheet and opens it.
pub(super) fn begin(sheet: Sheet, tools: Tools, desk: Desk) {
    spawn_local(async move {
        let id = sheet.id.clone();
        desk.begin(sheet, tools).await;
        crate::link::go(None, &Route::sheet(&id));
    });
}
