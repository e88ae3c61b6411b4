//! Where each address was left: coming back to it, by the back button or its tab, shows the same place,
//! and any other begins at its top. Left to the browser, a screen would begin where the one before it was,
//! and a long sheet would be found at its end: its rows are drawn after the browser has looked.

use crate::link::fragment;
use crate::route::Route;
use gloo::events::EventListener;
use gloo::utils::window;
use std::cell::{Cell, RefCell};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Addresses remembered at most.
const REMEMBERED: usize = 50;
/// Frames that what was seen there may take to be drawn again: a third of a second.
const FRAMES: u32 = 20;

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
    EventListener::new(&window(), "scroll", |_| {
        // Going back, a browser moves the page before it says that the address has changed.
        if SHOWN.with_borrow(|shown| *shown == fragment()) {
            FAR.set(window().scroll_y().unwrap_or_default());
        }
    })
    .forget();
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
    reach(remembered(route), FRAMES);
}

fn reach(far: f64, frames: u32) {
    let window = window();
    window.scroll_to_with_x_and_y(0.0, far);
    let short = far - window.scroll_y().unwrap_or_default();
    if short > 1.0 && frames > 0 {
        let again = Closure::once_into_js(move || reach(far, frames - 1));
        // Without frames the page is not shown, and nothing is to be reached.
        let _ = window.request_animation_frame(again.unchecked_ref());
    }
}
