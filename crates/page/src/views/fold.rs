//! A part of the page behind one tap: nothing of it is drawn before it is opened.

use web_sys::Element;
use yew::prelude::*;

/// Whether it is open.
pub(crate) struct Fold {
    open: UseStateHandle<bool>,
    forced: bool,
}

/// The fold's state. `forced` opens it where there is something that must be seen; from then on only a tap
/// closes it, or it would close over what is still being typed.
#[hook]
pub(crate) fn use_fold(forced: bool) -> Fold {
    Fold {
        open: use_state(|| false),
        forced,
    }
}

impl Fold {
    /// The line to tap, and what is behind it.
    pub(crate) fn draw(&self, class: Option<&'static str>, line: Html, inside: impl FnOnce() -> Html) -> Html {
        let shown = *self.open || self.forced;
        let open = self.open.setter();
        // Opening it by force is told here too.
        let ontoggle = Callback::from(move |event: Event| {
            let details: Option<Element> = event.target_dyn_into();
            open.set(details.is_some_and(|details| details.has_attribute("open")));
        });
        html! {
            <details {class} open={shown} {ontoggle}>
                <summary>{ line }</summary>
                if shown { { inside() } }
            </details>
        }
    }
}
