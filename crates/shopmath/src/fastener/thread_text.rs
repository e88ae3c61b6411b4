//! A thread from text as people write it: `M10`, `M10x1.25`, `m10 x 1,25`, `10x1.5`, `M10×55`,
//! `M10x1.5-6g`, `3/8-16`, `3/8"x16`, `3/8 UNF`, `#10-24`, `1/4-20 UNC-2A`. The rows are [`super::thread_table`]'s.

use super::class;
use super::refusal::Refusal;
use super::si::millimetres;
use super::thread::{Series, Standard, Thread};
use super::thread_table::threads;
use crate::quantity::read;
use core::ops::Add;
use uom::si::f64::Length;

/// A number behind the diameter from this size on is the bolt's length, for no pitch reaches it
/// (millimetre; the coarsest pitch of the table is 2.5).
const SHORTEST_BOLT: f64 = 5.0;

/// A thread as read, with the bolt's length where the designation carried one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Designation {
    /// The thread.
    pub thread: Thread,
    /// The bolt's nominal length, under the head: 55 mm of `M10×55`.
    pub length: Option<Length>,
    /// Whether the text says only `fine` and the size has several fine pitches, of which this is the coarsest.
    pub picked: bool,
}

/// Reads a thread designation; a diameter alone means its coarse thread.
///
/// # Errors
/// [`Refusal::NotAThread`], or the sizes or pitches that exist where only that part is unknown;
/// [`Refusal::ClassInThread`] where a strength class stands behind it.
///
/// ```
/// use shopmath::fastener::thread_text::read;
/// assert_eq!(read("m10 x 1,25").unwrap().thread.name, "M10×1.25");
/// assert_eq!(read("3/8 UNF").unwrap().thread.name, "3/8-24 UNF");
/// assert!(read("M10x1.3").unwrap_err().to_string().contains("M10×1.25"));
/// ```
pub fn read(text: &str) -> Result<Designation, Refusal> {
    match with_class(text) {
        Some(refusal) => Err(refusal),
        None => alone(text),
    }
}

/// What is said where a thread and its bolt's class stand in one text: `M10x1.25-10.9`, `M8 x 25 8.8`.
fn with_class(text: &str) -> Option<Refusal> {
    let splits = text.match_indices(|letter: char| letter.is_whitespace() || "-–—−‐‑".contains(letter));
    splits
        .filter_map(|(at, mark)| Some((text.get(..at)?.trim(), text.get(at + mark.len()..)?)))
        .find_map(|(thread, class)| {
            let class = class::read(class).ok()?;
            alone(thread).ok()?;
            Some(Refusal::ClassInThread {
                class,
                thread: thread.into(),
            })
        })
}

/// A designation with nothing of the bolt behind it but its length.
fn alone(text: &str) -> Result<Designation, Refusal> {
    let folded = folded(text);
    let plain = without_tolerance(&folded);
    // Two bare numbers side by side are no thread, or any two would be.
    let by = plain
        .split_once('X')
        .filter(|_| text.contains(['x', 'X', '×', '*', '✕']));
    match plain.strip_prefix('M') {
        Some(rest) => metric(text, rest.strip_suffix("MM").unwrap_or(rest)),
        // `10x1.5`: no unified thread is named by its pitch.
        None if by
            .and_then(|(_, pitch)| number(pitch))
            .is_some_and(|pitch| pitch < SHORTEST_BOLT) =>
        {
            metric(text, plain)
        }
        None if plain.contains('/') || plain.starts_with('#') => unified(text, &plain.replace('X', "-")),
        None => unified(text, plain),
    }
}

/// A designation without its tolerance class, `6g` or `2A`, or the hand of the thread: what is worked out
/// holds for all of them.
fn without_tolerance(folded: &str) -> &str {
    const ENDS: [&str; 12] = [
        "LH", "4G6G", "5G6G", "6G", "6H", "6E", "5H", "8G", "2A", "2B", "3A", "3B",
    ];
    let stripped = ENDS.iter().find_map(|end| folded.strip_suffix(end));
    stripped.map_or(folded, |rest| rest.trim_end_matches(['-', 'X']))
}

