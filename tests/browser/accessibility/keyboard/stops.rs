//! Every stop of every screen: reached once, in the order of the page, seen, and no trap.

use super::super::subjects::SUBJECTS;
use super::hand;
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

/// Numbers what Tab must reach, in the order of the page: a group of radio buttons is one stop.
const NUMBER: &str = "
    const groups = new Set();
    const stops = [...document.querySelectorAll('a[href], button, input, select, textarea, summary')].filter((found) => {
        if (!found.checkVisibility() || found.tabIndex < 0) return false;
        if (found.type !== 'radio') return true;
        const first = !groups.has(found.name);
        groups.add(found.name);
        return first;
    });
    stops.forEach((found, place) => { found.dataset.stop = found.type === 'radio' ? found.name : place; });
    for (const name of groups) {
        const place = stops.findIndex((found) => found.dataset.stop === name);
        for (const found of document.getElementsByName(name)) found.dataset.stop = place;
    }
    return stops.length";

#[test]
fn tab_reaches_every_stop_of_every_screen_in_order() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    for subject in SUBJECTS.iter().filter(|subject| !subject.printed) {
        phone.go("about:blank")?;
        (subject.reach)(&phone)?;
        // From the top, wherever reaching it has left the focus.
        phone.script::<()>(
            "scrollTo(0, 0); const top = document.body; top.tabIndex = -1; top.focus(); top.removeAttribute('tabindex')",
            Vec::new(),
        )?;
        let wanted: usize = phone.script(NUMBER, Vec::new())?;
        let seen = walk(&phone, wanted)?;
        ensure!(
            seen == (0..wanted).collect::<Vec<_>>(),
            "{}: {seen:?} of {wanted}",
            subject.name
        );
    }
    Ok(())
}

/// The numbers of the stops, in the order in which Tab comes to them. A part that scrolls may be a
/// stop of its own, which has no number.
fn walk(phone: &Phone, wanted: usize) -> Result<Vec<usize>> {
    let number = "return document.activeElement.dataset.stop ?? null";
    let mut seen = Vec::new();
    for _ in 0..wanted.saturating_mul(2) {
        phone.tab()?;
        hand::stop(phone, "")?;
        let stop: Option<String> = phone.script(number, Vec::new())?;
        let Some(stop) = stop else { continue };
        let stop = stop.parse()?;
        seen.push(stop);
        if stop + 1 == wanted {
            break;
        }
    }
    Ok(seen)
}
