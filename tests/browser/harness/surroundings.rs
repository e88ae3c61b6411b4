//! What a journey changes around the page: what runs before it, how wide the phone is, how much
//! room there is, whether a page may copy, and the look that is meant for paper.

use super::Phone;
use super::engine::Line;
use anyhow::{Context, Result, bail};
use serde_json::{Value, json};

/// Gives the page the look it has on paper, or back the one on the screen: each rule for one of
/// the two media is made to hold or not to hold, whatever the medium is.
const MEDIUM: &str = r"
    const paper = arguments[0];
    const holds = { print: paper, screen: !paper };
    const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]).filter((rule) => rule.media);
    window.media ??= new Map(rules.map((rule) => [rule, rule.media.mediaText]));
    for (const [rule, medium] of window.media) {
        if (medium in holds) rule.media.mediaText = holds[medium] ? 'all' : 'not all';
    }
    dispatchEvent(new Event(paper ? 'beforeprint' : 'afterprint'));
    return [...window.media.values()].filter((medium) => medium === 'print').length";

impl Phone {
    /// Runs a script in this tab before anything of a page, from the next page on.
    pub fn before_page(&self, script: &str) -> Result<()> {
        match self.line() {
            Line::DevTools => {
                self.devtools("Page.enable", json!({}))?;
                self.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script }))?;
            }
            Line::BiDi(line) => {
                let function = format!("() => {{ {script} }}");
                let wanted = json!({ "functionDeclaration": function, "contexts": [self.this_tab()?] });
                line.send("script.addPreloadScript", &wanted)?;
            }
            Line::Nothing => bail!("WebKit's driver runs nothing before a page"),
        }
        Ok(())
    }

    /// Makes the phone so many points wide.
    pub fn make_wide(&self, width: u32) -> Result<()> {
        self.make(width, super::engine::HEIGHT)
    }

    /// Makes the phone so many points wide and high.
    pub fn make(&self, width: u32, height: u32) -> Result<()> {
        match self.line() {
            Line::DevTools => {
                let screen = json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true });
                self.devtools("Emulation.setDeviceMetricsOverride", screen)?;
            }
            Line::BiDi(line) => {
                let wanted = json!({ "context": self.this_tab()?, "viewport": { "width": width, "height": height }, "devicePixelRatio": 2.0 });
                line.send("browsingContext.setViewport", &wanted)?;
            }
            Line::Nothing => self.wait_on(self.browser().set_window_rect(0, 0, width, height))?,
        }
        Ok(())
    }

    /// Leaves the site no room to keep anything more, or as much as it wants. Only Chromium can be
    /// told how much that is.
    pub fn leave_room(&self, room: bool) -> Result<()> {
        let mut wanted = json!({ "origin": self.site() });
        if !room {
            wanted["quotaSize"] = json!(1);
        }
        self.devtools("Storage.overrideQuotaForOrigin", wanted).map(|_| ())
    }

    /// Lets the page copy and be asked what was copied, or does not. Only Chromium has a setting for
    /// it; in others the page is refused as that setting would.
    pub fn let_copy(&self, allowed: bool) -> Result<()> {
        if !matches!(self.line(), Line::DevTools) {
            let refuse = "delete navigator.clipboard.writeText; if (!arguments[0]) navigator.clipboard.writeText = \
                 () => Promise.reject(new DOMException('no leave to copy', 'NotAllowedError'))";
            return self.script(refuse, vec![json!(allowed)]);
        }
        let setting = if allowed { "granted" } else { "denied" };
        for name in ["clipboard-write", "clipboard-read"] {
            let origin = self.site().trim_end_matches('/');
            let wanted = json!({ "permission": { "name": name }, "setting": setting, "origin": origin });
            self.devtools("Browser.setPermission", wanted)?;
        }
        Ok(())
    }

    /// Gives the page the look it has on paper, or back the one on the screen.
    pub fn look_as_on_paper(&self, paper: bool) -> Result<()> {
        let rules: u32 = self.script(MEDIUM, vec![json!(paper)])?;
        if rules == 0 {
            bail!("the page has no rule for paper");
        }
        Ok(())
    }

    /// Sends a command of Chromium's developer protocol.
    pub fn devtools(&self, method: &str, parameters: Value) -> Result<Value> {
        if !matches!(self.line(), Line::DevTools) {
            bail!("{method} is a command that only Chromium has");
        }
        let cdp = self.browser().cdp();
        self.wait_on(cdp.send_raw(method, parameters))
            .with_context(|| format!("{method} was refused"))
    }

    /// The name WebDriver and BiDi both have for the tab in front.
    fn this_tab(&self) -> Result<String> {
        Ok(self.wait_on(self.browser().window())?.to_string())
    }
}
