//! The pace of answers: at once where the device keeps up, after the key is painted where it does not.
//!
//! A key has to be seen at once, whatever hangs on it. Where working out and drawing an answer has lately
//! taken a good part of a frame, the browser paints the key first and the answer follows in the next
//! frame; keys that come in between share one answer. Until it is there `<main>` says `aria-busy`, so
//! that nobody takes the old answer for the new one. Whatever else a person does finds it given. Before
//! any answer was given, what the start took tells a slow device.
//!
//! Fields have no part in it: what they hear by `oninput` is held back on its way to them, and told them
//! again after the frame; drawn meanwhile, they show what [`shown`] gives. What is done at a key before its frame is what the key waits for, so that is
//! little: one note, one attribute, and two closures made once.

use gloo::events::{EventListener, EventListenerOptions};
use gloo::utils::{document, window};
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Document, Element, InputEventInit, Window};
use yew::prelude::*;

use crate::forms::text;

/// What an answer and the frame that shows it may take before keys go first, millisecond, as the root of
/// their mean square: it is the slow ones that miss their frame. The browser has its own work for the key,
/// which takes much of the rest of a frame.
const SLOW: f64 = 9.0;
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
    /// The fields whose newest text has no answer yet.
    waiting: Vec<Element>,
    /// Whether a field is being told again what was held back.
    giving: bool,
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

    /// Whether a key in a field is to be seen before its answer.
    fn holds(&mut self, field: Element) -> bool {
        if self.giving || !self.slow && self.waiting.is_empty() {
            self.begun.get_or_insert_with(now);
            return false;
        }
        if !self.waiting.contains(&field) {
            self.waiting.push(field);
        }
        true
    }
}

/// What follows the next frame, each told what the frame took.
#[derive(Default)]
struct Frame {
    begun: f64,
    then: Vec<Box<dyn FnOnce(f64)>>,
}

thread_local! {
    static PACE: RefCell<Pace> = RefCell::default();
    static FRAME: RefCell<Frame> = RefCell::default();
    static WINDOW: Window = window();
    static DOCUMENT: Document = document();
    static IN_FRAME: Closure<dyn Fn()> = Closure::new(in_frame);
    static AFTER_FRAME: Closure<dyn Fn()> = Closure::new(after_frame);
}

/// Hears of keys before the fields do, and gives a waiting answer before anything else is done. Called
/// once, before the first screen is drawn.
pub(crate) fn watch() {
    PACE.with_borrow_mut(|pace| pace.begun = Some(now()));
    let first = EventListenerOptions::run_in_capture_phase();
    EventListener::new_with_options(&document(), "input", first, typed).forget();
    EventListener::new(&document(), "input", |_| heard()).forget();
    for event in ELSE {
        EventListener::new_with_options(&window(), *event, first, |_| give()).forget();
    }
    EventListener::new(&document(), "visibilitychange", |_| give()).forget();
}

/// A field's event on its way to the field.
fn typed(event: &Event) {
    let Some(field) = event.target() else { return };
    if PACE.with_borrow_mut(|pace| pace.holds(field.unchecked_into())) {
        event.stop_propagation();
        busy(true);
        after_the_frame(|_| give());
    }
}

/// The screen has heard of a field's text and will draw its answer.
fn heard() {
    let fence = PACE.with_borrow_mut(|pace| {
        pace.given = pace.given.wrapping_add(1);
        pace.fence.clone().map(|fence| (fence, pace.given))
    });
    if let Some((fence, given)) = fence {
        fence.set(given);
    }
}

/// Gives the waiting answers, if there are any.
fn give() {
    let waiting = PACE.with_borrow_mut(|pace| core::mem::take(&mut pace.waiting));
    if waiting.is_empty() {
        return;
    }
    let again = InputEventInit::new();
    again.set_bubbles(true);
    PACE.with_borrow_mut(|pace| pace.giving = true);
    for field in waiting {
        if let Ok(event) = InputEvent::new_with_event_init_dict("input", &again) {
            // Fails only for an event that is on its way already.
            let _ = field.dispatch_event(&event);
        }
    }
    PACE.with_borrow_mut(|pace| pace.giving = false);
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
        PACE.with_borrow_mut(|pace| (pace.begun.take(), !pace.waiting.is_empty(), pace.given == 0));
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
    let typed = PACE.with_borrow(|pace| pace.waiting.iter().find(|field| field.id() == id).cloned());
    typed.map_or_else(|| text.clone(), |field| self::text(&field).into())
}

/// A task that follows the next frame and is told what the frame took.
fn after_the_frame(then: impl FnOnce(f64) + 'static) {
    let asked = FRAME.with_borrow_mut(|frame| {
        frame.then.push(Box::new(then));
        frame.then.len() > 1
    });
    if !asked {
        // Refused by no browser; a hidden page, which gets no frames, has given its answers already.
        let _ =
            IN_FRAME.with(|then| WINDOW.with(|window| window.request_animation_frame(then.as_ref().unchecked_ref())));
    }
}

fn in_frame() {
    FRAME.with_borrow_mut(|frame| frame.begun = now());
    // Refused by no browser.
    let _ =
        AFTER_FRAME.with(|then| WINDOW.with(|window| window.set_timeout_with_callback(then.as_ref().unchecked_ref())));
}

fn after_frame() {
    let Frame { begun, then } = FRAME.take();
    let spent = now() - begun;
    for then in then {
        then(spent);
    }
}

fn busy(yes: bool) {
    if let Ok(Some(main)) = DOCUMENT.with(|document| document.query_selector("main")) {
        // An attribute of this name can be set on any element.
        let _ = match yes {
            true => main.set_attribute("aria-busy", "true"),
            false => main.remove_attribute("aria-busy"),
        };
    }
}

fn now() -> f64 {
    WINDOW.with(|window| window.performance().map_or(0.0, |clock| clock.now()))
}
