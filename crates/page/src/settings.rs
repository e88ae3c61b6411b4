//! Settings: what the user's tools read in, and the theme. Kept on the device.

use crate::storage::{self, StoreError};
use gloo::utils::{document, document_element};
use shopmath::tools::Tools;
use std::rc::Rc;
use yew::prelude::*;

const TOOLS: &str = "fenderside.tools";
const THEME: &str = "fenderside.theme";

/// Light for the sun, dark, or as the system says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Theme {
    /// As the system says.
    #[default]
    System,
    /// Black on white, for daylight.
    Sun,
    /// Light on dark.
    Dark,
}

impl Theme {
    pub(crate) const ALL: [Theme; 3] = [Theme::System, Theme::Sun, Theme::Dark];

    pub(crate) fn id(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Sun => "sun",
            Self::Dark => "dark",
        }
    }

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::System => "System",
            Self::Sun => "Sun",
            Self::Dark => "Dark",
        }
    }
}

/// The settings in force and whether they could be kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Settings {
    pub(crate) tools: Tools,
    pub(crate) theme: Theme,
    pub(crate) trouble: Option<StoreError>,
}

/// A change of the settings.
pub(crate) enum Change {
    Tools(Tools),
    Theme(Theme),
    /// The outcome of keeping them.
    Kept(Option<StoreError>),
}

impl Reducible for Settings {
    type Action = Change;

    fn reduce(self: Rc<Self>, change: Change) -> Rc<Self> {
        let mut settings = (*self).clone();
        match change {
            Change::Tools(tools) => settings.tools = tools,
            Change::Theme(theme) => settings.theme = theme,
            Change::Kept(trouble) => settings.trouble = trouble,
        }
        Rc::new(settings)
    }
}

/// The settings as the shell hands them down.
pub(crate) type SettingsHandle = UseReducerHandle<Settings>;

/// Reads the settings once, applies the theme, and keeps every change.
#[hook]
pub(crate) fn use_settings() -> SettingsHandle {
    let settings = use_reducer(load);
    let dispatcher = settings.dispatcher();
    use_effect_with((settings.theme, settings.tools), move |&(theme, tools)| {
        // A theme the document does not get is a theme not seen; nothing else depends on it.
        let _ = document_element().set_attribute("data-theme", theme.id());
        colour_bars(theme);
        let kept = storage::set(THEME, theme.id()).and_then(|()| storage::set(TOOLS, tools.id()));
        dispatcher.dispatch(Change::Kept(kept.err()));
    });
    settings
}

/// Gives the browser's own bars the colour of the theme: of the two that the document names, the one that
/// the system's would take, or the chosen one.
fn colour_bars(theme: Theme) {
    let bars = [
        ("bar-sun", Theme::Sun, "(prefers-color-scheme: light)"),
        ("bar-dark", Theme::Dark, "(prefers-color-scheme: dark)"),
    ];
    for (id, own, system) in bars {
        let media = match theme {
            Theme::System => system,
            _ if theme == own => "all",
            _ => "not all",
        };
        if let Some(bar) = document().get_element_by_id(id) {
            // Any element takes the attribute.
            let _ = bar.set_attribute("media", media);
        }
    }
}

fn load() -> Settings {
    let kept = |name| storage::get(name);
    let (tools, theme) = (kept(TOOLS), kept(THEME));
    let trouble = tools.as_ref().err().or(theme.as_ref().err()).copied();
    let tools = tools
        .ok()
        .flatten()
        .and_then(|id| Tools::ALL.into_iter().find(|tools| tools.id() == id));
    let theme = theme
        .ok()
        .flatten()
        .and_then(|id| Theme::ALL.into_iter().find(|theme| theme.id() == id));
    Settings {
        tools: tools.unwrap_or_default(),
        theme: theme.unwrap_or_default(),
        trouble,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_touches_only_its_own_setting() {
        let dark = Rc::new(Settings::default()).reduce(Change::Theme(Theme::Dark));
        let inch = dark.reduce(Change::Tools(Tools::Inch));
        assert_eq!((inch.theme, inch.tools), (Theme::Dark, Tools::Inch));
    }
}
