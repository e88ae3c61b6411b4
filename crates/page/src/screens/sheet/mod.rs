//! Sheet: the record of a job, from planning to the next due date.
//!
//! `list` shows the sheets that are kept, `bench` the one being worked on with a file per kind of
//! row, `steps` its bolts one by one in large type, `away` what leaves it, `share` its link and code,
//! `put_on` what other screens hand to a sheet, `said` what is heard of a change, `paper` the sheet to
//! read or print. `desk` holds the open sheet and keeps it, `job` is what it says, `carry` takes files
//! out and in.

mod away;
mod bench;
mod carry;
pub(crate) mod desk;
mod entries;
mod fastener;
mod job;
mod list;
mod paper;
mod portions;
pub(crate) mod put_on;
mod said;
mod share;
mod shared;
mod steps;
mod summary;
mod unreadable;

use crate::link::Places;
use crate::route::{Route, Tail};
use crate::settings::SettingsHandle;
use bench::Bench;
use desk::Desk;
use list::Sheets;
use shared::Shared;
use std::rc::Rc;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
    pub(crate) desk: Desk,
}

/// The screen: the list, a sheet of it, or one that came in a link.
#[component]
pub(crate) fn SheetScreen(props: &Props) -> Html {
    let places = props.places.clone();
    use_effect_with(props.route.clone(), move |route| places.note((**route).clone()));
    let Props {
        places, settings, desk, ..
    } = props;
    match &props.route.tail {
        Tail::None => html! { <Sheets settings={settings.clone()} desk={desk.clone()} /> },
        Tail::Sheet(id) => {
            html! { <Bench key={id.clone()} id={id.clone()} places={places.clone()} settings={settings.clone()} desk={desk.clone()} /> }
        }
        Tail::Shared(payload) => {
            html! { <Shared key={payload.clone()} payload={payload.clone()} settings={settings.clone()} desk={desk.clone()} /> }
        }
    }
}
