//! Section 5: thread engagement, steel into light alloy.

use super::{assessed, class_on, friction_at, hex, mm, mpa, result, row, thread};
use fenderside_tests::{EXACT_CHAIN, Mark, Tolerance, agree};
use shopmath::fastener::engagement::{
    Engagement, Weaker, basic_length, boss_factor, break_load, external_area, internal_area,
};
use shopmath::fastener::material::{self, materials};
use shopmath::fastener::refusal::Refusal;
use shopmath::fastener::thread::{Limit, Thread};
use shopmath::fastener::tighten::torque_per_clamp;
use shopmath::quantity::exact::area::{SquareInch, SquareMillimetre};
use shopmath::quantity::exact::length::{Inch, Millimetre};
use shopmath::quantity::exact::pressure::Megapascal;
use shopmath::quantity::exact::ratio::Number;
use uom::si::f64::Length;

fn into(thread: Thread, class: &str, material: &str, boss: Option<Length>) -> Engagement {
    let (class, material) = (class_on(class, &thread), material::read(material).unwrap());
    Engagement {
        thread,
        bolt_tensile: class.tensile,
        bolt_shear: class.shear(),
        hole_tensile: material.tensile,
        hole_shear: material.shear,
        boss,
    }
}

#[test]
fn shear_areas_match_the_printed_tables() {
    for (name, external, internal, per_inch) in [("1/4-20", 0.092, 0.135, 0.539), ("3/8-16", 0.216, 0.310, 0.828)] {
        let thread = thread(name);
        let printed = Tolerance::Relative(0.005);
        let square_inch = external_area(&thread, thread.diameter).get::<SquareInch>();
        row(&format!("A_Ss {name}"), Mark::Published, square_inch, external, printed);
        let square_inch = internal_area(&thread, thread.diameter).get::<SquareInch>();
        row(&format!("A_Sn {name}"), Mark::Published, square_inch, internal, printed);
        let one_inch = internal_area(&thread, Length::new::<Inch>(1.0)).get::<SquareInch>();
        row(
            &format!("A_Sn per inch {name}"),
            Mark::Published,
            one_inch,
            per_inch,
            printed,
        );
    }
}

/// M10×1.5 at 1200 MPa into aluminium of τ 130 MPa. The book puts in the largest major diameter,
/// the rule asks for the smallest; the longer answer is the safe one, and the one that ships.
#[test]
fn the_worked_example_in_both_readings() {
    let shipped = thread("M10");
    let mut printed = shipped;
    printed.external.major = Limit {
        max: mm(9.968),
        min: mm(9.968),
    };
    let length = |thread: &Thread| {
        let per_millimetre = internal_area(thread, mm(1.0)).get::<SquareMillimetre>();
        69_600.0 / (per_millimetre * 130.0)
    };
    row(
        "as printed, 9.968",
        Mark::Published,
        length(&printed),
        21.6,
        Tolerance::Absolute(0.05),
    );
    row(
        "as shipped, 9.732",
        Mark::Calculated,
        length(&shipped),
        24.93,
        Tolerance::Absolute(0.005),
    );
    let mut engagement = into(shipped, "12.9", "a380", None);
    engagement.bolt_tensile = mpa(1200.0);
    engagement.hole_shear = mpa(130.0);
    let by_shear = engagement.required().unwrap().by_shear.get::<Millimetre>();
    row(
        "by the calculator",
        Mark::Calculated,
        by_shear,
        24.93,
        Tolerance::Relative(0.000_3),
    );
}

#[test]
fn own_cases_into_a380() {
    for (name, expected) in [("M8", 9.16), ("M10", 11.37)] {
        let required = into(thread(name), "8.8", "a380", None).required().unwrap();
        let length = required.by_shear.get::<Millimetre>();
        row(name, Mark::Calculated, length, expected, Tolerance::Absolute(0.005));
    }
}

