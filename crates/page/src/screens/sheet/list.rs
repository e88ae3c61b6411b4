//! The sheets that are kept: to find, begin, remove, back up and bring in.

use super::carry;
use super::desk::{Desk, use_desk};
use super::shared::begin;
use super::summary;
use super::unreadable::unreadable;
use crate::forms::{hint, typing};
use crate::keep::{self, KeepError, Removed, Shelf, Unreadable};
use crate::pace;
use crate::route::Route;
use crate::settings::SettingsHandle;
use crate::views::bring::Bring;
use crate::views::button::Button;
use crate::views::caution::cautions;
use crate::views::focus::focus;
use shopmath::caution;
use shopmath::sheet::limits::check;
use shopmath::sheet::merge::{Fate, Incoming, preview_among, wanted};
use shopmath::sheet::{Head, Sheet, demo, head};
use shopmath::tools::Tools;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Sheets shown at once; a search finds the others.
const SHOWN: usize = 40;

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    pub(super) settings: SettingsHandle,
    pub(super) desk: Desk,
}

/// What the list knows.
#[derive(Clone, Default, PartialEq)]
struct Known {
    shelf: Option<Rc<Shelf>>,
    /// What went wrong, for the person.
    trouble: Option<String>,
    /// Sheets of a file, not yet brought in.
    coming: Option<Rc<Vec<Incoming>>>,
    /// What has just been done.
    done: Option<String>,
}

enum Step {
    Shelf(Result<Shelf, KeepError>),
    Removed,
    Coming(Option<Rc<Vec<Incoming>>>),
    Trouble(String),
    Done(String),
}

impl Reducible for Known {
    type Action = Step;

    fn reduce(self: Rc<Self>, step: Step) -> Rc<Self> {
        let mut known = (*self).clone();
        match step {
            Step::Shelf(Ok(shelf)) => known.shelf = Some(Rc::new(shelf)),
            Step::Shelf(Err(error)) => {
                known.shelf = Some(Rc::default());
                known.trouble = Some(error.words());
            }
            Step::Removed => known.done = None,
            Step::Coming(coming) => (known.coming, known.trouble, known.done) = (coming, None, None),
            Step::Trouble(words) => (known.trouble, known.done) = (Some(words), None),
            Step::Done(words) => (known.done, known.trouble) = (Some(words), None),
        }
        Rc::new(known)
    }
}

type Steps = UseReducerDispatcher<Known>;

