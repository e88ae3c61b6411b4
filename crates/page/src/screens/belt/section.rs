//! The belt to order on top, and the sections: fields, findings, cautions.

use crate::views::caution::caution;
use crate::views::field::Field as View;
use crate::views::finding::{Finding, amount, in_words};
use crate::views::jumps::{heading, jumps};
use shopmath::caution::drive::SPRING_FORCE;
use shopmath::drive::bench::drawing::Disc;
use shopmath::drive::bench::{Assessment, Candidate, DriveText, FIELDS, Section};
use shopmath::field::{Field, FieldFault, Reads};
use shopmath::quantity::{Quantity, Unit, print};
use shopmath::result::{Finding as Found, Id};
use shopmath::tools::Tools;
use std::rc::Rc;
use yew::prelude::*;

/// A part of the screen: its fields, what is said before them, and the sections of findings that rest on them.
struct Part {
    /// The section of its fields.
    id: &'static str,
    title: &'static str,
    note: &'static str,
    /// How the last field is written, where that is a line with a form of its own.
    line: &'static str,
    found: &'static [&'static str],
}

/// The parts of the screen.
const PARTS: &[Part] = &[
    Part {
        id: "drive",
        title: "Belt and pulleys",
        note: "",
        line: "Each pulley: name:rib:x,y:diameter or name:back:x,y:diameter, the driver first. Ribbed: effective diameter; flat: outside diameter.",
        found: &["length", "pulleys"],
    },
    Part {
        id: "tensioner",
        title: "Tensioner",
        note: "Tap the pulley on the arm and make it the tensioner.",
        line: "The pulley’s name@pivot, then the arm’s angle at both stops, in degrees from the right, anticlockwise.",
        found: &["tensioner"],
    },
    Part {
        id: "tension",
        title: "Strand tension",
        note: "Pluck a free strand and read the note with a tuner or a phone near the belt.",
        line: "",
        found: &["tension"],
    },
    Part {
        id: "loads",
        title: "Loads and slip",
        note: "What each accessory takes, at its pulley or as a list: a torque, a power, or current and voltage. The driver carries the sum.",
        line: "",
        found: &["slip"],
    },
    Part {
        id: "checks",
        title: "Alignment and wear",
        note: "Lay a straightedge on one pulley’s face and measure the gap at the other.",
        line: "",
        found: &["checks"],
    },
];

/// Sections whose numbered findings belong to the pulley of that number.
const BY_PULLEY: [&str; 2] = ["pulleys", "slip"];

/// Length and nearest belts, or what keeps the drive from having one. While a pulley is moving, it
/// says that what stands below is not up to date.
pub(super) fn headline(whole: &Assessment, tools: Tools, moving: bool) -> Html {
    let length = findings(whole, "length").find(|finding| finding.id == Id::Named("effective-length"));
    let Some(length) = length else {
        let marks: Vec<&str> = whole.drawing.marks.iter().map(|mark| mark.sentence.as_str()).collect();
        if !marks.is_empty() {
            return html! { <output class="verdict broken" aria-live="off">{ for marks.iter().take(3).map(|words| html! { <p>{ "! " }{ *words }</p> }) }</output> };
        }
        let first = whole.faults.first().map(|fault| fault.sentence.clone());
        return html! { <output class="verdict waiting" aria-live="off">{ first.unwrap_or_else(|| "No belt length yet: give the pulleys.".into()) }</output> };
    };
    html! {
        <output class="verdict" aria-live="off">
            <p class="verdict-word">{ amount(length, tools.unit(length.unit), false) }</p>
            <p>{ if moving { "effective length; below follows at rest" } else { "effective length as drawn" } }</p>
            <ul class="belts">{ for whole.candidates.iter().map(candidate) }</ul>
        </output>
    }
}

/// What is heard: the first field in error or what is wrong with the drive, or the length and the
/// belt nearest to it.
pub(super) fn spoken(whole: &Assessment) -> String {
    let wrong = whole.faults.iter().map(|fault| &fault.sentence);
    let broken = whole.drawing.marks.iter().map(|mark| &mark.sentence);
    if let Some(sentence) = wrong.chain(broken).next() {
        return sentence.clone();
    }
    let length = findings(whole, "length").find(|finding| finding.id == Id::Named("effective-length"));
    let nearest = whole.nearest.map(|belt| format!("Nearest belt {belt}."));
    let words: Vec<String> = length.map(in_words).into_iter().chain(nearest).collect();
    words.join(" ")
}

/// A belt to order, and what the tensioner makes of it.
fn candidate(candidate: &Candidate) -> Html {
    let length = print::difference(candidate.difference.into(), Unit::Millimetre);
    let arm = match &candidate.arm {
        Some(Ok((angle, share))) => format!(
            ", {}: arm at {}, {} of its sweep",
            candidate.standing().unwrap_or_default(),
            print::quantity(Quantity::from(*angle), Unit::Degree),
            print::quantity(Quantity::from(*share), Unit::Percent)
        ),
        Some(Err(sentence)) => format!(": {sentence}"),
        None => String::new(),
    };
    html! { <li><strong>{ candidate.belt.to_string() }</strong>{ " " }{ length }{ arm }</li> }
}

