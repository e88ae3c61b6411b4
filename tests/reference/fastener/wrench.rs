//! Section 8: adapters, tolerances, sizes.

use super::{assessed, mm, result, row, thread};
use fenderside_tests::{EXACT_CHAIN, Mark, Tolerance, agree};
use shopmath::fastener::bolt::SectionId;
use shopmath::fastener::head::{self, Shape};
use shopmath::fastener::refusal::Refusal;
use shopmath::fastener::wrench::{Adapter, Suits, deviation, permissible, suits};
use shopmath::fastener::wrench_fit;
use shopmath::quantity::exact::angle::Degree;
use shopmath::quantity::exact::length::{Inch, Millimetre};
use shopmath::quantity::exact::ratio::Number;
use shopmath::quantity::exact::torque::{NewtonMetre, PoundForceInch};
use shopmath::result::Id;
use uom::si::f64::{Angle, Length, Torque};

fn adapter(wrench: f64, adapter: f64, degrees: f64) -> Adapter {
    Adapter {
        wrench: Length::new::<Inch>(wrench),
        adapter: Length::new::<Inch>(adapter),
        angle: Angle::new::<Degree>(degrees),
    }
}

fn pounds_inch(value: f64) -> Torque {
    Torque::new::<PoundForceInch>(value)
}

fn nm(value: f64) -> Torque {
    Torque::new::<NewtonMetre>(value)
}

#[test]
fn adapter_settings_of_the_manuals() {
    for (what, torque, [wrench, length, degrees], expected, half_digit, mark) in [
        (
            "TM 1-1500-204-23-9",
            300.0,
            [10.0, 4.0, 0.0],
            214.0,
            0.5,
            Mark::Published,
        ),
        ("NAVEDTRA 14315", 100.0, [12.0, 6.0, 0.0], 66.7, 0.05, Mark::Published),
        ("at 45°", 100.0, [12.0, 6.0, 45.0], 73.880, 0.0005, Mark::Calculated),
        ("square", 100.0, [12.0, 6.0, 90.0], 100.0, 1e-9, Mark::Calculated),
        ("folded back", 100.0, [12.0, 6.0, 180.0], 200.0, 1e-9, Mark::Calculated),
    ] {
        let setting = adapter(wrench, length, degrees).setting(pounds_inch(torque)).unwrap();
        row(
            what,
            mark,
            setting.get::<PoundForceInch>(),
            expected,
            Tolerance::Absolute(half_digit),
        );
    }
    let delivered = adapter(12.0, 2.0, 0.0).delivered(pounds_inch(60.0)).unwrap();
    row(
        "TM 9-254",
        Mark::Published,
        delivered.get::<PoundForceInch>(),
        70.0,
        Tolerance::Absolute(1e-9),
    );
}

#[test]
fn an_adapter_past_the_hand_is_refused() {
    assert_eq!(adapter(6.0, 6.0, 180.0).gain(), Err(Refusal::AdapterPastHandle));
    assert_eq!(adapter(6.0, 8.0, 180.0).gain(), Err(Refusal::AdapterPastHandle));
    assert!(matches!(adapter(0.0, 6.0, 0.0).gain(), Err(Refusal::OutOfRange { .. })));
}

#[test]
fn the_tolerance_goes_by_the_largest_torque_of_the_tool() {
    for (full_scale, expected) in [(10.0, 0.06), (10.1, 0.04), (200.0, 0.04), (5.0, 0.06)] {
        let found = permissible(nm(full_scale)).get::<Number>();
        row(
            &format!("{full_scale} N·m"),
            Mark::Published,
            found,
            expected,
            EXACT_CHAIN,
        );
    }
}

#[test]
fn below_a_fifth_of_full_scale_there_is_no_promise() {
    for (setting, full_scale, expected) in [
        (39.9, 200.0, Suits::TooLow),
        (40.0, 200.0, Suits::Yes),
        (200.0, 200.0, Suits::Yes),
        (200.1, 200.0, Suits::TooHigh),
    ] {
        assert_eq!(
            suits(nm(setting), nm(full_scale)),
            expected,
            "{setting} of {full_scale}"
        );
    }
    let assessment = assessed(&[("thread", "M6"), ("spec", "10 N·m"), ("scale", "200 N·m")]);
    let wrench = assessment
        .sections
        .iter()
        .find(|section| section.id == SectionId::Wrench)
        .unwrap();
    let cautions: Vec<&str> = wrench
        .findings
        .iter()
        .flat_map(|found| &found.cautions)
        .map(|c| c.slug)
        .collect();
    assert!(cautions.contains(&"wrench-too-large"), "{cautions:?}");
}

