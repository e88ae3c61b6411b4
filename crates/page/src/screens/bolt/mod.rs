//! Bolt: thread, class and spec typed once; the verdict on top, the sections below it.
//!
//! `form` draws fields, `section` a section with its findings, `large` the large-type view. What
//! was typed is the only state; the rest comes from the core.

mod form;
mod large;
mod section;

use crate::link::{Places, use_link};
use crate::route::{Route, Screen};
use crate::screens::sheet::desk::Desk;
use crate::screens::sheet::put_on::{put_back_button, put_on_button};
use crate::settings::SettingsHandle;
use crate::views::caution::cautions;
use crate::views::fault::chips;
use crate::views::finding::{amount, in_words};
use crate::views::overlay::use_overlay;
use crate::views::sketch::Sketch;
use crate::views::spoken::Spoken;
use crate::views::verdict::{sentence, sign};
use form::Form;
use large::large;
use shopmath::fastener::bolt::{Assessment, BoltText, assess, resolve};
use shopmath::sheet::Fastener;
use shopmath::sketch::share;
use std::rc::Rc;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
    pub(crate) desk: Desk,
}

/// What was typed, by key.
#[derive(Clone, Debug, Default, PartialEq)]
struct Typed(BoltText);

enum Action {
    /// The person typed into a field.
    Set(&'static str, String),
    /// A link, a bookmark or the back button brought a bolt.
    Follow(Rc<Route>),
}

impl Reducible for Typed {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let text = match action {
            Action::Set(key, typed) => {
                let mut text = self.0.clone();
                text.set(key, typed);
                text
            }
            Action::Follow(route) => of_route(&route),
        };
        if self.0 == text { self } else { Rc::new(Self(text)) }
    }
}

fn of_route(route: &Route) -> BoltText {
    let mut text = BoltText::default();
    for (key, typed) in &route.values {
        text.set(key, typed.clone());
    }
    text
}

fn to_route(text: &BoltText) -> Route {
    let mut route = Route::bare(Screen::Bolt);
    for (key, typed) in text.typed() {
        route.set(key, typed.to_owned());
    }
    route
}

/// The screen.
#[component]
pub(crate) fn Bolt(props: &Props) -> Html {
    let typed = use_reducer(|| Typed(of_route(&props.route)));
    {
        let dispatcher = typed.dispatcher();
        use_effect_with(props.route.clone(), move |route| {
            dispatcher.dispatch(Action::Follow(route.clone()))
        });
    }
    let route = to_route(&typed.0);
    use_link(&props.places, route.clone());
    let overlay = use_overlay();
    let head_open = use_mut_ref(|| false);
    let onset = {
        let dispatcher = typed.dispatcher();
        use_callback((), move |(key, typed), ()| dispatcher.dispatch(Action::Set(key, typed)))
    };

    let text = &typed.0;
    let resolved = resolve(text);
    let assessment = assess(&resolved);
    let stages = resolved.spec.as_given().map(|_| text.stages()).unwrap_or_default();
    let form = Form {
        text,
        stages: &stages,
        errors: [&resolved.errors, &assessment.errors],
        unfinished: &resolved.unfinished,
        reading_unit: resolved.reading_unit,
        onset: &onset,
    };
    if overlay.is_open() {
        return large(&assessment, text, &stages, props.settings.tools, &overlay);
    }
    // Opened by an error, the head's fields stay open: closing them would take one from under
    // the thumb.
    *head_open.borrow_mut() |= form.head_wrong();
    let (bolt, changed) = (typed.clone(), typed.clone());
    let rows = move || vec![Fastener::of_bolt(0, texts(&bolt))];
    let back = move |row: &Fastener| row.with_bolt(texts(&changed));
    html! {
        <>
            { form.top(*head_open.borrow(), html! { if let Some(told) = &resolved.unitless { { unit_offer(told, &onset) } } }) }
            { verdict(&assessment, &form) }
            <Spoken words={spoken(&assessment, &form, resolved.unitless.as_ref())} />
            { overlay.button("Large type, for arm's length", route.clone()) }
            <div class="chips">
                { put_back_button(back, route.clone(), &props.desk) }
                if text.has("spec") { { put_on_button(rows, route, &props.desk, props.settings.tools) } }
            </div>
            { section::strip(&assessment.sections) }
            { for assessment.sections.iter().map(|part| section::section(part, &assessment, &form, &props.settings)) }
            { cautions(&assessment.cautions) }
        </>
    }
}

