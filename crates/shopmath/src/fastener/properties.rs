//! What holds for any bolt: directions, inverses, order of ranges, and that every answer is a
//! number or a named refusal.

use super::angle::{Joint, Turned};
use super::bolt::{BoltText, FIELDS, assess, resolve};
use super::class;
use super::engagement::Engagement;
use super::friction::{Friction, FrictionAt, FrictionRange};
use super::head::{Shape, on};
use super::heat;
use super::material::materials;
use super::resilience::{Body, Held, Parts, bolt, frustum, parts};
use super::reuse::permanent_set;
use super::si::{kelvins, megapascals, metres_per_newton, millimetres, newton_metres, newtons, radians, ratio};
use super::spec::{Spec, Stage};
use super::stuck;
use super::thread::Thread;
use super::thread_table::threads;
use super::thread_text;
use super::tighten::{Applied, Bolt, clamp_load, yield_share};
use super::wrench::{Adapter, deviation};
use crate::result::Amount;
use proptest::prelude::*;

/// Any thread of the table.
fn any_thread() -> impl Strategy<Value = Thread> {
    let all: Vec<Thread> = threads().collect();
    proptest::sample::select(all)
}

/// A thread with a hex head of usual proportions and a friction range, the same for both faces.
fn any_bolt() -> impl Strategy<Value = Bolt> {
    (any_thread(), 1.3..3.0_f64, 0.02..0.4_f64, 0.0..0.3_f64).prop_map(|(thread, wide, low, more)| {
        let hole = thread.diameter * 1.08;
        let head = on(Shape::Custom, &thread, Some(thread.diameter * wide), Some(hole)).unwrap();
        let range = FrictionRange::new(ratio(low), ratio(low + more)).unwrap();
        Bolt {
            thread,
            head,
            friction: Friction::both(range),
        }
    })
}

fn any_joint() -> impl Strategy<Value = Joint> {
    (
        any_bolt(),
        300.0..1200.0_f64,
        1.0..60.0_f64,
        0.1..20.0_f64,
        0.0..0.2_f64,
    )
        .prop_map(|(bolt, strength, soft, softer, tool)| Joint {
            bolt,
            yield_strength: megapascals(strength),
            bolt_resilience: metres_per_newton(soft * 1e-9),
            parts_resilience: metres_per_newton(softer * 1e-9),
            tool: ratio(tool),
        })
}

/// Finite numbers of every size and sign.
fn any_finite() -> impl Strategy<Value = f64> {
    prop_oneof![
        proptest::num::f64::NORMAL | proptest::num::f64::SUBNORMAL | proptest::num::f64::ZERO,
        -1000.0..1000.0_f64,
        -2.0..2.0_f64,
    ]
}

/// Something a thumb may leave in a field.
fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[0-9]{1,4}",
        "[0-9]{1,3}[.,][0-9]{1,3} ?(mm|in|N·m|ft-lb|°|K|%)?",
        "[0-9]{1,2} N·m \\+ [0-9]{1,3}°( \\+ [0-9]{1,3}°)?",
        "0\\.[0-9]{1,2}\\.\\.0\\.[0-9]{1,2}",
        "M(4|5|6|8|10|12|16|20)(x[0-9.]{1,4})?",
        "[0-9]{1,6}e-?[0-9]{1,3}",
        "(8\\.8|10\\.9|12\\.9|grade 5|A2-70|nut|tapped|hex|flange|socket|custom|a380|steel)",
        "\\PC{0,12}",
    ]
}

fn is_number<T, E>(answer: &Result<T, E>, value: impl Fn(&T) -> f64) -> bool {
    answer.as_ref().map_or(true, |found| value(found).is_finite())
}

/// Numbers too small for a power of ten once took a gigabyte to write down.
#[test]
fn the_smallest_and_largest_numbers_are_refused_in_a_sentence() {
    for key in ["grip", "engaged", "wrench", "lever", "length-new", "scale", "reading"] {
        for number in ["1e-311", "5e-324", "1e15", "0", "-1"] {
            let mut text = BoltText::default();
            text.set(key, number);
            let resolved = resolve(&text);
            let keys: Vec<&str> = resolved.errors.iter().map(|error| error.key).collect();
            assert_eq!(keys, [key], "{number}");
            assert!(resolved.errors[0].sentence.len() < 200, "{number}");
        }
    }
}

