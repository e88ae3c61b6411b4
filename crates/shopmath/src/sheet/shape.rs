//! JSON as a sheet or a head, entry by entry; what is missing, unknown or of another kind is said.
//!
//! Written out and not derived: the derived readers of both took 15 KB more of the module after
//! brotli. A test holds these to the derived ones, which only tests use.

use super::assess::Progress;
use super::head::Head;
use super::model::{Belt, Check, Fastener, Interval, Part, Sheet};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// What was read, or which entry cannot be and why: the middle of a sentence.
type Read<T> = Result<T, String>;

/// The sheet of a JSON in the present form.
pub(super) fn sheet(json: Value) -> Read<Sheet> {
    let mut entries = Entries::of(json)?;
    let sheet = Sheet {
        schema: entries.small("schema")?,
        id: entries.needed_text("id")?,
        rev: entries.number("rev")?.unwrap_or_default(),
        updated: entries.text("updated")?,
        demo: entries.flag("demo")?,
        machine: entries.text("machine")?,
        odometer: entries.text("odometer")?,
        date: entries.text("date")?,
        notes: entries.text("notes")?,
        currency: entries.text("currency")?,
        fasteners: entries.rows("fasteners", fastener)?,
        parts: entries.rows("parts", part)?,
        checks: entries.rows("checks", check)?,
        belts: entries.rows("belts", belt)?,
        intervals: entries.rows("intervals", interval)?,
    };
    entries.all_known(sheet)
}

/// The head of a JSON. All entries of a head are there, also empty ones.
pub(super) fn head(json: Value) -> Read<Head> {
    let mut entries = Entries::of(json)?;
    let head = Head {
        id: entries.needed_text("id")?,
        rev: entries.needed_number("rev")?,
        updated: entries.needed_text("updated")?,
        machine: entries.needed_text("machine")?,
        date: entries.needed_text("date")?,
        demo: entries.needed_flag("demo")?,
        progress: progress(entries.left.remove("progress").unwrap_or_default())?,
        complete: entries.needed_flag("complete")?,
        words: entries.needed_text("words")?,
    };
    entries.all_known(head)
}

fn progress(json: Value) -> Read<Progress> {
    let mut entries = Entries::of(json)?;
    let progress = Progress {
        done: entries.needed_number("done")?,
        of: entries.needed_number("of")?,
    };
    entries.all_known(progress)
}

fn fastener(row: &mut Entries) -> Read<Fastener> {
    Ok(Fastener {
        id: row.small("id")?,
        label: row.text("label")?,
        thread: row.text("thread")?,
        class: row.text("class")?,
        spec: row.text("spec")?,
        count: row.text("count")?,
        head: row.text("head")?,
        drive: row.text("drive")?,
        single_use: row.flag("single_use")?,
        replaced: row.flag("replaced")?,
        done: row.flag("done")?,
        readings: row.texts("readings")?,
        bolt: row.named_texts("bolt")?,
    })
}

fn part(row: &mut Entries) -> Read<Part> {
    Ok(Part {
        id: row.small("id")?,
        label: row.text("label")?,
        count: row.text("count")?,
        price: row.text("price")?,
        done: row.flag("done")?,
    })
}

fn check(row: &mut Entries) -> Read<Check> {
    Ok(Check {
        id: row.small("id")?,
        label: row.text("label")?,
        before: row.text("before")?,
        after: row.text("after")?,
        done: row.flag("done")?,
    })
}

fn belt(row: &mut Entries) -> Read<Belt> {
    Ok(Belt {
        id: row.small("id")?,
        label: row.text("label")?,
        query: row.text("query")?,
    })
}

fn interval(row: &mut Entries) -> Read<Interval> {
    Ok(Interval {
        id: row.small("id")?,
        label: row.text("label")?,
        every_distance: row.text("every_distance")?,
        every_days: row.text("every_days")?,
        done_at_odometer: row.text("done_at_odometer")?,
        done_on: row.text("done_on")?,
    })
}

/// The entries of one object; each is taken out as it is read, so that the unknown ones remain.
struct Entries {
    left: Map<String, Value>,
}

impl Entries {
    fn of(json: Value) -> Read<Self> {
        match json {
            Value::Object(left) => Ok(Self { left }),
            _ => Err("a row is not a set of entries".into()),
        }
    }

    fn text(&mut self, key: &str) -> Read<String> {
        self.left.remove(key).map_or(Ok(String::new()), |json| text(key, json))
    }

    fn needed_text(&mut self, key: &str) -> Read<String> {
        text(key, self.left.remove(key).unwrap_or_default())
    }

    fn flag(&mut self, key: &str) -> Read<bool> {
        self.left.remove(key).map_or(Ok(false), |json| flag(key, &json))
    }

    fn needed_flag(&mut self, key: &str) -> Read<bool> {
        flag(key, &self.left.remove(key).unwrap_or_default())
    }

    fn number(&mut self, key: &str) -> Read<Option<u64>> {
        let json = self.left.remove(key);
        json.map(|json| json.as_u64().ok_or_else(|| no_number(key))).transpose()
    }

    /// A number that fits where it goes.
    fn needed_number<T: TryFrom<u64>>(&mut self, key: &str) -> Read<T> {
        let number = self.number(key)?.and_then(|number| T::try_from(number).ok());
        number.ok_or_else(|| no_number(key))
    }

    fn small(&mut self, key: &str) -> Read<u32> {
        self.needed_number(key)
    }

    fn texts(&mut self, key: &str) -> Read<Vec<String>> {
        self.list(key)?.into_iter().map(|json| text(key, json)).collect()
    }

