//! Belt: pulleys to a belt one can order, a route to check by eye, a judgement on tension and wear.
//!
//! `route` is the drawing one can drag with the length it has, `panel` works on one pulley, `section` shows findings.
//! What was typed is the state; the rest comes from the core.

mod panel;
mod route;
mod section;

use crate::link::{Places, use_link};
use crate::route::{Route, Screen};
use crate::scroll;
use crate::settings::SettingsHandle;
use crate::views::bring::Bring;
use crate::views::button::Button;
use crate::views::caution::{caution, cautions};
use crate::views::focus::{focus, into_sight};
use crate::views::settings::tools_choice;
use crate::views::spoken::Spoken;
use panel::Panel;
use route::RouteView;
use shopmath::drive::bench::drawing::Disc;
use shopmath::drive::bench::edit::{Edit, apply, bring_back};
use shopmath::drive::bench::entry::PulleyEntry;
use shopmath::drive::bench::{self, Bench, DriveText, assess, resolve};
use std::rc::Rc;
use yew::prelude::*;

/// The way back, on the page.
const BRING: &str = "bring-back";

#[derive(Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
}

impl PartialEq for Props {
    /// A link followed twice is a new route each time: the drive may have been changed in between.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.route, &other.route) && self.places == other.places && self.settings == other.settings
    }
}

/// What was typed, and which pulley is worked on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Drive {
    text: DriveText,
    chosen: Option<usize>,
    /// Grows when another pulley is taken to work on: its panel begins afresh.
    panel: u32,
    /// Grows when the drive changes other than by typing: what was typed in the panel gives way.
    settled: u32,
    /// The panel's fields whose text cannot be used: no number may rest on what the drive has there.
    unread: Vec<PulleyEntry>,
    undo: Option<Undo>,
}

/// What a button brings back.
#[derive(Clone, Debug, PartialEq)]
enum Undo {
    /// A pulley, from the drive as it was before.
    Pulley {
        index: usize,
        name: String,
        before: DriveText,
    },
    /// A tensioner that was taken away or is another one now.
    Tensioner(String),
    /// A whole drive that another one has replaced, and what is said of that.
    Drive(DriveText, &'static str),
}

/// What a person does to the drive.
pub(super) enum Action {
    /// Typed into a field.
    Set(&'static str, String),
    /// Changed a pulley on the drawing or by a button.
    Edit(Edit),
    /// Typed into the panel of a pulley: the change, or none where the text cannot be used.
    Typed(PulleyEntry, Option<Edit>),
    /// Took another pulley to work on, or none.
    Choose(Option<usize>),
    /// Put another drive in place.
    Replace(DriveText),
    /// Brought back what was removed or replaced.
    Undo,
    /// A link, a bookmark or the back button brought a drive.
    Follow(Rc<Route>),
}

impl Reducible for Drive {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let mut drive = (*self).clone();
        match action {
            Action::Set(key, typed) => {
                if key == "pulleys" {
                    drive.settled = drive.settled.wrapping_add(1);
                    drive.unread.clear();
                }
                drive.text.set(key, &typed);
            }
            Action::Edit(edit) => {
                drive.settled = drive.settled.wrapping_add(1);
                drive.unread.clear();
                drive.edit(&edit);
            }
            Action::Typed(own, edit) => {
                drive.unread.retain(|known| *known != own);
                match edit {
                    Some(edit) => drive.edit(&edit),
                    None => drive.unread.push(own),
                }
            }
            Action::Choose(chosen) => drive.choose(chosen),
            Action::Replace(text) => {
                drive.choose(None);
                let words = match (text == DriveText::demo(), drive.text == DriveText::demo()) {
                    (true, _) => "The demo drive is shown. Yours is put away.",
                    (_, true) => "Your own drive is begun. The demo is put away.",
                    _ => "A new drive is begun. The one before is put away.",
                };
                drive.undo = Some(Undo::Drive(core::mem::replace(&mut drive.text, text), words));
            }
            Action::Undo => drive.undo(),
            Action::Follow(route) => drive.follow(of_route(&route)),
        }
        if *self == drive { self } else { Rc::new(drive) }
    }
}

impl Drive {
    fn of(text: DriveText) -> Self {
        Self {
            text,
            chosen: None,
            panel: 0,
            settled: 0,
            unread: Vec::new(),
            undo: None,
        }
    }

    /// Takes another pulley to work on: what was typed about the one before is gone with its panel.
    fn choose(&mut self, chosen: Option<usize>) {
        if self.chosen != chosen {
            self.chosen = chosen;
            self.panel = self.panel.wrapping_add(1);
            self.unread.clear();
        }
    }