proptest! {
    #[test]
    fn clamp_grows_with_torque_and_falls_with_friction(
        bolt in any_bolt(), torque in 0.1..500.0_f64, more in 1.001..3.0_f64, mu in 0.02..0.3_f64,
    ) {
        let at = |mu: f64| FrictionAt { thread: ratio(mu), head: ratio(mu) };
        let clamp = |mu, torque| clamp_load(&bolt.thread, &bolt.head, at(mu), newton_metres(torque)).unwrap();
        prop_assert!(clamp(mu, torque * more) > clamp(mu, torque));
        prop_assert!(clamp(mu * more, torque) < clamp(mu, torque));
    }

    #[test]
    fn ranges_of_a_torque_are_ordered(
        bolt in any_bolt(), low in 0.1..500.0_f64, more in 0.0..100.0_f64, tool in 0.0..0.5_f64,
        head_low in 0.02..0.4_f64, head_more in 0.0..0.3_f64,
    ) {
        let mut bolt = bolt;
        bolt.friction.head = FrictionRange::new(ratio(head_low), ratio(head_low + head_more)).unwrap();
        let applied = Applied { low: newton_metres(low), high: newton_metres(low + more), tool: ratio(tool) };
        let clamp = bolt.clamp_range(applied).unwrap();
        prop_assert!(clamp.low <= clamp.mid && clamp.mid <= clamp.high);
        let share = bolt.yield_range(applied, megapascals(640.0)).unwrap();
        prop_assert!(share.low <= share.mid && share.mid <= share.high);
        // Nothing within the range lies outside the ends.
        for (one, other) in [(0.0, 0.0), (0.3, 0.7), (0.7, 0.3), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)] {
            let Friction { thread, head } = bolt.friction;
            let at = FrictionAt {
                thread: thread.low + (thread.high - thread.low) * one,
                head: head.low + (head.high - head.low) * other,
            };
            let within = clamp_load(&bolt.thread, &bolt.head, at, newton_metres(low)).unwrap();
            let found = yield_share(&bolt.thread, megapascals(640.0), at.thread, within);
            let slack = ratio(1e-9);
            prop_assert!(found >= share.low - slack && found <= share.high + slack);
        }
    }

    #[test]
    fn an_angle_narrows_the_range(joint in any_joint(), torque in 0.5..100.0_f64, degrees in 0.0..270.0_f64) {
        let torque = newton_metres(torque);
        let turn = radians(degrees.to_radians());
        let snug = Stage::Torque { low: torque, high: torque };
        let further = Stage::Turn { low: turn, high: turn };
        let alone = joint.turned(&Spec::new(vec![snug]).unwrap()).unwrap();
        let after = joint.turned(&Spec::new(vec![snug, further]).unwrap()).unwrap();
        prop_assert!(after.clamp.low <= after.clamp.mid && after.clamp.mid <= after.clamp.high);
        prop_assert!(after.clamp.mid >= alone.clamp.mid);
        prop_assert!(after.clamp.high <= after.yield_clamp.high);
        prop_assert!(after.past_yield.mid >= super::si::metres(0.0));
        let (narrow, wide) = (Turned::scatter(after.clamp).value, Turned::scatter(alone.clamp).value);
        // Equal where the torque alone has already passed yield.
        prop_assert!(narrow <= wide * (1.0 + 1e-9) + 1e-12, "{narrow} against {wide}");
        // No friction of the range, of thread and head apart, lies outside the ends, but for the thousandth
        // that the steps of the thread friction leave.
        let Friction { thread, head } = joint.bolt.friction;
        for (one, other) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (0.55, 1.0), (0.3, 0.4)] {
            let only = |range: FrictionRange, share: f64| {
                let at = range.low + (range.high - range.low) * share;
                FrictionRange::new(at, at).unwrap()
            };
            let mut one_of_them = joint;
            one_of_them.bolt.friction = Friction { thread: only(thread, one), head: only(head, other) };
            let within = one_of_them.turned(&Spec::new(vec![snug, further]).unwrap()).unwrap();
            let inside = |value: f64, low: f64, high: f64| value >= low * 0.999 && value <= high * 1.001;
            let (share, torque) = (within.share.mid.value, within.torque.mid.value);
            prop_assert!(inside(share, after.share.low.value, after.share.high.value), "{share} in {:?}", after.share);
            prop_assert!(inside(torque, after.torque.low.value, after.torque.high.value), "{torque} in {:?}", after.torque);
            prop_assert!(!within.torque_yields.mid || after.torque_yields.high);
        }
    }

    #[test]
    fn an_adapter_and_its_inverse_cancel(
        wrench in 50.0..2000.0_f64, adapter in 0.0..40.0_f64, angle in -3.1..3.1_f64, torque in 0.1..1000.0_f64,
    ) {
        let adapter = Adapter {
            wrench: millimetres(wrench),
            adapter: millimetres(adapter),
            angle: radians(angle),
        };
        let setting = adapter.setting(newton_metres(torque)).unwrap();
        let back = adapter.delivered(setting).unwrap().value;
        prop_assert!((back - torque).abs() <= 1e-12 * torque);
    }

    #[test]
    fn more_engagement_never_lowers_the_strip_load(
        thread in any_thread(), which in 0..7_usize, length in 0.0..60.0_f64, more in 0.0..60.0_f64,
        boss in proptest::option::of(1.4..3.0_f64),
    ) {
        let material = materials().nth(which).unwrap();
        let engagement = Engagement {
            thread,
            bolt_tensile: megapascals(800.0),
            bolt_shear: megapascals(480.0),
            hole_tensile: material.tensile,
            hole_shear: material.shear,
            boss: boss.map(|wide| thread.diameter * wide),
        };
        let strip = |length: f64| engagement.strip(millimetres(length)).unwrap().load;
        prop_assert!(strip(length + more) >= strip(length));
        let insert = engagement.strip_with_insert(millimetres(length)).unwrap();
        prop_assert!(insert.load >= strip(length));
        let required = engagement.required().unwrap();
        prop_assert!(required.length >= required.basic);
    }

    #[test]
    fn a_stiffer_or_shorter_joint_takes_less_angle(
        thread in any_thread(), grip in 2.0..200.0_f64, more in 1.01..3.0_f64, shank in 0.0..1.0_f64,
    ) {
        let soft = |grip: f64, shank: f64| {
            let shank = millimetres(grip * shank);
            let body = Body {
                thread,
                head: 0.5,
                modulus: megapascals(205_000.0),
                shank,
                free_thread: millimetres(grip) - shank,
                held: Held::Nut,
            };
            bolt(&body).unwrap().total
        };
        prop_assert!(soft(grip * more, shank) > soft(grip, shank));
        prop_assert!(soft(grip, 0.0) >= soft(grip, shank), "a shank is stiffer than a thread");
    }

    #[test]
    fn calculators_answer_any_finite_number_with_a_number_or_a_refusal(
        thread in any_thread(), a in any_finite(), b in any_finite(), c in any_finite(), d in any_finite(),
    ) {
        let head = on(Shape::Custom, &thread, Some(millimetres(b)), Some(millimetres(c)));
        if let Ok(head) = head {
            let at = FrictionAt { thread: ratio(0.1), head: ratio(0.1) };
            prop_assert!(is_number(&clamp_load(&thread, &head, at, newton_metres(a)), |found| found.value));
        }
        prop_assert!(is_number(&FrictionRange::new(ratio(a), ratio(b)), |found| found.middle().value));
        let applied = Applied { low: newton_metres(a), high: newton_metres(b), tool: ratio(c) };
        prop_assert!(is_number(&applied.spread(), |found| found.high.value));
        let adapter = Adapter { wrench: millimetres(a), adapter: millimetres(b), angle: radians(c) };
        prop_assert!(is_number(&adapter.setting(newton_metres(d)), |found| found.value));
        prop_assert!(is_number(&adapter.delivered(newton_metres(d)), |found| found.value));
        prop_assert!(is_number(&deviation(newton_metres(a), newton_metres(b)), |found| found.value));
        let held = if d > 0.0 { Held::Nut } else { Held::Tapped(megapascals(d)) };
        let body = Body {
            thread,
            head: 0.5,
            modulus: megapascals(a),
            shank: millimetres(b),
            free_thread: millimetres(c),
            held,
        };
        prop_assert!(is_number(&bolt(&body), |found| found.total.value));
        for tapped in [false, true] {
            let clamped = Parts {
                grip: millimetres(a),
                bearing: millimetres(b),
                hole: millimetres(c),
                outer: millimetres(d),
                modulus: megapascals(71_000.0),
                tapped,
            };
            prop_assert!(is_number(&parts(&clamped), |found| found.total.value));
        }
        let cone = frustum(megapascals(71_000.0), millimetres(a), millimetres(b), millimetres(c));
        prop_assert!(is_number(&cone, |found| found.value));
        let engagement = Engagement {
            thread,
            bolt_tensile: megapascals(a),
            bolt_shear: megapascals(b),
            hole_tensile: megapascals(c),
            hole_shear: megapascals(d),
            boss: Some(millimetres(a)),
        };
        prop_assert!(is_number(&engagement.required(), |found| found.length.value));
        prop_assert!(is_number(&engagement.strip(millimetres(c)), |found| found.load.value));
        prop_assert!(is_number(&stuck::twist_yield(&thread, megapascals(a)), |found| found.value));
        prop_assert!(is_number(&stuck::hand_force(newton_metres(a), millimetres(b)), |found| found.value));
        let (one, other) = (ratio(a) / kelvins(1.0), ratio(b) / kelvins(1.0));
        prop_assert!(is_number(&heat::clearance(one, other, thread.diameter, kelvins(c)), |found| found.value));
        let change = heat::clamp_change(one, other, kelvins(c), millimetres(d), metres_per_newton(a));
        prop_assert!(is_number(&change, |found| found.value));
        prop_assert!(is_number(&permanent_set(millimetres(a), millimetres(b)), |found| found.share.value));
        prop_assert!(is_number(&super::angle::angle_for(newtons(a), metres_per_newton(b), thread.pitch), |found| found.value));
    }

    #[test]
    fn reading_a_thread_or_a_class_never_panics(text in "\\PC{0,16}") {
        let _ = thread_text::read(&text).map_err(|refusal| refusal.to_string());
        let _ = class::read(&text).map_err(|refusal| refusal.to_string());
    }

    #[test]
    fn the_screen_takes_any_text_in_any_field(
        typed in proptest::collection::vec((0..FIELDS.len(), any_text()), 0..12),
        base in proptest::bool::weighted(0.8),
    ) {
        let mut text = BoltText::default();
        if base {
            let usual = [("thread", "M8"), ("class", "8.8"), ("spec", "10 N·m + 60°"), ("grip", "25"), ("into", "a380"),
                ("engaged", "16"), ("lever", "300"), ("heat", "80")];
            for (key, value) in usual {
                text.set(key, value);
            }
        }
        for (field, value) in typed {
            text.set(FIELDS[field].key, value);
        }
        let resolved = resolve(&text);
        let assessment = assess(&resolved);
        for error in resolved.errors.iter().chain(&assessment.errors) {
            prop_assert!(error.sentence.ends_with(['.', '?', ')']), "{}", error.sentence);
        }
        for found in assessment.sections.iter().flat_map(|section| &section.findings) {
            for (_, quantity) in found.amount.ends() {
                prop_assert!(quantity.si().is_finite(), "{:?}", found.id);
            }
            if let Amount::Range { low, mid, high } = found.amount {
                prop_assert!(low.si() <= high.si(), "{:?}", found.id);
                let between = mid.is_none_or(|mid| low.si() <= mid.si() && mid.si() <= high.si());
                prop_assert!(between, "{:?}", found.id);
            }
            for term in &found.working.terms {
                prop_assert!(term.amount.ends().all(|(_, quantity)| quantity.si().is_finite()), "{:?}", found.id);
            }
        }
        if let Some(plot) = assessment.plot {
            for point in plot.points {
                prop_assert!([point.angle, point.clamp_low, point.clamp_high, point.torque_mid].iter().all(|n| n.is_finite()));
                prop_assert!(point.clamp_low <= point.clamp_mid && point.clamp_mid <= point.clamp_high);
            }
        }
    }
}
