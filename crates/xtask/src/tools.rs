//! The project's tools, those that build the page first: found in the right version, or installed under
//! `target/tools`. Browsers are in `browser.rs`; nothing is built here.

use crate::system::{find_on_path, install, may_install};
use crate::{npm, paths, run};
use anyhow::{Context, Result, bail};
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Later versions need a newer compiler than the pinned one.
const TRUNK: &str = "0.21.14";
const CARGO_DENY: &str = "0.20.2";
/// It speaks to every Firefox of these years.
const GECKODRIVER: &str = "0.37.1";
const CARGO_FUZZ: &str = "0.13.2";
const WASM: &str = "wasm32-unknown-unknown";

/// What a build of the page needs to know about the tools it got.
pub(crate) struct Tools {
    /// The bundler.
    pub(crate) trunk: PathBuf,
    /// Whether wasm-opt is there. It comes from the npm registry, so it needs Node.
    pub(crate) wasm_opt: bool,
    /// Whether the standard library is built with the page, small.
    small_std: bool,
    search_path: OsString,
}

/// The standard library built for size and without the texts of panics, which the page shows to
/// nobody: 8 % of what is sent. The compiler's own options for it are not stable yet, so they are
/// asked for by name; the pinned compiler makes that repeatable, and without its sources the page
/// is built with the ready-made library.
const SMALL_STD: [(&str, &str); 4] = [
    ("RUSTC_BOOTSTRAP", "1"),
    ("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort"),
    ("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size"),
    (
        "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
        "-Zunstable-options -Cpanic=immediate-abort",
    ),
];

impl Tools {
    /// Trunk, set up to find the other tools before anything else of that name.
    pub(crate) fn trunk(&self) -> Command {
        let mut command = Command::new(&self.trunk);
        command
            .env("PATH", &self.search_path)
            // Looking for a newer Trunk would be a request nobody asked for.
            .env("TRUNK_SKIP_VERSION_CHECK", "true");
        if self.small_std {
            command.envs(SMALL_STD);
        }
        // Trunk reads this variable as a boolean and refuses the usual `1`.
        if std::env::var_os("NO_COLOR").is_some() {
            command.env("NO_COLOR", "true");
        }
        command
    }

    /// The program that makes a module smaller, found before anything else of that name.
    pub(crate) fn wasm_opt_program(&self) -> Command {
        let mut command = Command::new("wasm-opt");
        command.env("PATH", &self.search_path);
        command
    }
}

/// Finds or installs every tool. The second time this takes no time to speak of.
pub(crate) fn fetch() -> Result<Tools> {
    wasm_target()?;
    let small_std = library_sources()?;
    let trunk = cargo_tool("trunk", "trunk", TRUNK, &["--locked"])?;
    // Its own lock file asks for crates that no longer resolve, so no `--locked`.
    let bindgen_version = locked_version("wasm-bindgen")?;
    let bindgen = cargo_tool("wasm-bindgen-cli", "wasm-bindgen", &bindgen_version, &[])?;
    let wasm_opt = wasm_opt()?;
    let mut folders: Vec<PathBuf> = wasm_opt.iter().cloned().collect();
    folders.extend(bindgen.parent().map(Path::to_path_buf));
    if let Some(path) = std::env::var_os("PATH") {
        folders.extend(std::env::split_paths(&path));
    }
    Ok(Tools {
        trunk,
        wasm_opt: wasm_opt.is_some(),
        small_std,
        search_path: std::env::join_paths(folders).context("PATH holds a name it cannot")?,
    })
}

/// What checks licences and sources.
pub(crate) fn cargo_deny() -> Result<PathBuf> {
    cargo_tool("cargo-deny", "cargo-deny", CARGO_DENY, &["--locked"])
}

/// What the fuzzer's runtime is compiled with, installed where that is allowed.
pub(crate) fn cpp_compiler() -> Result<()> {
    let is_there = || std::env::var_os("CXX").is_some() || find_on_path("c++").is_some();
    if !is_there() && may_install() {
        install(&["g++"])?;
    }
    if !is_there() {
        bail!("no C++ compiler is here for the fuzzer. Install the package `g++` (its Debian name), or set CXX");
    }
    Ok(())
}

