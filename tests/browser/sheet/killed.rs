//! The browser is killed in the middle of editing, again and again: nothing is lost that the page
//! had called saved.

use super::{listed, new_sheet, until_kept};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Engine, Outcome, Phone, Profile, Server, Switch};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// How often the browser is killed. The first engine takes the long way; what another could do
/// otherwise shows in fewer, and each costs it seconds to start.
fn times() -> Result<usize> {
    Ok(if Engine::chosen()? == Engine::Chromium { 50 } else { 15 })
}
/// The longest that editing goes on before that, milliseconds.
const LONGEST: u64 = 3000;
/// The longest rest between two words, milliseconds: at times enough for a save.
const REST: u64 = 900;

/// What stands in the notes, and whether the page calls that saved.
const SEEN: &str =
    "return [document.getElementById('sheet-notes').value, document.getElementById('kept').dataset.kept === 'true']";

#[test]
fn a_browser_killed_while_editing_loses_nothing_that_was_called_saved() -> Outcome {
    let times = times()?;
    let server = Server::start()?;
    let site = server.site();
    let mut profile = Profile::fresh()?;
    let mut chance = Chance::new()?;
    let (mut id, mut saved) = (String::new(), String::new());
    let (mut grown, mut beyond) = (0, 0);
    for time in 0..times {
        let moment = chance.below(LONGEST);
        let context = || format!("kill {time}, {moment} ms into editing, chance {}", chance.start);
        let phone = Phone::with(profile, site)?;
        if time == 0 {
            id = new_sheet(&phone)?;
        }
        let found = reopen(&phone, &id).with_context(context)?;
        ensure!(
            found.starts_with(&saved),
            "{}: \"{saved}\" was saved, \"{found}\" is there",
            context()
        );
        beyond += usize::from(found.len() > saved.len());
        let from = found.len();
        saved = edit(&phone, found, &mut chance, moment).with_context(|| format!("kill {time}"))?;
        grown += usize::from(saved.len() > from);
        profile = phone.left_behind()?;
    }
    let phone = Phone::with(profile, site)?;
    let found = reopen(&phone, &id)?;
    ensure!(found.starts_with(&saved), "\"{saved}\" was saved, \"{found}\" is there");
    ensure!(listed(&phone)? == [id.as_str()], "one sheet has become several");
    ensure!(
        grown > times / 4,
        "only {grown} of {times} times something was saved before the kill"
    );
    println!("{grown} of {times} times something was saved before the kill, {beyond} times more was there than that");
    Ok(())
}

/// The notes of the sheet as they are after a start.
fn reopen(phone: &Phone, id: &str) -> Result<String> {
    phone.open(&format!("#/sheet/{id}"))?;
    let notes = phone.field("sheet-notes")?;
    ensure!(phone.count("[data-unreadable]")? == 0, "something cannot be read");
    // What is taken over from the draft is saved by itself.
    until_kept(phone)?;
    Ok(notes)
}

/// Types word after word until the browser is gone; what the page had called saved by then.
fn edit(phone: &Phone, mut saved: String, chance: &mut Chance, moment: u64) -> Result<String> {
    let end = phone.switch();
    let killer = std::thread::spawn(move || kill(end, moment));
    // Either step fails once the browser is gone.
    while phone.add_to("sheet-notes", &format!("{moment:x} ")).is_ok() {
        if watch(phone, chance.below(REST), &mut saved).is_err() {
            break;
        }
    }
    killer.join().ok().context("the killer has failed")??;
    Ok(saved)
}

/// Looks at the page all through a rest.
fn watch(phone: &Phone, rest: u64, saved: &mut String) -> Result<()> {
    let end = Instant::now() + Duration::from_millis(rest);
    while Instant::now() < end {
        let (notes, kept): (String, bool) = phone.script(SEEN, Vec::new())?;
        if kept {
            *saved = notes;
        }
    }
    Ok(())
}

/// The moment is what is tried here, so it is slept for.
fn kill(switch: Switch, moment: u64) -> Result<()> {
    std::thread::sleep(Duration::from_millis(moment));
    switch.off()
}

/// Numbers by chance, which can be had again from where they started.
struct Chance {
    start: u64,
    state: u64,
}

impl Chance {
    fn new() -> Result<Self> {
        let start = u64::from(SystemTime::now().duration_since(UNIX_EPOCH)?.subsec_nanos()) | 1;
        Ok(Self { start, state: start })
    }

    /// Marsaglia's xorshift, from memory; nothing rests on how good it is.
    fn below(&mut self, limit: u64) -> u64 {
        self.state ^= self.state << 13;
        self.state ^= self.state >> 7;
        self.state ^= self.state << 17;
        self.state % limit
    }
}
