//! Tries every input that is kept in `corpus`, without the fuzzer.

use std::fs;
use std::panic::catch_unwind;
use std::path::Path;

fn replay(name: &str, check: fn(&[u8])) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus").join(name);
    let mut tried = 0;
    for entry in fs::read_dir(&folder).unwrap() {
        let path = entry.unwrap().path();
        let input = fs::read(&path).unwrap();
        assert!(
            catch_unwind(|| check(&input)).is_ok(),
            "{} does not hold",
            path.display()
        );
        tried += 1;
    }
    assert!(tried > 10, "{} holds too few inputs: {tried}", folder.display());
}

#[test]
fn kept_texts_hold() {
    replay("text", fenderside_fuzz::text);
}

#[test]
fn kept_screens_hold() {
    replay("screens", fenderside_fuzz::screens);
}

#[test]
fn kept_links_hold() {
    replay("link", fenderside_fuzz::link);
}

#[test]
fn kept_sheets_hold() {
    replay("sheet", fenderside_fuzz::sheet);
}