    /// The entries of a pulley in which something typed cannot be used.
    fn stale(&self) -> Vec<(usize, PulleyEntry)> {
        let of = |pulley| self.unread.iter().map(move |entry| (pulley, *entry));
        self.chosen.into_iter().flat_map(of).collect()
    }

    fn edit(&mut self, edit: &Edit) {
        let Some(text) = apply(&self.text, edit) else {
            return;
        };
        match *edit {
            Edit::Reorder { to, .. } => self.chosen = Some(to),
            // The first one of all comes after none.
            Edit::AddAfter(_) if is_bare(&self.text) => self.chosen = Some(0),
            Edit::AddAfter(pulley) => self.chosen = pulley.checked_add(1),
            Edit::Remove(index) => {
                let discs = assess(resolve(&self.text)).drawing.discs;
                let name = discs.get(index).map(|disc| disc.name.clone()).unwrap_or_default();
                let before = self.text.clone();
                self.undo = Some(Undo::Pulley { index, name, before });
                self.chosen = None;
            }
            Edit::Hold(_) | Edit::Release => {
                let before = self.text.get("tensioner").unwrap_or_default();
                if !before.trim().is_empty() {
                    self.undo = Some(Undo::Tensioner(before.into()));
                }
            }
            _ => {}
        }
        self.text = text;
    }

    fn undo(&mut self) {
        match self.undo.take() {
            Some(Undo::Pulley { index, before, .. }) => {
                if let Some(text) = bring_back(&self.text, &before, index) {
                    self.text = text;
                    // The panel begins afresh, even where it shows another pulley of that number.
                    self.choose(None);
                    self.choose(Some(index));
                }
            }
            Some(Undo::Tensioner(text)) => {
                self.settled = self.settled.wrapping_add(1);
                self.text.set("tensioner", &text);
            }
            Some(Undo::Drive(text, _)) => {
                self.text = text;
                self.choose(None);
            }
            None => {}
        }
    }

