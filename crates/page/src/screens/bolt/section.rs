//! A section: its fields, its drawings, what was found, and what to beware of.

use super::form::Form;
use crate::settings::SettingsHandle;
use crate::views::caution::cautions;
use crate::views::finding::Finding;
use crate::views::jumps::{heading, jumps, lead};
use crate::views::settings::tools_choice;
use crate::views::sketch::Sketch;
use shopmath::convert;
use shopmath::fastener::bolt::{Assessment, Section, SectionId, field};
use shopmath::fastener::wrench_fit::none_fits;
use shopmath::field::Field;
use shopmath::quantity::{Bounds, Kind, Quantity};
use shopmath::result::{self, Id};
use shopmath::sketch::{joint, plot, protractor};
use shopmath::tools::Tools;
use yew::prelude::*;

/// The section.
pub(super) fn section(part: &Section, whole: &Assessment, form: &Form<'_>, settings: &SettingsHandle) -> Html {
    let tools = settings.tools;
    html! {
        <section id={format!("part-{}", part.id.name())} class="part" key={part.title}>
            { heading(part.id.name(), part.title) }
            { form.part(part.id) }
            if part.id == SectionId::Wrench { { tools_choice(settings) } }
            { drawings(part.id, whole, form, tools) }
            if part.notes_first { { notes(part) } }
            <div class="rows stacked">
                { for part.findings.iter().map(|finding| match none_fits(finding, tools) {
                    Some(words) => html! { <p class="note" key={finding.name}>{ words }</p> },
                    None => html! { <Finding key={finding.name} finding={finding.clone()} unit={tools.unit(finding.unit)} also={tools.beside(finding.unit)} /> },
                }) }
            </div>
            if !part.missing.is_empty() { { leads("More with:", &part.missing) } }
            if !part.notes_first { { notes(part) } }
            { cautions(&part.cautions) }
        </section>
    }
}

/// In a box of its own: were their number among the form's neighbours, each new note would draw the form
/// anew and take the focus out of it.
fn notes(part: &Section) -> Html {
    html! { <div class="notes">{ for part.notes.iter().map(|note| html! { <p class="note">{ note }</p> }) }</div> }
}

fn drawings(id: SectionId, whole: &Assessment, form: &Form<'_>, tools: Tools) -> Html {
    match id {
        SectionId::Angle => html! {
            <>
                { turn(form.stages, tools) }
                if let Some(drawn) = whole.plot.as_ref().and_then(plot::plot) { <Sketch {drawn} /> }
            </>
        },
        SectionId::Engagement => whole.drawing.map_or_else(
            || html! {},
            |drawing| html! { <Sketch drawn={joint::joint(&drawing)} /> },
        ),
        _ => html! {},
    }
}

/// Each different angle of the spec on a protractor, and in degrees, turns, hex flats and 12-point clicks.
fn turn(stages: &[Bounds], tools: Tools) -> Html {
    let mut angles: Vec<&Bounds> = stages.iter().filter(|stage| stage.kind() == Kind::Angle).collect();
    // The same turn several times looks the same each time.
    angles.dedup();
    let angle = |&bounds: &Bounds| {
        let (Quantity::Angle(low), Quantity::Angle(high)) = (bounds.low.quantity(), bounds.high.quantity()) else {
            return html! {};
        };
        html! {
            <div class="turn">
                <Sketch drawn={protractor::protractor(low, high)} />
                <div class="rows compact">
                    { for convert::stage(bounds, tools).rows.iter().map(|finding| html! {
                        <Finding key={finding.name} finding={finding.clone()} unit={finding.unit} identified=false />
                    }) }
                </div>
            </div>
        }
    };
    angles.into_iter().map(angle).collect()
}

/// The fields of keys.
pub(super) fn labelled(keys: &[&'static str]) -> impl Iterator<Item = &'static Field> {
    keys.iter().filter_map(|key| field::of(key))
}

/// Words, and behind them fields as a person knows them, each leading there.
pub(super) fn leads(words: &'static str, keys: &[&'static str]) -> Html {
    let lead = |field: &Field| html! { <>{ " " }{ lead(field.key, field.label) }</> };
    html! { <p class="leads">{ words }{ for labelled(keys).map(lead) }</p> }
}

/// The result of a name, wherever it stands.
pub(super) fn finding<'a>(whole: &'a Assessment, name: &'static str) -> Option<&'a result::Finding> {
    whole
        .sections
        .iter()
        .flat_map(|part| &part.findings)
        .find(|finding| finding.id == Id::Named(name))
}

/// Buttons that lead to the sections.
pub(super) fn strip(parts: &[Section]) -> Html {
    jumps(parts.iter().map(|part| (part.id.name(), part.title)))
}