/// The threads whose designations begin as the text does; `M`, `#` and the count of threads can be
/// left out.
pub(super) fn completions(text: &str) -> Vec<&'static str> {
    let alike = |text: &str| folded(text).replace('-', "X");
    let begun = alike(text);
    let begins = |thread: &Thread| {
        let whole = alike(thread.name);
        let series = if thread.series == Series::Fine { "UNF" } else { "UNC" };
        whole.starts_with(&begun)
            || whole.trim_start_matches(['M', '#']).starts_with(&begun)
            || thread.standard == Standard::Unified && alike(thread.size).add(series).starts_with(&begun)
    };
    threads().filter(begins).map(|thread| thread.name).take(12).collect()
}

/// Upper case, one sign for "by", a point for the decimal mark, no quotation marks and no spaces; one
/// between two figures stands for "by", for it never joins them.
fn folded(text: &str) -> String {
    let mut folded = String::new();
    let mut apart = false;
    for letter in text.trim().chars() {
        if letter.is_whitespace() {
            apart = true;
            continue;
        }
        if apart && letter.is_ascii_digit() && folded.ends_with(|last: char| last.is_ascii_digit()) {
            folded.push('X');
        }
        apart = false;
        match letter {
            '"' | '″' | '”' | '“' => {}
            '×' | '*' | '✕' => folded.push('X'),
            ',' => folded.push('.'),
            '–' | '—' | '−' | '‐' | '‑' => folded.push('-'),
            '⁄' | '∕' => folded.push('/'),
            other => folded.push(other.to_ascii_uppercase()),
        }
    }
    folded
}

/// `10`, `10X1.25`, `10-1.5`, `10X55`, `10X1.5X55`, `10FINE`.
fn metric(text: &str, rest: &str) -> Result<Designation, Refusal> {
    let (rest, series) = split_series(rest);
    let mut parts = rest.split(['X', '-']);
    let size: f64 = parts
        .next()
        .and_then(number)
        .ok_or_else(|| Refusal::NotAThread(text.trim().into()))?;
    let candidates = of_size(text, Standard::Metric, |thread| same(thread.diameter, size))?;
    let mut pitch = None;
    let mut length = None;
    for part in parts {
        let value = number(part).ok_or_else(|| Refusal::NotAThread(text.trim().into()))?;
        if value >= SHORTEST_BOLT && length.is_none() {
            length = Some(millimetres(value));
        } else if pitch.is_none() && length.is_none() {
            pitch = Some((value, part));
        } else {
            return Err(Refusal::NotAThread(text.trim().into()));
        }
    }
    let found = match (pitch, series) {
        (Some((value, _)), _) => candidates.iter().find(|thread| same(thread.pitch, value)),
        (None, series) => of_series(&candidates, series.unwrap_or(Series::Coarse)),
    };
    let thread = *found.ok_or_else(|| unknown_pitch(&candidates, pitch.map_or("fine", |(_, part)| part)))?;
    let fine = candidates.iter().filter(|thread| thread.series == Series::Fine);
    Ok(Designation {
        thread,
        length,
        picked: pitch.is_none() && series == Some(Series::Fine) && fine.count() > 1,
    })
}

/// `3/8-16`, `3/8UNF`, `#10-24`, `NO.10-24`, `10-24`, `1/4-20UNC`.
fn unified(text: &str, folded: &str) -> Result<Designation, Refusal> {
    let not_a_thread = || Refusal::NotAThread(text.trim().into());
    let (rest, series) = split_series(folded);
    let rest = rest.strip_prefix("NO").unwrap_or(rest).trim_start_matches(['.', '#']);
    let (size, count) = match rest.split_once('-') {
        Some((size, count)) => (size, Some(number(count).ok_or_else(not_a_thread)?)),
        None => (rest, None),
    };
    let size = size.strip_suffix("IN").unwrap_or(size);
    let well_formed = !size.is_empty() && size.chars().all(|letter| letter.is_ascii_digit() || letter == '/');
    if !well_formed || (count.is_none() && series.is_none() && !size.contains('/') && !folded.starts_with(['#', 'N'])) {
        return Err(not_a_thread());
    }
    let candidates = of_size(text, Standard::Unified, |thread| {
        thread.size.trim_start_matches('#') == size
    })?;
    let found = match count {
        Some(count) => candidates
            .iter()
            .find(|thread| same(thread.pitch * count, 25.4) && series.is_none_or(|series| thread.series == series)),
        None => of_series(&candidates, series.unwrap_or(Series::Coarse)),
    };
    let read = rest.split_once('-').map_or(rest, |(_, count)| count);
    let thread = *found.ok_or_else(|| unknown_pitch(&candidates, read))?;
    Ok(Designation {
        thread,
        length: None,
        picked: false,
    })
}

