//! Any drawing of the core as SVG: geometry goes through untouched, looks are the style sheet's.

use shopmath::sketch::{Anchor, Mark, Shape, Sketch, WIDTH, coordinate, coordinates};
use yew::prelude::*;

/// The drawing.
pub(crate) fn sketch(sketch: &Sketch) -> Html {
    let frame = format!("0 0 {} {}", coordinate(WIDTH), coordinate(sketch.height));
    html! {
        <svg class="sketch" viewBox={frame} role="img" aria-label={sketch.title.clone()}>
            { for sketch.marks.iter().map(mark) }
        </svg>
    }
}

fn mark(mark: &Mark) -> Html {
    let class = classes!("sk", mark.role.name());
    match &mark.shape {
        Shape::Area(points) => html! { <polygon {class} points={coordinates(points)} /> },
        Shape::Line(points) => html! { <polyline {class} points={coordinates(points)} /> },
        Shape::Circle([x, y], radius) => {
            html! { <circle {class} cx={coordinate(*x)} cy={coordinate(*y)} r={coordinate(*radius)} /> }
        }
        Shape::Words([x, y], anchor, words) => {
            let anchor = match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            html! { <text {class} x={coordinate(*x)} y={coordinate(*y)} text-anchor={anchor}>{ words }</text> }
        }
    }
}
