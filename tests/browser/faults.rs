//! Faults of network, host, device and clock: after each the page works, and every sheet is whole, as
//! is what was typed and not yet saved.
//!
//! Elsewhere: a store that is blocked, full while a sheet is saved, erased or damaged in
//! `sheet/storage.rs`; a browser killed in `sheet/killed.rs`; a kept file lost in `ready_is_true.rs`;
//! a browser that cannot run the page in `cannot_run.rs`.

mod clock;
mod full;
mod install;
mod rollback;
mod update;
mod wrong_answers;

use crate::sheet::{new_sheet, note, record, until_kept, until_notes};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone};
use serde_json::{Value, json};

/// The notes of the sheet that is saved.
const SAVED: &str = "tightened, and saved";
/// The notes that are typed and not saved.
const TYPED: &str = "typed a moment ago";

/// Two sheets on a phone, one of them with notes that are only typed.
struct Work {
    saved: String,
    open: String,
    record: Value,
}

impl Work {
    /// Saves a sheet, then types on a second one, which stays on the screen.
    fn begin(phone: &Phone) -> Result<Self> {
        let saved = new_sheet(phone)?;
        note(phone, SAVED)?;
        let open = new_sheet(phone)?;
        note(phone, "first")?;
        let record = record(phone, &saved)?;
        type_unsaved(phone, TYPED)?;
        Ok(Self { saved, open, record })
    }

    /// Loads the page with the sheet that was typed on: the notes are there, and are saved now.
    fn take_up_again(&self, phone: &Phone) -> Outcome {
        phone.open(&format!("#/sheet/{}", self.open))?;
        phone.reload()?;
        self.is_open(phone)
    }

    /// Waits until the sheet that was typed on is on the screen, its notes saved.
    fn is_open(&self, phone: &Phone) -> Outcome {
        until_notes(phone, TYPED)?;
        until_kept(phone)
    }

    /// Both sheets say what they said, the saved one to the letter.
    fn is_whole(&self, phone: &Phone) -> Outcome {
        let kept = record(phone, &self.saved)?;
        ensure!(kept == self.record, "saved was {}, and now {kept}", self.record);
        for (id, notes) in [(&self.saved, SAVED), (&self.open, TYPED)] {
            phone.open(&format!("#/sheet/{id}"))?;
            until_notes(phone, notes).with_context(|| format!("the sheet {id}"))?;
            until_kept(phone)?;
        }
        Ok(())
    }
}

/// Types notes in a tab whose timers of half a second and more never end, so that only the draft has
/// them, however slow the machine is.
pub(crate) fn type_unsaved(phone: &Phone, text: &str) -> Outcome {
    let stop = "const begin = window.setTimeout; \
         window.setTimeout = (work, wait, ...more) => (wait >= 400 ? 0 : begin(work, wait, ...more))";
    phone.script::<()>(stop, Vec::new())?;
    phone.type_into("sheet-notes", text)?;
    let typed = "return Object.entries(localStorage).some(([name, draft]) => \
         name.startsWith('fenderside.draft.') && JSON.parse(draft).body.includes(arguments[0]))";
    phone.until(&format!("a draft that says \"{text}\""), || {
        Ok(phone.script::<bool>(typed, vec![json!(text)])?.then_some(()))
    })?;
    ensure!(phone.attribute("#kept", "data-kept")?.as_deref() == Some("false"));
    Ok(())
}

/// A phone that has been here once: the page is kept on it.
fn phone_that_keeps(site: &str) -> Result<Phone> {
    let phone = Phone::fresh(site)?;
    phone.open("#/convert")?;
    phone.until_kept()?;
    Ok(phone)
}

/// The page calculates: a figure typed on Convert is read.
fn works(phone: &Phone) -> Outcome {
    phone.open("#/convert")?;
    phone.type_into("q", "60 N·m")?;
    phone.until_row("lbf·ft", 44.253_729, 1e-7)
}

/// Waits until the page says that it needs a network.
fn until_not_kept(phone: &Phone) -> Outcome {
    phone.until_true(
        "the page to say that it needs a network",
        "return document.documentElement.dataset.offline === 'unavailable'",
    )
}

/// Looks for a new version, once or until there is one, and says how that ends so far. The browser
/// looks by itself as well, and does not always answer the second one who asks.
const LOOK: &str = "return (async () => { const there = await navigator.serviceWorker.getRegistration(); \
     const look = (window.look ??= {}); look.found ??= there.installing; \
     if (!look.asked) { look.asked = true; there.update().then( \
     () => { look.found ??= there.installing; look.asked = Boolean(look.found) }, () => { look.refused = true })} \
     const ends = ['installed', 'redundant'].filter((end) => end === look.found?.state); \
     const end = ends[0] ?? (there.waiting ? 'installed' : look.refused ? 'refused' : null); \
     if (end) delete window.look; return end })()";

/// Looks for a new version and follows it to its end: `installed`, `redundant`, or `refused` where its
/// worker could not be had.
fn look_for_an_update(phone: &Phone) -> Result<String> {
    phone.until("a new version", || phone.script(LOOK, Vec::new()))
}

/// Waits until a new version is offered.
fn until_offered(phone: &Phone) -> Outcome {
    phone.until("a new version to be offered", || {
        Ok((phone.count(".newer .button")? == 1).then_some(()))
    })
}

/// Which version runs: the mark of its start page, or none.
fn running(phone: &Phone) -> Result<Option<String>> {
    phone.script(
        "return document.querySelector('meta[name=deployed]')?.content",
        Vec::new(),
    )
}

/// Takes the version that is offered and waits until it runs.
fn take_it(phone: &Phone, mark: Option<&str>) -> Outcome {
    until_offered(phone)?;
    phone.tap(".newer .button")?;
    phone.until(&format!("version {mark:?} to run"), || {
        // A page on its way to the next one has no answer yet.
        let found = running(phone).ok();
        Ok((found == Some(mark.map(str::to_owned))).then_some(()))
    })?;
    phone.until_running()
}

/// Looks for the second version, takes it, and waits until it is kept.
fn goes_over_to_the_second(phone: &Phone) -> Outcome {
    ensure!(look_for_an_update(phone)? == "installed");
    take_it(phone, Some("second"))?;
    phone.until_kept()
}
