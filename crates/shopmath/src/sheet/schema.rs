//! The published schema against the code: what goes out satisfies it, what it forbids is refused,
//! and both name the same entries and limits.
//!
//! The schema uses few words of its language, so the few lines here read it; a word they do not
//! know fails the test.

use super::model::{Belt, Check, Fastener, Interval, Part, SCHEMA, Sheet};
use super::{demo, file, limits};
use crate::fastener::bolt::FIELDS;
use serde_json::{Map, Value, json};

fn schema() -> Value {
    serde_json::from_str(include_str!("../../schema/sheet-1.schema.json")).unwrap()
}

/// Whether a value satisfies a part of the schema. A word about one type says nothing of others.
fn satisfies(root: &Value, part: &Value, value: &Value) -> bool {
    let entries = value.as_object();
    let items = value.as_array();
    let letters = value.as_str().map(|text| text.chars().count() as u64);
    part.as_object()
        .unwrap()
        .iter()
        .all(|(word, wanted)| match word.as_str() {
            "$schema" | "title" | "description" | "$defs" => true,
            "$ref" => satisfies(root, root.pointer(&wanted.as_str().unwrap()[1..]).unwrap(), value),
            "const" => value == wanted,
            "type" => is_type(wanted.as_str().unwrap(), value),
            "required" => entries.is_none_or(|entries| {
                let keys = wanted.as_array().unwrap().iter();
                keys.map(|key| key.as_str().unwrap())
                    .all(|key| entries.contains_key(key))
            }),
            "properties" => entries.is_none_or(|entries| {
                let known = entries
                    .iter()
                    .filter_map(|(key, entry)| Some((wanted.get(key)?, entry)));
                known.into_iter().all(|(part, entry)| satisfies(root, part, entry))
            }),
            "additionalProperties" => entries.is_none_or(|entries| {
                wanted == &json!(false) && entries.keys().all(|key| part["properties"].get(key).is_some())
            }),
            "items" => items.is_none_or(|items| items.iter().all(|item| satisfies(root, wanted, item))),
            "maxItems" => items.is_none_or(|items| items.len() as u64 <= wanted.as_u64().unwrap()),
            "maxLength" => letters.is_none_or(|letters| letters <= wanted.as_u64().unwrap()),
            "minimum" => value.as_f64().is_none_or(|value| value >= wanted.as_f64().unwrap()),
            "maximum" => value.as_f64().is_none_or(|value| value <= wanted.as_f64().unwrap()),
            "pattern" => value
                .as_str()
                .is_none_or(|text| matches_pattern(wanted.as_str().unwrap(), text)),
            other => panic!("the schema says {other}, which is not read here"),
        })
}

fn is_type(name: &str, value: &Value) -> bool {
    match name {
        "object" => value.is_object(),
        "array" => value.is_array(),
        "string" => value.is_string(),
        "boolean" => value.is_boolean(),
        "integer" => value.is_u64() || value.is_i64(),
        other => panic!("unknown type {other}"),
    }
}

/// The schema's two patterns, by the code's own rules for the same entries.
fn matches_pattern(pattern: &str, text: &str) -> bool {
    match pattern {
        "^[a-z0-9-]{1,64}$" => limits::is_id(text),
        "^([0-9]{4}-[0-9]{2}-[0-9]{2})?$" => text.is_empty() || super::Date::read(text).is_some(),
        other => panic!("unknown pattern {other}"),
    }
}

fn entries(value: &Value) -> &Map<String, Value> {
    value.as_object().unwrap()
}

/// A sheet in which nothing is empty, so that JSON names every entry.
fn full() -> Sheet {
    let text = || "x".to_owned();
    let bolt = FIELDS.iter().map(|field| field.key.to_owned());
    let bolt = bolt.filter(|key| !["thread", "class", "spec", "reading"].contains(&key.as_str()));
    Sheet {
        schema: SCHEMA,
        id: text(),
        rev: limits::REV,
        updated: "2025-03-31".into(),
        demo: true,
        machine: text(),
        odometer: text(),
        date: text(),
        notes: text(),
        currency: text(),
        fasteners: vec![Fastener {
            id: u32::MAX,
            label: text(),
            thread: text(),
            class: text(),
            spec: text(),
            count: text(),
            head: text(),
            drive: text(),
            single_use: true,
            replaced: true,
            done: true,
            readings: vec![text()],
            bolt: bolt.map(|key| (key, text())).collect(),
        }],
        parts: vec![Part {
            id: 1,
            label: text(),
            count: text(),
            price: text(),
            done: true,
        }],
        checks: vec![Check {
            id: 1,
            label: text(),
            before: text(),
            after: text(),
            done: true,
        }],
        belts: vec![Belt {
            id: 1,
            label: text(),
            query: text(),
        }],
        intervals: vec![Interval {
            id: 1,
            label: text(),
            every_distance: text(),
            every_days: text(),
            done_at_odometer: text(),
            done_on: text(),
        }],
    }
}

fn exported(sheet: Sheet) -> Value {
    serde_json::from_str(&file::export(&[sheet]).unwrap()).unwrap()
}

#[test]
fn what_goes_out_satisfies_the_schema() {
    let schema = schema();
    for sheet in [demo::sheet(), full(), Sheet::new("a")] {
        assert!(satisfies(&schema, &schema, &exported(sheet)));
    }
}

