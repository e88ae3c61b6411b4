//! A sheet as the tail of an address: `1.` and a payload, the sheet's JSON deflated and written in
//! the letters an address leaves alone (RFC 4648, the alphabet for URLs, without padding).
//!
//! Where a deflate is at hand already, as in a browser, [`body`] and [`text`] are the two ends of
//! [`encode`], and [`packed`] and [`sheet`] those of [`decode`]: a program that calls only them, as the
//! page, does not carry this one's, 13 KB of the module after brotli.

use super::fault::SheetFault;
use super::model::{SCHEMA, Sheet};
use super::record;
use base64ct::{Base64UrlUnpadded, Encoding as _};
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;

/// The longest link that is read, letters.
pub const LETTERS: usize = 200_000;
/// The largest sheet a link may unpack to, bytes: what is packed to swell is refused here.
pub const UNPACKED: usize = 1_000_000;
/// The deflate effort; 10 is the most.
const EFFORT: u8 = 10;

/// The text of a link, to follow `#/s/` in an address. Its length is that of the text: one byte a
/// letter.
///
/// # Errors
/// The fault of a sheet that could not be read back; [`SheetFault::TooLarge`] for one that only a
/// file can carry.
///
/// ```
/// use shopmath::sheet::{Sheet, link};
/// let sheet = Sheet::new("front-belt");
/// let text = link::encode(&sheet).unwrap();
/// assert!(text.starts_with("1."));
/// assert_eq!(link::decode(&text).unwrap(), sheet);
/// ```
pub fn encode(sheet: &Sheet) -> Result<String, SheetFault> {
    text(&compress_to_vec(body(sheet)?.as_bytes(), EFFORT))
}

/// The sheet of a link.
///
/// # Errors
/// [`SheetFault::NotALink`], [`SheetFault::NewerLink`], [`SheetFault::DamagedLink`] or
/// [`SheetFault::TooLarge`] for the link, and any fault of the sheet in it.
///
/// ```
/// use shopmath::sheet::{demo, link};
/// let text = link::encode(&demo::sheet()).unwrap();
/// assert_eq!(link::decode(&text).unwrap(), demo::sheet());
/// let fault = |text: &str| link::decode(text).unwrap_err().name();
/// assert_eq!([fault(&text[..60]), fault("2.AAAA"), fault("belt")], ["damaged-link", "newer-link", "not-a-link"]);
/// ```
pub fn decode(text: &str) -> Result<Sheet, SheetFault> {
    let body = decompress_to_vec_with_limit(&packed(text)?, UNPACKED).map_err(|fault| match fault.status {
        miniz_oxide::inflate::TINFLStatus::HasMoreOutput => too_large(),
        _ => SheetFault::DamagedLink,
    })?;
    sheet(&body)
}

/// What a link packs: the bytes to deflate, without a header (RFC 1951).
///
/// # Errors
/// The fault of a sheet that could not be read back; [`SheetFault::TooLarge`] for one of more than
/// [`UNPACKED`] bytes.
///
/// ```
/// use shopmath::sheet::{Sheet, link};
/// assert_eq!(link::body(&Sheet::new("belt")).unwrap(), r#"{"schema":1,"id":"belt","rev":0}"#);
/// assert_eq!(link::body(&Sheet::new("no name")).unwrap_err().name(), "bad-entry");
/// ```
pub fn body(sheet: &Sheet) -> Result<String, SheetFault> {
    let body = record::Record::of(sheet)?.body;
    if body.len() <= UNPACKED {
        Ok(body)
    } else {
        Err(too_large())
    }
}

/// The text of a link, from a deflated [`body`].
///
/// # Errors
/// [`SheetFault::TooLarge`] for more than [`LETTERS`] letters.
///
/// ```
/// use shopmath::sheet::link;
/// let text = link::text(b"deflated elsewhere").unwrap();
/// assert_eq!(link::packed(&text).unwrap(), b"deflated elsewhere");
/// ```
pub fn text(packed: &[u8]) -> Result<String, SheetFault> {
    let text = format!("{SCHEMA}.{}", Base64UrlUnpadded::encode_string(packed));
    if text.len() <= LETTERS {
        Ok(text)
    } else {
        Err(too_large())
    }
}

/// What is to be inflated of a link. Whoever inflates it stops past [`UNPACKED`] bytes, and says
/// [`SheetFault::DamagedLink`] where that fails.
///
/// # Errors
/// [`SheetFault::NotALink`], [`SheetFault::NewerLink`], [`SheetFault::DamagedLink`] for letters of
/// another alphabet, or [`SheetFault::TooLarge`].
///
/// ```
/// use shopmath::sheet::link::packed;
/// assert_eq!(packed("1.Zm9vYmFy").unwrap(), b"foobar"); // RFC 4648, section 10
/// assert_eq!(packed("1.Zm9v*mFy").unwrap_err().name(), "damaged-link");
/// ```
pub fn packed(text: &str) -> Result<Vec<u8>, SheetFault> {
    let (number, payload) = text.trim().split_once('.').ok_or(SheetFault::NotALink)?;
    let digits = !number.is_empty() && number.len() <= 9 && number.bytes().all(|byte| byte.is_ascii_digit());
    let number: u64 = number.parse().map_err(|_| SheetFault::NotALink)?;
    if !digits || number == 0 {
        return Err(SheetFault::NotALink);
    }
    if number > u64::from(SCHEMA) {
        return Err(SheetFault::NewerLink { found: number });
    }
    if payload.len() > LETTERS {
        return Err(too_large());
    }
    Base64UrlUnpadded::decode_vec(payload).map_err(|_| SheetFault::DamagedLink)
}

