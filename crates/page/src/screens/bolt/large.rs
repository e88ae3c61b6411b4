//! The spec in large type: target, adapter setting and angle, to be read at arm's length.

use super::section::finding;
use crate::views::caution::cautions;
use crate::views::finding::amount;
use crate::views::overlay::Overlay;
use shopmath::convert;
use shopmath::fastener::bolt::{Assessment, BoltText};
use shopmath::quantity::{Bounds, Kind, print};
use shopmath::result::Finding;
use shopmath::tools::Tools;
use yew::prelude::*;

/// The view; it replaces the screen until it is closed.
pub(super) fn large(whole: &Assessment, text: &BoltText, stages: &[Bounds], tools: Tools, overlay: &Overlay) -> Html {
    let set = finding(whole, "wrench-setting");
    let setting = set.filter(|_| text.has("adapter"));
    html! {
        <section class="large">
            <p class="large-bolt">{ text.get("thread") }{ " " }{ text.get("class") }</p>
            if stages.is_empty() { <p>{ "No spec is typed, or it cannot be read. Close this and type one, such as 60 N·m." }</p> }
            { for stages.iter().map(|stage| step(*stage, text.has("adapter"), tools)) }
            if let Some(setting) = setting {
                { adapter(setting, tools) }
            } else if text.has("adapter") {
                <p>{ "The setting for the adapter is not known. Close this and put the wrench, the adapter and its angle right." }</p>
            }
            { for set.iter().map(|set| cautions(&set.cautions)) }
            { overlay.closer() }
        </section>
    }
}

/// A stage as typed, and in the tools' own units below it. Through an adapter the wrench is not
/// set to its torque, so the torque says where it counts.
fn step(stage: Bounds, through_adapter: bool, tools: Tools) -> Html {
    let other = convert::stage(stage, tools)
        .rows
        .into_iter()
        .find(|row| row.unit != stage.low.unit);
    html! {
        <div class="large-step">
            if through_adapter && stage.kind() == Kind::Torque { <p class="large-name">{ "At the bolt" }</p> }
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
            if let Some(also) = tools.beside(setting.unit) { <p class="large-other">{ amount(setting, also, false) }</p> }
        </div>
    }
}
