//! The sign of a verdict, so that it is one without its colour.

use shopmath::fastener::bolt::{Slug, Verdict};
use yew::prelude::*;

/// The sign. What goes past yield by design is turned there on purpose, and no wrong spec.
pub(crate) fn sign(verdict: &Verdict) -> Html {
    let sign = match verdict.slug {
        _ if verdict.by_design => "↻",
        Slug::Ok => "✓",
        Slug::Low => "▽",
        Slug::High => "△",
        Slug::PastYield | Slug::Strips => "✕",
    };
    html! { <span aria-hidden="true">{ sign }</span> }
}
