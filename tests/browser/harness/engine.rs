//! The three browser engines, and what a phone asks of the one it runs on.
//!
//! What all engines do the same way, by WebDriver, is in `phone.rs` and its neighbours. Here is
//! what each does in a way of its own; what one cannot do at all is an error that says so. Which
//! journeys an engine cannot run is listed with reasons in `xtask`.

mod bidi;
mod chromium;
mod firefox;
mod webkit;

use super::driver::Driver;
use super::setting;
use super::traffic::Watch;
use anyhow::{Result, bail};
use std::path::Path;
use thirtyfour::{Capabilities, WebDriver};

/// A phone that is held upright, the size every screen is drawn for.
pub(super) const WIDTH: u32 = 390;
pub(super) const HEIGHT: u32 = 844;

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium, by chromedriver.
    Chromium,
    /// Firefox, by geckodriver.
    Firefox,
    /// WebKit's own small browser, by WebKit's driver.
    WebKit,
}

/// How a browser is set up before it starts.
pub(super) struct Setup<'a> {
    /// Where it keeps what it stores.
    pub(super) profile: &'a Path,
    /// Where files go that a page hands over.
    pub(super) downloads: &'a Path,
    /// What notes its requests.
    pub(super) watch: &'a Watch,
    /// What its owner has set.
    pub(super) wishes: Wishes,
}

/// What the owner of a browser has set in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Wishes {
    /// Whether sites may keep anything.
    pub(super) keeps: bool,
    /// How large text is, in points of the screen.
    pub(super) text: u32,
}

/// A browser as it comes.
pub(super) const USUAL: Wishes = Wishes { keeps: true, text: 16 };

impl Engine {
    /// The engine these journeys are to run in.
    pub fn chosen() -> Result<Self> {
        match setting::engine().as_str() {
            "chromium" => Ok(Self::Chromium),
            "firefox" => Ok(Self::Firefox),
            "webkit" => Ok(Self::WebKit),
            other => bail!("FENDERSIDE_ENGINE is `{other}`; it can be chromium, firefox or webkit"),
        }
    }

    pub(super) fn driver(self) -> Result<Driver> {
        match self {
            Self::Chromium => chromium::driver(),
            Self::Firefox => firefox::driver(),
            Self::WebKit => webkit::driver(),
        }
    }

    /// What notes the requests of a browser that is about to start.
    pub(super) fn watch(self, folder: &Path) -> Result<Watch> {
        match self {
            Self::Chromium => Ok(Watch::log(&folder.join("net.json"))),
            Self::Firefox | Self::WebKit => Watch::proxy(),
        }
    }

    pub(super) fn capabilities(self, setup: &Setup<'_>) -> Result<Capabilities> {
        match self {
            Self::Chromium => chromium::capabilities(setup),
            Self::Firefox => firefox::capabilities(setup),
            Self::WebKit => webkit::capabilities(setup),
        }
    }

    /// The line to a browser that has started.
    pub(super) fn connect(self, browser: &WebDriver) -> Result<Line> {
        match self {
            Self::Chromium => Ok(Line::DevTools),
            Self::Firefox => Ok(Line::BiDi(Box::new(bidi::Line::open(browser)?))),
            Self::WebKit => Ok(Line::Nothing),
        }
    }
}

/// What a browser takes commands by that WebDriver does not have.
#[derive(Debug)]
pub(super) enum Line {
    /// Chromium's developer protocol, through its driver.
    DevTools,
    /// WebDriver BiDi, a connection of its own.
    BiDi(Box<bidi::Line>),
    /// There is none.
    Nothing,
}