fn texts(typed: &Typed) -> impl Iterator<Item = (&str, &str)> {
    typed.0.typed().map(|(key, text)| -> (&str, &str) { (key, text) })
}

/// The one sentence, with a word and a sign before it, and its range on a bar.
fn verdict(whole: &Assessment, form: &Form<'_>) -> Html {
    let Some(verdict) = &whole.verdict else {
        // Something cannot be read, most often while it is being typed.
        let kept = whole.waiting.is_empty();
        let (words, mut keys) = waiting(whole, form);
        keys.retain(|key| *key != "spec" || !form.is_begun(key));
        return html! {
            <output id="verdict" class={classes!("verdict", "waiting", kept.then_some("kept"))} aria-live="off">
                { form.begun_spec() }
                if !keys.is_empty() { { section::leads(words, &keys) } }
            </output>
        };
    };
    // The share at the end of the spec: after an angle, or after the torque alone.
    let share = section::finding(whole, "angle-yield-use").or_else(|| section::finding(whole, "yield-use"));
    html! {
        <output id="verdict" class={classes!("verdict", verdict.by_design.then_some("by-design"))} data-verdict={verdict.slug.id()} aria-live="off">
            <p class="verdict-word">{ sign(verdict) }{ " " }{ verdict.word }</p>
            if let Some(times) = &verdict.times {
                <p class="verdict-share"><span class="number">{ times }</span><span class="unit">{ " times yield" }</span></p>
            } else if let Some(share) = share { <p class="verdict-share">{ amount(share, share.unit, false) }<span class="unit">{ " of yield" }</span></p> }
            if form.text.has("adapter") && let Some(setting) = section::finding(whole, "wrench-setting") {
                <p class="verdict-set">{ "Set the wrench to " }<strong>{ amount(setting, setting.unit, false) }</strong></p>
            }
            <p>{ sentence(verdict) }</p>
            <Sketch drawn={share::share(verdict)} />
        </output>
    }
}

/// As what a number without a unit was read, and the other unit it can be meant in.
fn unit_offer([read, other]: &[String; 2], onset: &Callback<(&'static str, String)>) -> Html {
    let set = onset.reform(|text| ("spec", text));
    html! { <div class="offer"><p class="note">{ "Read as " }{ read }{ ", or:" }</p>{ chips([other.clone()], &set, Some("spec")) }</div> }
}

/// What a verdict waits for: the words before the fields, and the fields.
fn waiting(whole: &Assessment, form: &Form<'_>) -> (&'static str, Vec<&'static str>) {
    if whole.waiting.is_empty() {
        ("No verdict until this is put right:", form.wrong_keys().collect())
    } else {
        ("For a verdict, give:", whole.waiting.clone())
    }
}

/// What is heard: the first field in error, the verdict or what it waits for, as what a number
/// without a unit was read, and the wrench's setting where it is not the spec.
fn spoken(whole: &Assessment, form: &Form<'_>, unitless: Option<&[String; 2]>) -> String {
    if form.text.typed().next().is_none() {
        return String::new();
    }
    let wrong = form.errors.iter().flat_map(|errors| errors.iter()).next();
    let verdict = whole.verdict.as_ref().map_or_else(
        || {
            let (words, keys) = waiting(whole, form);
            let labels: Vec<&str> = section::labelled(&keys).map(|field| field.label).collect();
            [words, " ", &labels.join(", "), "."].concat()
        },
        |verdict| [verdict.word, ". ", &verdict.sentence].concat(),
    );
    let setting = section::finding(whole, "wrench-setting").filter(|_| form.text.has("adapter"));
    let words = wrong.map(|fault| fault.sentence.clone()).into_iter().chain([verdict]);
    let read = unitless.map(|[read, _]| ["Read as ", read, "."].concat());
    let words: Vec<String> = words.chain(read).chain(setting.map(in_words)).collect();
    words.join(" ")
}
