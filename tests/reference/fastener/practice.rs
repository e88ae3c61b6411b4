//! Common practice, no source: checks of sense on the whole answer, and the verdict's rules.

use super::{assessed, result, row};
use fenderside_tests::{Mark, Tolerance};
use shopmath::fastener::bolt::{BoltText, FIELDS, Slug, assess, resolve};
use shopmath::quantity::print;
use shopmath::result::Amount;

fn verdict(typed: &[(&str, &str)]) -> (Slug, String) {
    let verdict = assessed(typed).verdict.unwrap();
    (verdict.slug, verdict.sentence)
}

#[test]
fn sixty_on_m10_is_believable_for_10_9_and_not_for_8_8() {
    let bracket = |class, spec| {
        verdict(&[
            ("thread", "M10×55"),
            ("class", class),
            ("spec", spec),
            ("clamped", "a380"),
            ("into", "a380"),
            ("engaged", "20 mm"),
        ])
    };
    assert_eq!(bracket("10.9", "60 N·m").0, Slug::Ok);
    let (slug, sentence) = bracket("8.8", "60 N·m");
    assert_eq!(slug, Slug::PastYield, "{sentence}");
    assert_eq!(bracket("8.8", "38 N·m").0, Slug::Ok);
}

#[test]
fn a_reading_of_60_7_is_within_a_click_wrench() {
    let off = |reading| {
        let assessment = assessed(&[
            ("thread", "M10"),
            ("spec", "60 N·m"),
            ("reading", reading),
            ("tool", "±4 %"),
        ]);
        let found = assessment.sections[0]
            .findings
            .iter()
            .find(|found| found.name == "reading off by")
            .unwrap();
        let advice = found.cautions.iter().map(|caution| {
            assert_eq!(caution.slug, "reading-outside-tolerance");
            caution.text
        });
        (
            result(&assessment, "reading-deviation").unwrap(),
            advice.collect::<Vec<_>>(),
        )
    };
    let (deviation, cautions) = off("60.7 N·m");
    row(
        "60.7 on 60",
        Mark::CommonPractice,
        deviation,
        0.011_67,
        Tolerance::Absolute(1e-5),
    );
    assert!(cautions.is_empty());
    // Too far cannot be undone by loosening; too little must not be added to.
    for (reading, words, other) in [
        ("62.5 N·m", "Take the bolt out", "Loosen"),
        ("57 N·m", "Loosen and tighten again", "Take"),
    ] {
        let advice = off(reading).1.concat();
        assert!(advice.contains(words) && !advice.contains(other), "{reading}: {advice}");
    }
}

#[test]
fn an_adapter_square_to_the_wrench_needs_no_lengths() {
    let of = |angle| {
        let typed = [("spec", "60 N·m"), ("adapter", "50"), ("adapter-angle", angle)];
        let assessment = assessed(&typed);
        let waits = assessment.sections[0].missing.contains(&"wrench");
        (result(&assessment, "wrench-setting"), waits)
    };
    assert_eq!(of("90"), (Some(60.0), false));
    assert_eq!(of("270°"), (Some(60.0), false));
    assert_eq!(of("45"), (None, true));
}

#[test]
fn torque_plus_angle_is_a_single_use_spec() {
    let typed = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "10 N·m + 90°"),
        ("grip", "40"),
    ];
    let assessment = assessed(&typed);
    let angle = assessment
        .sections
        .iter()
        .find(|section| section.title == "Angle")
        .unwrap();
    assert!(angle.cautions.iter().any(|caution| caution.slug == "single-use"));
    let sentence = assessment.verdict.unwrap().sentence;
    assert!(sentence.contains("fit a new bolt"), "{sentence}");
}

#[test]
fn no_length_lets_a_single_use_bolt_be_reused() {
    for now in ["54.9", "55", "55.2"] {
        let assessment = assessed(&[("length-new", "55"), ("length-now", now)]);
        let section = assessment
            .sections
            .iter()
            .find(|section| section.title == "Stretch bolt")
            .unwrap();
        assert!(section.cautions.iter().any(|caution| caution.slug == "single-use"));
        assert!(section.notes.iter().any(|note| note.contains("no leave")));
        let found = result(&assessment, "permanent-set").unwrap();
        let expected = (now.parse::<f64>().unwrap() - 55.0) / 1e3;
        row(now, Mark::Calculated, found, expected, Tolerance::Absolute(1e-12));
    }
}

#[test]
fn steel_in_aluminium_wants_about_two_diameters() {
    let lengths = |class| {
        let assessment = assessed(&[("thread", "M10"), ("class", class), ("into", "a380")]);
        let value = |id| result(&assessment, id).unwrap() / 0.010;
        (value("engagement-required"), value("engagement-rule"))
    };
    let (weak, rule) = lengths("8.8");
    let (strong, _) = lengths("12.9");
    row("rule", Mark::CommonPractice, rule, 2.0, Tolerance::Absolute(1e-9));
    assert!(
        weak > 1.0 && strong < rule * 1.05,
        "computed {weak} to {strong} diameters"
    );
}

