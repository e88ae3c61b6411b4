//! A choice of a few, each one tap: radio buttons drawn as one bar.

use yew::prelude::*;

/// The bar: a group `name` unique on the page, a label, the options as id and words, the id in
/// force, and what to call with the id chosen.
pub(crate) fn choice(
    name: &'static str,
    label: &'static str,
    options: &[(&'static str, &'static str)],
    chosen: &str,
    onchoose: &Callback<&'static str>,
) -> Html {
    let option = |&(id, words): &(&'static str, &'static str)| {
        let onchange = onchoose.reform(move |_: Event| id);
        html! {
            <label class="choice-option" key={id}>
                <input type="radio" {name} value={id} checked={id == chosen} {onchange} />
                <span>{ words }</span>
            </label>
        }
    };
    html! {
        <fieldset class="choice">
            <legend>{ label }</legend>
            <div class="choice-bar">{ for options.iter().map(option) }</div>
        </fieldset>
    }
}
