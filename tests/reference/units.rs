//! Units against NIST SP 811:2008 (Appendix B), against exact chains of definitions, and against
//! a general-purpose units library; the marks are those of the row.

use fenderside_tests::Mark::{self, Calculated, Memory, Published};
use fenderside_tests::{EXACT_CHAIN, SEVEN_FIGURES, agree};
use shopmath::quantity::read::{self, Expect};
use shopmath::quantity::{Kind, Unit};
use shopmath::tools::Tools;
use shopmath::{convert, fastener::wrench_fit, quantity::exact::length::Millimetre};
use uom::si::f64::Length;

/// SP 811, Appendix B: one of the unit in the coherent unit, as printed to seven figures.
const SP_811: &[(Unit, f64, Mark)] = &[
    (Unit::PoundForce, 4.448_222, Memory),
    (Unit::PoundForceFoot, 1.355_818, Published),
    (Unit::PoundForceInch, 1.129_848e-1, Published),
    (Unit::OunceForceInch, 7.061_552e-3, Memory),
    (Unit::PoundForcePerSquareInch, 6.894_757e3, Memory),
    (Unit::InchOfMercury, 3.386_389e3, Published),
    (Unit::UsGallon, 3.785_412e-3, Memory),
    (Unit::UsQuart, 9.463_529e-4, Memory),
    (Unit::UsFluidOunce, 2.957_353e-5, Memory),
    (Unit::Horsepower, 7.456_999e2, Memory),
    (Unit::MetricHorsepower, 7.354_988e2, Memory),
];

/// Exact by definition, each written as the number its definition gives.
const EXACT: &[(Unit, f64, Mark)] = &[
    (Unit::PoundForce, 4.448_221_615_260_5, Memory),
    (Unit::KilogramForce, 9.806_65, Memory),
    (Unit::PoundForceFoot, 1.355_817_948_331_400_4, Memory),
    (Unit::PoundForceInch, 0.112_984_829_027_616_7, Memory),
    (Unit::OunceForceInch, 0.007_061_551_814_226_04, Memory),
    (Unit::KilogramForceMetre, 9.806_65, Published),
    (Unit::KilogramForceCentimetre, 0.098_066_5, Memory),
    (Unit::PoundForcePerSquareInch, 6_894.757_293_168_361, Memory),
    (Unit::Bar, 1e5, Memory),
    (Unit::Atmosphere, 101_325.0, Published),
    (Unit::KilogramForcePerSquareCentimetre, 98_066.5, Published),
    (Unit::InchOfMercury, 3_386.388_640_341, Memory),
    (Unit::Inch, 0.025_4, Memory),
    (Unit::Foot, 0.304_8, Memory),
    (Unit::Mile, 1_609.344, Memory),
    (Unit::UsGallon, 3.785_411_784e-3, Memory),
    (Unit::UsQuart, 0.946_352_946e-3, Memory),
    (Unit::UsFluidOunce, 29.573_529_562_5e-6, Memory),
    (Unit::ImperialGallon, 4.546_09e-3, Memory),
    (Unit::ImperialPint, 0.568_261_25e-3, Memory),
    (Unit::ImperialFluidOunce, 0.028_413_062_5e-3, Memory),
    (Unit::Horsepower, 745.699_871_582_270_2, Memory),
    (Unit::MetricHorsepower, 735.498_75, Memory),
    (Unit::Pound, 0.453_592_37, Memory),
    (Unit::Ounce, 0.028_349_523_125, Memory),
    (Unit::MilePerHour, 0.447_04, Memory),
];

#[test]
fn factors_are_those_of_sp_811() {
    for &(unit, printed, _) in SP_811 {
        agree(unit.symbol(), unit.of(1.0).si(), printed, SEVEN_FIGURES);
    }
}

#[test]
fn factors_are_those_of_the_definitions() {
    for &(unit, exact, _) in EXACT {
        agree(unit.symbol(), unit.of(1.0).si(), exact, EXACT_CHAIN);
        agree(unit.symbol(), unit.factor(), exact, EXACT_CHAIN);
    }
}

#[test]
fn no_unit_of_the_library_is_read_through() {
    // The library's own lbf·ft is rounded and off by 8.6e-8; ours must differ from it.
    let ours = Unit::NewtonMetre.of(60.0).value_in(Unit::PoundForceFoot).unwrap();
    let library =
        uom::si::f64::Torque::new::<uom::si::torque::newton_meter>(60.0).get::<uom::si::torque::pound_force_foot>();
    agree("60 N·m by exact units", ours, 44.253_728_957, SEVEN_FIGURES);
    assert!((ours - library).abs() > 1e-6, "{ours} {library}");
}

