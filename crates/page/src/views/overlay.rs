//! A view that takes the screen's place for a while, such as one in large type. The phone's back
//! button and the Escape key close it, since it looks like a screen of its own, and the screen stays lit meanwhile.

use crate::awake::use_awake;
use crate::route::Route;
use crate::scroll;
use crate::views::focus::focus_in_place;
use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlElement;
use yew::prelude::*;

/// Whether the view is open, and what has the focus in either case.
#[derive(Clone, PartialEq)]
pub(crate) struct Overlay {
    open: UseStateHandle<bool>,
    opener: NodeRef,
    closer: NodeRef,
}

/// The view's state.
#[hook]
pub(crate) fn use_overlay() -> Overlay {
    let open = use_state(|| false);
    let (opener, closer) = (use_node_ref(), use_node_ref());
    use_awake(*open);
    let was = use_mut_ref(|| false);
    {
        let (setter, opener, closer) = (open.setter(), opener.clone(), closer.clone());
        use_effect_with(*open, move |&open| {
            if was.replace(open) != open {
                let next = if open { closer } else { opener };
                if let Some(button) = next.cast::<HtmlElement>() {
                    if open {
                        // The button is at its end, and it is read from its top.
                        focus_in_place(&button);
                        scroll::to_top();
                    } else {
                        // Focus can only be refused when the button is gone.
                        let _ = button.focus();
                    }
                }
            }
            let back = setter.clone();
            let listeners = open.then(|| {
                [
                    on_escape(move || close(&setter)),
                    EventListener::new(&window(), "popstate", move |_| back.set(false)),
                ]
            });
            move || drop(listeners)
        });
    }
    Overlay { open, opener, closer }
}

/// Hears the key that closes what lies over the screen. A listener of its own, for as long as there is
/// something to close: one of Yew's would be asked at every key typed anywhere.
pub(crate) fn on_escape(then: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "keydown", move |event| {
        let key: Option<&KeyboardEvent> = event.dyn_ref();
        if key.is_some_and(|key| key.key() == "Escape") {
            then();
        }
    })
}

fn close(open: &UseStateSetter<bool>) {
    open.set(false);
    if let Ok(history) = window().history() {
        // Takes back the entry that opening made.
        let _ = history.back();
    }
}

impl Overlay {
    pub(crate) fn is_open(&self) -> bool {
        *self.open
    }

    /// The button that opens the view over the screen at `route`.
    pub(crate) fn button(&self, words: &'static str, route: Route) -> Html {
        let open = self.open.setter();
        let onclick = Callback::from(move |_: MouseEvent| {
            // Both entries hold what is typed now; where the browser refuses, only its back
            // button does not lead here.
            if let Ok(history) = window().history() {
                let address = route.print();
                let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&address));
                let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&address));
                scroll::shows();
            }
            open.set(true);
        });
        html! { <button type="button" ref={&self.opener} class="button wide" {onclick}>{ words }</button> }
    }

    /// The button that closes it.
    pub(crate) fn closer(&self) -> Html {
        let open = self.open.setter();
        let onclick = Callback::from(move |_: MouseEvent| close(&open));
        html! { <button type="button" ref={&self.closer} class="button wide" {onclick}>{ "Close" }</button> }
    }
}
