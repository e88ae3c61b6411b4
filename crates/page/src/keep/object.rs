//! Values of the browser's database, read and made by the names of their entries.

use js_sys::{JSON, Object, Reflect};
use wasm_bindgen::JsValue;

/// An entry, or undefined.
pub(super) fn entry(value: &JsValue, name: &str) -> JsValue {
    Reflect::get(value, &JsValue::from_str(name)).unwrap_or_default()
}

/// An entry as a text; empty where it is none.
pub(super) fn text(value: &JsValue, name: &str) -> String {
    entry(value, name).as_string().unwrap_or_default()
}

/// An entry as a whole number; 0 where it is none.
pub(super) fn whole(value: &JsValue, name: &str) -> u64 {
    whole_of(&entry(value, name))
}

/// A value as a whole number; 0 where it is none.
pub(super) fn whole_of(value: &JsValue) -> u64 {
    let number = value.as_f64().unwrap_or_default();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // saturates, and NaN is 0
    let whole = number as u64;
    whole
}

/// A number as the browser holds it, exact up to 2⁵³.
pub(super) fn number(whole: u64) -> JsValue {
    #[allow(clippy::cast_precision_loss)] // the core keeps numbers of saves below 2⁵³
    let number = whole as f64;
    JsValue::from_f64(number)
}

/// An object of these entries.
pub(super) fn object(entries: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in entries {
        // Setting an entry of a plain object does not fail.
        let _ = Reflect::set(&object, &JsValue::from_str(name), value);
    }
    object.into()
}

/// A value as JSON; empty where it has none.
pub(super) fn json(value: &JsValue) -> String {
    JSON::stringify(value).map(String::from).unwrap_or_default()
}
