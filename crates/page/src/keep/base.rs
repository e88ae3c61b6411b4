//! The browser's database: one connection, transactions over all of it, and what it refuses.
//!
//! A transaction ends by itself once nothing is asked of it, so whoever holds one waits for
//! nothing else.

use super::KeepError;
use super::object::{entry, object, text};
use crate::storage;
use js_sys::{Array, Function, Promise};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbObjectStore, IdbOpenDbRequest, IdbRequest, IdbTransaction};

pub(super) const NAME: &str = "fenderside";
/// A later page that adds a store raises this number; one that gives a store another meaning gives
/// it another name as well. So a page goes on with a higher number where it finds its own stores.
const VERSION: u32 = 1;

/// Sheets, one record each.
pub(super) const RECORDS: &str = "records";
/// What the list shows of each.
pub(super) const HEADS: &str = "heads";
/// Records that could not be read, moved out of the way.
pub(super) const QUARANTINE: &str = "quarantine";

const STORES: [&str; 3] = [RECORDS, HEADS, QUARANTINE];

thread_local! {
    static OPEN: RefCell<Option<IdbDatabase>> = const { RefCell::new(None) };
}

/// A transaction over all stores.
pub(super) struct Work(IdbTransaction);

/// Begins a transaction, with a new connection where the last one has ended.
pub(super) async fn begin(write: bool) -> Result<Work, KeepError> {
    if let Some(database) = OPEN.take() {
        let begun = transaction(&database, write);
        if begun != Err(KeepError::Lost) {
            OPEN.set(Some(database));
            return begun.map(Work);
        }
    }
    let database = connect().await.map_err(|error| match storage::get(NAME) {
        // A browser that blocks storage says so in many ways, but blocks all of it.
        Err(_) => KeepError::Blocked,
        Ok(_) => error,
    })?;
    let begun = transaction(&database, write).map(Work);
    OPEN.set(Some(database));
    begun
}

impl Work {
    /// What is kept under a key, or undefined.
    pub(super) async fn get(&self, store: &str, key: &JsValue) -> Result<JsValue, KeepError> {
        answer(self.store(store)?.get(key)).await
    }

    /// All that a store holds, by key.
    pub(super) async fn all(&self, store: &str) -> Result<Array, KeepError> {
        let found = answer(self.store(store)?.get_all()).await;
        found.map(JsCast::unchecked_into)
    }

    /// All keys of a store, in their order.
    pub(super) async fn keys(&self, store: &str) -> Result<Array, KeepError> {
        let found = answer(self.store(store)?.get_all_keys()).await;
        found.map(JsCast::unchecked_into)
    }

    /// How many entries a store has.
    pub(super) async fn count(&self, store: &str) -> Result<JsValue, KeepError> {
        answer(self.store(store)?.count()).await
    }

    /// Keeps a value in place of one with the same key.
    pub(super) fn put(&self, store: &str, value: &JsValue) -> Result<(), KeepError> {
        self.asked(self.store(store)?.put(value))
    }

    /// Keeps a value; where its key is taken, the whole transaction fails.
    pub(super) fn add(&self, store: &str, value: &JsValue) -> Result<(), KeepError> {
        self.asked(self.store(store)?.add(value))
    }

    /// Removes what is kept under a key.
    pub(super) fn delete(&self, store: &str, key: &JsValue) -> Result<(), KeepError> {
        self.asked(self.store(store)?.delete(key))
    }

    /// Waits until all that was asked is on the disk.
    pub(super) async fn done(self) -> Result<(), KeepError> {
        let ended = Promise::new(&mut |resolve, reject| {
            self.0.set_oncomplete(Some(&resolve));
            self.0.set_onabort(Some(&reject));
        });
        ended.await.map(|_| ()).map_err(fault)
    }

    fn store(&self, name: &str) -> Result<IdbObjectStore, KeepError> {
        self.0.object_store(name).map_err(fault)
    }

    /// All or nothing: a change that is refused at once takes the others along.
    fn asked(&self, request: Result<IdbRequest, JsValue>) -> Result<(), KeepError> {
        request.map(|_| ()).map_err(|thrown| {
            // It fails only where it has ended already.
            let _ = self.0.abort();
            fault(thrown)
        })
    }
}

