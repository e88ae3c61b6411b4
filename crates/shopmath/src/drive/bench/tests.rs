//! The bench as a whole: the contract's ids, faults that take away only what needs them, and no
//! text that leads to a number that is none.

use super::edit::{Edit, apply};
use super::entry::PulleyEntry;
use super::*;
use crate::drive::fault::RouteFault;
use crate::quantity::{Quantity, print};
use crate::result::{Amount, Finding, Id};
use proptest::prelude::*;

fn with(changes: &[(&str, &str)]) -> DriveText {
    let mut texts = DriveText::demo();
    for (key, text) in changes {
        assert!(texts.set(key, text), "{key}");
    }
    texts
}

fn ids(assessment: &Assessment) -> Vec<String> {
    findings(assessment).flat_map(names).collect()
}

fn findings(assessment: &Assessment) -> impl Iterator<Item = &Finding> {
    assessment.sections.iter().flat_map(|section| &section.findings)
}

fn names(finding: &Finding) -> Vec<String> {
    let base = match finding.id {
        Id::Named(name) | Id::Row(name) => name.to_owned(),
        Id::Numbered(name, number) => format!("{name}-{number}"),
    };
    let ends = finding.amount.ends();
    ends.map(|(end, _)| end.map_or(base.clone(), |end| format!("{base}-{end}")))
        .collect()
}

fn has(assessment: &Assessment, id: &str) -> bool {
    ids(assessment).iter().any(|known| known == id)
}

fn value(assessment: &Assessment, id: &str) -> f64 {
    let found = findings(assessment)
        .find(|finding| names(finding).iter().any(|name| name == id))
        .unwrap();
    match found.amount {
        Amount::One(quantity) => quantity.si(),
        Amount::Range { .. } => panic!("{id} is a range"),
    }
}

fn cautions_of(assessment: &Assessment) -> Vec<&'static str> {
    findings(assessment)
        .flat_map(|finding| &finding.cautions)
        .map(|caution| caution.slug)
        .collect()
}

#[test]
fn the_demo_has_every_result_of_the_contract_once() {
    let assessment = assess(resolve(&DriveText::demo()));
    assert_eq!(assessment.faults, []);
    let ids = ids(&assessment);
    let mut wanted: Vec<String> = [
        "effective-length",
        "pitch-length",
        "take-up-low",
        "take-up-high",
        "arm-angle",
        "belt-per-degree",
        "strand-tension",
    ]
    .map(String::from)
    .to_vec();
    for base in ["wrap", "span", "speed", "slip-reserve", "hub-load"] {
        wanted.extend((1..=6).map(|number| format!("{base}-{number}")));
    }
    for id in wanted {
        assert_eq!(ids.iter().filter(|known| **known == id).count(), 1, "{id}");
    }
    let mut unique = ids.clone();
    unique.sort();
    unique.dedup();
    assert_eq!(unique.len(), ids.len());
}

#[test]
fn every_finding_names_its_method_and_source() {
    let all = with(&[
        ("stretch", "0.3 %"),
        ("seat", "0.1"),
        ("offset", "1"),
        ("apart", "300"),
        ("measured", "1463"),
        ("sink", "0.2"),
        ("swing", "3/8 in"),
    ]);
    let assessment = assess(resolve(&all));
    assert_eq!(assessment.faults, []);
    for id in [
        "arm-angle-worn",
        "misalignment",
        "rib-loss-length",
        "rib-loss-depth",
        "swing-angle",
        "swing-belt",
    ] {
        assert!(has(&assessment, id), "{id}");
    }
    for finding in findings(&assessment) {
        assert!(
            !finding.method.is_empty() && !finding.working.equation.is_empty(),
            "{:?}",
            finding.id
        );
        assert!(!finding.working.source.part.is_empty(), "{:?}", finding.id);
    }
}

#[test]
fn a_bad_text_takes_away_only_what_needs_it() {
    let rows: [(&str, &str, &[&str], &[&str]); 9] = [
        (
            "belt",
            "6PX1",
            &["arm-angle", "slip-reserve-1", "strand-tension"],
            &["take-up-low", "wrap-1"],
        ),
        (
            "tensioner",
            "arm@1",
            &["take-up-low", "hub-load-1"],
            &["effective-length", "strand-tension"],
        ),
        (
            "frequency",
            "x",
            &["strand-tension", "slip-reserve-1"],
            &["arm-angle", "span-1"],
        ),
        (
            "loads",
            "fan=1 kW",
            &["slip-reserve-1", "hub-load-1"],
            &["strand-tension", "arm-angle"],
        ),
        (
            "rpm",
            "fast",
            &["belt-speed", "slip-reserve-1"],
            &["speed-1", "strand-tension"],
        ),
        ("mu", "9", &["slip-reserve-1"], &["effective-length", "strand-tension"]),
        (
            "pulleys",
            "a:rib:0,0",
            &["effective-length", "take-up-low", "wrap-1"],
            &["strand-tension"],
        ),
        ("back", "thick", &["effective-length"], &["strand-tension"]),
        ("profile", "PX", &["effective-length"], &[]),
    ];
    for (key, text, gone, kept) in rows {
        let assessment = assess(resolve(&with(&[(key, text)])));
        assert!(assessment.faults.iter().any(|fault| fault.key == key), "{key}");
        for id in gone {
            assert!(!has(&assessment, id), "{id} with {key}={text}");
        }
        for id in kept {
            assert!(has(&assessment, id), "{id} with {key}={text}");
        }
    }
}