/// Own calculation from L + E·cos α (TM 1-1500-204-23-9): the share by which L is off is in the torque (1 − g)/g
/// times, so that past one half it comes out larger than it went in.
#[test]
fn an_adapter_folded_far_back_is_warned_of() {
    let warned = |adapter: &str, angle: &str| {
        let typed = [
            ("spec", "60 N·m"),
            ("wrench", "400 mm"),
            ("adapter", adapter),
            ("adapter-angle", angle),
        ];
        let assessment = assessed(&typed);
        let setting = assessment.sections[0]
            .findings
            .iter()
            .find(|found| found.id == Id::Named("wrench-setting"));
        let cautions = &setting.unwrap().cautions;
        cautions.iter().any(|caution| caution.slug == "adapter-folded-back")
    };
    assert!(!warned("200 mm", "180°") && warned("201 mm", "180°") && warned("390 mm", "180°"));
    assert!(!warned("390 mm", "90°") && !warned("390 mm", "0°") && warned("390 mm", "135°"));
    let [at, off] = [400.0, 404.0].map(|wrench| {
        let adapter = Adapter {
            wrench: mm(wrench),
            adapter: mm(200.0),
            angle: Angle::new::<Degree>(180.0),
        };
        adapter.delivered(nm(120.0)).unwrap().value
    });
    agree(
        "1 % of the length is 1 % of the torque",
        off / at - 1.0,
        0.01,
        Tolerance::Relative(0.02),
    );
}

#[test]
fn a_small_wrench_brings_its_wider_tolerance_along() {
    let reach = |scale: &str| {
        let assessment = assessed(&[("thread", "M6"), ("spec", "8 N·m"), ("scale", scale), ("mu", "0.12")]);
        let value = |id: &str| result(&assessment, id).unwrap();
        (
            value("clamp-high") / value("clamp-mid") - 1.0,
            value("tool-permissible"),
        )
    };
    let (small, large) = (reach("10 N·m"), reach("25 N·m"));
    agree("±6 %", small.0, 0.06, Tolerance::Relative(1e-9));
    agree("±4 %", large.0, 0.04, Tolerance::Relative(1e-9));
}

#[test]
fn wrenches_match_by_exact_inches() {
    // Millimetres the wrench is wider than the head; −0.062 means that it does not go on.
    let slack = |wrench: f64, head: f64| (Length::new::<Inch>(wrench) - mm(head)).get::<Millimetre>();
    for (what, wrench, head, expected) in [
        ("3/4 in on 19 mm", 0.75, 19.0, 0.050),
        ("5/16 in on 8 mm", 0.3125, 8.0, -0.062_5),
        ("9/16 in on 14 mm", 0.5625, 14.0, 0.287_5),
    ] {
        row(
            what,
            Mark::Calculated,
            slack(wrench, head),
            expected,
            Tolerance::Absolute(1e-9),
        );
    }
    let fit = |head: f64| wrench_fit::inch(mm(head)).unwrap();
    assert_eq!((fit(19.0).wrench, fit(19.0).slack), (19_050_000, 50_000));
    assert!(
        fit(8.0).wrench > 7_937_500,
        "5/16 in is smaller than 8 mm and is never offered"
    );
    assert_eq!(
        (fit(14.0).wrench, fit(14.0).slack, fit(14.0).rounds_corners),
        (14_287_500, 287_500, true)
    );
}

#[test]
fn across_flats_by_both_standards() {
    for (name, today, before) in [("M10", 16.0, 17.0), ("M12", 18.0, 19.0), ("M14", 21.0, 22.0)] {
        let head = head::on(Shape::Hex, &thread(name), None, None).unwrap();
        let millimetre = |length: Option<Length>| length.unwrap().get::<Millimetre>();
        row(name, Mark::Published, millimetre(head.across_flats), today, EXACT_CHAIN);
        row(
            name,
            Mark::Published,
            millimetre(head.across_flats_old),
            before,
            EXACT_CHAIN,
        );
        let assessment = assessed(&[("thread", name)]);
        agree(name, result(&assessment, "hex-size").unwrap(), today / 1e3, EXACT_CHAIN);
        agree(
            name,
            result(&assessment, "hex-size-old").unwrap(),
            before / 1e3,
            EXACT_CHAIN,
        );
    }
}

#[test]
fn a_reading_is_compared_with_what_the_adapter_makes_of_the_target() {
    let off = deviation(nm(60.7), nm(60.0)).unwrap().get::<Number>();
    agree("60.7 on 60", off, 0.7 / 60.0, EXACT_CHAIN);
    let assessment = assessed(&[
        ("thread", "M10"),
        ("spec", "60 N·m"),
        ("wrench", "300 mm"),
        ("adapter", "100 mm"),
        ("reading", "45 N·m"),
    ]);
    agree(
        "setting",
        result(&assessment, "wrench-setting").unwrap(),
        45.0,
        EXACT_CHAIN,
    );
    agree(
        "deviation",
        result(&assessment, "reading-deviation").unwrap(),
        0.0,
        Tolerance::Absolute(1e-12),
    );
}

#[test]
fn the_tolerance_lies_around_the_setting_and_not_around_the_target() {
    let cautions = |reading| {
        let typed = [
            ("thread", "M10"),
            ("spec", "60 N·m"),
            ("wrench", "300"),
            ("adapter", "100"),
            ("reading", reading),
        ];
        let wrench = assessed(&typed).sections.remove(0);
        let found = wrench
            .findings
            .iter()
            .find(|found| found.id == Id::Named("reading-deviation"))
            .unwrap();
        found.cautions.len()
    };
    assert_eq!(
        [cautions("43.1"), cautions("43.3"), cautions("46.7"), cautions("46.9")],
        [1, 0, 0, 1]
    );
}
