//! A field of a screen: a text or a list to choose from, what it takes while empty, common entries
//! one tap away, and what is wrong with what was typed.

use super::button::Button;
use super::fault::chips;
use super::focus::into_sight;
use crate::forms::{hint, typing};
use crate::pace;
use shopmath::field::{Choice, FieldFault};
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// A field is drawn again only when one of these changes.
#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    /// The key in the link, and the id of the element where the screen has one of it.
    pub(crate) name: &'static str,
    /// The row it stands in, where the screen has several of it; the id then begins with this.
    #[prop_or_default]
    pub(crate) row: Option<AttrValue>,
    /// What the trade calls it.
    pub(crate) label: AttrValue,
    /// What holds while nothing is typed.
    pub(crate) empty: &'static str,
    /// The text as typed.
    pub(crate) text: AttrValue,
    /// Whether only the entries can be chosen.
    pub(crate) closed: bool,
    /// The letters it takes, where what keeps it has a limit.
    #[prop_or_default]
    pub(crate) most: Option<usize>,
    /// Common entries.
    pub(crate) entries: &'static [Choice],
    /// What is wrong, and texts to take instead.
    pub(crate) wrong: Vec<FieldFault>,
    /// The unit that its text names not and is read in.
    #[prop_or_default]
    pub(crate) unit: Option<&'static str>,
    /// Whether the screen says what is wrong in another place, in an element of the error's id.
    #[prop_or_default]
    pub(crate) elsewhere: bool,
    /// Called with the key and the new text.
    pub(crate) onset: Callback<(&'static str, String)>,
}

/// The field.
#[component]
pub(crate) fn Field(field: &Props) -> Html {
    let key = field.name;
    let id = match &field.row {
        Some(row) => AttrValue::from(format!("{row}-{key}")),
        None => AttrValue::Static(key),
    };
    // The screen's own fields have their places in its grid, those of rows theirs in the row's.
    let place = format!("{}-{key}", if field.row.is_some() { "entry" } else { "field" });
    let invalid = (!field.wrong.is_empty()).then_some("true");
    let unit = field.unit.map(|_| format!("{id}-unit"));
    let error = invalid.map(|_| format!("{id}-error"));
    let described = match (&unit, error) {
        (Some(unit), Some(error)) => Some([unit, " ", &error].concat()),
        (unit, error) => error.or(unit.clone()),
    };
    let text = pace::shown(&id, &field.text);
    let set: Callback<String> = field.onset.reform(move |text| (key, text));
    html! {
        <div class={classes!("field", place, invalid.map(|_| "field-wrong"))}>
            <label for={id.clone()}>{ &field.label }</label>
            if field.closed {
                { choices(field, id.clone(), invalid, described, &set) }
            } else {
                <div class="field-box">
                    <input id={id.clone()} name={key} type="text" placeholder={hint(&text, field.empty)} value={text.clone()}
                        aria-invalid={invalid} aria-describedby={described} autocomplete="off" autocapitalize="off"
                        autocorrect="off" spellcheck="false" enterkeyhint="done" maxlength={field.most.map(|most| most.to_string())}
                        oninput={typing(&set)} />
                    if let Some(words) = field.unit { <span id={unit} class="unit-taken" aria-hidden="true">{ words }</span> }
                </div>
                { entries(field, &set) }
            }
            if invalid.is_some() && !field.elsewhere { { wrong(field, &id, &set) } }
        </div>
    }
}

/// The entries as a list the phone itself shows; the empty one stands for what holds anyway.
fn choices(
    field: &Props,
    id: AttrValue,
    invalid: Option<&'static str>,
    described: Option<String>,
    set: &Callback<String>,
) -> Html {
    let known = field.entries.iter().any(|entry| entry.text == field.text);
    let named = field
        .entries
        .iter()
        .find(|entry| entry.text == field.empty)
        .map(|entry| entry.label);
    let empty = if field.empty.is_empty() {
        "choose"
    } else {
        named.unwrap_or(field.empty)
    };
    let option = |entry: &Choice| html! { <option key={entry.text} value={entry.text} selected={entry.text == field.text}>{ entry.label }</option> };
    html! {
        <select {id} name={field.name} aria-invalid={invalid} aria-describedby={described}
            onchange={set.reform(|event: Event| event.target_unchecked_into::<HtmlSelectElement>().value())}>
            <option key="" value="" selected={field.text.is_empty()}>{ empty }</option>
            if !known && !field.text.is_empty() { <option key="typed" value={field.text.clone()} selected=true>{ &field.text }</option> }
            { for field.entries.iter().filter(|entry| entry.text != field.empty || entry.text == field.text).map(option) }
        </select>
    }
}

/// The entries as a strip of buttons.
fn entries(field: &Props, set: &Callback<String>) -> Html {
    if field.entries.is_empty() {
        return html! {};
    }
    let entry = |&Choice { text, label }: &Choice| {
        let onclick = set.reform(move |_: MouseEvent| text.to_owned());
        Button::chip(label, onclick).pressed(text == field.text).keyed(text)
    };
    html! { <div class="strip" tabindex="-1" onfocusin={into_sight}>{ for field.entries.iter().map(entry) }</div> }
}

fn wrong(field: &Props, id: &str, set: &Callback<String>) -> Html {
    html! {
        <div class="fault">
            <div id={format!("{id}-error")}>{ for field.wrong.iter().map(|fault| html! { <p>{ &fault.sentence }</p> }) }</div>
            { chips(field.wrong.iter().flat_map(|fault| fault.remedies.clone()), set, Some(id)) }
        </div>
    }
}
