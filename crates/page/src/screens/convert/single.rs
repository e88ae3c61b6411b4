//! One line of Convert: what was read, and every row of every stage.

use crate::views::caution::cautions;
use crate::views::finding::Finding;
use shopmath::convert::{Conversion, Stage};
use shopmath::quantity::print;
use yew::prelude::*;

/// One line: every row of every stage.
pub(super) fn single(conversion: &Conversion) -> Html {
    let several = conversion.stages.len() > 1;
    html! {
        <>
            <p class="read-as">{ "Read as " }<strong>{ echo(conversion) }</strong></p>
            { cautions(&conversion.cautions) }
            { for conversion.stages.iter().enumerate().map(|(index, stage)| rows(stage, several.then_some(index))) }
        </>
    }
}

fn rows(stage: &Stage, index: Option<usize>) -> Html {
    html! {
        <div class="rows" data-stage={index.map(|index| (index + 1).to_string())} key={index.unwrap_or_default()}>
            if index.is_some() { <h2>{ print::bounds(stage.typed) }</h2> }
            { none_other(stage) }
            { for stage.rows.iter().map(|finding| html! {
                <Finding key={finding.unit.name().to_owned() + finding.name} finding={finding.clone()} unit={finding.unit} identified={index.is_none()} />
            }) }
        </div>
    }
}

/// What is said in place of rows: a frequency or a share is read, and has no other unit.
pub(super) fn none_other(stage: &Stage) -> Html {
    html! { if stage.rows.is_empty() { <p class="note">{ "No other unit is kept for this." }</p> } }
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
    let limit = conversion.limit.as_ref().map(|limit| format!("{limit} "));
    format!("{label}{}{}", limit.unwrap_or_default(), stages.join(" + "))
}
