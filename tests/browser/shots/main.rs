//! Takes the pictures of the README for `cargo xtask shots`: each screen with a
//! real question on it, in both themes. Prints one line of JSON: each picture in
//! base64, by its name.

use anyhow::Result;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Map, Value, json};

/// A screen with something on it, and what must be there before the picture is taken.
struct Subject {
    name: &'static str,
    address: &'static str,
    shows: &'static str,
}

const SUBJECTS: &[Subject] = &[
    Subject {
        name: "convert",
        address: "#/convert?q=60%20N%C2%B7m",
        shows: "[data-row='lbf·ft']",
    },
    // An accessory bracket of cast aluminium: 40 mm of it under the head, 20 mm of thread.
    Subject {
        name: "bolt",
        address: "#/bolt?thread=M10&class=10.9&spec=60%20N%C2%B7m&grip=40%20mm&clamped=alsi9cu3\
                  &into=alsi9cu3&engaged=20%20mm",
        shows: "#verdict[data-verdict]",
    },
    Subject {
        name: "belt",
        address: "#/belt",
        shows: ".route .grip",
    },
    Subject {
        name: "sheet",
        address: "#/sheet/demo-larkfield",
        shows: "[data-fastener]",
    },
];

/// The themes by the names the page keeps them under.
const THEMES: [&str; 2] = ["sun", "dark"];

fn main() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.tap("#show-demo")?;
    phone.until_true(
        "the demo to be kept",
        "return document.getElementById('kept')?.dataset.kept === 'true'",
    )?;
    let mut pictures = Map::new();
    for theme in THEMES {
        choose(&phone, theme)?;
        for subject in SUBJECTS {
            show(&phone, subject)?;
            pictures.insert(format!("{}-{theme}", subject.name), picture(&phone)?);
        }
    }
    println!("{}", Value::from(pictures));
    Ok(())
}

/// Puts the theme where the page keeps it, and lets the page find it there.
fn choose(phone: &Phone, theme: &str) -> Outcome {
    let keep = "localStorage.setItem('fenderside.theme', arguments[0])";
    phone.script::<()>(keep, vec![json!(theme)])?;
    phone.reload()?;
    let chosen = format!("return document.documentElement.dataset.theme === '{theme}'");
    phone.until_true(theme, &chosen)
}

/// Opens the subject and waits until it is there. Once the page is kept, the mark in its header
/// says the same in every picture.
fn show(phone: &Phone, subject: &Subject) -> Outcome {
    phone.open(subject.address)?;
    phone.until_kept()?;
    let there = format!("return !!document.querySelector(\"{}\")", subject.shows);
    phone.until_true(subject.shows, &there)
}

/// The screen at one dot per point, though the phone has two: the README shows it
/// smaller than this, and the full picture weighs three times as much.
fn picture(phone: &Phone) -> Result<Value> {
    let screen = json!({ "width": 390, "height": 844, "deviceScaleFactor": 1, "mobile": true });
    phone.devtools("Emulation.setDeviceMetricsOverride", screen)?;
    let mut taken = phone.devtools("Page.captureScreenshot", json!({ "format": "png" }))?;
    Ok(taken["data"].take())
}
