//! axe-core in the page: put there once per load, and what it finds as plain lines.

use anyhow::{Context, Result};
use fenderside_tests::harness::{self, Phone};
use serde_json::json;

/// The rules of WCAG 2.0 to 2.2 at A and AA and what axe holds to be good practice, and with them
/// two that it leaves out by itself: the size of targets, and contrast at AAA.
///
/// No rule is off and no element is left out. Contrast axe leaves open in three cases, and there it
/// is measured here, at AAA, against the nearest background: a sign that is no letter (an arrow, a
/// tick), a text of a very tall page that it takes to be under the body, which is behind all, and
/// a word in a drawing, behind which axe sees the lines of the drawing as pictures.
const RUN: &str = "
    const { violations, incomplete } = await axe.run(document, {
        runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
        rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
        resultTypes: ['violations', 'incomplete'],
    });
    const checks = (node) => [...node.any, ...node.all, ...node.none];
    const why = (node) => checks(node).map((check) => check.message
        + check.relatedNodes.map((other) => ' [' + other.html.slice(0, 60) + ']').slice(0, 2).join('')).join(' ');
    const place = (node) => JSON.stringify(document.querySelector(node.target[0])?.getBoundingClientRect() ?? null);
    const told = (rules, open) => rules.flatMap((rule) => rule.nodes.filter((node) => open(rule, node))
        .map((node) => `${rule.id}: ${node.html.slice(0, 110)}: ${why(node)} ${place(node)} of ${innerHeight}`));
    const parts = (colour) => colour.match(/[\\d.]+/g).map(Number);
    const light = (colour) => parts(colour).slice(0, 3).map((part) => part / 255)
        .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
        .reduce((sum, part, place) => sum + part * [0.2126, 0.7152, 0.0722][place], 0);
    const behind = (found) => {
        for (let at = found; at; at = at.parentElement) {
            const colour = getComputedStyle(at).backgroundColor;
            if (parts(colour)[3] !== 0) return colour;
        }
        return 'rgb(255, 255, 255)';
    };
    const isPlain = (node) => {
        const found = document.querySelector(node.target[0]);
        const style = getComputedStyle(found);
        const [high, low] = [light(found.closest('svg') ? style.fill : style.color), light(behind(found))].sort((a, b) => b - a);
        return (high + 0.05) / (low + 0.05) >= 7;
    };
    const underBody = (node) => checks(node).every((check) => check.relatedNodes.length > 0
        && check.relatedNodes.every((other) => other.html.startsWith('<body')));
    const measured = (rule, node) => rule.id.startsWith('color-contrast')
        && (node.html.startsWith('<text') || underBody(node) || checks(node).every((check) => check.data?.messageKey === 'nonBmp')) && isPlain(node);
    return [told(violations, () => true), told(incomplete, (rule, node) => !measured(rule, node))];";

/// What axe found.
#[derive(Debug, Default)]
pub(super) struct Found {
    /// What is wrong.
    pub(super) wrong: Vec<String>,
    /// What axe could not decide.
    pub(super) undecided: Vec<String>,
}

/// Puts axe into the page as it is loaded now.
pub(super) fn put(phone: &Phone) -> Result<()> {
    let file = harness::axe()?;
    let script = std::fs::read_to_string(&file).with_context(|| format!("{} cannot be read", file.display()))?;
    phone.devtools("Runtime.evaluate", json!({ "expression": script }))?;
    phone.until_true("axe in the page", "return !!window.axe")
}

/// Checks the page as it stands.
pub(super) fn run(phone: &Phone) -> Result<Found> {
    let (wrong, undecided) = phone
        .script(&format!("return (async () => {{ {RUN} }})()"), Vec::new())
        .context("axe did not run")?;
    Ok(Found { wrong, undecided })
}
