//! Large type, to be read at arm's length: the figure as it was typed, and below it, smaller, in the unit
//! of the other wrench.

use super::finding::amount;
use shopmath::convert;
use shopmath::quantity::{Bounds, Kind, print};
use shopmath::result::Finding;
use shopmath::tools::Tools;
use yew::prelude::*;

/// The stages as typed, numbered where there are several.
pub(crate) fn stages(typed: &[Bounds], through_adapter: bool, tools: Tools) -> Html {
    let several = typed.len() > 1;
    let name = |place: usize| {
        let number = several.then(|| ["Stage ", &(place + 1).to_string()].concat());
        number.unwrap_or_default()
    };
    let stages = typed.iter().enumerate();
    stages
        .map(|(place, typed)| stage(*typed, name(place), through_adapter, tools))
        .collect()
}

/// A stage, and in the tools' own unit below it. Through an adapter the wrench is not set to its torque, so
/// the torque says where it counts, and is the smaller figure.
fn stage(typed: Bounds, mut name: String, through_adapter: bool, tools: Tools) -> Html {
    let torque = typed.kind() == Kind::Torque;
    let mut rows = convert::stage(typed, tools).rows.into_iter();
    // Of an angle any other unit helps; a torque is wanted for the wrenches there are.
    let other = if torque {
        rows.next()
    } else {
        rows.find(|row| row.unit != typed.low.unit)
    };
    let other = other.filter(|row| row.unit != typed.low.unit);
    let at_bolt = torque && through_adapter;
    if at_bolt {
        name += if name.is_empty() {
            "At the bolt"
        } else {
            ", at the bolt"
        };
    }
    html! {
        <div class={classes!("large-step", at_bolt.then_some("at-bolt"))}>
            if !name.is_empty() { <p class="large-name">{ name }</p> }
            <p class="large-number">{ print::bounds(typed) }</p>
            if let Some(other) = other { <p class="large-other">{ amount(&other, other.unit, false) }</p> }
        </div>
    }
}

/// What to set the wrench to through an adapter, in the unit of the spec first: in another one the
/// smaller of the two could look like the larger.
pub(crate) fn adapter(setting: &Finding, tools: Tools) -> Html {
    let own = tools.unit(setting.unit);
    let other = if own == setting.unit {
        tools.beside(own)
    } else {
        Some(own)
    };
    html! {
        <div class="large-step">
            <p class="large-name">{ "Set with the adapter" }</p>
            <p class="large-number">{ amount(setting, setting.unit, false) }</p>
            if let Some(other) = other { <p class="large-other">{ amount(setting, other, false) }</p> }
        </div>
    }
}
