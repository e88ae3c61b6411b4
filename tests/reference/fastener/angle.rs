//! Section 6: resilience, torque plus angle, yield.

use super::{assessed, class_on, friction, hex, mm, mpa, ratio, result, row, thread};
use core::f64::consts::{PI, TAU};
use fenderside_tests::{EXACT_CHAIN, Mark, Tolerance, agree};
use shopmath::fastener::angle::{Joint, Turned, angle_for};
use shopmath::fastener::bolt::Slug;
use shopmath::fastener::resilience::{Body, Form, Held, Parts, bolt, frusta, frustum, parts, rod};
use shopmath::fastener::spec::{Spec, Stage};
use shopmath::fastener::tighten::{Bolt, twist_factor};
use shopmath::quantity::compliance::{Compliance, InUnits};
use shopmath::quantity::exact::angle::Degree;
use shopmath::quantity::exact::compliance::MetrePerNewton;
use shopmath::quantity::exact::force::Kilonewton;
use shopmath::quantity::exact::length::{Inch, Millimetre};
use shopmath::quantity::exact::pressure::KilopoundPerSquareInch;
use shopmath::quantity::exact::torque::NewtonMetre;
use uom::si::f64::{Angle, Area, Force, Length, Pressure, Torque};

fn inch(value: f64) -> Length {
    Length::new::<Inch>(value)
}

fn mpsi(value: f64) -> Pressure {
    Pressure::new::<KilopoundPerSquareInch>(value * 1e3)
}

/// Stiffness in millions of pounds-force per inch, as the book prints it.
fn mlbf_per_inch(resilience: Compliance) -> f64 {
    0.0254 / 4.448_221_615_260_5 / resilience.get::<MetrePerNewton>() / 1e6
}

fn mm_per_newton(resilience: Compliance) -> f64 {
    resilience.get::<MetrePerNewton>() * 1e3
}

fn m10_body() -> Body {
    Body {
        thread: thread("M10"),
        head: 0.5,
        modulus: mpa(205_000.0),
        shank: mm(20.0),
        free_thread: mm(20.0),
        held: Held::Nut,
    }
}

fn m10_parts() -> Parts {
    Parts {
        grip: mm(40.0),
        bearing: mm(14.63),
        hole: mm(11.0),
        outer: mm(60.0),
        modulus: mpa(205_000.0),
        tapped: false,
    }
}

#[test]
fn m10_through_bolt_with_the_cone() {
    let printed = Tolerance::Relative(2e-4);
    let body = bolt(&m10_body()).unwrap().total;
    row("δS", Mark::Calculated, mm_per_newton(body), 4.133e-6, printed);
    let found = parts(&m10_parts()).unwrap();
    assert_eq!(found.form, Form::Cone);
    row("δP", Mark::Calculated, mm_per_newton(found.total), 6.535e-7, printed);
    let joint = Compliance::new::<MetrePerNewton>(body.value + found.total.value);
    let turn = angle_for(Force::new::<Kilonewton>(29.6), joint, mm(1.5)).unwrap();
    row(
        "29.6 kN",
        Mark::Calculated,
        turn.get::<Degree>(),
        34.0,
        Tolerance::Absolute(0.05),
    );
}

#[test]
fn m8_in_a_tapped_block_with_cone_and_sleeve() {
    let body = Body {
        thread: thread("M8"),
        head: 0.5,
        modulus: mpa(205_000.0),
        shank: mm(0.0),
        free_thread: mm(25.0),
        held: Held::Tapped(mpa(70_000.0)),
    };
    let printed = Tolerance::Relative(2e-4);
    row(
        "δS",
        Mark::Calculated,
        mm_per_newton(bolt(&body).unwrap().total),
        5.446e-6,
        printed,
    );
    let found = parts(&Parts {
        grip: mm(25.0),
        bearing: mm(11.63),
        hole: mm(9.0),
        outer: mm(30.0),
        modulus: mpa(70_000.0),
        tapped: true,
    })
    .unwrap();
    assert_eq!(found.form, Form::ConeAndSleeve);
    row(
        "δP",
        Mark::Calculated,
        mm_per_newton(found.total),
        1.524e-6,
        Tolerance::Relative(4e-4),
    );
}

