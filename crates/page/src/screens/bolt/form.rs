//! The fields of the screen, drawn from the core's list of them.

use crate::views::field::Field as View;
use shopmath::fastener::bolt::{BoltText, FIELDS, SectionId};
use shopmath::field::{Field, FieldFault, Reads};
use yew::prelude::*;

/// The fields no bolt goes without.
const ALWAYS: &[&str] = &["thread", "class", "spec"];

/// What every field of the screen draws from.
pub(super) struct Form<'a> {
    pub(super) text: &'a BoltText,
    /// A field's own errors, and those of fields that do not go together.
    pub(super) errors: [&'a Vec<FieldFault>; 2],
    pub(super) onset: &'a Callback<(&'static str, String)>,
}

impl Form<'_> {
    /// The fields of one part of the screen, in their order.
    pub(super) fn part(&self, part: SectionId) -> Html {
        let fields = FIELDS.iter().filter(|field| field.section == part.name());
        html! { <div class="form">{ for fields.map(|field| self.field(field)) }</div> }
    }

    /// What decides all else: thread, class and spec in sight, the head's measures one tap away
    /// unless one of them is typed.
    pub(super) fn top(&self) -> Html {
        let (first, head): (Vec<&Field>, Vec<&Field>) = FIELDS
            .iter()
            .filter(|field| field.section == SectionId::Bolt.name())
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
        let wrong = self
            .errors
            .iter()
            .flat_map(|errors| errors.iter())
            .filter(|error| error.key == key);
        html! {
            <View {key} name={key} label={descriptor.label} text={self.text.get(key).to_owned()}
                empty={self.text.default_of(key).unwrap_or(descriptor.hint)}
                closed={descriptor.reads == Reads::Listed}
                entries={descriptor.choices}
                wrong={wrong.cloned().collect::<Vec<_>>()} onset={self.onset} />
        }
    }
}
