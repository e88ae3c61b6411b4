//! The settings panel: theme, what the tools read in, and whether the page works offline.

use super::choice::Choice;
use crate::offline::Offline;
use crate::settings::{Change, SettingsHandle, Theme};
use shopmath::tools::Tools;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) settings: SettingsHandle,
    pub(crate) offline: Offline,
}

/// The panel.
#[component]
pub(crate) fn SettingsPanel(props: &Props) -> Html {
    let settings = &props.settings;
    let theme = settings.dispatcher();
    let choose_theme = Callback::from(move |id: &'static str| {
        if let Some(chosen) = Theme::ALL.into_iter().find(|theme| theme.id() == id) {
            theme.dispatch(Change::Theme(chosen));
        }
    });
    html! {
        <section id="settings" class="settings" aria-label="Settings">
            <Choice name="theme" label="Theme" chosen={settings.theme.id()} onchoose={choose_theme}
                options={Theme::ALL.map(|theme| (theme.id(), theme.name())).to_vec()} />
            <ToolsChoice settings={settings.clone()} name="tools-setting" />
            <p class="note">{ words(props.offline) }</p>
            if let Some(trouble) = settings.trouble { <p class="note" role="alert">{ trouble.to_string() }</p> }
        </section>
    }
}

#[derive(PartialEq, Properties)]
pub(crate) struct ToolsProps {
    pub(crate) settings: SettingsHandle,
    pub(crate) name: &'static str,
}

/// What the tools read in, wherever it is offered.
#[component]
pub(crate) fn ToolsChoice(props: &ToolsProps) -> Html {
    let dispatcher = props.settings.dispatcher();
    let choose = Callback::from(move |id: &'static str| {
        if let Some(chosen) = Tools::ALL.into_iter().find(|tools| tools.id() == id) {
            dispatcher.dispatch(Change::Tools(chosen));
        }
    });
    let name = |tools| match tools {
        Tools::Both => "Both",
        Tools::Metric => "Metric",
        Tools::Inch => "Inch",
    };
    html! {
        <Choice name={props.name} label="My tools read in" chosen={props.settings.tools.id()} onchoose={choose}
            options={Tools::ALL.map(|tools| (tools.id(), name(tools))).to_vec()} />
    }
}

/// The state of the kept copy in a sentence.
fn words(offline: Offline) -> &'static str {
    match offline {
        Offline::Ready => "Ready to work offline: every file of this page is kept on this device.",
        Offline::Pending => "Keeping a copy for work without a network. Stay on this page until it says ready.",
        Offline::Unavailable => {
            "No copy is kept here, so the page needs a network to start. Open it over https, not in a private window."
        }
    }
}
