//! A phone: one browser on one profile, pointed at one site. Opening, closing and
//! waiting are here; what a person reads is in `view.rs`, what they do in `touch.rs`.

use super::chromedriver::{self, Driver};
use super::{Switch, Traffic, setting};
use anyhow::{Context, Result, bail};
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::future::Future;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use thirtyfour::{ChromiumLikeCapabilities, WebDriver};
use tokio::runtime::Runtime;

/// Far beyond what any step takes on a slow, busy machine.
const LIMIT: Duration = Duration::from_secs(30);
/// How often a condition is looked at.
const PAUSE: Duration = Duration::from_millis(25);

/// What a browser has stored: it outlives the browser and goes with its owner.
#[derive(Debug)]
pub struct Profile(TempDir);

impl Profile {
    /// A browser that has never seen the page.
    pub fn fresh() -> Result<Self> {
        Ok(Self(TempDir::with_prefix("fenderside-profile-")?))
    }
}

/// A browser in a person's hand.
#[derive(Debug)]
pub struct Phone {
    // The order of these fields is the order in which they are dropped.
    browser: WebDriver,
    runtime: Runtime,
    driver: Driver,
    site: String,
    profile: Option<Profile>,
    log: TempDir,
}

impl Phone {
    /// A browser that has never seen this site.
    pub fn fresh(site: &str) -> Result<Self> {
        Self::with(Profile::fresh()?, site)
    }

    /// A browser, newly started, with what an earlier one has stored.
    pub fn with(profile: Profile, site: &str) -> Result<Self> {
        Self::start(profile, site, Value::Null)
    }

    /// A browser set to let no site keep anything.
    pub fn keeping_nothing(site: &str) -> Result<Self> {
        let block = serde_json::json!({ "profile.default_content_setting_values.cookies": 2 });
        Self::start(Profile::fresh()?, site, block)
    }

    /// A browser whose owner has set text to so many points in its settings; 16 is the usual size.
    pub fn with_text_of(points: u32, site: &str) -> Result<Self> {
        let size = serde_json::json!({ "webkit.webprefs.default_font_size": points });
        Self::start(Profile::fresh()?, site, size)
    }

    fn start(profile: Profile, site: &str, preferences: Value) -> Result<Self> {
        let log = TempDir::with_prefix("fenderside-log-")?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let driver = Driver::start()?;
        let mut settings = chromedriver::settings(profile.0.path(), &log.path().join("net.json"))?;
        if !preferences.is_null() {
            settings.add_experimental_option("prefs", preferences)?;
        }
        let browser = runtime
            .block_on(WebDriver::new(&driver.url, settings))
            .context("the browser did not start")?;
        let site = site.to_owned();
        Ok(Self {
            browser,
            runtime,
            driver,
            site,
            profile: Some(profile),
            log,
        })
    }

    /// Closes the browser. What it stored and what it asked for are left.
    pub fn close(mut self) -> Result<(Profile, Traffic)> {
        self.wait_on(self.browser.clone().quit())
            .context("the browser did not close")?;
        let profile = self.profile.take().context("a phone is closed once")?;
        // The browser ends the file a moment after it has said goodbye.
        let log = self.log.path().join("net.json");
        let traffic = self.until("the list of requests", || Ok(Traffic::read(&log, &self.site).ok()))?;
        Ok((profile, traffic))
    }

    /// What ends this browser without a warning.
    #[must_use]
    pub fn switch(&self) -> Switch {
        Switch::of(self.driver.id())
    }

    /// What a browser that was killed has stored.
    pub fn left_behind(mut self) -> Result<Profile> {
        self.profile.take().context("a phone is closed once")
    }

    /// Opens another tab and turns to it.
    pub fn new_tab(&self) -> Result<()> {
        let opening = async {
            let tab = self.browser.new_tab().await?;
            self.browser.switch_to_window(tab).await
        };
        self.wait_on(opening).context("there is no other tab")
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
        self.go(&format!("{}{address}", self.site))?;
        self.until_running()
    }

    /// Goes to any address, whatever is there.
    pub fn go(&self, url: &str) -> Result<()> {
        self.wait_on(self.browser.goto(url))
            .with_context(|| format!("{url} did not open"))
    }

    /// Loads the page again.
    pub fn reload(&self) -> Result<()> {
        self.wait_on(self.browser.refresh())
            .context("the page did not reload")?;
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

    /// Sends a command of the browser's own developer protocol.
    pub fn devtools(&self, method: &str, parameters: Value) -> Result<Value> {
        let cdp = self.browser.cdp();
        self.wait_on(cdp.send_raw(method, parameters))
            .with_context(|| format!("{method} was refused"))
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
        // Asking twice is harmless; not asking would leave the browser behind.
        let _ = self.runtime.block_on(self.browser.clone().quit());
    }
}
