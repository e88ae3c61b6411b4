//! Any result, rendered from its shape: number and unit large, the working one tap away.

use super::caution::cautions;
use super::fold::use_fold;
use js_sys::Number;
use shopmath::quantity::{Quantity, Unit, print};
use shopmath::result::{Amount, Difference, Finding as Found, Id, Style, Term};
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) finding: Found,
    /// The unit to show it in.
    pub(crate) unit: Unit,
    /// The thing it is about, where there are several, such as a pulley.
    #[prop_or_default]
    pub(crate) of: Option<AttrValue>,
    /// A second unit to show it in, for the other wrench.
    #[prop_or_default]
    pub(crate) also: Option<Unit>,
    /// Whether the result is alone on the screen and so carries its id; in a table it does not.
    #[prop_or(true)]
    pub(crate) identified: bool,
}

/// A result as a line that opens to its working.
#[component]
pub(crate) fn Finding(props: &Props) -> Html {
    let finding = &props.finding;
    let fold = use_fold(false);
    let line = html! {
        <>
            <span class="finding-value">
                { amount(finding, props.unit, props.identified) }
                if let Some(also) = props.also { <span class="finding-also">{ amount(finding, also, false) }</span> }
            </span>
            <span class="finding-name">{ finding.name }{ for props.of.iter().map(|of| format!(", {of}")) }{ for finding.difference.iter().map(difference) }</span>
        </>
    };
    html! {
        <div class="finding">
            { fold.draw(None, line, || working(finding)) }
            { cautions(&finding.cautions) }
        </div>
    }
}

/// The number or range, as `<data>` elements by the contract: low, middle and high in this order,
/// the unit behind the last.
pub(crate) fn amount(finding: &Found, unit: Unit, identified: bool) -> Html {
    let mut ends: Vec<_> = finding.amount.ends().collect();
    // Ends that read alike are one figure; where they have ids by the contract, they stay.
    let shown = |(_, quantity): &(_, Quantity)| print::number(*quantity, unit, finding.style);
    if !identified {
        ends.dedup_by_key(|end| shown(end));
    }
    let last = ends.last().map(|(end, _)| *end);
    ends.iter()
        .map(|&(end, quantity)| {
            html! {
                <>
                    { data(finding, (end, quantity), unit, if identified { Tag::Id } else { Tag::None }, Some(end) == last) }
                    if Some(end) != last { <span class="finding-to">{ "–" }</span> }
                </>
            }
        })
        .collect()
}

/// A single value as a `<data>` element of a class, for a result that stands in each row of a list.
pub(crate) fn classed(finding: &Found, unit: Unit, class: &'static str) -> Html {
    let ends = finding.amount.ends();
    ends.map(|end| data(finding, end, unit, Tag::Class(class), true))
        .collect()
}

/// A result for the ear: its name, and its value or range in its own unit.
pub(crate) fn in_words(finding: &Found) -> String {
    let ends: Vec<String> = finding
        .amount
        .ends()
        .map(|(_, quantity)| print::number(quantity, finding.unit, finding.style))
        .collect();
    [finding.name, ": ", &ends.join(" to "), " ", finding.unit.name(), "."].concat()
}

/// What tells a `<data>` element from others.
#[derive(Clone, Copy, PartialEq)]
enum Tag {
    Id,
    Class(&'static str),
    None,
}

/// One `<data>` element.
fn data(
    finding: &Found,
    (end, quantity): (Option<&'static str>, Quantity),
    unit: Unit,
    tag: Tag,
    is_last: bool,
) -> Html {
    let (value, coherent) = finding.plain(quantity);
    let row = match finding.id {
        Id::Row(name) => Some(name),
        _ => None,
    };
    let id = (tag == Tag::Id).then(|| element_id(finding.id, end));
    let class = match tag {
        Tag::Class(class) => Some(class),
        _ => None,
    };
    let number = print::number(quantity, unit, finding.style);
    html! {
        <data {id} {class} value={shortest(value)} data-unit={coherent.symbol()} data-row={row} data-end={end}>
            <span class="number">{ &number }</span>
            <span class={if is_last { "unit" } else { "unit unit-between" }}>{ print::suffix(&number, unit) }</span>
        </data>
    }
}

/// The shortest text of a number that reads back as the same number: the browser's own, since the
/// standard library's printer would add 4 KB to the page.
fn shortest(value: f64) -> String {
    Number::from(value)
        .to_string_with_radix(10)
        .map(String::from)
        .unwrap_or_default()
}

/// The id of one end of a result.
fn element_id(id: Id, end: Option<&'static str>) -> String {
    let end = end.map(|end| format!("-{end}")).unwrap_or_default();
    match id {
        Id::Named(name) | Id::Row(name) => format!("{name}{end}"),
        Id::Numbered(name, number) => format!("{name}-{number}{end}"),
    }
}

fn difference(difference: &Difference) -> Html {
    html! { <span class="finding-difference">{ format!("{} {}", difference.name, print::difference(difference.by, difference.unit)) }</span> }
}

/// Equation, numbers put in, method and source.
fn working(finding: &Found) -> Html {
    let working = &finding.working;
    html! {
        <dl class="working">
            <dt>{ "Equation" }</dt><dd class="equation">{ working.equation }</dd>
            { for working.terms.iter().map(term) }
            <dt>{ "Method" }</dt><dd>{ finding.method }</dd>
            <dt>{ "Source" }</dt>
            { for working.sources().map(|source| html! { <dd>{ source.cited() }</dd> }) }
        </dl>
    }
}

fn term(term: &Term) -> Html {
    let number = |quantity| print::number(quantity, term.unit, Style::Exactly);
    let text = match term.amount {
        Amount::One(only) => number(only),
        Amount::Range { low, high, .. } => format!("{}–{}", number(low), number(high)),
    };
    html! {
        <>
            <dt><var>{ term.symbol }</var>{ ", " }{ term.meaning }</dt>
            <dd>{ &text }{ print::suffix(&text, term.unit) }</dd>
        </>
    }
}
