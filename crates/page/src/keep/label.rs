//! A sheet as an entry of the database or a draft: the core's record, and who wrote it when.

use super::choose::Written;
use super::object::{entry, number, object, text, whole};
use super::{KeepError, clock};
use js_sys::JsString;
use shopmath::sheet::assess::Progress;
use shopmath::sheet::record::Record;
use shopmath::sheet::{Head, SCHEMA, Sheet, SheetFault, assess};
use shopmath::tools::Tools;
use std::cell::{Cell, LazyCell};
use wasm_bindgen::JsValue;

thread_local! {
    static TAB: LazyCell<String> = LazyCell::new(clock::letters);
    static STEP: Cell<u64> = const { Cell::new(0) };
}

/// The next step of this tab.
pub(super) fn step() -> u64 {
    let step = STEP.get().saturating_add(1);
    STEP.set(step);
    step
}

/// This tab's name, another one each time the page is loaded.
pub(super) fn tab() -> String {
    TAB.with(|tab| (**tab).clone())
}

/// The entry of a sheet, as this tab's given step.
pub(super) fn write(sheet: &Sheet, step: u64) -> Result<JsValue, KeepError> {
    let record = Record::of(sheet).map_err(KeepError::Fault)?;
    Ok(object(&[
        ("schema", record.schema.into()),
        ("id", record.id.into()),
        ("rev", number(record.rev)),
        ("updated", record.updated.into()),
        ("body", record.body.into()),
        ("tab", tab().into()),
        ("step", number(step)),
    ]))
}

/// When an entry was written.
pub(super) fn written(value: &JsValue) -> Written {
    Written {
        rev: whole(value, "rev"),
        tab: text(value, "tab"),
        step: whole(value, "step"),
    }
}

/// Whether a newer version of the page wrote an entry.
pub(super) fn is_newer(value: &JsValue) -> bool {
    whole(value, "schema") > SCHEMA.into()
}

/// The sheet of an entry.
pub(super) fn read(value: &JsValue) -> Result<Sheet, SheetFault> {
    if is_newer(value) {
        let found = whole(value, "schema");
        return Err(SheetFault::NewerSchema { found });
    }
    let record = Record {
        schema: SCHEMA,
        id: text(value, "id"),
        rev: whole(value, "rev"),
        updated: text(value, "updated"),
        body: text(value, "body"),
    };
    record.sheet()
}

/// A text as it is searched: in lower case and without accents, so that *Kuhler* finds *Kühler*. By the
/// browser, whose tables need not be brought along.
pub(crate) fn searched(text: &str) -> String {
    let apart = JsString::from(text).to_lower_case().normalize("NFD");
    let is_accent = |letter: &char| matches!(letter, '\u{300}'..='\u{36f}');
    String::from(apart)
        .chars()
        .filter(|letter| !is_accent(letter))
        .collect()
}

/// A sheet's head, its words as they are searched.
pub(super) fn head(sheet: &Sheet, complete: bool) -> Head {
    let mut head = Head::of(sheet, complete);
    head.words = searched(&head.words);
    head
}

/// The head of a sheet that no screen has worked out.
pub(super) fn head_anew(sheet: &Sheet) -> Head {
    let mut head = head(sheet, false);
    // Only a sheet whose rows are all done can be complete; the others need no working out.
    head.complete = head.progress.done == head.progress.of && assess(sheet, Tools::Both, None).complete();
    head
}

/// The entry of a head. Plain entries, so that the page need not carry another reader of JSON.
pub(super) fn write_head(head: &Head) -> JsValue {
    object(&[
        ("id", JsValue::from_str(&head.id)),
        ("rev", number(head.rev)),
        ("updated", JsValue::from_str(&head.updated)),
        ("machine", JsValue::from_str(&head.machine)),
        ("date", JsValue::from_str(&head.date)),
        ("demo", head.demo.into()),
        ("done", head.progress.done.into()),
        ("of", head.progress.of.into()),
        ("complete", head.complete.into()),
        ("search", JsValue::from_str(&head.words)),
    ])
}

/// The head of an entry, unless another version wrote it in another form.
pub(super) fn read_head(value: &JsValue) -> Option<Head> {
    let count = |name| usize::try_from(whole(value, name)).unwrap_or(0);
    let is = |name| entry(value, name).is_truthy();
    Some(Head {
        words: entry(value, "search").as_string()?,
        id: text(value, "id"),
        rev: whole(value, "rev"),
        updated: text(value, "updated"),
        machine: text(value, "machine"),
        date: text(value, "date"),
        demo: is("demo"),
        progress: Progress {
            done: count("done"),
            of: count("of"),
        },
        complete: is("complete"),
    })
}
