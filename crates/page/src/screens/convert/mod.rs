//! Convert: one field, any spec, every useful equivalent; several lines give a table.
//!
//! `single` shows one line, `list` several, `onward` where a text leads on.

mod list;
mod onward;
mod single;

use crate::forms::{hint, typing};
use crate::link::{Places, use_link};
use crate::pace;
use crate::route::{Route, Screen};
use crate::screens::sheet::desk::Desk;
use crate::screens::sheet::put_on::put_on_button;
use crate::settings::SettingsHandle;
use crate::views::button::Button;
use crate::views::caution::caution;
use crate::views::fault::{chips, fault};
use crate::views::settings::tools_choice;
use crate::views::spoken::Spoken;
use shopmath::caution::FIGURE_NOT_PROCEDURE;
use shopmath::convert::{self, Conversion};
use shopmath::quantity::fault::Fault;
use shopmath::quantity::print;
use shopmath::sheet::from_list::rows;
use shopmath::tools::Tools;
use std::rc::Rc;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// The texts offered before anything is typed.
const EXAMPLES: &[&str] = &[
    "60 N·m",
    "44 ft-lb",
    "10 Nm + 90°",
    "35–45 N·m",
    "1 5/8 in",
    "19 mm",
    "30 psi",
    "4.5 qt",
];

/// What is said once the field is empty again.
const CLEARED: &str = "Cleared.";

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
    pub(crate) desk: Desk,
}

/// The screen's state: the text as typed, and the one cleared until another is typed. All else is
/// derived from them.
#[derive(Clone, Debug, Default, PartialEq)]
struct Typed {
    text: AttrValue,
    cleared: AttrValue,
}

enum Action {
    /// The person typed.
    Type(String),
    /// A link, a bookmark or the back button brought a text.
    Follow(String),
    /// The person wants an empty field, and may not have meant it.
    Clear,
}

impl Reducible for Typed {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let (text, cleared) = match action {
            Action::Type(text) | Action::Follow(text) if self.text == text => return self,
            Action::Type(text) | Action::Follow(text) => (text.into(), AttrValue::default()),
            Action::Clear => (AttrValue::default(), self.text.clone()),
        };
        Rc::new(Self { text, cleared })
    }
}

fn text_of(route: &Route) -> String {
    route.value("q").unwrap_or_default().to_owned()
}

/// The screen.
#[component]
pub(crate) fn Convert(props: &Props) -> Html {
    let typed = use_reducer(|| Typed {
        text: text_of(&props.route).into(),
        cleared: AttrValue::default(),
    });
    {
        let dispatcher = typed.dispatcher();
        use_effect_with(props.route.clone(), move |route| {
            dispatcher.dispatch(Action::Follow(text_of(route)))
        });
    }
    let mut route = Route::bare(Screen::Convert);
    route.set("q", typed.text.to_string());
    use_link(&props.places, route.clone());

    let field = use_node_ref();
    let oninput = {
        let dispatcher = typed.dispatcher();
        typing(&Callback::from(move |text| dispatcher.dispatch(Action::Type(text))))
    };
    let act = {
        let (dispatcher, field) = (typed.dispatcher(), field.clone());
        Callback::from(move |action: Action| {
            dispatcher.dispatch(action);
            if let Some(area) = field.cast::<HtmlTextAreaElement>() {
                // Focus can only be refused when the field is gone.
                let _ = area.focus();
            }
        })
    };
    let ontake = act.reform(Action::Type);
    let read = read(&typed.text, props.settings.tools);
    let unread = unread(&read);
    let invalid = (unread > 0).then_some("true");
    let described = invalid.map(|_| "q-error");
    let shown = pace::shown("q", &typed.text);
    let lines = typed.text.lines().count().clamp(1, 6).to_string();
    html! {
        <>
            <div class="entry">
                <div class="entry-head">
                    <label class="entry-label" for="q">{ "Spec as printed, one per line" }</label>
                    // In a line that is there anyway, so that the list does not jump while one types.
                    if let (Read::List(_), Some(_)) = (&read, invalid) { <p id="q-error" class="entry-wrong">{ format!("{unread} not read") }</p> }
                </div>
                <div class="entry-box">
                    <textarea id="q" name="q" ref={field} rows={lines} value={shown.clone()} {oninput}
                        aria-invalid={invalid} aria-describedby={described} autocomplete="off" autocapitalize="off"
                        autocorrect="off" spellcheck="false" enterkeyhint="done" placeholder={hint(&shown, "60 N·m")} />
                    if !typed.text.is_empty() {
                        <button type="button" class="clear" onclick={act.reform(|_| Action::Clear)}>{ "Clear" }</button>
                    }
                </div>
                { bring_back(&typed.cleared, &ontake) }
            </div>
            <div class="answers">{ answers(&read, &typed.text, &ontake, &props.places) }{ onward::onward(&read, &typed.text, &props.places) }{ put_on_sheet(&read, &typed.text, route, props) }</div>
            { tools_choice(&props.settings) }
            <Spoken words={if typed.cleared.is_empty() { spoken(&read) } else { CLEARED.to_owned() }} />
            { caution(&FIGURE_NOT_PROCEDURE) }
        </>
    }
}

