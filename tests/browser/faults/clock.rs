//! A clock that is set back, or ahead: saves follow one another by their number and not by the day,
//! and no day keeps a sheet from being saved, opened, brought in or shared.

use super::{type_unsaved, works};
use crate::sheet::{bring_in, import, listed, new_sheet, note, record, until_kept, until_notes};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

/// Makes the page's clock run ahead by as many days as the tab remembers under `clock`.
const CLOCK: &str = "(() => { const Real = Date; const ahead = 86400000 * Number(sessionStorage.getItem('clock') ?? 0); \
     window.Date = class extends Real { \
     constructor(...parts) { if (parts.length > 0) super(...parts); else super(Real.now() + ahead) } \
     static now() { return Real.now() + ahead } } })()";

const YEAR: i32 = 365;

/// A phone whose clock can be set.
fn phone_with_a_clock(site: &str) -> Result<Phone> {
    let phone = Phone::fresh(site)?;
    phone.before_page(CLOCK)?;
    phone.open("#/convert")?;
    Ok(phone)
}

/// Sets the clock ahead by some days, or back, and loads the page again; the day it shows then.
fn set_clock(phone: &Phone, days: i32) -> Result<String> {
    let before = day(phone)?;
    phone.script::<()>(
        "sessionStorage.setItem('clock', arguments[0])",
        vec![json!(days.to_string())],
    )?;
    phone.reload()?;
    let after = day(phone)?;
    ensure!(after != before, "the clock was not set: it is {after}");
    Ok(after)
}

/// The day as the page's clock has it.
fn day(phone: &Phone) -> Result<String> {
    let day = "const now = new window.Date(); const two = (number) => String(number).padStart(2, '0'); \
         return [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join('-')";
    phone.script(day, Vec::new())
}

/// The number and the day of a sheet's last save.
fn saved(phone: &Phone, id: &str) -> Result<(u64, String)> {
    let record = record(phone, id)?;
    let rev = record["rev"].as_u64().context("a save has its number")?;
    let updated = record["updated"].as_str().context("a save has its day")?;
    Ok((rev, updated.to_owned()))
}

/// Opens a sheet, and it says this.
fn says(phone: &Phone, id: &str, notes: &str) -> Outcome {
    phone.open(&format!("#/sheet/{id}"))?;
    until_notes(phone, notes)?;
    until_kept(phone)
}

#[test]
fn saves_follow_one_another_whatever_the_clock_says() -> Outcome {
    let server = Server::start()?;
    let phone = phone_with_a_clock(server.site())?;
    let tomorrow = set_clock(&phone, 1)?;
    let id = new_sheet(&phone)?;
    note(&phone, "saved tomorrow")?;
    let (first, updated) = saved(&phone, &id)?;
    ensure!(updated == tomorrow);

    // A year back: the later save is the one typed later.
    let last_year = set_clock(&phone, -YEAR)?;
    says(&phone, &id, "saved tomorrow")?;
    note(&phone, "saved a year before")?;
    ensure!(saved(&phone, &id)? == (first + 1, last_year.clone()));
    // What is typed and not saved is taken up on top of it, on a day that is earlier still.
    type_unsaved(&phone, "typed two years before")?;
    set_clock(&phone, -2 * YEAR)?;
    until_notes(&phone, "typed two years before")?;
    phone.until_text("#kept-notice", "What was typed last is here again")?;
    until_kept(&phone)?;
    ensure!(saved(&phone, &id)?.0 == first + 2);

    // Another tab has the right clock; each shows what was saved last.
    phone.new_tab()?;
    says(&phone, &id, "typed two years before")?;
    note(&phone, "saved today")?;
    phone.turn_to(0)?;
    until_notes(&phone, "saved today")?;
    note(&phone, "and two years before again")?;
    phone.turn_to(1)?;
    until_notes(&phone, "and two years before again")?;
    ensure!(saved(&phone, &id)?.0 == first + 4);
    ensure!(listed(&phone)? == [id.as_str()], "one sheet has become several");

    // The clock of a phone whose battery was empty, and one far ahead.
    phone.turn_to(0)?;
    for (days, notes) in [(-56 * YEAR, "half a century back"), (70 * YEAR, "seventy years ahead")] {
        let day = set_clock(&phone, days)?;
        phone.open(&format!("#/sheet/{id}"))?;
        note(&phone, notes)?;
        ensure!(saved(&phone, &id)?.1 == day);
    }
    let one = new_sheet(&phone)?;
    set_clock(&phone, 0)?;
    // What is kept of the page does not hang on the clock either.
    phone.until_kept()?;
    server.kill()?;
    phone.reload()?;
    works(&phone)?;
    let mut all = listed(&phone)?;
    all.sort_unstable();
    let mut wanted = [id.clone(), one];
    wanted.sort_unstable();
    ensure!(all == wanted, "{all:?}");
    says(&phone, &id, "seventy years ahead")?;
    phone.close()?.1.stays_home()
}

