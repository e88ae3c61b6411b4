//! A verdict in a word, with a sign before it, so that it is one without its colour.

use shopmath::fastener::bolt::Slug;
use yew::prelude::*;

/// The sign and the word.
pub(crate) fn word(slug: Slug) -> Html {
    let (sign, word) = match slug {
        Slug::Ok => ("✓", "Believable"),
        Slug::Low => ("▽", "Low"),
        Slug::High => ("△", "High"),
        Slug::PastYield => ("✕", "Past yield"),
        Slug::Strips => ("✕", "Strips the hole"),
    };
    html! { <><span aria-hidden="true">{ sign }</span>{ " " }{ word }</> }
}