#[test]
fn each_way_to_break_a_drive_is_named_at_its_pulley() {
    type Is = fn(&RouteFault) -> bool;
    let rows: [(&str, Is, &str); 7] = [
        (
            "a:rib:0,0:150",
            |fault| matches!(fault, RouteFault::TooFew(1)),
            "two pulleys at least",
        ),
        (
            "a:back:0,0:150;b:back:300,0:60",
            |fault| matches!(fault, RouteFault::NoneOnRibs),
            "Set those with grooves",
        ),
        (
            "a:rib:0,0:150;b:rib:100,0:60",
            |fault| matches!(fault, RouteFault::Overlap(0, 1)),
            "a and b overlap",
        ),
        (
            "a:rib:0,0:150;i:back:150,80:60;b:rib:300,0:60;c:rib:100,104:40",
            |fault| matches!(fault, RouteFault::BelowMinimum(3)),
            "c is 40 mm across; a ribbed PK pulley needs 45 mm",
        ),
        (
            "a:rib:0,0:150;idler:rib:150,20:50;b:rib:300,0:60;c:rib:100,250:120",
            |fault| matches!(fault, RouteFault::Missed(1)),
            "misses idler on its ribbed side",
        ),
        (
            "a:rib:0,0:80;b:rib:400,400:80;c:rib:400,0:80;d:rib:0,400:80",
            |fault| matches!(fault, RouteFault::SpansCross(..)),
            "The belt crosses itself",
        ),
        (
            "a:rib:0,0:150;b:rib:1e6,0:60",
            |fault| matches!(fault, RouteFault::FarAway(1)),
            "more than 100 m",
        ),
    ];
    for (text, is, says) in rows {
        let bench = resolve(&with(&[("pulleys", text), ("tensioner", ""), ("loads", "")]));
        assert!(bench.route_faults.iter().any(is), "{text}: {:?}", bench.route_faults);
        let sentences: Vec<&str> = bench.faults.iter().map(|fault| fault.sentence.as_str()).collect();
        assert!(
            sentences.iter().any(|sentence| sentence.contains(says)),
            "{sentences:?}"
        );
        let drawing = assess(bench).drawing;
        assert!(
            drawing
                .marks
                .iter()
                .all(|mark| mark.x.is_finite() && !mark.sentence.is_empty())
        );
    }
}

#[test]
fn a_link_with_too_many_pulleys_is_refused_at_once() {
    let list: Vec<String> = (0..20_000)
        .map(|index| format!("p{index}:rib:{},0:60", index * 70))
        .collect();
    let bench = resolve(&with(&[
        ("pulleys", &list.join(";")),
        ("tensioner", "p1@0,90,0..40"),
        ("loads", ""),
    ]));
    assert_eq!(bench.route_faults, [RouteFault::TooMany]);
}

#[test]
fn a_span_through_a_pulley_is_named() {
    let through = "a:rib:0,0:100;b:rib:400,0:100;deep:back:60,130:150;c:rib:200,350:100";
    let bench = resolve(&with(&[("pulleys", through), ("tensioner", ""), ("loads", "")]));
    assert_eq!(bench.route_faults[0], RouteFault::SpanThrough { span: 3, pulley: 2 });
    assert!(
        bench.faults[0].sentence.contains("from c to a runs through deep"),
        "{:?}",
        bench.faults[0]
    );
    let drawing = assess(bench).drawing;
    assert!(drawing.spans[3].faulty && drawing.discs[2].faulty && !drawing.discs[1].faulty);
}

#[test]
fn the_second_harmonic_is_suspected_where_the_spring_says_a_quarter() {
    assert!(cautions_of(&assess(resolve(&DriveText::demo()))).contains(&"second-harmonic"));
    let doubled = assess(resolve(&with(&[("frequency", "210 Hz")])));
    assert!(cautions_of(&doubled).contains(&"likely-second-harmonic"));
    let ratio = value(&doubled, "strand-tension") / value(&doubled, "strand-tension-second");
    assert!((ratio - 4.0).abs() < 1e-12);
}

#[test]
fn wear_and_swing_warn_at_the_published_limits() {
    for (key, text, slug, warns) in [
        ("sink", "0.12", "ribs-worn", false),
        ("sink", "0.13", "ribs-worn", true),
        ("sink", "0.24", "ribs-worn-out", false),
        ("sink", "0.25", "ribs-worn-out", true),
        ("swing", "0", "swing-watch", false),
        ("swing", "1/8 in", "swing-watch", true),
        ("swing", "3/8 in", "swing-worn-out", true),
    ] {
        let slugs = cautions_of(&assess(resolve(&with(&[(key, text)]))));
        assert_eq!(slugs.contains(&slug), warns, "{key}={text}: {slugs:?}");
    }
    for (offset, warns) in [("1.5", false), ("1.6", true)] {
        let slugs = cautions_of(&assess(resolve(&with(&[("offset", offset), ("apart", "300")]))));
        assert_eq!(slugs.contains(&"out-of-line"), warns, "{offset}");
    }
}

#[test]
fn a_gauge_that_shows_more_wear_than_the_length_allows_is_doubted() {
    for (measured, sink, doubted) in [("1460", "0.4", true), ("1463", "0.4", false), ("1470", "0", false)] {
        let typed = [("measured", measured), ("sink", sink)];
        let slugs = cautions_of(&assess(resolve(&with(&typed))));
        assert_eq!(slugs.contains(&"wear-disagrees"), doubted, "{measured}, {sink}");
    }
    assert!(!cautions_of(&assess(resolve(&with(&[("sink", "0.4")])))).contains(&"wear-disagrees"));
}

