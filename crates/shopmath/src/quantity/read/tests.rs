//! What people type, and what the reader makes of it.

use super::{Expect, line, range, stages, value};
use crate::quantity::fault::{Fault, Misread};
use crate::quantity::{Kind, Unit, print};
use proptest::prelude::*;

fn number(text: &str) -> f64 {
    value(text, Expect::field(Unit::Inch))
        .unwrap_or_else(|fault| panic!("{}", fault.sentence(text)))
        .value
}

#[test]
fn the_grade_of_an_oil_is_no_power() {
    for text in ["5W-30", "Engine oil 0W20", "15W-40 part synthetic"] {
        assert!(line(text).is_err(), "{text}");
    }
    for (text, high) in [("Engine oil 5W-30: 4.2 L", 4.2), ("5W-30W", 30.0), ("bulb 21W", 21.0)] {
        assert_eq!(line(text).unwrap().stages[0].value.high.value, high, "{text}");
    }
}

#[test]
fn a_fraction_without_a_unit_is_no_millimetres() {
    for (text, offered) in [
        ("1/2", ["1/2 in", "0.5 mm"]),
        ("1 5/8", ["1 5/8 in", "1.625 mm"]),
        ("½", ["½ in", "0.5 mm"]),
    ] {
        let fault = value(text, Expect::field(Unit::Millimetre)).expect_err(text);
        assert_eq!(fault.remedies(text), offered, "{}", fault.sentence(text));
        for remedy in fault.remedies(text) {
            assert!(value(&remedy, Expect::field(Unit::Millimetre)).is_ok(), "{remedy}");
        }
    }
    assert!(value("1/2 in", Expect::field(Unit::Millimetre)).is_ok());
    assert!(value("1/2", Expect::field(Unit::Inch)).is_ok());
}

fn misread(text: &str) -> Misread {
    line(text).expect_err(text).misread
}

#[test]
fn numbers_as_people_write_them() {
    for (text, expected) in [
        ("60", 60.0),
        ("12.5", 12.5),
        ("12,5", 12.5),
        (".5", 0.5),
        (",5", 0.5),
        ("0,234", 0.234),
        ("1,2345", 1.2345),
        ("1234,567", 1234.567),
        ("1 234.5", 1234.5),
        ("1\u{202f}234,5", 1234.5),
        ("1\u{a0}234\u{a0}567", 1_234_567.0),
        ("1,234,567", 1_234_567.0),
        ("1.234.567", 1_234_567.0),
        ("1,234.5", 1234.5),
        ("1.234,5", 1234.5),
        ("3/8", 0.375),
        ("13/8", 1.625),
        ("1 5/8", 1.625),
        ("1-5/8", 1.625),
        ("1⅝", 1.625),
        ("1 ⅝", 1.625),
        ("½", 0.5),
        ("1 125/128", 1.976_562_5),
        ("5⁄16", 0.3125),
        ("6e2", 600.0),
        ("6e-2", 0.06),
        ("-4", -4.0),
        ("−4", -4.0),
        ("–4", -4.0),
        ("+4", 4.0),
        ("60.", 60.0),
    ] {
        assert_eq!(number(text), expected, "{text}");
    }
}

