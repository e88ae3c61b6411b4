//! Texts that do not read yet and can still come to read by typing on: no reason for an alarm.

use super::read;
use crate::fastener::refusal::Refusal;
use crate::fastener::{class_table, thread_text};
use crate::quantity::fault::Misread;
use crate::quantity::spelling::fold;
use crate::quantity::{Kind, Unit};

/// A longer text is pasted rather than typed, bytes.
const LONGEST: usize = 100;
/// Ends that make a readable spec of a figure without a unit, a joint without its second figure, or
/// a range whose second end is begun.
const ENDS: &[&str] = &["°", "1°", "0", " N·m", " 5000 N·m"];
/// Units offered for one that is begun.
const MOST_UNITS: usize = 2;
/// Words that join stages or the ends of a range.
const JOINTS: &[&str] = &["then", "plus", "to"];

/// Whole texts that begin as the unfinished one does, as far as they can be listed; nothing for a
/// text that is wrong however it goes on.
pub(super) fn completions(key: &'static str, text: &str) -> Option<Vec<String>> {
    let (found, goes_on): (Vec<&str>, bool) = match key {
        "thread" if matches!(thread_text::read(text), Err(Refusal::ClassInThread { .. })) => return None,
        "thread" => (
            thread_text::completions(text),
            reads_on(text, "", &["0", "10"], |text| thread_text::read(text).is_ok()),
        ),
        "class" => (class_table::completions(text), false),
        // Which of two numbers is meant has to be asked at once.
        "spec" if matches!(read::stages(text), Err(fault) if matches!(fault.misread, Misread::AmbiguousComma { .. })) =>
        {
            return None;
        }
        // Without a figure it is a label at most, and any word can be one.
        "spec" if text.len() < LONGEST && text.contains(|letter: char| letter.is_ascii_digit()) => {
            return spec_goes_on(text);
        }
        _ => return None,
    };
    (goes_on || !found.is_empty()).then(|| found.into_iter().map(Into::into).collect())
}

/// As [`completions`], for a spec. What ends in a word that begins neither a unit nor a joint costs no
/// reading at all: this runs at every keystroke.
fn spec_goes_on(text: &str) -> Option<Vec<String>> {
    let open = text.rfind(['(', '[']) > text.rfind([')', ']']);
    let close = if open { ")" } else { "" };
    let reads = |text: &str| read::spec("spec", text).is_ok();
    let unit = tail(text, |letter| letter.is_ascii_digit() || "°+()[]".contains(letter));
    let joint = tail(text, char::is_whitespace);
    let units = units_begun(unit);
    let before = text.strip_suffix(unit).unwrap_or(text).trim_end();
    let whole = |unit: &Unit| format!("{before} {}{close}", unit.symbol());
    let whole: Vec<String> = units
        .iter()
        .map(whole)
        .filter(|text| reads(text))
        .take(MOST_UNITS)
        .collect();
    if !whole.is_empty() {
        return Some(whole);
    }
    let goes_on = if !joint.is_empty() && JOINTS.iter().any(|word| word.starts_with(joint)) {
        reads_on(
            text.strip_suffix(joint).unwrap_or(text),
            close,
            &["+ 1°", "- 5000 N·m"],
            reads,
        )
    } else {
        (open || !text.ends_with(char::is_alphabetic)) && reads_on(text, close, ENDS, reads)
    };
    goes_on.then(Vec::new)
}

/// What stands behind the last of some letters.
fn tail(text: &str, last: impl Fn(char) -> bool) -> &str {
    text.rsplit(last).next().unwrap_or_default()
}

/// The units of a stage that begin so: those of Convert's rows where there are such. None for a text that
/// is one already.
fn units_begun(text: &str) -> Vec<Unit> {
    let begun = fold(text);
    let of_stage = |unit: &Unit| matches!(unit.kind(), Kind::Torque | Kind::Angle);
    let begins = |unit: &Unit| unit.spellings().any(|spelling| spelling.starts_with(&begun));
    let is_whole = |unit: &Unit| unit.spellings().any(|spelling| spelling == begun);
    let is_row = |unit: &Unit| unit.kind().rows().any(|row| row == *unit);
    let all = || Unit::all().filter(of_stage);
    if begun.is_empty() || all().any(|unit| is_whole(&unit)) {
        return Vec::new();
    }
    let (rows, others): (Vec<Unit>, Vec<Unit>) = all().filter(begins).partition(is_row);
    if rows.is_empty() { others } else { rows }
}

/// Whether the text reads with one of the ends, and what closes it, behind it.
fn reads_on(text: &str, close: &str, ends: &[&str], reads: impl Fn(&str) -> bool) -> bool {
    ends.iter().any(|end| reads(&format!("{text}{end}{close}"))) || reads(&format!("{text}{close}"))
}

#[cfg(test)]
mod tests {
    use super::super::{BoltText, resolve};

