//! From navigation to the first usable field: the page and an empty page in turn,
//! with a network and from a dead one.

use crate::{empty_page, slow_down};
use anyhow::Result;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Value, json};

/// Odd, so that the median is one of them.
const RUNS: usize = 9;

/// Notes the moment after the first frame with the field in it. The page's start
/// text must be gone: while it stands, nothing answers.
const WATCH: &str = r"
    const look = () => {
        if (!document.getElementById('q') || document.getElementById('boot')) return;
        watcher.disconnect();
        requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => { window.usableAfter = performance.now(); };
            port2.postMessage(null);
        });
    };
    const watcher = new MutationObserver(look);
    watcher.observe(document, { childList: true, subtree: true });
";

pub(crate) fn measure() -> Result<Value> {
    let page = Server::start()?;
    let empty = empty_page()?;
    let sites = [Site::of(&page, "page", "#/convert"), Site::of(&empty, "empty", "")];

    let phone = Phone::fresh(page.site())?;
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH }))?;
    slow_down(&phone)?;
    let online = runs(&phone, &sites, forget)?;

    for site in &sites {
        phone.go(&site.url)?;
        phone.until_kept()?;
    }
    page.kill()?;
    empty.kill()?;
    let offline = runs(&phone, &sites, stop_worker)?;
    Ok(json!({ "online": online, "offline": offline }))
}

struct Site {
    name: &'static str,
    origin: String,
    url: String,
}

impl Site {
    fn of(server: &Server, name: &'static str, address: &str) -> Self {
        let origin = server.site().trim_end_matches('/').to_owned();
        Self {
            name,
            origin,
            url: format!("{}{address}", server.site()),
        }
    }
}

/// Both sites in turn, so that a busy moment of the machine meets both.
fn runs(phone: &Phone, sites: &[Site; 2], prepare: fn(&Phone, &Site) -> Outcome) -> Result<Value> {
    let mut times = [Vec::new(), Vec::new()];
    for _ in 0..RUNS {
        for (site, times) in sites.iter().zip(&mut times) {
            times.push(run(phone, site, prepare)?);
        }
    }
    let [first, second] = times;
    Ok(json!({ sites[0].name: first, sites[1].name: second }))
}

fn run(phone: &Phone, site: &Site, prepare: fn(&Phone, &Site) -> Outcome) -> Result<f64> {
    phone.go("about:blank")?;
    prepare(phone, site)?;
    phone.go(&site.url)?;
    phone.until("the first usable field", || {
        phone.script::<Option<f64>>("return window.usableAfter ?? null", Vec::new())
    })
}

/// A first visit: nothing of the site is left.
fn forget(phone: &Phone, site: &Site) -> Outcome {
    let all = json!({ "origin": site.origin, "storageTypes": "all" });
    phone.devtools("Storage.clearDataForOrigin", all)?;
    phone.devtools("Network.clearBrowserCache", json!({}))?;
    Ok(())
}

/// A later day: the files are kept, but the worker has to be started again.
fn stop_worker(phone: &Phone, _site: &Site) -> Outcome {
    phone.devtools("ServiceWorker.enable", json!({}))?;
    phone.devtools("ServiceWorker.stopAllWorkers", json!({}))?;
    Ok(())
}
