//! The drawing under a finger and its buttons: drag, nudge, order, side, name, add, remove.

use super::{until_field, until_gone};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

#[test]
fn a_pulley_follows_the_finger_and_the_arrows() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;
    let grip = ".grip[data-pulley='4']";

    // A tap with a shaky finger chooses it and leaves it where it is.
    phone.drag(grip, [2.0, 1.0])?;
    phone.until_text(".panel h2", "Pulley 5 of 6")?;
    ensure!(phone.field("pulley-x")? == "55" && phone.field("pulley-y")? == "210");
    phone.until_result("effective-length", length, 0.0)?;

    // Up and to the right; the page does not scroll meanwhile, the length follows.
    phone.drag(grip, [30.0, -20.0])?;
    phone.until("the pulley to have moved", || {
        let at = [phone.field("pulley-x")?, phone.field("pulley-y")?].map(|text| text.parse().unwrap_or(0.0));
        // 30 and 20 points at the scale of the drawing, which is between 1 and 3 mm to a point.
        Ok((at[0] > 85.0 && at[0] < 145.0 && at[1] > 230.0 && at[1] < 270.0).then_some(()))
    })?;
    phone.until("another length", || {
        Ok(((phone.result("effective-length")? - length).abs() > 1e-3).then_some(()))
    })?;
    phone.until("the link to follow", || {
        Ok(phone.fragment()?.contains("pulleys=").then_some(()))
    })?;

    // With a mouse as well, and by the arrows.
    phone.drag_with_mouse(".grip[data-pulley='5']", [-20.0, 0.0])?;
    phone.until_text(".panel h2", "Pulley 6 of 6")?;
    phone.until("the compressor to have moved", || {
        let x: f64 = phone.field("pulley-x")?.parse().unwrap_or(240.0);
        Ok((x < 220.0 && x > 170.0).then_some(()))
    })?;
    phone.type_into("pulley-x", "240")?;
    phone.type_into("pulley-y", "78")?;
    for (arrow, key, wanted) in [
        ("left", "pulley-x", "239"),
        ("right", "pulley-x", "240"),
        ("up", "pulley-y", "79"),
        ("down", "pulley-y", "78"),
    ] {
        phone.tap(&format!("[id='{arrow}']"))?;
        until_field(&phone, key, wanted)?;
    }

    // On one screen of a phone: the drawing, the arrows that move the pulley, and the length, nothing else between.
    phone.open("#/convert")?;
    phone.open("#/belt")?;
    let top = "return document.querySelector('output.verdict').getBoundingClientRect().top";
    let before: f64 = phone.script(top, Vec::new())?;
    phone.drag(grip, [1.0, 1.0])?;
    phone.until_text(".panel h2", "Pulley 5 of 6")?;
    let seen = "const box = (name) => document.querySelector(name).getBoundingClientRect(); \
         return scrollY === 0 && box('.route').top >= 0 && [...document.querySelectorAll('.taken button')].length === 5 \
         && box('.taken').bottom <= box('.verdict').top && box('.verdict .number').bottom < box('.tabs').top";
    phone.until_true("drawing, arrows and length on one screen", seen)?;
    let after: f64 = phone.script(top, Vec::new())?;
    ensure!(
        (before - after).abs() < 0.1,
        "the length moved from {before} to {after}"
    );
    // Its button is swiped into sight, and its panel comes next below the length.
    let shown = "const box = (name) => document.querySelector(name).getBoundingClientRect(); \
         return box('#pulley-5').left >= 0 && box('#pulley-5').right <= innerWidth && box('.panel').top < box('.verdict').bottom + 20";
    phone.until_true("the button in sight and the panel by the length", shown)?;
    phone.tap("#to-panel")?;
    phone.until_true("the panel to be led to", "return document.activeElement.id === 'head-pulley' && document.getElementById('pulley-x').getBoundingClientRect().bottom < innerHeight")?;
    Ok(())
}