    fn state(key: &str, text: &str) -> (usize, usize) {
        let mut typed = BoltText::default();
        typed.set(key, text);
        let resolved = resolve(&typed);
        let errors = resolved.errors.iter().filter(|error| error.key == key).count();
        (errors, resolved.unfinished.len())
    }

    #[test]
    fn typing_a_right_text_never_alarms() {
        for (key, text) in [
            ("thread", "M10x1.25"),
            ("thread", "m10 x 1,25"),
            ("thread", "M10×1.25×40"),
            ("thread", "M8-1"),
            ("thread", "3/8-16 UNC"),
            ("thread", "3/8 UNF"),
            ("thread", "#10-24"),
            ("thread", "10-32"),
            ("class", "8.8"),
            ("class", "10,9"),
            ("class", "grade 8"),
            ("class", "A2-70"),
            ("spec", "60 N·m"),
            ("spec", "60Nm"),
            ("spec", "60 N-m"),
            ("spec", "44 ft-lb"),
            ("spec", "44 lbf·ft"),
            ("spec", "44 lb-ft"),
            ("spec", "300 in-lb"),
            ("spec", "6.1 kgf·m"),
            ("spec", "10 Nm + 90°"),
            ("spec", "10 Nm + 90 deg"),
            ("spec", "20 Nm then 1/4 turn"),
            ("spec", "20 Nm plus 3 clicks"),
            ("spec", "20 Nm + 2 flats"),
            ("spec", "35-45 N·m"),
            ("spec", "35 to 45 ft-lb"),
            ("spec", "20 N·m (15 lbf·ft) + 60°"),
        ] {
            for (end, _) in text.char_indices().skip(1) {
                let (errors, unfinished) = state(key, &text[..end]);
                assert_eq!(errors, unfinished, "{key} alarms at “{}”", &text[..end]);
            }
            assert_eq!(state(key, text), (0, 0), "{text}");
        }
    }

    #[test]
    fn a_wrong_text_is_not_taken_for_an_unfinished_one() {
        for (key, text) in [
            ("thread", "M10x1.3"),
            ("thread", "M11"),
            ("thread", "3/8-18"),
            ("thread", "bolt"),
            ("thread", "M8-8.8"),
            ("class", "B7"),
            ("class", "10.9 zinc"),
            ("class", "7.7"),
            ("spec", "60 MPa"),
            ("spec", "tight"),
            ("spec", "1,234 Nm"),
            ("spec", "1,234"),
            ("spec", "45-35 Nm"),
            ("spec", "-5 Nm"),
            ("spec", "90°"),
            ("spec", "60 Nmn"),
            ("spec", "Inner 20 Nm Outer 90°"),
            ("spec", "30 Nm 60 Nm"),
            ("grip", "4"),
            ("grip", "4 k"),
        ] {
            let wrong = usize::from(text != "4");
            assert_eq!(state(key, text), (wrong, 0), "{key}: {text}");
        }
    }

    #[test]
    fn what_can_be_listed_is_offered_and_reads() {
        for (key, text, offered) in [
            ("thread", "M10x", &["M10×1.5", "M10×1.25", "M10×1"][..]),
            ("thread", "3/8-", &["3/8-16 UNC", "3/8-24 UNF"]),
            (
                "thread",
                "10",
                &["M10×1.5", "M10×1.25", "M10×1", "#10-24 UNC", "#10-32 UNF"],
            ),
            ("class", "8", &["8.8", "grade 8"]),
            ("class", "a", &["A2-70", "A4-70", "A2-80", "A4-80"]),
            ("spec", "60 N", &["60 N·m"]),
            ("spec", "20 lb", &["20 lbf·ft", "20 lbf·in"]),
            ("spec", "20 Nm + 90 d", &["20 Nm + 90 °"]),
        ] {
            let mut typed = BoltText::default();
            typed.set(key, text);
            let resolved = resolve(&typed);
            assert_eq!(resolved.unfinished, [key]);
            assert_eq!(resolved.errors[0].remedies, offered, "{text}");
            for whole in offered {
                assert_eq!(state(key, whole), (0, 0), "{whole}");
            }
        }
    }
    #[test]
    fn a_class_out_of_place_or_not_known_is_offered_as_it_can_be_typed() {
        for (key, text, offered) in [
            ("thread", "M10x1.25-10.9", &["M10x1.25"][..]),
            ("class", "10,9 zinc", &["10.9"]),
            ("class", "grade 8.8", &["8.8"]),
            ("class", "A1-50", &["A2-70", "A4-70", "A2-80", "A4-80"]),
            ("class", "no marks", &["4.6", "grade 2"]),
            ("class", "B7", &[]),
        ] {
            let mut typed = BoltText::default();
            typed.set(key, text);
            let error = resolve(&typed).errors.remove(0);
            assert_eq!(
                (error.key, error.remedies),
                (key, offered.iter().map(|&text| text.to_owned()).collect()),
                "{text}"
            );
            for whole in offered {
                assert_eq!(state(key, whole), (0, 0), "{whole}");
            }
        }
    }
}
