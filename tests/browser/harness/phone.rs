//! A phone: one browser on one profile, pointed at one site. Opening, closing and
//! waiting are here; what a person reads is in `view.rs`, what they do in `touch.rs`.

use super::driver::Driver;
use super::engine::{Engine, Line, Setup, USUAL, WIDTH, Wishes};
use super::traffic::{LAST, Watch};
use super::{Switch, Traffic, setting};
use anyhow::{Context, Result, bail, ensure};
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::future::Future;
use std::path::Path;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use thirtyfour::WebDriver;
use tokio::runtime::Runtime;

/// Far beyond what any step takes on a slow, busy machine.
const LIMIT: Duration = Duration::from_secs(30);
/// How often a condition is looked at.
const PAUSE: Duration = Duration::from_millis(25);

/// What a browser has stored: it outlives the browser and goes with its owner.
#[derive(Debug)]
pub struct Profile {
    folder: TempDir,
    used: bool,
}

impl Profile {
    /// A browser that has never seen the page.
    pub fn fresh() -> Result<Self> {
        let folder = TempDir::with_prefix("fenderside-profile-")?;
        Ok(Self { folder, used: false })
    }
}

/// A browser in a person's hand.
#[derive(Debug)]
pub struct Phone {
    // The order of these fields is the order in which they are dropped.
    line: Line,
    browser: WebDriver,
    runtime: Runtime,
    driver: Driver,
    site: String,
    profile: Option<Profile>,
    downloads: TempDir,
    watch: Watch,
    /// Whether the browser was killed.
    gone: bool,
    _log: TempDir,
}

impl Phone {
    /// A browser that has never seen this site.
    pub fn fresh(site: &str) -> Result<Self> {
        Self::with(Profile::fresh()?, site)
    }

    /// A browser, newly started, with what an earlier one has stored.
    pub fn with(profile: Profile, site: &str) -> Result<Self> {
        Self::start(profile, site, USUAL)
    }

    /// A browser set to let no site keep anything.
    pub fn keeping_nothing(site: &str) -> Result<Self> {
        Self::start(Profile::fresh()?, site, Wishes { keeps: false, ..USUAL })
    }

    /// A browser whose owner has set text to so many points in its settings; 16 is the usual size.
    pub fn with_text_of(points: u32, site: &str) -> Result<Self> {
        Self::start(Profile::fresh()?, site, Wishes { text: points, ..USUAL })
    }

    fn start(mut profile: Profile, site: &str, wishes: Wishes) -> Result<Self> {
        let engine = Engine::chosen()?;
        ensure!(
            !profile.used || engine != Engine::WebKit,
            "WebKit's driver starts every browser as one that has never seen the page"
        );
        profile.used = true;
        let log = TempDir::with_prefix("fenderside-log-")?;
        let downloads = TempDir::with_prefix("fenderside-downloads-")?;
        let watch = engine.watch(log.path())?;
        let settings = engine.capabilities(&Setup {
            profile: profile.folder.path(),
            downloads: downloads.path(),
            watch: &watch,
            wishes,
        })?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let driver = engine.driver()?;
        let browser = runtime
            .block_on(WebDriver::new(&driver.url, settings))
            .context("the browser did not start")?;
        let phone = Self {
            line: engine.connect(&browser)?,
            browser,
            runtime,
            driver,
            site: site.to_owned(),
            profile: Some(profile),
            downloads,
            watch,
            gone: false,
            _log: log,
        };
        phone.size_window()?;
        Ok(phone)
    }

    /// A window of Chromium is as large as a phone from its start.
    fn size_window(&self) -> Result<()> {
        match self.line {
            Line::DevTools => Ok(()),
            Line::BiDi(_) | Line::Nothing => self.make_wide(WIDTH),
        }
    }

    /// Closes the browser. What it stored and what it asked for are left.
    pub fn close(mut self) -> Result<(Profile, Traffic)> {
        let last = "return fetch(arguments[0]).then(() => true, () => true)";
        let url = format!("{}{LAST}", self.site);
        // Whether it was seen is what `Traffic` says.
        let _ = self.script::<bool>(last, vec![Value::from(url)]);
        self.wait_on(self.browser.clone().quit())
            .context("the browser did not close")?;
        let profile = self.profile.take().context("a phone is closed once")?;
        // Chromium ends its log a moment after it has said goodbye.
        let traffic = self.until("the list of requests", || Ok(self.watch.traffic(&self.site).ok()))?;
        Ok((profile, traffic))
    }

    /// What ends this browser without a warning.
    #[must_use]
    pub fn switch(&self) -> Switch {
        Switch::of(self.driver.id())
    }

    /// What a browser that was killed has stored.
    pub fn left_behind(mut self) -> Result<Profile> {
        self.gone = true;
        self.profile.take().context("a phone is closed once")
    }

    /// Opens another tab and turns to it.
    pub fn new_tab(&self) -> Result<()> {
        let opening = async {
            let tab = self.browser.new_tab().await?;
            self.browser.switch_to_window(tab).await
        };
        self.wait_on(opening).context("there is no other tab")?;
        self.size_window()
    }