    fn named_texts(&mut self, key: &str) -> Read<BTreeMap<String, String>> {
        let entries = self.left.remove(key).map_or(Ok(Map::new()), |json| match json {
            Value::Object(entries) => Ok(entries),
            _ => Err(wrong(key, "a set of entries")),
        })?;
        let read = |(name, json): (String, Value)| text(&name, json).map(|text| (name, text));
        entries.into_iter().map(read).collect()
    }

    fn list(&mut self, key: &str) -> Read<Vec<Value>> {
        self.left.remove(key).map_or(Ok(Vec::new()), |json| match json {
            Value::Array(list) => Ok(list),
            _ => Err(wrong(key, "a list")),
        })
    }

    fn rows<T>(&mut self, key: &str, read: fn(&mut Self) -> Read<T>) -> Read<Vec<T>> {
        let rows = self.list(key)?.into_iter().zip(1..);
        let row = |json| {
            let mut entries = Self::of(json)?;
            let row = read(&mut entries)?;
            entries.all_known(row)
        };
        rows.map(|(json, place): (Value, u32)| row(json).map_err(|detail| format!("{detail}, in row {place} of {key}")))
            .collect()
    }

    /// What was read, once nothing is left unread.
    fn all_known<T>(&self, read: T) -> Read<T> {
        match self.left.keys().next() {
            None => Ok(read),
            Some(key) => Err(format!("{key} is not known here")),
        }
    }
}

fn text(key: &str, json: Value) -> Read<String> {
    match json {
        Value::String(text) => Ok(text),
        _ => Err(wrong(key, "a text")),
    }
}

fn flag(key: &str, json: &Value) -> Read<bool> {
    json.as_bool().ok_or_else(|| wrong(key, "true or false"))
}

fn no_number(key: &str) -> String {
    wrong(key, "a whole number in its range")
}

fn wrong(key: &str, form: &str) -> String {
    format!("{key} is missing or not {form}")
}

#[cfg(test)]
mod tests {
    use super::{head, sheet};
    use crate::sheet::{Head, Sheet, demo};
    use proptest::prelude::*;
    use proptest::sample::Index;
    use serde_json::{Value, json};

    /// All places of a JSON, the whole one first.
    fn places<'a>(json: &'a Value, at: String, into: &mut Vec<String>) {
        into.push(at.clone());
        let inner: Vec<(String, &'a Value)> = match json {
            Value::Object(entries) => entries.iter().map(|(key, inner)| (key.clone(), inner)).collect(),
            Value::Array(list) => (0..).map(|n: usize| n.to_string()).zip(list).collect(),
            _ => Vec::new(),
        };
        for (key, inner) in inner {
            places(inner, format!("{at}/{key}"), into);
        }
    }

    /// A JSON with one place taken out, given an entry beside it, or another value; nothing where a
    /// list would take the place of entries, for the derived readers then go by order and these,
    /// like the schema, do not read it.
    fn changed(json: &Value, place: Index, change: usize, value: Value) -> Option<Value> {
        let mut json = json.clone();
        let mut all = Vec::new();
        places(&json, String::new(), &mut all);
        let at = place.get(&all).clone();
        let (parent, key) = at.rsplit_once('/').unwrap_or_default();
        match (change, json.pointer_mut(parent)) {
            (0, Some(Value::Object(entries))) => drop(entries.remove(key)),
            (1, Some(Value::Object(entries))) => drop(entries.insert("another".into(), value)),
            _ => {
                let place = json.pointer_mut(&at).unwrap();
                if place.is_object() && value.is_array() {
                    return None;
                }
                *place = value;
            }
        }
        Some(json)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(500))]
        #[test]
        fn what_is_derived_reads_the_same(
            place in any::<Index>(),
            change in 0_usize..4,
            value in prop::sample::select(vec![
                json!(null), json!(true), json!(0), json!(7), json!(-1), json!(1.5), json!(1.0), json!(4_294_967_296_u64),
                json!(u64::MAX), json!("x"), json!([]), json!(["x"]), json!([1]), json!({}), json!([{}]), json!([{"id": 3}]),
                json!({"x": "y"}), json!({"x": 1}),
            ]),
        ) {
            if let Some(json) = changed(&serde_json::to_value(demo::sheet()).unwrap(), place, change, value.clone()) {
                prop_assert_eq!(sheet(json.clone()).ok(), serde_json::from_value::<Sheet>(json).ok());
            }
            if let Some(json) = changed(&serde_json::to_value(Head::of(&demo::sheet(), true)).unwrap(), place, change, value) {
                prop_assert_eq!(head(json.clone()).ok(), serde_json::from_value::<Head>(json).ok());
            }
        }
    }

    #[test]
    fn a_list_is_no_row() {
        let mut json = serde_json::to_value(demo::sheet()).unwrap();
        json["parts"][0] = json!([1]);
        assert_eq!(
            sheet(json).unwrap_err(),
            "a row is not a set of entries, in row 1 of parts"
        );
        assert!(head(json!(["a", 0, "", "", "", false, {"done": 0, "of": 0}, false, ""])).is_err());
    }

    #[test]
    fn a_refusal_names_the_entry_and_its_row() {
        let mut json = serde_json::to_value(demo::sheet()).unwrap();
        json["fasteners"][1]["spec"] = json!(45);
        assert_eq!(
            sheet(json.clone()).unwrap_err(),
            "spec is missing or not a text, in row 2 of fasteners"
        );
        json["fasteners"][1]["spec"] = json!("45 N·m");
        json["colour"] = json!("red");
        assert_eq!(sheet(json).unwrap_err(), "colour is not known here");
    }
}