    /// Takes over the drive of an address, unless it is the one at hand.
    fn follow(&mut self, text: DriveText) {
        if to_route(&self.text) != to_route(&text) {
            *self = Self::of(text);
        }
    }
}

/// Whether there is no pulley yet.
fn is_bare(text: &DriveText) -> bool {
    text.get("pulleys").is_some_and(|list| list.trim().is_empty())
}

fn of_route(route: &Route) -> DriveText {
    DriveText::from_link(route.values.iter().map(|(key, text)| (key.as_str(), text.as_str())))
}

fn to_route(text: &DriveText) -> Route {
    let mut route = Route::bare(Screen::Belt);
    for (key, typed) in text.link() {
        route.set(key, typed);
    }
    route
}

/// The screen.
#[component]
pub(crate) fn Belt(props: &Props) -> Html {
    let drive = use_reducer(|| Drive::of(of_route(&props.route)));
    {
        let dispatcher = drive.dispatcher();
        let followed = use_mut_ref(|| props.route.clone());
        let route = props.route.clone();
        use_effect(move || {
            let before = followed.replace(route.clone());
            if !Rc::ptr_eq(&before, &route) {
                dispatcher.dispatch(Action::Follow(route));
            }
        });
    }
    use_link(&props.places, to_route(&drive.text));
    let onset = {
        let dispatcher = drive.dispatcher();
        use_callback((), move |(key, typed), ()| dispatcher.dispatch(Action::Set(key, typed)))
    };
    let onact = {
        let dispatcher = drive.dispatcher();
        use_callback((), move |action, ()| dispatcher.dispatch(action))
    };
    let assessment = use_memo((drive.text.clone(), drive.stale()), |(text, stale)| {
        let without = |bench: Bench, &(pulley, entry): &(usize, PulleyEntry)| bench.without(pulley, entry);
        assess(stale.iter().fold(resolve(text), without))
    });
    let tools = props.settings.tools;
    let discs = &assessment.drawing.discs;
    let chosen = drive
        .chosen
        .and_then(|index| discs.get(index).map(|disc| (index, disc.clone())));
    let is_demo = drive.text == DriveText::demo();
    let [engine_off, others @ ..] = bench::cautions();
    html! {
        <>
            // What stands above the drawing keeps its height, or the drawing would run away under a finger.
            <p class="note kind">{ if is_demo { "Demo: the drive of an invented van, the Larkfield 2.2 L diesel. Change it to yours." } else { "Your drive. The address of this page holds all of it: keep it as a bookmark, or send it." } }</p>
            { caution(&engine_off) }
            <RouteView whole={assessment.clone()} text={drive.text.clone()} chosen={drive.chosen} {tools} onact={onact.clone()} />
            if let Some(undo) = &drive.undo { <Bring words={undo.words()} id={BRING} onback={bring_back_by(undo, &onact)} /> }
            if let Some((index, disc)) = chosen {
                <Panel key={drive.panel} {index} {disc} text={drive.text.clone()} count={discs.len()} settled={drive.settled} onact={onact.clone()} />
            }
            // A list that cannot be read takes no other one.
            if is_bare(&drive.text) || !discs.is_empty() { <div class="chips">{ add_pulley(discs.len(), &onact) }</div> }
            // Between what adds one pulley and what puts all of them away.
            <p class="note">{ "Seen from the front, x to the right, y up. Double rim: ribbed. Broken rim: flat, on the belt’s back." }</p>
            <div class="chips">
                if !is_demo { { replace("demo-drive", "Show the demo drive", DriveText::demo(), &onact) } }
                if drive.text != DriveText::begin() { { replace("begin-drive", if is_demo { "Begin your own drive" } else { "Start over" }, DriveText::begin(), &onact) } }
            </div>
            <Spoken words={section::spoken(&assessment)} />
            { section::strip() }
            { section::sections(&assessment, &drive.text, &onset, tools) }
            { tools_choice(&props.settings) }
            { cautions(&others) }
        </>
    }
}

/// The pulleys as buttons, for those who can't tap the drawing. Arrow keys on the one that is chosen move it,
/// as a finger does on the drawing.
fn pulley_buttons(discs: &[Disc], chosen: Option<usize>, onact: &Callback<Action>) -> Html {
    let button = |(index, disc): (usize, &Disc)| {
        let pressed = chosen == Some(index);
        let onkeydown = {
            let onact = onact.clone();
            Callback::from(move |event: KeyboardEvent| {
                if let Some((right, up)) = arrow(&event.key()).filter(|_| pressed) {
                    // The page would scroll.
                    event.prevent_default();
                    let pulley = index;
                    onact.emit(Action::Edit(Edit::Nudge { pulley, right, up }));
                }
            })
        };
        let onclick = onact.reform(move |_: MouseEvent| Action::Choose((!pressed).then_some(index)));
        let sign = if disc.faulty { " !" } else { "" };
        html! {
            <button type="button" class="chip" key={index} id={format!("pulley-{}", index + 1)} aria-pressed={pressed.to_string()} {onclick} {onkeydown}>
                { format!("{} {}{sign}", index + 1, disc.name) }
            </button>
        }
    };
    html! {
        <div class="strip pulleys" role="group" aria-label="Pulleys" onfocusin={into_sight}>{ for discs.iter().enumerate().map(button) }</div>
    }
}

/// A button that adds a pulley, the last of the order.
fn add_pulley(count: usize, onact: &Callback<Action>) -> Html {
    let onact = onact.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        // The panel begins afresh.
        onact.emit(Action::Choose(None));
        onact.emit(Action::Edit(Edit::AddAfter(count.saturating_sub(1))));
    });
    Button::chip("Add a pulley", onclick).id("add-pulley").draw()
}

/// The millimetres an arrow key moves a pulley, to the right and up.
fn arrow(key: &str) -> Option<(f64, f64)> {
    match key {
        "ArrowLeft" => Some((-1.0, 0.0)),
        "ArrowRight" => Some((1.0, 0.0)),
        "ArrowUp" => Some((0.0, 1.0)),
        "ArrowDown" => Some((0.0, -1.0)),
        _ => None,
    }
}

/// Brings back what has gone, and the keyboard to it or to the first pulley: the button goes.
fn bring_back_by(undo: &Undo, onact: &Callback<Action>) -> Callback<()> {
    let button = match undo {
        Undo::Pulley { index, .. } => format!("pulley-{}", index + 1),
        Undo::Tensioner(_) => "head-pulley".into(),
        Undo::Drive(..) => String::new(),
    };
    onact.reform(move |()| {
        if !focus(&button) {
            focus("pulley-1");
        }
        Action::Undo
    })
}

/// A button that puts another drive in place.
fn replace(id: &'static str, words: &'static str, text: DriveText, onact: &Callback<Action>) -> Html {
    let onclick = onact.reform(move |_: MouseEvent| {
        // The other drawing is what there is to see, above the way back.
        scroll::from_top(BRING);
        Action::Replace(text.clone())
    });
    Button::chip(words, onclick).id(id).keyed(id)
}

impl Undo {
    fn words(&self) -> String {
        match self {
            Self::Pulley { name, .. } => format!("{name} is removed."),
            Self::Tensioner(_) => "The tensioner’s arm is put away.".into(),
            Self::Drive(_, words) => (*words).into(),
        }
    }
}
