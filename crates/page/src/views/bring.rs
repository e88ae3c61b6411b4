//! The way back after something was removed or replaced.

use super::focus::focus_nearest;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    /// What has gone.
    pub(crate) words: String,
    /// The button's.
    pub(crate) id: &'static str,
    pub(crate) onback: Callback<()>,
}

/// Words and a button. The button that did it is gone, so the focus is here, and with it the words
/// are heard.
#[component]
pub(crate) fn Bring(props: &Props) -> Html {
    let id = props.id;
    use_effect_with(props.words.clone(), move |_| {
        focus_nearest(id);
    });
    let onclick = props.onback.reform(|_: MouseEvent| ());
    html! {
        <div class="bring">
            <p id={format!("{id}-words")}>{ &props.words }</p>
            <button type="button" class="chip" {id} aria-describedby={format!("{id}-words")} {onclick}>{ "Bring it back" }</button>
        </div>
    }
}