#[test]
fn pounds_per_foot_are_no_torque_where_a_mass_is_wanted() {
    let faults = assess(resolve(&with(&[("mass", "0.08 lb/ft")]))).faults;
    assert!(
        faults[0].sentence.contains("One of it is 1.488 kg/m"),
        "{}",
        faults[0].sentence
    );
    // 0.453 592 37 kg over 0.3048 m, both exact by definition (SP 811).
    assert!((0.453_592_37_f64 / 0.3048 - 1.488).abs() < 5e-4);
}

#[test]
fn belts_too_short_and_too_long_are_refused_with_the_limit() {
    for (belt, says) in [("6PK1400", "does not go on"), ("6PK1500", "stays slack")] {
        let assessment = assess(resolve(&with(&[("belt", belt)])));
        let sentence = &assessment.faults[0].sentence;
        assert!(
            assessment.faults[0].key == "belt" && sentence.contains(says),
            "{sentence}"
        );
        assert!(!has(&assessment, "arm-angle") && has(&assessment, "take-up-low"));
    }
    // The next belts stand beside the one named, and the tensioner says what it makes of each.
    let near_end = assess(resolve(&with(&[("belt", "6PK1477")])));
    let names: Vec<String> = near_end
        .candidates
        .iter()
        .map(|candidate| candidate.belt.to_string())
        .collect();
    assert_eq!(names, ["6PK1472", "6PK1477", "6PK1482"]);
    assert!(
        near_end.candidates[1].arm.as_ref().unwrap().is_ok() && near_end.candidates[2].arm.as_ref().unwrap().is_err()
    );
}

/// The demo's loads by hand: 12 N·m at a pitch radius of 58 mm; 0.6 kW and 90 A · 14 V / 60 % at the
/// belt speed of 2000 rpm on a pitch radius of 80 mm.
#[test]
fn pulls_of_the_three_kinds_of_load() {
    let demo = assess(resolve(&DriveText::demo()));
    let belt_speed = 2000.0 / 60.0 * core::f64::consts::TAU * 0.080;
    for (id, newtons) in [
        ("belt-pull-3", 90.0 * 14.0 / 0.6 / belt_speed),
        ("belt-pull-5", 600.0 / belt_speed),
        ("belt-pull-6", 12.0 / 0.058),
    ] {
        assert!((value(&demo, id) - newtons).abs() < 1e-9, "{id}");
    }
    // The strand that leaves the driver is held by the tensioner, the one that arrives carries all.
    let rise = value(&demo, "span-tension-6") - value(&demo, "span-tension-1");
    let all: f64 = [3, 5, 6]
        .map(|number| value(&demo, &format!("belt-pull-{number}")))
        .iter()
        .sum();
    assert!((rise - all).abs() < 1e-9);
    let mass = 0.5 * (0.020 + 0.025) * 6.0;
    let own_motion = value(&demo, "span-tension-1") - value(&demo, "strand-tension");
    assert!(
        (own_motion - mass * belt_speed * belt_speed).abs() < 1e-9,
        "{own_motion}"
    );
}

#[test]
fn a_mirrored_tensioner_has_used_the_same_share() {
    let texts = DriveText::demo();
    let demo = assess(resolve(&texts));
    let mirrored = texts.get("pulleys").unwrap().split(';').map(|entry| {
        let (before, after) = entry.split_once(',').unwrap();
        let (name, x) = before.rsplit_once(':').unwrap();
        format!("{name}:{},{after}", -x.parse::<f64>().unwrap())
    });
    let pulleys = mirrored.collect::<Vec<_>>().join(";");
    let mirrored = assess(resolve(&with(&[
        ("pulleys", &pulleys),
        ("tensioner", "tensioner@128,44,85..125"),
    ])));
    assert_eq!(mirrored.faults, []);
    for id in [
        "arm-share",
        "belt-left",
        "belt-per-degree",
        "spring-tension",
        "slip-reserve-3",
        "hub-load-2",
    ] {
        assert!(
            (value(&demo, id) - value(&mirrored, id)).abs() < 1e-9 * value(&demo, id),
            "{id}"
        );
    }
    let (here, there) = (value(&demo, "arm-angle"), value(&mirrored, "arm-angle"));
    assert!((here + there - core::f64::consts::PI).abs() < 1e-9, "{here} {there}");
}

#[test]
fn several_and_no_arm_positions_are_said() {
    let past_dead_centre = with(&[
        (
            "pulleys",
            "crank:rib:0,0:156;tensioner:back:-112,118:70;alternator:rib:-205,252:56;idler:back:-75,262:70;water pump:rib:55,205:118;compressor:rib:238,72:112",
        ),
        ("tensioner", "tensioner@-190,90,-20..60"),
        ("belt", "6PK1438"),
    ]);
    let assessment = assess(resolve(&past_dead_centre));
    assert_eq!(assessment.faults, []);
    let (one, other) = (value(&assessment, "arm-angle"), value(&assessment, "arm-angle-also-1"));
    let dead_centre = 31.4_f64.to_radians();
    assert!(one < dead_centre && dead_centre < other, "{one} {other}");
    let slugs = cautions_of(&assessment);
    assert!(slugs.contains(&"several-positions") && slugs.contains(&"dead-centre"));
    assert!(value(&assessment, "take-up-most") > 1.440);
    // Turned half round the pivot, the pulley is nowhere near the belt.
    let away = assess(resolve(&with(&[("tensioner", "tensioner@-128,44,200..240")])));
    assert!(
        away.faults
            .iter()
            .any(|fault| fault.key == "tensioner" && fault.sentence.starts_with("At no angle"))
    );
    assert!(!has(&away, "arm-angle") && has(&away, "effective-length"));
}