/// The sheet of an inflated link.
///
/// # Errors
/// [`SheetFault::TooLarge`] for more than [`UNPACKED`] bytes, and any fault of the sheet.
///
/// ```
/// use shopmath::sheet::{demo, link};
/// let body = link::body(&demo::sheet()).unwrap();
/// assert_eq!(link::sheet(body.as_bytes()).unwrap(), demo::sheet());
/// assert_eq!(link::sheet(&vec![b' '; link::UNPACKED + 1]).unwrap_err().name(), "too-large");
/// ```
pub fn sheet(body: &[u8]) -> Result<Sheet, SheetFault> {
    if body.len() <= UNPACKED {
        record::read(body)
    } else {
        Err(too_large())
    }
}

fn too_large() -> SheetFault {
    SheetFault::TooLarge {
        what: "link",
        limit: LETTERS,
    }
}

#[cfg(test)]
mod tests {
    use super::{LETTERS, UNPACKED, body, decode, encode, packed, sheet, text};
    use crate::sheet::{Fastener, demo};
    use base64::Engine as _;
    use base64::engine::general_purpose::URL_SAFE_NO_PAD;
    use miniz_oxide::deflate::compress_to_vec;
    use miniz_oxide::inflate::decompress_to_vec;
    use proptest::prelude::*;

    #[test]
    fn a_link_brings_the_demo_back_and_fits_an_address() {
        let text = encode(&demo::sheet()).unwrap();
        assert_eq!(decode(&text).unwrap(), demo::sheet());
        assert!(text.len() < 2000, "{} letters", text.len());
        assert!(
            text.bytes()
                .all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte))
        );
    }

    #[test]
    fn what_is_no_link_has_a_name() {
        let whole = encode(&demo::sheet()).unwrap();
        for (text, name) in [
            ("", "not-a-link"),
            ("1", "not-a-link"),
            ("+1.AAAA", "not-a-link"),
            ("0.AAAA", "not-a-link"),
            ("2.anything", "newer-link"),
            ("1.", "damaged-link"),
            ("1.****", "damaged-link"),
            (&whole[..whole.len() / 2], "damaged-link"),
        ] {
            assert_eq!(decode(text).unwrap_err().name(), name, "{text:.40}");
        }
    }

    #[test]
    fn what_is_packed_and_unpacked_elsewhere_is_the_same_link() {
        let demo = demo::sheet();
        let stored = text(&compress_to_vec(body(&demo).unwrap().as_bytes(), 0)).unwrap();
        assert_ne!(stored, encode(&demo).unwrap());
        assert_eq!(decode(&stored).unwrap(), demo);
        let unpacked = decompress_to_vec(&packed(&encode(&demo).unwrap()).unwrap()).unwrap();
        assert_eq!(sheet(&unpacked).unwrap(), demo);
    }

    #[test]
    fn each_part_keeps_to_its_limit() {
        assert_eq!(text(&vec![0; LETTERS]).unwrap_err().name(), "too-large");
        assert_eq!(
            packed(&format!("1.{}", "A".repeat(LETTERS + 1))).unwrap_err().name(),
            "too-large"
        );
        assert_eq!(sheet(&vec![b' '; UNPACKED + 1]).unwrap_err().name(), "too-large");
        let mut large = demo::sheet();
        large.notes = "x".repeat(20_000);
        let row = large.fasteners[0].clone();
        large.fasteners = (0..500)
            .map(|id| Fastener {
                id,
                readings: vec!["y".repeat(300); 9],
                ..row.clone()
            })
            .collect();
        assert_eq!(body(&large).unwrap_err().name(), "too-large");
    }

    #[test]
    fn what_is_packed_to_swell_is_refused() {
        let bomb = compress_to_vec(&vec![b' '; UNPACKED * 50], 9);
        let text = format!("1.{}", URL_SAFE_NO_PAD.encode(bomb));
        assert_eq!(decode(&text).unwrap_err().name(), "too-large");
    }

    proptest! {
        #[test]
        fn the_letters_are_those_of_another_reader(bytes in prop::collection::vec(any::<u8>(), 0..60), letters in "[A-Za-z0-9_=+/ -]{0,9}") {
            let whole = text(&bytes).unwrap();
            prop_assert_eq!(&whole[2..], &URL_SAFE_NO_PAD.encode(&bytes));
            let read = packed(&format!("1.{letters}")).ok();
            prop_assert_eq!(read, URL_SAFE_NO_PAD.decode(letters.trim_end()).ok());
        }
    }
}