#[test]
fn while_a_finger_moves_the_screen_says_what_waits_and_a_rest_brings_it() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    phone.tap("#pulley-5")?;
    let wrap = phone.result("wrap-5")?;
    // Each state that a frame has shown: whether numbers wait, the numbers, and the pulley as drawn.
    let watch = "window.seen = []; const note = () => { const at = (id) => document.getElementById(id).value; \
         const waits = document.querySelector('.verdict').innerText.includes('below follows'); \
         const drawn = document.querySelector('.grip[data-pulley=\"4\"]').getAttribute('cx'); \
         const state = [waits, at('pulley-x') + ' ' + at('wrap-5'), drawn]; const last = seen[seen.length - 1]; \
         if (String(last) !== String(state)) seen.push(state); requestAnimationFrame(note) }; note()";
    phone.script::<()>(watch, Vec::new())?;
    let [x, y] = phone.touch_down(".grip[data-pulley='4']")?;
    for step in 1..=6 {
        phone.touch_move([x + 6.0 * f64::from(step), y])?;
    }
    // The finger is still down.
    phone.until("the numbers of the new place", || {
        Ok(((phone.result("wrap-5")? - wrap).abs() > 1e-3).then_some(()))
    })?;
    phone.until_text("output.verdict", "as drawn")?;
    ensure!(phone.field("pulley-x")? != "55");
    let seen: Vec<(bool, String, String)> = phone.script("return window.seen", Vec::new())?;
    ensure!(
        seen.iter().any(|(waits, ..)| *waits),
        "nothing said that numbers waited: {seen:?}"
    );
    // Numbers that are not said to wait belong to the pulley as drawn.
    let settled: Vec<_> = seen.iter().filter(|(waits, ..)| !waits).collect();
    for (_, numbers, drawn) in &settled {
        let others = settled.iter().find(|other| other.1 == *numbers && other.2 != *drawn);
        ensure!(others.is_none(), "{numbers} stands for two places: {seen:?}");
    }
    phone.touch_up()
}

#[test]
fn order_side_name_and_number_of_pulleys_change_by_buttons() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    let length = phone.result("effective-length")?;

    // Later and earlier again: the panel stays on the pulley, and so does the focus.
    phone.tap("#pulley-4")?;
    phone.tap("#later")?;
    phone.until_text(".panel h2", "Pulley 5 of 6")?;
    ensure!(phone.field("pulley-name")? == "idler");
    phone.until_true(
        "the focus on the button",
        "return document.activeElement.id === 'later'",
    )?;
    phone.tap("#earlier")?;
    phone.until_text(".panel h2", "Pulley 4 of 6")?;
    phone.until_result("effective-length", length, 1e-12)?;

    // The side is a choice of two, and says which one holds.
    let back = "[name='side'][value='back']";
    let is_back = |held: bool| format!("return document.querySelector(\"{back}\").checked === {held}");
    phone.until_true("its back to the belt", &is_back(true))?;
    phone.tap("[name='side'][value='rib']")?;
    phone.until_true("its grooves to the belt", &is_back(false))?;
    phone.until("the pulley turned", || {
        Ok(phone.field("pulleys")?.contains("idler:rib:").then_some(()))
    })?;
    phone.tap(back)?;
    phone.until_result("effective-length", length, 1e-12)?;

    // The tensioner's and the loads' texts go along with a new name, typed letter by letter.
    phone.tap("#pulley-2")?;
    phone.type_into("pulley-name", "swing arm")?;
    phone.until_true(
        "the focus in the name",
        "return document.activeElement.id === 'pulley-name'",
    )?;
    ensure!(phone.field("pulley-name")? == "swing arm");
    phone.until("the tensioner renamed", || {
        Ok(phone.field("tensioner")?.starts_with("swing arm@").then_some(()))
    })?;
    phone.add_to("pulley-name", " 2")?;
    until_field(&phone, "pulley-name", "swing arm 2")?;

    // Removed and brought back, with what other fields said about it.
    phone.tap("#remove")?;
    phone.until_text(".bring", "swing arm 2 is removed")?;
    phone.until_true(
        "the focus on the way back",
        "return document.activeElement.id === 'bring-back'",
    )?;
    ensure!(phone.count(".grip")? == 5 && phone.field("tensioner")?.is_empty());
    until_gone(&phone, "#take-up-low")?;
    phone.type_into("rpm", "2500")?;
    phone.tap("#bring-back")?;
    phone.until_text(".panel h2", "Pulley 2 of 6")?;
    phone.until_result("effective-length", length, 1e-12)?;
    phone.result("take-up-low")?;
    ensure!(phone.field("rpm")? == "2500", "what was typed since is lost");

    phone.tap("#add-after")?;
    phone.until_text(".panel h2", "Pulley 3 of 7")?;
    phone.tap("#remove")?;
    phone.until_result("effective-length", length, 1e-12)?;

    // On a drive just begun it goes on counting, and stands where the belt runs over it.
    phone.tap("#begin-drive")?;
    until_gone(&phone, "#pulley-3")?;
    phone.tap("#pulley-2")?;
    phone.tap("#add-after")?;
    phone.until_text("#pulley-3", "3 pulley 3")?;
    phone.result("wrap-3")?;
    ensure!(phone.count("#pulleys-error")? == 0);
    // Down to none, and up again.
    for left in [2, 1, 0] {
        phone.tap("#pulley-1")?;
        phone.tap("#remove")?;
        until_gone(&phone, &format!("#pulley-{}", left + 1))?;
    }
    // None is none after a look at another screen, and loaded again.
    phone.tap("nav a[href^='#/convert']")?;
    phone.until_text("h1", "Convert")?;
    phone.tap("nav a[href^='#/belt']")?;
    phone.until_text("h1", "Belt")?;
    ensure!(phone.count(".grip")? == 0, "the demo drive is back");
    phone.reload()?;
    ensure!(
        phone.count("#add-pulley")? == 1 && phone.count(".grip")? == 0,
        "the demo drive is back"
    );
    phone.tap("#add-pulley")?;
    phone.until_text(".panel h2", "Pulley 1 of 1")?;
    phone.tap("#add-pulley")?;
    phone.until_text(".panel h2", "Pulley 2 of 2")?;
    phone.result("wrap-2")?;
    phone.tap("#demo-drive")?;
    phone.until_result("effective-length", length, 0.0)?;

    // By the keyboard alone: the button of a pulley, then its panel; closing leads back to it.
    let focus = "document.getElementById('pulley-6').focus()";
    phone.script::<()>(focus, Vec::new())?;
    phone.press("\u{e007}")?;
    phone.until_text(".panel h2", "Pulley 6 of 6")?;
    phone.tap(".panel-head .chip")?;
    until_gone(&phone, ".panel")?;
    phone.until_true(
        "the focus on its button",
        "return document.activeElement.id === 'pulley-6'",
    )
}

