//! What a browser asked of the network: the page, its frames and its service worker alike,
//! answered or not. Chromium writes a log of it; the others have to go through a proxy of ours.

mod net_log;
mod proxy;

use anyhow::{Result, bail};
use proxy::Proxy;
use std::path::{Path, PathBuf};

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
        let urls = match self {
            Self::Log(file) => net_log::urls(file)?,
            Self::Proxy(proxy) => proxy.urls()?,
        };
        let origin = origin(site);
        Ok(Traffic { origin, urls })
    }
}

/// The requests of one browser, from its start to its end.
#[derive(Debug)]
pub struct Traffic {
    origin: String,
    urls: Vec<String>,
}

impl Traffic {
    /// All addresses the page asked for.
    #[must_use]
    pub fn urls(&self) -> &[String] {
        &self.urls
    }

    /// Fails if the page asked any other origin for anything.
    pub fn stays_home(&self) -> Result<()> {
        if self.urls.is_empty() {
            bail!("no request at all was seen, so this log proves nothing");
        }
        let home = format!("{}/", self.origin);
        let away: Vec<&String> = self.urls.iter().filter(|url| !url.starts_with(&home)).collect();
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
