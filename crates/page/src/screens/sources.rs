//! Sources: every publication a figure of the page rests on, what was taken from it, and how far it
//! can be trusted.

use shopmath::source::{Mark, Source, publications};
use yew::prelude::*;

/// What the marks mean, each in a sentence.
const MARKS: [(Mark, &str); 5] = [
    (Mark::Exact, "a definition, or a measurement as you typed it"),
    (Mark::Published, "read in the publication named"),
    (Mark::Memory, "recalled from the publication named and not read again"),
    (Mark::Calculated, "our own number or model, from the equation shown"),
    (Mark::CommonPractice, "what the trade does; nobody is quoted for it"),
];

/// The screen.
pub(crate) fn sources() -> Html {
    let mark = |(mark, words): &(Mark, &'static str)| html! { <><dt>{ mark.words() }</dt><dd>{ words }</dd></> };
    let part = |source: &Source| html! { <li>{ source.part }{ " (" }{ source.mark.words() }{ ")" }</li> };
    let publication = |(name, parts): &(&'static str, Vec<Source>)| {
        let name = if name.is_empty() { "Without a publication" } else { name };
        html! { <><h2>{ name }</h2><ul>{ for parts.iter().map(part) }</ul></> }
    };
    html! {
        <section class="source-list">
            <p>{ "Behind every result is its working, one tap away: the equation, the numbers put in, and one of these sources with its mark." }</p>
            <dl class="marks">{ for MARKS.iter().map(mark) }</dl>
            { for publications().iter().map(publication) }
        </section>
    }
}
