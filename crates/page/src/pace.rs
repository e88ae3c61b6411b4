//! The pace of answers: at once where the device keeps up, after the key is painted where it does not.
//!
//! A key has to be seen at once, whatever hangs on it. Where working out and drawing an answer has lately
//! taken a good part of a frame, the browser paints the key first and the answer follows in the next
//! frame; keys that come in between share one answer. Until it is there `<main>` says `aria-busy`, so
//! that nobody takes the old answer for the new one. Whatever else a person does finds it given.

use gloo::events::{EventListener, EventListenerOptions};
use gloo::timers::callback::Timeout;
use gloo::utils::{document, window};
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// What answers may cost before keys go first, millisecond, as the root of their mean square: it is the
/// slow ones that miss their frame. Styling, layout and paint come on top, so this is less than half a
/// frame.
const SLOW: f64 = 6.5;
/// The share of the newest answer in the mean.
const NEWEST: f64 = 0.2;

/// What a person can do that must find every answer given.
const ELSE: &[&str] = &["pointerdown", "click", "focusout", "hashchange", "pagehide"];

#[derive(Default)]
struct Pace {
    /// The running mean of the squares of what answers cost, in millisecond.
    squares: f64,
    waiting: Option<Waiting>,
    /// Whether a frame has been asked for.
    asked: bool,
    /// When the answer being drawn was begun.
    begun: Option<f64>,
    /// How many answers were given, and what tells when the newest is drawn.
    given: u32,
    fence: Option<UseStateSetter<u32>>,
}

/// An answer that waits for its key to be painted.
struct Waiting {
    field: Element,
    answer: Callback<String>,
}

thread_local! {
    static PACE: RefCell<Pace> = RefCell::default();
}

/// The listener of a text field: `answer` is called with what the field holds.
pub(crate) fn typing(answer: Callback<String>) -> Callback<InputEvent> {
    Callback::from(move |event: InputEvent| {
        if let Some(field) = event.target_dyn_into::<Element>() {
            heard(Waiting {
                field,
                answer: answer.clone(),
            });
        }
    })
}

/// Gives a waiting answer before anything else is done. Called once, when the page starts.
pub(crate) fn watch() {
    let first = EventListenerOptions::run_in_capture_phase();
    for event in ELSE {
        EventListener::new_with_options(&window(), *event, first, |_| give()).forget();
    }
    EventListener::new(&document(), "visibilitychange", |_| give()).forget();
}

fn heard(new: Waiting) {
    let elsewhere = PACE.with_borrow(|pace| pace.waiting.as_ref().is_some_and(|old| old.field != new.field));
    if elsewhere {
        give();
    }
    let ask = PACE.with_borrow_mut(|pace| {
        let behind = pace.waiting.is_some() || pace.squares > SLOW * SLOW;
        pace.waiting = Some(new);
        behind.then(|| core::mem::replace(&mut pace.asked, true))
    });
    match ask {
        None => give(),
        Some(false) => {
            busy(true);
            after_the_paint();
        }
        Some(true) => {}
    }
}

/// Gives the waiting answer, if there is one.
fn give() {
    let Some(Waiting { field, answer }) = PACE.with_borrow_mut(|pace| pace.waiting.take()) else {
        return;
    };
    PACE.with_borrow_mut(|pace| {
        pace.begun.get_or_insert_with(now);
    });
    answer.emit(text(&field));
    let fence = PACE.with_borrow_mut(|pace| {
        pace.given = pace.given.wrapping_add(1);
        pace.fence.clone().map(|fence| (fence, pace.given))
    });
    if let Some((fence, given)) = fence {
        fence.set(given);
    }
}

/// Stands once on the page and sees when an answer is drawn: Yew runs effects when nothing is left to
/// draw, which on a slow device may be some tasks after the answer was given.
#[component]
pub(crate) fn Fence() -> Html {
    let given = use_state(|| 0);
    let setter = given.setter();
    use_effect_with((), move |()| PACE.with_borrow_mut(|pace| pace.fence = Some(setter)));
    use_effect_with(*given, |_| drawn());
    html! {}
}

/// The answer is on the page: notes what it cost.
fn drawn() {
    let owing = PACE.with_borrow_mut(|pace| {
        if let Some(begun) = pace.begun.take() {
            let cost = now() - begun;
            pace.squares += (cost * cost - pace.squares) * NEWEST;
        }
        pace.waiting.is_some()
    });
    if !owing {
        busy(false);
    }
}

/// What a field is to show: its text, or what was typed since while its answer waits. Drawn anew for
/// another reason in that moment, it would lose a key.
pub(crate) fn shown(id: &str, text: &AttrValue) -> AttrValue {
    let typed = PACE.with_borrow(|pace| {
        let waiting = pace.waiting.as_ref().filter(|waiting| waiting.field.id() == id);
        waiting.map(|waiting| waiting.field.clone())
    });
    typed.map_or_else(|| text.clone(), |field| self::text(&field).into())
}

/// What a field holds now, which may be more than when its event was heard.
fn text(field: &Element) -> String {
    match field.dyn_ref::<HtmlTextAreaElement>() {
        Some(area) => area.value(),
        None => field.unchecked_ref::<HtmlInputElement>().value(),
    }
}

/// A task that follows the next frame.
fn after_the_paint() {
    let framed = Closure::once_into_js(|| {
        let paint = Timeout::new(0, || {
            PACE.with_borrow_mut(|pace| pace.asked = false);
            give();
        });
        paint.forget();
    });
    // Refused by no browser; a hidden page, which gets no frames, has given its answer already.
    let _ = window().request_animation_frame(framed.unchecked_ref());
}

fn busy(yes: bool) {
    if let Ok(Some(main)) = document().query_selector("main") {
        // An attribute of this name can be set on any element.
        let _ = match yes {
            true => main.set_attribute("aria-busy", "true"),
            false => main.remove_attribute("aria-busy"),
        };
    }
}

fn now() -> f64 {
    window().performance().map_or(0.0, |clock| clock.now())
}