#[test]
fn stretch_moves_the_arm_until_the_belt_no_longer_fits() {
    let share = |stretch: &str| {
        let assessment = assess(resolve(&with(&[("stretch", stretch)])));
        has(&assessment, "arm-share-worn").then(|| value(&assessment, "arm-share-worn"))
    };
    let now = value(&assess(resolve(&DriveText::demo())), "arm-share");
    assert!(share("0.5 %").unwrap() > now && share("1.0 %").unwrap() > share("0.5 %").unwrap());
    assert_eq!(share("2 %"), None);
    let half_read = assess(resolve(&with(&[("stretch", "0.5 %"), ("seat", "deep")])));
    assert!(!has(&half_read, "arm-share-worn") && has(&half_read, "arm-share"));
    let left = value(&assess(resolve(&DriveText::demo())), "stretch-left") * 100.0;
    assert!(share(&format!("{:.3} %", left - 0.002)).is_some() && share(&format!("{:.3} %", left + 0.002)).is_none());
}

#[test]
fn without_a_tensioner_the_loop_keeps_its_length() {
    let fixed = with(&[("tensioner", ""), ("spring", "")]);
    let assessment = assess(resolve(&fixed));
    assert!(has(&assessment, "slip-reserve-1") && !has(&assessment, "take-up-low"));
    assert!(value(&assessment, "hub-load-1") < value(&assess(resolve(&DriveText::demo())), "hub-load-1"));
}

#[test]
fn an_unmeasured_tension_is_said_to_be_assumed() {
    let guessed = assess(resolve(&with(&[("strand", ""), ("frequency", ""), ("spring", "")])));
    assert!(has(&guessed, "slip-reserve-1") && cautions_of(&guessed).contains(&"tension-assumed"));
    assert!(!cautions_of(&assess(resolve(&DriveText::demo()))).contains(&"tension-assumed"));
}

#[test]
fn links_read_back_whatever_was_changed() {
    let demo = DriveText::demo();
    assert!(demo.link().is_empty());
    let edited = [
        with(&[("rpm", "3000 rpm")]),
        with(&[("tensioner", ""), ("belt", "")]),
        with(&[("pulleys", "")]),
        apply(&demo, &Edit::Reorder { pulley: 2, to: 4 }).unwrap(),
        apply(
            &demo,
            &Edit::Rename {
                pulley: 1,
                name: "arm".into(),
            },
        )
        .unwrap(),
        apply(&demo, &Edit::Remove(1)).unwrap(),
        apply(&demo, &Edit::AddAfter(5)).unwrap(),
    ];
    for texts in edited {
        let link = texts.link();
        let pairs: Vec<(&str, &str)> = link.iter().map(|(key, text)| (*key, text.as_str())).collect();
        assert_eq!(DriveText::from_link(pairs), texts);
    }
}

#[test]
fn edits_keep_the_texts_together() {
    let demo = DriveText::demo();
    let renamed = apply(
        &demo,
        &Edit::Rename {
            pulley: 1,
            name: "arm: 1".into(),
        },
    )
    .unwrap();
    assert_eq!(renamed.get("tensioner"), Some("arm  1@-128,44,55..95"));
    assert_eq!(assess(resolve(&renamed)).faults, []);
    let renamed = apply(
        &demo,
        &Edit::Rename {
            pulley: 5,
            name: "aircon".into(),
        },
    )
    .unwrap();
    assert!(renamed.get("loads").unwrap().contains("aircon=12 N·m"));
    assert_eq!(assess(resolve(&renamed)).faults, []);
    let removed = apply(&demo, &Edit::Remove(5)).unwrap();
    assert_eq!(removed.get("loads"), Some("alternator=90 A 14 V; water pump=0.6 kW"));
    assert!(apply(&demo, &Edit::Remove(6)).is_none());
    let moved = apply(
        &demo,
        &Edit::Move {
            pulley: 3,
            x: f64::NAN,
            y: 0.0,
        },
    );
    assert!(moved.is_none());
}

#[test]
fn a_removed_pulley_comes_back_beside_what_was_changed_since() {
    let demo = DriveText::demo();
    let mut since = apply(&demo, &Edit::Remove(2)).unwrap();
    assert!(!since.get("loads").unwrap().contains("alternator"));
    since = apply(
        &since,
        &Edit::Resize {
            pulley: 0,
            diameter: 150.0,
        },
    )
    .unwrap();
    since.set("rpm", "900 rpm");
    let back = edit::bring_back(&since, &demo, 2).unwrap();
    assert_eq!(back.get("loads"), demo.get("loads"));
    assert_eq!(back.get("rpm"), Some("900 rpm"));
    assert!(
        back.get("pulleys")
            .unwrap()
            .contains("122:70;alternator:rib:-205,262:56;idler")
    );
    assert!(back.get("pulleys").unwrap().contains("crank:rib:0,0:150"));
    // Loads written anew are not written over, and a pulley that is there does not come twice.
    since.set("loads", "compressor=5 N·m");
    assert_eq!(
        edit::bring_back(&since, &demo, 2).unwrap().get("loads"),
        Some("compressor=5 N·m")
    );
    assert_eq!(edit::bring_back(&demo, &demo, 2), None);
}

#[test]
fn the_next_lengths_need_their_step() {
    let candidates = |step: &str| assess(resolve(&with(&[("step", step)]))).candidates.len();
    assert_eq!(["5 mm", "", "far"].map(candidates), [3, 3, 1]);
}

#[test]
fn ones_own_drive_begins_with_a_route() {
    let begin = assess(resolve(&DriveText::begin()));
    assert_eq!(begin.faults, []);
    assert!(has(&begin, "effective-length") && has(&begin, "wrap-2") && !has(&begin, "wrap-3"));
}