#[test]
fn the_grip_changes_nothing_of_a_verdict_on_torque_alone() {
    for (thread, spec) in [("M6", "60 N·m"), ("M8", "25 N·m"), ("M10", "60 N·m")] {
        let typed = [("thread", thread), ("class", "8.8"), ("spec", spec)];
        let with_grip = [&typed[..], &[("grip", "30 mm")]].concat();
        let (without, with) = (assessed(&typed), assessed(&with_grip));
        assert_eq!(without.verdict, with.verdict, "{thread}, {spec}");
        // And no section says that it ends at yield.
        assert_eq!(result(&with, "angle-yield-use-high"), None);
        assert_eq!(result(&without, "yield-use-high"), result(&with, "yield-use-high"));
    }
    let turned = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "30 N·m + 90°"),
        ("grip", "60 mm"),
    ];
    assert!(result(&assessed(&turned), "angle-yield-use-high").is_some());
}

#[test]
fn a_torque_that_breaks_the_bolt_is_said_to_be_a_misprint() {
    let of = |spec, more: &[(&'static str, &'static str)]| {
        let typed = [&[("thread", "M8"), ("class", "8.8"), ("spec", spec)], more].concat();
        assessed(&typed).verdict.unwrap()
    };
    let wild = of("600 N·m", &[]);
    assert_eq!((wild.slug, wild.times.as_deref()), (Slug::PastYield, Some("17 to 26")));
    for words in [
        "would break",
        "29.3\u{a0}kN",
        "17 to 26 times its yield",
        "probably a misprint",
    ] {
        assert!(wild.sentence.contains(words), "{words}: {}", wild.sentence);
    }
    assert!(
        !wild.sentence.contains("552"),
        "no load that no bolt holds: {}",
        wild.sentence
    );
    // Whatever else is wrong with it, and before an angle too.
    let strips = of("600 N·m", &[("into", "a380"), ("engaged", "8 mm")]);
    assert_eq!((strips.slug, strips.word), (Slug::Strips, "Strips the hole"));
    let turned = of("600 N·m + 90°", &[("grip", "30")]);
    for (verdict, words) in [(strips, "pull out at"), (turned, "would break")] {
        let said = &verdict.sentence;
        assert!(said.contains(words) && said.contains("probably a misprint"), "{said}");
        assert!(!verdict.by_design && !said.contains("552"), "{said}");
    }
    // Past yield and not past the load that breaks it throughout: as before.
    assert!(of("50 N·m", &[]).times.is_none());
}

#[test]
fn a_number_that_fits_in_another_unit_is_offered_in_it() {
    for (thread, class, spec, offered) in [
        ("M6", "8.8", "89 ft-lb", "89\u{a0}lbf·in"),
        ("M6", "8.8", "80.25-90 ft-lb", "80.25–90\u{a0}lbf·in"),
        ("M10", "10.9", "60 in-lb", "60\u{a0}N·m"),
        ("M10", "10.9", "6", "6\u{a0}kgf·m"),
        ("M8", "8.8", "25 kgf·m", "25\u{a0}N·m"),
        ("M8", "8.8", "600", ""),
        ("M8", "8.8", "600 + 90°", ""),
        // Near misses are left alone.
        ("M8", "8.8", "25 ft-lb", ""),
        ("M10", "8.8", "10", ""),
        ("M10", "10.9", "90", ""),
        ("M10", "10.9", "60", ""),
    ] {
        let (_, sentence) = verdict(&[("thread", thread), ("class", class), ("spec", spec), ("grip", "30")]);
        let words = format!(" {offered} would be believable: check the unit.");
        assert_eq!(
            sentence.contains("check the unit"),
            !offered.is_empty(),
            "{spec}: {sentence}"
        );
        assert!(offered.is_empty() || sentence.contains(&words), "{spec}: {sentence}");
    }
    // Not where it would strip the hole.
    let (_, sentence) = verdict(&[
        ("thread", "M6"),
        ("class", "8.8"),
        ("spec", "89 ft-lb"),
        ("into", "a380"),
        ("engaged", "3"),
    ]);
    assert!(!sentence.contains("check the unit"), "{sentence}");
}

#[test]
fn past_yield_by_the_angle_alone_is_by_design() {
    let of = |spec| {
        let verdict = assessed(&[("thread", "M10"), ("class", "10.9"), ("spec", spec), ("grip", "60")]).verdict;
        verdict.unwrap()
    };
    let design = of("30 N·m + 90°");
    assert!(design.slug == Slug::PastYield && design.by_design && design.sentence.contains("by design"));
    // With the torque past yield, at any friction of the range, it is not.
    for spec in ["75 N·m + 90°", "90 N·m + 90°", "90 N·m"] {
        let wrong = of(spec);
        assert!(wrong.slug == Slug::PastYield || spec == "75 N·m", "{spec}");
        assert!(
            !wrong.by_design && wrong.sentence.contains("torque alone") | !spec.contains('+'),
            "{}",
            wrong.sentence
        );
    }
    assert!(!of("10 N·m + 20°").by_design);
}

