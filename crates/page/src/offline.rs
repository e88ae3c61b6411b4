//! What the start script knows about the kept copy of the page, as values a view can show.

use gloo::events::EventListener;
use gloo::utils::{document_element, window};
use web_sys::Event;
use yew::prelude::*;

/// Whether the page starts without a network.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Offline {
    /// Files are still being kept.
    Pending,
    /// Every file is kept; checked, not assumed.
    Ready,
    /// This browser or address keeps no copy.
    Unavailable,
}

/// The state of the kept copy, and whether a newer version waits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Copy {
    pub(crate) offline: Offline,
    pub(crate) newer: bool,
}

fn look() -> Copy {
    let mark = |name: &str| document_element().get_attribute(name).unwrap_or_default();
    let offline = match mark("data-offline").as_str() {
        "ready" => Offline::Ready,
        "unavailable" => Offline::Unavailable,
        _ => Offline::Pending,
    };
    Copy {
        offline,
        newer: mark("data-update") == "ready",
    }
}

/// Follows the state of the kept copy.
#[hook]
pub(crate) fn use_copy() -> Copy {
    let copy = use_state(look);
    let setter = copy.setter();
    use_effect_with((), move |()| {
        let listeners = ["shop-offline-ready", "shop-offline-unavailable", "shop-update-ready"].map(|event| {
            let setter = setter.clone();
            EventListener::new(&window(), event, move |_| setter.set(look()))
        });
        setter.set(look());
        move || drop(listeners)
    });
    *copy
}

/// Lets the newer version take over; the page then loads once more, with the address as it is.
pub(crate) fn take_newer() {
    if let Ok(event) = Event::new("shop-update-apply") {
        // The event has no listener to cancel it.
        let _ = window().dispatch_event(&event);
    }
}