#[test]
fn every_field_has_a_label_a_section_and_a_default_it_can_read() {
    for field in &FIELDS {
        assert!(!field.label.is_empty() && !field.section.is_empty());
        assert!(
            FIELDS.iter().filter(|other| other.key == field.key).count() == 1,
            "{}",
            field.key
        );
        assert_eq!(super::field(field.key).map(|found| found.key), Some(field.key));
    }
    // The defaults alone are a sound bench.
    assert_eq!(assess(resolve(&DriveText::default())).faults, []);
}

fn all_finite(assessment: &Assessment) -> bool {
    let amounts = findings(assessment).flat_map(|finding| {
        let terms = finding.working.terms.iter().map(|term| term.amount);
        terms
            .chain([finding.amount])
            .flat_map(|amount| amount.ends().collect::<Vec<_>>())
    });
    let numbers = amounts.map(|(_, quantity)| quantity.si());
    let drawing = &assessment.drawing;
    let shapes = drawing
        .discs
        .iter()
        .flat_map(|disc| [disc.x, disc.y, disc.radius, disc.turns])
        .chain(
            drawing
                .spans
                .iter()
                .flat_map(|span| [span.x1, span.y1, span.x2, span.y2, span.direction]),
        )
        .chain(
            drawing
                .arcs
                .iter()
                .flat_map(|arc| [arc.x, arc.y, arc.radius, arc.start, arc.sweep]),
        )
        .chain(
            drawing
                .arm
                .iter()
                .flat_map(|arm| [arm.x, arm.y, arm.length, arm.low, arm.high, arm.drawn]),
        )
        .chain(drawing.marks.iter().flat_map(|mark| [mark.x, mark.y]))
        .chain(
            drawing
                .bounds
                .iter()
                .flat_map(|bounds| [bounds.left, bounds.bottom, bounds.right, bounds.top]),
        );
    numbers.chain(shapes).all(f64::is_finite)
}

/// A text as a thumb might leave it: near a right one, or noise.
fn some_text() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        "\\PC{0,30}",
        "-?[0-9]{1,15}(\\.[0-9]{1,3})?( ?(mm|in|N|N·m|kW|rpm|%|Hz|kg/m))?",
        "[a-c]:(rib|back):-?[0-9]{1,3},-?[0-9]{1,3}:[0-9]{1,3};[d-f]:(rib|back):-?[0-9]{1,3},-?[0-9]{1,3}:[0-9]{1,3};g:rib:[0-9]{1,3},[0-9]{1,3}:[0-9]{2}",
        "(crank|tensioner|idler)@-?[0-9]{1,3},-?[0-9]{1,3},-?[0-9]{1,3}\\.\\.[0-9]{1,3}",
        "[0-9]{1,2}P[HJKLMX][0-9]{2,5}",
        "(alternator|compressor|idler)=[0-9]{1,4} ?(A|A 14 V|kW|N·m|hp)",
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]
    #[test]
    fn no_text_leads_to_a_number_that_is_none(
        changes in prop::collection::vec((0..FIELDS.len(), some_text()), 1..5),
    ) {
        let mut texts = DriveText::demo();
        for (index, text) in &changes {
            texts.set(FIELDS[*index].key, text);
        }
        let assessment = assess(resolve(&texts));
        prop_assert!(all_finite(&assessment), "{texts:?}");
        for fault in &assessment.faults {
            prop_assert!(!fault.sentence.is_empty());
        }
    }

    #[test]
    fn any_place_a_thumb_drags_a_pulley_to_is_finite(
        pulley in 0..6_usize, x in -400.0..400.0_f64, y in -400.0..400.0_f64, diameter in 1.0..300.0_f64,
    ) {
        let moved = apply(&DriveText::demo(), &Edit::Move { pulley, x, y }).unwrap();
        let sized = apply(&moved, &Edit::Resize { pulley, diameter }).unwrap();
        let assessment = assess(resolve(&sized));
        prop_assert!(all_finite(&assessment));
        prop_assert!(has(&assessment, "effective-length") || !assessment.faults.is_empty());
    }
}

/// The step above and below, and a belt named far off, have no say in which belt is nearest.
#[test]
fn the_nearest_belt_is_the_one_nearest_to_the_route() {
    for changes in [
        &[("belt", "")][..],
        &[("belt", "6PK1600")],
        &[("belt", "6PK1400"), ("step", "25 mm")],
    ] {
        let texts = with(changes);
        for assessment in [assess(resolve(&texts)), glance(resolve(&texts))] {
            let nearest = assessment.nearest.map(|belt| belt.to_string());
            assert_eq!(nearest.as_deref(), Some("6PK1460"), "{changes:?}");
        }
    }
    assert_eq!(assess(resolve(&with(&[("pulleys", "a:rib:0,0:150")]))).nearest, None);
}