#[test]
fn an_angle_that_may_break_the_bolt_is_doubted() {
    let of = |thread, class, spec, grip, shank| {
        let typed = [
            ("thread", thread),
            ("class", class),
            ("spec", spec),
            ("grip", grip),
            ("shank", shank),
        ];
        assessed(&typed).verdict.unwrap()
    };
    // Common practice: stretch bolts as they are specified, long and short, shank or none.
    for (thread, class, spec, grip, shank) in [
        ("M10", "10.9", "40 N·m + 90° + 90°", "80", "0"),
        ("M10", "10.9", "40 N·m + 90° + 90°", "80", "60"),
        ("M12", "10.9", "60 N·m + 90° + 90° + 90°", "120", "60"),
        ("M8", "10.9", "20 N·m + 90°", "30", "0"),
        ("M6", "8.8", "6 N·m + 90°", "15", "0"),
        ("M14x1.5", "10.9", "100 N·m + 180°", "40", "0"),
    ] {
        let verdict = of(thread, class, spec, grip, shank);
        assert!(verdict.by_design, "{thread} {spec}: {}", verdict.sentence);
    }
    let wild = of("M10", "8.8", "20 N·m + 900°", "30", "0");
    assert!(wild.slug == Slug::PastYield && !wild.by_design);
    for words in [
        "3.66\u{a0}mm, 10\u{a0}% of the 35\u{a0}mm that yield",
        "may break it",
        "probably a misprint",
    ] {
        assert!(wild.sentence.contains(words), "{words}: {}", wild.sentence);
    }
    assert!(!wild.sentence.contains("by design"), "{}", wild.sentence);
}

#[test]
fn a_stripping_hole_is_told_how_many_threads_it_needs() {
    let typed = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "60 N·m"),
        ("into", "a380"),
        ("engaged", "8 mm"),
    ];
    let assessment = assessed(&typed);
    let needed = result(&assessment, "engagement-required").unwrap();
    row(
        "full threads",
        Mark::Calculated,
        needed,
        0.0173,
        Tolerance::Absolute(5e-5),
    );
    let (slug, sentence) = verdict(&typed);
    assert!(
        slug == Slug::Strips && sentence.contains("17.3\u{a0}mm of full threads would outlast"),
        "{sentence}"
    );
}

/// The smaller fails first (DOMAIN, section 5).
#[test]
fn a_hole_stronger_than_the_bolt_never_strips() {
    for (spec, into, engaged, slug, word) in [
        ("200", "steel", "20", Slug::PastYield, "Would break"),
        ("200", "a380", "20", Slug::PastYield, "Would break"),
        ("200", "a380", "8", Slug::Strips, "Strips the hole"),
        // The hole pulls out at 53.0 kN, the bolt breaks at 46.4.
        ("100", "a380", "13", Slug::PastYield, "Past yield"),
        ("100", "a380", "8", Slug::Strips, "Strips the hole"),
        ("48", "a380", "5", Slug::Strips, "Strips the hole"),
        ("40", "a380", "9", Slug::Ok, "Threads near their limit"),
        ("40", "a380", "20", Slug::Ok, "Believable"),
    ] {
        let typed = [
            ("thread", "M10"),
            ("class", "8.8"),
            ("spec", spec),
            ("into", into),
            ("engaged", engaged),
        ];
        let found = assessed(&typed).verdict.unwrap();
        assert_eq!((found.slug, found.word), (slug, word), "{typed:?}: {}", found.sentence);
        let told = found.sentence.contains("times the most it clamps with");
        assert_eq!(told, word.contains("hreads near"), "{}", found.sentence);
    }
}

#[test]
fn what_no_torque_tells_is_not_told() {
    let of = |spec| assessed(&[("thread", "M10"), ("class", "8.8"), ("spec", spec), ("grip", "40")]);
    let given = |spec, id| result(&of(spec), id);
    assert_eq!(given("40", "past-yield"), Some(0.0));
    for id in ["past-yield", "past-yield-share", "angle-clamp"] {
        assert_eq!(given("200", id), None, "{id}");
    }
    assert!(given("30 N·m + 180°", "past-yield").unwrap() > 0.0);
}

