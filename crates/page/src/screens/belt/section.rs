//! The belt to order on top, and the sections: fields, findings, cautions.

use crate::views::field::Field as View;
use crate::views::finding::{Finding, amount};
use shopmath::drive::bench::{Assessment, Candidate, DriveText, FIELDS, Section};
use shopmath::field::{Field, Reads};
use shopmath::quantity::{Quantity, Unit, print};
use shopmath::result::Id;
use shopmath::tools::Tools;
use yew::prelude::*;

/// The parts of the screen: fields, title, and the sections of findings that rest on them.
const PARTS: &[(&str, &str, &[&str])] = &[
    ("drive", "Belt and pulleys", &["length", "pulleys"]),
    ("tensioner", "Tensioner", &["tensioner"]),
    ("tension", "Strand tension", &["tension"]),
    ("loads", "Loads and slip", &["slip"]),
    ("checks", "Alignment and wear", &["checks"]),
];

/// Length and nearest belts, or what keeps the drive from having one.
pub(super) fn headline(whole: &Assessment, tools: Tools) -> Html {
    let length = findings(whole, "length").find(|finding| finding.id == Id::Named("effective-length"));
    let Some(length) = length else {
        let first = whole.drawing.marks.first().map(|mark| mark.sentence.clone());
        let words = first.or_else(|| whole.faults.first().map(|fault| fault.sentence.clone()));
        return html! { <output class="verdict waiting">{ words.unwrap_or_else(|| "No belt length yet: give the pulleys.".into()) }</output> };
    };
    html! {
        <output class="verdict">
            <p class="verdict-word">{ amount(length, tools.unit(length.unit), false) }</p>
            <p>{ "effective length as drawn" }</p>
            <ul class="belts">{ for whole.candidates.iter().map(candidate) }</ul>
        </output>
    }
}

/// A belt to order, and what the tensioner makes of it.
fn candidate(candidate: &Candidate) -> Html {
    let length = print::difference(candidate.difference.into(), Unit::Millimetre);
    let arm = match &candidate.arm {
        Some(Ok((angle, share))) => format!(
            ", arm at {}, {} of its sweep",
            print::quantity(Quantity::from(*angle), Unit::Degree),
            print::quantity(Quantity::from(*share), Unit::Percent)
        ),
        Some(Err(sentence)) => format!(": {sentence}"),
        None => String::new(),
    };
    html! { <li><strong>{ candidate.belt.to_string() }</strong>{ " " }{ length }{ arm }</li> }
}

/// The parts of the screen below the drawing.
pub(super) fn sections(
    whole: &Assessment,
    text: &DriveText,
    onset: &Callback<(&'static str, String)>,
    tools: Tools,
) -> Html {
    let part = |&(id, title, found): &(&'static str, &'static str, &[&str])| {
        html! {
            <section class="part" id={format!("part-{id}")} key={id}>
                <h2>{ title }</h2>
                <div class="form">{ for FIELDS.iter().filter(|field| field.section == id).map(|descriptor| field(descriptor, whole, text, onset)) }</div>
                <div class="rows stacked">
                    { for found.iter().flat_map(|section| findings(whole, section)).map(|finding| html! {
                        <Finding key={key(finding.id)} finding={finding.clone()} unit={tools.unit(finding.unit)} of={pulley(finding.id, whole)} />
                    }) }
                </div>
            </section>
        }
    };
    PARTS.iter().map(part).collect()
}

fn findings<'a>(whole: &'a Assessment, id: &str) -> impl Iterator<Item = &'a shopmath::result::Finding> + use<'a> {
    let section: Option<&Section> = whole.sections.iter().find(|section| section.id == id);
    section.into_iter().flat_map(|section| &section.findings)
}

fn key(id: Id) -> String {
    match id {
        Id::Named(name) | Id::Row(name) => name.to_owned(),
        Id::Numbered(name, number) => format!("{name}{number}"),
    }
}

/// The pulley a numbered finding belongs to.
fn pulley(id: Id, whole: &Assessment) -> Option<AttrValue> {
    let Id::Numbered(_, number) = id else { return None };
    let disc = whole.drawing.discs.get(number.checked_sub(1)?)?;
    Some(format!("{number} {}", disc.name).into())
}

fn field(
    descriptor: &'static Field,
    whole: &Assessment,
    text: &DriveText,
    onset: &Callback<(&'static str, String)>,
) -> Html {
    let wrong = whole.faults.iter().filter(|fault| fault.key == descriptor.key);
    html! {
        <View key={descriptor.key} name={descriptor.key} label={descriptor.label} empty={descriptor.empty()}
            text={text.get(descriptor.key).unwrap_or_default().to_owned()} closed={descriptor.reads == Reads::Listed}
            entries={descriptor.choices} wrong={wrong.cloned().collect::<Vec<_>>()} {onset} />
    }
}
