//! The content security policy holds: text becomes no script, nothing of another origin comes in or
//! goes out, and the page itself never asks for what it forbids.

use crate::accessibility::subjects::SUBJECTS;
use crate::hostile_texts::watch;
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

/// Ways to make a script or markup of a text, by Trusted Types closed to all.
const TEXTS_INTO_CODE: &[&str] = &[
    "document.body.innerHTML = text",
    "document.body.outerHTML = text",
    "document.body.insertAdjacentHTML('beforeend', text)",
    "document.write(text)",
    "document.createElement('script').src = text",
    "document.createElement('script').text = text",
    "document.createElement('script').setAttribute('src', text)",
    "document.createElement('iframe').srcdoc = text",
    "document.createElement('object').data = text",
    "document.createRange().createContextualFragment(text)",
    "new DOMParser().parseFromString(text, 'text/html')",
    "new Worker(text)",
    "navigator.serviceWorker.register(text)",
    "(0, eval)(text)",
    "new Function(text)",
    "setTimeout(text)",
    "trustedTypes.createPolicy('default', { createHTML: (text) => text })",
    "trustedTypes.createPolicy('other', {})",
    // The page has made its one policy already, and there is no second of that name.
    "trustedTypes.createPolicy('swurl', { createScriptURL: (text) => text })",
];

#[test]
fn no_text_becomes_code() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    phone.open("#/convert")?;
    phone.until_kept()?;
    for way in TEXTS_INTO_CODE {
        // Scripts of WebDriver may do more than the page's own; what runs by a timer is the page's.
        let script = format!(
            "const text = 'window.harmed = 1'; const way = async () => {{ await ({way}) }}; \
             return new Promise((told) => setTimeout(() => way().then(() => told('nothing'), (error) => told(error.name))))"
        );
        let thrown: String = phone.script(&script, Vec::new())?;
        ensure!(
            thrown == "TypeError" || thrown == "EvalError",
            "`{way}` throws {thrown}"
        );
    }
    let harmed: bool = phone.script("return 'harmed' in window", Vec::new())?;
    ensure!(!harmed, "a text has run");
    let refused: Vec<String> = phone.script("return window.refused", Vec::new())?;
    ensure!(
        refused.len() >= TEXTS_INTO_CODE.len(),
        "{} of {} were told: {refused:?}",
        refused.len(),
        TEXTS_INTO_CODE.len()
    );
    phone.close()?.1.stays_home()
}

/// What would fetch or send something, each with the rule that forbids it; `away` is another origin.
const AWAY: &[(&str, &str)] = &[
    ("connect-src", "fetch(away).catch(() => {})"),
    ("connect-src", "navigator.sendBeacon(away, 'x')"),
    ("connect-src", "new WebSocket(away.replace('http', 'ws'))"),
    ("connect-src", "new EventSource(away)"),
    ("img-src", "grow('img', 'src', away)"),
    ("media-src", "grow('audio', 'src', away)"),
    ("frame-src", "grow('iframe', 'src', away)"),
    ("style-src-elem", "grow('link', 'href', away, { rel: 'stylesheet' })"),
    (
        "style-src-elem",
        "grow('style', 'title', 'x').textContent = '* { color: red }'",
    ),
    ("style-src-attr", "grow('p', 'style', 'color: red')"),
    ("font-src", "new FontFace('x', `url(${away})`).load().catch(() => {})"),
    (
        "base-uri",
        "document.head.append(Object.assign(document.createElement('base'), { href: away }))",
    ),
    ("form-action", "grow('form', 'action', away).submit()"),
];

#[test]
fn nothing_comes_from_elsewhere_or_goes_there() -> Outcome {
    let elsewhere = Server::start()?;
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    phone.open("#/convert")?;
    phone.until_kept()?;
    let grow = "const away = arguments[0]; window.refused.length = 0; \
         const grow = (name, attribute, value, more) => { const grown = Object.assign(document.createElement(name), more); \
         grown.setAttribute(attribute, value); document.body.append(grown); return grown }; ";
    for (rule, way) in AWAY {
        phone
            .script::<()>(
                &format!("{grow} try {{ {way} }} catch {{}}"),
                vec![json!(elsewhere.site())],
            )
            .with_context(|| format!("`{way}`"))?;
        phone
            .until(&format!("{rule} to refuse `{way}`"), || {
                let told = refused(&phone)?;
                Ok(told.iter().any(|found| found.starts_with(rule)).then_some(()))
            })
            .with_context(|| format!("{:?}", refused(&phone)))?;
    }
    phone.close()?.1.stays_home()
}

#[test]
fn the_page_itself_never_asks_for_what_is_forbidden() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    for theme in ["sun", "dark"] {
        phone.open("#/convert")?;
        let keep = "localStorage.setItem('fenderside.theme', arguments[0])";
        phone.script::<()>(keep, vec![json!(theme)])?;
        for subject in SUBJECTS {
            let context = || format!("{}, {theme}", subject.name);
            // Loaded anew: nothing of the last subject is left open.
            phone.go("about:blank")?;
            (subject.reach)(&phone).with_context(context)?;
            let shown: String = phone.script("return document.documentElement.dataset.theme", Vec::new())?;
            ensure!(shown == theme, "{} is in {shown}", context());
            if subject.printed {
                phone.look_as_on_paper(true)?;
            }
            let told = refused(&phone)?;
            ensure!(told.is_empty(), "{}: {told:?}", context());
        }
    }
    phone.close()?.1.stays_home()
}

/// What the policy has refused since the page was loaded.
fn refused(phone: &Phone) -> Result<Vec<String>> {
    phone.script("return window.refused", Vec::new())
}
