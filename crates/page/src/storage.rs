//! The browser's small store, with errors for what can go wrong with it instead of a panic.
//!
//! Settings, drafts and counts of sheets and changes only; sheets do not live here.

/// Why something could not be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum StoreError {
    /// The browser refuses storage to this page, as in some private windows.
    Blocked,
    /// There is no room, or writing was refused.
    Full,
}

impl StoreError {
    /// What happened and what to do, for the person.
    pub(crate) fn words(self) -> &'static str {
        match self {
            Self::Blocked => {
                "This browser keeps nothing for this page. Settings last until the tab closes; allow site data to keep them."
            }
            Self::Full => {
                "The browser has no room left, so this setting was not kept. Free some space and set it again."
            }
        }
    }
}

fn store() -> Result<web_sys::Storage, StoreError> {
    web_sys::window()
        .and_then(|window| window.local_storage().ok().flatten())
        .ok_or(StoreError::Blocked)
}

/// The text kept under a name, if any.
pub(crate) fn get(name: &str) -> Result<Option<String>, StoreError> {
    store()?.get_item(name).map_err(|_| StoreError::Blocked)
}

/// Keeps a text under a name.
pub(crate) fn set(name: &str, text: &str) -> Result<(), StoreError> {
    store()?.set_item(name, text).map_err(|_| StoreError::Full)
}

/// Forgets the text under a name.
pub(crate) fn forget(name: &str) {
    if let Ok(store) = store() {
        // A store that refuses keeps nothing to forget either.
        let _ = store.remove_item(name);
    }
}

/// The names that begin with some letters; none where nothing is kept.
pub(crate) fn names(start: &str) -> Vec<String> {
    let mut names = Vec::new();
    if let Ok(store) = store() {
        for place in 0..store.length().unwrap_or(0) {
            if let Ok(Some(name)) = store.key(place)
                && name.starts_with(start)
            {
                names.push(name);
            }
        }
    }
    names
}
