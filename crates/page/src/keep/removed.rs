//! What is removed, held so that it can be put back as it was.

use super::base::{self, HEADS, QUARANTINE, RECORDS};
use super::object::whole;
use super::{KeepError, draft, news, sheets};
use crate::storage;
use wasm_bindgen::JsValue;

/// What was removed, to put it back.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Removed {
    id: String,
    /// Entries of the database, each with its store.
    entries: Vec<(&'static str, JsValue)>,
    /// A text of the small store, with its name.
    text: Option<(String, String)>,
}

/// Removes a sheet and what was typed on it since.
pub(crate) async fn remove(id: &str) -> Result<Option<Removed>, KeepError> {
    delete(id, &[RECORDS, HEADS], draft::name(id)).await
}

/// Removes what cannot be read.
pub(crate) async fn remove_unreadable(key: &str) -> Result<Option<Removed>, KeepError> {
    delete(key, &[QUARANTINE], key.to_owned()).await
}

async fn delete(id: &str, stores: &[&'static str], name: String) -> Result<Option<Removed>, KeepError> {
    let key = JsValue::from_str(id);
    let work = base::begin(true).await?;
    let mut entries = Vec::new();
    for store in stores {
        let value = work.get(store, &key).await?;
        if !value.is_undefined() {
            entries.push((*store, value));
            work.delete(store, &key)?;
        }
    }
    sheets::finish(work).await?;
    let text = storage::get(&name).ok().flatten();
    storage::forget(&name);
    if entries.is_empty() && text.is_none() {
        return Ok(None);
    }
    news::tell(id, None);
    Ok(Some(Removed {
        id: id.to_owned(),
        entries,
        text: text.map(|text| (name, text)),
    }))
}

/// Brings back what was removed; where its place is taken by now, nothing happens but a refusal.
pub(crate) async fn bring_back(removed: &Removed) -> Result<(), KeepError> {
    let work = base::begin(true).await?;
    for (store, value) in &removed.entries {
        work.add(store, value)?;
    }
    sheets::finish(work).await?;
    if let Some((name, text)) = &removed.text {
        storage::set(name, text)?;
    }
    let rev = removed.entries.first().map(|(_, value)| whole(value, "rev"));
    news::tell(&removed.id, Some(rev.unwrap_or(0)));
    Ok(())
}
