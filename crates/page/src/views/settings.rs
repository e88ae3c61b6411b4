//! The settings panel: theme, and whether the page works offline; and the choice of tools, which stands on the
//! screens.

use super::choice::choice;
use crate::offline::Offline;
use crate::route::{Route, Screen};
use crate::settings::{Change, SettingsHandle, Theme};
use shopmath::tools::Tools;
use yew::prelude::*;

/// The panel.
pub(crate) fn settings_panel(settings: &SettingsHandle, offline: Offline) -> Html {
    let dispatcher = settings.dispatcher();
    let choose = Callback::from(move |id: &'static str| {
        let chosen = Theme::ALL.into_iter().find(|theme| theme.id() == id);
        dispatcher.dispatch(Change::Theme(chosen.unwrap_or_default()));
    });
    let themes = Theme::ALL.map(|theme| (theme.id(), theme.name()));
    html! {
        <section id="settings" class="settings" aria-label="Settings">
            { choice("theme", "Theme", &themes, settings.theme.id(), &choose) }
            <p class="note">{ words(offline) }</p>
            <a class="chip" href={Route::bare(Screen::Sources).print()}>{ "Sources of all figures" }</a>
            if let Some(trouble) = settings.trouble { <p class="note" role="alert">{ trouble.words() }</p> }
        </section>
    }
}

/// What the tools read in.
pub(crate) fn tools_choice(settings: &SettingsHandle) -> Html {
    let dispatcher = settings.dispatcher();
    let choose = Callback::from(move |id: &'static str| {
        let chosen = Tools::ALL.into_iter().find(|tools| tools.id() == id);
        dispatcher.dispatch(Change::Tools(chosen.unwrap_or_default()));
    });
    let options = [
        (Tools::Both.id(), "Both"),
        (Tools::Metric.id(), "Metric"),
        (Tools::Inch.id(), "Inch"),
    ];
    choice("tools", "My tools read in", &options, settings.tools.id(), &choose)
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