#[test]
fn no_verdict_hangs_on_a_hole_that_cannot_be_read() {
    let typed = |key, text| {
        let mut typed = vec![
            ("thread", "M10"),
            ("class", "8.8"),
            ("spec", "40"),
            ("into", "a380"),
            ("engaged", "20"),
            ("boss", "25"),
        ];
        typed.retain(|(known, _)| *known != key);
        typed.push((key, text));
        let mut bolt = BoltText::default();
        for (key, text) in typed {
            bolt.set(key, text);
        }
        assess(&resolve(&bolt))
    };
    for key in ["into", "engaged", "boss"] {
        assert_eq!(typed(key, "x").verdict, None, "{key}");
    }
    assert!(typed("boss", "").verdict.is_some());
    let turns = |engaged| result(&typed("engaged", engaged), "engagement-turns");
    assert!(turns("20").is_some() && turns("x").is_none());
}

#[test]
fn a_range_without_its_second_end_and_a_tolerance_below_nothing_are_no_values() {
    for (key, text) in [
        ("mu", "0.1.."),
        ("spec", "35.."),
        ("grip", "40.."),
        ("wrench", "300.."),
        ("tool", "-4 %"),
    ] {
        let mut bolt = BoltText::default();
        bolt.set(key, text);
        assert!(
            resolve(&bolt).errors.iter().any(|error| error.key == key),
            "{key} takes {text}"
        );
    }
}

#[test]
fn a_stop_below_the_bolt_s_own_torque_says_why() {
    let notes = |spec| {
        let assessment = assessed(&[("thread", "M10"), ("class", "10.9"), ("spec", spec)]);
        let stuck = assessment.sections.into_iter().find(|section| section.title == "Stuck");
        stuck.unwrap().notes.join(" ")
    };
    // 46.3 N·m to stop at; by the torque equation, of 60 N·m under a hexagon head half is friction there.
    let above = notes("60 N·m");
    assert!(
        above.contains("tightened with 60\u{a0}N·m; about 48 % of that is friction under the head"),
        "{above}"
    );
    assert!(above.contains("still pressed down"), "{above}");
    let below = notes("40 N·m");
    assert!(
        !below.contains("tightened with") && below.contains("still pressed down"),
        "{below}"
    );
}

#[test]
fn a_breaking_torque_that_no_standard_gives_says_so() {
    for (thread, class, covered) in [
        ("M10", "8.8", true),
        ("M12", "8.8", false),
        ("3/8-16", "grade 8", false),
        ("M8", "5.8", false),
        ("M8", "A2-70", false),
    ] {
        let assessment = assessed(&[("thread", thread), ("class", class)]);
        let broken = result(&assessment, "twist-break-torque").is_some();
        let stuck = assessment.sections.into_iter().find(|section| section.title == "Stuck");
        let said = stuck.unwrap().notes.concat().contains("ISO 898-7 covers M1 to M10");
        assert_eq!((broken, said), (covered, !covered), "{thread} {class}");
    }
}

#[test]
fn the_verdict_follows_its_rules_in_order() {
    let m10 = |spec: &'static str, more: &[(&'static str, &'static str)]| {
        let mut typed = vec![("thread", "M10"), ("class", "10.9"), ("spec", spec)];
        typed.extend_from_slice(more);
        verdict(&typed)
    };
    assert_eq!(m10("10 N·m", &[]).0, Slug::Low);
    assert_eq!(m10("60 N·m", &[]).0, Slug::Ok);
    assert_eq!(m10("75 N·m", &[]).0, Slug::High);
    assert_eq!(m10("90 N·m", &[]).0, Slug::PastYield);
    let shallow = [("into", "a380"), ("engaged", "4 mm")];
    assert_eq!(m10("90 N·m", &shallow).0, Slug::Strips, "stripping counts before yield");
    // 60 N·m clamps with 27 to 45 kN; 9 mm of threads hold 37 kN, 11.5 mm hold 47 kN.
    let between = |engaged| m10("60 N·m", &[("into", "a380"), ("engaged", engaged)]).0;
    assert_eq!(between("9 mm"), Slug::Strips, "the top of the range counts");
    assert_eq!(between("11.5 mm"), Slug::Ok);
    let nut = [("into", "a380"), ("engaged", "4 mm"), ("joint", "nut")];
    let (slug, sentence) = m10("60 N·m", &nut);
    assert_eq!(slug, Slug::Strips, "a margin that is shown is judged");
    assert!(sentence.contains("A nut is chosen, yet"), "{sentence}");
    let [.., joint] = nut;
    assert_eq!(
        m10("60 N·m", &[nut[0], joint]).0,
        Slug::Ok,
        "no threads given, no margin"
    );
    let (slug, sentence) = m10("10 N·m + 180°", &[("grip", "40")]);
    assert_eq!(slug, Slug::PastYield);
    assert!(sentence.contains("by design"), "{sentence}");
    let (slug, sentence) = m10("60 N·m", &[("joint", "tapped")]);
    assert_eq!(slug, Slug::Ok);
    assert!(sentence.contains("not checked"), "{sentence}");
}