/// Le and J written out once more, in the standard's own terms of n threads per inch.
#[test]
fn the_handbook_length_is_le_times_j_where_the_hole_is_weak() {
    for (name, class, material) in [
        ("3/8-16", "grade 8", "a380"),
        ("M10", "10.9", "az91d"),
        ("M6", "4.8", "steel"),
    ] {
        let thread = thread(name);
        let engagement = into(thread, class, material, None);
        let inch = |length: Length| length.get::<Inch>();
        let n = 1.0 / inch(thread.pitch);
        let (es, kn) = (inch(thread.external.pitch.min), inch(thread.internal.minor.max));
        let (ds, en) = (inch(thread.external.major.min), inch(thread.internal.pitch.max));
        let (pi, root) = (core::f64::consts::PI, 3.0_f64.sqrt());
        let at = thread.stress_area().get::<SquareInch>();
        let le = 2.0 * at / (pi * kn * (0.5 + n / root * (es - kn)));
        let external = pi * n * le * kn * (1.0 / (2.0 * n) + (es - kn) / root);
        let internal = pi * n * le * ds * (1.0 / (2.0 * n) + (ds - en) / root);
        let j = external * engagement.bolt_tensile.value / (internal * engagement.hole_tensile.value);
        let required = engagement.required().unwrap();
        agree(name, inch(required.basic), le, EXACT_CHAIN);
        agree(name, inch(basic_length(&thread)), le, EXACT_CHAIN);
        agree(name, required.weakness.get::<Number>(), j, EXACT_CHAIN);
        agree(name, inch(required.length), le * j.max(1.0), EXACT_CHAIN);
        agree(name, inch(required.chamfer), 0.8 / n, EXACT_CHAIN);
    }
    let weak = into(thread("M6"), "4.8", "steel", None).required().unwrap();
    assert!(
        weak.weakness.get::<Number>() < 1.0,
        "a soft bolt in steel strips itself, so Le stands"
    );
    assert_eq!(weak.length, weak.basic);
}

#[test]
fn a_thin_boss_weakens_both_threads() {
    let thread = thread("M10");
    let factor = |boss: f64| boss_factor(&thread, Some(mm(boss)));
    for (ratio, expected) in [(1.4, 0.75), (1.6, 0.91), (1.9, 1.0), (3.0, 1.0)] {
        let found = factor(10.0 * ratio).unwrap().get::<Number>();
        row(
            &format!("C1 at {ratio}"),
            Mark::Memory,
            found,
            expected,
            Tolerance::Absolute(1e-9),
        );
    }
    assert!(matches!(factor(13.9), Err(Refusal::ThinBoss { .. })));
    assert_eq!(boss_factor(&thread, None).unwrap().get::<Number>(), 1.0);
    let thick = into(thread, "8.8", "a380", None).required().unwrap();
    let thin = into(thread, "8.8", "a380", Some(mm(14.0))).required().unwrap();
    agree(
        "length over C1",
        thin.length.value,
        thick.length.value / 0.75,
        Tolerance::Relative(1e-9),
    );
    // The boss that opens lets go of the bolt's thread as well, from memory of Alexander and ISO/TR 16224:
    // also where that is the weaker one, the strip load falls and the length grows by C1.
    let soft = |boss| into(thread, "4.8", "steel", boss);
    let (thick, thin) = (soft(None), soft(Some(mm(14.0))));
    let (whole, weak) = (thick.strip(mm(8.0)).unwrap(), thin.strip(mm(8.0)).unwrap());
    assert_eq!((whole.weaker, weak.weaker), (Weaker::Bolt, Weaker::Bolt));
    for (what, thin, thick) in [
        ("load", weak.load, whole.load),
        ("bolt", weak.bolt, whole.bolt),
        ("hole", weak.hole, whole.hole),
    ] {
        agree(what, thin.value, thick.value * 0.75, Tolerance::Relative(1e-9));
    }
    let (thick, thin) = (thick.required().unwrap(), thin.required().unwrap());
    assert!(thick.weakness.get::<Number>() < 1.0);
    agree(
        "J is of the threads alone",
        thin.weakness.value,
        thick.weakness.value,
        EXACT_CHAIN,
    );
    agree(
        "Le over C1",
        thin.length.value,
        thick.length.value / 0.75,
        Tolerance::Relative(1e-9),
    );
}

#[test]
fn the_weaker_thread_gives_the_strip_load() {
    let light = into(thread("M10"), "10.9", "a380", None).strip(mm(20.0)).unwrap();
    assert_eq!(light.weaker, Weaker::Hole);
    let area = internal_area(&thread("M10"), mm(20.0)).get::<SquareMillimetre>();
    agree("A_Sn·τ", light.load.value, area * 190.0, EXACT_CHAIN);
    let soft = into(thread("M10"), "4.8", "steel", None).strip(mm(20.0)).unwrap();
    assert_eq!(soft.weaker, Weaker::Bolt, "a soft bolt strips itself in steel");
    let softest = into(thread("M10"), "4.8", "6061-t6", None).strip(mm(20.0)).unwrap();
    let area = external_area(&thread("M10"), mm(20.0)).get::<SquareMillimetre>();
    agree("A_Ss·0.6·Rm", softest.bolt.value, area * 0.6 * 420.0, EXACT_CHAIN);
    assert_eq!(softest.load, softest.bolt.min(softest.hole));
    let thread = thread("M8");
    agree(
        "As·Rm",
        break_load(&thread, mpa(800.0)).value,
        thread.stress_area().value * 8e8,
        EXACT_CHAIN,
    );
}

