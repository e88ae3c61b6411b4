//! The fragment of the address: which screen, with which texts in its fields.
//!
//! Pure text in and out, tested natively. Listening to the browser is [`crate::link`]'s work.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};

/// What a value keeps unescaped: letters, digits and the marks that need no escape in a fragment.
const KEPT: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// A destination.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Screen {
    /// Any spec in any unit.
    Convert,
    /// One bolt, all answers.
    Bolt,
    /// Belt length, route and tension.
    Belt,
    /// The record of a job.
    Sheet,
    /// Every publication a figure rests on; behind the settings, not in the navigation.
    Sources,
}

impl Screen {
    /// In the order of the navigation.
    pub(crate) const TABS: [Screen; 4] = [Screen::Convert, Screen::Bolt, Screen::Belt, Screen::Sheet];
    const ALL: [Screen; 5] = [
        Screen::Convert,
        Screen::Bolt,
        Screen::Belt,
        Screen::Sheet,
        Screen::Sources,
    ];

    /// The first part of the fragment.
    pub(crate) fn path(self) -> &'static str {
        match self {
            Self::Convert => "convert",
            Self::Bolt => "bolt",
            Self::Belt => "belt",
            Self::Sheet => "sheet",
            Self::Sources => "sources",
        }
    }

    /// The name on the screen.
    pub(crate) fn title(self) -> &'static str {
        match self {
            Self::Convert => "Convert",
            Self::Bolt => "Bolt",
            Self::Belt => "Belt",
            Self::Sheet => "Sheet",
            Self::Sources => "Sources",
        }
    }
}

/// What of a screen is meant, where it has several of a kind.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) enum Tail {
    /// The screen itself.
    #[default]
    None,
    /// One kept sheet, by its id.
    Sheet(String),
    /// A sheet that is in the link whole.
    Shared(String),
}

/// The first part of the fragment of a shared sheet.
const SHARED: &str = "s";

/// A parsed fragment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Route {
    /// The screen; the first one where the fragment names none.
    pub(crate) screen: Screen,
    /// Which sheet, on the Sheet screen.
    pub(crate) tail: Tail,
    /// The values by key, as a person would type them. A repeated key keeps its last value.
    pub(crate) values: Vec<(String, String)>,
}

impl Route {
    /// A screen with nothing filled in.
    pub(crate) fn bare(screen: Screen) -> Self {
        Self {
            screen,
            tail: Tail::None,
            values: Vec::new(),
        }
    }

    /// A kept sheet.
    pub(crate) fn sheet(id: &str) -> Self {
        Self {
            tail: Tail::Sheet(id.to_owned()),
            ..Self::bare(Screen::Sheet)
        }
    }

    /// A sheet in a link: the payload of `shopmath::sheet::link`.
    pub(crate) fn shared(payload: String) -> Self {
        Self {
            tail: Tail::Shared(payload),
            ..Self::bare(Screen::Sheet)
        }
    }

    /// Reads a fragment, with or without its `#`. Never fails: what it cannot read it leaves out.
    pub(crate) fn parse(fragment: &str) -> Self {
        let path = fragment.trim_start_matches('#').trim_start_matches('/');
        let (name, query) = path.split_once('?').unwrap_or((path, ""));
        let (first, rest) = name.split_once('/').unwrap_or((name, ""));
        if first == SHARED {
            return Self::shared(rest.to_owned());
        }
        let screen = Screen::ALL
            .into_iter()
            .find(|screen| screen.path().eq_ignore_ascii_case(first))
            .unwrap_or(Screen::Convert);
        let mut route = Self::bare(screen);
        if screen == Screen::Sheet && !rest.is_empty() {
            route.tail = Tail::Sheet(decode(rest));
        }
        for pair in query.split('&').filter(|pair| !pair.is_empty()) {
            let (key, value) = pair.split_once('=').unwrap_or((pair, ""));
            route.set(&decode(key), decode(value));
        }
        route
    }

    /// The value of a key; absent keys take the screen's default.
    pub(crate) fn value(&self, key: &str) -> Option<&str> {
        self.values
            .iter()
            .find(|(known, _)| known == key)
            .map(|(_, value)| value.as_str())
    }

    /// Sets a key; an empty value leaves it out of the link.
    pub(crate) fn set(&mut self, key: &str, value: String) {
        self.values.retain(|(known, _)| known != key);
        if !value.is_empty() {
            self.values.push((key.to_owned(), value));
        }
    }

    /// The keys and values as they stand in the fragment.
    pub(crate) fn query(&self) -> String {
        let pairs = self
            .values
            .iter()
            .map(|(key, value)| format!("{key}={}", encode(value)));
        pairs.collect::<Vec<String>>().join("&")
    }

    /// The fragment, with its `#`.
    pub(crate) fn print(&self) -> String {
        let query = match self.query() {
            pairs if pairs.is_empty() => pairs,
            pairs => format!("?{pairs}"),
        };
        match &self.tail {
            Tail::None => format!("#/{}{query}", self.screen.path()),
            Tail::Sheet(id) => format!("#/{}/{}{query}", self.screen.path(), encode(id)),
            Tail::Shared(payload) => format!("#/{SHARED}/{payload}"),
        }
    }
}

fn decode(text: &str) -> String {
    percent_decode_str(text).decode_utf8_lossy().into_owned()
}

fn encode(text: &str) -> String {
    utf8_percent_encode(text, KEPT).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_printed_route_reads_back() {
        for value in ["60 N·m", "10 N·m + 90°", "a&b=c#d?e%", "two\nlines", "１２ ｍｍ"] {
            let mut route = Route::bare(Screen::Convert);
            route.set("q", value.to_owned());
            assert_eq!(Route::parse(&route.print()), route);
        }
    }

    #[test]
    fn a_plus_is_a_plus_however_it_is_written() {
        assert_eq!(
            Route::parse("#/bolt?spec=10%20Nm%20%2B%2090%C2%B0").value("spec"),
            Some("10 Nm + 90°")
        );
        assert_eq!(
            Route::parse("#/bolt?spec=10 Nm + 90°").value("spec"),
            Some("10 Nm + 90°")
        );
    }

    #[test]
    fn a_fragment_no_one_wrote_opens_the_first_screen() {
        for fragment in [
            "",
            "#",
            "#/",
            "#/nowhere?q=1",
            "#%ff%fe",
            "#/?",
            "#//convert",
            "#/convert?&&=&q",
        ] {
            assert_eq!(Route::parse(fragment).screen, Screen::Convert, "{fragment}");
        }
    }

    #[test]
    fn a_sheet_is_meant_by_its_id_or_is_in_the_link() {
        let kept = Route::parse("#/sheet/2026-11-25-k3");
        assert_eq!(kept, Route::sheet("2026-11-25-k3"));
        assert_eq!(Route::parse(&kept.print()), kept);
        let shared = Route::parse("#/s/1.a-b_c");
        assert_eq!(shared, Route::shared("1.a-b_c".into()));
        assert_eq!(shared.print(), "#/s/1.a-b_c");
        for bare in ["#/sheet", "#/sheet/", "#/sheet?q=1"] {
            assert_eq!(
                (Route::parse(bare).screen, Route::parse(bare).tail),
                (Screen::Sheet, Tail::None)
            );
        }
    }

    #[test]
    fn the_last_of_a_repeated_key_stands() {
        assert_eq!(Route::parse("#/convert?q=1&q=2").values, vec![("q".into(), "2".into())]);
    }
}
