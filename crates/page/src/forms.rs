//! Fields stand in forms, a small one for each part of a screen.
//!
//! A browser that looks after forms reads a whole one at each key, and lays out what it needs for that:
//! of fields without a form, all that the screen has, in sight or not. On the Bolt screen that took
//! longer than the answer.

use gloo::events::{EventListener, EventListenerOptions};
use gloo::utils::document;

/// Keeps every form on the page: the enter key in a form with one field would send it. Called once,
/// when the page starts.
pub(crate) fn keep() {
    let refusing = EventListenerOptions::enable_prevent_default();
    EventListener::new_with_options(&document(), "submit", refusing, |event| event.prevent_default()).forget();
}