#[test]
fn cone_and_sleeve_meet_where_the_cone_just_fits() {
    // The outer diameter at which the cone touches the outside, by halving.
    let with = |outer: f64| {
        parts(&Parts {
            outer: mm(outer),
            ..m10_parts()
        })
        .unwrap()
    };
    let (mut low, mut high) = (15.0, 200.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if with(middle).form == Form::Cone {
            high = middle;
        } else {
            low = middle;
        }
    }
    let (sleeve, cone) = (with(low), with(high));
    assert_eq!((sleeve.form, cone.form), (Form::ConeAndSleeve, Form::Cone));
    agree("δP", sleeve.total.value, cone.total.value, Tolerance::Relative(1e-9));
    agree(
        "dW + lK·tanφ",
        high,
        14.63 + 40.0 * cone.tangent,
        Tolerance::Relative(1e-9),
    );
}

#[test]
fn a_sleeve_as_wide_as_the_head_is_a_tube() {
    let narrow = Parts {
        outer: mm(14.63),
        ..m10_parts()
    };
    let area = PI / 4.0 * (14.63_f64.powi(2) - 11.0_f64.powi(2));
    let tube = 40.0 / (205_000.0 * area);
    agree(
        "δP",
        mm_per_newton(parts(&narrow).unwrap().total),
        tube,
        Tolerance::Relative(1e-9),
    );
}

#[test]
fn shigley_example_8_5_frusta() {
    let d = inch(0.625);
    let stack = [
        (0.9375, 0.5, 30.0, 46.46),
        (1.298, 0.1875, 30.0, 197.43),
        (0.9375, 0.3125, 16.0, 32.39),
    ];
    let mut total = 0.0;
    for (narrow, thick, modulus, printed) in stack {
        let part = frustum(mpsi(modulus), inch(thick), inch(narrow), d).unwrap();
        // The book rounds the diameters it hands on, so five figures do not hold.
        row(
            "frustum",
            Mark::Published,
            mlbf_per_inch(part),
            printed,
            Tolerance::Relative(1e-3),
        );
        total += part.value;
    }
    let all = Compliance::new::<MetrePerNewton>(total);
    row(
        "stack",
        Mark::Published,
        mlbf_per_inch(all),
        17.40,
        Tolerance::Absolute(0.01),
    );
}

#[test]
fn shigley_example_8_4_bolt_and_parts() {
    let d = inch(0.625);
    let full = Area::new::<shopmath::quantity::exact::area::SquareInch>(PI / 4.0 * 0.390_625);
    let shank = rod(inch(0.75), mpsi(30.0), full);
    let threaded = rod(inch(0.75), mpsi(30.0), thread("5/8-11").stress_area());
    let bolt = Compliance::new::<MetrePerNewton>(shank.value + threaded.value);
    row(
        "kb",
        Mark::Published,
        mlbf_per_inch(bolt),
        5.21,
        Tolerance::Absolute(0.005),
    );
    let parts = frusta(mpsi(14.0), inch(1.5), inch(0.9375), d).unwrap();
    row(
        "km",
        Mark::Published,
        mlbf_per_inch(parts),
        8.95,
        Tolerance::Absolute(0.005),
    );
}

#[test]
fn the_second_method_agrees_with_the_first_within_a_tenth() {
    let cone = parts(&m10_parts()).unwrap().total;
    let frusta = frusta(mpa(205_000.0), mm(40.0), mm(14.63), mm(10.0)).unwrap();
    row(
        "cone against frusta",
        Mark::Calculated,
        cone.value / frusta.value,
        1.0,
        Tolerance::Absolute(0.1),
    );
}

