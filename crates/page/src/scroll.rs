//! Where each address was left: coming back to it, by the back button or its tab, shows the same place,
//! and any other begins at its top. Left to the browser, a screen would begin where the one before it was,
//! and a long sheet would be found at its end: its rows are drawn after the browser has looked.

use crate::address::fragment;
use crate::route::Route;
use crate::views::focus::show;
use gloo::events::EventListener;
use gloo::utils::{document, window};
use std::cell::{Cell, RefCell};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, ScrollRestoration};

/// Addresses remembered at most.
const REMEMBERED: usize = 50;
/// Frames that what was seen there may take to be drawn again: a third of a second.
const FRAMES: u32 = 20;
/// Frames that what comes into sight on the way takes to be laid out.
const SETTLING: u32 = 4;

thread_local! {
    /// The address that is shown, as the browser has it.
    static SHOWN: RefCell<String> = const { RefCell::new(String::new()) };
    /// How far it is scrolled, pixel.
    static FAR: Cell<f64> = const { Cell::new(0.0) };
    static LEFT: RefCell<Vec<(String, f64)>> = const { RefCell::new(Vec::new()) };
}

/// Follows how far the page is scrolled. Called once, when the page starts.
pub(crate) fn watch() {
    shows();
    // The browser would move the page too, some of them later than this. A page loaded again is its to move.
    restored_by(ScrollRestoration::Manual);
    EventListener::new(&window(), "pagehide", |_| restored_by(ScrollRestoration::Auto)).forget();
    EventListener::new(&window(), "pageshow", |_| restored_by(ScrollRestoration::Manual)).forget();
    EventListener::new(&document(), "focusin", keep_in_sight).forget();
    EventListener::new(&window(), "scroll", |_| {
        // Going back, a browser moves the page before it says that the address has changed.
        if SHOWN.with_borrow(|shown| *shown == fragment()) {
            FAR.set(window().scroll_y().unwrap_or_default());
        }
    })
    .forget();
}

/// Keeps a stop of the keyboard in sight while what comes into sight above it is laid out: Firefox would let
/// it slip under the strip of sections.
fn keep_in_sight(led: &Event) {
    let stop = led.target().and_then(|target| target.dyn_into::<Element>().ok());
    if let Some(stop) = stop.filter(|stop| stop.matches("summary:focus-visible").unwrap_or_default()) {
        hold(stop, SETTLING, show);
    }
}

fn restored_by(whom: ScrollRestoration) {
    if let Ok(history) = window().history() {
        // Refused only by a page that is not shown any more.
        let _ = history.set_scroll_restoration(whom);
    }
}

/// Shows the top of the page.
pub(crate) fn to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Notes that the address in the browser is that of what is shown.
pub(crate) fn shows() {
    SHOWN.set(fragment());
}

/// Notes that the address has changed to another one.
pub(crate) fn leave() {
    let address = SHOWN.with_borrow(|shown| Route::parse(shown).print());
    LEFT.with_borrow_mut(|left| {
        left.retain(|(known, _)| *known != address);
        left.push((address, FAR.get()));
        if left.len() > REMEMBERED {
            left.remove(0);
        }
    });
    shows();
}

/// How far an address was scrolled when it was left last, pixel; 0 where it was not open yet.
pub(crate) fn remembered(route: &Route) -> f64 {
    let address = route.print();
    LEFT.with_borrow(|left| {
        left.iter()
            .find(|(known, _)| *known == address)
            .map_or(0.0, |(_, far)| *far)
    })
}

/// Shows an address where it was left. What is to be seen there may be drawn a few frames later.
pub(crate) fn arrive(route: &Route) {
    reach(fragment(), remembered(route), FRAMES);
}

fn reach(address: String, far: f64, frames: u32) {
    // Not once one has gone on from there.
    if SHOWN.with_borrow(|shown| *shown != address) {
        return;
    }
    let window = window();
    window.scroll_to_with_x_and_y(0.0, far);
    // The browser tells of it a frame later, when one may have gone on.
    let reached = window.scroll_y().unwrap_or_default();
    FAR.set(reached);
    let short = far - reached;
    if short > 1.0 && frames > 0 {
        next_frame(move || reach(address, far, frames - 1));
    }
}

/// Shows the top of the page, or no farther down than it takes to see the element of an id. Before what has
/// changed above it is laid out, a browser would keep another place.
pub(crate) fn from_top(id: &'static str) {
    settle(id, None, SETTLING);
}

fn settle(id: &'static str, focused: Option<Element>, frames: u32) {
    let element = document().get_element_by_id(id);
    let now = document().active_element();
    // Not once one has gone on from there; the element itself is given the focus as it comes.
    if focused.is_some() && focused != now && element != now {
        return;
    }
    window().scroll_to_with_x_and_y(0.0, 0.0);
    element.iter().for_each(show);
    if frames > 0 {
        next_frame(move || settle(id, now, frames - 1));
    }
}

/// Shows an element that takes the focus at the top. What comes into sight above it on the way is laid out a
/// few frames later, and not every browser keeps its place then.
pub(crate) fn to(element: Element) {
    element.scroll_into_view();
    hold(element, SETTLING, Element::scroll_into_view);
}

/// Shows what has the focus again in each of some frames, until one has gone on from there.
fn hold(stop: Element, frames: u32, show: fn(&Element)) {
    if frames > 0 {
        next_frame(move || {
            if document().active_element().as_ref() == Some(&stop) {
                show(&stop);
                hold(stop, frames - 1, show);
            }
        });
    }
}

fn next_frame(then: impl FnOnce() + 'static) {
    // Without frames the page is not shown, and there is nothing to scroll.
    let _ = window().request_animation_frame(Closure::once_into_js(then).unchecked_ref());
}
