//! The route as a drawing whose pulleys can be tapped and dragged.
//!
//! Where a finger is in the drive's millimetres, the core says; here are only the events.

use super::Action;
use crate::views::sketch::mark;
use shopmath::drive::bench::drawing::Drawing;
use shopmath::drive::bench::edit::Edit;
use shopmath::sketch::route::{Drag, Frame, Grip, route};
use shopmath::sketch::{WIDTH, coordinate};
use web_sys::Element;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    pub(super) drawing: Drawing,
    pub(super) chosen: Option<usize>,
    pub(super) onact: Callback<Action>,
}

/// The drawing.
#[component]
pub(super) fn RouteView(props: &Props) -> Html {
    let held = use_state(|| None::<Drag>);
    let picture = use_node_ref();
    let Some(frame) = held.map(|held| held.frame).or_else(|| Frame::of(&props.drawing)) else {
        return html! { <p class="note">{ "Nothing can be drawn until the pulleys can be read." }</p> };
    };
    let sketch = route(&props.drawing, &frame, props.chosen);
    let onpointermove = {
        let (held, picture, onact) = (held.clone(), picture.clone(), props.onact.clone());
        Callback::from(move |event: PointerEvent| {
            let Some((at, wide)) = held.and(place(&picture, &event)) else {
                return;
            };
            if let Some((dragged, [x, y])) = held.and_then(|drag| drag.to(at, wide)) {
                let pulley = dragged.pulley;
                if *held != Some(dragged) {
                    held.set(Some(dragged));
                }
                onact.emit(Action::Edit(Edit::Move { pulley, x, y }));
            }
        })
    };
    let onpointerup = {
        let held = held.setter();
        Callback::from(move |_: PointerEvent| held.set(None))
    };
    let grip = |grip: Grip| {
        let (held, onact, picture, drawing) = (
            held.setter(),
            props.onact.clone(),
            picture.clone(),
            props.drawing.clone(),
        );
        let onpointerdown = Callback::from(move |event: PointerEvent| {
            if let Some(target) = event.target_dyn_into::<Element>() {
                // Without capture the drag ends when the finger leaves the pulley; nothing is lost.
                let _ = target.set_pointer_capture(event.pointer_id());
            }
            onact.emit(Action::Choose(Some(grip.pulley)));
            let (at, wide) = place(&picture, &event).unwrap_or_default();
            held.set(Drag::take(&drawing, frame, grip.pulley, at, wide));
        });
        html! {
            <circle key={grip.pulley} class="grip" data-pulley={grip.pulley.to_string()} cx={coordinate(grip.centre[0])}
                cy={coordinate(grip.centre[1])} r={coordinate(grip.radius)} {onpointerdown} />
        }
    };
    html! {
        <svg ref={picture.clone()} class="sketch route" viewBox={format!("0 0 {} {}", coordinate(WIDTH), coordinate(sketch.height))}
            role="img" aria-label={sketch.title.clone()} {onpointermove} onpointerup={onpointerup.clone()} onpointercancel={onpointerup}>
            { for sketch.marks.iter().map(mark) }
            { for frame.grips(&props.drawing).into_iter().map(grip) }
        </svg>
    }
}

/// Where on the drawing a pointer is, and how wide the drawing is shown.
fn place(picture: &NodeRef, event: &PointerEvent) -> Option<([f64; 2], f64)> {
    let shown = picture.cast::<Element>()?.get_bounding_client_rect();
    let across = f64::from(event.client_x()) - shown.left();
    let down = f64::from(event.client_y()) - shown.top();
    Some(([across, down], shown.width()))
}
