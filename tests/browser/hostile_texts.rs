//! Texts that would do harm where a page takes text for markup, code, an address or a format: one
//! list for every screen. A script in one of them sets [`FLAG`] on the window.
//!
//! What a screen must do with them is said in its journeys.

use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone};
use serde_json::json;

/// What a script of [`TEXTS`] sets, had it run.
pub(crate) const FLAG: &str = "harmed";

/// The texts, none longer than an entry of a sheet may be.
pub(crate) const TEXTS: &[&str] = &[
    // Elements that run something by themselves.
    "<script>window.harmed=1</script>",
    "</script><script>window.harmed=1</script>",
    "<ScRiPt>window.harmed=1</sCrIpT>",
    "<script/x>window.harmed=1</script>",
    "<scr<script>ipt>window.harmed=1</scr</script>ipt>",
    "<script src=data:text/javascript,window.harmed=1></script>",
    "<img src=x onerror=window.harmed=1>",
    "<img src=x onerror='window.harmed=1' />",
    "<img/src=x/onerror=window.harmed=1>",
    "<image src=x onerror=window.harmed=1>",
    "<svg onload=window.harmed=1>",
    "<svg><script>window.harmed=1</script></svg>",
    "<svg><animate onbegin=window.harmed=1 attributeName=x dur=1s></svg>",
    "<svg><a xlink:href='javascript:window.harmed=1'><text x=9 y=9>tap</text></a></svg>",
    "<math><mtext><img src=x onerror=window.harmed=1></mtext></math>",
    "<iframe src='javascript:window.parent.harmed=1'></iframe>",
    "<iframe srcdoc='<script>parent.harmed=1</script>'></iframe>",
    "<object data='javascript:window.harmed=1'></object>",
    "<embed src='javascript:window.harmed=1'>",
    "<body onload=window.harmed=1>",
    "<video><source onerror=window.harmed=1></video>",
    "<audio src=x onerror=window.harmed=1>",
    "<details open ontoggle=window.harmed=1>",
    "<input autofocus onfocus=window.harmed=1>",
    "<select autofocus onfocus=window.harmed=1>",
    "<marquee onstart=window.harmed=1>bolt</marquee>",
    "<meta http-equiv=refresh content='0;url=javascript:window.harmed=1'>",
    "<base href='javascript:window.harmed=1;//'>",
    "<link rel=stylesheet href='javascript:window.harmed=1'>",
    "<style>@import 'javascript:window.harmed=1'; * { display: none }</style>",
    "<form action='javascript:window.harmed=1'><button>tap</button></form>",
    "<template><script>window.harmed=1</script></template>",
    "<noscript><p title='</noscript><img src=x onerror=window.harmed=1>'>",
    "<!--<img src='--><img src=x onerror=window.harmed=1>'>",
    "<![CDATA[<script>window.harmed=1</script>]]>",
    // Ways out of an attribute or a text.
    "\" onmouseover=\"window.harmed=1",
    "' autofocus onfocus='window.harmed=1",
    "\"><img src=x onerror=window.harmed=1>",
    "</textarea><script>window.harmed=1</script>",
    "</title></style><svg/onload=window.harmed=1>",
    "';window.harmed=1;//",
    "\\\";window.harmed=1;//",
    "&lt;script&gt;window.harmed=1&lt;/script&gt;",
    "&#60;img src=x onerror=window.harmed=1&#62;",
    "\\u003cscript\\u003ewindow.harmed=1\\u003c/script\\u003e",
    "%3Cscript%3Ewindow.harmed=1%3C/script%3E",
    "+ADw-script+AD4-window.harmed=1+ADw-/script+AD4-",
    // Addresses.
    "javascript:window.harmed=1",
    "JaVaScRiPt:window.harmed=1//%0Awindow.harmed=1",
    "java\tscript:window.harmed=1",
    "data:text/html,<script>opener.harmed=1</script>",
    "vbscript:harmed",
    "//elsewhere.example/bolt",
    "#/sheet?x=<script>window.harmed=1</script>",
    "belt=6PK1453\" onclick=\"window.harmed=1",
    // Marks of templates and formats.
    "{{constructor.constructor('window.harmed=1')()}}",
    "${window.harmed=1}",
    "<%= window.harmed=1 %>",
    "#{window.harmed=1}",
    "%s%s%n%x%p",
    "{0}{}{:?}",
    "../../../../etc/passwd",
    "a'; DROP TABLE records; --",
    "__proto__",
    "constructor",
    "null",
    "NaN",
    "-0",
    "1e999",
    // What a spreadsheet would work out.
    "=HYPERLINK(\"http://elsewhere.example\",\"bolt\")",
    "+1+cmd|' /C calc'!A0",
    "-2+3",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    "\t=1+1",
    // Letters that lead the eye astray, or a line out of its box.
    "\u{202e}gpj.eldir\u{202c} M10",
    "\u{2066}\u{202e}\u{2067} 60 N·m",
    "\u{200b}\u{200c}\u{200d}\u{feff}\u{2060}",
    "Z\u{363}\u{363}\u{363}\u{363}\u{363}\u{363}\u{363}\u{363}a\u{489}\u{489}\u{489}\u{489}\u{489}l\u{353}\u{353}\u{353}\u{353}\u{353}g\u{323}\u{323}\u{323}\u{323}o",
    "🔧🔩👩🏽‍🔧🏴‍☠️",
    "שלום עולם 60 N·m",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    "⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻⸻",
    "\u{a0}60\u{a0}N·m\u{a0}60\u{a0}N·m\u{a0}60\u{a0}N·m\u{a0}60\u{a0}N·m\u{a0}60\u{a0}N·m\u{a0}60\u{a0}N·m",
    "99999999999999999999999999999999999999999999999999999999999999999999 N·m",
    "\u{1}\u{7}\u{1b}[31mred\u{1b}[0m",
];

