//! The fields of the screen, drawn from the core's list of them.

use crate::views::fault::chips;
use crate::views::field::Field as View;
use shopmath::fastener::bolt::{BoltText, FIELDS, SectionId, field};
use shopmath::field::{Field, FieldFault, Reads};
use shopmath::quantity::{Bounds, Unit};
use yew::prelude::*;

/// The fields that hold as they are for most bolts.
const HEAD: &[&str] = &["head", "bearing", "hole"];

/// What every field of the screen draws from.
pub(super) struct Form<'a> {
    pub(super) text: &'a BoltText,
    /// The spec's stages as typed; none while it cannot be used.
    pub(super) stages: &'a [Bounds],
    /// A field's own errors, and those of fields that do not go together.
    pub(super) errors: [&'a Vec<FieldFault>; 2],
    /// The keys in error whose text is only begun.
    pub(super) unfinished: &'a [&'static str],
    /// What a reading is read in where it names no unit.
    pub(super) reading_unit: Unit,
    pub(super) onset: &'a Callback<(&'static str, String)>,
}

impl Form<'_> {
    /// The fields of one part of the screen, in their order.
    pub(super) fn part(&self, part: SectionId) -> Html {
        let fields = FIELDS.iter().filter(|field| field.section == part.name());
        html! { <form class="form">{ for fields.map(|field| self.field(field)) }</form> }
    }

    /// The fields in error that a verdict needs: those of the bolt and its joint.
    pub(super) fn wrong_keys(&self) -> impl Iterator<Item = &'static str> {
        let needed = [
            SectionId::Bolt,
            SectionId::Clamp,
            SectionId::Angle,
            SectionId::Engagement,
        ];
        let wrong = self
            .errors
            .iter()
            .flat_map(|errors| errors.iter())
            .map(|error| error.key);
        wrong.filter(move |key| {
            field::of(key).is_some_and(|field| needed.iter().any(|section| section.name() == field.section))
        })
    }

    /// Whether one of the head's fields is in error.
    pub(super) fn head_wrong(&self) -> bool {
        let mut wrong = self.errors.iter().flat_map(|errors| errors.iter());
        wrong.any(|error| HEAD.contains(&error.key))
    }

    /// What decides all else: thread, class and spec in sight with what there is to say of the spec below
    /// it, the head's measures one tap away, or open.
    pub(super) fn top(&self, open: bool, of_spec: Html) -> Html {
        let (first, head): (Vec<&Field>, Vec<&Field>) = FIELDS
            .iter()
            .filter(|field| field.section == SectionId::Bolt.name())
            .partition(|field| !HEAD.contains(&field.key));
        html! {
            <>
                <form class={classes!("form", self.begun())}>{ for first.iter().map(|field| self.field(field)) }</form>
                { of_spec }
                <details class="more" open={open}>
                    <summary>{ "Head and hole: " }{ self.head() }</summary>
                    <form class="form">{ for head.iter().map(|field| self.field(field)) }</form>
                </details>
            </>
        }
    }

    /// What tells the style sheet which fields are only begun: their errors stand in a place that
    /// is kept for them, so that nothing moves while one types.
    fn begun(&self) -> Classes {
        self.unfinished.iter().map(|key| format!("begun-{key}")).collect()
    }

    /// What a spec that is only begun lacks, and what completes it: in the verdict's place, where is
    /// room for all of it.
    pub(super) fn begun_spec(&self) -> Html {
        let begun = self.errors[0]
            .iter()
            .find(|error| self.is_begun(error.key) && error.key == "spec");
        let set = self.onset.reform(|text| ("spec", text));
        begun.map_or_else(Html::default, |error| {
            html! { <><p id="spec-error">{ &error.sentence }</p>{ chips(error.remedies.clone(), &set, Some("spec")) }</> }
        })
    }

    /// Whether the text of a key is only begun.
    pub(super) fn is_begun(&self, key: &str) -> bool {
        self.unfinished.contains(&key)
    }

    /// The head in a few words, with what was measured.
    fn head(&self) -> String {
        let shape = self.text.effective("head");
        let named = field::of("head").and_then(|field| field.choices.iter().find(|choice| choice.text == shape));
        let measured = [self.text.get("bearing"), self.text.get("hole")];
        let words = core::iter::once(named.map_or(shape, |choice| choice.label)).chain(measured);
        let words: Vec<&str> = words.filter(|words| !words.trim().is_empty()).collect();
        words.join(", ")
    }

    fn field(&self, descriptor: &Field) -> Html {
        let key = descriptor.key;
        let wrong = self
            .errors
            .iter()
            .flat_map(|errors| errors.iter())
            .filter(|error| error.key == key);
        let reads = if key == "reading" {
            Reads::Value(self.reading_unit)
        } else {
            descriptor.reads
        };
        html! {
            <View {key} name={key} unit={reads.assumed(self.text.get(key))} label={descriptor.label} text={self.text.get(key).to_owned()}
                empty={self.text.default_of(key).unwrap_or(descriptor.hint)}
                closed={descriptor.reads == Reads::Listed}
                entries={descriptor.choices}
                wrong={wrong.cloned().collect::<Vec<_>>()} elsewhere={key == "spec" && self.is_begun(key)} onset={self.onset} />
        }
    }
}