/// The list.
#[component]
pub(super) fn Sheets(props: &Props) -> Html {
    let known = use_reducer(Known::default);
    use_desk(&props.desk);
    let query = use_state(String::new);
    let all = use_state(|| false);
    let tools = props.settings.tools;
    {
        let (steps, desk) = (known.dispatcher(), props.desk.clone());
        use_effect_with((), move |()| {
            spawn_local(async move {
                // What lies on the desk is kept first, or the list would show it as it was.
                desk.clear().await;
                look(&steps).await;
            });
        });
    }
    let steps = known.dispatcher();
    let new = {
        let desk = props.desk.clone();
        Callback::from(move |_: MouseEvent| {
            begin(keep::new_sheet(), tools, desk.clone());
        })
    };
    let Some(shelf) = &known.shelf else {
        return html! { <p class="note">{ "Looking for your sheets…" }</p> };
    };
    let wanted_words = keep::searched(&query);
    let found: Vec<&Head> = shelf
        .heads
        .iter()
        .filter(|kept| head::matches(&kept.words, &wanted_words))
        .collect();
    let count = if *all { found.len() } else { found.len().min(SHOWN) };
    let shown = pace::shown("find", &(*query).clone().into());
    let typed = {
        let query = query.clone();
        typing(&Callback::from(move |text| query.set(text)))
    };
    let more = Callback::from(move |_: MouseEvent| all.set(true));
    html! {
        <div class="sheet">
            <div class="chips">
                { Button::main("New sheet", new).id("new-sheet").draw() }
                { import_button(&steps) }
                if !shelf.heads.is_empty() { { backup_button(&props.desk, &steps) } }
            </div>
            <div role="alert">{ summary::notice(None, &props.desk) }if let Some(words) = &known.trouble { <p class="fault" id="sheets-trouble">{ words }</p> }</div>
            <div role="status">if let Some(words) = &known.done { <p class="note" id="sheets-done">{ words }</p> }</div>
            { erased(shelf) }
            if let Some(gone) = props.desk.removed() { <Bring words={format!("{}: removed.", gone.label)} id="undo" onback={bring_back(&props.desk, &steps)} /> }
            if let Some(coming) = &known.coming { { incoming(coming, &steps) } }
            { backup_note(shelf) }
            if shelf.heads.len() > 1 {
                <div class="field"><label for="find">{ "Find" }</label><div class="field-box">
                    <input id="find" type="search" placeholder={hint(&shown, "machine, bolt, part, note")} value={shown.clone()} oninput={typed} autocomplete="off" enterkeyhint="search" />
                </div></div>
            }
            <ul class="sheets">{ for found.iter().take(count).map(|kept| item(kept, &props.desk, &steps)) }</ul>
            if found.is_empty() && !shelf.heads.is_empty() { <p class="note">{ "No sheet has all these words." }</p> }
            if count < found.len() { { Button::chip(format!("Show all {}", found.len()), more).draw() } }
            if shelf.heads.is_empty() {
                <p>{ "A sheet holds one job: the bolts and what they were tightened to, parts and cost, checks, and when it is next due." }</p>
            }
            if !shelf.heads.iter().any(|kept| kept.demo) { { demo_button(tools, &props.desk) } }
            { for shelf.unreadable.iter().map(|found| broken(found, &props.desk, &steps)) }
            <p class="note">{ "Sheets stay on this device and nowhere else. Some browsers erase a page’s storage after a week without use, unless the page is on the home screen: put it there, and back up after changes." }</p>
            { cautions(&[caution::RECORD_IS_YOURS]) }
        </div>
    }
}

async fn look(steps: &Steps) {
    steps.dispatch(Step::Shelf(keep::shelf().await));
}

/// What the list calls a sheet.
fn title(machine: &str) -> &str {
    if machine.is_empty() { "No machine yet" } else { machine }
}

fn item(kept: &Head, desk: &Desk, steps: &Steps) -> Html {
    let title = title(&kept.machine);
    let state = if kept.complete { "✓ complete" } else { "open" };
    let remove = {
        let (id, label, desk, steps) = (kept.id.clone(), title.to_owned(), desk.clone(), steps.clone());
        Callback::from(move |_: MouseEvent| {
            let (id, label, desk, steps) = (id.clone(), label.clone(), desk.clone(), steps.clone());
            spawn_local(async move { removed(keep::remove(&id).await, &id, label, &desk, &steps).await });
        })
    };
    html! {
        <li key={kept.id.clone()} data-sheet={kept.id.clone()}>
            <a class="sheet-link" href={Route::sheet(&kept.id).print()}>
                <strong>{ title }</strong>
                <span>{ &kept.date }{ if kept.demo { " · demo" } else { "" } }{ format!(" · {} of {} done, {state}", kept.progress.done, kept.progress.of) }</span>
            </a>
            { Button::chip("Remove", remove).name("remove").label(format!("Remove {title}, {}", kept.date)).draw() }
        </li>
    }
}

/// Brings back what was removed, and the keyboard to the top of the list: the button goes.
fn bring_back(desk: &Desk, steps: &Steps) -> Callback<()> {
    let (desk, steps) = (desk.clone(), steps.clone());
    Callback::from(move |()| {
        focus("new-sheet");
        let (desk, steps) = (desk.clone(), steps.clone());
        spawn_local(async move {
            match desk.bring_back().await {
                Ok(()) => {
                    steps.dispatch(Step::Removed);
                    look(&steps).await;
                }
                Err(error) => steps.dispatch(Step::Trouble(error.words())),
            }
        });
    })
}

