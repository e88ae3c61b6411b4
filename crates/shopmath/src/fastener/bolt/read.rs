//! One field's text to one quantity, with the bounds each field accepts. Beyond them no workshop
//! value lies, and every calculator stays finite.

use crate::fastener::friction::FrictionRange;
use crate::fastener::heat::{ROOM, within_reach};
use crate::fastener::refusal::{Refusal, within};
use crate::fastener::si::{metres, newton_metres, radians, ratio};
use crate::fastener::spec::{Spec, Stage};
use crate::field::{FieldFault, is_bare};
use crate::quantity::fault::{Fault, Misread};
use crate::quantity::print::{self, rounded};
use crate::quantity::read::{self, Expect};
use crate::quantity::{Bounds, Kind, Quantity, Unit};
use core::f64::consts::TAU;
use uom::si::f64::{Angle, Length, Ratio, TemperatureInterval, Torque};

/// What became of a text: a value, or the sentence about it.
pub(super) type Read<T> = Result<T, FieldFault>;

/// A length between bounds in millimetres.
pub(super) fn length(key: &'static str, what: &'static str, text: &str, (low, high): (f64, f64)) -> Read<Length> {
    match value(key, text, Unit::Millimetre)? {
        Quantity::Length(read) => refused(
            key,
            within(what, read, (metres(low / 1e3), metres(high / 1e3)), Unit::Millimetre),
        ),
        _ => Err(wrong_kind(key, text, Kind::Length)),
    }
}