#[test]
fn a_margin_below_one_never_stands_beside_a_good_verdict() {
    let typed = [
        ("thread", "M18x1.5"),
        ("class", "8.8"),
        ("spec", "300 Nm"),
        ("mu", "0.16..0.20"),
        ("grip", "20"),
        ("joint", "nut"),
        ("into", "alsi9cu3"),
        ("engaged", "6"),
    ];
    let assessment = assessed(&typed);
    assert!(result(&assessment, "strip-margin").unwrap() < 0.4);
    assert_eq!(assessment.verdict.unwrap().slug, Slug::Strips);
    assert!(assessment.drawing.unwrap().tapped, "what is judged is drawn");
}

#[test]
fn an_angle_never_takes_clamp_load_away() {
    let of = |spec| {
        let typed = [
            ("thread", "M12"),
            ("class", "8.8"),
            ("spec", spec),
            ("mu", "0.12"),
            ("grip", "40"),
            ("into", "a380"),
            ("engaged", "10"),
        ];
        let assessment = assessed(&typed);
        let margin = result(&assessment, "strip-margin").unwrap();
        (margin, assessment.verdict.unwrap().slug)
    };
    let (alone, strips) = of("120 Nm");
    row("margin", Mark::Calculated, alone, 0.769, Tolerance::Absolute(5e-4));
    assert_eq!(strips, Slug::Strips);
    for spec in ["120 Nm + 0°", "120 Nm + 30°", "30 Nm + 120 Nm + 90°"] {
        let (margin, slug) = of(spec);
        assert!(margin <= alone && slug == Slug::Strips, "{spec}: {margin}");
    }
}

#[test]
fn past_yield_a_hole_weaker_than_the_bolt_is_no_design() {
    let of = |spec, engaged| {
        let typed = [
            ("thread", "M10"),
            ("class", "10.9"),
            ("spec", spec),
            ("grip", "20"),
            ("into", "a380"),
            ("engaged", engaged),
        ];
        let assessment = assessed(&typed);
        let over = result(&assessment, "strip-over-break").unwrap();
        let engagement = &assessment.sections[3];
        let cautioned = engagement
            .cautions
            .iter()
            .any(|caution| caution.slug == "hole-is-weaker");
        (over, cautioned, assessment.verdict.unwrap())
    };
    let words = "The threads in the hole are weaker than the bolt and may pull out first: past yield it can clamp with up to 60.3\u{a0}kN, and they hold 49.8\u{a0}kN; 17.3\u{a0}mm of full threads would outlast the bolt. The angle";
    let (over, cautioned, weak) = of("10 Nm + 90°", "12.2");
    assert!(over < 1.0 && cautioned && !weak.by_design, "{over}");
    assert_eq!(weak.slug, Slug::PastYield);
    assert!(weak.sentence.starts_with(words), "{}", weak.sentence);
    // With threads enough, and below yield, nothing is said of it.
    let (over, cautioned, strong) = of("10 Nm + 90°", "18");
    assert!(over > 1.0 && !cautioned && strong.by_design && !strong.sentence.contains("weaker"));
    let (_, cautioned, below) = of("40 Nm", "12.2");
    assert!(below.slug == Slug::Ok && !cautioned && !below.sentence.contains("weaker"));
    let (_, cautioned, torque) = of("84 Nm", "18");
    assert!(torque.slug == Slug::PastYield && !cautioned && !torque.sentence.contains("weaker"));
}

/// The torques of the VDI 2230 tables are what books tighten to, whatever the threads are assumed to be.
#[test]
fn torques_as_tabled_are_believable_and_nonsense_is_not() {
    let of = |thread, class, spec: f64, mu| {
        let spec = format!("{spec} N·m");
        verdict(&[("thread", thread), ("class", class), ("spec", &spec), ("mu", mu)])
    };
    for (thread, mu, torques) in [
        ("M8x1", "0.12", [26.1, 38.3, 44.9]),
        ("M10x1.25", "0.10", [44.0, 65.0, 76.0]),
        ("M10x1.25", "0.12", [51.0, 75.0, 87.0]),
        ("M6", "0.12", [10.1, 14.9, 17.4]),
        ("M8", "0.12", [24.6, 36.1, 42.2]),
        ("M10", "0.12", [48.0, 71.0, 83.0]),
        ("M12", "0.12", [84.0, 123.0, 144.0]),
        ("M8", "0.14", [27.3, 40.1, 46.9]),
    ] {
        for (class, torque) in ["8.8", "10.9", "12.9"].into_iter().zip(torques) {
            let (slug, sentence) = of(thread, class, torque, mu);
            assert_eq!(slug, Slug::Ok, "{thread} {class} {torque}: {sentence}");
            // At the friction that is assumed, those for 0.12 stay believable too.
            let (slug, sentence) = of(thread, class, torque, "");
            assert!(
                mu != "0.12" || slug == Slug::Ok,
                "{thread} {class} {torque}: {sentence}"
            );
        }
    }
    for (thread, torque) in [("M6", 10.0), ("M8", 25.0), ("M10", 49.0), ("M12", 84.0)] {
        let (slug, sentence) = of(thread, "8.8", torque, "");
        assert_eq!(slug, Slug::Ok, "{thread}: {sentence}");
        assert!(
            sentence.contains("near the top") && sentence.contains("with slippery threads up to 10"),
            "{sentence}"
        );
    }
    // Above the tables: high, and past yield from there.
    assert_eq!(of("M6", "8.8", 11.3, "").0, Slug::High);
    assert_eq!(of("M6", "8.8", 15.0, "").0, Slug::PastYield);
    let (slug, sentence) = of("M6", "8.8", 10.8, "0.12");
    assert!(
        slug == Slug::High && sentence.contains("at the wrench's upper end"),
        "{sentence}"
    );
    // Very slippery threads keep it high though its middle is usual.
    assert_eq!(of("M10", "10.9", 65.0, "0.08..0.24").0, Slug::High);
}

