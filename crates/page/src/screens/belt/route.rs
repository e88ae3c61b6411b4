//! The route as a drawing whose pulleys can be tapped and dragged, and the length it has.
//!
//! Where a finger is in the drive's millimetres, the core says; here are only the events. While a
//! pulley moves, only this is worked out and drawn, once per frame; the rest of the screen takes the
//! new place over when the finger rests or lets go.

use super::{Action, pulley_buttons, section};
use crate::views::button::Button;
use crate::views::icon::signed;
use crate::views::jumps::{lead_to, swipe};
use crate::views::sketch::mark;
use gloo::timers::callback::Timeout;
use gloo::utils::{document, window};
use shopmath::drive::bench::drawing::Drawing;
use shopmath::drive::bench::edit::{Edit, apply};
use shopmath::drive::bench::{Assessment, DriveText, glance, resolve};
use shopmath::sketch::route::{Drag, Frame, Grip, route};
use shopmath::sketch::{WIDTH, coordinate};
use shopmath::tools::Tools;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::Element;
use yew::prelude::*;

/// How long a finger is still before it rests, millisecond.
const REST: u32 = 100;

#[derive(Properties)]
pub(super) struct Props {
    /// What the text comes to.
    pub(super) whole: Rc<Assessment>,
    pub(super) text: DriveText,
    pub(super) chosen: Option<usize>,
    pub(super) tools: Tools,
    pub(super) onact: Callback<Action>,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.whole, &other.whole) && self.chosen == other.chosen && self.tools == other.tools
    }
}

/// A finger on a pulley.
#[derive(Default)]
struct Hand {
    drag: Option<Drag>,
    /// Where it is on the drawing, and how wide that is shown, until the next frame takes it over.
    at: Option<([f64; 2], f64)>,
    /// Takes the pulley's place over once the finger rests.
    rest: Option<(Timeout, Edit)>,
}

/// What a drag has made of a drive that does not know of it yet.
struct Moved {
    from: Rc<Assessment>,
    to: Assessment,
}

/// The drawing and the length.
#[component]
pub(super) fn RouteView(props: &Props) -> Html {
    let hand = use_mut_ref(Hand::default);
    let moved = use_state(|| None::<Moved>);
    let picture = use_node_ref();
    use_effect_with(props.chosen, |chosen| {
        if let Some(pulley) = *chosen {
            swipe_to(pulley);
        }
    });
    let moving = moved
        .as_ref()
        .filter(|moved| Rc::ptr_eq(&moved.from, &props.whole))
        .map(|moved| &moved.to);
    let whole = moving.unwrap_or(&props.whole);
    let held = hand.borrow().drag.map(|drag| drag.frame);
    let Some(frame) = held.or_else(|| Frame::of(&whole.drawing)) else {
        return html! {
            <>
                <p class="note">{ "Nothing can be drawn until the pulleys can be read." }</p>
                { section::headline(whole, props.tools, false) }
            </>
        };
    };
    let sketch = route(&whole.drawing, &frame, props.chosen);
    let step = {
        let (hand, from, text) = (hand.clone(), props.whole.clone(), props.text.clone());
        let (moved, onact) = (moved.setter(), props.onact.clone());
        move || {
            if let Some(edit) = take(&hand) {
                let to = apply(&text, &edit).map(|text| glance(resolve(&text)));
                moved.set(to.map(|to| Moved { from: from.clone(), to }));
                let (act, then) = (onact.clone(), edit.clone());
                let timer = Timeout::new(REST, move || act.emit(Action::Edit(then)));
                hand.borrow_mut().rest = Some((timer, edit));
            }
        }
    };
    let onpointermove = {
        let (hand, picture, step) = (hand.clone(), picture.clone(), step.clone());
        Callback::from(move |event: PointerEvent| {
            let mut held = hand.borrow_mut();
            if held.drag.is_none() {
                return;
            }
            let asked = held.at.is_some();
            held.at = place(&picture, &event);
            if !asked && held.at.is_some() {
                let step = Closure::once_into_js(step.clone());
                // Refused only where there is no screen to draw on.
                let _ = window().request_animation_frame(step.unchecked_ref());
            }
        })
    };
    let onpointerup = {
        let (hand, moved, onact) = (hand.clone(), moved.setter(), props.onact.clone());
        Callback::from(move |_: PointerEvent| {
            step();
            let Hand { rest, .. } = hand.take();
            if let Some((_, edit)) = rest {
                onact.emit(Action::Edit(edit));
            }
            moved.set(None);
        })
    };
    let grip = |grip: Grip| {
        let (hand, onact, picture, whole) = (hand.clone(), props.onact.clone(), picture.clone(), props.whole.clone());
        let onpointerdown = Callback::from(move |event: PointerEvent| {
            if let Some(target) = event.target_dyn_into::<Element>() {
                // Without capture the drag ends when the finger leaves the pulley; nothing is lost.
                let _ = target.set_pointer_capture(event.pointer_id());
            }
            onact.emit(Action::Choose(Some(grip.pulley)));
            let (at, wide) = place(&picture, &event).unwrap_or_default();
            hand.borrow_mut().drag = Drag::take(&whole.drawing, frame, grip.pulley, at, wide);
        });
        html! {
            <circle key={grip.pulley} class="grip" data-pulley={grip.pulley.to_string()} cx={coordinate(grip.centre[0])}
                cy={coordinate(grip.centre[1])} r={coordinate(grip.radius)} {onpointerdown} />
        }
    };
    html! {
        <>
            <svg ref={picture.clone()} class="sketch route" viewBox={format!("0 0 {} {}", coordinate(WIDTH), coordinate(sketch.height))}
                role="img" aria-label={sketch.title.clone()} {onpointermove} onpointerup={onpointerup.clone()} onpointercancel={onpointerup}>
                { for sketch.marks.iter().map(mark) }
                { for frame.grips(&whole.drawing).into_iter().map(grip) }
            </svg>
            { pulley_buttons(&whole.drawing.discs, props.chosen, &props.onact) }
            { taken(&whole.drawing, props) }
            { section::headline(whole, props.tools, moving.is_some()) }
        </>
    }
}