#[test]
fn head_and_hole_terms_count_as_the_guideline_says() {
    let nut = bolt(&m10_body()).unwrap();
    let socket = bolt(&Body {
        head: 0.4,
        ..m10_body()
    })
    .unwrap();
    agree(
        "head 0.5 d",
        nut.head.value,
        rod(mm(5.0), mpa(205_000.0), thread("M10").shank_area()).value,
        EXACT_CHAIN,
    );
    agree("socket 0.4 d", socket.head.value, nut.head.value * 0.8, EXACT_CHAIN);
    let tapped = bolt(&Body {
        held: Held::Tapped(mpa(70_000.0)),
        ..m10_body()
    })
    .unwrap();
    agree(
        "hole 0.33 d",
        tapped.held.value,
        rod(mm(3.3), mpa(70_000.0), thread("M10").shank_area()).value,
        EXACT_CHAIN,
    );
    let sum = nut.head + nut.shank + nut.free_thread + nut.engaged + nut.held;
    agree("total", nut.total.value, sum.value, EXACT_CHAIN);
}

fn joint(class: &str, low: f64, high: f64) -> Joint {
    let thread = thread("M10");
    Joint {
        bolt: Bolt {
            thread,
            head: hex(&thread),
            friction: friction(low, high),
        },
        yield_strength: class_on(class, &thread).yield_strength,
        bolt_resilience: bolt(&m10_body()).unwrap().total,
        parts_resilience: parts(&m10_parts()).unwrap().total,
        tool: ratio(0.04),
    }
}

fn torque(value: f64) -> Stage {
    let value = Torque::new::<NewtonMetre>(value);
    Stage::Torque {
        low: value,
        high: value,
    }
}

fn turn(degrees: f64) -> Stage {
    let value = Angle::new::<Degree>(degrees);
    Stage::Turn {
        low: value,
        high: value,
    }
}

fn follow(joint: &Joint, stages: Vec<Stage>) -> Turned {
    joint.turned(&Spec::new(stages).unwrap()).unwrap()
}

#[test]
fn yield_begins_where_the_share_reaches_one() {
    let joint = joint("10.9", 0.12, 0.12);
    let turned = follow(&joint, vec![torque(10.0), turn(30.0)]);
    let thread = thread("M10");
    let expected = thread.stress_area().value * 940e6 / twist_factor(&thread, ratio(0.12));
    agree("Fy", turned.yield_clamp.mid.value, expected, EXACT_CHAIN);
    let degrees = turned.angle_to_yield.get::<Degree>();
    let there = follow(&joint, vec![torque(10.0), turn(degrees)]);
    agree(
        "clamp at that angle",
        there.clamp.mid.value,
        expected,
        Tolerance::Relative(1e-9),
    );
    assert!(follow(&joint, vec![torque(10.0), turn(degrees - 0.1)]).clamp.mid < there.clamp.mid);
}

#[test]
fn past_yield_the_clamp_holds_and_the_turn_stretches() {
    let joint = joint("10.9", 0.10, 0.16);
    let turned = follow(&joint, vec![torque(10.0), turn(90.0), turn(90.0)]);
    assert_eq!(turned.clamp, turned.yield_clamp);
    let beyond = 180.0 - turned.angle_to_yield.get::<Degree>();
    let stretch = turned.past_yield.mid.get::<Millimetre>();
    agree(
        "plastic stretch",
        stretch,
        beyond * 1.5 / 360.0,
        Tolerance::Relative(1e-9),
    );
    let once = follow(&joint, vec![torque(10.0), turn(180.0)]);
    agree(
        "stages add up",
        once.past_yield.mid.value,
        turned.past_yield.mid.value,
        Tolerance::Relative(1e-9),
    );
}

#[test]
fn the_range_narrows_with_the_angle() {
    let joint = joint("10.9", 0.10, 0.16);
    let alone = follow(&joint, vec![torque(30.0)]);
    let elastic = follow(&joint, vec![torque(30.0), turn(20.0)]);
    let plastic = follow(&joint, vec![torque(30.0), turn(90.0)]);
    let width = |turned: &Turned| Turned::scatter(turned.clamp).value;
    assert!(width(&alone) > 1.5 * width(&elastic) && width(&elastic) > width(&plastic));
    let elastic_gain = (elastic.clamp.mid - alone.clamp.mid).value;
    agree(
        "the angle adds the same at every friction",
        (elastic.clamp.low - alone.clamp.low).value,
        elastic_gain,
        Tolerance::Relative(1e-9),
    );
}