#[test]
fn schema_and_code_name_the_same_entries() {
    let (schema, file) = (schema(), exported(full()));
    let sheet = &file["sheets"][0];
    let defined = |name: &str| schema["$defs"][name]["properties"].clone();
    let mut pairs = vec![(defined("sheet"), sheet.clone())];
    for (list, row) in [
        ("fasteners", "fastener"),
        ("parts", "part"),
        ("checks", "check"),
        ("belts", "belt"),
        ("intervals", "interval"),
    ] {
        pairs.push((defined(row), sheet[list][0].clone()));
    }
    pairs.push((
        defined("fastener")["bolt"]["properties"].clone(),
        sheet["fasteners"][0]["bolt"].clone(),
    ));
    for (defined, written) in pairs {
        let names = |value: &Value| {
            entries(value)
                .keys()
                .cloned()
                .collect::<std::collections::BTreeSet<_>>()
        };
        assert_eq!(names(&defined), names(&written));
    }
}

#[test]
fn schema_and_code_have_the_same_limits() {
    let schema = schema();
    let at = |path: &str| schema.pointer(path).and_then(Value::as_u64);
    let sheet = "/$defs/sheet/properties";
    for list in ["fasteners", "parts", "checks", "belts", "intervals"] {
        assert_eq!(at(&format!("{sheet}/{list}/maxItems")), Some(limits::ROWS as u64));
    }
    assert_eq!(at(&format!("{sheet}/rev/maximum")), Some(limits::REV));
    assert_eq!(at("/$defs/text/maxLength"), Some(limits::TEXT as u64));
    assert_eq!(at("/$defs/long-text/maxLength"), Some(limits::LONG_TEXT as u64));
    assert_eq!(
        at("/$defs/fastener/properties/readings/maxItems"),
        Some(limits::READINGS as u64)
    );
    assert_eq!(at("/$defs/row-id/maximum"), Some(u64::from(u32::MAX)));
    assert_eq!(at("/properties/sheets/maxItems"), Some(limits::SHEETS as u64));
}

#[test]
fn what_the_schema_forbids_is_refused() {
    let schema = schema();
    let whole = exported(full());
    for (path, value) in [
        ("/format", json!("other")),
        ("/schema", json!(2)),
        ("/sheets", json!({})),
        ("/sheets/0/schema", json!(2)),
        ("/sheets/0/id", json!("A B")),
        ("/sheets/0/rev", json!(-1)),
        ("/sheets/0/rev", json!(limits::REV + 1)),
        ("/sheets/0/updated", json!("yesterday")),
        ("/sheets/0/demo", json!("yes")),
        ("/sheets/0/machine", json!("x".repeat(limits::TEXT + 1))),
        ("/sheets/0/fasteners/0", json!({})),
        ("/sheets/0/fasteners/0/id", json!(1.5)),
        ("/sheets/0/fasteners/0/readings", json!(vec!["1"; limits::READINGS + 1])),
        ("/sheets/0/fasteners/0/bolt", json!({"colour": "red"})),
        ("/sheets/0/parts/0", json!({"id": 1, "colour": "red"})),
        ("/sheets/0/belts/0/query", json!("x".repeat(limits::LONG_TEXT + 1))),
    ] {
        let mut file = whole.clone();
        *file.pointer_mut(path).unwrap() = value;
        assert!(!satisfies(&schema, &schema, &file), "{path}");
        assert!(file::import(file.to_string().as_bytes()).is_err(), "{path}");
    }
}

/// The paths of all texts in a value.
fn texts(value: &Value, path: &str) -> Vec<String> {
    let below = |key: &str, value: &Value| texts(value, &format!("{path}/{key}"));
    match value {
        Value::String(_) => vec![path.to_owned()],
        Value::Array(items) => (0..)
            .zip(items)
            .flat_map(|(at, item): (usize, _)| below(&at.to_string(), item))
            .collect(),
        Value::Object(entries) => entries.iter().flat_map(|(key, entry)| below(key, entry)).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn every_text_has_its_limit_and_every_list_its_own() {
    let whole = exported(full());
    let refused = |path: &str, value: Value| {
        let mut file = whole.clone();
        *file.pointer_mut(path).unwrap() = value;
        file::import(file.to_string().as_bytes()).map_err(|fault| fault.name())
    };
    let paths = texts(&whole["sheets"], "/sheets");
    assert!(paths.len() > 40, "{}", paths.len());
    for path in paths {
        let (limit, fault) = match path.rsplit('/').next().unwrap() {
            "notes" | "query" => (limits::LONG_TEXT, "past-limit"),
            "id" => (limits::ID, "bad-entry"),
            "updated" => continue,
            _ => (limits::TEXT, "past-limit"),
        };
        assert!(refused(&path, json!("x".repeat(limit))).is_ok(), "{path}");
        assert_eq!(refused(&path, json!("x".repeat(limit + 1))), Err(fault), "{path}");
    }
    for list in ["fasteners", "parts", "checks", "belts", "intervals"] {
        let path = format!("/sheets/0/{list}");
        let rows = |ids: std::ops::Range<usize>| json!(ids.map(|id| json!({"id": id})).collect::<Vec<_>>());
        assert!(refused(&path, rows(0..limits::ROWS)).is_ok(), "{list}");
        assert_eq!(refused(&path, rows(0..limits::ROWS + 1)), Err("past-limit"), "{list}");
        assert_eq!(refused(&path, json!([{"id": 1}, {"id": 1}])), Err("twice"), "{list}");
    }
}
