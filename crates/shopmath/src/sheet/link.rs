//! A sheet as the tail of an address: `1.` and a payload, the sheet's JSON deflated and written in
//! the letters an address leaves alone (RFC 4648, the alphabet for URLs, without padding).
//!
//! Drawing the code to scan, and splitting a long one, is the page's affair.

use super::fault::SheetFault;
use super::model::{SCHEMA, Sheet};
use super::record;
use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
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
    let body = record::Record::of(sheet)?.body;
    let text = format!(
        "{SCHEMA}.{}",
        URL_SAFE_NO_PAD.encode(compress_to_vec(body.as_bytes(), EFFORT))
    );
    let fits = body.len() <= UNPACKED && text.len() <= LETTERS;
    if fits { Ok(text) } else { Err(too_large()) }
}

/// The sheet of a link.
///
/// # Errors
/// [`SheetFault::NotALink`], [`SheetFault::NewerLink`], [`SheetFault::DamagedLink`] or
/// [`SheetFault::TooLarge`] for the link, and any fault of the sheet in it.
pub fn decode(text: &str) -> Result<Sheet, SheetFault> {
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
    let packed = URL_SAFE_NO_PAD.decode(payload).map_err(|_| SheetFault::DamagedLink)?;
    let body = decompress_to_vec_with_limit(&packed, UNPACKED).map_err(|fault| match fault.status {
        miniz_oxide::inflate::TINFLStatus::HasMoreOutput => too_large(),
        _ => SheetFault::DamagedLink,
    })?;
    record::read(&body)
}

fn too_large() -> SheetFault {
    SheetFault::TooLarge {
        what: "link",
        limit: LETTERS,
    }
}

#[cfg(test)]
mod tests {
    use super::{UNPACKED, decode, encode};
    use crate::sheet::demo;
    use base64::Engine as _;
    use base64::engine::general_purpose::URL_SAFE_NO_PAD;
    use miniz_oxide::deflate::compress_to_vec;

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
    fn what_is_packed_to_swell_is_refused() {
        let bomb = compress_to_vec(&vec![b' '; UNPACKED * 50], 9);
        let text = format!("1.{}", URL_SAFE_NO_PAD.encode(bomb));
        assert_eq!(decode(&text).unwrap_err().name(), "too-large");
    }
}
