//! The address and the screen kept in step: the link is the state.
//!
//! What is typed goes into the address a moment later without a new history entry; a link, a
//! bookmark or the back button comes out of it as a [`Route`].

use crate::address::fragment;
use crate::route::{Route, Screen};
use crate::scroll;
use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use gloo::utils::window;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Element;
use yew::prelude::*;

/// How long typing rests before the address follows, millisecond. Browsers refuse an address
/// that changes at every keystroke.
const REST: u32 = 350;

/// The route in the address, followed through links and the back button.
#[hook]
pub(crate) fn use_route() -> Rc<Route> {
    let route = use_state(|| Rc::new(Route::parse(&fragment())));
    let setter = route.setter();
    use_effect_with((), move |()| {
        let listener = EventListener::new(&window(), "hashchange", move |_| {
            scroll::leave();
            setter.set(Rc::new(Route::parse(&fragment())));
        });
        move || drop(listener)
    });
    (*route).clone()
}

/// Where each screen was left, so that its tab leads back to the same bench.
#[derive(Clone, Default)]
pub(crate) struct Places(Rc<RefCell<Vec<Route>>>);

impl PartialEq for Places {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Places {
    /// Notes where a screen stands.
    pub(crate) fn note(&self, route: Route) {
        let mut places = self.0.borrow_mut();
        places.retain(|known| known.screen != route.screen);
        places.push(route);
    }

    /// The route a screen was left at, where it has been open.
    pub(crate) fn known(&self, screen: Screen) -> Option<Route> {
        self.0.borrow().iter().find(|known| known.screen == screen).cloned()
    }

    /// Follows a screen that was left at one route and is to be found at another now.
    pub(crate) fn moved(&self, from: &Route, to: &Route) {
        if self.known(from.screen).as_ref() == Some(from) {
            self.note(to.clone());
        }
    }

    /// The route a screen was left at, or its bare one.
    pub(crate) fn of(&self, screen: Screen) -> Route {
        self.known(screen).unwrap_or_else(|| Route::bare(screen))
    }
}

/// Goes from one route to another as a link would, with a history entry; the one left behind is
/// written down first, so that the back button finds what was typed last.
pub(crate) fn go(from: Option<&Route>, route: &Route) {
    if let Some(from) = from {
        replace(from);
    }
    // The only failure is an address too long to hold; the screen then stays where it is.
    let _ = window().location().set_hash(&route.print());
}

/// Puts another route in place of the one shown, without a history entry, and follows it. Does nothing where
/// that one is not shown any more; whether it was.
pub(crate) fn put(shown: &Route, route: &Route) -> bool {
    let here = Route::parse(&fragment()) == *shown;
    if here {
        // The only failure is an address too long to hold; the screen then stays where it is.
        let _ = window().location().replace(&route.print());
    }
    here
}

/// Keeps the address in step with what a screen holds. The last state is written when a link is
/// tapped, when the page is hidden, and after each rest in typing.
#[hook]
pub(crate) fn use_link(places: &Places, route: Route) {
    let places = places.clone();
    let pending = use_mut_ref(|| None::<Route>);
    let timer = use_mut_ref(|| None::<Timeout>);
    {
        let (pending, timer) = (pending.clone(), timer.clone());
        use_effect_with(route, move |route| {
            places.note(route.clone());
            if route.print() == Route::parse(&fragment()).print() {
                *pending.borrow_mut() = None;
                return;
            }
            *pending.borrow_mut() = Some(route.clone());
            *timer.borrow_mut() = Some(Timeout::new(REST, move || write(&pending)));
        });
    }
    use_effect_with((), move |()| {
        let (hidden, left) = (pending.clone(), pending);
        let hidden = EventListener::new(&window(), "pagehide", move |_| write(&hidden));
        // Heard before the browser follows the link, which is when the address is still this screen's.
        let left = EventListener::new(&window(), "click", move |event| {
            let on: Option<Element> = event.target().map(JsCast::unchecked_into);
            if on.is_some_and(|on| matches!(on.closest("a"), Ok(Some(_)))) {
                write(&left);
            }
        });
        move || {
            drop((hidden, left));
            timer.borrow_mut().take();
        }
    });
}

/// Writes a pending route into the address, unless another screen has the address by now.
fn write(pending: &RefCell<Option<Route>>) {
    if let Some(route) = pending.borrow_mut().take() {
        replace(&route);
    }
}

/// Puts a route into the address in place of what the same screen had there.
fn replace(route: &Route) {
    let shown = Route::parse(&fragment());
    if shown.screen != route.screen || shown == *route {
        return;
    }
    if let Ok(history) = window().history() {
        // Refused only when called too often; the next rest writes it.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&route.print()));
        scroll::shows();
    }
}