/// What builds a program to fuzz with.
pub(crate) fn cargo_fuzz() -> Result<PathBuf> {
    cargo_tool("cargo-fuzz", "cargo-fuzz", CARGO_FUZZ, &["--locked"])
}

/// What speaks WebDriver for Firefox.
pub(crate) fn geckodriver() -> Result<PathBuf> {
    cargo_tool("geckodriver", "geckodriver", GECKODRIVER, &["--locked"])
}

/// Rustup adds the target of `rust-toolchain.toml` by itself only when it
/// installs that toolchain or is allowed to install things unasked.
pub(crate) fn wasm_target() -> Result<()> {
    if rustlib()?.join(WASM).join("lib").is_dir() {
        return Ok(());
    }
    println!("Adding the compiler's {WASM} target");
    let mut rustup = Command::new("rustup");
    rustup.args(["target", "add", WASM]).current_dir(paths::root());
    run::run(&mut rustup).with_context(|| format!("the compiler cannot build for {WASM}; install that target for it"))
}

/// Whether the sources of the standard library are there, or could be fetched.
fn library_sources() -> Result<bool> {
    let manifest = rustlib()?.join("src/rust/library/Cargo.lock");
    if !manifest.is_file() {
        println!("Adding the sources of the standard library");
        let mut rustup = Command::new("rustup");
        rustup.args(["component", "add", "rust-src"]).current_dir(paths::root());
        if run::run(&mut rustup).is_err() {
            println!("They are not to be had here, so the page becomes about a tenth larger; it works the same.");
            return Ok(false);
        }
    }
    Ok(manifest.is_file())
}

/// Where the compiler keeps its libraries.
fn rustlib() -> Result<PathBuf> {
    let mut rustc = Command::new("rustc");
    rustc.args(["--print", "sysroot"]).current_dir(paths::root());
    Ok(PathBuf::from(run::capture(&mut rustc)?).join("lib/rustlib"))
}

/// A program from crates.io: the one on PATH if its version is right, else the
/// one under `target/tools`, installed when it is not there yet.
fn cargo_tool(package: &str, program: &str, version: &str, flags: &[&str]) -> Result<PathBuf> {
    let ours = paths::tools().join("bin").join(program);
    for candidate in [PathBuf::from(program), ours.clone()] {
        if has_version(&candidate, version) {
            return Ok(which(candidate));
        }
    }
    println!("Installing {package} {version} into target/tools; this takes some minutes, once");
    run::run(
        run::cargo()
            .args(["install", package, "--version", version, "--root"])
            .arg(paths::tools())
            .args(flags),
    )?;
    if !has_version(&ours, version) {
        bail!("{} was installed but does not say version {version}", ours.display());
    }
    Ok(ours)
}

/// `<program> --version` prints `<name> <version>`, sometimes with more behind.
fn has_version(program: &Path, version: &str) -> bool {
    run::capture(Command::new(program).arg("--version"))
        .is_ok_and(|text| text.split_whitespace().nth(1) == Some(version))
}

/// The full path of a program that PATH found, so that its folder is known.
fn which(program: PathBuf) -> PathBuf {
    if program.components().count() > 1 {
        return program;
    }
    find_on_path(&program.to_string_lossy()).unwrap_or(program)
}

/// The folder wasm-opt is in; none when there is no Node to run it.
fn wasm_opt() -> Result<Option<PathBuf>> {
    if npm::is_here() {
        return Ok(Some(npm::BINARYEN.fetch()?.join(".bin")));
    }
    println!(
        "Node.js is not here, so the page is built without wasm-opt: \
         it works the same and is about a quarter larger."
    );
    Ok(None)
}

/// The version of a crate in Cargo.lock.
pub(crate) fn locked_version(package: &str) -> Result<String> {
    let file = paths::root().join("Cargo.lock");
    let text = std::fs::read_to_string(&file).context("Cargo.lock cannot be read")?;
    let lock: toml::Table = text.parse().context("Cargo.lock is not what Cargo writes")?;
    lock.get("package")
        .and_then(toml::Value::as_array)
        .into_iter()
        .flatten()
        .find(|entry| entry.get("name").and_then(toml::Value::as_str) == Some(package))
        .and_then(|entry| entry.get("version").and_then(toml::Value::as_str))
        .map(str::to_owned)
        .with_context(|| format!("Cargo.lock names no `{package}`"))
}