#[test]
fn a_smaller_torque_after_a_larger_one_changes_nothing() {
    let clamp = |spec| result(&assessed(&[("thread", "M10"), ("spec", spec)]), "clamp-high").unwrap();
    row(
        "60 then 20",
        Mark::Calculated,
        clamp("60 N·m + 20 N·m"),
        clamp("60 N·m"),
        Tolerance::Relative(1e-12),
    );
    row(
        "20 then 60",
        Mark::Calculated,
        clamp("20 N·m + 60 N·m"),
        clamp("60 N·m"),
        Tolerance::Relative(1e-12),
    );
}

#[test]
fn an_angle_without_a_grip_gets_no_verdict_but_says_what_it_waits_for() {
    let assessment = assessed(&[("thread", "M10"), ("class", "10.9"), ("spec", "10 N·m + 90°")]);
    assert_eq!(assessment.verdict, None);
    assert_eq!(assessment.waiting, ["grip"]);
    assert_eq!(result(&assessment, "angle-clamp-mid"), None);
    assert!(
        result(&assessment, "clamp-mid").is_some(),
        "the torque alone is still worked out"
    );
}

#[test]
fn the_sentence_says_what_was_assumed_and_only_that() {
    let (_, assumed) = verdict(&[("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")]);
    assert!(
        assumed.ends_with("(assumed: hex head, friction 0.10 to 0.16, wrench within 4\u{a0}%)."),
        "{assumed}"
    );
    let (_, fine) = verdict(&[("thread", "M10 fine"), ("class", "10.9"), ("spec", "60 N·m")]);
    assert!(fine.contains("(assumed: M10×1.25 as fine, hex head,"), "{fine}");
    let given = [("mu", "0.12"), ("tool", "4 %"), ("head", "flange")];
    let typed: Vec<_> = [("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")]
        .into_iter()
        .chain(given)
        .collect();
    let (_, none) = verdict(&typed);
    assert!(!none.contains("assumed"), "{none}");
    // A hole's material says that the bolt goes into a hole, so that is no assumption.
    let angle = [
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "20 N·m + 60°"),
        ("grip", "40"),
    ];
    let (_, nut) = verdict(&angle);
    assert!(nut.contains("no shank, steel parts, a nut, wide parts"), "{nut}");
    let hole: Vec<_> = angle.into_iter().chain([("into", "a380")]).collect();
    let (_, hole) = verdict(&hole);
    assert!(
        !hole.contains("nut") && hole.contains("steel parts, wide parts"),
        "{hole}"
    );
}

#[test]
fn the_sentence_gives_the_range_of_the_clamp_load() {
    let typed = [("thread", "M10"), ("class", "10.9"), ("spec", "60 N·m")];
    let assessment = assessed(&typed);
    let kilonewtons = |id| (result(&assessment, id).unwrap() / 100.0).round() / 10.0;
    let (low, high) = (kilonewtons("clamp-low"), kilonewtons("clamp-high"));
    let (_, sentence) = verdict(&typed);
    assert!(
        sentence.starts_with(&format!("Believable for 10.9: it clamps with {low} to {high}\u{a0}kN,")),
        "{sentence}"
    );
    // Without friction's and the tool's range it is one number.
    let exact = [("mu", "0.12"), ("tool", "0 %")];
    let (_, one) = verdict(&typed.into_iter().chain(exact).collect::<Vec<_>>());
    assert!(!one.contains(" to "), "{one}");
}