#[test]
fn units_as_people_type_them() {
    use Unit::*;
    for (unit, spellings) in [
        (
            NewtonMetre,
            &[
                "Nm",
                "N-m",
                "N.m",
                "N m",
                "NM",
                "nm",
                "N·m",
                "N⋅m",
                "N*m",
                "newton metres",
                "Newton-meters",
                "N.m.",
            ][..],
        ),
        (
            PoundForceFoot,
            &[
                "ft-lb",
                "ft lbs",
                "ft.lb",
                "FT-LB",
                "lb-ft",
                "lb·ft",
                "lbf·ft",
                "lb ft",
                "ft-lbf",
                "foot pounds",
                "foot-pounds",
                "Ft Lbs",
                "pound-feet",
                "ft/lbs",
            ],
        ),
        (
            PoundForceInch,
            &["in-lb", "inch pounds", "in lbs", "lbf·in", "lb-in", "IN-LBS"],
        ),
        (OunceForceInch, &["oz-in", "in-oz", "ozf·in"]),
        (
            KilogramForceMetre,
            &["kgm", "kgf·m", "kgf-m", "kpm", "mkp", "kg-m", "m.kg", "mkgf", "KGM"],
        ),
        (KilogramForceCentimetre, &["kgcm", "kgf·cm", "kg-cm"]),
        (DecanewtonMetre, &["daN·m", "m.daN"]),
        (NewtonCentimetre, &["Ncm", "N·cm", "N.cm"]),
        (NewtonMillimetre, &["Nmm", "N·mm"]),
        (Millimetre, &["mm", "MM", "millimeters"]),
        (Inch, &["in", "in.", "\"", "″", "”", "''", "inch", "inches"]),
        (Foot, &["ft", "'", "′", "feet"]),
        (Kilometre, &["km", "KM", "Km"]),
        (Megapascal, &["MPa", "MPA", "mpa", "N/mm²", "N/mm2"]),
        (
            PoundForcePerSquareInch,
            &["psi", "PSI", "lb/in²", "lbf/in2", "lbs/sq in"],
        ),
        (KilogramForcePerSquareCentimetre, &["kgf/cm²", "kg/cm2", "kp/cm²", "at"]),
        (InchOfMercury, &["inHg", "in Hg", "\"Hg", "in. Hg"]),
        (UsQuart, &["qt", "qts", "US qt", "quarts", "US·qt"]),
        (UsFluidOunce, &["fl oz", "fl. oz.", "US fl oz"]),
        (ImperialGallon, &["imp gal", "imperial gallons", "UK gal"]),
        (Millilitre, &["mL", "ml", "cc", "cm³"]),
        (Litre, &["L", "l", "litres", "ltr"]),
        (Fahrenheit, &["°F", "F", "f", "deg F", "degrees Fahrenheit", "ºF"]),
        (Celsius, &["°C", "C", "˚C", "degC"]),
        (KilometrePerHour, &["km/h", "kph", "kmh", "KM/H"]),
        (MilePerHour, &["mph", "MPH", "miles per hour"]),
        (RevolutionPerMinute, &["rpm", "r/min", "RPM", "min⁻¹", "min-1", "/min"]),
        (MetricHorsepower, &["PS", "ps"]),
        (Pound, &["lb", "lbs", "pounds"]),
        (PoundForce, &["lbf"]),
        (Degree, &["°", "deg", "degrees"]),
        (Turn, &["turn", "turns"]),
    ] {
        for spelling in spellings {
            for text in [format!("60 {spelling}"), format!("60{spelling}")] {
                let read = value(&text, Expect::default()).unwrap_or_else(|fault| panic!("{}", fault.sentence(&text)));
                assert_eq!((read.value, read.unit), (60.0, unit), "{text}");
            }
        }
    }
}

#[test]
fn a_dash_before_a_name_begins_an_entry_of_a_list() {
    for (text, label) in [
        ("- Idler 45 N·m", "Idler"),
        ("– Idler pulley M10 8.8: 45 N·m", "Idler pulley M10 8.8"),
        ("-Idler 45 N·m", "Idler"),
        ("-- Idler 45 N·m", "Idler"),
    ] {
        let line = line(text).unwrap();
        assert_eq!((line.label, line.stages.len()), (Some(label), 1), "{text}");
    }
    assert!(line("-40 °C").unwrap().stages[0].value.low.value < 0.0);
}

#[test]
fn ranges_and_tolerances() {
    for text in [
        "35-45 N·m",
        "35–45 Nm",
        "35 - 45 Nm",
        "35 to 45 N·m",
        "35..45 Nm",
        "35 … 45 Nm",
        "35 Nm - 45 Nm",
        "35Nm–45Nm",
        "40 ± 5 N·m",
        "40 N·m ± 5 N·m",
        "40 Nm +/- 5",
        "40 N·m ± 12.5 %",
    ] {
        let read = range(text, Expect::default()).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        assert_eq!(
            (read.low.value, read.high.value, read.low.unit),
            (35.0, 45.0, Unit::NewtonMetre),
            "{text}"
        );
    }
    let cold = range("-40 to -20 °C", Expect::default()).unwrap();
    assert_eq!((cold.low.value, cold.high.value), (-40.0, -20.0));
    let fractions = range("1/4-3/8 in", Expect::default()).unwrap();
    assert_eq!((fractions.low.value, fractions.high.value), (0.25, 0.375));
    let link = range("0.10..0.16", Expect::field(Unit::Number)).unwrap();
    assert_eq!((link.low.value, link.high.value), (0.10, 0.16));
}

