//! What a screen reader hears of a result: once, when typing rests, and not at every keystroke.
//!
//! The results themselves are silent where they stand; each screen has one of these.

use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// How long typing rests before the words are heard, millisecond.
const REST: u32 = 1200;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    /// The result in words; none says nothing.
    pub(crate) words: String,
}

/// Words for the ear alone.
#[component]
pub(crate) fn Spoken(props: &Props) -> Html {
    let said = use_state(String::new);
    {
        let said = said.setter();
        use_effect_with(props.words.clone(), move |words| {
            let words = words.clone();
            let timer = Timeout::new(REST, move || said.set(words));
            move || drop(timer)
        });
    }
    html! { <p class="spoken" role="status">{ &*said }</p> }
}
