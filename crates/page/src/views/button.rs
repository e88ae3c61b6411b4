//! Buttons, all of one shape.

use std::rc::Rc;
use yew::prelude::*;
use yew::virtual_dom::Key;

/// A button to be drawn.
pub(crate) struct Button {
    class: &'static str,
    words: Html,
    onclick: Callback<MouseEvent>,
    id: Option<AttrValue>,
    name: Option<&'static str>,
    label: Option<String>,
    pressed: Option<bool>,
    off: bool,
}

impl Button {
    /// A small one, often one of several.
    pub(crate) fn chip(words: impl Into<Html>, onclick: Callback<MouseEvent>) -> Self {
        Self::of("chip", words.into(), onclick)
    }

    /// A main action.
    pub(crate) fn main(words: impl Into<Html>, onclick: Callback<MouseEvent>) -> Self {
        Self::of("button", words.into(), onclick)
    }

    /// A main action across the whole screen.
    pub(crate) fn wide(words: impl Into<Html>, onclick: Callback<MouseEvent>) -> Self {
        Self::of("button wide", words.into(), onclick)
    }

    fn of(class: &'static str, words: Html, onclick: Callback<MouseEvent>) -> Self {
        Self {
            class,
            words,
            onclick,
            id: None,
            name: None,
            label: None,
            pressed: None,
            off: false,
        }
    }

    /// One that is alone on the page.
    pub(crate) fn id(self, id: impl Into<AttrValue>) -> Self {
        Self {
            id: Some(id.into()),
            ..self
        }
    }

    /// One of a row.
    pub(crate) fn name(self, name: &'static str) -> Self {
        Self {
            name: Some(name),
            ..self
        }
    }

    /// What is heard in place of its words.
    pub(crate) fn label(self, label: String) -> Self {
        Self {
            label: Some(label),
            ..self
        }
    }

    /// One that stays pressed, or not.
    pub(crate) fn pressed(self, pressed: bool) -> Self {
        Self {
            pressed: Some(pressed),
            ..self
        }
    }

    /// Whether it does nothing now. It stays where it is, so that no other slips under the thumb.
    pub(crate) fn off(self, off: bool) -> Self {
        Self { off, ..self }
    }

    /// The button.
    pub(crate) fn draw(self) -> Html {
        let pressed = self.pressed.map(|pressed| if pressed { "true" } else { "false" });
        html! {
            <button type="button" class={self.class} id={self.id} name={self.name} aria-label={self.label} aria-pressed={pressed}
                aria-disabled={self.off.then_some("true")} onclick={self.onclick}>{ self.words }</button>
        }
    }

    /// The button as one of a list that changes.
    pub(crate) fn keyed(self, key: impl Into<Key>) -> Html {
        let mut drawn = self.draw();
        if let Html::VTag(tag) = &mut drawn {
            Rc::make_mut(tag).key = Some(key.into());
        }
        drawn
    }
}
