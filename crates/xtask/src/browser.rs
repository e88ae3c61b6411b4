//! The browsers the journeys run in: found, or installed from the system's packages where that is
//! allowed. Driving them is the business of `tests/browser`.

use crate::system::{find_on_path, install, may_install};
use crate::{run, tools};
use anyhow::{Result, bail, ensure};
use std::path::{Path, PathBuf};
use std::process::Command;

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Engine {
    /// Chromium, which also takes pictures and times.
    Chromium,
    /// Firefox.
    Firefox,
    /// WebKit's own small browser.
    WebKit,
}

impl Engine {
    /// All of them, in the order they are tried.
    pub(crate) const ALL: [Self; 3] = [Self::Chromium, Self::Firefox, Self::WebKit];

    /// The word for it on the command line and to the journeys.
    pub(crate) fn word(self) -> &'static str {
        match self {
            Self::Chromium => "chromium",
            Self::Firefox => "firefox",
            Self::WebKit => "webkit",
        }
    }

    /// The engine of that word.
    pub(crate) fn named(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|engine| engine.word() == word)
    }

    fn home(self) -> &'static Home {
        match self {
            Self::Chromium => &CHROMIUM,
            Self::Firefox => &FIREFOX,
            Self::WebKit => &WEBKIT,
        }
    }
}

/// Where the parts of a browser are to be had.
struct Home {
    /// Its Debian packages.
    packages: &'static [&'static str],
    browser: Part,
    /// The program that speaks WebDriver for it.
    driver: Part,
    /// What else has to be on the search path.
    beside: &'static [&'static str],
}

/// A program, and how it is found.
struct Part {
    /// The variable that names it, to this program and to the journeys.
    variable: &'static str,
    /// What it is called on the search path.
    names: &'static [&'static str],
    /// A folder below which it lies where it is on no search path.
    below: Option<&'static str>,
}

const CHROMIUM: Home = Home {
    packages: &["chromium", "chromium-driver"],
    browser: Part {
        variable: "CHROMIUM",
        names: &["chromium", "chromium-browser", "google-chrome"],
        below: None,
    },
    driver: Part {
        variable: "CHROMEDRIVER",
        names: &["chromedriver"],
        below: None,
    },
    beside: &[],
};

/// Its driver is in no Debian package and comes from crates.io.
const FIREFOX: Home = Home {
    packages: &["firefox-esr"],
    browser: Part {
        variable: "FIREFOX",
        names: &["firefox-esr", "firefox"],
        below: None,
    },
    driver: Part {
        variable: "GECKODRIVER",
        names: &[],
        below: None,
    },
    beside: &[],
};

/// It has no mode without a screen, so it gets one that nobody sees, and a message bus.
const WEBKIT: Home = Home {
    packages: &["webkit2gtk-driver", "xvfb", "xauth", "dbus"],
    browser: Part {
        variable: "MINIBROWSER",
        names: &["MiniBrowser"],
        below: Some("/usr/lib"),
    },
    driver: Part {
        variable: "WEBKITDRIVER",
        names: &["WebKitWebDriver"],
        below: None,
    },
    beside: &["xvfb-run", "xauth", "dbus-run-session"],
};

/// A browser and the driver that fits it.
pub(crate) struct Browser {
    pub(crate) engine: Engine,
    program: PathBuf,
    driver: PathBuf,
}

impl Browser {
    /// Finds the browser, or installs it if this is a Debian-like system and we may.
    pub(crate) fn fetch(engine: Engine) -> Result<Self> {
        if !is_here(engine) {
            ensure!(may_install(), "{}", missing(engine));
            install(engine.home().packages)?;
        }
        let home = engine.home();
        let driver = match (engine, home.driver.find()) {
            (_, Some(driver)) => driver,
            (Engine::Firefox, None) => tools::geckodriver()?,
            _ => bail!(missing(engine)),
        };
        let Some(program) = home.browser.find().filter(|_| is_here(engine)) else {
            bail!(missing(engine));
        };
        Ok(Self {
            engine,
            program,
            driver,
        })
    }

    /// The browser itself, for a program that drives it in a way of its own.
    pub(crate) fn program(&self) -> &Path {
        &self.program
    }

    /// Tells a program that drives it where it is.
    pub(crate) fn hand_to(&self, command: &mut Command) {
        let home = self.engine.home();
        command
            .env("FENDERSIDE_ENGINE", self.engine.word())
            .env(home.browser.variable, &self.program)
            .env(home.driver.variable, &self.driver);
    }

    /// A program of the tests that drives it through the page of a folder.
    pub(crate) fn driven_by(&self, name: &str, page: &Path) -> Result<Command> {
        let mut program = run::cargo();
        program
            .args([
                "run",
                "--quiet",
                "--package",
                "fenderside-tests",
                "--features",
                "browser",
                "--bin",
                name,
            ])
            .env("FENDERSIDE_XTASK", std::env::current_exe()?)
            .env("FENDERSIDE_DIST", page);
        self.hand_to(&mut program);
        Ok(program)
    }
}

fn is_here(engine: Engine) -> bool {
    let home = engine.home();
    let driver = engine == Engine::Firefox || home.driver.find().is_some();
    let beside = home.beside.iter().all(|name| find_on_path(name).is_some());
    home.browser.find().is_some() && driver && beside
}

fn missing(engine: Engine) -> String {
    let home = engine.home();
    let (browser, driver) = (home.browser.variable, home.driver.variable);
    format!(
        "no {} with what drives it is here. Install {} (Debian's names), or set {browser} and {driver} to the two programs",
        engine.word(),
        [home.packages, home.beside].concat().join(", "),
    )
}

impl Part {
    fn find(&self) -> Option<PathBuf> {
        match std::env::var_os(self.variable) {
            Some(path) => Some(PathBuf::from(path)).filter(|path| path.is_file()),
            None => self.on_path().or_else(|| self.below_its_folder()),
        }
    }

    fn on_path(&self) -> Option<PathBuf> {
        self.names.iter().find_map(|name| find_on_path(name))
    }

    /// `<folder>/<name>`, `<folder>/*/<name>` or `<folder>/*/*/<name>`: libraries keep programs of
    /// theirs in a folder for the machine, and in one for their version.
    fn below_its_folder(&self) -> Option<PathBuf> {
        let name = self.names.first()?;
        let mut folders = vec![PathBuf::from(self.below?)];
        for _ in 0..2 {
            let deeper: Vec<PathBuf> = folders.iter().flat_map(|folder| inside(folder)).collect();
            let found = deeper
                .iter()
                .map(|folder| folder.join(name))
                .find(|file| file.is_file());
            if found.is_some() {
                return found;
            }
            folders = deeper;
        }
        None
    }
}

/// What lies in a folder, the newest version last in name and first here.
fn inside(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.path()).collect();
    paths.sort_unstable_by(|one, other| other.cmp(one));
    paths
}