#[test]
fn what_only_rounding_tells_apart_is_one_figure() {
    let typed = [
        ("thread", "M10x1.25"),
        ("class", "8.8"),
        ("head", "socket"),
        ("mu", "0.2"),
        ("spec", "10–12 Nm + 90 deg"),
        ("grip", "40 mm"),
    ];
    let assessment = assessed(&typed);
    assert_eq!(result(&assessment, "angle-scatter"), Some(0.0));
    let sentence = assessment.verdict.unwrap().sentence;
    assert!(sentence.contains("it clamps with 31.5\u{a0}kN"), "{sentence}");
    let (_, sentence) = verdict(&[
        ("thread", "M8"),
        ("class", "8.8"),
        ("spec", "600"),
        ("mu", "0.12"),
        ("tool", "0"),
    ]);
    assert!(sentence.contains("comes to 22 times its yield"), "{sentence}");
}

#[test]
fn a_bracket_in_the_middle_of_a_spec_is_read_and_checked() {
    let joint = |spec| {
        let typed = [("thread", "M10"), ("class", "10.9"), ("spec", spec), ("grip", "40")];
        let assessment = assessed(&typed);
        let setting = assessment.sections[0].findings[0].cautions.clone();
        let cautioned = setting.iter().any(|caution| caution.slug == "figures-disagree");
        let sentence = assessment.verdict.as_ref().unwrap().sentence.clone();
        (result(&assessment, "angle-clamp-mid").unwrap(), cautioned, sentence)
    };
    let (plain, cautioned, sentence) = joint("20 N·m + 60°");
    assert!(!cautioned && !sentence.contains("bracket"), "{sentence}");
    let (restated, cautioned, sentence) = joint("20 N·m (15 lbf·ft) + 60°");
    row(
        "restated",
        Mark::Calculated,
        restated,
        plain,
        Tolerance::Relative(1e-15),
    );
    assert!(!cautioned && !sentence.contains("bracket"), "{sentence}");
    let (contradicted, cautioned, sentence) = joint("20 N·m (20 lbf·ft) + 60°");
    row(
        "contradicted",
        Mark::Calculated,
        contradicted,
        plain,
        Tolerance::Relative(1e-15),
    );
    assert!(cautioned && sentence.contains("check the manual"), "{sentence}");
}

#[test]
fn a_deviation_has_its_sign() {
    let shown = |reading| {
        let assessment = assessed(&[("thread", "M10"), ("spec", "60 N·m"), ("reading", reading)]);
        let found = assessment.sections[0]
            .findings
            .iter()
            .find(|found| found.name == "reading off by");
        let found = found.unwrap().clone();
        let Amount::One(off) = found.amount else {
            panic!("one deviation")
        };
        print::number(off, found.unit, found.style)
    };
    assert_eq!([shown("60.72"), shown("59.28"), shown("60")], ["+1.2", "−1.2", "0"]);
}

#[test]
fn a_refusal_says_what_to_type_instead() {
    for (key, text, words, remedy) in [
        ("tool", "0.04", "Type 4\u{a0}% if that is meant", "4\u{a0}%"),
        ("tool", "±0.06 %", "Type 6\u{a0}% if that is meant", "6\u{a0}%"),
        ("mu", "0.16..0.10", "The friction range runs from large to small", ""),
        ("class", "9.8", "tabled for diameters up to 16\u{a0}mm", ""),
    ] {
        let mut typed = BoltText::default();
        typed.set("thread", "M18");
        typed.set(key, text);
        let error = resolve(&typed).errors.remove(0);
        assert!(error.key == key && error.sentence.contains(words), "{}", error.sentence);
        assert_eq!(error.remedies.concat(), remedy);
        typed.set(key, remedy);
        assert!(resolve(&typed).errors.is_empty(), "{remedy}");
    }
    for tool in ["0", "0.5 %", "1"] {
        let mut typed = BoltText::default();
        typed.set("tool", tool);
        assert!(resolve(&typed).errors.is_empty(), "{tool}");
    }
}

/// A joint with every field filled in.
const FULL: [(&str, &str); 26] = [
    ("thread", "M10"),
    ("class", "10.9"),
    ("spec", "30 N·m + 60°"),
    ("head", "custom"),
    ("bearing", "20"),
    ("hole", "11"),
    ("mu", "0.10..0.16"),
    ("mu-head", "0.12"),
    ("tool", "4 %"),
    ("grip", "40"),
    ("shank", "10"),
    ("clamped", "a356-t6"),
    ("outer", "50"),
    ("joint", "tapped"),
    ("into", "a380"),
    ("engaged", "22"),
    ("boss", "18"),
    ("wrench", "300"),
    ("adapter", "60"),
    ("adapter-angle", "45"),
    ("scale", "100"),
    ("reading", "26"),
    ("lever", "300"),
    ("heat", "80"),
    ("length-new", "55"),
    ("length-now", "55.1"),
];

