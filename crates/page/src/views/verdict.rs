//! The sign of a verdict, so that it is one without its colour.

use shopmath::fastener::bolt::Slug;
use yew::prelude::*;

/// The sign.
pub(crate) fn sign(slug: Slug) -> Html {
    let sign = match slug {
        Slug::Ok => "✓",
        Slug::Low => "▽",
        Slug::High => "△",
        Slug::PastYield | Slug::Strips => "✕",
    };
    html! { <span aria-hidden="true">{ sign }</span> }
}