#[test]
fn a_wire_insert_holds_more_in_the_hole_and_no_more_on_the_bolt() {
    let engagement = into(thread("M10"), "10.9", "a380", None);
    let (plain, insert) = (
        engagement.strip(mm(15.0)).unwrap(),
        engagement.strip_with_insert(mm(15.0)).unwrap(),
    );
    assert_eq!(plain.bolt, insert.bolt);
    // The shear cylinder grows by one and a half thread heights, 1.299 P, on diameter.
    let larger = (9.732 + 1.5 * 0.75 * 3.0_f64.sqrt()) / 9.732;
    row(
        "hole",
        Mark::Calculated,
        insert.hole.value / plain.hole.value,
        larger,
        Tolerance::Relative(1e-9),
    );
}

/// Methods differ up to two times; ours against the one-third cylinder, π·d·L·τ/3.
#[test]
fn methods_are_far_apart_and_so_are_named() {
    let area = internal_area(&thread("M10"), mm(10.0)).get::<SquareMillimetre>();
    let cylinder = core::f64::consts::PI * 10.0 * 10.0 / 3.0;
    row(
        "A_Sn over a third of the cylinder",
        Mark::Memory,
        area / cylinder,
        2.0,
        Tolerance::Absolute(0.1),
    );
}

#[test]
fn housing_materials_as_tabled() {
    use Mark::{Memory, Published};
    for (id, [tensile, shear, expansion], [strength, thermal]) in [
        ("a380", [324.0, 190.0, 21.8], [Published, Published]),
        ("alsi9cu3", [240.0, 0.6 * 240.0, 21.0], [Memory, Memory]),
        ("a356-t6", [234.0, 143.0, 21.4], [Published, Published]),
        ("6061-t6", [310.0, 207.0, 23.6], [Memory, Published]),
        ("az91d", [230.0, 140.0, 26.0], [Memory, Published]),
        ("grey-iron", [250.0, 225.0, 11.4], [Memory, Published]),
    ] {
        let material = material::read(id).unwrap();
        let exact = Tolerance::Relative(1e-12);
        row(
            &format!("{id} Rm"),
            strength,
            material.tensile.get::<Megapascal>(),
            tensile,
            exact,
        );
        row(
            &format!("{id} τ"),
            strength,
            material.shear.get::<Megapascal>(),
            shear,
            exact,
        );
        row(
            &format!("{id} CTE"),
            thermal,
            material.expansion.value * 1e6,
            expansion,
            exact,
        );
    }
    let moduli = [205.0, 110.0, 71.0, 71.0, 72.0, 69.0, 45.0];
    for (material, gigapascal) in materials().zip(moduli) {
        let found = material.modulus.get::<Megapascal>() / 1e3;
        row(
            &format!("{} E", material.id),
            Memory,
            found,
            gigapascal,
            Tolerance::Relative(1e-12),
        );
    }
}

#[test]
fn rules_of_thumb_stand_beside_the_computed_length() {
    for (material, diameters) in [("steel", 1.0), ("grey-iron", 1.5), ("a380", 2.0), ("az91d", 2.0)] {
        let assessment = assessed(&[("thread", "M10"), ("class", "8.8"), ("into", material)]);
        let rule = result(&assessment, "engagement-rule").unwrap();
        row(
            material,
            Mark::CommonPractice,
            rule,
            diameters * 0.01,
            Tolerance::Relative(1e-12),
        );
        assert!(result(&assessment, "engagement-required").is_some());
        assert!(result(&assessment, "engagement-chamfer").is_some());
    }
}

#[test]
fn the_strip_torque_is_the_lowest_that_can_strip() {
    let assessment = assessed(&[
        ("thread", "M10"),
        ("class", "10.9"),
        ("spec", "60 N·m"),
        ("mu", "0.10..0.16"),
        ("into", "a380"),
        ("engaged", "15"),
    ]);
    let value = |id: &str| result(&assessment, id).unwrap();
    let thread = thread("M10");
    let lever = |mu| torque_per_clamp(&thread, &hex(&thread), friction_at(mu)).value;
    agree(
        "at the smallest friction",
        value("strip-torque"),
        value("strip-load") * lever(0.10),
        EXACT_CHAIN,
    );
    assert!(lever(0.10) < lever(0.16));
    agree(
        "margin",
        value("strip-margin"),
        value("strip-load") / value("clamp-high"),
        EXACT_CHAIN,
    );
    let turns = value("engagement-turns");
    agree("turns", turns, 15.0 / 1.5, EXACT_CHAIN);
}
