//! Fields: what they hold, and the forms they stand in, a small one for each part of a screen.
//!
//! A browser that looks after forms reads a whole one at each key, and lays out what it needs for that:
//! of fields without a form, all that the screen has, in sight or not. On the Bolt screen that took
//! longer than the answer.

use gloo::events::{EventListener, EventListenerOptions};
use gloo::utils::document;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// Keeps every form on the page: the enter key in a form with one field would send it. Called once,
/// when the page starts.
pub(crate) fn keep() {
    let refusing = EventListenerOptions::enable_prevent_default();
    EventListener::new_with_options(&document(), "submit", refusing, |event| event.prevent_default()).forget();
}

/// What a text field holds now.
pub(crate) fn text(field: &Element) -> String {
    match field.dyn_ref::<HtmlTextAreaElement>() {
        Some(area) => area.value(),
        None => field.unchecked_ref::<HtmlInputElement>().value(),
    }
}

/// What an empty field shows of what it takes. Beside a text a browser would hide it anew at each key, at
/// the price of a style pass, so there it is none.
pub(crate) fn hint(text: &AttrValue, words: &'static str) -> Option<&'static str> {
    text.is_empty().then_some(words)
}

/// The listener of a text field: `set` is called with what the field holds.
pub(crate) fn typing(set: &Callback<String>) -> Callback<InputEvent> {
    set.reform(|event: InputEvent| text(&event.target_unchecked_into()))
}
