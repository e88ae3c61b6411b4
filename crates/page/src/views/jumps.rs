//! The parts of a long screen: their headings, and a strip of buttons that leads to them.

use super::button::Button;
use super::focus::{focus, into_sight};
use crate::scroll;
use gloo::events::EventListener;
use gloo::utils::{document, window};
use web_sys::Element;
use yew::prelude::*;

/// The heading of a part.
pub(crate) fn heading(id: &str, title: impl Into<Html>) -> Html {
    html! { <h2 id={heading_id(id)} tabindex="-1">{ title.into() }</h2> }
}

/// Buttons that lead to the parts of these ids and titles. The keyboard is led along.
pub(crate) fn jumps(parts: impl Iterator<Item = (&'static str, &'static str)>) -> Html {
    let jump =
        |(id, title): (&'static str, &'static str)| Button::chip(title, leading_to(heading_id(id))).name(id).keyed(id);
    html! { <nav class="strip jumps" aria-label="Sections" onfocusin={into_sight}>{ for parts.map(jump) }</nav> }
}

/// How far down a part begins that one reads, pixel: below the strip.
const REACHED: f64 = 160.0;

/// Marks the part one reads while the page is scrolled. Called once, when the page starts.
pub(crate) fn watch() {
    EventListener::new(&window(), "scroll", |_| mark()).forget();
}

/// Marks the button of the part one reads, and brings it into sight in the strip.
fn mark() {
    let Ok(Some(strip)) = document().query_selector(".jumps") else {
        return;
    };
    let (mut next, mut here) = (strip.first_element_child(), None);
    while let Some(button) = next {
        next = button.next_element_sibling();
        let id = button.get_attribute("name").unwrap_or_default();
        let heading = document().get_element_by_id(&heading_id(&id));
        // A part out of sight is not laid out, and need not be for this.
        let part = heading.map(|heading| heading.closest(".part").ok().flatten().unwrap_or(heading));
        if part.is_some_and(|part| part.get_bounding_client_rect().top() < REACHED) {
            here = Some(button);
        }
    }
    let old = strip.query_selector("[aria-current]").ok().flatten();
    if old != here {
        // Neither is refused by any browser.
        if let Some(button) = old {
            let _ = button.remove_attribute("aria-current");
        }
        if let Some(button) = here {
            let _ = button.set_attribute("aria-current", "true");
            swipe(&strip, &button);
        }
    }
}

/// Swipes a strip so far that one of its buttons stands near its beginning, with a little of the one before.
/// The page stays.
pub(crate) fn swipe(strip: &Element, button: &Element) {
    let far = button.get_bounding_client_rect().left() - strip.get_bounding_client_rect().left();
    strip.scroll_by_with_x_and_y(far - 48.0, 0.0);
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
