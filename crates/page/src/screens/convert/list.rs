//! Several lines of Convert as a table.

use super::onward::named;
use super::single::{echo, none_other};
use crate::link::Places;
use crate::route::{Route, Screen};
use crate::views::caution::cautions;
use crate::views::fault::fault;
use crate::views::finding::amount;
use shopmath::convert::{Conversion, Words, words};
use shopmath::quantity::fault::Fault;
use yew::prelude::*;

/// A list of specs as a table, each bad line with its own message.
pub(super) fn list(
    lines: &[(String, Result<Conversion, Fault>)],
    text: &AttrValue,
    ontake: &Callback<String>,
    places: &Places,
) -> Html {
    let row = |(index, (line, read)): (usize, &(String, _))| list_row(index, line, read, (text, ontake), places);
    html! {
        <table class="list">
            <thead><tr><th scope="col">{ "Read as" }</th><th scope="col">{ "In other units" }</th></tr></thead>
            <tbody>{ for lines.iter().enumerate().map(row) }</tbody>
        </table>
    }
}

fn list_row(
    index: usize,
    line: &str,
    read: &Result<Conversion, Fault>,
    (text, ontake): (&AttrValue, &Callback<String>),
    places: &Places,
) -> Html {
    let number = (index + 1).to_string();
    match read {
        Ok(conversion) => html! {
            <tr key={index} data-line={number}>
                <th scope="row">{ echo(conversion) }</th>
                <td>
                    { for conversion.stages.iter().map(|stage| html! {
                        <>
                        { none_other(stage) }
                        <p class="list-values">{ for stage.listed().map(|finding| html! { <span class="list-value">{ amount(finding, finding.unit, false) }</span> }) }</p>
                        </>
                    }) }
                    { cautions(&conversion.cautions) }
                    <a class="chip" href={alone(line)}>{ "All units" }</a>
                </td>
            </tr>
        },
        Err(_) if let Some(words) = words(line, index == 0) => html! {
            <tr key={index} data-line={number}>
                if words == Words::Title {
                    <th scope="rowgroup" colspan="2" class="note">{ line }</th>
                } else {
                    <th scope="row">{ line }</th><td class="note">{ "No figure in this line." }</td>
                }
            </tr>
        },
        Err(wrong) => html! {
            <tr key={index} data-line={number.clone()} class="list-fault">
                <th scope="row">{ line }</th>
                <td>{ fault(&format!("q-{number}"), line, wrong, &replacing(index, text, ontake)) }{ named(line, places) }</td>
            </tr>
        },
    }
}

/// Takes a text for one line and hands on the whole list with it in place.
fn replacing(index: usize, text: &AttrValue, ontake: &Callback<String>) -> Callback<String> {
    let text = text.clone();
    ontake.reform(move |remedy: String| {
        // Empty lines are no rows, and stay.
        let mut rows = 0..;
        let of = |line| match line {
            "" => line,
            _ if rows.next() == Some(index) => remedy.as_str(),
            _ => line,
        };
        let lines: Vec<&str> = text.lines().map(str::trim).map(of).collect();
        lines.join("\n")
    })
}

/// The link to one line alone; the back button leads to the list again.
fn alone(line: &str) -> String {
    let mut route = Route::bare(Screen::Convert);
    route.set("q", line.trim().to_owned());
    route.print()
}
