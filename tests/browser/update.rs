//! A new version is offered, never forced; taking it costs one reload.

use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn a_new_version_waits_until_it_is_asked_for() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert?q=60%20N%C2%B7m")?;
    phone.until_kept()?;
    let before = phone.attribute("html", "data-version")?;
    assert!(before.is_some(), "a kept page knows its version");

    copy.deploy_another("second")?;
    // Twice: a version that let itself in would run after the second time.
    for _ in 0..2 {
        phone.reload()?;
        phone.until_true(
            "the new version to be offered",
            "return document.documentElement.dataset.update === 'ready'",
        )?;
        assert_eq!(
            phone.count("meta[name=deployed]")?,
            0,
            "nothing changes before it is asked for"
        );
    }

    count_loads(&phone)?;
    phone.script::<()>("window.dispatchEvent(new Event('shop-update-apply'))", vec![])?;
    phone.until_true(
        "the new version to run",
        "return document.querySelector('meta[name=deployed]')?.content === 'second'",
    )?;
    phone.until_running()?;
    phone.until_kept()?;
    assert_ne!(phone.attribute("html", "data-version")?, before);
    assert_eq!(phone.attribute("html", "data-update")?, None, "it is offered once");
    assert_eq!(phone.field("q")?, "60 N·m", "the bench is as it was");
    assert_eq!(loads(&phone)?, 1, "one reload");
    let caches: usize = phone.script("return caches.keys().then((names) => names.length)", vec![])?;
    assert_eq!(caches, 1, "the old version is cleared away");

    server.kill()?;
    phone.reload()?;
    assert_eq!(
        phone.count("meta[name=deployed]")?,
        1,
        "the new version is the kept one"
    );
    phone.close()?.1.stays_home()
}

/// Counts the loads of the page from here on, in the tab's own memory.
fn count_loads(phone: &Phone) -> Outcome {
    phone.script::<()>("sessionStorage.setItem('loads', '0')", vec![])?;
    let count = "sessionStorage.setItem('loads', 1 + Number(sessionStorage.getItem('loads')))";
    phone.before_page(count)
}

fn loads(phone: &Phone) -> anyhow::Result<u32> {
    phone.script("return Number(sessionStorage.getItem('loads'))", vec![])
}