#[test]
fn a_later_torque_never_loosens_and_can_tighten() {
    let joint = joint("10.9", 0.12, 0.12);
    let snug = follow(&joint, vec![torque(20.0), torque(10.0)]);
    assert_eq!(snug.clamp, follow(&joint, vec![torque(20.0)]).clamp);
    let further = follow(&joint, vec![torque(20.0), turn(5.0), torque(60.0)]);
    agree(
        "last torque",
        further.clamp.mid.value,
        follow(&joint, vec![torque(60.0)]).clamp.mid.value,
        EXACT_CHAIN,
    );
    assert!(follow(&joint, vec![torque(400.0)]).torque_yields.low);
}

#[test]
fn a_torque_below_what_an_angle_gave_is_told() {
    for (spec, told) in [
        ("20 Nm + 30° + 10 Nm", true),
        ("20 Nm + 90° + 40 Nm", true),
        ("20 Nm + 10 Nm + 30°", false),
        ("20 Nm + 5° + 60 Nm", false),
        ("20 Nm + 90°", false),
    ] {
        let typed = [("thread", "M10"), ("class", "10.9"), ("spec", spec), ("grip", "40")];
        let assessment = assessed(&typed);
        let angle = assessment.sections.iter().find(|section| section.title == "Angle");
        let notes = angle.unwrap().notes.concat();
        assert_eq!(notes.contains("the wrench is there before it turns"), told, "{spec}");
    }
}

#[test]
fn the_screen_shows_both_ranges_and_the_plot_joins_them() {
    let assessment = assessed(&[
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "10 N·m + 90°"),
        ("grip", "40"),
        ("shank", "20"),
        ("outer", "60"),
    ]);
    let value = |id: &str| result(&assessment, id).unwrap();
    row(
        "δS",
        Mark::Calculated,
        value("bolt-resilience"),
        4.133e-9,
        Tolerance::Relative(2e-4),
    );
    row(
        "δP",
        Mark::Calculated,
        value("parts-resilience"),
        6.535e-10,
        Tolerance::Relative(2e-4),
    );
    let alone = (value("clamp-high") - value("clamp-low")) / value("clamp-mid");
    let after = (value("angle-clamp-high") - value("angle-clamp-low")) / value("angle-clamp-mid");
    assert!(after < alone / 2.0, "{after} against {alone}");
    agree(
        "stretch",
        value("bolt-stretch"),
        value("bolt-resilience") * value("angle-clamp-mid"),
        EXACT_CHAIN,
    );
    let plot = assessment.plot.as_ref().unwrap();
    let at = |angle: f64| {
        plot.points
            .iter()
            .find(|point| (point.angle - angle).abs() < 1e-9)
            .unwrap()
    };
    agree("plot at the torque", at(0.0).clamp_mid, value("clamp-mid"), EXACT_CHAIN);
    agree(
        "plot at the end",
        at(90.0).clamp_mid,
        value("angle-clamp-mid"),
        EXACT_CHAIN,
    );
    agree("plot torque", at(0.0).torque_mid, 10.0, EXACT_CHAIN);
    agree("plot torque", at(0.0).torque_high, 10.4, EXACT_CHAIN);
    assert!(plot.points.windows(2).all(|pair| pair[0].angle < pair[1].angle));
}

#[test]
fn the_screen_takes_head_and_width_into_the_stiffness() {
    let value = |id: &str, more: &[(&str, &str)]| {
        let mut typed = vec![("thread", "M10"), ("class", "10.9"), ("grip", "40")];
        typed.extend_from_slice(more);
        result(&assessed(&typed), id).unwrap()
    };
    let wide = value("parts-resilience", &[]);
    let given = value("parts-resilience", &[("outer", "43.89 mm")]);
    row(
        "three bearing diameters",
        Mark::CommonPractice,
        wide,
        given,
        Tolerance::Relative(1e-12),
    );
    let (hex, socket) = (
        value("bolt-resilience", &[]),
        value("bolt-resilience", &[("head", "socket")]),
    );
    let tenth = rod(mm(1.0), mpa(205_000.0), thread("M10").shank_area()).value;
    row(
        "socket head",
        Mark::Memory,
        hex - socket,
        tenth,
        Tolerance::Relative(1e-6),
    );
}