/// A field for a file that looks like a button; the file is read, not sent.
fn import_button(steps: &Steps) -> Html {
    let steps = steps.clone();
    let onchange = Callback::from(move |event: Event| {
        let field: HtmlInputElement = event.target_unchecked_into();
        let chosen = field.files().and_then(|files| files.get(0));
        let steps = steps.clone();
        if let Some(chosen) = chosen {
            spawn_local(async move {
                let step = match bring(chosen).await {
                    Ok(coming) if coming.is_empty() => Step::Trouble("There is no sheet in this file.".into()),
                    Ok(coming) => Step::Coming(Some(Rc::new(coming))),
                    Err(words) => Step::Trouble(words),
                };
                steps.dispatch(step);
            });
        }
        // So that the same file can be chosen again.
        field.set_value("");
    });
    html! {
        <label class="chip file"><input type="file" id="import-sheet" accept=".json,application/json" {onchange} />{ "Bring in a file" }</label>
    }
}

/// What would become of the sheets of a file. Only those whose names are taken are fetched.
async fn bring(chosen: web_sys::File) -> Result<Vec<Incoming>, String> {
    let coming = carry::import(chosen).await?;
    let words = |error: KeepError| error.words();
    let taken = keep::ids().await.map_err(words)?;
    let here = keep::some(&wanted(&taken, &coming)).await.map_err(words)?;
    Ok(preview_among(&here, &taken, coming))
}

fn incoming(coming: &Rc<Vec<Incoming>>, steps: &Steps) -> Html {
    let line = |coming: &Incoming| {
        let fate = match coming.fate {
            Fate::Added => "new, will be added",
            Fate::Kept => "here already, word for word: stays as it is",
            Fate::Conflict => "differs from the one here: both will be kept",
        };
        let title = if coming.sheet.machine.is_empty() {
            &coming.came_as
        } else {
            &coming.sheet.machine
        };
        html! { <li key={coming.sheet.id.clone()}><strong>{ title }</strong>{ format!(" {}: {fate}", coming.sheet.date) }</li> }
    };
    let add = {
        let (coming, steps) = (coming.clone(), steps.clone());
        Callback::from(move |_: MouseEvent| {
            focus("import-sheet");
            let (coming, steps) = (coming.clone(), steps.clone());
            spawn_local(async move {
                let sheets = coming.iter().filter(|coming| coming.fate != Fate::Kept);
                let sheets: Vec<Sheet> = sheets.map(|coming| coming.sheet.clone()).collect();
                match keep::add(&sheets).await {
                    Ok(()) => {
                        steps.dispatch(Step::Coming(None));
                        let words = match sheets.len() {
                            0 => "Nothing to bring in: all of it is here already.".into(),
                            count => format!("{count} brought in."),
                        };
                        steps.dispatch(Step::Done(words));
                        look(&steps).await;
                    }
                    Err(error) => steps.dispatch(Step::Trouble(error.words())),
                }
            });
        })
    };
    let leave = {
        let steps = steps.clone();
        Callback::from(move |_: MouseEvent| {
            focus("import-sheet");
            steps.dispatch(Step::Coming(None));
        })
    };
    html! {
        <section class="panel" id="incoming">
            <h2>{ "In this file" }</h2>
            <ul>{ for coming.iter().map(line) }</ul>
            <p class="note">{ "Nothing on this device is overwritten." }</p>
            <div class="chips">
                { Button::main("Bring them in", add).id("import-add").draw() }
                { Button::chip("Leave it", leave).id("import-leave").draw() }
            </div>
        </section>
    }
}

