//! What was wrong with a text: the place marked in it, the sentence, and texts to take instead.

use shopmath::quantity::fault::{Fault as Wrong, Misread};
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    /// The field's key; the message's id is made from it.
    pub(crate) field: AttrValue,
    /// What was typed.
    pub(crate) text: AttrValue,
    /// What is wrong with it.
    pub(crate) fault: Wrong,
    /// Called with a text to put in its place.
    pub(crate) onremedy: Callback<String>,
}

/// The message of a field in error.
#[component]
pub(crate) fn Fault(props: &Props) -> Html {
    let Props {
        field,
        text,
        fault,
        onremedy,
    } = props;
    let unfinished = matches!(fault.misread, Misread::NoUnit { .. });
    let remedy = |offer: String| {
        let onclick = onremedy.reform({
            let offer = offer.clone();
            move |_: MouseEvent| offer.clone()
        });
        html! { <button type="button" class="chip" key={offer.clone()} {onclick}>{ offer.trim() }</button> }
    };
    html! {
        <div class={classes!("fault", unfinished.then_some("fault-unfinished"))}>
            <p id={format!("{field}-error")} class="fault-words">
                { marked(text, fault) }
                { fault.sentence(text) }
            </p>
            <div class="chips">{ for fault.remedies(text).into_iter().map(remedy) }</div>
        </div>
    }
}

/// The text with the faulty part marked, where only a part is at fault.
fn marked(text: &str, fault: &Wrong) -> Html {
    let place = fault.place.clone();
    let parts = (text.get(..place.start), text.get(place.clone()), text.get(place.end..));
    match parts {
        (Some(before), Some(wrong), Some(after)) if !wrong.is_empty() && wrong.len() < text.len() => html! {
            <span class="fault-place" aria-hidden="true">{ before }<mark>{ wrong }</mark>{ after }</span>
        },
        _ => html! {},
    }
}
