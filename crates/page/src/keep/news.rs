//! What one tab tells the others: a sheet was saved or removed.

use super::label;
use super::object::entry;
use gloo::events::EventListener;
use std::cell::{LazyCell, RefCell};
use wasm_bindgen::JsValue;
use web_sys::BroadcastChannel;
use yew::prelude::*;

/// What another tab did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct News {
    pub(crate) id: String,
    /// The number of the save; 0 where it is removed.
    pub(crate) rev: u64,
    pub(crate) removed: bool,
}

thread_local! {
    // The one that posts must be the one that listens, or a tab would hear itself.
    static CHANNEL: LazyCell<Option<BroadcastChannel>> = LazyCell::new(|| BroadcastChannel::new("fenderside").ok());
    static OTHERS: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
}

/// Whether a tab has been heard of. What it types is its own to save, as long as it is there; whether it
/// still is, nothing tells.
pub(super) fn is_heard(tab: &str) -> bool {
    OTHERS.with_borrow(|others| others.iter().any(|other| other == tab))
}

/// Calls back with what other tabs do.
#[hook]
pub(crate) fn use_news(onnews: Callback<News>) {
    use_effect_with(onnews, |onnews| {
        let onnews = onnews.clone();
        let heard = move |event: &Event| {
            if let Some(news) = entry(event, "data").as_string() {
                let (news, tab) = read(&news);
                if !is_heard(&tab) {
                    OTHERS.with_borrow_mut(|others| others.push(tab));
                }
                onnews.emit(news);
            }
        };
        let listener = CHANNEL.with(|channel| {
            let channel = channel.as_ref()?;
            Some(EventListener::new(channel, "message", heard))
        });
        move || drop(listener)
    });
}

/// Tells the other tabs; without a number, the sheet is removed.
pub(super) fn tell(id: &str, rev: Option<u64>) {
    let rev = rev.map(|rev| rev.to_string()).unwrap_or_default();
    let news = JsValue::from([id, &rev, &label::tab()].join(" "));
    CHANNEL.with(|channel| {
        if let Some(channel) = channel.as_ref() {
            // Tabs that hear nothing find out when they save.
            let _ = channel.post_message(&news);
        }
    });
}

/// What is said, and the tab that says it.
fn read(news: &str) -> (News, String) {
    let mut words = news.split(' ').map(str::to_owned);
    let mut next = || words.next().unwrap_or_default();
    let (id, rev, tab) = (next(), next(), next());
    let news = News {
        id,
        rev: rev.parse().unwrap_or(0),
        removed: rev.is_empty(),
    };
    (news, tab)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_save_and_a_removal_are_told_apart() {
        let news = |rev, removed| News {
            id: "front-belt".to_owned(),
            rev,
            removed,
        };
        assert_eq!(read("front-belt 7 k3"), (news(7, false), "k3".to_owned()));
        assert_eq!(read("front-belt  k3"), (news(0, true), "k3".to_owned()));
    }
}