fn backup_button(desk: &Desk, steps: &Steps) -> Html {
    let (desk, steps) = (desk.clone(), steps.clone());
    let onclick = Callback::from(move |_: MouseEvent| {
        let (desk, steps) = (desk.clone(), steps.clone());
        spawn_local(async move {
            let step = match back_up(&desk, &steps).await {
                Ok(words) => Step::Done(words),
                Err(words) => Step::Trouble(words),
            };
            steps.dispatch(step);
        });
    });
    Button::chip("Back up all", onclick).id("export-sheet").draw()
}

/// Hands over a file of all sheets. Only where nothing is left out does the reminder begin anew.
async fn back_up(desk: &Desk, steps: &Steps) -> Result<String, String> {
    let words = |error: KeepError| error.words();
    // What no file may hold is no reason to be without all the rest.
    let (unkept, faulty): (Vec<Sheet>, Vec<Sheet>) = desk.unkept().into_iter().partition(|sheet| check(sheet).is_ok());
    let sheets = keep::all(unkept).await.map_err(words)?;
    let made = carry::export(&format!("sheets-{}.json", keep::today()), &sheets);
    made.map_err(|why| ["No backup was made. ", &why].concat())?;
    // One that could not be read is not in the file, and stands in the list as it is now.
    let shelf = keep::shelf().await.map_err(words)?;
    let count = sheets.len();
    let mut done = format!("Backup of {count} handed to the browser. Look that the file is there.");
    let last = |sheet: &Sheet| ["what was typed last on “", title(&sheet.machine), "”"].concat();
    let mut left: Vec<String> = faulty.iter().map(last).collect();
    if !shelf.unreadable.is_empty() {
        left.push(format!("{} that cannot be read, below", shelf.unreadable.len()));
    }
    if left.is_empty() {
        keep::note_backup();
    } else {
        done.extend([" Not in it: ", &left.join("; "), "."]);
    }
    steps.dispatch(Step::Shelf(Ok(shelf)));
    Ok(done)
}

/// The gentle reminder.
fn backup_note(shelf: &Shelf) -> Html {
    let changes = keep::changes_since_backup();
    if shelf.heads.is_empty() || changes == 0 {
        return html! {};
    }
    html! { <p class="note" id="backup-note">{ format!("Changes since the last backup: {changes}. One tap on “Back up all” saves everything as a file.") }</p> }
}

fn erased(shelf: &Shelf) -> Html {
    let Some(count) = shelf.erased else {
        return html! {};
    };
    let here = if count == 1 {
        "was 1 sheet".into()
    } else {
        format!("were {count} sheets")
    };
    html! { <p class="fault" id="sheets-erased">{ format!("The browser has erased this page’s storage: there {here} here. Bring in your last backup. On the home screen the page is safe from this.") }</p> }
}

fn demo_button(tools: Tools, desk: &Desk) -> Html {
    let desk = desk.clone();
    let onclick = Callback::from(move |_: MouseEvent| begin(demo::sheet(), tools, desk.clone()));
    Button::chip("Show a demo sheet", onclick).id("show-demo").draw()
}

/// A record that cannot be read, with a way to remove it unless a newer version wrote it.
fn broken(found: &Unreadable, desk: &Desk, steps: &Steps) -> Html {
    let (key, desk, steps) = (found.key.clone(), desk.clone(), steps.clone());
    let onclick = Callback::from(move |_: MouseEvent| {
        let (key, desk, steps) = (key.clone(), desk.clone(), steps.clone());
        spawn_local(
            async move { removed(keep::remove_unreadable(&key).await, &key, key.clone(), &desk, &steps).await },
        );
    });
    unreadable(
        found,
        html! { if !found.newer { { Button::chip("Remove it", onclick).draw() } } },
    )
}

/// What follows a removal: the list anew, and the way back.
async fn removed(removed: Result<Option<Removed>, KeepError>, id: &str, label: String, desk: &Desk, steps: &Steps) {
    match removed {
        Ok(removed) => {
            desk.note_removed(id, label, removed);
            steps.dispatch(Step::Removed);
            look(steps).await;
        }
        Err(error) => steps.dispatch(Step::Trouble(error.words())),
    }
}
