//! The desk: the one sheet that is open, which outlives the screen, and the keeping of it.
//!
//! Every change goes into the draft at once and into the store a moment later. Saves follow
//! one another, so that a sheet never conflicts with itself. What is shown as kept is kept.

use super::job::{Change, Job, Status};
use crate::keep::{self, KeepError, News, Opened, Removed, Saved, Unreadable};
use crate::link::{Places, put};
use crate::route::{Route, Screen};
use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use gloo::utils::document;
use js_sys::Promise;
use shopmath::sheet::limits::ROWS;
use shopmath::sheet::order::{Action, List, Row, free_id};
use shopmath::sheet::{Fastener, Sheet};
use shopmath::tools::Tools;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, future_to_promise, spawn_local};
use yew::prelude::*;

/// How long after the first unsaved change the sheet is saved, millisecond: typing on without a
/// pause must not put it off, since only what is saved survives the end of the browser.
const DELAY: u32 = 500;
/// How long after a save the screen says so, millisecond, where nothing else draws it anew: drawn between
/// two keys, the good news would keep the next one from its frame.
const REST: u32 = 250;

/// What lies on the desk.
#[derive(Clone)]
pub(crate) enum Slot {
    /// Nothing yet, or it is on its way.
    Opening(String),
    /// A sheet.
    Job(Rc<Job>),
    /// There is no sheet of this id.
    Missing(String),
    /// There is one, but this version cannot read it.
    Unreadable(String, Rc<Unreadable>),
    /// The store did not answer.
    Trouble(String, String),
}

impl Default for Slot {
    fn default() -> Self {
        Self::Opening(String::new())
    }
}

impl Slot {
    fn id(&self) -> &str {
        match self {
            Self::Opening(id) | Self::Missing(id) | Self::Unreadable(id, _) | Self::Trouble(id, _) => id,
            Self::Job(job) => &job.sheet.id,
        }
    }
}

#[derive(Default)]
struct Inner {
    places: Places,
    slot: RefCell<Slot>,
    watcher: RefCell<Option<Callback<()>>>,
    timer: RefCell<Option<Timeout>>,
    /// Whether the timer runs.
    waiting: Cell<bool>,
    /// Draws that the newest save is done.
    telling: RefCell<Option<Timeout>>,
    saving: RefCell<Option<Promise>>,
    /// Sheets that were put aside and could not be kept.
    unkept: RefCell<Vec<Rc<Job>>>,
    /// What became of a sheet while another screen was shown.
    notice: RefCell<Option<String>>,
    /// The row of bolts last opened on the Bolt screen: its sheet and number.
    lent: RefCell<Option<(String, u32)>>,
    /// What was removed last, for the list to bring back.
    removed: RefCell<Option<Rc<Gone>>>,
}

/// What was removed and can be brought back.
pub(crate) struct Gone {
    /// What the list calls it.
    pub(crate) label: String,
    removed: Removed,
    /// The sheet as this tab held it, where it could not be kept.
    unkept: Option<Rc<Job>>,
}

/// A handle to the desk.
#[derive(Clone)]
pub(crate) struct Desk(Rc<Inner>);

impl PartialEq for Desk {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Desk {
    /// An empty one. A sheet that gets another name is found there by the tab of the Sheet screen.
    pub(crate) fn new(places: Places) -> Self {
        Self(Rc::new(Inner {
            places,
            ..Inner::default()
        }))
    }

    /// What lies on it now.
    pub(crate) fn slot(&self) -> Slot {
        self.0.slot.borrow().clone()
    }

    fn job(&self) -> Option<Rc<Job>> {
        match &*self.0.slot.borrow() {
            Slot::Job(job) => Some(job.clone()),
            _ => None,
        }
    }

    fn place(&self, slot: Slot) {
        *self.0.slot.borrow_mut() = slot;
        *self.0.telling.borrow_mut() = None;
        self.tell();
    }

    /// Places a sheet that looks as before but for the word that it is saved. Where it is, the screen says so a
    /// moment later; where more was typed meanwhile, with the next save.
    fn place_kept(&self, job: Job) {
        let desk = self.clone();
        let all = job.status == Status::Kept;
        *self.0.telling.borrow_mut() = all.then(|| Timeout::new(REST, move || desk.tell()));
        *self.0.slot.borrow_mut() = Slot::Job(Rc::new(job));
    }

    fn tell(&self) {
        let watcher = self.0.watcher.borrow().clone();
        if let Some(watcher) = watcher {
            watcher.emit(());
        }
    }

