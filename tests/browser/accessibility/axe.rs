//! axe-core in the page: put there once per load, and what it finds as plain lines.

use anyhow::{Context, Result};
use fenderside_tests::harness::{self, Phone};
use serde_json::json;

/// The rules of WCAG 2.0 to 2.2 at A and AA and what axe holds to be good practice, and with them
/// two that it leaves out by itself: the size of targets, and contrast at AAA.
const RUN: &str = "
    const { violations, incomplete } = await axe.run(document, {
        runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
        rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
        resultTypes: ['violations', 'incomplete'],
    });
    const told = (rules) => rules.flatMap((rule) => rule.nodes.map((node) => {
        const why = [...node.any, ...node.all, ...node.none].map((check) => check.message).join(' ');
        return `${rule.id}: ${node.html.slice(0, 110)}: ${why}`;
    }));
    return [told(violations), told(incomplete)];";

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