#[test]
fn stages_joined_by_plus() {
    for (text, expected) in [
        ("10 N·m + 90°", &[(10.0, Unit::NewtonMetre), (90.0, Unit::Degree)][..]),
        ("10Nm+90deg", &[(10.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        (
            "20 Nm + 90° + 90°",
            &[(20.0, Unit::NewtonMetre), (90.0, Unit::Degree), (90.0, Unit::Degree)],
        ),
        ("20 Nm then 1/4 turn", &[(20.0, Unit::NewtonMetre), (0.25, Unit::Turn)]),
        ("20 Nm, then 90°", &[(20.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        ("+ 1/4 turn", &[(0.25, Unit::Turn)]),
        (
            "30 ft-lb plus 2 flats",
            &[(30.0, Unit::PoundForceFoot), (2.0, Unit::HexFlat)],
        ),
        // Angles need no joint of their own.
        ("30 N·m / 90°", &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        ("30 N·m, 90°", &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        ("30 N·m & 90°", &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        ("30 N·m → 90°", &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)]),
        (
            "30 Nm 90° 45°",
            &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree), (45.0, Unit::Degree)],
        ),
        // In words.
        (
            "30 Nm, then turn a further 90 degrees",
            &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)],
        ),
        (
            "30 Nm and then another 90°",
            &[(30.0, Unit::NewtonMetre), (90.0, Unit::Degree)],
        ),
        ("20 Nm + half turn", &[(20.0, Unit::NewtonMetre), (0.5, Unit::Turn)]),
        (
            "20 Nm then a quarter of a turn",
            &[(20.0, Unit::NewtonMetre), (0.25, Unit::Turn)],
        ),
        ("20 Nm, half a turn", &[(20.0, Unit::NewtonMetre), (0.5, Unit::Turn)]),
    ] {
        let read = stages(text, Expect::default()).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        let read: Vec<_> = read
            .iter()
            .map(|stage| (stage.value.low.value, stage.value.low.unit))
            .collect();
        assert_eq!(read, expected, "{text}");
    }
}

#[test]
fn lines_of_a_spec_list() {
    for (text, label) in [
        ("Tensioner bolt: 60 N·m", Some("Tensioner bolt")),
        ("Idler bolt 60 N·m", Some("Idler bolt")),
        ("Bracket M10x1.5 bolt – 60 N·m", Some("Bracket M10x1.5 bolt")),
        ("• Pulley bolts (3): 60 N·m (44 lbf·ft)", Some("Pulley bolts (3)")),
        ("60 N·m [44 ft-lb]", None),
        ("1st stage 60 N·m", Some("1st stage")),
        ("2) 60 N·m", Some("2)")),
        ("Drive 3/8 in: 60 N·m", Some("Drive 3/8 in")),
        ("M8 x 30 mm: 60 N·m", Some("M8 x 30 mm")),
        ("60 N·m max.", None),
        ("60 N·m (oiled)", None),
        ("60 N·m *", None),
    ] {
        let read = line(text).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        assert_eq!((read.label, read.stages[0].value.low.value), (label, 60.0), "{text}");
        assert_eq!(!read.stages[0].beside.is_empty(), text.contains("44"), "{text}");
    }
}

#[test]
fn of_two_values_in_a_line_none_is_taken_for_the_other() {
    for text in [
        "M8: 25 Nm, M10: 49 Nm",
        "Left: 25 Nm Right: 49 Nm",
        "Front: 2.2 bar, rear: 2.4 bar",
        "Inner: 25-30 Nm; outer: 49 Nm",
    ] {
        assert_eq!(misread(text), Misread::TwoValues, "{text}");
    }
    // Two that could be one after the other, or the same twice, are not guessed at.
    for text in [
        "20 Nm, 60 lb-ft",
        "5 ft 13 in",
        "5 lb 3 oz wt",
        "0.8 mm 0.031 in",
        "88 °C 90 °C",
    ] {
        assert_eq!(misread(text), Misread::Leftover, "{text}");
    }
}

#[test]
fn figures_in_brackets_restate_the_stages_before_them() {
    // How many figures stand beside each stage.
    for (text, beside) in [
        ("20 N·m (15 lbf·ft) + 60°", &[1, 0][..]),
        ("20 N·m [15 lbf·ft], then 1/6 turn (60°)", &[1, 1]),
        ("20 N·m + 60° (15 lbf·ft + 60°)", &[1, 1]),
        ("20 N·m + 60° (15 lbf·ft)", &[1, 0]),
        ("20 N·m + 60° + 30° (90°)", &[0, 0, 1]),
        ("18–22 N·m (13–16 lbf·ft) + 60°", &[1, 0]),
        ("20 N·m (2.0 kgf·m, 15 lbf·ft) + 60°", &[2, 0]),
        ("Damper bolt: 20 N·m ( 15 lbf·ft ) + 60°.", &[1, 0]),
        ("300 N (67 lb)", &[1]),
        ("20 N·m (dry) + 60°", &[0, 0]),
        ("25 N·m {255 kgf·cm, 18 ft·lbf}", &[2]),
        ("25 N·m (oiled) [18 lbf·ft]", &[1]),
        // Without brackets.
        ("60 N·m / 44 lbf·ft", &[1]),
        ("60 Nm/6.1 kgf·m/44 lb-ft", &[2]),
        ("60 N·m = 44 ft-lb", &[1]),
        ("60 Nm or 44 ft-lb", &[1]),
        ("60 Nm 44 lb-ft", &[1]),
        ("60 Nm, 44 lb-ft", &[1]),
        ("Drain plug | 35 Nm | 26 lb-ft", &[1]),
        ("2.4 bar 35 psi", &[1]),
        ("0.8 mm / 0.031 in", &[1]),
        ("20 N·m / 15 lbf·ft + 60°", &[1, 0]),
        ("20 N·m 15 lbf·ft 60°", &[1, 0]),
    ] {
        let read = line(text).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        let found: Vec<usize> = read.stages.iter().map(|stage| stage.beside.len()).collect();
        assert_eq!(found, beside, "{text}");
    }
    for (text, contradicts) in [
        ("20 N·m (15 lbf·ft) + 60°", [false, false]),
        ("20 N·m (14.0 lbf·ft) + 60°", [false, false]),
        ("20.0 N·m (14.0 lbf·ft) + 60°", [true, false]),
        ("20 N·m (2.0 kgf·m, 18 lbf·ft) + 60°", [true, false]),
        ("20 N·m + 60° (15 lbf·ft + 90°)", [false, true]),
        ("18–22 N·m (13–19 lbf·ft) + 60°", [true, false]),
        ("20 N·m + 1/6 turn (62°)", [false, true]),
        ("20 N·m / 18 lbf·ft + 60°", [true, false]),
    ] {
        let read = line(text).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        let found: Vec<bool> = read.stages.iter().map(super::Stage::contradicts).collect();
        assert_eq!(found, contradicts, "{text}");
    }
    for (text, contradicts) in [
        ("60 000 km / 37 000 miles", false),
        ("60 N·m (600 kgf·cm)", false),
        ("60 000 km / 40 000 miles", true),
        ("200 N·m (100 lbf·ft)", true),
    ] {
        assert_eq!(line(text).unwrap().stages[0].contradicts(), contradicts, "{text}");
    }
    // A bracket that restates nothing before it is no restatement, nor one in a field for a value.
    for (text, misread) in [
        (
            "20 N·m (15 mm) + 60°",
            Misread::WrongKind {
                expected: Kind::Torque,
                found: Kind::Length,
            },
        ),
        (
            "20 N·m (60°) + 60°",
            Misread::WrongKind {
                expected: Kind::Torque,
                found: Kind::Angle,
            },
        ),
        ("20 N·m + 60° (15 mm)", Misread::Leftover),
        ("20 N·m + 60° (60° + 15 lbf·ft)", Misread::Leftover),
        ("20 N·m (dry 1) + 60°", Misread::Leftover),
        ("20 N·m (15 lbf·ft + 60°", Misread::Leftover),
    ] {
        assert_eq!(self::misread(text), misread, "{text}");
    }
    assert_eq!(
        range("60 mm (2.36 in)", Expect::default()).unwrap_err().misread,
        Misread::Leftover
    );
}

#[test]
fn the_field_decides_what_a_short_unit_means() {
    let field = |text: &str, unit| value(text, Expect::field(unit)).map(|read| read.unit);
    assert_eq!(field("10 oz", Unit::Kilogram), Ok(Unit::Ounce));
    assert_eq!(field("10 oz", Unit::Litre), Ok(Unit::UsFluidOunce));
    assert_eq!(field("10 lb", Unit::Newton), Ok(Unit::PoundForce));
    assert_eq!(field("80 K", Unit::KelvinDifference), Ok(Unit::KelvinDifference));
    assert_eq!(field("10", Unit::Newton), Ok(Unit::Newton));
}

/// What a line is read as, without its label; the word for its fault where it is refused.
fn read_as(text: &str) -> String {
    match line(text) {
        Ok(line) => line
            .stages
            .iter()
            .map(|stage| print::bounds(stage.value))
            .collect::<Vec<_>>()
            .join(" + ")
            .replace(['\u{a0}', '\u{202f}'], " "),
        Err(fault) => match fault.misread {
            Misread::TwoValues => "two".into(),
            Misread::AmbiguousComma { .. } => "thousands?".into(),
            Misread::NoUnit { .. } => "unit?".into(),
            Misread::UnknownUnit(Some(unit)) => format!("{}?", unit.symbol()),
            Misread::UnknownUnit(None) | Misread::Multiple(_) => "unknown".into(),
            other => format!("{other:?}"),
        },
    }
}

#[test]
fn no_number_is_lost_joined_or_taken_for_another_in_silence() {
    for (text, read) in [
        // A decimal point behind a dash.
        (".015-.018 in", "0.015–0.018 in"),
        (".030\"-.035\"", "0.03–0.035 in"),
        ("0.5-.7 bar", "0.5–0.7 bar"),
        ("5..7 mm", "5–7 mm"),
        // Numbers side by side.
        ("M12 x 1.5 110 Nm", "110 N·m"),
        ("Class 10.9 120 Nm", "120 N·m"),
        ("Wheel bolt M12 8.8 110 Nm", "110 N·m"),
        ("Stage 1 100 Nm", "100 N·m"),
        ("M10 x 40 160 Nm", "160 N·m"),
        ("Wheel nut\t5\t120 N·m", "120 N·m"),
        ("Hub nut 1 100 Nm", "two"),
        ("1 100 Nm", "1100 N·m"),
        ("Odometer 150 000 km", "150 000 km"),
        // A count before a dash or `to` is no end of a range.
        ("Stage 1 - 20 Nm", "20 N·m"),
        ("Step 3 – 90°", "90°"),
        ("No. 4 - 60 Nm", "60 N·m"),
        ("M8 x 1.25 - 25 Nm", "25 N·m"),
        ("M10 - 8.8 - 49 Nm", "49 N·m"),
        ("Step 1 to 30 Nm", "30 N·m"),
        ("Tighten bolt 5 to 60 Nm", "two"),
        ("Idler bolt 35 to 45 N·m", "35–45 N·m"),
        ("Idler bolt 35-45 N·m", "35–45 N·m"),
        // A stroke between two values.
        ("32/35 psi", "two"),
        ("25/30 Nm", "two"),
        ("13/16 in", "0.8125 in"),
        ("1/3 turn", "0.333 turns"),
        // A point where a unit runs into thousands.
        ("60.000 km", "thousands?"),
        ("1.250 rpm", "thousands?"),
        ("1.250 in", "1.25 in"),
        ("60-90 000 km", "two"),
        ("60 000-90 000 km", "60 000–90 000 km"),
        // Whose measure it is.
        ("5 pints (imp)", "5 imp·pt"),
        ("60 lb (ft)", "60 lbf·ft"),
        ("60 N·m (oiled)", "60 N·m"),
        // A number left in the label.
        ("between 25 and 30 Nm", "two"),
        ("Wheel bolts 90 or 110 Nm", "two"),
        ("Head bolts 40, 60, 80 Nm", "two"),
        ("Head bolts: 40 then 60 Nm", "two"),
        ("Front 2.2 rear 2.4 bar", "two"),
        ("Tyres 2,2 / 2,4 bar", "two"),
        ("IN 0.20, EX 0.30 mm", "two"),
        ("Oil pressure 2.0 bar at 80 °C", "two"),
        ("Main cap 65 + 90 deg", "unit?"),
        ("Bolt 5: 60 Nm", "60 N·m"),
        ("Bolt 12 20 Nm", "20 N·m"),
        ("Pulley 2, 60 Nm", "60 N·m"),
        ("Idler bolt -60 Nm", "60 N·m"),
        ("Coolant -40 °C", "−40 °C"),
        ("2. 60 Nm", "60 N·m"),
        // A name that begins with a number.
        ("3/8-16 30 ft-lb", "30 lbf·ft"),
        ("1/4\"-20 8 ft-lb", "8 lbf·ft"),
        ("1/4-20x3/4 8 ft-lb", "8 lbf·ft"),
        ("1/2-20 UNF lug nut 75-85 lb-ft", "75–85 lbf·ft"),
        ("7/16-14 bolt: 50 ft-lb + 90°", "50 lbf·ft + 90°"),
        ("0W-20 4.3 l", "4.3 L"),
        ("5W30: 4.3 l", "4.3 L"),
        ("205/55R16 2.3 bar", "2.3 bar"),
        ("205/55 R16 91V 33 psi", "33 psi"),
        ("4x M8 25 Nm", "25 N·m"),
        ("10 x M6 10 Nm", "10 N·m"),
        ("4 x 25 Nm", "unknown"),
        ("2 x 90°", "unknown"),
        ("2x turn 90°", "unknown"),
        ("1/4-3/8 in", "0.25–0.375 in"),
        ("1/4-20 in", "0.25–20 in"),
        ("22 mm AF", "22 mm"),
        // Marks and words of printed manuals.
        ("25~30 Nm", "25–30 N·m"),
        ("25 bis 30 Nm", "25–30 N·m"),
        ("35\u{2011}45 Nm", "35–45 N·m"),
        ("44 ft–lb", "44 lbf·ft"),
        ("90℃", "90 °C"),
        ("2.5 kgf/cm^2", "2.5 kgf/cm²"),
        ("60 Nm + 90° turn", "60 N·m + 90°"),
        ("⅙ turn", "0.167 turns"),
        ("Ø10 mm", "10 mm"),
        ("60 Nm¹", "60 N·m"),
        ("0-3/8 in", "0–0.375 in"),
        // Feet and inches.
        ("5 ft 3 in", "63 in"),
        ("5' 3\"", "63 in"),
        ("5'-3 1/2\"", "63.5 in"),
        ("Hose 1 ft, 2.25 in", "14.25 in"),
        ("5 ft - 8 ft", "5–8 ft"),
        ("5 ft 3 mm", "Leftover"),
        ("5.5 ft 3 in", "Leftover"),
        // No unit of another size or kind is offered.
        ("800 mbar", "unknown"),
        ("1500 hPa", "unknown"),
        ("0.1 kNm", "unknown"),
        ("50 cl", "unknown"),
        ("450 gms", "unknown"),
        ("500 mmHg", "unknown"),
        ("60 pis", "psi?"),
    ] {
        assert_eq!(read_as(text), read, "{text}");
    }
}

#[test]
fn numbered_and_repeated_stages_join_as_a_plus_does() {
    for (text, read) in [
        ("Stage 1: 20 Nm Stage 2: 90 deg", "20 N·m + 90°"),
        (
            "Stage 1: 20 Nm, stage 2: 100 Nm, stage 3: 90°",
            "20 N·m + 100 N·m + 90°",
        ),
        ("Head bolts Step 1 20 Nm, Step 2 90°", "20 N·m + 90°"),
        ("Step 1 20 Nm; Step 2 100 Nm", "20 N·m + 100 N·m"),
        ("Schritt 1: 30 Nm Schritt 2: 90° Schritt 3: 90°", "30 N·m + 90° + 90°"),
        ("Stufe 1 – 30 Nm, Stufe 2 – 60°", "30 N·m + 60°"),
        ("Étape 1 : 20 Nm étape 2 : 90°", "20 N·m + 90°"),
        ("Fase 1 20 Nm + fase 2 90°", "20 N·m + 90°"),
        ("1. Stufe 20 Nm, 2. Stufe 90°", "20 N·m + 90°"),
        ("1st stage 20 Nm 2nd stage: 90°", "20 N·m + 90°"),
        ("Step 3 8 Nm", "8 N·m"),
        ("30 Nm + 2 x 90°", "30 N·m + 90° + 90°"),
        ("30 Nm + 2x90° + 45°", "30 N·m + 90° + 90° + 45°"),
        ("30 Nm, then twice 90°", "30 N·m + 90° + 90°"),
        ("30 Nm + 3 × 60°", "30 N·m + 60° + 60° + 60°"),
        ("30 Nm then 2 times a quarter turn", "30 N·m + 0.25 turns + 0.25 turns"),
        // Only angles are turned more than once, and few times.
        ("30 Nm + 2 x 10 Nm", "unknown"),
        ("30 Nm + 9 x 90°", "unknown"),
        ("2x turn 90°", "unknown"),
        // No number of a stage.
        ("20 Nm Step 2.5 Nm", "Leftover"),
        ("20 mm Step 2 30 mm", "NotAStage(Length)"),
        // A turn back is no stage.
        (
            "20 Nm, then back off 180°, then 40 Nm + 90°",
            "TurnsBack(\"40 Nm + 90°\")",
        ),
        ("20 Nm, loosen, 40 Nm", "TurnsBack(\"40 Nm\")"),
        ("20 Nm + turn back 180°", "TurnsBack(\"\")"),
    ] {
        assert_eq!(read_as(text), read, "{text}");
    }
    for (text, label) in [
        ("Stage 1: 20 Nm Stage 2: 90°", None),
        ("Head bolts, step 1 – 20 Nm, step 2 – 90°", Some("Head bolts")),
        ("Étape 1 : 20 Nm étape 2 : 90°", None),
        ("1. Stufe 20 Nm, 2. Stufe 90°", None),
        ("Stage 1: 20 Nm", Some("Stage 1")),
        ("Stage 2: 20 Nm + 90°", Some("Stage 2")),
    ] {
        assert_eq!(line(text).unwrap().label, label, "{text}");
    }
    let text = "20 Nm, back off 1/2 turn, then 40 Nm";
    let fault = stages(text, Expect::default()).unwrap_err();
    assert_eq!(
        fault.sentence(text),
        "At character 8, “back”: turning back cannot be kept here. Type the stages after it alone, such as 40 N·m + 90°."
    );
    assert_eq!(fault.remedies(text), ["40 Nm"]);
}

#[test]
fn a_bare_stage_is_offered_as_an_angle_only_where_it_can_be_one() {
    let offers = |text: &str| line(text).unwrap_err().remedies(text);
    assert_eq!(offers("30 N·m + 90"), ["30 N·m + 90°"]);
    assert_eq!(offers("Stage 1: 20 Nm Stage 2: 90"), ["Stage 1: 20 Nm Stage 2: 90°"]);
    assert_eq!(offers("30 Nm + 2 x 90"), ["30 Nm + 2 x 90°"]);
    assert_eq!(offers("snug + 90"), ["snug + 90°"]);
    assert_eq!(offers("snug, then 90"), ["snug, then 90°"]);
    assert_eq!(offers("30 Nm then 90"), ["30 Nm then 90°"]);
    assert_eq!(offers("60 Nm +5"), ["60 Nm +5 N·m", "60 Nm +5 lbf·ft"]);
    assert_eq!(offers("40 + 60 + 90°"), ["40 N·m + 60 + 90°", "40 lbf·ft + 60 + 90°"]);
    assert!(offers("60 Nm (1)").is_empty());
    // Not where another number follows, whose unit it may share.
    assert!(offers("2.3 / 2.5 bar").is_empty());
    assert_eq!(offers("1O Nm"), ["10 Nm"]);
    assert_eq!(offers("2I Nm"), ["21 Nm"]);
    assert_eq!(offers("20 lb fot"), ["20 lbf·ft"]);
    assert_eq!(Fault::new(0..4, Misread::Name("thread")).remedies("9/16"), ["9/16 in"]);
}

#[test]
fn faults_name_the_place_and_the_remedy() {
    for (text, place, sentence) in [
        (
            "1,234 Nm",
            "1,234",
            "At character 1, “1,234”: the mark can mean thousands or decimals. Type 1234 or 1.234.",
        ),
        (
            "60 Nmn",
            "Nmn",
            "At character 4, “Nmn”: no unit known here. Did you mean N·m (newton metres)?",
        ),
        (
            "60 mPa",
            "mPa",
            "At character 4, “mPa”: with these capitals it means millipascal. Type MPa.",
        ),
        (
            "60",
            "",
            "After “60”: the unit is missing. Add one, such as N·m, lbf·ft, mm or psi.",
        ),
        (
            "10 N·m + ",
            "",
            "After “10 N·m +”: a number is missing here. Type digits, such as 60 or 1 5/8, then the unit.",
        ),
        (
            "45-35 Nm",
            "45-35 Nm",
            "At character 1, “45-35 Nm”: the range runs from large to small. Type the smaller end first, such as 35-45.",
        ),
        (
            "3/0 in",
            "3/0",
            "At character 1, “3/0”: a fraction cannot have 0 below the line. Type one such as 3/8.",
        ),
        (
            "-500 °F",
            "-500 °F",
            "At character 1, “-500 °F”: nothing is colder than −273.15 °C. Check the sign and the unit.",
        ),
        (
            "5 oz",
            "oz",
            "At character 3, “oz”: this has two meanings. Type fl oz or oz wt.",
        ),
        (
            "30 Nm + 90",
            "",
            "After “30 Nm + 90”: the unit is missing. Add a unit of angle, such as °.",
        ),
        (
            "A: 25 Nm, B: 49 Nm",
            "25 Nm",
            "At character 4, “25 Nm”: more than one value may stand here. Give each a line or a field of its own, join stages by +, and write a large number without spaces.",
        ),
        (
            "60 Nm !",
            "!",
            "At character 7, “!”: this does not belong to the value before it. Remove it, or put it in a line or a field of its own.",
        ),
        (
            "10 mm + 90°",
            "10 mm",
            "At character 1, “10 mm”: a length is no tightening stage. Join torques and angles by +, such as 10 N·m + 90°.",
        ),
        (
            "1.2.3 mm",
            "1.2.3",
            "At character 1, “1.2.3”: these marks make no number. Type one decimal mark at most, such as 1234.5.",
        ),
        ("", "", "nothing typed yet. Type a value and its unit, such as 60 N·m."),
    ] {
        let fault = line(text).expect_err(text);
        assert_eq!(text[fault.place.clone()].trim(), place, "{text}");
        assert_eq!(fault.sentence(text), sentence);
    }
    assert_eq!(
        line("1,234 Nm").unwrap_err().remedies("1,234 Nm"),
        ["1234 Nm", "1.234 Nm"]
    );
    assert_eq!(line("60").unwrap_err().remedies("60")[0], "60 N·m");
}

#[test]
fn a_long_text_is_quoted_around_the_place_at_fault() {
    let long = "é".repeat(1000);
    let text = format!("{long} 60 {long}");
    let fault = line(&text).unwrap_err();
    assert!(fault.sentence(&text).chars().count() < 160, "{}", fault.sentence(&text));
    let [before, wrong, after] = fault.excerpt(&text).unwrap();
    assert_eq!(before, format!("…{} 60 ", "é".repeat(20)));
    assert_eq!(wrong, format!("{}…", "é".repeat(24)));
    assert_eq!(after, "");
    let text = format!("{long} 60");
    let sentence = line(&text).unwrap_err().sentence(&text);
    assert!(
        sentence.starts_with(&format!("After “…{} 60”", "é".repeat(21))),
        "{sentence}"
    );
}

#[test]
fn numbers_out_of_reach_are_refused() {
    for text in ["1e999 mm", "9e15 km", &format!("{} mm", "9".repeat(400))] {
        assert_eq!(misread(text), Misread::OutOfRange, "{text}");
    }
    assert!(
        line(&format!("0.{}1 mm", "0".repeat(400))).is_ok(),
        "too small to matter is zero"
    );
}

#[test]
fn a_field_takes_its_own_kind_only() {
    let fault = value("5 mm", Expect::field(Unit::NewtonMetre)).unwrap_err();
    assert_eq!(
        fault.misread,
        Misread::WrongKind {
            expected: Kind::Torque,
            found: Kind::Length
        }
    );
    assert_eq!(
        range("35-45", Expect::field(Unit::NewtonMetre)).unwrap().high.unit,
        Unit::NewtonMetre
    );
    assert_eq!(
        value("35-45", Expect::field(Unit::NewtonMetre)).unwrap_err().misread,
        Misread::RangeNotWanted
    );
}

#[test]
fn a_field_for_a_number_alone_offers_it() {
    for (text, place, remedies) in [
        ("6PK", "PK", &["6"][..]),
        ("6 mm", "mm", &["6"]),
        ("6PK1453", "PK", &["6"]),
        ("dry", "", &[]),
    ] {
        let fault = value(text, Expect::field(Unit::Number)).unwrap_err();
        assert_eq!(
            (&text[fault.place.clone()], fault.misread.clone()),
            (place, Misread::NumberAlone)
        );
        assert_eq!(fault.remedies(text), remedies, "{text}");
    }
}

fn any_unit() -> impl Strategy<Value = Unit> {
    let units: Vec<Unit> = Unit::all().filter(|unit| *unit != Unit::Number).collect();
    prop::sample::select(units)
}

#[test]
fn the_step_of_nothing_is_a_number() {
    let read = value("0e3001", Expect::field(Unit::Millimetre)).unwrap();
    assert!(read.value == 0.0 && read.step.is_finite(), "{read:?}");
}

fn any_value() -> impl Strategy<Value = f64> {
    prop_oneof![-1e14..1e14_f64, -1e3..1e3_f64, -1.0..1.0_f64, Just(0.0)]
}

proptest! {
    #[test]
    fn what_is_printed_reads_back_exactly(number in any_value(), unit in any_unit()) {
        let number = if unit.kind() == Kind::Temperature { number.abs() } else { number };
        let typed = super::Typed { value: number, unit, step: 0.0 };
        let text = print::exact(typed);
        let read = value(&text, Expect { kind: Some(unit.kind()), bare: None });
        let read = read.map_err(|fault| TestCaseError::fail(fault.sentence(&text)))?;
        prop_assert_eq!(read.value.to_bits() << 1, number.to_bits() << 1, "{}", text);
        prop_assert_eq!(read.unit, unit, "{}", text);
    }

    #[test]
    fn any_two_units_of_a_kind_convert_there_and_back(number in any_value(), from in any_unit(), to in any_unit()) {
        if from.kind() == to.kind() {
            let there = from.of(number).value_in(to).unwrap();
            let back = to.of(there).value_in(from).unwrap();
            let scale = if from.kind() == Kind::Temperature { number.abs().max(460.0) } else { number.abs() };
            prop_assert!((back - number).abs() <= 1e-12 * scale, "{} {:?} {:?}: {}", number, from, to, back);
        }
    }

    #[test]
    fn arbitrary_text_never_panics(text in any::<String>()) {
        if let Err(fault) = line(&text) {
            prop_assert!(!fault.sentence(&text).is_empty());
            prop_assert!(fault.remedies(&text).iter().all(|remedy| !remedy.is_empty()));
        }
    }

    #[test]
    fn text_made_of_likely_pieces_never_panics_and_stays_finite(pieces in prop::collection::vec(
        prop::sample::select(vec!["1", "60", " ", ",", ".", "/", "-", "–", "+", "±", "%", "e", "Nm", "ft-lb", "°", "½", "mm", "oz", "(", ")", " (44 lbf·ft)", ":", "to", "then", "\u{202f}", "1,234", "9e15", "0", "F", "\""]), 0..12)) {
        let text = pieces.concat();
        match line(&text) {
            Ok(line) => for value in line.stages.iter().flat_map(|stage| stage.beside.iter().chain([&stage.value])) {
                prop_assert!(value.low.quantity().si().is_finite() && value.high.quantity().si().is_finite());
            },
            Err(fault) => {
                prop_assert!(text.is_char_boundary(fault.place.start) && text.is_char_boundary(fault.place.end), "{:?}", fault);
                prop_assert!(!fault.sentence(&text).is_empty());
            }
        }
    }
}