/// A part of the screen below the drawing, drawn again only when something in it changes.
#[derive(Properties)]
pub(super) struct PartProps {
    part: &'static Part,
    whole: Rc<Assessment>,
    text: DriveText,
    onset: Callback<(&'static str, String)>,
    tools: Tools,
}

impl PartialEq for PartProps {
    fn eq(&self, other: &Self) -> bool {
        self.tools == other.tools
            && self
                .part
                .found
                .iter()
                .all(|id| findings(&self.whole, id).eq(findings(&other.whole, id)))
            && fields(self.part).all(|field| self.text.get(field.key) == other.text.get(field.key))
            && wrong(&self.whole, self.part).eq(wrong(&other.whole, other.part))
            && names(&self.whole).eq(names(&other.whole))
    }
}

fn fields(part: &Part) -> impl Iterator<Item = &'static Field> {
    FIELDS.iter().filter(|field| field.section == part.id)
}

fn wrong<'a>(whole: &'a Assessment, part: &'a Part) -> impl Iterator<Item = &'a FieldFault> {
    whole
        .faults
        .iter()
        .filter(|fault| fields(part).any(|field| field.key == fault.key))
}

fn names(whole: &Assessment) -> impl Iterator<Item = &str> {
    whole.drawing.discs.iter().map(|disc| disc.name.as_str())
}

/// The part.
#[component]
pub(super) fn PartView(props: &PartProps) -> Html {
    let PartProps {
        part,
        whole,
        text,
        onset,
        tools,
    } = props;
    let note = |words: &'static str| html! { if !words.is_empty() { <p class="note">{ words }</p> } };
    html! {
        <section class="part" id={format!("part-{}", part.id)}>
            { heading(part.id, part.title) }
            if part.id == "tensioner" { { caution(&SPRING_FORCE) } }
            { note(part.note) }
            <form class="form">{ for fields(part).map(|descriptor| field(descriptor, whole, text, onset)) }</form>
            { note(part.line) }
            { for part.found.iter().map(|section| rows(whole, section, *tools)) }
        </section>
    }
}

/// The parts of the screen below the drawing.
pub(super) fn sections(
    whole: &Rc<Assessment>,
    text: &DriveText,
    onset: &Callback<(&'static str, String)>,
    tools: Tools,
) -> Html {
    let part = |part: &'static Part| html! { <PartView key={part.id} {part} whole={whole.clone()} text={text.clone()} {onset} {tools} /> };
    PARTS.iter().map(part).collect()
}

/// Buttons that lead to them.
pub(super) fn strip() -> Html {
    jumps(PARTS.iter().map(|part| (part.id, part.title)))
}

/// The findings of a section: those of the whole drive as rows, those of the pulleys in a block
/// each.
fn rows(whole: &Assessment, section: &str, tools: Tools) -> Html {
    let shown = |finding: &Found| html! { <Finding key={key(finding.id)} finding={finding.clone()} unit={tools.unit(finding.unit)} /> };
    let number = |finding: &Found| match finding.id {
        Id::Numbered(_, number) if BY_PULLEY.contains(&section) => Some(number),
        _ => None,
    };
    let block = |(index, disc): (usize, &Disc)| {
        let own: Vec<&Found> = findings(whole, section)
            .filter(|finding| number(finding) == Some(index + 1))
            .collect();
        if own.is_empty() {
            return html! {};
        }
        html! {
            <div class="of-pulley" key={index}>
                <h3>{ format!("{} {}", index + 1, disc.name) }</h3>
                <div class={classes!("rows", "stacked", "cells", format!("cells-{section}"))}>{ for own.into_iter().map(shown) }</div>
            </div>
        }
    };
    html! {
        <>
            <div class="rows stacked">{ for findings(whole, section).filter(|finding| number(finding).is_none()).map(shown) }</div>
            { for whole.drawing.discs.iter().enumerate().map(block) }
        </>
    }
}

fn findings<'a>(whole: &'a Assessment, id: &str) -> impl Iterator<Item = &'a Found> + use<'a> {
    let section: Option<&Section> = whole.sections.iter().find(|section| section.id == id);
    section.into_iter().flat_map(|section| &section.findings)
}

fn key(id: Id) -> String {
    match id {
        Id::Named(name) | Id::Row(name) => name.to_owned(),
        Id::Numbered(name, number) => format!("{name}{number}"),
    }
}

fn field(
    descriptor: &'static Field,
    whole: &Assessment,
    text: &DriveText,
    onset: &Callback<(&'static str, String)>,
) -> Html {
    let wrong = whole.faults.iter().filter(|fault| fault.key == descriptor.key);
    // Emptied, a text stands for nothing: what an own drive begins with is no default of it.
    let empty = match descriptor.reads {
        Reads::Text => descriptor.hint,
        _ => descriptor.empty(),
    };
    html! {
        <View key={descriptor.key} name={descriptor.key} label={descriptor.label} {empty}
            unit={descriptor.reads.assumed(text.get(descriptor.key).unwrap_or_default())}
            text={text.get(descriptor.key).unwrap_or_default().to_owned()} closed={descriptor.reads == Reads::Listed}
            entries={descriptor.choices} wrong={wrong.cloned().collect::<Vec<_>>()} {onset} />
    }
}
