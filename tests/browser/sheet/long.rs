//! A sheet of many bolts: its first rows are seen at once, and all of it is there to work on.

use super::{bring_in, until_kept};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

const BOLTS: usize = 40;
/// More rows than any phone shows are no start, but the whole.
const START: usize = 10;

fn sheet() -> Value {
    let bolt = |id: usize| json!({ "id": id, "label": format!("Cover {id}"), "thread": "M8", "class": "10.9", "spec": format!("{} N·m", 10 + id) });
    json!({ "schema": 1, "id": "long", "machine": "Larkfield van", "fasteners": (1..=BOLTS).map(bolt).collect::<Vec<_>>() })
}

/// Brings the sheet in and opens it, all of its rows.
pub(crate) fn open_long(phone: &Phone) -> Outcome {
    bring_in(phone, &[sheet()])?;
    phone.tap("[data-sheet='long'] a")?;
    phone.until("all bolts", || {
        Ok((phone.count("[data-fastener]")? == BOLTS).then_some(()))
    })
}

#[test]
fn the_first_rows_of_a_long_sheet_are_seen_at_once_and_the_rest_follow() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[sheet()])?;
    let watch = "window.rows = []; new MutationObserver(() => rows.push(document.querySelectorAll('[data-fastener]').length)) \
         .observe(document.body, { childList: true, subtree: true })";
    phone.script::<()>(watch, Vec::new())?;
    phone.tap("[data-sheet='long'] a")?;
    let all = || Ok((phone.count("[data-fastener]")? == BOLTS).then_some(()));
    phone.until("all bolts", all)?;
    let rows: Vec<usize> = phone.script("return rows.filter((count) => count > 0)", Vec::new())?;
    ensure!(
        rows.first().is_some_and(|first| *first <= START),
        "drawn at first: {rows:?}"
    );
    ensure!(rows.is_sorted() && rows.last() == Some(&BOLTS), "drawn: {rows:?}");

    // The last row is worked on like the first, and one more is there when it is asked for.
    phone.type_into("bolt-40-spec", "44 ft-lb")?;
    phone.until_text("#bolt-40 .row-spec", "59.7 N·m")?;
    phone.tap("#add-fastener")?;
    phone.until_true(
        "the new row's first field",
        "return document.activeElement.id === 'bolt-41-label'",
    )?;
    until_kept(&phone)?;
    phone.reload()?;
    phone.until("all bolts and the new one", || {
        Ok((phone.count("[data-fastener]")? == BOLTS + 1).then_some(()))
    })?;
    ensure!(phone.field("bolt-40-spec")? == "44 ft-lb");
    Ok(())
}
