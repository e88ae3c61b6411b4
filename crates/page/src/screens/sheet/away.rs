//! What leaves a sheet: paper, files, a copy to work on, a link and a code.

use super::carry;
use super::desk::Desk;
use super::job::Job;
use super::share::LinkAndCode;
use crate::views::button::Button;
use shopmath::sheet::{Sheet, csv};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct Props {
    pub(super) job: Rc<Job>,
    pub(super) desk: Desk,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.job.sheet, &other.job.sheet) && self.desk == other.desk
    }
}

/// The buttons, what became of a file, and below them the link and the code while they are wanted.
#[component]
pub(super) fn Away(props: &Props) -> Html {
    let shared = use_state(|| false);
    let handed = use_state(|| None::<Result<String, String>>);
    let Props { job, desk } = props;
    let file = |id: &'static str, words: &'static str, name: &str, hand: fn(&str, &Sheet) -> Result<(), String>| {
        let (job, name, handed) = (job.clone(), [&job.sheet.id, "-", name].concat(), handed.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            let done = hand(&name, &job.sheet).map(|()| carry::handed(&name));
            handed.set(Some(done));
        });
        Button::chip(words, onclick).id(id).draw()
    };
    let print = Callback::from(|_: MouseEvent| carry::print());
    let copy = {
        let (job, desk) = (job.clone(), desk.clone());
        Callback::from(move |_: MouseEvent| super::shared::keep_copy((*job.sheet).clone(), job.tools(), desk.clone()))
    };
    let share = {
        let shared = shared.clone();
        Callback::from(move |_: MouseEvent| shared.set(!*shared))
    };
    let (done, trouble) = match &*handed {
        None => ("", ""),
        Some(Ok(words)) => (words.as_str(), ""),
        Some(Err(words)) => ("", words.as_str()),
    };
    html! {
        <>
            <div class="chips">
                { Button::chip("Print", print).id("print-sheet").draw() }
                { file("export-sheet", "Save as a file", "sheet.json", |name, sheet| carry::export(name, std::slice::from_ref(sheet))) }
                { file("export-bolts", "Bolts as a table (CSV)", "bolts.csv", |name, sheet| carry::table(name, &csv::fasteners(sheet))) }
                { file("export-parts", "Parts as a table (CSV)", "parts.csv", |name, sheet| carry::table(name, &csv::parts(sheet))) }
                { Button::chip("Make a copy", copy).id("save-copy").draw() }
            </div>
            <div role="status">if !done.is_empty() { <p class="note" id="handed">{ done.to_owned() }</p> }</div>
            <div role="alert">if !trouble.is_empty() { <p class="fault" id="not-handed">{ trouble.to_owned() }</p> }</div>
            <button type="button" class="chip" id="share-sheet" aria-expanded={shared.to_string()} onclick={share}>{ "Share by link or code" }</button>
            if *shared { <LinkAndCode job={job.clone()} /> }
        </>
    }
}