    /// Brings a sheet to the desk; the one there is kept first.
    pub(crate) fn open(&self, id: &str, tools: Tools) {
        if self.0.slot.borrow().id() == id {
            return;
        }
        let (desk, id) = (self.clone(), id.to_owned());
        spawn_local(async move {
            desk.clear().await;
            desk.place(Slot::Opening(id.clone()));
            desk.fetch(id, tools, None).await;
        });
    }

    /// Puts a new sheet on the desk and keeps it.
    pub(crate) async fn begin(&self, sheet: Sheet, tools: Tools) {
        self.clear().await;
        let mut job = Job::new(sheet, tools, &keep::today());
        job.status = Status::Changed;
        self.place(Slot::Job(Rc::new(job)));
        self.settle().await;
    }

    /// Whether a sheet is open.
    pub(crate) fn has_sheet(&self) -> bool {
        self.job().is_some()
    }

    /// Adds bolts at the end of the open sheet, or puts a new one with them on the desk; the sheet's id. The
    /// sheet says how many it has no room for.
    pub(crate) async fn add_bolts(&self, rows: Vec<Fastener>, tools: Tools) -> String {
        let id = match self.job() {
            Some(job) => job.sheet.id.clone(),
            None => {
                let sheet = keep::new_sheet();
                let id = sheet.id.clone();
                self.begin(sheet, tools).await;
                id
            }
        };
        let count = || self.job().map_or(0, |job| job.sheet.fasteners.len());
        let (of, before) = (rows.len(), count());
        for mut row in rows {
            let Some(job) = self.job() else { break };
            row.id = free_id(&job.sheet, List::Fasteners);
            let row = Box::new(Row::Fastener(row));
            self.change(Change::Do(Action::Insert { at: usize::MAX, row }));
        }
        let left = (before + of).saturating_sub(count());
        if left > 0 {
            self.remark(Some(format!(
                "Not added: {left} of {of} bolts. A sheet has room for {ROWS} rows of them."
            )));
        }
        id
    }

    /// Takes the sheet off the desk, kept or set aside.
    pub(crate) async fn clear(&self) {
        self.settle().await;
        self.0
            .unkept
            .borrow_mut()
            .extend(self.job().filter(|job| job.status.is_owed()));
        self.place(Slot::default());
    }

    /// Removes the sheet on the desk from the store and leads to the list, which can bring it back.
    pub(crate) async fn remove(&self) {
        self.settle().await;
        let Some(job) = self.job() else {
            return;
        };
        let id = &job.sheet.id;
        // Off the desk already: what is typed meanwhile would be saved, and the sheet with it.
        self.place(Slot::Opening(id.clone()));
        let removed = keep::remove(id).await;
        let here = self.0.slot.borrow().id() == id;
        match removed {
            Ok(removed) => {
                self.note_removed(id, job.sheet.machine.clone(), removed);
                if here {
                    self.place(Slot::default());
                }
                self.lead(id, &Route::bare(Screen::Sheet));
            }
            Err(error) if here => self.fail(&job, &error),
            Err(_) => self.0.unkept.borrow_mut().extend(job.status.is_owed().then_some(job)),
        }
    }

    /// What was removed last, on the bench or in the list, and can be brought back.
    pub(crate) fn removed(&self) -> Option<Rc<Gone>> {
        self.0.removed.borrow().clone()
    }

    /// Notes what was removed last: what could not be kept of it goes as well.
    pub(crate) fn note_removed(&self, id: &str, label: String, removed: Option<Removed>) {
        let unkept = self.recall(id);
        let gone = |removed| Rc::new(Gone { label, removed, unkept });
        *self.0.removed.borrow_mut() = removed.map(gone);
        self.tell();
    }

    /// Brings back what was removed last.
    pub(crate) async fn bring_back(&self) -> Result<(), KeepError> {
        if let Some(gone) = self.removed() {
            keep::bring_back(&gone.removed).await?;
            self.0.unkept.borrow_mut().extend(gone.unkept.clone());
            *self.0.removed.borrow_mut() = None;
            self.tell();
        }
        Ok(())
    }

    /// Takes back a sheet that was put aside.
    fn recall(&self, id: &str) -> Option<Rc<Job>> {
        let mut unkept = self.0.unkept.borrow_mut();
        let place = unkept.iter().position(|job| job.sheet.id == id);
        place.map(|place| unkept.remove(place))
    }

    /// Sheets that were put aside and could not be kept.
    pub(crate) fn unkept(&self) -> Vec<Sheet> {
        let unkept = self.0.unkept.borrow();
        unkept.iter().map(|job| (*job.sheet).clone()).collect()
    }

