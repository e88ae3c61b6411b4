//! The spec in large type: target, adapter setting and angle, to be read at arm's length.

use super::section::finding;
use crate::awake::use_awake;
use crate::route::Route;
use crate::views::caution::cautions;
use crate::views::finding::amount;
use gloo::events::EventListener;
use gloo::utils::window;
use shopmath::convert;
use shopmath::fastener::bolt::{Assessment, BoltText};
use shopmath::quantity::{Bounds, Kind, print};
use shopmath::result::Finding;
use shopmath::tools::Tools;
use wasm_bindgen::JsValue;
use web_sys::HtmlElement;
use yew::prelude::*;

/// Whether the view is open, how to open and close it, and what has the focus in either case.
pub(super) struct Large {
    pub(super) open: UseStateHandle<bool>,
    /// The button that opens it.
    opener: NodeRef,
    /// The button that closes it.
    closer: NodeRef,
}

/// The view's state. The phone's back button closes it, since it looks like a screen of its own;
/// while it is open the screen stays lit.
#[hook]
pub(super) fn use_large() -> Large {
    let open = use_state(|| false);
    let (opener, closer) = (use_node_ref(), use_node_ref());
    use_awake(*open);
    let was = use_mut_ref(|| false);
    {
        let (setter, opener, closer) = (open.setter(), opener.clone(), closer.clone());
        use_effect_with(*open, move |&open| {
            if was.replace(open) != open {
                let next = if open { closer } else { opener };
                if let Some(button) = next.cast::<HtmlElement>() {
                    // Focus can only be refused when the button is gone.
                    let _ = button.focus();
                }
            }
            let listener = open.then(|| EventListener::new(&window(), "popstate", move |_| setter.set(false)));
            move || drop(listener)
        });
    }
    Large { open, opener, closer }
}

impl Large {
    /// The button that opens the view over the bolt at `route`.
    pub(super) fn button(&self, route: Route) -> Html {
        let open = self.open.setter();
        let onclick = Callback::from(move |_: MouseEvent| {
            // Both entries hold what is typed now; where the browser refuses, only its back
            // button does not lead here.
            if let Ok(history) = window().history() {
                let address = route.print();
                let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&address));
                let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&address));
            }
            open.set(true);
        });
        html! { <button type="button" ref={&self.opener} class="button wide" {onclick}>{ "Large type, for arm's length" }</button> }
    }

    /// The view; it replaces the screen until it is closed.
    pub(super) fn view(&self, whole: &Assessment, text: &BoltText, stages: &[Bounds], tools: Tools) -> Html {
        let set = finding(whole, "wrench-setting");
        let setting = set.filter(|_| text.has("adapter"));
        let open = self.open.setter();
        let onclick = Callback::from(move |_: MouseEvent| {
            open.set(false);
            if let Ok(history) = window().history() {
                // Takes back the entry that opening made.
                let _ = history.back();
            }
        });
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
                <button type="button" ref={&self.closer} class="button wide" {onclick}>{ "Close" }</button>
            </section>
        }
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