/// What rests on a pulley that cannot be read is gone, what does not stays, and the drawing with it.
#[test]
fn a_pulley_that_cannot_be_read_takes_its_numbers_away() {
    let texts = with(&[
        ("strand", "227 mm"),
        ("frequency", "105 Hz"),
        ("spring", "19 N·m"),
        ("swing", "5 mm"),
        ("stretch", "0.3 %"),
    ]);
    let whole = assess(resolve(&texts));
    let stale = assess(resolve(&texts).without(1, PulleyEntry::Diameter));
    let kept = ids(&stale);
    assert_eq!(
        kept,
        [
            "strand-tension",
            "strand-tension-span-low",
            "strand-tension-span-mid",
            "strand-tension-span-high",
            "strand-tension-second"
        ]
    );
    assert!(stale.candidates.is_empty() && ids(&whole).len() > 30);
    let places = |assessment: &Assessment| {
        assessment
            .drawing
            .discs
            .iter()
            .map(|disc| (disc.x, disc.y))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        (places(&stale), &stale.drawing.arcs),
        (places(&whole), &whole.drawing.arcs)
    );
    assert_eq!(
        (stale.drawing.bounds, &stale.drawing.arm.as_ref().map(|arm| arm.pulley)),
        (whole.drawing.bounds, &Some(1))
    );
    let faulty: Vec<bool> = stale.drawing.discs.iter().map(|disc| disc.faulty).collect();
    assert_eq!(faulty, [false, true, false, false, false, false]);
    let faults: Vec<&str> = stale.faults.iter().map(|fault| fault.key).collect();
    assert_eq!(faults, ["pulleys"]);
    // One sentence in place of those the old list had, and none for a pulley that is not there.
    let broken = resolve(&with(&[("pulleys", "a:rib:0,0:150;b:rib:100,0:60")])).without(0, PulleyEntry::Diameter);
    assert_eq!(broken.route_faults, [RouteFault::Unread(0)]);
    assert!(resolve(&texts).without(6, PulleyEntry::Diameter).route.is_some());
}

/// Pulleys added one after another, from none at all, and after each of the demo's and of a drive
/// that runs the other way: the belt runs over each, and each has a name of its own.
#[test]
fn an_added_pulley_runs() {
    let add = |texts: &DriveText, after: usize| {
        let added = apply(texts, &Edit::AddAfter(after)).unwrap();
        let bench = resolve(&added);
        let list = added.get("pulleys").unwrap().to_owned();
        if bench.layout.as_ref().unwrap().pulleys.len() > 1 {
            assert!(bench.route.is_some(), "{list}: {:?}", bench.faults);
        }
        (added, list)
    };
    let (fresh, list) = add(&DriveText::begin(), 1);
    assert!(
        list.starts_with("crank:rib:0,0:150;pulley 2:rib:200,200:60;pulley 3:rib:"),
        "{list}"
    );
    assert!(add(&DriveText::begin(), 0).1.contains(";pulley 3:rib:"));
    let (_, list) = add(&apply(&fresh, &Edit::Remove(1)).unwrap(), 1);
    assert!(list.contains(";pulley 3:") && list.contains(";pulley 4:"), "{list}");

    let mut texts = with(&[("pulleys", ""), ("tensioner", ""), ("loads", "")]);
    for count in 0..8_usize {
        texts = add(&texts, count.saturating_sub(1)).0;
    }
    assert!(
        texts
            .get("pulleys")
            .unwrap()
            .starts_with("crank:rib:0,0:150;pulley 2:rib:200,200:60;")
    );
    let large = with(&[("pulleys", "drum:rib:0,0:900"), ("tensioner", ""), ("loads", "")]);
    add(&large, 0);
    let backwards =
        "c:rib:240,78:112;w:rib:55,210:118;i:back:-75,268:70;a:rib:-205,262:56;t:back:-104,122:70;k:rib:0,0:156";
    for texts in [
        DriveText::demo(),
        with(&[("pulleys", backwards), ("tensioner", ""), ("loads", "")]),
    ] {
        for after in 0..6 {
            let (_, list) = add(&texts, after);
            assert!(list.contains(";pulley 7:"), "{list}");
        }
    }
    // Where nothing runs, it stands where it always did: halfway.
    let broken = with(&[("pulleys", "a:rib:0,0:150;b:rib:100,0:60")]);
    let added = apply(&broken, &Edit::AddAfter(0)).unwrap();
    assert!(added.get("pulleys").unwrap().contains("pulley 3:rib:50,0:60"));
}

/// Far beyond what a PK belt is run at, it is said where the tension stands and where it is used.
#[test]
fn a_tension_no_belt_is_run_at_is_said() {
    let said = |changes: &[(&str, &str)]| {
        let slugs = cautions_of(&assess(resolve(&with(changes))));
        slugs.iter().filter(|slug| **slug == "tension-unlikely").count()
    };
    let strand = |frequency| [("strand", "227 mm"), ("mass", "0.13 kg/m"), ("frequency", frequency)];
    assert_eq!(said(&strand("105 Hz")), 0);
    assert_eq!(said(&strand("2000 Hz")), 2);
    assert_eq!(said(&strand("5 Hz")), 2);
    // 4·m·L²·f² of 6 ribs at 200 N each is 1200 N: 211.6 Hz; at 10 N each 60 N: 47.3 Hz.
    assert_eq!((said(&strand("211.5 Hz")), said(&strand("211.8 Hz"))), (0, 2));
    assert_eq!((said(&strand("47.4 Hz")), said(&strand("47.2 Hz"))), (0, 2));
    // A published case, 615.5 N on a belt of five ribs.
    let published = [
        ("strand", "170 mm"),
        ("mass", "0.11 kg/m"),
        ("frequency", "220 Hz"),
        ("ribs", "5"),
        ("belt", ""),
    ];
    assert_eq!(said(&published), 0);
    assert_eq!(
        (
            said(&[("tension", "1300 N"), ("strand", ""), ("spring", "")]),
            said(&[])
        ),
        (1, 0)
    );
    let other = [
        ("profile", "PJ"),
        ("belt", ""),
        ("strand", "227 mm"),
        ("mass", "0.13 kg/m"),
        ("frequency", "2000 Hz"),
    ];
    assert_eq!(said(&other), 0);
}

