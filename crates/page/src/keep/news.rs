//! What one tab tells the others: a sheet was saved or removed.

use super::object::entry;
use gloo::events::EventListener;
use std::cell::LazyCell;
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
}

/// Calls back with what other tabs do.
#[hook]
pub(crate) fn use_news(onnews: Callback<News>) {
    use_effect_with(onnews, |onnews| {
        let onnews = onnews.clone();
        let heard = move |event: &Event| {
            if let Some(news) = entry(event, "data").as_string() {
                onnews.emit(read(&news));
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
    let news = JsValue::from([id, " ", &rev].concat());
    CHANNEL.with(|channel| {
        if let Some(channel) = channel.as_ref() {
            // Tabs that hear nothing find out when they save.
            let _ = channel.post_message(&news);
        }
    });
}

fn read(news: &str) -> News {
    let (id, rev) = news.split_once(' ').unwrap_or((news, ""));
    News {
        id: id.to_owned(),
        rev: rev.parse().unwrap_or(0),
        removed: rev.is_empty(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_save_and_a_removal_are_told_apart() {
        let saved = read("front-belt 7");
        assert_eq!((saved.id.as_str(), saved.rev, saved.removed), ("front-belt", 7, false));
        let removed = read("front-belt ");
        assert_eq!(
            (removed.id.as_str(), removed.rev, removed.removed),
            ("front-belt", 0, true)
        );
    }
}