/// Splits off a series written behind the size.
fn split_series(text: &str) -> (&str, Option<Series>) {
    const NAMES: [(&str, Series); 6] = [
        ("UNC", Series::Coarse),
        ("UNF", Series::Fine),
        ("COARSE", Series::Coarse),
        ("FINE", Series::Fine),
        ("NC", Series::Coarse),
        ("NF", Series::Fine),
    ];
    for (name, series) in NAMES {
        if let Some(rest) = text.strip_suffix(name) {
            return (rest.trim_end_matches('-'), Some(series));
        }
    }
    (text, None)
}

/// The threads of a size, or the sizes that exist.
fn of_size(text: &str, standard: Standard, is_size: impl Fn(&Thread) -> bool) -> Result<Vec<Thread>, Refusal> {
    let of_standard = || threads().filter(|thread| thread.standard == standard);
    let found: Vec<Thread> = of_standard().filter(|thread| is_size(thread)).collect();
    if found.is_empty() {
        let mut sizes: Vec<&str> = of_standard().map(|thread| thread.size).collect();
        sizes.dedup();
        return Err(Refusal::UnknownSize {
            read: text.trim().into(),
            sizes,
        });
    }
    Ok(found)
}

/// The first of a series: of several fine pitches, the coarsest.
fn of_series(candidates: &[Thread], series: Series) -> Option<&Thread> {
    candidates.iter().find(|thread| thread.series == series)
}

fn unknown_pitch(candidates: &[Thread], read: &str) -> Refusal {
    Refusal::UnknownPitch {
        size: candidates.first().map_or("", |thread| thread.size),
        read: read.into(),
        names: candidates.iter().map(|thread| thread.name).collect(),
    }
}

/// Whether a length is so many millimetres, within the rounding of a conversion.
fn same(length: Length, millimetre: f64) -> bool {
    (length - millimetres(millimetre)).abs() < millimetres(1e-9)
}

