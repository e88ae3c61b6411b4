//! Where a text of Convert leads on: a link to the bench that takes it.

use super::Read;
use crate::link::Places;
use crate::route::Screen;
use shopmath::convert::{self, Elsewhere};
use shopmath::quantity::Kind;
use yew::prelude::*;

/// Where the text leads on: a torque to the bolt it is for, a thread or a belt to its own bench.
pub(super) fn onward(read: &Read, text: &str, places: &Places) -> Html {
    let (screen, key, words) = match read {
        Read::One(Ok(conversion))
            if conversion
                .stages
                .first()
                .is_some_and(|stage| stage.typed.kind() == Kind::Torque) =>
        {
            (Screen::Bolt, "spec", "Judge it for a bolt")
        }
        Read::One(Err(_)) => match convert::elsewhere(text) {
            Some(Elsewhere::Thread) => (Screen::Bolt, "thread", "This is a thread: open it in Bolt"),
            Some(Elsewhere::Belt) => (Screen::Belt, "belt", "This is a belt: open it in Belt"),
            None => return html! {},
        },
        _ => return html! {},
    };
    let mut route = places.of(screen);
    route.set(key, text.trim().to_owned());
    html! { <p><a class="button" href={route.print()}>{ words }</a></p> }
}
