//! Every public function of the core has an example of its own, which `cargo test` runs.

use std::path::{Path, PathBuf};
use std::{fs, io};

#[test]
fn every_public_function_has_a_tested_example() {
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/shopmath/src");
    let files = files(&core).unwrap();
    assert!(files.len() > 50, "the core is not where it was: {}", core.display());
    let bare: Vec<String> = files.iter().flat_map(|file| without_example(file).unwrap()).collect();
    assert!(bare.is_empty(), "no example:\n{}", bare.join("\n"));
}

/// The sources below a folder.
fn files(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            found.extend(files(&path)?);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    Ok(found)
}

/// The public functions of a file whose documentation shows no code.
fn without_example(file: &Path) -> io::Result<Vec<String>> {
    let text = fs::read_to_string(file)?;
    let lines: Vec<&str> = text.lines().map(str::trim_start).collect();
    let is_bare = |place: &usize| {
        let above = lines[..*place].iter().rev();
        let mut documented = above.take_while(|line| line.starts_with("///") || line.starts_with("#["));
        !documented.any(|line| line.starts_with("/// ```"))
    };
    let public = |place: &usize| lines[*place].starts_with("pub fn ") || lines[*place].starts_with("pub const fn ");
    let places = (0..lines.len()).filter(public).filter(is_bare);
    let named = |place: usize| format!("{}:{}: {}", file.display(), place + 1, lines[place]);
    Ok(places.map(named).collect())
}
