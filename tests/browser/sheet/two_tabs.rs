//! One sheet in two tabs: they follow each other, and where they cannot, both sheets are kept.

use super::{bring_in, in_database, listed, new_sheet, note, open_id, record, until_kept, until_notes};
use crate::faults::type_unsaved;
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

#[test]
fn a_save_in_one_tab_shows_in_the_other() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "first tab")?;
    phone.new_tab()?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "first tab")?;
    note(&phone, "second tab")?;

    phone.turn_to(0)?;
    until_notes(&phone, "second tab")?;
    phone.until_text("#kept-notice", "another tab")?;
    // Back and forth, and each time only what the other one saved.
    note(&phone, "first tab again")?;
    phone.turn_to(1)?;
    until_notes(&phone, "first tab again")?;
    ensure!(listed(&phone)? == [id.as_str()]);

    // Also what it saved while another screen is shown here.
    phone.turn_to(0)?;
    phone.tap(".tabs a[href^='#/bolt']")?;
    phone.until("Bolt", || Ok((phone.count("#thread")? == 1).then_some(())))?;
    phone.turn_to(1)?;
    phone.open(&format!("#/sheet/{id}"))?;
    note(&phone, "saved meanwhile")?;
    phone.turn_to(0)?;
    phone.tap(".tab:last-child")?;
    until_notes(&phone, "saved meanwhile")?;
    note(&phone, "first tab again")?;
    ensure!(listed(&phone)? == [id.as_str()], "one sheet has become two");
    phone.open(&format!("#/sheet/{id}"))?;
    phone.turn_to(1)?;
    until_notes(&phone, "first tab again")?;
    listed(&phone)?;

    // Removed here, it is no longer called saved there, and comes back with what is brought back.
    let empty = || {
        phone.until("the list without it", || {
            Ok((phone.count("#new-sheet")? == 1 && phone.count("[data-sheet]")? == 0).then_some(()))
        })
    };
    let remove = || {
        phone.turn_to(1)?;
        phone.tap(&format!("[data-sheet='{id}'] button[name='remove']"))?;
        empty()?;
        phone.turn_to(0)?;
        phone.until_text("#kept-notice", "Removed in another tab")?;
        ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));
        Ok(())
    };
    remove()?;
    phone.turn_to(1)?;
    phone.tap("#undo")?;
    phone.turn_to(0)?;
    phone.until_text("#kept-notice", "Brought back in another tab")?;
    until_kept(&phone)?;
    // Left as it is, it stays removed.
    remove()?;
    phone.tap(".sheet-head a")?;
    empty()?;
    phone.turn_to(1)?;
    phone.tap("#undo")?;
    phone.turn_to(0)?;
    phone.back()?;
    until_notes(&phone, "first tab again")?;
    // Typed on, it is kept again.
    remove()?;
    note(&phone, "still here")?;
    phone.until_text("#kept-notice", "removed in another tab")?;
    ensure!(listed(&phone)? == [id.as_str()]);
    Ok(())
}

#[test]
fn tabs_that_do_not_hear_each_other_keep_both_sheets() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "before")?;
    phone.new_tab()?;
    phone.before_page("delete window.BroadcastChannel")?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "before")?;
    phone.until_true("a tab that hears nothing", "return !window.BroadcastChannel")?;

    phone.turn_to(0)?;
    note(&phone, "from the first")?;
    phone.turn_to(1)?;
    until_notes(&phone, "before")?;
    note(&phone, "from the second")?;
    phone.until_text("#kept-notice", "Both are kept")?;
    let other = open_id(&phone)?;
    ensure!(other != id, "the second one has the first one's name");
    // It goes on under its new name.
    note(&phone, "from the second, later")?;
    ensure!(open_id(&phone)? == other);

    let mut ids = listed(&phone)?;
    ids.sort_unstable();
    let mut wanted = [id.as_str(), other.as_str()];
    wanted.sort_unstable();
    ensure!(ids == wanted, "{ids:?}");
    for (id, notes) in [(&id, "from the first"), (&other, "from the second, later")] {
        phone.open(&format!("#/sheet/{id}"))?;
        until_notes(&phone, notes)?;
        until_kept(&phone)?;
    }
    Ok(())
}

/// The save that finds the other one ends when another screen, the list or another sheet is shown.
#[test]
fn a_conflict_found_elsewhere_leaves_the_screen_and_says_so_on_the_sheet_screen() -> Outcome {
    let server = Server::start()?;
    for way in ["#/bolt", "#/sheet", "#/sheet/other"] {
        elsewhere(&Phone::fresh(server.site())?, way).with_context(|| way.to_owned())?;
    }
    Ok(())
}

