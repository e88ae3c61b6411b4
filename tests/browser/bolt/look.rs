//! Sun, gloves and one hand: contrast, sizes, distances and widths, with every section open.

use super::{FULL, at};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Server};

/// Every text of the screen with too little contrast against what lies behind it.
const FAINT: &str = "
    const channels = colour => colour.match(/[\\d.]+/g).map(Number);
    const light = ([red, green, blue]) => [red, green, blue]
        .map(value => value / 255)
        .map(value => value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)
        .reduce((sum, value, place) => sum + value * [0.2126, 0.7152, 0.0722][place], 0);
    const behind = found => {
        for (let at = found; at; at = at.parentElement) {
            const colour = channels(getComputedStyle(at).backgroundColor);
            if (colour.length === 3 || colour[3] === 1) return colour;
        }
        return [255, 255, 255];
    };
    const faint = [];
    let seen = 0;
    for (const found of document.body.querySelectorAll('*')) {
        const own = [...found.childNodes].some(node => node.nodeType === 3 && node.data.trim());
        const field = ['INPUT', 'SELECT'].includes(found.tagName) && found.type !== 'radio';
        if (!own && !field || found.closest('.spoken')) continue;
        const style = getComputedStyle(found);
        const ink = channels(found.closest('svg') ? style.fill : style.color);
        const [one, other] = [light(ink), light(behind(found))].sort((a, b) => b - a);
        seen += 1;
        if ((one + 0.05) / (other + 0.05) < 7) faint.push(found.outerHTML.slice(0, 80));
    }
    return [seen, faint]";

/// Targets too small for a gloved thumb, or too close to one another.
const TARGETS: &str = "
    const targets = [...document.querySelectorAll('button, input, select, summary, a')]
        .filter(found => found.checkVisibility({visibilityProperty: true}))
        .map(found => [found, found.getBoundingClientRect()])
        .filter(([, box]) => box.width > 0);
    const name = ([found, box]) => `${found.outerHTML.slice(0, 70)} ${box.width}×${box.height}`;
    const small = targets.filter(([, box]) => box.height < 47.99 || box.width < 47.99).map(name);
    const close = [];
    const fixed = found => found.closest('.tabs, .jumps');
    for (const [place, [one, a]] of targets.entries()) {
        for (const [other, b] of targets.slice(place + 1)) {
            if (fixed(one) !== fixed(other)) continue;
            const across = Math.max(a.left - b.right, b.left - a.right);
            const down = Math.max(a.top - b.bottom, b.top - a.bottom);
            if (Math.max(across, down) < 7.99) close.push(`${one.outerHTML.slice(0, 70)} | ${other.outerHTML.slice(0, 70)} ${across} ${down}`);
        }
    }
    return [targets.length, small, close]";

/// Results in digits smaller than promised.
const DIGITS: &str = "
    const numbers = [...document.querySelectorAll('main .number')];
    return [numbers.length, numbers.filter(found => parseFloat(getComputedStyle(found).fontSize) < 28)
        .map(found => found.parentElement.outerHTML.slice(0, 80))]";

/// Words cut off at the edge of their box.
const CUT: &str = "
    const fields = [...document.querySelectorAll('main input[type=text], main select')];
    return [fields.length, fields.filter(found => found.scrollWidth > found.clientWidth + 1).map(found => found.id)]";

#[test]
fn it_reads_in_the_sun_and_in_the_dark() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    phone.tap(".head-button")?;
    for theme in ["sun", "dark"] {
        phone.tap(&format!("input[name='theme'][value='{theme}']"))?;
        phone.until_true(
            theme,
            &format!("return document.documentElement.dataset.theme === '{theme}'"),
        )?;
        // A verdict has a plate of its own; so have a caution and an error.
        for (spec, slug) in [
            ("60 N·m", "ok"),
            ("5 N·m", "low"),
            ("150 N·m", "past-yield"),
            ("tight", ""),
        ] {
            phone.type_into("spec", spec)?;
            let wanted = if slug.is_empty() {
                ".verdict.waiting".into()
            } else {
                format!("[data-verdict='{slug}']")
            };
            phone.until(&wanted, || Ok((phone.count(&wanted)? == 1).then_some(())))?;
            let (seen, faint): (usize, Vec<String>) = phone.script(FAINT, Vec::new())?;
            ensure!(seen > 60, "only {seen} texts were seen");
            ensure!(faint.is_empty(), "{theme}, {spec}: below 7:1: {faint:#?}");
        }
        phone.type_into("spec", "30 N·m + 90°")?;
        phone.screenshot(&format!("bolt-{theme}"))?;
    }
    Ok(())
}

/// The tabs stand at the side, and the answer is in sight beside them.
#[test]
fn on_its_side_the_phone_shows_the_verdict() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")])?;
    phone.make(844, 390)?;
    phone.until_true(
        "the verdict in sight beside the tabs",
        "const word = document.querySelector('.verdict-share').getBoundingClientRect(); \
         const tabs = document.querySelector('.tabs').getBoundingClientRect(); \
         return innerHeight === 390 && scrollY === 0 && word.bottom <= innerHeight && word.left >= tabs.right \
         && tabs.height >= innerHeight - 1 && document.documentElement.scrollWidth <= innerWidth",
    )?;
    let (seen, small, close): (usize, Vec<String>, Vec<String>) = phone.script(TARGETS, Vec::new())?;
    ensure!(
        seen > 20 && small.is_empty() && close.is_empty(),
        "{seen}: {small:#?} {close:#?}"
    );
    phone.tap(".tabs a[href^='#/belt']")?;
    phone.until_text("h1", "Belt")
}

#[test]
fn it_takes_gloves_and_a_narrow_phone() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    phone.tap(".more summary")?;
    // Sections out of sight are not laid out; here they all have to be.
    let _: Option<bool> = phone.script(
        "for (const part of document.querySelectorAll('.part')) part.style.contentVisibility = 'visible'",
        Vec::new(),
    )?;
    for width in [390, 320] {
        phone.make_wide(width)?;
        phone.until_true("the width", &format!("return innerWidth === {width}"))?;
        let (seen, small, close): (usize, Vec<String>, Vec<String>) = phone.script(TARGETS, Vec::new())?;
        ensure!(seen > 90, "only {seen} targets were seen");
        ensure!(small.is_empty(), "{width}: below 48 px: {small:#?}");
        ensure!(close.is_empty(), "{width}: closer than 8 px: {close:#?}");
        let (numbers, tiny): (usize, Vec<String>) = phone.script(DIGITS, Vec::new())?;
        ensure!(
            numbers > 50 && tiny.is_empty(),
            "{width}: {numbers} numbers, below 28 px: {tiny:#?}"
        );
        let (fields, cut): (usize, Vec<String>) = phone.script(CUT, Vec::new())?;
        ensure!(
            fields == FULL.len() && (width < 390 || cut.is_empty()),
            "{width}: {fields} fields, cut off: {cut:?}"
        );
        let wide: bool = phone.script("return document.documentElement.scrollWidth > innerWidth", Vec::new())?;
        ensure!(!wide, "{width}: the screen scrolls sideways");
    }
    Ok(())
}
