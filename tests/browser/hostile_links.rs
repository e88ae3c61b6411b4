//! Links to the calculators with every key filled with a text that would do harm in a careless page.
//! The text stands in its field, and does nothing.

use crate::hostile_texts::{TEXTS, harmless, watch};
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server, link};
use serde_json::json;
use shopmath::drive::bench;
use shopmath::fastener::bolt;
use shopmath::field::Field;

#[test]
fn convert_shows_hostile_links_as_text() -> Outcome {
    as_text("convert", &["q"])
}

#[test]
fn bolt_shows_hostile_links_as_text() -> Outcome {
    as_text("bolt", &keys(bolt::FIELDS))
}

#[test]
fn belt_shows_hostile_links_as_text() -> Outcome {
    as_text("belt", &keys(&bench::FIELDS))
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
        (
            "document.querySelector('.tabs').style.transform = 'translateY(200px)'".to_owned(),
            "tabs",
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
        // All of a screen is there, whatever part of it is open.
        phone
            .until(&format!("{text:?} in each field"), || {
                let there: Vec<String> = phone.script(HELD, vec![json!(text)])?;
                let missing: Vec<&&str> = keys.iter().filter(|key| !there.iter().any(|id| id == *key)).collect();
                Ok(missing.iter().all(|key| is_chosen(&phone, key)).then_some(()))
            })
            .with_context(|| format!("{screen} has {keys:?}"))?;
        phone.script::<()>(
            "document.querySelectorAll('details').forEach((part) => { part.open = true })",
            Vec::new(),
        )?;
        harmless(&phone).with_context(|| format!("{screen}: {text:?}"))?;
    }
    ensure!(phone.count("h1")? == 1);
    phone.close()?.1.stays_home()
}

fn keys(fields: &[Field]) -> Vec<&'static str> {
    fields.iter().map(|field| field.key).collect()
}

/// The fields that hold a text, by their ids.
const HELD: &str = "return [...document.querySelectorAll('input, textarea')].filter((field) => field.value === arguments[0]).map((field) => field.id)";

/// Whether a key has a list to choose from, which holds only what is on it.
fn is_chosen(phone: &Phone, key: &str) -> bool {
    phone
        .count(&format!("select[id='{key}']"))
        .is_ok_and(|found| found == 1)
}

/// Places of an address that are no value of a key: its screen, what follows that, a key, the sheet
/// that is shared.
#[test]
fn addresses_of_no_screen_are_harmless() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    watch(&phone)?;
    phone.open("#/convert")?;
    for text in TEXTS {
        let whole = link("convert", &[("q", text)]);
        let coded = whole.split_once('=').context("a link has a value")?.1;
        // As other programs write it, and as it is where an address can hold that.
        for tail in [coded, text] {
            for address in [
                format!("#/{tail}"),
                format!("#/convert?{tail}=1&q=35%20psi"),
                format!("#/bolt/{tail}"),
                format!("#/sheet/{tail}"),
                format!("#/s/1.{tail}"),
                format!("#/s/{tail}"),
                format!("#{tail}"),
            ] {
                phone.script::<()>("location.hash = arguments[0]", vec![json!(address)])?;
                phone.until("a screen", || Ok((phone.count("h1")? == 1).then_some(())))?;
                harmless(&phone).with_context(|| format!("at {address:?}"))?;
            }
        }
    }
    phone.open(&link("convert", &[("q", "35 psi")]))?;
    ensure!(phone.field("q")? == "35 psi");
    phone.close()?.1.stays_home()
}
