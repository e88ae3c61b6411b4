//! A destination that is not built yet: it says so and leads on.

use crate::route::{Route, Screen};
use yew::prelude::*;

/// What will stand here, and where to go meanwhile.
pub(crate) fn unbuilt(screen: Screen) -> Html {
    let plan = match screen {
        Screen::Convert => "",
        Screen::Bolt => {
            "Thread, class and spec typed once: clamp load, angle, thread engagement, wrench setting and the limits for a stuck bolt."
        }
        Screen::Belt => "Pulleys to a belt name: length, route, tensioner sweep, strand tension and wear.",
        Screen::Sheet => "The record of a job: what was tightened to what, what it cost, when it is next due.",
    };
    html! {
        <section class="unbuilt">
            <p><strong>{ "This screen is not built yet." }</strong></p>
            <p>{ plan }</p>
            <p>{ "A link to it keeps what it holds: it will open here once the screen exists." }</p>
            <a class="button" href={Route::bare(Screen::Convert).print()}>{ "Go to Convert" }</a>
        </section>
    }
}
