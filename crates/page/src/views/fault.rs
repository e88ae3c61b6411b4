//! What was wrong with a text: the place marked in it, the sentence, and texts to take instead.

use super::button::Button;
use super::focus::{focus, is_by_key};
use shopmath::quantity::fault::{Fault, Misread};
use yew::prelude::*;

/// The message of the field `key` in error, for the text typed; `onremedy` is called with a text
/// to put in its place.
pub(crate) fn fault(key: &str, text: &str, fault: &Fault, onremedy: &Callback<String>) -> Html {
    let unfinished = matches!(fault.misread, Misread::NoUnit { .. });
    html! {
        <div class={classes!("fault", unfinished.then_some("fault-unfinished"))}>
            <p id={format!("{key}-error")} class="fault-words">{ marked(text, fault) }{ fault.sentence(text) }</p>
            { chips(fault.remedies(text), onremedy, None) }
        </div>
    }
}

/// Texts to take with one tap; the chips go with it, and the keyboard is back in the `field`.
pub(crate) fn chips(texts: impl IntoIterator<Item = String>, ontake: &Callback<String>, field: Option<&str>) -> Html {
    let chip = |text: String| {
        let shown = text.clone();
        let field = field.map(str::to_owned);
        let onclick = ontake.reform(move |click: MouseEvent| {
            if let Some(field) = field.as_ref().filter(|_| is_by_key(&click)) {
                focus(field);
            }
            text.clone()
        });
        Button::chip(&*shown, onclick).keyed(&*shown)
    };
    html! { <div class="chips">{ for texts.into_iter().map(chip) }</div> }
}

/// The text with the faulty part marked, where only a part is at fault.
fn marked(text: &str, fault: &Fault) -> Html {
    match fault.excerpt(text) {
        Some([before, wrong, after]) => html! {
            <span class="fault-place" aria-hidden="true">{ before }<mark>{ wrong }</mark>{ after }</span>
        },
        None => html! {},
    }
}
