//! The shell: header, the screen in view, navigation, settings and the update flow.

use crate::keep::use_news;
use crate::link::{self, Places, use_route};
use crate::offline::{self, Offline, use_copy};
use crate::pace::Fence;
use crate::route::{Route, Screen};
use crate::screens::belt::Belt;
use crate::screens::bolt::Bolt;
use crate::screens::convert::Convert;
use crate::screens::sheet::SheetScreen;
use crate::screens::sheet::desk::Desk;
use crate::screens::sources::sources;
use crate::scroll;
use crate::settings::use_settings;
use crate::views::button::Button;
use crate::views::{icon, overlay::on_escape, settings::settings_panel};
use gloo::utils::document;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlElement;
use yew::prelude::*;

/// The whole page.
#[component]
pub(crate) fn App() -> Html {
    let route = use_route();
    let places = use_memo((), |()| Places::default());
    let desk = use_memo((), |()| Desk::new((*places).clone()));
    let heard = desk.clone();
    // Whatever screen is shown: the desk outlives them all.
    let onnews = use_callback((), move |news, ()| heard.hear(&news));
    use_news(onnews);
    let settings = use_settings();
    let copy = use_copy();
    let settings_open = use_state(|| false);
    let shown = route.screen;
    let heading = use_heading(&route);
    let toggle = {
        let open = settings_open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let opener = use_node_ref();
    {
        let (open, opener) = (settings_open.setter(), opener.clone());
        use_effect_with(*settings_open, move |&is_open| {
            let listener = is_open.then(|| {
                on_escape(move || {
                    open.set(false);
                    if let Some(opener) = opener.cast::<HtmlElement>() {
                        // Never refused: the button is always there.
                        let _ = opener.focus();
                    }
                })
            });
            move || drop(listener)
        });
    }
    let screen = match shown {
        Screen::Convert => {
            html! { <Convert {route} places={(*places).clone()} settings={settings.clone()} desk={(*desk).clone()} /> }
        }
        Screen::Bolt => {
            html! { <Bolt {route} places={(*places).clone()} settings={settings.clone()} desk={(*desk).clone()} /> }
        }
        Screen::Belt => html! { <Belt {route} places={(*places).clone()} settings={settings.clone()} /> },
        Screen::Sheet => html! {
            <SheetScreen {route} places={(*places).clone()} settings={settings.clone()} desk={(*desk).clone()} />
        },
        Screen::Sources => sources(),
    };
    html! {
        <>
            <header class="head">
                <h1 ref={heading} tabindex="-1">{ shown.title() }</h1>
                { offline_mark(copy.offline) }
                <button type="button" ref={opener} class="head-button" aria-expanded={settings_open.to_string()} aria-controls="settings" onclick={toggle}>
                    { icon::sliders() }<span class="spoken">{ "Settings" }</span>
                </button>
            </header>
            if *settings_open { { settings_panel(&settings, copy.offline) } }
            <main key={shown.path()}>{ screen }</main>
            <nav class="tabs" aria-label="Screens">{ for Screen::TABS.into_iter().map(|tab| nav_link(tab, shown, &places)) }</nav>
            if copy.newer { <Newer desk={(*desk).clone()} /> }
            <Fence />
        </>
    }
}

/// The screen's title in the document, the heading focused when another screen, or another sheet, is
/// shown, and the page scrolled to where this address was left.
#[hook]
fn use_heading(route: &Rc<Route>) -> NodeRef {
    let heading = use_node_ref();
    let first = use_mut_ref(|| true);
    {
        let (heading, first) = (heading.clone(), first.clone());
        use_effect_with((route.screen, route.tail.clone()), move |(screen, _)| {
            document().set_title(&format!("{} · Fenderside", screen.title()));
            if let Some(heading) = heading.cast::<HtmlElement>().filter(|_| !*first.borrow()) {
                // Focus can only be refused when the heading is gone.
                let _ = heading.focus();
            }
        });
    }
    // After the focus, which scrolls too. Every change of screen or sheet is one of the route.
    use_effect_with(route.clone(), move |route| {
        if !first.replace(false) {
            scroll::arrive(route);
        }
    });
    heading
}

fn nav_link(tab: Screen, current: Screen, places: &Places) -> Html {
    let here = tab == current;
    let target = places.of(tab);
    let href = target.print();
    let places = places.clone();
    // The place is looked up when tapped: it changes while one types, this link is not drawn then.
    let onclick = Callback::from(move |event: MouseEvent| {
        event.prevent_default();
        if !here {
            link::go(places.known(current).as_ref(), &places.of(tab));
        }
    });
    html! {
        <a key={tab.path()} {href} {onclick} class="tab" aria-current={here.then_some("page")}>
            { icon::screen(tab) }<span>{ tab.title() }</span>
        </a>
    }
}

/// A word and a sign on whether the page starts without a network.
fn offline_mark(offline: Offline) -> Html {
    let (sign, words) = match offline {
        Offline::Ready => ("✓", "Ready to work offline"),
        Offline::Pending => ("…", "Getting ready for offline"),
        Offline::Unavailable => ("!", "Needs a network"),
    };
    // New words are a new element: they appear in place, where the old ones would be seen to move.
    html! { <p class="offline-mark" key={words}><span aria-hidden="true">{ sign }</span>{ " " }{ words }</p> }
}

#[derive(PartialEq, Properties)]
struct Kept {
    desk: Desk,
}

/// The offer of a newer version. It loads the page again, so it waits until nothing is lost by that.
#[component]
fn Newer(props: &Kept) -> Html {
    let refused = use_state(|| false);
    let onclick = {
        let (desk, refused) = (props.desk.clone(), refused.setter());
        Callback::from(move |_: MouseEvent| {
            let (desk, refused) = (desk.clone(), refused.clone());
            spawn_local(async move {
                let secure = desk.secure().await;
                refused.set(!secure);
                if secure {
                    offline::take_newer();
                }
            });
        })
    };
    let words = if *refused {
        "Not yet: what you typed on Sheet cannot be saved and would be lost. Make room, or save the sheet as a file first."
    } else {
        "New version ready. What you typed stays."
    };
    html! {
        <div class="newer" role="status">
            <p>{ words }</p>
            { Button::main("Use it now", onclick).draw() }
        </div>
    }
}
