//! A text as a code that a camera reads: the squares of a QR code, without the drawing of them.
//!
//! The squares come from a library; how large a code may become is decided here. A text
//! too long for one has none.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The largest version drawn: 117 squares a side. With its margin it leaves a square 3 CSS pixels on
/// a screen 390 wide, about half a millimetre, which a phone's camera still tells apart at the
/// distance at which it gets the whole code in view. Common practice, no source.
const LARGEST: u8 = 25;
/// Up to this version, 77 squares a side, squares are large enough to spend some of them on more
/// correction. Common practice, no source.
const COMFORTABLE: u8 = 15;
/// The longest text that has a code, bytes: what version 25 holds with low correction.
pub const BYTES: usize = 1273;
/// The light squares to leave on each side; without them readers do not find the code.
pub const MARGIN: usize = 4;

/// A code: a square of squares, dark and light.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code {
    /// Squares a side, 21 to 117, without the margin.
    pub size: usize,
    dark: Vec<bool>,
}

/// The code of a text, as bytes; nothing for a text longer than [`BYTES`].
///
/// Correction is medium or better while that keeps the squares large, else low, with which some 7 %
/// of the code may be unreadable; it is raised where that makes the code no larger.
///
/// ```
/// use shopmath::sheet::code::{BYTES, code};
/// let found = code("https://example.org/#/s/1.AAAA").unwrap();
/// assert_eq!(found.size, 29);
/// assert!(found.is_dark(0, 0));
/// assert!(code(&"a".repeat(BYTES + 1)).is_none());
/// ```
#[must_use]
pub fn code(text: &str) -> Option<Code> {
    let bytes = [QrSegment::make_bytes(text.as_bytes())];
    let within = |level, largest| {
        let largest = Version::new(largest);
        QrCode::encode_segments_advanced(&bytes, level, Version::MIN, largest, None, true).ok()
    };
    let found = within(QrCodeEcc::Medium, COMFORTABLE).or_else(|| within(QrCodeEcc::Low, LARGEST))?;
    let side = 0..found.size();
    let squares = side.clone().flat_map(|y| side.clone().map(move |x| (x, y)));
    Some(Code {
        size: usize::try_from(found.size()).ok()?,
        dark: squares.map(|(x, y)| found.get_module(x, y)).collect(),
    })
}

impl Code {
    /// Whether a square is dark, counted from 0 at the upper left; all around the code is light.
    ///
    /// ```
    /// let found = shopmath::sheet::code::code("1").unwrap();
    /// // The finder of the upper left corner: a dark frame, a light one within it.
    /// assert!(found.is_dark(0, 0) && found.is_dark(6, 0) && !found.is_dark(1, 1));
    /// assert!(!found.is_dark(found.size, 0));
    /// ```
    #[must_use]
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.size && y < self.size && self.dark.get(y * self.size + x) == Some(&true)
    }

    /// The dark squares as horizontal bars `(x, y, width)`, row by row from the left, each as long
    /// as it can be, so that a drawing needs few of them.
    ///
    /// ```
    /// let found = shopmath::sheet::code::code("1").unwrap();
    /// assert_eq!(found.runs().next(), Some((0, 0, 7)));
    /// ```
    pub fn runs(&self) -> impl Iterator<Item = (usize, usize, usize)> + '_ {
        let rows = self.dark.chunks(self.size.max(1)).enumerate();
        rows.flat_map(|(y, row)| {
            let alike = row.chunk_by(|one, other| one == other);
            let placed = alike.scan(0, |next, run| {
                let x = *next;
                *next += run.len();
                Some((x, run))
            });
            placed
                .filter(|(_, run)| run.first() == Some(&true))
                .map(move |(x, run)| (x, y, run.len()))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{BYTES, Code, MARGIN, code};
    use crate::sheet::{demo, link};
    use proptest::prelude::*;

    /// Pixels of a square in the picture that the decoder is shown.
    const SCALE: usize = 3;
    /// The two bits that name a level in the code itself.
    const LOW: u16 = 0b01;
    const MEDIUM: u16 = 0b00;

    /// What a decoder that shares nothing with the encoder reads from a picture of the bars:
    /// version, level, text.
    fn read(code: &Code) -> (usize, u16, String) {
        let side = (code.size + 2 * MARGIN) * SCALE;
        let mut picture = vec![255_u8; side * side];
        for (x, y, width) in code.runs() {
            for row in (y + MARGIN) * SCALE..(y + MARGIN + 1) * SCALE {
                let left = row * side + (x + MARGIN) * SCALE;
                picture[left..left + width * SCALE].fill(0);
            }
        }
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| picture[y * side + x]);
        let grids = picture.detect_grids();
        assert_eq!(grids.len(), 1);
        let (about, text) = grids[0].decode().unwrap();
        (about.version.0, about.ecc_level, text)
    }

    fn address(letters: &str) -> String {
        format!("https://example.org/#/s/{letters}")
    }

    #[test]
    fn the_link_of_the_demo_is_read_back() {
        let text = address(&link::encode(&demo::sheet()).unwrap());
        assert_eq!(read(&code(&text).unwrap()).2, text);
    }

    #[test]
    fn correction_gives_way_where_squares_would_become_small() {
        for (bytes, version, level) in [(412, 15, MEDIUM), (413, 13, LOW), (BYTES, 25, LOW)] {
            let text = "Q".repeat(bytes);
            assert_eq!(read(&code(&text).unwrap()), (version, level, text));
        }
        assert_eq!(code(&"Q".repeat(BYTES + 1)), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20))]
        #[test]
        fn any_text_that_has_a_code_is_read_back(text in "[A-Za-z0-9_.-]{1,1273}") {
            prop_assert_eq!(read(&code(&text).unwrap()).2, text);
        }

        #[test]
        fn bars_cover_the_dark_squares_and_no_other(text in "[ -~]{0,300}") {
            let code = code(&text).unwrap();
            let mut covered = vec![0; code.size * code.size];
            for (x, y, width) in code.runs() {
                covered[y * code.size..][x..x + width].iter_mut().for_each(|times| *times += 1);
                prop_assert!(!code.is_dark(x + width, y) && (x == 0 || !code.is_dark(x - 1, y)));
            }
            for (place, times) in covered.into_iter().enumerate() {
                prop_assert_eq!(times, i32::from(code.is_dark(place % code.size, place / code.size)));
            }
        }
    }
}