/// Every id of the contract.
const CONTRACT: [&str; 34] = [
    "clamp-low",
    "clamp-mid",
    "clamp-high",
    "yield-use-low",
    "yield-use-mid",
    "yield-use-high",
    "clamp-90",
    "torque-90",
    "proof-load",
    "stress-area",
    "nut-factor",
    "angle-clamp-low",
    "angle-clamp-mid",
    "angle-clamp-high",
    "angle-to-yield",
    "past-yield",
    "bolt-stretch",
    "bolt-resilience",
    "parts-resilience",
    "engagement-required",
    "engagement-turns",
    "strip-load",
    "break-load",
    "strip-torque",
    "strip-margin",
    "wrench-setting",
    "reading-deviation",
    "twist-yield-torque",
    "twist-break-torque",
    "stop-torque",
    "hand-force",
    "heat-clearance",
    "heat-clamp-change",
    "hex-size",
];

#[test]
fn every_result_of_the_contract_is_there_once_when_all_is_given() {
    let assessment = assessed(&FULL);
    assert_eq!(assessment.errors, vec![]);
    for id in CONTRACT.iter().filter(|id| **id != "hex-size") {
        assert!(result(&assessment, id).is_some_and(f64::is_finite), "{id}");
    }
    let mut ids: Vec<String> = assessment
        .sections
        .iter()
        .flat_map(|section| &section.findings)
        .flat_map(|found| {
            found
                .amount
                .ends()
                .map(move |(end, _)| format!("{:?} {end:?}", found.id))
        })
        .collect();
    let count = ids.len();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), count, "no id twice");
    assert!(
        assessment
            .sections
            .iter()
            .flat_map(|section| &section.findings)
            .all(|found| {
                !found.working.equation.is_empty() && !found.method.is_empty() && !found.working.source.part.is_empty()
            })
    );
    assert_eq!(FIELDS.len(), FULL.len(), "every field is filled in above");
}

/// What each field's bad text takes away, and what it leaves.
#[test]
fn a_bad_text_takes_away_only_what_needs_it() {
    for (key, gone, stays) in [
        ("thread", "clamp-mid", "permanent-set"),
        ("class", "yield-use-mid", "clamp-mid"),
        ("spec", "clamp-mid", "torque-90"),
        ("head", "clamp-mid", "stress-area"),
        ("bearing", "clamp-mid", "stress-area"),
        ("hole", "clamp-mid", "strip-load"),
        ("mu", "clamp-mid", "wrench-setting"),
        ("mu-head", "torque-90", "proof-load"),
        ("tool", "clamp-mid", "clamp-90"),
        ("grip", "bolt-resilience", "clamp-mid"),
        ("shank", "angle-clamp-mid", "clamp-mid"),
        ("clamped", "parts-resilience", "strip-load"),
        ("outer", "angle-clamp-mid", "clamp-mid"),
        ("joint", "bolt-resilience", "strip-load"),
        ("into", "strip-load", "clamp-mid"),
        ("engaged", "strip-load", "engagement-required"),
        ("boss", "strip-load", "clamp-mid"),
        ("wrench", "wrench-setting", "clamp-mid"),
        ("adapter", "wrench-setting", "clamp-mid"),
        ("adapter-angle", "wrench-setting", "clamp-mid"),
        ("scale", "tool-permissible", "wrench-setting"),
        ("reading", "reading-deviation", "wrench-setting"),
        ("lever", "hand-force", "stop-torque"),
        ("heat", "heat-clearance", "angle-clamp-mid"),
        ("length-new", "permanent-set", "clamp-mid"),
        ("length-now", "permanent-set", "clamp-mid"),
    ] {
        let mut text = BoltText::default();
        for (field, typed) in FULL {
            text.set(field, typed);
        }
        assert!(text.set(key, "12 xyzzy"));
        let resolved = resolve(&text);
        let keys: Vec<&str> = resolved.errors.iter().map(|error| error.key).collect();
        assert_eq!(keys, [key]);
        assert!(resolved.errors[0].sentence.contains("xyzzy"), "{key}");
        let assessment = assess(&resolved);
        assert_eq!(result(&assessment, gone), None, "{key} should take {gone} away");
        assert!(result(&assessment, stays).is_some(), "{key} should leave {stays}");
    }
}

#[test]
fn values_that_do_not_go_together_are_named_at_their_field() {
    for (key, typed, sentence) in [
        ("boss", "13", "The boss is only 1.3 thread diameters wide"),
        (
            "shank",
            "41",
            "The shank of 41\u{a0}mm has to be smaller than the grip of 40\u{a0}mm",
        ),
        (
            "outer",
            "15",
            "The bearing diameter of 20\u{a0}mm has to be smaller than the outer diameter of 15\u{a0}mm",
        ),
    ] {
        let mut text = BoltText::default();
        for (field, typed) in FULL {
            text.set(field, typed);
        }
        text.set(key, typed);
        let assessment = assess(&resolve(&text));
        let error = assessment.errors.iter().find(|error| error.key == key).unwrap();
        assert!(error.sentence.starts_with(sentence), "{}", error.sentence);
    }
}
