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
    let jump = |(id, title): (&'static str, &'static str)| Button::chip(title, leading_to(heading_id(id))).keyed(id);
    html! { <nav class="strip jumps" aria-label="Sections" onfocusin={into_sight}>{ for parts.map(jump) }</nav> }
}

/// A button that leads to the field of an id.
pub(crate) fn lead(id: &'static str, title: &'static str) -> Html {
    Button::chip(title, leading_to(id.to_owned())).draw()
}

/// Leads to the heading of an id, and the keyboard along.
pub(crate) fn lead_to(id: &str) {
    to(&heading_id(id));
}

fn leading_to(id: String) -> Callback<MouseEvent> {
    Callback::from(move |_| to(&id))
}

fn to(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        scroll::to(element);
    }
    focus(id);
}

fn heading_id(id: &str) -> String {
    format!("head-{id}")
}
