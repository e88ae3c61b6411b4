//! What a person has set in their system: less motion, and colours of their own.
//!
//! Chromium only: both are set through its developer protocol.

use super::subjects::SUBJECTS;
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

/// Anything that moves by itself: an animation under way, one that would start, a smooth scroll.
const MOVES: &str = "
    const moves = document.getAnimations().map((found) => 'animation ' + (found.animationName ?? found.transitionProperty));
    const still = (list) => list.split(', ').every((time) => parseFloat(time) === 0);
    for (const found of document.querySelectorAll('*')) {
        const style = getComputedStyle(found);
        const wrong = style.animationName !== 'none' ? 'an animation' : !still(style.transitionDuration) ? 'a transition'
            : style.scrollBehavior === 'smooth' ? 'smooth scrolling' : null;
        if (wrong) moves.push(`${wrong} on ${found.outerHTML.slice(0, 80)}`);
    }
    return [document.querySelectorAll('*').length, moves]";

/// What can no longer be told apart in the system's colours: words and lines from what is behind
/// them, the chosen from the others, a code from its paper.
const LOST: &str = "
    const parts = (colour) => colour.match(/[\\d.]+/g).map(Number);
    const light = (colour) => parts(colour).slice(0, 3).map((part) => part / 255)
        .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
        .reduce((sum, part, place) => sum + part * [0.2126, 0.7152, 0.0722][place], 0);
    const contrast = (one, other) => {
        const [high, low] = [light(one), light(other)].sort((a, b) => b - a);
        return (high + 0.05) / (low + 0.05);
    };
    const clear = (colour) => colour === 'none' || parts(colour)[3] === 0;
    const behind = (found) => {
        for (let at = found; at; at = at.parentElement) {
            const colour = getComputedStyle(at).backgroundColor;
            if (!clear(colour)) return colour;
        }
        return getComputedStyle(document.documentElement).backgroundColor;
    };
    const seen = { words: 0, lines: 0, chosen: 0 };
    const lost = [];
    const note = (what, found) => lost.push(`${what}: ${found.outerHTML.slice(0, 90)}`);
    for (const found of document.body.querySelectorAll('*')) {
        if (!found.checkVisibility({ opacityProperty: true }) || found.closest('.spoken, .code')) continue;
        const style = getComputedStyle(found);
        const own = [...found.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
        if (own && !found.closest('svg')) {
            seen.words += 1;
            if (contrast(style.color, behind(found)) < 4.5) note('words', found);
        }
        if (found.matches('.sk, .icon path, .icon circle, .icon rect')) {
            seen.lines += 1;
            const paint = [style.stroke, style.fill].filter((colour) => !clear(colour));
            const paper = behind(found.closest('svg'));
            if (!paint.some((colour) => contrast(colour, paper) >= 3)) note('a line', found);
        }
    }
    const told = (on, off) => {
        if (!on || !off) return;
        seen.chosen += 1;
        const [a, b] = [getComputedStyle(on), getComputedStyle(off)];
        if (a.backgroundColor === b.backgroundColor && a.borderColor === b.borderColor) note('the chosen', on);
    };
    const find = (selector) => document.querySelector(selector);
    told(find('.tab[aria-current]'), find('.tab:not([aria-current])'));
    told(find('.choice-option input:checked + span'), find('.choice-option input:not(:checked) + span'));
    told(find('.chip[aria-pressed=true]'), find('.chip[aria-pressed=false]'));
    for (const field of document.querySelectorAll('main input[type=text], main select, main textarea')) {
        if (field.checkVisibility() && contrast(getComputedStyle(field).borderTopColor, behind(field.parentElement)) < 3) note('a border', field);
    }
    const code = find('.code');
    if (code) {
        const dots = getComputedStyle(code.querySelector('path')).fill;
        const paper = getComputedStyle(code).backgroundColor;
        if (light(dots) > 0.1 || light(paper) < 0.9) note(`a code of ${dots} on ${paper}`, code);
    }
    return [seen.words, seen.lines, seen.chosen, lost]";

#[test]
fn nothing_moves_for_those_who_ask_for_less_motion() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    prefer(&phone, "prefers-reduced-motion", "reduce")?;
    for subject in SUBJECTS {
        phone.go("about:blank")?;
        (subject.reach)(&phone)?;
        let (seen, moves): (usize, Vec<String>) = phone.script(MOVES, Vec::new())?;
        ensure!(seen > 30, "{}: only {seen} elements", subject.name);
        ensure!(moves.is_empty(), "{}: {moves:#?}", subject.name);
    }
    Ok(())
}

#[test]
fn the_colours_of_the_system_are_taken_over() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    // A light system and a dark one; the page's own theme must not shine through in either.
    for (system, theme) in [("light", "dark"), ("dark", "sun"), ("dark", "system")] {
        phone.open("#/convert")?;
        phone.script::<()>(
            "localStorage.setItem('fenderside.theme', arguments[0])",
            vec![json!(theme)],
        )?;
        phone.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "features": [{ "name": "forced-colors", "value": "active" }, { "name": "prefers-color-scheme", "value": system }] }),
        )?;
        phone.until_true(
            "the system's colours",
            "return matchMedia('(forced-colors: active)').matches",
        )?;
        let (mut lines, mut chosen) = (0, 0);
        for subject in SUBJECTS.iter().filter(|subject| !subject.printed) {
            phone.go("about:blank")?;
            (subject.reach)(&phone)?;
            let (words, more, told, lost): (usize, usize, usize, Vec<String>) = phone.script(LOST, Vec::new())?;
            ensure!(words > 5, "{}: only {words} texts", subject.name);
            ensure!(
                lost.is_empty(),
                "{system} system, {theme} theme, {}: {lost:#?}",
                subject.name
            );
            (lines, chosen) = (lines + more, chosen + told);
            if theme != "system" {
                phone.screenshot(&format!("forced-{system}-{}", subject.name.replace([' ', ','], "-")))?;
            }
        }
        ensure!(
            lines > 100 && chosen > 20,
            "only {lines} lines and {chosen} choices were seen"
        );
    }
    Ok(())
}

fn prefer(phone: &Phone, feature: &str, value: &str) -> Result<()> {
    let features = json!({ "features": [{ "name": feature, "value": value }] });
    phone.devtools("Emulation.setEmulatedMedia", features)?;
    phone.until_true(feature, &format!("return matchMedia('({feature}: {value})').matches"))
}
