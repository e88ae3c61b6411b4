//! Links to the calculators with every key filled with a text that would do harm in a careless page.
//! The text stands in its field, and does nothing.

use crate::hostile_texts::{TEXTS, harmless, watch};
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server, link};
use serde_json::json;

const CONVERT: &[&str] = &["q"];
const BOLT: &[&str] = &[
    "thread",
    "class",
    "head",
    "bearing",
    "hole",
    "spec",
    "mu",
    "mu-head",
    "tool",
    "grip",
    "shank",
    "clamped",
    "outer",
    "joint",
    "into",
    "engaged",
    "boss",
    "wrench",
    "adapter",
    "adapter-angle",
    "reading",
    "lever",
    "heat",
];
const BELT: &[&str] = &[
    "ribs",
    "profile",
    "pulleys",
    "back",
    "belt",
    "tensioner",
    "strand",
    "frequency",
    "mass",
    "loads",
    "rpm",
    "mu",
];

#[test]
fn convert_shows_hostile_links_as_text() -> Outcome {
    as_text("convert", CONVERT)
}

#[test]
fn bolt_shows_hostile_links_as_text() -> Outcome {
    as_text("bolt", BOLT)
}

#[test]
fn belt_shows_hostile_links_as_text() -> Outcome {
    as_text("belt", BELT)
}

/// The watch itself: each kind of harm, done on purpose, is noticed.
#[test]
fn harm_is_noticed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    let grow = |name: &str, attribute: &str, value: &str| {
        format!(
            "const grown = document.createElement('{name}'); grown.setAttribute('{attribute}', \"{value}\"); document.body.append(grown)"
        )
    };
    for (harm, words) in [
        ("window.harmed = 1".to_owned(), "has run"),
        (grow("img", "alt", "x"), "has become"),
        (grow("a", "href", "javascript:harmed=1"), "has become"),
        // Refused already while it is made.
        (grow("p", "onclick", "window.harmed=1"), "only the policy"),
        (
            "document.querySelector('main').style.width = '430px'".to_owned(),
            "wide",
        ),
    ] {
        phone.open("#/convert")?;
        phone.reload()?;
        harmless(&phone)?;
        phone.script::<()>(&format!("try {{ {harm} }} catch {{}}"), Vec::new())?;
        let noticed = phone.until(&harm, || Ok(harmless(&phone).err()))?;
        ensure!(noticed.to_string().contains(words), "{harm} is noticed as: {noticed}");
    }
    Ok(())
}

fn as_text(screen: &str, keys: &[&str]) -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    for text in TEXTS {
        let fields: Vec<(&str, &str)> = keys.iter().map(|key| (*key, *text)).collect();
        phone.open(&link(screen, &fields))?;
        let held = "return arguments[0].filter((id) => { const field = document.getElementById(id); return field && field.value === arguments[1] }).length";
        phone.until(&format!("{text:?} in a field"), || {
            let held: usize = phone.script(held, vec![json!(keys), json!(text)])?;
            Ok((held > 0).then_some(()))
        })?;
        harmless(&phone).with_context(|| format!("{screen}: {text:?}"))?;
    }
    ensure!(phone.count("h1")? == 1);
    Ok(())
}
