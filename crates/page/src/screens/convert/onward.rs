//! Where a text of Convert leads on: a link to the bench that takes it.

use super::Read;
use crate::link::Places;
use crate::route::{Route, Screen};
use shopmath::convert::{self, Elsewhere};
use yew::prelude::*;

/// Where the text leads on: a torque to the bolt it is for, a thread or a belt to its own bench.
pub(super) fn onward(read: &Read, text: &str, places: &Places) -> Html {
    match read {
        Read::One(Ok(conversion)) if conversion.is_torque() => {
            let (thread, class) = convert::bolt_in(conversion.label.as_deref().unwrap_or_default());
            let mut route = places.of(Screen::Bolt);
            for (key, named) in [("thread", thread), ("class", class)] {
                if let Some(named) = named {
                    route.set(key, named.to_owned());
                }
            }
            link(route, ("spec", "Judge it for a bolt"), &conversion.spec)
        }
        Read::One(Err(_)) => named(text, places),
        _ => html! {},
    }
}

/// The bench that takes what a text without a value in it names.
pub(super) fn named(text: &str, places: &Places) -> Html {
    let to = match convert::elsewhere(text) {
        Some(Elsewhere::Thread) => (Screen::Bolt, "thread", "This is a thread: open it in Bolt"),
        Some(Elsewhere::Belt) => (Screen::Belt, "belt", "This is a belt: open it in Belt"),
        None => return html! {},
    };
    let (screen, key, words) = to;
    link(places.of(screen), (key, words), text)
}

fn link(mut route: Route, (key, words): (&'static str, &'static str), text: &str) -> Html {
    route.set(key, text.trim().to_owned());
    html! { <p><a class="button" href={route.print()}>{ words }</a></p> }
}
