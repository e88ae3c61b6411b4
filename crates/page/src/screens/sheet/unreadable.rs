//! A record that this version cannot read: what is wrong with it, and its text to save.

use super::carry;
use crate::keep::Unreadable;
use crate::views::button::Button;
use yew::prelude::*;

/// The record; `more` stands beside the button that saves it.
pub(super) fn unreadable(found: &Unreadable, more: Html) -> Html {
    let save = {
        let (name, raw) = (format!("{}-as-found.txt", found.key), found.raw.clone());
        Callback::from(move |_: MouseEvent| {
            // Nothing is lost where the browser takes no file: the record stays.
            let _ = carry::download(&name, "text/plain;charset=utf-8", &raw);
        })
    };
    html! {
        <div class="fault" key={found.key.clone()} data-unreadable={found.key.clone()}>
            <p>{ format!("{} cannot be read here, and is left untouched. {}", found.key, found.why) }</p>
            <div class="chips">
                { Button::chip("Save it as found", save).draw() }
                { more }
            </div>
        </div>
    }
}
