//! A choice of a few, each one tap: radio buttons drawn as one bar.

use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    /// The name of the group, unique on the page.
    pub(crate) name: &'static str,
    /// What is being chosen, in words.
    pub(crate) label: AttrValue,
    /// Id and words of each option.
    pub(crate) options: Vec<(&'static str, &'static str)>,
    /// The id in force.
    pub(crate) chosen: &'static str,
    /// Called with the id chosen.
    pub(crate) onchoose: Callback<&'static str>,
}

/// The bar.
#[component]
pub(crate) fn Choice(props: &Props) -> Html {
    let option = |&(id, words): &(&'static str, &'static str)| {
        let onchange = props.onchoose.reform(move |_: Event| id);
        html! {
            <label class="choice-option" key={id}>
                <input type="radio" name={props.name} value={id} checked={id == props.chosen} {onchange} />
                <span>{ words }</span>
            </label>
        }
    };
    html! {
        <fieldset class="choice">
            <legend>{ &props.label }</legend>
            <div class="choice-bar">{ for props.options.iter().map(option) }</div>
        </fieldset>
    }
}
