//! Icons, our own drawings on a 24 × 24 grid, and signs with words for the ear.

use crate::route::Screen;
use yew::prelude::*;

/// The icon of a screen.
pub(crate) fn screen(screen: Screen) -> Html {
    let drawing = match screen {
        // Two scales against one another.
        Screen::Convert => "M3 8h18M3 8v5M7.5 8v3M12 8v5M16.5 8v3M21 8v5M3 18h18M6 18v-3M12 18v-3M18 18v-3",
        // A hexagon and the thread below it.
        Screen::Bolt => "M7 3h10l2 3.5L17 10H7L5 6.5zM9.5 10v11M14.5 10v11M9.5 13l5 1.5M9.5 16l5 1.5M9.5 19l5 1.5",
        // A belt round two pulleys.
        Screen::Belt => {
            "M7 16a3 3 0 1 0 0 .01M18 8a2 2 0 1 0 0 .01M5.2 11.6 16.6 4.3M8.6 20.6 19.9 11.6M2.3 16a5 5 0 0 0 6.3 4.6M2.3 16a5 5 0 0 1 2.9-4.4M16.6 4.3a4 4 0 0 1 3.3 7.3"
        }
        // A sheet with ticked lines.
        // Not in the navigation; a sheet of a kind.
        Screen::Sheet | Screen::Sources => {
            "M6 3h12v18H6zM8.5 8l1.2 1.2L12 7M13.5 8.3H16M8.5 13l1.2 1.2L12 12M13.5 13.3H16M8.5 18H16"
        }
    };
    outline(drawing)
}

/// The settings icon: three sliders.
pub(crate) fn sliders() -> Html {
    outline("M4 7h9M17 7h3M15 5v4M4 12h3M11 12h9M9 10v4M4 17h10M18 17h2M16 15v4")
}

fn outline(drawing: &'static str) -> Html {
    html! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d={drawing} fill="none" stroke="currentColor" stroke-width="1.8" stroke-linejoin="round" stroke-linecap="round" />
        </svg>
    }
}

/// A sign for the eye and the words it stands for, for the ear.
pub(crate) fn signed(sign: &'static str, words: &str) -> Html {
    html! { <><span aria-hidden="true">{ sign }</span><span class="spoken">{ words.to_owned() }</span></> }
}