#[test]
fn everything_to_tap_is_large_enough_and_nothing_is_cut_off() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    phone.tap("#pulley-4")?;
    phone.tap(".panel .more summary")?;
    let small = "return [...document.querySelectorAll('button, input[type=text], select, summary, .grip, nav a')] \
         .filter((found) => { const box = found.getBoundingClientRect(); return box.width > 0 && (box.height < 47.9 || box.width < 47.9) }) \
         .map((found) => found.outerHTML.slice(0, 80))";
    let small: Vec<String> = phone.script(small, Vec::new())?;
    ensure!(small.is_empty(), "too small for a glove: {small:?}");
    let close = "const all = [...document.querySelectorAll('button')].filter((found) => found.offsetParent) \
         .map((found) => [found, found.getBoundingClientRect()]); \
         return all.flatMap(([one, a], place) => all.slice(place + 1).filter(([, b]) => \
             Math.max(b.left - a.right, a.left - b.right) < 7.9 && Math.max(b.top - a.bottom, a.top - b.bottom) < 7.9) \
             .map(([other]) => one.innerText + ' and ' + other.innerText))";
    let close: Vec<String> = phone.script(close, Vec::new())?;
    ensure!(close.is_empty(), "closer than 8 px: {close:?}");
    // The letters alone: Firefox counts the pale rim round them to their box.
    let letters = "const letters = (found) => { const own = found.getBBox(); const to = found.getScreenCTM(); \
         const [left, top] = [to.a * own.x + to.e, to.d * own.y + to.f]; \
         return { left, top, right: left + to.a * own.width, bottom: top + to.d * own.height } }; ";
    let cut = "const sheet = document.querySelector('.route').getBoundingClientRect(); \
         return [...document.querySelectorAll('.route text')].filter((found) => { const box = letters(found); \
             return box.left < sheet.left - .5 || box.right > sheet.right + .5 || box.top < sheet.top - .5 || box.bottom > sheet.bottom + .5 }) \
         .map((found) => found.textContent)";
    let words = "const all = [...document.querySelectorAll('.route text')].map((found) => [found.textContent, letters(found)]); \
         return all.flatMap(([one, a], place) => all.slice(place + 1).filter(([, b]) => \
             Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4) \
             .map(([other]) => one + ' on ' + other))";
    for width in [390, 320] {
        phone.make_wide(width)?;
        phone.until_true("the new width", &format!("return innerWidth === {width}"))?;
        let cut: Vec<String> = phone.script(&format!("{letters}{cut}"), Vec::new())?;
        ensure!(cut.is_empty(), "cut off at {width}: {cut:?}");
        let overlapping: Vec<String> = phone.script(&format!("{letters}{words}"), Vec::new())?;
        ensure!(overlapping.is_empty(), "at {width}: {overlapping:?}");
        phone.until_true(
            "no scrolling sideways",
            "return document.documentElement.scrollWidth <= innerWidth",
        )?;
    }
    Ok(())
}
