//! What the page is measured against, made in the same run: the smallest program
//! of the same yew, and a page with one field and no program at all.

use crate::tools::{self, Tools};
use crate::{page, paths};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};

/// The built references.
pub(super) struct References {
    /// Hello world in yew, through the same pipeline.
    pub(super) hello: PathBuf,
    /// One field in plain HTML, with the same service worker.
    pub(super) empty: PathBuf,
}

/// Builds both under `target/bench`.
pub(super) fn build(tools: &Tools) -> Result<References> {
    let home = paths::target().join("bench");
    Ok(References {
        hello: hello(tools, &home.join("hello"))?,
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

const HELLO_INDEX: &str = r#"<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Hello</title>
<link data-trunk rel="css" href="style.css">
<link data-trunk rel="rust" data-wasm-opt="z" href="Cargo.toml">
</head>
<body></body>
</html>
"#;

const HELLO_STYLE: &str = "body { font-family: sans-serif; }\n";

/// A workspace of its own with the same profile and the same versions, so that
/// the page's other crates cannot switch features on in it.
fn hello(tools: &Tools, home: &Path) -> Result<PathBuf> {
    fs::create_dir_all(home.join("src"))?;
    fs::write(home.join("Cargo.toml"), hello_manifest()?)?;
    fs::copy(paths::root().join("Cargo.lock"), home.join("Cargo.lock"))?;
    fs::write(home.join("src/main.rs"), HELLO_MAIN)?;
    fs::write(home.join("index.html"), HELLO_INDEX)?;
    fs::write(home.join("style.css"), HELLO_STYLE)?;
    let dist = home.join("dist");
    page::bundle(tools, &home.join("index.html"), &dist)?;
    page::finish(&dist, false)?;
    Ok(dist)
}

fn hello_manifest() -> Result<String> {
    let yew = tools::locked_version("yew")?;
    let bindgen = tools::locked_version("wasm-bindgen")?;
    let profile = release_profile()?;
    Ok(format!(
        "[workspace]\n\n[package]\nname = \"hello\"\nversion = \"0.1.0\"\nedition = \"2024\"\n\n\
         [dependencies]\nyew = {{ version = \"={yew}\", features = [\"csr\"] }}\n\
         wasm-bindgen = \"={bindgen}\"\n\n[profile.release]\n{profile}"
    ))
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
