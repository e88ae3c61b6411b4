//! Belt: pulleys to a belt one can order, a route to check by eye, a judgement on tension and wear.
//!
//! `route` is the drawing one can drag, `panel` works on one pulley, `section` shows findings.
//! What was typed is the state; the rest comes from the core.

mod panel;
mod route;
mod section;

use crate::link::{Places, use_link};
use crate::route::{Route, Screen};
use crate::settings::SettingsHandle;
use crate::views::caution::cautions;
use crate::views::settings::tools_choice;
use panel::Panel;
use route::RouteView;
use shopmath::drive::bench::edit::{Edit, apply};
use shopmath::drive::bench::{self, DriveText, assess, resolve};
use std::rc::Rc;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
}

/// What was typed, and which pulley is worked on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Drive {
    text: DriveText,
    chosen: Option<usize>,
}

/// What a person does to the drive.
pub(super) enum Action {
    /// Typed into a field.
    Set(&'static str, String),
    /// Changed a pulley.
    Edit(Edit),
    /// Took another pulley to work on, or none.
    Choose(Option<usize>),
    /// Put the demo drive in place.
    Demo,
    /// A link, a bookmark or the back button brought a drive.
    Follow(Rc<Route>),
}

impl Reducible for Drive {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let mut drive = (*self).clone();
        match action {
            Action::Set(key, typed) => {
                drive.text.set(key, &typed);
            }
            Action::Edit(edit) => {
                drive.chosen = follow(self.chosen, &edit);
                drive.text = apply(&self.text, &edit).unwrap_or(drive.text);
            }
            Action::Choose(chosen) => drive.chosen = chosen,
            Action::Demo => {
                drive = Self {
                    text: DriveText::demo(),
                    chosen: None,
                }
            }
            Action::Follow(route) => drive.text = of_route(&route),
        }
        if *self == drive { self } else { Rc::new(drive) }
    }
}

/// The pulley worked on after a change of the order.
fn follow(chosen: Option<usize>, edit: &Edit) -> Option<usize> {
    match edit {
        Edit::Reorder { to, .. } => Some(*to),
        Edit::Remove(_) => None,
        _ => chosen,
    }
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
    let drive = use_reducer(|| Drive {
        text: of_route(&props.route),
        chosen: None,
    });
    {
        let dispatcher = drive.dispatcher();
        let shown = to_route(&drive.text);
        use_effect_with(props.route.clone(), move |route| {
            // An address this screen wrote itself says nothing new.
            if to_route(&of_route(route)) != shown {
                dispatcher.dispatch(Action::Follow(route.clone()));
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
    let assessment = assess(resolve(&drive.text));
    let tools = props.settings.tools;
    let chosen = drive
        .chosen
        .and_then(|index| assessment.drawing.discs.get(index).map(|disc| (index, disc.clone())));
    let is_demo = drive.text == DriveText::demo();
    html! {
        <>
            if is_demo { <p class="note">{ "Demo: the drive of an invented van, the Larkfield 2.2 L diesel. Change it to yours." }</p> }
            { section::headline(&assessment, tools) }
            <RouteView drawing={assessment.drawing.clone()} chosen={drive.chosen} onact={onact.clone()} />
            if let Some((index, disc)) = chosen {
                <Panel key={index} {index} {disc} text={drive.text.clone()} count={assessment.drawing.discs.len()} onact={onact.clone()} />
            } else {
                <p class="note">{ "Tap a pulley to change it, or drag it." }</p>
            }
            { section::sections(&assessment, &drive.text, &onset, tools) }
            if !is_demo { <button type="button" class="chip" onclick={onact.reform(|_: MouseEvent| Action::Demo)}>{ "Show the demo drive" }</button> }
            { tools_choice(&props.settings) }
            { cautions(&bench::cautions()) }
        </>
    }
}
