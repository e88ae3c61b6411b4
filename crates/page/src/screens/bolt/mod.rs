//! Bolt: thread, class and spec typed once; the verdict on top, the sections below it.
//!
//! `form` draws fields, `section` a section with its findings, `large` the large-type view. What
//! was typed is the only state; the rest comes from the core.

mod form;
mod large;
mod section;

use crate::awake::use_awake;
use crate::link::{Places, use_link};
use crate::route::{Route, Screen};
use crate::settings::SettingsHandle;
use crate::views::caution::cautions;
use crate::views::settings::tools_choice;
use crate::views::sketch::Sketch;
use form::Form;
use shopmath::fastener::bolt::field;
use shopmath::fastener::bolt::{BoltText, Slug, Verdict, assess, resolve};
use shopmath::sketch::share;
use std::rc::Rc;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) route: Rc<Route>,
    pub(crate) places: Places,
    pub(crate) settings: SettingsHandle,
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
    use_link(&props.places, to_route(&typed.0));
    let large = use_state(|| false);
    let onset = {
        let dispatcher = typed.dispatcher();
        use_callback((), move |(key, typed), ()| dispatcher.dispatch(Action::Set(key, typed)))
    };
    use_awake(*large);

    let text = &typed.0;
    let tools = props.settings.tools;
    let resolved = resolve(text);
    let assessment = assess(&resolved);
    let form = Form {
        text,
        errors: [&resolved.errors, &assessment.errors],
        onset: &onset,
    };
    let show = |open: bool| {
        let large = large.setter();
        Callback::from(move |_: MouseEvent| large.set(open))
    };
    if *large {
        return large::large(&assessment, text, tools, &show(false));
    }
    html! {
        <>
            { form.top() }
            { verdict(assessment.verdict.as_ref(), &assessment.waiting) }
            <button type="button" class="button wide" onclick={show(true)}>{ "Large type, for arm's length" }</button>
            { section::jumps(&assessment.sections) }
            { for assessment.sections.iter().map(|part| section::section(part, &assessment, &form, tools)) }
            { tools_choice(&props.settings) }
            { cautions(&assessment.cautions) }
        </>
    }
}

/// The one sentence, with a word and a sign before it, and its range on a bar.
fn verdict(verdict: Option<&Verdict>, waiting: &[&'static str]) -> Html {
    let Some(verdict) = verdict else {
        let names: Vec<&str> = waiting
            .iter()
            .filter_map(|key| field::of(key))
            .map(|field| field.label)
            .collect();
        let words = if names.is_empty() {
            "No verdict while a field above is in error.".to_owned()
        } else {
            format!("For a verdict, give: {}.", names.join(", "))
        };
        return html! { <output id="verdict" class="verdict waiting">{ words }</output> };
    };
    let (sign, word) = match verdict.slug {
        Slug::Ok => ("✓", "Believable"),
        Slug::Low => ("▽", "Low"),
        Slug::High => ("△", "High"),
        Slug::PastYield => ("✕", "Past yield"),
        Slug::Strips => ("✕", "Strips the hole"),
    };
    html! {
        <output id="verdict" class="verdict" data-verdict={verdict.slug.id()}>
            <p class="verdict-word"><span aria-hidden="true">{ sign }</span>{ " " }{ word }</p>
            <p>{ &verdict.sentence }</p>
            <Sketch drawn={share::share(verdict)} />
        </output>
    }
}