/// Whole conversions, text in and number out: [calc] of the exact factors.
const CASES: &[(&str, Unit, f64, Mark)] = &[
    ("100 lbf·ft", Unit::NewtonMetre, 135.581_794_833_14, Calculated),
    ("10 N·m", Unit::PoundForceInch, 88.507_457_913, Calculated),
    ("1 kgf·m", Unit::PoundForceInch, 86.796_166_215, Calculated),
    ("30 psi", Unit::Bar, 2.068_427_187_95, Calculated),
    ("212 °F", Unit::Celsius, 100.0, Calculated),
    ("-40 °F", Unit::Celsius, -40.0, Calculated),
];

#[test]
fn whole_conversions() {
    for &(text, unit, expected, _) in CASES {
        let line = convert::line(text, Tools::Both).unwrap_or_else(|fault| panic!("{}", fault.sentence(text)));
        let row = line.stages[0].rows.iter().find(|row| row.unit == unit).unwrap();
        let (_, quantity) = row.amount.ends().next().unwrap();
        agree(
            text,
            row.plain(quantity).0,
            expected,
            fenderside_tests::Tolerance::Relative(1e-10),
        );
    }
}

#[test]
fn a_difference_of_one_degree_fahrenheit_is_five_ninths_of_a_kelvin() {
    let read = read::value("1 °F", Expect::field(Unit::KelvinDifference)).unwrap();
    agree("1 °F of difference", read.quantity().si(), 5.0 / 9.0, EXACT_CHAIN);
    let scale = read::value("1 °F", Expect::field(Unit::Kelvin)).unwrap();
    agree(
        "1 °F on the scale",
        scale.quantity().si(),
        255.927_777_777_777_8,
        EXACT_CHAIN,
    );
}

#[test]
fn gallons_and_fluid_ounces_differ_in_opposite_directions() {
    assert!(Unit::UsGallon.factor() < Unit::ImperialGallon.factor());
    assert!(Unit::UsFluidOunce.factor() > Unit::ImperialFluidOunce.factor());
}

#[test]
fn every_unit_of_convert_agrees_with_pint() {
    let mut seen = Vec::new();
    for line in include_str!("../oracles/units_pint.csv").lines().skip(1) {
        let (name, value) = line.split_once(',').unwrap();
        let (mark, symbol) = name
            .split_once(' ')
            .map_or((1.0, name), |(mark, symbol)| (mark.parse().unwrap(), symbol));
        let unit = Unit::all()
            .find(|unit| unit.symbol() == symbol)
            .unwrap_or_else(|| panic!("{symbol}"));
        agree(name, unit.of(mark).si(), value.parse().unwrap(), EXACT_CHAIN);
        seen.push(unit);
    }
    let rows = Kind::ALL
        .iter()
        .filter(|kind| **kind != Kind::Angle)
        .flat_map(|kind| kind.rows());
    for unit in rows {
        assert!(seen.contains(&unit), "{} is not in the generator's list", unit.symbol());
    }
}

/// Jaw minus head in micrometres where an inch wrench meets a metric head: exact inch × 25.4.
const WRENCHES: &[(i64, (i64, i64), i64)] = &[(19, (3, 4), 50), (8, (5, 16), -63), (14, (9, 16), 288)];

#[test]
fn wrenches_by_exact_arithmetic() {
    for &(head, (above, below), micrometres) in WRENCHES {
        let slack = above * 25_400_000 / below - head * 1_000_000;
        assert_eq!(
            (slack + slack.signum() * 500) / 1000,
            micrometres,
            "{above}/{below} on {head}"
        );
        let fit = wrench_fit::inch(Length::new::<Millimetre>(head as f64)).unwrap();
        if slack < 0 {
            assert!(
                fit.wrench > above * 25_400_000 / below,
                "a wrench smaller than the head was taken"
            );
        } else {
            assert_eq!(fit.slack, slack, "{head} mm");
        }
    }
    let loose = wrench_fit::inch(Length::new::<Millimetre>(14.0)).unwrap();
    assert!(
        loose.rounds_corners,
        "9/16 in on 14 mm rounds the corners (common practice, no source)"
    );
    let close = wrench_fit::inch(Length::new::<Millimetre>(19.0)).unwrap();
    assert!(
        !close.rounds_corners,
        "3/4 in on 19 mm is a usual substitute (common practice, no source)"
    );
}