    async fn fetch(&self, id: String, tools: Tools, notice: Option<&str>) {
        if let Some(job) = self.recall(&id) {
            self.place(Slot::Job(job));
            self.read_for(Some(tools));
            return;
        }
        let opened = keep::open(&id).await;
        if self.0.slot.borrow().id() != id || self.job().is_some_and(|job| job.status.is_owed()) {
            // Another one was asked for meanwhile, or this one was typed into.
            return;
        }
        match opened {
            Ok(Opened::Sheet {
                sheet,
                from_draft,
                beside,
            }) => {
                let mut job = Job::new(sheet, tools, &keep::today());
                job.notice = notice.map(str::to_owned);
                if from_draft {
                    job.notice = Some("What was typed last is here again; it had not been saved yet.".into());
                    job.status = Status::Changed;
                }
                if beside.is_some() {
                    let words = "It was changed in another tab after you typed here. Both are kept: what you typed is in the list as a sheet of its own.";
                    job.notice = Some(words.into());
                }
                self.place(Slot::Job(Rc::new(job)));
                if from_draft {
                    self.save();
                }
            }
            Ok(Opened::Unreadable(unreadable)) => self.place(Slot::Unreadable(id, Rc::new(unreadable))),
            Ok(Opened::Missing) => self.place(Slot::Missing(id)),
            Err(error) => self.place(Slot::Trouble(id, error.words())),
        }
    }

    /// Notes a row of bolts of the open sheet that is opened on the Bolt screen, from where it may come back changed.
    pub(crate) fn lend(&self, row: u32) {
        *self.0.lent.borrow_mut() = self.job().map(|job| (job.sheet.id.clone(), row));
    }

    /// The row of the open sheet that was last opened on the Bolt screen.
    pub(crate) fn lent(&self) -> Option<Fastener> {
        let job = self.job()?;
        let lent = self.0.lent.borrow();
        let (sheet, id) = lent.as_ref()?;
        let row = job.sheet.fasteners.iter().find(|row| row.id == *id);
        row.filter(|_| job.sheet.id == *sheet).cloned()
    }

    /// Puts what is made of the row lent in its place, if it is still there; the open sheet's id.
    pub(crate) fn put_back(&self, of: impl Fn(&Fastener) -> Fastener) -> Option<String> {
        if let Some(lent) = self.lent() {
            let row = Box::new(Row::Fastener(of(&lent)));
            self.change(Change::Do(Action::Replace { row }));
            *self.0.lent.borrow_mut() = None;
        }
        Some(self.job()?.sheet.id.clone())
    }

    /// Changes the sheet.
    pub(crate) fn change(&self, change: Change) {
        self.read_for(None);
        let Some(job) = self.job().and_then(|job| job.after(change)) else {
            return;
        };
        // Where the draft is refused the save tells why, a moment later.
        let _ = keep::draft_keep(&job.sheet);
        self.place(Slot::Job(Rc::new(job)));
        if self.0.waiting.replace(true) {
            return;
        }
        let desk = self.clone();
        *self.0.timer.borrow_mut() = Some(Timeout::new(DELAY, move || {
            desk.0.waiting.set(false);
            desk.save();
        }));
    }

    /// Reads the sheet for other tools, and for the day that it is by now: an installed page stays open for days.
    pub(crate) fn read_for(&self, tools: Option<Tools>) {
        let read = |job: Rc<Job>| job.read_for(tools.unwrap_or(job.tools()), &keep::today());
        if let Some(job) = self.job().and_then(read) {
            self.place(Slot::Job(Rc::new(job)));
        }
    }

    /// What became of a sheet while another screen was shown.
    pub(crate) fn notice(&self) -> Option<String> {
        self.0.notice.borrow().clone()
    }

    /// Takes the notices away once they were read.
    pub(crate) fn noted(&self) {
        *self.0.notice.borrow_mut() = None;
        self.remark(None);
        self.tell();
    }

    fn remark(&self, notice: Option<String>) {
        if let Some(job) = self.job() {
            let mut job = (*job).clone();
            job.notice = notice;
            self.place(Slot::Job(Rc::new(job)));
        }
    }

    /// Leads on from a sheet's address where that is shown; whether it was. Where it was not, the tab of the
    /// Sheet screen leads on.
    fn lead(&self, id: &str, route: &Route) -> bool {
        let from = Route::sheet(id);
        self.0.places.moved(&from, route);
        put(&from, route)
    }

    /// Waits until nothing is left to save, or saving failed.
    pub(crate) async fn settle(&self) {
        *self.0.timer.borrow_mut() = None;
        self.0.waiting.set(false);
        if let Some(saving) = self.save() {
            // The promise is only for waiting; it is never refused.
            let _ = JsFuture::from(saving).await;
        }
    }

