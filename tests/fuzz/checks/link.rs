//! Links: any text, and anything that could have been packed into one.

use shopmath::sheet::link::{self, UNPACKED};
use shopmath::sheet::{Sheet, SheetFault, limits};

/// Takes the input as a link, as the packed bytes of one, and as what unpacks from one. Each is a
/// sheet that goes out as a link and comes back, or a fault with a name and a sentence.
pub fn link(input: &[u8]) {
    let text = String::from_utf8_lossy(input);
    holds(link::decode(&text));
    holds(link::sheet(input));
    if let Ok(wrapped) = link::text(input) {
        assert_eq!(link::packed(&wrapped).as_deref(), Ok(input));
        holds(link::decode(&wrapped));
    }
}

fn holds(read: Result<Sheet, SheetFault>) {
    let sheet = match read {
        Ok(sheet) => sheet,
        Err(fault) => return said(&fault),
    };
    assert_eq!(limits::check(&sheet), Ok(()));
    match link::encode(&sheet) {
        Ok(text) => assert_eq!(link::decode(&text), Ok(sheet)),
        // What was left out of the text that came is written out in full, and packed by our own
        // packer, so that it can come to more.
        Err(fault) => assert!(
            matches!(fault, SheetFault::TooLarge { .. }),
            "{fault}, of at most {UNPACKED}"
        ),
    }
}

/// Whether a fault can be told apart and read.
pub(crate) fn said(fault: &SheetFault) {
    let sentence = fault.to_string();
    assert!(!fault.name().is_empty() && sentence.ends_with('.'), "{sentence:?}");
}
