//! One line of Convert: what was read, and every row of every stage.

use crate::views::caution::cautions;
use crate::views::finding::Finding;
use shopmath::convert::{Conversion, Stage};
use shopmath::quantity::print;
use yew::prelude::*;

/// Rows drawn at once; the others follow by a frame.
const FIRST: usize = 2;

/// One line: every row of every stage, those below the first as they are in `later`.
pub(super) fn single(conversion: &Conversion, later: Option<&Conversion>) -> Html {
    // Rows of another kind are no rows of this line.
    let kinds = |of: &Conversion| of.stages.iter().map(|stage| stage.typed.kind()).collect::<Vec<_>>();
    let later = later.filter(|later| kinds(later) == kinds(conversion));
    let several = conversion.stages.len() > 1;
    html! {
        <>
            <p class="read-as">{ "Read as " }<strong>{ echo(conversion) }</strong></p>
            { cautions(&conversion.cautions) }
            { for conversion.stages.iter().enumerate().map(|(index, stage)| {
                rows(stage, later.and_then(|later| later.stages.get(index)), several.then_some(index))
            }) }
        </>
    }
}

fn rows(stage: &Stage, later: Option<&Stage>, index: Option<usize>) -> Html {
    let first = stage.rows.iter().take(FIRST);
    let others = later.into_iter().flat_map(|later| later.rows.iter().skip(FIRST));
    html! {
        <div class="rows" data-stage={index.map(|index| (index + 1).to_string())} key={index.unwrap_or_default()}>
            if index.is_some() { <h2>{ print::bounds(stage.typed) }</h2> }
            { for first.chain(others).map(|finding| html! {
                <Finding key={finding.unit.name().to_owned() + finding.name} finding={finding.clone()} unit={finding.unit} identified={index.is_none()} />
            }) }
        </div>
    }
}

/// The line as it was understood.
pub(super) fn echo(conversion: &Conversion) -> String {
    let stages: Vec<String> = conversion
        .stages
        .iter()
        .map(|stage| print::bounds(stage.typed))
        .collect();
    let label = conversion
        .label
        .as_ref()
        .map(|label| format!("{label}: "))
        .unwrap_or_default();
    format!("{label}{}", stages.join(" + "))
}
