//! The spec in large type: target, adapter setting and angle, to be read at arm's length.

use super::section::finding;
use crate::views::caution::cautions;
use crate::views::large::{adapter, stages as in_large};
use crate::views::overlay::Overlay;
use shopmath::fastener::bolt::{Assessment, BoltText};
use shopmath::quantity::Bounds;
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
            // What to set stands first: whoever sees only the torque at the bolt would set that.
            if let Some(setting) = setting {
                { adapter(setting, tools) }
            } else if text.has("adapter") {
                <p>{ "The setting for the adapter is not known. Close this and put the wrench, the adapter and its angle right." }</p>
            }
            { in_large(stages, text.has("adapter"), tools) }
            { for set.iter().map(|set| cautions(&set.cautions)) }
            { overlay.closer() }
        </section>
    }
}