/// Without a load there is no reserve against slip: the figure is called what it is.
#[test]
fn a_pulley_without_a_load_is_told_from_a_reserve() {
    let names = |texts: &DriveText| -> Vec<&str> {
        let assessment = assess(resolve(texts));
        let reserves = findings(&assessment).filter(|finding| matches!(finding.id, Id::Numbered("slip-reserve", _)));
        reserves.map(|finding| finding.name).collect()
    };
    let (reserve, idle) = ("slip reserve", "grip of its wrap, no load");
    assert_eq!(
        names(&DriveText::demo()),
        [reserve, idle, reserve, idle, reserve, reserve]
    );
    assert_eq!(names(&with(&[("loads", "")])), [idle; 6]);
}

/// A typed value survives the way through the texts.
#[test]
fn values_keep_their_own_units() {
    let bench = resolve(&with(&[("spring", "14 ft-lb")]));
    let Some(Quantity::Torque(torque)) = bench.value("spring") else {
        panic!("no torque");
    };
    let text = print::quantity(torque.into(), crate::quantity::Unit::PoundForceFoot);
    assert_eq!(text, "14\u{a0}lbf·ft");
}

/// On each pulley of the demo but the driver, and on drives just begun, the arm that is guessed takes a belt at
/// both stops; taken away, the drive is as it was.
#[test]
fn a_guessed_arm_holds_belts_all_through_its_sweep() {
    let bare = with(&[("tensioner", "")]);
    let three = apply(&DriveText::begin(), &Edit::AddAfter(1)).unwrap();
    for (texts, pulley) in [1, 2, 3, 4, 5].map(|pulley| (&bare, pulley)).into_iter().chain([
        (&three, 1),
        (&three, 2),
        (&DriveText::begin(), 1),
    ]) {
        let held = apply(texts, &Edit::Hold(pulley)).unwrap();
        let text = held.get("tensioner").unwrap();
        let assessment = assess(resolve(&held));
        let arm = assessment.drawing.arm.as_ref();
        assert_eq!(arm.map(|arm| arm.pulley), Some(pulley), "{text}");
        assert!(
            arm.is_some_and(|arm| arm.low < arm.drawn && arm.drawn < arm.high),
            "{text}"
        );
        let cautions = cautions_of(&assessment);
        assert!(
            has(&assessment, "take-up-low")
                && !cautions.contains(&"stop-not-clear")
                && !cautions.contains(&"dead-centre"),
            "{text}: {cautions:?} {:?}",
            assessment.faults
        );
        let length = |texts: &DriveText| value(&assess(resolve(texts)), "effective-length");
        assert_eq!(length(&held).to_bits(), length(texts).to_bits());
        assert_eq!(apply(&held, &Edit::Release).as_ref(), Some(texts));
    }
    // Where no belt runs there is an arm all the same, to be put right with the pulleys.
    let broken = with(&[("pulleys", "a:rib:0,0:150;b:rib:100,0:60"), ("tensioner", "")]);
    let held = apply(&broken, &Edit::Hold(1)).unwrap();
    assert!(resolve(&held).tensioner.is_some());
    assert_eq!(apply(&broken, &Edit::Hold(2)), None);
}

/// The figures of an arm go in one by one, also by way of a sweep that is backwards meanwhile.
#[test]
fn the_arm_and_the_loads_are_set_figure_by_figure() {
    use super::entry::{ArmEntries, arm, change, load};
    let mut texts = with(&[("tensioner", "idler@-75,200,200..220")]);
    for (entry, typed, wrong) in [
        (PulleyEntry::PivotAcross, "-60,5", false),
        (PulleyEntry::PivotUp, "205 mm", false),
        (PulleyEntry::LowStop, "240°", true),
        (PulleyEntry::HighStop, "275", false),
    ] {
        let edit = change(&texts, 3, entry, typed).unwrap().unwrap();
        texts = apply(&texts, &edit).unwrap();
        let ArmEntries { wrong: said, .. } = arm(&texts, 3).unwrap();
        assert_eq!(said.is_some(), wrong, "{typed}: {said:?}");
    }
    assert_eq!(texts.get("tensioner"), Some("idler@-60.5,205,240..275"));
    for typed in ["", "high", "5 mm"] {
        assert!(change(&texts, 3, PulleyEntry::LowStop, typed).is_err(), "{typed}");
    }
    for typed in ["0,2 kW", "a lot", "90 A; 14 V"] {
        let edit = change(&texts, 3, PulleyEntry::Load, typed).unwrap().unwrap();
        texts = apply(&texts, &edit).unwrap();
        assert_eq!(load(&texts, 3).unwrap(), typed.replace(';', " "));
        let sound = !resolve(&texts).faults.iter().any(|fault| fault.key == "loads");
        assert_eq!(sound, typed != "a lot", "{typed}");
    }
    let none = change(&texts, 3, PulleyEntry::Load, " ").unwrap().unwrap();
    assert_eq!(
        apply(&texts, &none).unwrap().get("loads"),
        DriveText::demo().get("loads")
    );
}

#[test]
fn what_cracks_tell_is_said_once() {
    for changes in [
        &[("measured", "1466 mm"), ("sink", "0.2 mm")][..],
        &[("measured", "1455 mm")],
        &[("sink", "0.2 mm")],
    ] {
        let said = cautions_of(&assess(resolve(&with(changes))));
        let cracks = said.iter().filter(|slug| **slug == "cracks").count();
        assert_eq!(cracks, 1, "{changes:?}: {said:?}");
    }
}

