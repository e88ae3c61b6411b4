//! A caution: a sentence with a sign before it, so that it is one without its colour.

use shopmath::caution::Caution as Words;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) words: Words,
}

/// One caution by the contract.
#[component]
pub(crate) fn Caution(props: &Props) -> Html {
    html! {
        <p class="caution" data-caution={props.words.slug}>
            <span class="caution-sign" aria-hidden="true">{ "!" }</span>
            <span>{ props.words.text }</span>
        </p>
    }
}