    /// Turns to a tab, counted from 0 as they were opened.
    pub fn turn_to(&self, tab: usize) -> Result<()> {
        let turning = async {
            let tab = self.browser.windows().await?.into_iter().nth(tab);
            self.browser
                .switch_to_window(tab.context("there is no such tab")?)
                .await?;
            Ok(())
        };
        self.wait_on(turning)
    }

    /// Opens an address of the page, such as `#/convert`, and waits until it runs.
    pub fn open(&self, address: &str) -> Result<()> {
        // Firefox's driver answers while the page it comes from still stands, if the worker sends the address
        // on; what runs in that page then is never answered.
        let leaves = !address.starts_with('#');
        if leaves {
            self.script::<()>("window.left = true", Vec::new())?;
        }
        self.go(&format!("{}{address}", self.site))?;
        if leaves {
            self.until_true("the next page", "return !window.left")?;
        }
        self.until_running()?;
        self.until_drawn()
    }

    /// Waits until the page has heard of what happened last and drawn it: where only the part behind the
    /// `#` changes, WebKit's driver answers before the page knows.
    fn until_drawn(&self) -> Result<()> {
        let heard = "return new Promise((done) => { \
             requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(() => setTimeout(done)))); \
             setTimeout(done, 500); })";
        self.script(heard, Vec::new())
    }

    /// Goes to any address, whatever is there.
    pub fn go(&self, url: &str) -> Result<()> {
        self.wait_on(self.browser.goto(url))
            .with_context(|| format!("{url} did not open"))
    }

    /// Loads the page again, as the button for it does. WebDriver's own command for it would go
    /// past the worker in Firefox.
    pub fn reload(&self) -> Result<()> {
        self.script::<()>("window.left = true; location.reload()", Vec::new())?;
        self.until_true("the page to load again", "return !window.left")?;
        self.until_running()
    }

    /// The browser's back button.
    pub fn back(&self) -> Result<()> {
        self.wait_on(self.browser.back()).context("there is no way back")
    }

    /// The start text is replaced when the module has started.
    pub fn until_running(&self) -> Result<()> {
        self.until_true(
            "the page to run",
            "return document.readyState === 'complete' && !!document.querySelector('h1') \
             && !document.getElementById('boot')",
        )
    }

    /// Waits until the page says that it starts without a network.
    pub fn until_kept(&self) -> Result<()> {
        self.until_true(
            "the page to be kept on the device",
            "return document.documentElement.dataset.offline === 'ready'",
        )
    }

    /// Waits until a script in the page returns true.
    pub fn until_true(&self, what: &str, script: &str) -> Result<()> {
        self.until(what, || {
            // A page on its way to the next one has no answer yet.
            Ok(self
                .script::<bool>(script, Vec::new())
                .ok()
                .filter(|yes| *yes)
                .map(|_| ()))
        })
    }

    /// Looks again and again until there is something to see.
    pub fn until<T>(&self, what: &str, look: impl Fn() -> Result<Option<T>>) -> Result<T> {
        let start = Instant::now();
        loop {
            if let Some(seen) = look()? {
                return Ok(seen);
            }
            if start.elapsed() > LIMIT {
                bail!("waited {} s for {what}. {}", LIMIT.as_secs(), self.shown());
            }
            self.wait_on(async { tokio::time::sleep(PAUSE).await });
        }
    }

    /// Runs a script in the page and reads what it returns.
    pub fn script<T: DeserializeOwned>(&self, script: &str, inputs: Vec<Value>) -> Result<T> {
        let answer = self.wait_on(self.browser.execute(script, inputs))?;
        Ok(answer.convert()?)
    }

    /// Keeps a picture of the screen in `target/screens`.
    pub fn screenshot(&self, name: &str) -> Result<()> {
        let folder = setting::screens();
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}.png"));
        Ok(self.wait_on(self.browser.screenshot(&file))?)
    }

    pub(super) fn wait_on<T>(&self, work: impl Future<Output = T>) -> T {
        self.runtime.block_on(work)
    }

    pub(super) fn browser(&self) -> &WebDriver {
        &self.browser
    }

    pub(super) fn line(&self) -> &Line {
        &self.line
    }

    /// The address of the start page.
    pub(super) fn site(&self) -> &str {
        &self.site
    }

    /// Where files go that a page hands over.
    pub(super) fn downloads(&self) -> &Path {
        self.downloads.path()
    }

    /// What the page shows, for the report of a step that failed.
    fn shown(&self) -> String {
        let script = "return location.href + ' with ' + JSON.stringify(document.documentElement.dataset) \
             + ': ' + document.body.innerText.slice(0, 300)";
        let text = self.script::<String>(script, Vec::new());
        // Each test runs in a thread of its name.
        let test = std::thread::current().name().unwrap_or("failed").replace("::", "-");
        let picture = self.screenshot(&test);
        let shown = text.unwrap_or_else(|error| format!("nothing that can be read ({error})"));
        match picture {
            Ok(()) => format!("The page shows {shown} (picture: target/screens/{test}.png)"),
            Err(_) => format!("The page shows {shown}"),
        }
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        // A driver would wait long for the answer of a browser that was killed.
        if self.gone {
            return;
        }
        // Asking twice is harmless; not asking would leave the browser behind.
        let _ = self.runtime.block_on(self.browser.clone().quit());
    }
}