/// A belt that the arm does not hold puts it nowhere: no tension is taken where it is drawn. Without a belt it
/// is, and says so.
#[test]
fn a_belt_that_does_not_fit_leaves_no_tension() {
    let gone = [
        "spring-tension",
        "spring-torque",
        "belt-per-degree",
        "set-tension",
        "slip-reserve-1",
        "hub-load-1",
    ];
    for changes in [
        &[("tensioner", "tensioner@-128,44,55..60")][..],
        &[("belt", "6PK1300")],
        &[("belt", "6PK1900")],
        &[("belt", "6PX1")],
    ] {
        let assessment = assess(resolve(&with(changes)));
        assert!(assessment.faults.iter().any(|fault| fault.key == "belt"), "{changes:?}");
        for id in gone {
            assert!(!has(&assessment, id), "{id} with {changes:?}");
        }
        assert!(has(&assessment, "effective-length") && has(&assessment, "take-up-low"));
    }
    let unnamed = assess(resolve(&with(&[("belt", "")])));
    assert!(gone.iter().all(|id| has(&unnamed, id)));
    let method = |assessment: &Assessment| {
        let mut spring = findings(assessment).filter(|finding| finding.id == Id::Named("spring-tension"));
        spring.next().map(|finding| finding.method)
    };
    assert!(method(&unnamed).unwrap().contains("as drawn"));
    assert!(
        !method(&assess(resolve(&DriveText::demo())))
            .unwrap()
            .contains("as drawn")
    );
    // Drawn beyond its stops, the arm stands nowhere.
    let beyond = assess(resolve(&with(&[
        ("belt", ""),
        ("tensioner", "tensioner@-128,44,55..60"),
    ])));
    assert!(!has(&beyond, "spring-tension") && !has(&beyond, "belt-per-degree"));
}

/// Ribs that cannot be read are not other ribs than the belt's, and a belt that cannot be read has not the
/// drive's.
#[test]
fn pulleys_that_take_a_belt_two_ways_are_told_of() {
    let both = "crank:rib:0,0:150;ac:rib:300,0:130;i:back:140,-20:60";
    for (pulleys, told) in [
        (both, true),
        ("crank:rib:0,0:150;ac:rib:300,0:130;i:back:140,60:60", false),
    ] {
        let assessment = assess(resolve(&with(&[
            ("pulleys", pulleys),
            ("tensioner", ""),
            ("loads", ""),
        ])));
        assert!(has(&assessment, "effective-length"), "{pulleys}");
        assert_eq!(cautions_of(&assessment).contains(&"two-routes"), told, "{pulleys}");
    }
    assert!(!cautions_of(&assess(resolve(&DriveText::demo()))).contains(&"two-routes"));
}

#[test]
fn ribs_that_are_unknown_are_compared_with_none() {
    let said = |ribs: &str| cautions_of(&assess(resolve(&with(&[("ribs", ribs)])))).contains(&"ribs-differ");
    assert!(said("5") && !said("6") && !said("six"));
    let bare = [("belt", "5PK"), ("spring", ""), ("tensioner", "")];
    assert!(!has(&assess(resolve(&with(&bare))), "strand-tension"));
    let weighed = [&bare[..], &[("mass", "0.1 kg/m")]].concat();
    assert!(has(&assess(resolve(&with(&weighed))), "strand-tension"));
}

#[test]
fn a_belt_much_shorter_than_its_name_is_remarked_on() {
    for (measured, remarked) in [("1440 mm", true), ("1455 mm", false), ("1466 mm", false)] {
        let said = cautions_of(&assess(resolve(&with(&[("measured", measured)]))));
        assert_eq!(said.contains(&"belt-shorter"), remarked, "{measured}");
    }
}

/// Of a range of friction the low end counts, since there a belt slips first, and the working says so.
#[test]
fn a_range_of_friction_counts_by_its_low_end() {
    let [range, low, one] = ["0.25..0.35", "0.25", "0.3"].map(|mu| assess(resolve(&with(&[("mu", mu)]))));
    for number in 1..=6 {
        let id = format!("slip-reserve-{number}");
        assert_eq!(value(&range, &id).to_bits(), value(&low, &id).to_bits());
        assert!(value(&range, &id) < value(&one, &id));
    }
    let said = |assessment: &Assessment| {
        let mut reserves = findings(assessment).filter(|finding| finding.id == Id::Numbered("slip-reserve", 3));
        reserves.any(|finding| {
            finding
                .working
                .terms
                .iter()
                .any(|term| term.meaning.contains("low end"))
        })
    };
    assert!(said(&range) && !said(&low));
    for bad in ["0.3..9", "0.001..0.3", "0.3..0.2"] {
        let assessment = assess(resolve(&with(&[("mu", bad)])));
        assert!(assessment.faults.iter().any(|fault| fault.key == "mu") && !has(&assessment, "slip-reserve-1"));
    }
}

/// Common practice, no source.
#[test]
fn either_end_of_the_arm_s_travel_is_warned_of() {
    for (belt, standing, slug) in [
        ("6PK1437", "hardly goes on", Some("near-slack-stop")),
        ("6PK1460", "held", None),
        ("6PK1475", "held, with little travel left", Some("near-stop")),
    ] {
        let mut texts = DriveText::demo();
        texts.set("belt", belt);
        let whole = assess(resolve(&texts));
        let middle = whole
            .candidates
            .iter()
            .find(|candidate| candidate.belt.to_string() == belt);
        assert_eq!(middle.unwrap().standing(), Some(standing));
        let share = whole.sections.iter().flat_map(|section| &section.findings);
        let share = share
            .into_iter()
            .find(|found| found.id == Id::Named("arm-share"))
            .unwrap();
        let slugs: Vec<_> = share.cautions.iter().map(|caution| caution.slug).collect();
        assert_eq!(slugs, slug.into_iter().collect::<Vec<_>>(), "{belt}");
    }
}