/// How lengths of two fields were read where one is in another unit than millimetres and the other names none.
pub(super) fn apart(texts: [(&'static str, &str); 2]) -> Option<String> {
    let [one, other] = texts.map(|(_, text)| read::value(text, Expect::field(Unit::Millimetre)).ok());
    let bare = |text: &str| is_bare(text, Unit::Millimetre);
    let unit = |text: &str| if bare(text) { " mm" } else { "" };
    let said = |at: (&'static str, &str)| [at.0, " ", at.1.trim(), unit(at.1)].concat();
    (one?.unit != other?.unit && texts.iter().any(|(_, text)| bare(text)))
        .then(|| texts.map(said))
        .map(|[one, other]| ["Read as ", &one, ", ", &other, "."].concat())
}

/// A torque above nothing; a bare number is in newton metres.
pub(super) fn torque(key: &'static str, text: &str) -> Read<Torque> {
    torque_in(Unit::NewtonMetre, key, text)
}

/// A torque above nothing; a bare number is in `unit`.
pub(crate) fn torque_in(unit: Unit, key: &'static str, text: &str) -> Read<Torque> {
    match value(key, text, unit)? {
        Quantity::Torque(read) => refused(key, checked_torque(read)),
        _ => Err(wrong_kind(key, text, Kind::Torque)),
    }
}

/// An angle up to a full turn either way.
pub(super) fn angle(key: &'static str, text: &str) -> Read<Angle> {
    match value(key, text, Unit::Degree)? {
        Quantity::Angle(read) => refused(key, within("angle", read, (radians(-TAU), radians(TAU)), Unit::Degree)),
        _ => Err(wrong_kind(key, text, Kind::Angle)),
    }
}

/// A closer tolerance than this no torque wrench has: 0.04 is meant as 4 %. None at all is an exact tool.
const CLOSEST: f64 = 0.005;

/// A tolerance, with or without a leading ±.
pub(super) fn tolerance(key: &'static str, text: &str) -> Read<Ratio> {
    let signed = ["±", "+/-", "+-", "-/+", "+"]
        .iter()
        .find_map(|sign| text.trim().strip_prefix(sign));
    let plain = signed.unwrap_or(text).trim_start();
    match value(key, plain, Unit::Percent)? {
        Quantity::Ratio(read) if read.value > 0.0 && read.value < CLOSEST => {
            let meant = (read * 100.0).max(ratio(CLOSEST)).min(ratio(0.5));
            refused(
                key,
                Err(Refusal::TooClose {
                    read: print::quantity(read.into(), Unit::Percent),
                    meant: print::quantity(meant.into(), Unit::Percent),
                }),
            )
        }
        Quantity::Ratio(read) => refused(
            key,
            within("tool tolerance", read, (ratio(0.0), ratio(0.5)), Unit::Percent),
        ),
        _ => Err(wrong_kind(key, text, Kind::Ratio)),
    }
}

/// A rise of temperature; also below nothing, for cooling. Degrees of a scale are refused, since
/// they can be meant as the temperature reached; both meanings are offered.
pub(super) fn heat(key: &'static str, text: &str) -> Read<TemperatureInterval> {
    let Quantity::TemperatureDifference(read) = value(key, text, Unit::KelvinDifference)? else {
        return Err(wrong_kind(key, text, Kind::TemperatureDifference));
    };
    let scale = Expect {
        kind: Some(Kind::Temperature),
        bare: None,
    };
    if let Ok(reached) = read::value(text, scale)
        && reached.unit != Unit::Kelvin
    {
        let celsius = reached.quantity().value_in(Unit::Celsius).unwrap_or(f64::NAN);
        let rise = |by: f64| format!("{} K", rounded(by, 0.0));
        let (up_to, by) = (rise(celsius - ROOM), rise(read.value));
        let refusal = Refusal::RiseOrTemperature {
            read: text.trim().into(),
            up_to: up_to.clone(),
            by: by.clone(),
        };
        return Err(FieldFault {
            key,
            sentence: refusal.to_string(),
            remedies: vec![up_to, by],
        });
    }
    refused(key, within_reach(read))
}

/// A coefficient of friction or a range of it.
pub(super) fn friction(key: &'static str, text: &str) -> Read<FrictionRange> {
    let bounds = read::range(text, Expect::field(Unit::Number)).map_err(|fault| match fault.misread {
        // What the grammar says of these has torques for an example.
        Misread::Backwards => field_fault(key, &Refusal::Backwards("friction")),
        Misread::NumberAlone => {
            let mut wrong = FieldFault::misread(key, text, &fault);
            wrong.sentence += " Type a coefficient or a range of it, such as 0.12 or 0.10..0.16.";
            wrong
        }
        _ => FieldFault::misread(key, text, &fault),
    })?;
    match (bounds.low.quantity(), bounds.high.quantity()) {
        (Quantity::Ratio(low), Quantity::Ratio(high)) => refused(key, FrictionRange::new(low, high)),
        _ => Err(wrong_kind(key, text, Kind::Ratio)),
    }
}

/// A spec as read.
pub(super) struct ReadSpec {
    pub(super) spec: Spec,
    /// The unit of the first torque, to show torques in.
    pub(super) unit: Unit,
    /// The unit of the last torque, which the wrench is set to and a reading compared with.
    pub(super) last_unit: Unit,
    /// Whether a figure in brackets contradicts the one before it.
    pub(super) contradicts: bool,
    /// Whether it says how the threads are lubricated, which changes no figure.
    pub(super) lubrication: bool,
}

/// A spec: stages, or a line of a manual with a label before them.
pub(super) fn spec(key: &'static str, text: &str) -> Read<ReadSpec> {
    let read = stages(text).map_err(|fault| {
        // `snug + 90`: as an angle it would be asked for its torque next.
        let begins_with_turn = |text: &String| {
            stages(text).is_ok_and(|read| read.first().is_some_and(|first| first.value.kind() == Kind::Angle))
        };
        match fault.remedies(text).as_slice() {
            [only] if begins_with_turn(only) => FieldFault {
                key,
                sentence: Refusal::AngleWithoutTorque.to_string(),
                remedies: Vec::new(),
            },
            _ => FieldFault::misread(key, text, &fault),
        }
    })?;
    let stages: Vec<Stage> = read
        .iter()
        .map(|read| stage(key, text, read.value))
        .collect::<Result<_, _>>()?;
    Ok(ReadSpec {
        spec: refused(key, Spec::new(stages))?,
        unit: read.first().map_or(Unit::NewtonMetre, |first| first.value.low.unit),
        last_unit: read
            .iter()
            .map(|read| read.value.low.unit)
            .rfind(|unit| unit.kind() == Kind::Torque)
            .unwrap_or(Unit::NewtonMetre),
        contradicts: read.iter().any(read::Stage::contradicts),
        lubrication: lubrication(text).is_some(),
    })
}

/// The word of a spec that says how the threads are lubricated: `dry`, `oiled` or the like.
pub(crate) fn lubrication(text: &str) -> Option<&'static str> {
    // Not `oil`: an oil drain plug is no oiled one.
    const WORDS: [&str; 7] = ["dry", "oiled", "lubed", "lubricated", "greased", "seize", "antiseize"];
    let mut words = text.split(|letter: char| !letter.is_ascii_alphabetic());
    let known = words.find_map(|word| WORDS.iter().find(|known| known.eq_ignore_ascii_case(word)))?;
    Some(if *known == "seize" { "anti-seize" } else { known })
}

/// The stages of a spec's text, each in the unit it was typed in.
pub(super) fn stages(text: &str) -> Result<Vec<read::Stage>, Fault> {
    let expect = Expect {
        kind: None,
        bare: Some(Unit::NewtonMetre),
    };
    let (read, limit) = match read::stages(text, expect) {
        Ok(read) => (read, read::limit_behind(text)),
        Err(fault) => match read::line(text) {
            Ok(line) => (line.stages, line.limit),
            Err(of_line) if of_line.misread == Misread::TwoValues || fault.misread == Misread::NoNumber => {
                return Err(of_line);
            }
            Err(_) => return Err(fault),
        },
    };
    let to_reach = |stage: &read::Stage| stage.value.is_range() || stage.value.kind() != Kind::Torque;
    if limit.is_some() && !read.iter().all(to_reach) {
        return Err(Fault::new(0..text.len(), Misread::Limit(print::stages(&read))));
    }
    Ok(read)
}

/// The text of a spec with a unit behind its number without one, which only the first stage can have;
/// nothing where all have theirs.
pub(super) fn with_unit(text: &str, unit: Unit) -> Option<String> {
    let text = text.trim();
    match read::stages(text, Expect { kind: None, bare: None }) {
        Err(Fault {
            place,
            misread: Misread::NoUnit { .. },
        }) => Some([text.get(..place.start)?, " ", unit.symbol(), text.get(place.end..)?].concat()),
        _ => None,
    }
}

fn stage(key: &'static str, text: &str, bounds: Bounds) -> Read<Stage> {
    match (bounds.low.quantity(), bounds.high.quantity()) {
        (Quantity::Torque(low), Quantity::Torque(high)) => Ok(Stage::Torque {
            low: refused(key, checked_torque(low))?,
            high: refused(key, checked_torque(high))?,
        }),
        (Quantity::Angle(low), Quantity::Angle(high)) => Ok(Stage::Turn {
            low: refused(key, checked_turn(low))?,
            high: refused(key, checked_turn(high))?,
        }),
        _ => Err(wrong_kind(key, text, Kind::Torque)),
    }
}

fn checked_torque(read: Torque) -> Result<Torque, Refusal> {
    let limits = (newton_metres(0.01), newton_metres(5000.0));
    within("torque", read, limits, Unit::NewtonMetre)
}

fn checked_turn(read: Angle) -> Result<Angle, Refusal> {
    within("angle", read, (radians(0.0), radians(4.0 * TAU)), Unit::Degree)
}

fn value(key: &'static str, text: &str, unit: Unit) -> Read<Quantity> {
    read::value(text, Expect::field(unit))
        .map(|typed| typed.quantity())
        .map_err(|fault| {
            let mut wrong = FieldFault::misread(key, text, &fault);
            // What reads in a list of specs may be more than one value.
            wrong
                .remedies
                .retain(|remedy| read::value(remedy, Expect::field(unit)).is_ok());
            wrong
        })
}

/// Puts the key on a refusal.
pub(crate) fn refused<T>(key: &'static str, read: Result<T, Refusal>) -> Read<T> {
    read.map_err(|refusal| field_fault(key, &refusal))
}

fn field_fault(key: &'static str, refusal: &Refusal) -> FieldFault {
    FieldFault {
        key,
        sentence: refusal.to_string(),
        remedies: refusal.remedies(),
    }
}

fn wrong_kind(key: &'static str, text: &str, expected: Kind) -> FieldFault {
    let found = read::value(text, Expect { kind: None, bare: None }).map_or(Kind::Ratio, |typed| typed.unit.kind());
    FieldFault::misread(
        key,
        text,
        &Fault::new(0..text.len(), Misread::WrongKind { expected, found }),
    )
}

#[cfg(test)]
mod tests {
    use super::super::{BoltText, resolve};

    #[test]
    fn friction_in_words_is_told_what_is_wanted() {
        for friction in ["dry", "0.12 mm", "oiled steel"] {
            let mut text = BoltText::default();
            text.set("mu", friction);
            let sentence = resolve(&text).errors.remove(0).sentence;
            assert!(sentence.ends_with("such as 0.12 or 0.10..0.16."), "{sentence}");
        }
    }

    fn wrong(spec: &str) -> (String, Vec<String>) {
        let mut text = BoltText::default();
        text.set("spec", spec);
        let fault = resolve(&text).errors.remove(0);
        (fault.sentence, fault.remedies)
    }

    #[test]
    fn a_limit_is_no_torque_to_tighten_to() {
        for (spec, torque) in [
            ("min. 40 Nm", "40 N·m"),
            ("max 40 Nm", "40 N·m"),
            ("> 40 Nm", "40 N·m"),
            (">40 Nm", "40 N·m"),
            ("≥ 40 Nm", "40 N·m"),
            ("<= 40 Nm", "40 N·m"),
            ("at least 40 Nm", "40 N·m"),
            ("Idler bolt: no more than 40 ft-lb", "40 lbf·ft"),
            ("up to 40 Nm", "40 N·m"),
            ("40 Nm max.", "40 N·m"),
            ("40 max", "40 N·m"),
            ("40 Nm (min)", "40 N·m"),
            ("min 40 Nm + 90°", "40 N·m + 90°"),
        ] {
            let (sentence, remedies) = wrong(spec);
            assert!(sentence.contains("a limit, not a torque"), "{spec}: {sentence}");
            assert_eq!(remedies, [torque], "{spec}");
        }
        for spec in ["max 40-45 Nm", "Bolt to 40 Nm", "Minimum flow bolt 40 Nm"] {
            let mut text = BoltText::default();
            text.set("spec", spec);
            assert!(resolve(&text).errors.is_empty(), "{spec}");
        }
    }

    #[test]
    fn an_angle_without_a_torque_asks_for_the_torque() {
        for spec in ["snug + 90", "snug + 90°", "snug, then 90", "snug then 90 degrees"] {
            let (sentence, remedies) = wrong(spec);
            assert!(sentence.contains("Type the torque first"), "{spec}: {sentence}");
            assert!(remedies.is_empty(), "{spec}: {remedies:?}");
        }
    }
}
