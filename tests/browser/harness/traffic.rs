//! What a browser asked of the network: the page, its frames and its service worker alike,
//! answered or not. Chromium writes a log of it; the others have to go through a proxy of ours.

mod net_log;
mod proxy;

use anyhow::{Result, bail};
use proxy::Proxy;
use std::path::{Path, PathBuf};

/// The last thing a browser is made to ask for: if it is noted, so was all before it.
pub(super) const LAST: &str = "asked-for-last";

/// What notes the requests of one browser, from its start to its end.
#[derive(Debug)]
pub(super) enum Watch {
    /// The log of Chromium's network stack, in a file.
    Log(PathBuf),
    /// A proxy that all requests go through.
    Proxy(Proxy),
}

impl Watch {
    pub(super) fn log(file: &Path) -> Self {
        Self::Log(file.to_owned())
    }

    pub(super) fn proxy() -> Result<Self> {
        Proxy::start().map(Self::Proxy)
    }

    /// The port of the proxy, if it is one.
    pub(super) fn port(&self) -> Option<u16> {
        match self {
            Self::Log(_) => None,
            Self::Proxy(proxy) => Some(proxy.port()),
        }
    }

    /// The requests of a browser that has ended.
    pub(super) fn traffic(&self, site: &str) -> Result<Traffic> {
        let all = match self {
            Self::Log(file) => net_log::urls(file)?,
            Self::Proxy(proxy) => proxy.urls()?,
        };
        let (last, urls): (Vec<_>, Vec<_>) = all.into_iter().partition(|url| url.ends_with(LAST));
        Ok(Traffic {
            origin: origin(site),
            urls,
            to_the_end: !last.is_empty(),
        })
    }
}

/// The requests of one browser, from its start to its end.
#[derive(Debug)]
pub struct Traffic {
    origin: String,
    urls: Vec<String>,
    to_the_end: bool,
}

impl Traffic {
    /// All addresses the page asked for.
    #[must_use]
    pub fn urls(&self) -> &[String] {
        &self.urls
    }

    /// Fails if the page asked any other origin for anything.
    pub fn stays_home(&self) -> Result<()> {
        if !self.to_the_end {
            bail!("the last request was not seen, so this list proves nothing");
        }
        let home = format!("{}/", self.origin);
        let mut away: Vec<&String> = self.urls.iter().filter(|url| !url.starts_with(&home)).collect();
        away.sort_unstable();
        away.dedup();
        if !away.is_empty() {
            bail!("the page asked elsewhere: {away:?}");
        }
        Ok(())
    }
}

fn origin(site: &str) -> String {
    let mut parts = site.splitn(4, '/');
    let scheme = parts.next().unwrap_or_default();
    let host = parts.nth(1).unwrap_or_default();
    format!("{scheme}//{host}")
}
