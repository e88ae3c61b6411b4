//! The spec in large type: target, adapter setting and angle, to be read at arm's length.

use crate::views::finding::amount;
use shopmath::convert;
use shopmath::fastener::bolt::{Assessment, BoltText};
use shopmath::quantity::{Bounds, Unit, print, read};
use shopmath::result::{Finding, Id};
use shopmath::tools::Tools;
use yew::prelude::*;

/// The view; it replaces the screen until it is closed.
pub(super) fn large(whole: &Assessment, text: &BoltText, tools: Tools, onclose: &Callback<MouseEvent>) -> Html {
    let expect = read::Expect {
        kind: None,
        bare: Some(Unit::NewtonMetre),
    };
    let stages = read::stages(text.get("spec"), expect).unwrap_or_default();
    let setting = whole
        .sections
        .iter()
        .flat_map(|part| &part.findings)
        .find(|finding| finding.id == Id::Named("wrench-setting"));
    html! {
        <section class="large">
            <p class="large-bolt">{ text.get("thread") }{ " " }{ text.get("class") }</p>
            if stages.is_empty() { <p>{ "No spec is typed, or it cannot be read. Close this and type one, such as 60 N·m." }</p> }
            { for stages.iter().map(|stage| step(*stage, tools)) }
            if let Some(setting) = setting { { adapter(setting, tools) } }
            <button type="button" class="button wide" onclick={onclose.clone()}>{ "Close" }</button>
        </section>
    }
}

/// A stage as typed, and in the tools' own units below it.
fn step(stage: Bounds, tools: Tools) -> Html {
    let other = convert::stage(stage, tools)
        .rows
        .into_iter()
        .find(|row| row.unit != stage.low.unit);
    html! {
        <div class="large-step">
            <p class="large-number">{ print::bounds(stage) }</p>
            if let Some(other) = other { <p class="large-other">{ amount(&other, other.unit, false) }</p> }
        </div>
    }
}

fn adapter(setting: &Finding, tools: Tools) -> Html {
    html! {
        <div class="large-step">
            <p class="large-name">{ "Set with the adapter" }</p>
            <p class="large-number">{ amount(setting, tools.unit(setting.unit), false) }</p>
        </div>
    }
}