fn elsewhere(phone: &Phone, way: &str) -> Outcome {
    bring_in(
        phone,
        &[json!({ "schema": 1, "id": "other", "notes": "the other one" })],
    )?;
    let id = new_sheet(phone)?;
    phone.type_into("sheet-machine", "Larkfield van")?;
    note(phone, "before")?;
    phone.new_tab()?;
    phone.before_page("delete window.BroadcastChannel")?;
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(phone, "before")?;
    phone.turn_to(0)?;
    note(phone, "from the first")?;
    phone.turn_to(1)?;
    type_unsaved(phone, "from the second")?;
    phone.open(way)?;
    let count = "return await ask(base.transaction('records').objectStore('records').count())";
    phone.until("both to be kept", || {
        Ok((in_database(phone, count, Vec::new())? == json!(3)).then_some(()))
    })?;
    if way == "#/bolt" {
        ensure!(phone.count("#thread")? == 1);
        phone.tap(".tab:last-child")?;
        until_notes(phone, "from the second")?;
        ensure!(open_id(phone)? != id, "the tab leads to the other tab's sheet");
    }
    phone.until_text(
        "#kept-notice",
        "About Larkfield van: This sheet was changed in another tab as well",
    )?;
    match way {
        "#/sheet" => ensure!(phone.count("[data-sheet]")? == 3),
        "#/sheet/other" => until_notes(phone, "the other one")?,
        _ => {}
    }
    ensure!(
        way == "#/bolt" || phone.fragment()? == way,
        "it is at {}",
        phone.fragment()?
    );
    phone.tap("#kept-notice button")?;
    phone.until("no word of it any more", || {
        Ok((phone.count("#kept-notice")? == 0).then_some(()))
    })
}

/// The other tab takes it for one that is there and saves by itself.
#[test]
fn what_a_tab_typed_last_before_it_went_is_not_written_over() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    phone.new_tab()?;
    phone.open("#/sheet")?;
    phone.turn_to(0)?;
    note(&phone, "heard in the other tab")?;
    let refuse = "IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError') }";
    phone.script::<()>(refuse, Vec::new())?;
    phone.type_into("sheet-notes", "only in a draft")?;
    phone.until_text("#kept", "Not saved")?;
    phone.go("about:blank")?;

    phone.turn_to(1)?;
    phone.tap(&format!("[data-sheet='{id}'] a"))?;
    until_notes(&phone, "heard in the other tab")?;
    note(&phone, "from the second")?;
    let ids = listed(&phone)?;
    ensure!(ids.len() == 2, "{ids:?}");
    let other = ids.iter().find(|other| **other != id).context("both have one name")?;
    for (id, notes) in [(&id, "from the second"), (other, "only in a draft")] {
        phone.open(&format!("#/sheet/{id}"))?;
        until_notes(&phone, notes)?;
        until_kept(&phone)?;
    }
    Ok(())
}

/// What was typed in a tab that is gone, on a save that is not the last: a browser killed with two
/// tabs leaves this.
#[test]
fn a_draft_on_an_older_save_becomes_a_sheet_of_its_own() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let id = new_sheet(&phone)?;
    note(&phone, "older")?;
    let mut draft = record(&phone, &id)?;
    let body = draft["body"].as_str().context("a record has a body")?;
    draft["body"] = json!(body.replace("older", "typed elsewhere"));
    draft["tab"] = json!("gone");
    note(&phone, "saved last")?;
    phone.open("#/sheet")?;
    let keep = "localStorage.setItem('fenderside.draft.' + arguments[0], JSON.stringify(arguments[1]))";
    phone.script::<()>(keep, vec![json!(id), draft])?;

    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(&phone, "saved last")?;
    phone.until_text("#kept-notice", "Both are kept")?;
    let ids = listed(&phone)?;
    ensure!(ids.len() == 2, "{ids:?}");
    let other = ids.iter().find(|other| **other != id).context("both have one name")?;
    phone.open(&format!("#/sheet/{other}"))?;
    until_notes(&phone, "typed elsewhere")?;
    let left = "return Object.keys(localStorage).filter((name) => name.startsWith('fenderside.draft.'))";
    let left: Vec<String> = phone.script(left, Vec::new())?;
    ensure!(left.is_empty(), "{left:?}");
    let count = "return await ask(base.transaction('records').objectStore('records').count())";
    ensure!(in_database(&phone, count, Vec::new())? == json!(2));
    Ok(())
}
