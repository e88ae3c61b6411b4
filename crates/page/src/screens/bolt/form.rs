//! The fields of the screen, drawn from the core's list of them.

use crate::views::field::{Field as View, field};
use shopmath::fastener::bolt::field::FieldKind;
use shopmath::fastener::bolt::{BoltText, FIELDS, Field, FieldError, SectionId};
use yew::prelude::*;

/// The fields no bolt goes without.
const ALWAYS: &[&str] = &["thread", "class", "spec"];

/// What every field of the screen draws from.
pub(super) struct Form<'a> {
    pub(super) text: &'a BoltText,
    /// A field's own errors, and those of fields that do not go together.
    pub(super) errors: [&'a Vec<FieldError>; 2],
    pub(super) onset: &'a Callback<(&'static str, String)>,
}

impl Form<'_> {
    /// The fields of one part of the screen, in their order.
    pub(super) fn part(&self, part: SectionId) -> Html {
        let fields = FIELDS.iter().filter(|field| field.section == part);
        html! { <div class="form">{ for fields.map(|field| self.field(field)) }</div> }
    }

    /// What decides all else: thread, class and spec in sight, the head's measures one tap away
    /// unless one of them is typed.
    pub(super) fn top(&self) -> Html {
        let (first, head): (Vec<&Field>, Vec<&Field>) = FIELDS
            .iter()
            .filter(|field| field.section == SectionId::Bolt)
            .partition(|field| ALWAYS.contains(&field.key));
        let open = head.iter().any(|field| self.text.has(field.key));
        html! {
            <>
                <div class="form">{ for first.iter().map(|field| self.field(field)) }</div>
                <details class="more" open={open}>
                    <summary>{ "Head and hole: " }{ self.text.effective("head") }</summary>
                    <div class="form">{ for head.iter().map(|field| self.field(field)) }</div>
                </details>
            </>
        }
    }

    fn field(&self, descriptor: &Field) -> Html {
        let key = descriptor.key;
        let errors = self
            .errors
            .iter()
            .flat_map(|errors| errors.iter())
            .filter(|error| error.key == key);
        let view = View {
            key,
            label: descriptor.label,
            empty: self.text.default_of(key).unwrap_or(descriptor.absent),
            text: self.text.get(key),
            closed: descriptor.kind == FieldKind::Word,
            entries: descriptor
                .choices
                .iter()
                .map(|choice| (choice.text, choice.label))
                .collect(),
            wrong: errors
                .map(|error| (error.sentence.clone(), error.remedies.clone()))
                .collect(),
        };
        field(&view, self.onset)
    }
}