/// A full shank is stronger than the thread: only the free thread and 0.5 d of engaged core stretch for good.
#[test]
fn stretch_for_good_is_told_of_the_length_that_yields() {
    for (shank, yielding) in [("0", 0.045), ("30", 0.015)] {
        let typed = [
            ("thread", "M10"),
            ("class", "10.9"),
            ("spec", "30 N·m + 90°"),
            ("grip", "40"),
            ("shank", shank),
        ];
        let assessment = assessed(&typed);
        let value = |id: &str| result(&assessment, id).unwrap();
        agree(
            shank,
            value("past-yield-share"),
            value("past-yield") / yielding,
            EXACT_CHAIN,
        );
    }
}

#[test]
fn the_scatter_is_half_the_range_over_its_middle() {
    let typed = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("grip", "40"),
        ("spec", "20 N·m + 20°"),
    ];
    let assessment = assessed(&typed);
    let value = |id: &str| result(&assessment, id).unwrap();
    for (scatter, range) in [("torque-scatter", "clamp"), ("angle-scatter", "angle-clamp")] {
        let end = |name: &str| value(&format!("{range}-{name}"));
        let expected = (end("high") - end("low")) / (2.0 * end("mid"));
        agree(scatter, value(scatter), expected, EXACT_CHAIN);
    }
}

/// Own calculation: thread and head friction lie anywhere in their ranges, apart from each other. A rough
/// thread under a slippery head takes the tension of the one and the twist of the other.
#[test]
fn the_ends_after_an_angle_are_those_of_thread_and_head_apart() {
    let typed = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("grip", "40"),
        ("spec", "20 N·m + 45°"),
    ];
    let assessment = assessed(&typed);
    let value = |id: &str| result(&assessment, id).unwrap();
    let thread = thread("M10");
    let (pitch, d2, ds) = (1.5e-3, thread.pitch_diameter().value, thread.stress_diameter().value);
    let per_turn = pitch / (value("bolt-resilience") + value("parts-resilience"));
    // The hexagon's bearing and hole, as the tables of the head have them.
    let rubbing = hex(&thread).friction_diameter().value;
    let corner = |thread_mu: f64, head_mu: f64, torque: f64| {
        let lever = pitch / TAU + d2 * thread_mu / (2.0 * (PI / 6.0).cos()) + rubbing * head_mu / 2.0;
        let shear = 1.5 * d2 / ds * (pitch / (PI * d2) + 1.155 * thread_mu);
        let limit = PI / 4.0 * ds * ds * 940e6 / (1.0 + 3.0 * shear * shear).sqrt();
        let clamp = torque / lever + per_turn / 8.0;
        (clamp / limit, clamp.min(limit) * lever)
    };
    let most: Vec<(f64, f64)> = [(0.10, 0.10), (0.10, 0.16), (0.16, 0.10), (0.16, 0.16)]
        .map(|(thread, head)| corner(thread, head, 20.8))
        .to_vec();
    let least =
        [(0.10, 0.10), (0.10, 0.16), (0.16, 0.10), (0.16, 0.16)].map(|(thread, head)| corner(thread, head, 19.2));
    // 101.8 % with a rough thread and a slippery head; the three others stay below.
    assert!(
        most[2].0 > 1.01 && [0, 1, 3].iter().all(|&other| most[other].0 < 1.0),
        "{most:?}"
    );
    assert_eq!(assessment.verdict.as_ref().unwrap().slug, Slug::High);
    agree("share of yield, high", value("angle-yield-use-high"), 1.0, EXACT_CHAIN);
    let torques = |of: &[(f64, f64)], end: fn(f64, f64) -> f64| of.iter().map(|corner| corner.1).reduce(end).unwrap();
    agree(
        "torque, low",
        value("angle-torque-low"),
        torques(&least, f64::min),
        Tolerance::Relative(1e-3),
    );
    agree(
        "torque, high",
        value("angle-torque-high"),
        torques(&most, f64::max),
        Tolerance::Relative(1e-3),
    );
}