/// An installed page is not loaded again for days.
#[test]
fn a_page_left_open_overnight_counts_from_the_new_day() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    let today = day(&phone)?;
    let sheet = json!({ "schema": 1, "id": "due", "intervals": [{ "id": 1, "label": "Oil", "every_days": "10", "done_on": today }] });
    bring_in(&phone, &[sheet])?;
    phone.open("#/sheet/due")?;
    phone.until_text(".screen-only .due", "10 days to go")?;
    let ahead = "window.ahead = arguments[0]; window.Real ??= Date; const { Real } = window; \
         window.Date = class extends Real { constructor(...parts) { if (parts.length > 0) super(...parts); else super(Real.now() + 86400000 * window.ahead) } }; \
         if (arguments[1]) document.dispatchEvent(new Event('visibilitychange'))";
    phone.script::<()>(ahead, vec![json!(2), json!(true)])?;
    phone.until_text(".screen-only .due", "8 days to go")?;
    // And where it was looked at all along, with the next change.
    phone.script::<()>(ahead, vec![json!(3), json!(false)])?;
    phone.type_into("sheet-notes", "the next day")?;
    phone.until_text(".screen-only .due", "7 days to go")
}

#[test]
fn sheets_of_later_days_are_brought_in_shared_and_due() -> Outcome {
    let server = Server::start()?;
    let phone = phone_with_a_clock(server.site())?;
    let ahead = set_clock(&phone, 400)?;
    let sheet = |notes: &str| -> Value {
        json!({ "schema": 1, "id": "ahead", "rev": 7, "updated": ahead, "machine": "Larkfield van", "date": ahead, "notes": notes,
            "intervals": [{ "id": 1, "label": "Belt", "every_days": "30", "done_on": ahead }] })
    };
    bring_in(&phone, &[sheet("from the file")])?;

    // A year back, it is the same sheet, and one that says something else is kept beside it.
    set_clock(&phone, -YEAR)?;
    phone.open("#/sheet")?;
    import(&phone, &[sheet("from the file")])?;
    phone.until_text("#incoming", "word for word")?;
    phone.tap("#import-leave")?;
    import(&phone, &[sheet("of another day")])?;
    phone.until_text("#incoming", "both will be kept")?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", "1 brought in")?;
    ensure!(
        record(&phone, "ahead")?["body"]
            .as_str()
            .is_some_and(|body| body.contains("from the file"))
    );
    ensure!(listed(&phone)?.len() == 2);

    // Done on a day that is still to come: the next day is counted from it.
    says(&phone, "ahead", "from the file")?;
    phone.until_text(".due", "days to go")?;
    ensure!(phone.count("[id^='interval-1'][aria-invalid='true']")? == 0);
    let due = phone.text(".due")?;
    // 30 days from a day 400 ahead of today; an hour of summer time may move a day's end.
    let close = (794..=796).any(|days| due.contains(&format!(" {days} days to go")));
    ensure!(close, "{due}");
    phone.tap("#share-sheet")?;
    let link = phone.field("share-link")?;
    let (_, tail) = link.split_once('#').context("a link has its fragment")?;
    phone.open(&format!("#{tail}"))?;
    phone.until_text(".paper-preview", "from the file")?;
    set_clock(&phone, 10 * YEAR)?;
    phone.until_text(".paper-preview", "from the file")?;
    phone.tap("#save-copy")?;
    until_kept(&phone)?;
    until_notes(&phone, "from the file")?;
    ensure!(listed(&phone)?.len() == 3);
    Ok(())
}
