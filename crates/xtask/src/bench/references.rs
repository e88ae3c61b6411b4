//! What the page is measured against, made in the same run: the smallest program of the same yew, the
//! calculators without a page, and a page with one field and no program at all.

use crate::tools::{self, Tools};
use crate::{page, paths};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};

/// The built references.
pub(super) struct References {
    /// Hello world in yew, through the same pipeline.
    pub(super) hello: PathBuf,
    /// The core with what a page calls of it, through the same pipeline.
    pub(super) core: PathBuf,
    /// One field in plain HTML, with the same service worker.
    pub(super) empty: PathBuf,
}

/// Builds both under `target/bench`.
pub(super) fn build(tools: &Tools) -> Result<References> {
    let home = paths::target().join("bench");
    Ok(References {
        hello: program(tools, &home.join("hello"), HELLO_MAIN, &yew()?)?,
        core: program(tools, &home.join("core"), CORE_MAIN, &core())?,
        empty: empty(&home.join("empty"))?,
    })
}

const HELLO_MAIN: &str = r#"//! The smallest program of this yew.
use yew::prelude::*;

#[component]
fn App() -> Html {
    html! { <h1>{ "Hello" }</h1> }
}

fn main() {
    yew::Renderer::<App>::new().render();
}
"#;

/// Each result is handed out whole, so that nothing of it can be left out.
const CORE_MAIN: &str = r#"//! The calculators and sheets, without a page.
use shopmath::drive::bench::{self, DriveText};
use shopmath::fastener::bolt::{self, BoltText};
use shopmath::sheet::{Sheet, assess, code, csv, due, fields, file, from_list, head, link, merge, order, record};
use shopmath::{convert, quantity::print, result::Finding, tools::Tools};
use wasm_bindgen::prelude::*;

fn out<T>(result: T) -> *const u8 {
    core::ptr::from_ref(Box::leak(Box::new(result))).cast()
}

fn typed(text: &str) -> impl Iterator<Item = (&str, &str)> {
    text.lines().filter_map(|line| line.split_once('='))
}

fn shown(finding: &Finding) -> Vec<String> {
    finding.amount.ends().map(|(_, amount)| print::number(amount, finding.unit, finding.style)).collect()
}

#[wasm_bindgen]
pub fn convert_text(text: &str) -> *const u8 {
    let read = convert::line(text, Tools::Both);
    let read = read.map_err(|fault| (fault.sentence(text), fault.remedies(text)));
    out((convert::elsewhere(text), convert::words(text, false), read))
}

#[wasm_bindgen]
pub fn bolt_text(text: &str) -> *const u8 {
    let mut entries = BoltText::default();
    typed(text).for_each(|(key, text)| {
        let _ = entries.set(key, text);
    });
    let resolved = bolt::resolve(&entries);
    let found = bolt::assess(&resolved);
    let numbers: Vec<_> = found.sections.iter().flat_map(|section| &section.findings).map(shown).collect();
    out((found, resolved, numbers, bolt::field::FIELDS))
}

#[wasm_bindgen]
pub fn belt_text(text: &str) -> *const u8 {
    let mut entries = DriveText::demo();
    typed(text).for_each(|(key, text)| {
        let _ = entries.set(key, text);
    });
    out((bench::assess(bench::resolve(&entries)), &bench::FIELDS))
}

#[wasm_bindgen]
pub fn sheet_text(text: &str) -> *const u8 {
    let sheets = match file::import(text.as_bytes()) {
        Ok(sheets) => sheets,
        Err(fault) => return out(fault.to_string()),
    };
    let of_one = |sheet: &Sheet| {
        let found = assess::assess(sheet, Tools::Both, None);
        let head = head::Head::of(sheet, found.complete());
        let times: Vec<_> = sheet.intervals.iter().map(|row| due::due(row, &sheet.odometer, None)).collect();
        let lists = [csv::fasteners(sheet), csv::parts(sheet)];
        let body = link::body(sheet).ok();
        let squares = body.as_deref().and_then(code::code);
        let read = body.as_deref().map(|body| link::sheet(body.as_bytes()));
        let record = record::Record::of(sheet).map(|record| record.sheet());
        let less = order::apply(sheet, order::Action::Remove { list: order::List::Parts, id: 1 });
        (found, head, times, lists, squares, read, record, less, from_list::rows(&sheet.notes))
    };
    let all: Vec<_> = sheets.iter().map(of_one).collect();
    let file = file::export(&sheets);
    out((all, file, merge::preview_among(&[], &Default::default(), sheets), fields::HEAD))
}

fn main() {}
"#;

const INDEX: &str = r#"<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Reference</title>
<link data-trunk rel="css" href="style.css">
<link data-trunk rel="rust" data-wasm-opt="z" href="Cargo.toml">
</head>
<body></body>
</html>
"#;

const STYLE: &str = "body { font-family: sans-serif; }\n";

/// A workspace of its own with the same profile and the same versions, so that
/// the page's other crates cannot switch features on in it.
fn program(tools: &Tools, home: &Path, main: &str, needs: &str) -> Result<PathBuf> {
    let bindgen = tools::locked_version("wasm-bindgen")?;
    let profile = release_profile()?;
    fs::create_dir_all(home.join("src"))?;
    fs::write(
        home.join("Cargo.toml"),
        format!(
            "[workspace]\n\n[package]\nname = \"reference\"\nversion = \"0.1.0\"\nedition = \"2024\"\n\n\
             [dependencies]\n{needs}\nwasm-bindgen = \"={bindgen}\"\n\n[profile.release]\n{profile}"
        ),
    )?;
    fs::copy(paths::root().join("Cargo.lock"), home.join("Cargo.lock"))?;
    fs::write(home.join("src/main.rs"), main)?;
    fs::write(home.join("index.html"), INDEX)?;
    fs::write(home.join("style.css"), STYLE)?;
    let dist = home.join("dist");
    page::bundle(tools, &home.join("index.html"), &dist)?;
    page::finish(&dist, false)?;
    Ok(dist)
}

fn yew() -> Result<String> {
    let version = tools::locked_version("yew")?;
    Ok(format!("yew = {{ version = \"={version}\", features = [\"csr\"] }}"))
}

fn core() -> String {
    format!("shopmath = {{ path = {:?} }}", paths::root().join("crates/shopmath"))
}

/// The page's own release profile, whatever it says today.
fn release_profile() -> Result<String> {
    let manifest: toml::Table = fs::read_to_string(paths::root().join("Cargo.toml"))?.parse()?;
    let profile = manifest
        .get("profile")
        .and_then(|profiles| profiles.get("release"))
        .and_then(toml::Value::as_table)
        .context("the workspace's Cargo.toml has no [profile.release]")?;
    Ok(toml::to_string(profile)?)
}

const EMPTY_INDEX: &str = r#"<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Empty</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<script src="./register.js" defer></script>
</head>
<body><h1>Empty</h1><textarea id="q"></textarea></body>
</html>
"#;

/// Registers the worker and says when it is in charge, as the page does.
const EMPTY_REGISTER: &str = r#"navigator.serviceWorker.register("./sw.js");
navigator.serviceWorker.ready.then(() => { document.documentElement.dataset.offline = "ready"; });
"#;

fn empty(home: &Path) -> Result<PathBuf> {
    fs::create_dir_all(home)?;
    fs::write(home.join("index.html"), EMPTY_INDEX)?;
    fs::write(home.join("register.js"), EMPTY_REGISTER)?;
    page::finish(home, false)?;
    Ok(home.to_path_buf())
}