/// Under the drawing, what moves the pulley that is worked on, and the way to its panel below the length;
/// before, how to take one. As high either way, so that nothing moves under the finger.
fn taken(drawing: &Drawing, props: &Props) -> Html {
    let disc = props
        .chosen
        .and_then(|index| drawing.discs.get(index).map(|disc| (index, disc)));
    let Some((pulley, disc)) = disc else {
        return html! { <div class="taken"><p class="note">{ "Tap a pulley to change it, or drag it." }</p></div> };
    };
    let nudge = |words: &'static str, name: &'static str, right: f64, up: f64| {
        let onclick = props
            .onact
            .reform(move |_: MouseEvent| Action::Edit(Edit::Nudge { pulley, right, up }));
        Button::chip(signed(words, &format!("1 mm {name}")), onclick)
            .id(name)
            .draw()
    };
    html! {
        <div class="taken">
            { nudge("←", "left", -1.0, 0.0) }
            { nudge("→", "right", 1.0, 0.0) }
            { nudge("↑", "up", 0.0, 1.0) }
            { nudge("↓", "down", 0.0, -1.0) }
            { Button::chip("Edit", Callback::from(|_: MouseEvent| lead_to("pulley"))).label(format!("Edit {} {}", pulley + 1, disc.name)).id("to-panel").draw() }
        </div>
    }
}

/// Swipes the strip of the pulleys' buttons to the one that was taken on the drawing, unless it is in sight.
fn swipe_to(pulley: usize) {
    let button = document().get_element_by_id(&format!("pulley-{}", pulley + 1));
    if let Some((button, strip)) = button.and_then(|button| Some((button.clone(), button.parent_element()?))) {
        let (own, whole) = (button.get_bounding_client_rect(), strip.get_bounding_client_rect());
        if own.left() < whole.left() || own.right() > whole.right() {
            swipe(&strip, &button);
        }
    }
}

/// The change a finger's last place asks for, if it has moved.
fn take(hand: &RefCell<Hand>) -> Option<Edit> {
    let mut hand = hand.borrow_mut();
    let (at, wide) = hand.at.take()?;
    let (dragged, [x, y]) = hand.drag?.to(at, wide)?;
    let pulley = dragged.pulley;
    hand.drag = Some(dragged);
    Some(Edit::Move { pulley, x, y })
}

/// Where on the drawing a pointer is, and how wide the drawing is shown.
fn place(picture: &NodeRef, event: &PointerEvent) -> Option<([f64; 2], f64)> {
    let shown = picture.cast::<Element>()?.get_bounding_client_rect();
    let across = f64::from(event.client_x()) - shown.left();
    let down = f64::from(event.client_y()) - shown.top();
    Some(([across, down], shown.width()))
}
