//! "Ready to work offline" is looked up, not remembered: a browser may throw
//! away what it kept.

use fenderside_tests::harness::{Outcome, Phone, Server};

const LOSE_AN_ICON: &str = "return caches.keys() \
     .then((names) => caches.open(names[0])) \
     .then((cache) => cache.delete('icons/icon-512.png'))";

#[test]
fn a_worker_that_does_not_answer_is_not_waited_for() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.before_page("ServiceWorker.prototype.postMessage = () => {}")?;
    phone.open("#/convert")?;
    phone.until_text(".offline-mark", "Needs a network")
}

#[test]
fn a_lost_file_is_fetched_again_or_admitted() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.until_kept()?;

    assert!(phone.script::<bool>(LOSE_AN_ICON, vec![])?, "there was an icon to lose");
    phone.reload()?;
    phone.until_kept()?;
    assert!(phone.script::<bool>(LOSE_AN_ICON, vec![])?, "it was fetched again");

    server.kill()?;
    phone.reload()?;
    phone.until_true(
        "the page to admit that a file is missing",
        "return document.documentElement.dataset.offline === 'unavailable'",
    )
}