/// Notes what the page's policy refuses, from its first moment on. To be called before it is opened.
pub(crate) fn watch(phone: &Phone) -> Outcome {
    let source = "window.refused = []; document.addEventListener('securitypolicyviolation', \
         (event) => window.refused.push(`${event.violatedDirective} ${event.blockedURI} ${event.sample}`))";
    phone.before_page(source)
}

/// Elements and attributes that no text may become. The page has one script, of its own.
const GROWN: &str = "return [...document.querySelectorAll('script:not([src]), body script, img, image, iframe, object, embed, \
     video, audio, base, style, marquee, form[action], form:not(.form, .entries, .readings, .remarks), noscript p, math, template, select[autofocus], input[autofocus]'), \
     ...[...document.querySelectorAll('*')].filter((found) => [...found.attributes].some((attribute) => \
     /^on/i.test(attribute.name) || (/href|src|action/i.test(attribute.name) && /^\\s*(java\\s*script|vbscript|data:text|.{0,2}\\/\\/elsewhere)/i.test(attribute.value)) \
     || (found.localName === 'a' && attribute.name === 'href' && !/^#\\//.test(attribute.value) && !found.closest('.tabs')))) \
     ].map((found) => found.outerHTML.slice(0, 200))";

/// Whether the four tabs are on the screen, unless nothing but paper or large type is to be.
const TABS: &str = "const tabs = [...document.querySelectorAll('.tabs a')].map((tab) => tab.getBoundingClientRect()); \
     const instead = document.querySelector('[data-step]') || matchMedia('print').matches || window.media; \
     return Boolean(instead) || (tabs.length === 4 && tabs.every((tab) => tab.width >= 48 && tab.height >= 40 && \
     tab.left >= 0 && tab.right <= innerWidth + 1 && tab.top >= 0 && tab.bottom <= innerHeight + 1))";

/// Fails if a script has run or was stopped only by the policy, if a text has become an element, or
/// if the page has become wider than the phone.
pub(crate) fn harmless(phone: &Phone) -> Result<()> {
    let flag: bool = phone.script("return arguments[0] in window", vec![json!(FLAG)])?;
    ensure!(!flag, "a script of the text has run");
    let refused: Vec<String> = phone.script("return window.refused", Vec::new())?;
    ensure!(refused.is_empty(), "only the policy stopped it: {refused:?}");
    let grown: Vec<String> = phone.script(GROWN, Vec::new())?;
    ensure!(grown.is_empty(), "the text has become {grown:?}");
    let width: u32 = phone.script("return document.documentElement.scrollWidth", Vec::new())?;
    ensure!(width <= 390, "the page is {width} wide");
    let tabs: bool = phone.script(TABS, Vec::new())?;
    ensure!(tabs, "the tabs are not on the screen");
    Ok(())
}
