//! Where the keyboard is. When the element that has the focus goes, or leads elsewhere, the focus
//! goes along: left to the browser, it would be at the top of the page.

use gloo::timers::callback::Timeout;
use gloo::utils::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, FocusOptions, HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition};
use yew::prelude::*;

/// Puts the focus on the element of an id; whether there is one.
pub(crate) fn focus(id: &str) -> bool {
    document().get_element_by_id(id).is_some_and(focus_on)
}

/// As [`focus`], the page scrolled no farther than it takes: by itself a browser may put the element in
/// the middle of the screen.
pub(crate) fn focus_nearest(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        show(&element);
        focus_on(element);
    }
}

fn focus_on(element: Element) -> bool {
    // Refused only where the element is gone again or cannot have it.
    HtmlElement::from(JsValue::from(element)).focus().is_ok()
}

/// Puts the focus on an element and leaves the page where it is. WebKit would scroll to it a frame later,
/// past what the page then shows.
pub(crate) fn focus_in_place(element: &HtmlElement) {
    let options = FocusOptions::new();
    options.set_prevent_scroll(true);
    // Refused only where the element is gone again.
    let _ = element.focus_with_options(&options);
}

/// From the button of a row that is about to go to the same button of the next row, or of the one
/// before; where there is none, to the element of an id.
pub(crate) fn focus_beside(button: &MouseEvent, name: &str, otherwise: &str) {
    let button = button.target().and_then(|target| target.dyn_into::<Element>().ok());
    let row = button.and_then(|button| button.closest("li").ok().flatten());
    let beside = row.and_then(|row| row.next_element_sibling().or_else(|| row.previous_element_sibling()));
    let same = beside.and_then(|row| row.query_selector(name).ok().flatten());
    let otherwise = otherwise.to_owned();
    // Once the row is gone: the next one is then where it was, and the page need not move to it.
    Timeout::new(0, move || {
        if !same.is_some_and(focus_on) {
            focus(&otherwise);
        }
    })
    .forget();
}

/// Keeps the focus on the button of a row that is about to change places: browsers take it from
/// what is moved.
pub(crate) fn keep_focus(button: &MouseEvent) {
    let button = button.target().and_then(|target| target.dyn_into::<Element>().ok());
    if let Some(button) = button.and_then(|button| button.closest("button").ok().flatten()) {
        Timeout::new(0, move || {
            focus_on(button);
        })
        .forget();
    }
}

/// Brings what a key has led to wholly into sight: in a strip that is swiped, browsers leave it as
/// it is when a little of it shows. Under a finger nothing may move.
pub(crate) fn into_sight(led: FocusEvent) {
    let element = led.target().and_then(|target| target.dyn_into::<Element>().ok());
    if let Some(element) = element.filter(|element| element.matches(":focus-visible").unwrap_or_default()) {
        show(&element);
    }
}

/// Scrolls no farther than an element needs to be seen.
pub(crate) fn show(element: &Element) {
    let options = ScrollIntoViewOptions::new();
    options.set_block(ScrollLogicalPosition::Nearest);
    options.set_inline(ScrollLogicalPosition::Nearest);
    element.scroll_into_view_with_scroll_into_view_options(&options);
}

/// Whether a button was pressed by a key: where it then goes, the focus must not go with it, while
/// a finger has no use for a focus and would be shown its keyboard.
pub(crate) fn is_by_key(click: &MouseEvent) -> bool {
    click.detail() == 0
}
