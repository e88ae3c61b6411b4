//! Where the bytes of the module go, crate by crate.
//!
//! Read from the module as the compiler left it and wasm-opt made it smaller: the one that is deployed
//! has no names of functions any more. What a library makes for a type of ours counts as ours.

use super::report::Report;
use crate::tools::Tools;
use crate::{paths, run};
use anyhow::{Context, Result, ensure};
use std::collections::BTreeMap;
use std::ops::Range;
use std::path::PathBuf;
use wasmparser::{KnownCustom, Name, Parser, Payload, TypeRef};

/// Crates with less than this share of the code are added up, percent.
const SMALL: f64 = 0.7;

/// Adds a row per crate, and one for what is no code.
pub(super) fn measure(tools: &Tools, report: &mut Report) -> Result<()> {
    let module = named(tools)?;
    let bytes = Bytes::of(&std::fs::read(&module)?)?;
    let code: f64 = bytes.code.values().sum();
    ensure!(code > 0.0, "{} has no code", module.display());
    let mut crates: Vec<(&String, &f64)> = bytes.code.iter().collect();
    crates.sort_by(|one, other| other.1.total_cmp(one.1));
    let (large, small): (Vec<_>, Vec<_>) = crates.into_iter().partition(|(_, size)| **size >= code * SMALL / 100.0);
    let rest: f64 = small.iter().map(|(_, size)| **size).sum();
    let rows = large.into_iter().map(|(name, size)| (name.as_str(), *size));
    for (name, size) in rows.chain([("all other crates", rest), ("texts and tables", bytes.data)]) {
        let share = 100.0 * size / (code + bytes.data);
        report.row(
            format!("of the module before brotli: {name}"),
            size / 1000.0,
            "KB",
            None,
        );
        report.row("- its share", share, "%", None);
    }
    Ok(())
}

/// The module with the names of its functions.
fn named(tools: &Tools) -> Result<PathBuf> {
    let built = paths::target().join("wasm32-unknown-unknown/release/page.wasm");
    if !tools.wasm_opt {
        return Ok(built);
    }
    let smaller = paths::target().join("bench/named.wasm");
    let mut wasm_opt = tools.wasm_opt_program();
    wasm_opt.arg("-Oz").arg("-g").arg(&built).arg("-o").arg(&smaller);
    run::run(&mut wasm_opt)?;
    Ok(smaller)
}

/// The bytes of a module.
struct Bytes {
    code: BTreeMap<String, f64>,
    data: f64,
}

impl Bytes {
    fn of(module: &[u8]) -> Result<Self> {
        let (mut imported, mut sizes, mut names, mut data) = (0, Vec::new(), BTreeMap::new(), 0.0);
        for payload in Parser::new(0).parse_all(module) {
            match payload? {
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                    }
                }
                Payload::CodeSectionEntry(body) => sizes.push(length(&body.range())?),
                Payload::DataSection(section) => data = length(&section.range())?,
                Payload::CustomSection(section) => {
                    if let KnownCustom::Name(sections) = section.as_known() {
                        names.append(&mut functions(sections)?);
                    }
                }
                _ => {}
            }
        }
        ensure!(!names.is_empty(), "the module has no names of functions");
        let mut code = BTreeMap::new();
        for (number, size) in (imported..).zip(sizes) {
            let owner = names.get(&number).map_or("without a name", |name| owner(name));
            *code.entry(owner.to_owned()).or_default() += size;
        }
        Ok(Self { code, data })
    }
}

/// The names of functions, by number, as they stand in the source.
fn functions(sections: wasmparser::NameSectionReader<'_>) -> Result<BTreeMap<u32, String>> {
    let mut names = BTreeMap::new();
    for section in sections {
        if let Name::Function(functions) = section? {
            for function in functions {
                let function = function?;
                let name = format!("{:#}", rustc_demangle::demangle(function.name));
                names.insert(function.index, name);
            }
        }
    }
    Ok(names)
}

/// The crate a function belongs to: one of ours if it is made for a type of ours, else the first named.
fn owner(name: &str) -> &str {
    let ours = ["page", "shopmath"];
    let of_ours = |crate_name: &&&str| paths_of(name).any(|path| path == **crate_name);
    if let Some(found) = ours.iter().find(of_ours) {
        return found;
    }
    match paths_of(name).next() {
        Some("core" | "alloc" | "std" | "compiler_builtins" | "dlmalloc" | "hashbrown") | None => "standard library",
        Some("wasm_bindgen" | "js_sys" | "web_sys" | "wasm_bindgen_futures") => "wasm-bindgen, js-sys, web-sys",
        Some(found) => found,
    }
}

/// The first parts of all paths in a name, such as `yew` and `page` of `<yew::Thing<page::Type>>::call`.
fn paths_of(name: &str) -> impl Iterator<Item = &str> {
    let words = name.split(|letter: char| !letter.is_alphanumeric() && letter != '_' && letter != ':');
    words.filter_map(|word| Some(word.split_once("::")?.0).filter(|first| !first.is_empty()))
}

fn length(range: &Range<u64>) -> Result<f64> {
    let length = u32::try_from(range.end - range.start).context("a module of gigabytes")?;
    Ok(f64::from(length))
}

#[cfg(test)]
mod tests {
    use super::owner;

    #[test]
    fn a_function_belongs_to_whom_it_was_made_for() {
        let owners = [
            ("shopmath::drive::bench::assess::assess", "shopmath"),
            ("<yew::html::Inner<page::app::App> as yew::Stateful>::view", "page"),
            ("<yew::virtual_dom::VTag as yew::Reconcile>::attach", "yew"),
            ("<alloc::vec::Vec<shopmath::sheet::Part> as Drop>::drop", "shopmath"),
            ("<[u8] as core::cmp::PartialEq>::eq", "standard library"),
            ("memcpy", "standard library"),
            (
                "<web_sys::features::Element>::set_attribute",
                "wasm-bindgen, js-sys, web-sys",
            ),
            ("miniz_oxide::deflate::core::flush_block", "miniz_oxide"),
        ];
        for (name, wanted) in owners {
            assert_eq!(owner(name), wanted, "{name}");
        }
    }
}
