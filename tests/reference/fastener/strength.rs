//! Section 3: classes, their breaks, and proof loads.

use super::{class_on, mm, mpa, row, thread};
use fenderside_tests::{Mark, Tolerance};
use shopmath::fastener::class::{at, names};
use shopmath::fastener::refusal::Refusal;
use shopmath::quantity::exact::pressure::{KilopoundPerSquareInch, Megapascal};
use uom::si::f64::Pressure;

const PRINTED: Tolerance = Tolerance::Relative(1e-12);

#[test]
fn metric_classes_as_tabled() {
    use Mark::{Memory, Published};
    for (class, thread_name, [tensile, yields, proof], [of_tensile, of_yield, of_proof]) in [
        ("4.6", "M10", [400.0, 240.0, 225.0], [Memory; 3]),
        ("4.8", "M10", [420.0, 340.0, 310.0], [Memory; 3]),
        ("5.6", "M10", [500.0, 300.0, 280.0], [Memory; 3]),
        ("5.8", "M10", [520.0, 420.0, 380.0], [Memory; 3]),
        ("6.8", "M10", [600.0, 480.0, 440.0], [Memory; 3]),
        ("8.8", "M10", [800.0, 640.0, 580.0], [Published; 3]),
        ("8.8", "M16", [800.0, 640.0, 580.0], [Published; 3]),
        ("8.8", "M18", [830.0, 660.0, 600.0], [Published, Memory, Published]),
        ("9.8", "M16", [900.0, 720.0, 650.0], [Published; 3]),
        ("10.9", "M10", [1040.0, 940.0, 830.0], [Published, Memory, Published]),
        ("12.9", "M10", [1220.0, 1100.0, 970.0], [Published; 3]),
    ] {
        let class = class_on(class, &thread(thread_name));
        let mpa = |stress: Pressure| stress.get::<Megapascal>();
        let what = format!("{} {thread_name}", class.name);
        row(&format!("Rm {what}"), of_tensile, mpa(class.tensile), tensile, PRINTED);
        row(
            &format!("Rp {what}"),
            of_yield,
            mpa(class.yield_strength),
            yields,
            PRINTED,
        );
        row(
            &format!("Sp {what}"),
            of_proof,
            mpa(class.proof.unwrap()),
            proof,
            PRINTED,
        );
    }
}

#[test]
fn sae_grades_as_tabled() {
    for (grade, [proof, yields, tensile]) in [
        ("grade 2", [55.0, 57.0, 74.0]),
        ("grade 5", [85.0, 92.0, 120.0]),
        ("grade 8", [120.0, 130.0, 150.0]),
    ] {
        let class = class_on(grade, &thread("3/8-16"));
        let ksi = |stress: Pressure| stress.get::<KilopoundPerSquareInch>();
        row(grade, Mark::Published, ksi(class.proof.unwrap()), proof, PRINTED);
        row(grade, Mark::Published, ksi(class.yield_strength), yields, PRINTED);
        row(grade, Mark::Published, ksi(class.tensile), tensile, PRINTED);
    }
}

#[test]
fn stainless_classes_as_tabled() {
    for (name, [yields, tensile]) in [
        ("A2-70", [450.0, 700.0]),
        ("A4-70", [450.0, 700.0]),
        ("A2-80", [600.0, 800.0]),
        ("A4-80", [600.0, 800.0]),
    ] {
        let class = class_on(name, &thread("M8"));
        row(
            name,
            Mark::Memory,
            class.yield_strength.get::<Megapascal>(),
            yields,
            PRINTED,
        );
        row(name, Mark::Memory, class.tensile.get::<Megapascal>(), tensile, PRINTED);
        assert_eq!(class.proof, None, "no proof load is tabled for {name}");
    }
}

#[test]
fn proof_loads_agree_with_the_printed_ones() {
    // The standard rounds its loads from a stress area of more digits: within 0.7 %.
    for (name, loads) in [
        ("M8", [21_200.0, 30_400.0, 35_500.0]),
        ("M10", [33_700.0, 48_100.0, 56_300.0]),
        ("M12", [48_900.0, 70_000.0, 81_800.0]),
    ] {
        for (class, printed) in ["8.8", "10.9", "12.9"].into_iter().zip(loads) {
            let thread = thread(name);
            let load = thread.stress_area().value * class_on(class, &thread).proof.unwrap().value;
            row(
                &format!("{name} {class}"),
                Mark::Published,
                load,
                printed,
                Tolerance::Relative(0.007),
            );
        }
    }
}

#[test]
fn classes_end_where_their_standard_does() {
    for (class, diameter, covered) in [
        ("9.8", 16.0, true),
        ("9.8", 18.0, false),
        ("grade 2", 19.05, true),
        ("grade 2", 6.35, true),
        ("grade 2", 4.826, false),
        ("grade 5", 4.826, false),
        ("grade 5", 19.05, true),
        ("8.8", 20.0, true),
        ("8.8", 4.0, true),
    ] {
        let found = at(class, mm(diameter));
        assert_eq!(found.is_ok(), covered, "{class} at {diameter} mm");
        if let Err(refusal) = found {
            assert!(matches!(refusal, Refusal::ClassNotForSize { .. }), "{refusal}");
        }
    }
    assert_eq!(names().count(), 16);
}

#[test]
fn every_class_is_in_order() {
    for name in names() {
        let class = at(name, mm(10.0)).unwrap();
        assert!(class.yield_strength < class.tensile, "{name}");
        assert!(class.proof.is_none_or(|proof| proof < class.yield_strength), "{name}");
        assert!(class.tensile > mpa(300.0), "{name}");
    }
}
