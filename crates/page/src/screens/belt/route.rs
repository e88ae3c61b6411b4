//! The route as a drawing whose pulleys can be tapped and dragged.
//!
//! Where a finger is in the drive's millimetres, the core says; here are only the events.

use super::Action;
use crate::views::sketch::mark;
use shopmath::drive::bench::drawing::Drawing;
use shopmath::drive::bench::edit::Edit;
use shopmath::sketch::route::{Frame, Grip, route};
use shopmath::sketch::{WIDTH, coordinate};
use web_sys::Element;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    pub(super) drawing: Drawing,
    pub(super) chosen: Option<usize>,
    pub(super) onact: Callback<Action>,
}

/// A pulley under a finger, and the frame the drawing had when it was taken.
#[derive(Clone, Copy, PartialEq)]
struct Held {
    pulley: usize,
    frame: Frame,
}

/// The drawing.
#[component]
pub(super) fn RouteView(props: &Props) -> Html {
    let held = use_state(|| None::<Held>);
    let picture = use_node_ref();
    let Some(frame) = held.map(|held| held.frame).or_else(|| Frame::of(&props.drawing)) else {
        return html! { <p class="note">{ "Nothing can be drawn until the pulleys can be read." }</p> };
    };
    let sketch = route(&props.drawing, &frame, props.chosen);
    let onpointermove = {
        let (held, picture, onact) = (held.clone(), picture.clone(), props.onact.clone());
        Callback::from(move |event: PointerEvent| {
            let (Some(held), Some(picture)) = (*held, picture.cast::<Element>()) else {
                return;
            };
            let shown = picture.get_bounding_client_rect();
            let place = held.frame.under(
                f64::from(event.client_x()) - shown.left(),
                f64::from(event.client_y()) - shown.top(),
                shown.width(),
            );
            onact.emit(Action::Edit(Edit::Move {
                pulley: held.pulley,
                x: place[0],
                y: place[1],
            }));
        })
    };
    let onpointerup = {
        let held = held.setter();
        Callback::from(move |_: PointerEvent| held.set(None))
    };
    let grip = |grip: Grip| {
        let (held, onact) = (held.setter(), props.onact.clone());
        let onpointerdown = Callback::from(move |event: PointerEvent| {
            if let Some(target) = event.target_dyn_into::<Element>() {
                // Without capture the drag ends when the finger leaves the pulley; nothing is lost.
                let _ = target.set_pointer_capture(event.pointer_id());
            }
            onact.emit(Action::Choose(Some(grip.pulley)));
            held.set(Some(Held {
                pulley: grip.pulley,
                frame,
            }));
        });
        html! {
            <circle key={grip.pulley} class="grip" data-pulley={grip.pulley.to_string()} cx={coordinate(grip.centre[0])}
                cy={coordinate(grip.centre[1])} r={coordinate(grip.radius)} {onpointerdown} />
        }
    };
    html! {
        <svg ref={picture} class="sketch route" viewBox={format!("0 0 {} {}", coordinate(WIDTH), coordinate(sketch.height))}
            role="img" aria-label={sketch.title.clone()} {onpointermove} onpointerup={onpointerup.clone()} onpointercancel={onpointerup}>
            { for sketch.marks.iter().map(mark) }
            { for frame.grips(&props.drawing).into_iter().map(grip) }
        </svg>
    }
}