/// A list of torques goes on a sheet as it stands.
fn put_on_sheet(read: &Read, text: &AttrValue, route: Route, props: &Props) -> Html {
    let is_torque = |(_, read): &(String, Result<Conversion, Fault>)| read.as_ref().is_ok_and(Conversion::is_torque);
    match read {
        Read::List(lines) if lines.iter().any(is_torque) => {
            let text = text.clone();
            put_on_button(move || rows(&text), route, &props.desk, props.settings.tools)
        }
        _ => html! {},
    }
}

/// The way back to a text cleared. The focus stays in the field, where most go on typing.
fn bring_back(cleared: &AttrValue, ontake: &Callback<String>) -> Html {
    if cleared.is_empty() {
        return html! {};
    }
    let text = cleared.to_string();
    let onclick = ontake.reform(move |_: MouseEvent| text.clone());
    html! { <div class="bring screen-only"><p>{ CLEARED }</p>{ Button::chip("Bring it back", onclick).draw() }</div> }
}

/// What the text came to.
enum Read {
    Nothing,
    One(Result<Conversion, Fault>),
    List(Vec<(String, Result<Conversion, Fault>)>),
}

fn read(text: &str, tools: Tools) -> Read {
    let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
    match lines.as_slice() {
        [] => Read::Nothing,
        [_] if !text.contains('\n') => Read::One(convert::line(text, tools)),
        several => Read::List(
            several
                .iter()
                .map(|&line| (line.to_owned(), convert::line(line, tools)))
                .collect(),
        ),
    }
}

/// How many lines cannot be read; those without a figure are no specs.
fn unread(read: &Read) -> usize {
    match read {
        Read::One(Err(_)) => 1,
        Read::List(lines) => {
            let lines = lines.iter().enumerate();
            lines
                .filter(|(index, (line, read))| read.is_err() && convert::words(line, *index == 0).is_none())
                .count()
        }
        _ => 0,
    }
}

fn answers(read: &Read, text: &AttrValue, ontake: &Callback<String>, places: &Places) -> Html {
    match read {
        Read::Nothing => examples(ontake),
        Read::One(Ok(conversion)) => single::single(conversion),
        Read::One(Err(wrong)) => fault("q", text, wrong, ontake),
        Read::List(lines) => list::list(lines, text, ontake, places),
    }
}

fn examples(ontake: &Callback<String>) -> Html {
    html! {
        <div class="examples">
            <p>{ "Such as:" }</p>
            { chips(EXAMPLES.iter().map(|&example| example.to_owned()), ontake, None) }
        </div>
    }
}

/// The answer in words, for a screen reader: the first row, or what is wrong.
fn spoken(read: &Read) -> String {
    let first = |conversion: &Conversion| -> Option<String> {
        let finding = conversion.stages.first()?.rows.first()?;
        let ends: Vec<String> = finding
            .amount
            .ends()
            .map(|(_, quantity)| print::number(quantity, finding.unit, finding.style))
            .collect();
        Some(format!(
            "{} is {} {}",
            single::echo(conversion),
            ends.join(" to "),
            finding.unit.name()
        ))
    };
    match read {
        Read::Nothing => String::new(),
        Read::One(Ok(conversion)) => first(conversion).unwrap_or_default(),
        Read::One(Err(fault)) => fault.misread.to_string(),
        Read::List(lines) => format!("{} lines, {} not read", lines.len(), unread(read)),
    }
}
