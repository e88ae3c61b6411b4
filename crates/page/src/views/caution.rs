//! A caution: a sentence with a sign before it, so that it is one without its colour.

use shopmath::caution::Caution;
use yew::prelude::*;

/// One caution by the contract.
pub(crate) fn caution(words: &Caution) -> Html {
    html! {
        <p class="caution" data-caution={words.slug} key={words.slug}>
            <span class="caution-sign" aria-hidden="true">{ "!" }</span>
            <span>{ words.text }</span>
        </p>
    }
}

/// Several, in their order.
pub(crate) fn cautions(words: &[Caution]) -> Html {
    words.iter().map(caution).collect()
}
