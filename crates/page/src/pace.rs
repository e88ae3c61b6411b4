//! The pace of answers: at once where the device keeps up, after the key is painted where it does not.
//!
//! A key has to be seen at once, whatever hangs on it. Where working out and drawing an answer has lately
//! taken a good part of a frame, the browser paints the key first and the answer follows in the next
//! frame; keys that come in between share one answer. Until it is there `<main>` says `aria-busy`, so
//! that nobody takes the old answer for the new one. Whatever else a person does finds it given. Before
//! any answer was given, what the start took tells a slow device.

use gloo::events::{EventListener, EventListenerOptions};
use gloo::timers::callback::Timeout;
use gloo::utils::{document, window};
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// What an answer and the frame that shows it may take before keys go first, millisecond, as the root of
/// their mean square: it is the slow ones that miss their frame. The browser has its own work for the key,
/// which takes much of the rest of a frame.
const SLOW: f64 = 12.0;
/// Below this answers come with their keys again. Far enough from the other that one screen on one device
/// keeps to one way.
const QUICK: f64 = 4.0;
/// One answer counts as no more than this, millisecond: a hiccup of the device is not its pace.
const HICCUP: f64 = 30.0;
/// The share of the newest answer in the mean.
const NEWEST: f64 = 0.1;
/// What the first screen may take before the first key goes first, millisecond.
const SLOW_START: f64 = 110.0;

/// What a person can do that must find every answer given.
const ELSE: &[&str] = &["pointerdown", "click", "focusout", "hashchange", "pagehide"];

#[derive(Default)]
struct Pace {
    /// The running mean of the squares of what answers took, in millisecond; before the first, none.
    squares: Option<f64>,
    /// Whether an answer given with its key would keep the key from being seen.
    slow: bool,
    waiting: Option<Waiting>,
    /// Whether a frame has been asked for.
    asked: bool,
    /// When the answer being drawn was begun, or the first screen.
    begun: Option<f64>,
    /// How many answers were given, and what tells when the newest is drawn.
    given: u32,
    fence: Option<UseStateSetter<u32>>,
}

impl Pace {
    /// Notes what the first screen took until it was seen.
    fn note_start(&mut self, cost: f64) {
        if self.squares.is_none() {
            self.slow = cost > SLOW_START;
        }
    }

    /// Notes what an answer took until it was seen.
    fn note(&mut self, cost: f64) {
        let cost = cost.min(HICCUP);
        let square = cost * cost;
        let mean = self.squares.map_or(square, |mean| mean + (square - mean) * NEWEST);
        self.squares = Some(mean);
        self.slow = mean > if self.slow { QUICK * QUICK } else { SLOW * SLOW };
    }
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

/// Gives a waiting answer before anything else is done. Called once, before the first screen is drawn.
pub(crate) fn watch() {
    PACE.with_borrow_mut(|pace| pace.begun = Some(now()));
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
        let behind = pace.waiting.is_some() || pace.slow;
        pace.waiting = Some(new);
        behind.then(|| core::mem::replace(&mut pace.asked, true))
    });
    match ask {
        None => give(),
        Some(false) => {
            busy(true);
            after_the_frame(|_| {
                PACE.with_borrow_mut(|pace| pace.asked = false);
                give();
            });
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

/// The first screen or an answer is on the page, and will be seen in the next frame.
fn drawn() {
    let (begun, owing, is_start) =
        PACE.with_borrow_mut(|pace| (pace.begun.take(), pace.waiting.is_some(), pace.given == 0));
    if !owing {
        busy(false);
    }
    if let Some(begun) = begun {
        let spent = now() - begun;
        let note = if is_start { Pace::note_start } else { Pace::note };
        after_the_frame(move |frame| PACE.with_borrow_mut(|pace| note(pace, spent + frame)));
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

/// A task that follows the next frame and is told what the frame took.
fn after_the_frame(then: impl FnOnce(f64) + 'static) {
    let framed = Closure::once_into_js(move || {
        let begun = now();
        Timeout::new(0, move || then(now() - begun)).forget();
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
