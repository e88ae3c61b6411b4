//! Any drawing of the core as SVG: geometry goes through untouched, looks are the style sheet's.

use shopmath::sketch::{Anchor, Mark, Shape, Sketch as Drawn, WIDTH, coordinate, coordinates};
use yew::prelude::*;

/// A drawing is drawn again only when it changes.
#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) drawn: Drawn,
}

/// The drawing.
#[component]
pub(crate) fn Sketch(props: &Props) -> Html {
    let drawn = &props.drawn;
    let frame = format!("0 0 {} {}", coordinate(WIDTH), coordinate(drawn.height));
    html! {
        <svg class="sketch" viewBox={frame} role="img" aria-label={drawn.title.clone()}>
            { for drawn.marks.iter().map(mark) }
        </svg>
    }
}

/// One mark of a drawing.
pub(crate) fn mark(mark: &Mark) -> Html {
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