async fn answer(request: Result<IdbRequest, JsValue>) -> Result<JsValue, KeepError> {
    let request = request.map_err(fault)?;
    let answered = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    answered.await.map_err(fault)?;
    request.result().map_err(fault)
}

async fn connect() -> Result<IdbDatabase, KeepError> {
    let factory = web_sys::window().and_then(|window| window.indexed_db().ok().flatten());
    let factory = factory.ok_or(KeepError::Blocked)?;
    let own = connected(factory.open_with_u32(NAME, VERSION)).await;
    match own {
        // The page was taken back to this version; what the later one kept is still there.
        Err(KeepError::Newer) => connected(factory.open(NAME)).await,
        _ => own,
    }
}

async fn connected(request: Result<IdbOpenDbRequest, JsValue>) -> Result<IdbDatabase, KeepError> {
    let request = request.map_err(fault)?;
    loop {
        let next = Promise::new(&mut |resolve, reject| {
            request.set_onupgradeneeded(Some(&resolve));
            request.set_onsuccess(Some(&resolve));
            request.set_onerror(Some(&reject));
            request.set_onblocked(Some(&reject));
        });
        let event = next.await.map_err(fault)?;
        let database: IdbDatabase = request.result().map_err(fault)?.unchecked_into();
        if text(&event, "type") == "success" {
            give_way(&database);
            return Ok(database);
        }
        let by_id = object(&[("keyPath", "id".into())]).unchecked_into();
        for name in STORES {
            database
                .create_object_store_with_optional_parameters(name, &by_id)
                .map_err(fault)?;
        }
    }
}

/// Lets a newer version in another tab change the database, or the person delete it: the
/// connection ends, and the next use makes another.
fn give_way(database: &IdbDatabase) {
    let close: Function = entry(database, "close").unchecked_into();
    database.set_onversionchange(Some(&close.bind0(database)));
}

/// All that the database holds, whatever its form, by the names of its stores.
pub(super) async fn everything() -> Result<JsValue, KeepError> {
    let database = connect().await?;
    let stores = Array::from(&entry(&database, "objectStoreNames"));
    let work = Work(among(&database, &stores, false)?);
    let mut found = Vec::new();
    for name in stores.iter().filter_map(|name| name.as_string()) {
        let all = work.all(&name).await?;
        found.push((name, JsValue::from(all)));
    }
    database.close();
    let found: Vec<(&str, JsValue)> = found.iter().map(|(name, all)| (name.as_str(), all.clone())).collect();
    Ok(object(&found))
}

fn transaction(database: &IdbDatabase, write: bool) -> Result<IdbTransaction, KeepError> {
    among(database, &STORES.into_iter().map(JsValue::from_str).collect(), write)
}

/// The interface with a durability is not in `web-sys` for good, so it is called by its name.
fn among(database: &IdbDatabase, stores: &Array, write: bool) -> Result<IdbTransaction, KeepError> {
    let begin: Function = entry(database, "transaction").unchecked_into();
    let mode = if write { "readwrite" } else { "readonly" };
    let strict = object(&[("durability", "strict".into())]);
    let begun = begin.call3(database, stores, &mode.into(), &strict);
    begun.map(JsCast::unchecked_into).map_err(fault)
}

/// What was thrown, or what the event of a failure tells of.
fn fault(thrown: JsValue) -> KeepError {
    let target = entry(&thrown, "target");
    // A request that went down with its transaction says only that.
    let mut errors = [entry(&target, "transaction"), target]
        .map(|of| entry(&of, "error"))
        .into_iter();
    let error = errors.find(JsValue::is_object).unwrap_or(thrown);
    let mut name = text(&error, "name");
    if name.is_empty() {
        name = text(&error, "type");
    }
    match name.as_str() {
        "QuotaExceededError" => KeepError::Full,
        "SecurityError" => KeepError::Blocked,
        // The number of the database is higher than this page's, or a store of its own is not there.
        "VersionError" | "NotFoundError" => KeepError::Newer,
        // The connection has closed, or took its transactions along as it did.
        "InvalidStateError" | "AbortError" | "abort" => KeepError::Lost,
        _ => KeepError::Refused(name),
    }
}
