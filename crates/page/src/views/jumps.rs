//! The parts of a long screen: their headings, and a strip of buttons that leads to them.

use super::button::Button;
use super::focus::{focus, into_sight};
use crate::scroll;
use gloo::utils::document;
use yew::prelude::*;

/// The heading of a part.
pub(crate) fn heading(id: &str, title: impl Into<Html>) -> Html {
    html! { <h2 id={heading_id(id)} tabindex="-1">{ title.into() }</h2> }
}

/// Buttons that lead to the parts of these ids and titles. The keyboard is led along.
pub(crate) fn jumps(parts: impl Iterator<Item = (&'static str, &'static str)>) -> Html {
    let jump = |(id, title): (&'static str, &'static str)| {
        let onclick = Callback::from(move |_: MouseEvent| lead_to(id));
        Button::chip(title, onclick).keyed(id)
    };
    html! { <nav class="strip jumps" aria-label="Sections" onfocusin={into_sight}>{ for parts.map(jump) }</nav> }
}

/// Leads to the heading of an id, and the keyboard along.
pub(crate) fn lead_to(id: &str) {
    let heading = heading_id(id);
    if let Some(heading) = document().get_element_by_id(&heading) {
        scroll::to(heading);
    }
    focus(&heading);
}

fn heading_id(id: &str) -> String {
    format!("head-{id}")
}
