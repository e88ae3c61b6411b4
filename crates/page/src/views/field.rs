//! A field of a screen: a text or a list to choose from, what it takes while empty, common entries
//! one tap away, and what is wrong with what was typed.

use super::fault::chips;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// What a field needs to be drawn.
pub(crate) struct Field<'a> {
    /// The key in the link and the id of the element.
    pub(crate) key: &'static str,
    /// What the trade calls it.
    pub(crate) label: &'static str,
    /// What holds while nothing is typed.
    pub(crate) empty: &'a str,
    /// The text as typed.
    pub(crate) text: &'a str,
    /// Whether only the entries can be chosen.
    pub(crate) closed: bool,
    /// Common entries: what each types and what stands on it.
    pub(crate) entries: Vec<(&'static str, &'static str)>,
    /// What is wrong, and texts to take instead.
    pub(crate) wrong: Vec<(String, Vec<String>)>,
}

/// The field; `onset` is called with its key and the new text.
pub(crate) fn field(field: &Field<'_>, onset: &Callback<(&'static str, String)>) -> Html {
    let key = field.key;
    let invalid = (!field.wrong.is_empty()).then_some("true");
    let described = invalid.map(|_| format!("{key}-error"));
    let set: Callback<String> = onset.reform(move |text| (key, text));
    html! {
        <div class="field" key={key}>
            <label for={key}>{ field.label }</label>
            if field.closed {
                { choices(field, invalid, described, &set) }
            } else {
                <input id={key} name={key} type="text" value={field.text.to_owned()} placeholder={field.empty.to_owned()}
                    aria-invalid={invalid} aria-describedby={described} autocomplete="off" autocapitalize="off"
                    autocorrect="off" spellcheck="false" enterkeyhint="done"
                    oninput={set.reform(|event: InputEvent| event.target_unchecked_into::<HtmlInputElement>().value())} />
                { entries(field, &set) }
            }
            if invalid.is_some() { { wrong(field, &set) } }
        </div>
    }
}

/// The entries as a list the phone itself shows; the empty one stands for what holds anyway.
fn choices(
    field: &Field<'_>,
    invalid: Option<&'static str>,
    described: Option<String>,
    set: &Callback<String>,
) -> Html {
    let known = field.entries.iter().any(|(text, _)| *text == field.text);
    let name = |text: &str| {
        field
            .entries
            .iter()
            .find(|(entry, _)| *entry == text)
            .map_or(text.to_owned(), |(_, name)| (*name).to_owned())
    };
    let empty = if field.empty.is_empty() {
        "choose".to_owned()
    } else {
        name(field.empty)
    };
    let option = |&(text, name): &(&'static str, &'static str)| html! { <option key={text} value={text} selected={text == field.text}>{ name }</option> };
    html! {
        <select id={field.key} name={field.key} aria-invalid={invalid} aria-describedby={described}
            onchange={set.reform(|event: Event| event.target_unchecked_into::<HtmlSelectElement>().value())}>
            <option key="" value="" selected={field.text.is_empty()}>{ empty }</option>
            if !known && !field.text.is_empty() { <option key="typed" value={field.text.to_owned()} selected=true>{ field.text }</option> }
            { for field.entries.iter().filter(|(text, _)| *text != field.empty || *text == field.text).map(option) }
        </select>
    }
}

/// The entries as a strip of buttons.
fn entries(field: &Field<'_>, set: &Callback<String>) -> Html {
    if field.entries.is_empty() {
        return html! {};
    }
    let entry = |&(text, name): &(&'static str, &'static str)| {
        let onclick = set.reform(move |_: MouseEvent| text.to_owned());
        let pressed = (text == field.text).to_string();
        html! { <button type="button" class="chip" key={text} aria-pressed={pressed} {onclick}>{ name }</button> }
    };
    html! { <div class="strip">{ for field.entries.iter().map(entry) }</div> }
}

fn wrong(field: &Field<'_>, set: &Callback<String>) -> Html {
    html! {
        <div class="fault">
            <div id={format!("{}-error", field.key)}>{ for field.wrong.iter().map(|(sentence, _)| html! { <p>{ sentence }</p> }) }</div>
            { chips(field.wrong.iter().flat_map(|(_, remedies)| remedies.clone()), set) }
        </div>
    }
}
