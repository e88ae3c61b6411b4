//! Asks the start script to keep the screen lit while something is read at arm's length.
//!
//! The script holds the lock because it alone can ask for it in browsers without one.

use gloo::utils::window;
use web_sys::Event;
use yew::prelude::*;

/// Keeps the screen lit while `wanted`, and lets it rest when that ends or the view goes.
#[hook]
pub(crate) fn use_awake(wanted: bool) {
    use_effect_with(wanted, |&wanted| {
        if wanted {
            tell("shop-awake");
        }
        move || {
            if wanted {
                tell("shop-rest");
            }
        }
    });
}

fn tell(what: &str) {
    if let Ok(event) = Event::new(what) {
        // The event has no listener to cancel it.
        let _ = window().dispatch_event(&event);
    }
}