    /// Keeps what has been typed, so that the page can be loaded again; whether nothing would be
    /// lost by that. A draft is enough; where none can be kept, it takes a save.
    pub(crate) async fn secure(&self) -> bool {
        self.has_drafts() || {
            self.settle().await;
            self.has_drafts()
        }
    }

    /// Writes a draft of every sheet that is not saved; whether there is one of each.
    fn has_drafts(&self) -> bool {
        let aside = self.0.unkept.borrow();
        let jobs = aside.iter().cloned().chain(self.job());
        jobs.filter(|job| job.status.is_owed())
            .all(|job| keep::draft_keep(&job.sheet).is_ok())
    }

    /// Begins to save, unless that is under way.
    pub(crate) fn save(&self) -> Option<Promise> {
        let mut saving = self.0.saving.borrow_mut();
        if saving.is_none() {
            self.job().filter(|job| job.status.is_owed())?;
            let desk = self.clone();
            *saving = Some(future_to_promise(async move {
                while desk.save_once().await {}
                *desk.0.saving.borrow_mut() = None;
                Ok(JsValue::UNDEFINED)
            }));
        }
        saving.clone()
    }

    /// Saves the sheet as it is now; whether it was changed meanwhile.
    async fn save_once(&self) -> bool {
        let Some(job) = self.job() else {
            return false;
        };
        let saved = keep::save(&job.sheet, job.found.complete()).await;
        let Some(now) = self.job().filter(|now| now.sheet.id == job.sheet.id) else {
            return false;
        };
        let (kept, notice) = match saved {
            Ok(Saved::Kept(kept)) => (kept, None),
            Ok(Saved::Restored(kept)) => (
                kept,
                Some(
                    "This sheet was gone from this device: removed in another tab, or erased by the browser. It is kept again with what you typed.",
                ),
            ),
            Ok(Saved::BothKept { mine }) => (
                mine,
                Some("This sheet was changed in another tab as well. Both are kept, yours under a new name."),
            ),
            Err(error) => {
                self.fail(&now, &error);
                return false;
            }
        };
        let mut next = now.kept_as(&kept);
        let more = now.edits != job.edits;
        if !more {
            next.status = Status::Kept;
        }
        if let Some(notice) = notice {
            if self.lead(&job.sheet.id, &Route::sheet(&kept.id)) {
                next.notice = Some(notice.to_owned());
            } else {
                let about = if kept.machine.is_empty() {
                    "the sheet you left"
                } else {
                    &kept.machine
                };
                *self.0.notice.borrow_mut() = Some(["About ", about, ": ", notice].concat());
            }
            self.place(Slot::Job(Rc::new(next)));
        } else {
            self.place_kept(next);
        }
        more
    }

    fn fail(&self, now: &Job, error: &KeepError) {
        let mut next = now.clone();
        next.status = Status::Trouble(error.words());
        self.place(Slot::Job(Rc::new(next)));
    }

    /// Another tab has saved or removed a sheet.
    pub(crate) fn hear(&self, news: &News) {
        let Some(job) = self.job().filter(|job| job.sheet.id == news.id) else {
            return;
        };
        let notice = match job.status {
            // With changes of its own this tab finds out when it saves, and both are kept.
            Status::Changed | Status::Trouble(_) => return,
            Status::Kept if news.removed => {
                let mut next = (*job).clone();
                next.status = Status::Removed;
                next.notice = Some("Removed in another tab. Type in it, and it is kept again.".to_owned());
                return self.place(Slot::Job(Rc::new(next)));
            }
            Status::Removed if !news.removed => "Brought back in another tab just now.",
            Status::Kept if news.rev > job.sheet.rev => "Changed in another tab just now, and shown as it is there.",
            _ => return,
        };
        let (desk, id, tools) = (self.clone(), news.id.clone(), job.tools());
        spawn_local(async move { desk.fetch(id, tools, Some(notice)).await });
    }
}

/// Draws the screen anew whenever the desk changes, or the day has when the page is looked at again.
#[hook]
pub(crate) fn use_desk(desk: &Desk) {
    let update = use_force_update();
    let watched = desk.clone();
    use_effect_with((), move |()| {
        *watched.0.watcher.borrow_mut() = Some(Callback::from(move |()| update.force_update()));
        let looked_at = watched.clone();
        let listener = EventListener::new(&document(), "visibilitychange", move |_| looked_at.read_for(None));
        move || {
            drop(listener);
            *watched.0.watcher.borrow_mut() = None;
            watched.save();
        }
    });
}
