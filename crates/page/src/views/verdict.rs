//! The sign of a verdict, so that it is one without its colour, and its sentence.

use shopmath::fastener::bolt::{Slug, Verdict};
use yew::prelude::*;

/// The sign. What goes past yield by design is turned there on purpose, and no wrong spec.
pub(crate) fn sign(verdict: &Verdict) -> Html {
    let sign = match verdict.slug {
        _ if verdict.by_design => "↻",
        Slug::Ok if !verdict.near => "✓",
        Slug::Low => "▽",
        Slug::Ok | Slug::High => "△",
        Slug::PastYield | Slug::Strips => "✕",
    };
    html! { <span aria-hidden="true">{ sign }</span> }
}

/// The sentence; what it takes for granted in quieter letters.
pub(crate) fn sentence(verdict: &Verdict) -> Html {
    let sentence = &verdict.sentence;
    match sentence
        .split_once(" (assumed")
        .and_then(|(said, rest)| Some((said, rest.split_once(')')?)))
    {
        Some((said, (assumed, rest))) => {
            html! { <>{ said }<span class="quiet">{ " (assumed" }{ assumed }{ ")" }</span>{ rest }</> }
        }
        None => html! { sentence },
    }
}