/// A plain decimal number of a size a designation can hold.
fn number(text: &str) -> Option<f64> {
    let plain = !text.is_empty() && text.chars().all(|letter| letter.is_ascii_digit() || letter == '.');
    read::decimal(text).filter(|value| plain && *value < 1e4)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn designations_as_people_write_them() {
        for (text, name, length) in [
            ("M10", "M10×1.5", None),
            ("M10x1.25", "M10×1.25", None),
            ("M10×1.5", "M10×1.5", None),
            ("m10 x 1,25", "M10×1.25", None),
            ("M 8", "M8×1.25", None),
            ("M8 fine", "M8×1", None),
            ("M14x1.25", "M14×1.25", None),
            ("M12x1", "M12×1", None),
            ("M12 fine", "M12×1.5", None),
            ("M22x1.5", "M22×1.5", None),
            ("M10-1.5", "M10×1.5", None),
            ("M10x55", "M10×1.5", Some(55.0)),
            ("M10 x 1.25 x 40", "M10×1.25", Some(40.0)),
            ("3/8-16", "3/8-16 UNC", None),
            ("3/8 UNF", "3/8-24 UNF", None),
            ("3/8", "3/8-16 UNC", None),
            ("3/8\"-24", "3/8-24 UNF", None),
            ("#10-24", "#10-24 UNC", None),
            ("10-32", "#10-32 UNF", None),
            ("No. 10-24", "#10-24 UNC", None),
            ("1/4-20 UNC", "1/4-20 UNC", None),
            ("10x1.5", "M10×1.5", None),
            ("M10x1.5-6g", "M10×1.5", None),
            ("M10 6H", "M10×1.5", None),
            ("M10x1.25 LH", "M10×1.25", None),
            ("M8x1.25mm", "M8×1.25", None),
            ("3/8 x 16", "3/8-16 UNC", None),
            ("3/8\"x24", "3/8-24 UNF", None),
            ("1/4-20 UNC-2A", "1/4-20 UNC", None),
            ("#10-32 2B", "#10-32 UNF", None),
            ("M10 1.25", "M10×1.25", None),
            ("M10 1.25 40", "M10×1.25", Some(40.0)),
            ("M12 4g6g", "M12×1.75", None),
            ("3/8 24", "3/8-24 UNF", None),
            ("#10 24", "#10-24 UNC", None),
        ] {
            let read = read(text).unwrap();
            assert_eq!(read.thread.name, name, "{text}");
            assert_eq!(read.length, length.map(millimetres), "{text}");
        }
    }

    #[test]
    fn a_fine_pitch_picked_of_several_is_known() {
        for (text, picked) in [
            ("M10 fine", true),
            ("M12 fine", true),
            ("M8 fine", false),
            ("M10x1.25 fine", false),
            ("M10", false),
            ("3/8 UNF", false),
        ] {
            assert_eq!(read(text).unwrap().picked, picked, "{text}");
        }
    }

    #[test]
    fn a_class_is_no_length_and_no_part_of_one() {
        for (text, thread, class) in [
            ("M10x1.25-10.9", "M10x1.25", "10.9"),
            ("M8-8.8", "M8", "8.8"),
            ("M8 x 25 8.8", "M8 x 25", "8.8"),
            ("M10×1.5×40 10,9", "M10×1.5×40", "10.9"),
            ("M8x25-8.8", "M8x25", "8.8"),
            ("M8 – 12.9", "M8", "12.9"),
            ("M6 A2-70", "M6", "A2-70"),
            ("3/8-16 grade 8", "3/8-16", "grade 8"),
        ] {
            let refusal = Refusal::ClassInThread {
                class,
                thread: thread.into(),
            };
            assert_eq!(read(text), Err(refusal), "{text}");
        }
    }

    #[test]
    fn every_name_of_the_table_reads_back() {
        for thread in threads() {
            assert_eq!(read(thread.name).unwrap().thread, thread, "{}", thread.name);
        }
    }

    #[test]
    fn what_is_wrong_is_named_with_what_exists() {
        for (text, sentence) in [
            (
                "M10x1.3",
                "“1.3” is no pitch of M10 in this table. Type one of M10×1.5, M10×1.25, M10×1.",
            ),
            (
                "3/8-18",
                "“18” is no pitch of 3/8 in this table. Type one of 3/8-16 UNC, 3/8-24 UNF.",
            ),
            (
                "1/4-20 UNF",
                "“20” is no pitch of 1/4 in this table. Type one of 1/4-20 UNC, 1/4-28 UNF.",
            ),
            ("M5 fine", "“fine” is no pitch of M5 in this table. Type one of M5×0.8."),
            (
                "M9",
                "“M9” is no size in the table. Type one of M4, M5, M6, M7, M8, M10, M12, M14, M16, M18, M20, M22.",
            ),
            (
                "10",
                "“10” is no thread. Type one such as M10, M10x1.25, 3/8-16, 3/8 UNF or #10-24.",
            ),
            (
                "bolt",
                "“bolt” is no thread. Type one such as M10, M10x1.25, 3/8-16, 3/8 UNF or #10-24.",
            ),
            (
                "",
                "“” is no thread. Type one such as M10, M10x1.25, 3/8-16, 3/8 UNF or #10-24.",
            ),
        ] {
            assert_eq!(read(text).unwrap_err().to_string(), sentence, "{text}");
        }
    }
}
