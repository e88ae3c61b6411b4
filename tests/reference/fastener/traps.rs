//! Section 10: the traps that concern fasteners.

use super::{assessed, class_on, friction_at, hex, result, thread};
use fenderside_tests::{EXACT_CHAIN, agree};
use shopmath::fastener::class;
use shopmath::fastener::stuck::twist_break;
use shopmath::fastener::tighten::{clamp_load, nut_factor, torque_for};
use shopmath::quantity::exact::length::Millimetre;
use shopmath::quantity::exact::torque::NewtonMetre;
use uom::si::f64::{Length, Torque};

#[test]
fn pound_feet_in_any_order_are_a_torque() {
    let value = |spec: &str| result(&assessed(&[("thread", "M10"), ("spec", spec)]), "wrench-setting").unwrap();
    for spec in ["44 ft-lb", "44 lb-ft", "44 lb·ft", "44 lbf·ft", "44 ft lbs"] {
        agree(spec, value(spec), 44.0 * 1.355_817_948_331_400_4, EXACT_CHAIN);
    }
}

#[test]
fn the_largest_clamp_comes_from_the_smallest_friction() {
    let thread = thread("M10");
    let clamp = |mu| {
        clamp_load(
            &thread,
            &hex(&thread),
            friction_at(mu),
            Torque::new::<NewtonMetre>(48.0),
        )
        .unwrap()
    };
    assert!(clamp(0.10) > clamp(0.16));
    let torque = |mu| torque_for(&thread, &hex(&thread), friction_at(mu), clamp(0.12));
    assert!(
        torque(0.16) > torque(0.10),
        "and the largest torque for a clamp from the largest"
    );
    let assessment = assessed(&[("thread", "M10"), ("spec", "48 N·m")]);
    let high = result(&assessment, "clamp-high").unwrap();
    agree("high", high, 1.04 * clamp(0.10).value, EXACT_CHAIN);
}

#[test]
fn sixteen_millimetres_is_still_the_lower_group() {
    let strength = |name: &str, d: f64| class::at(name, Length::new::<Millimetre>(d));
    assert_eq!(
        strength("8.8", 16.0).unwrap().tensile,
        strength("8.8", 10.0).unwrap().tensile
    );
    assert!(strength("8.8", 18.0).unwrap().tensile > strength("8.8", 16.0).unwrap().tensile);
    assert!(strength("9.8", 16.0).is_ok() && strength("9.8", 18.0).is_err());
}

#[test]
fn breaking_torque_is_not_a_tightening_limit() {
    let thread = thread("M10");
    let class = class_on("8.8", &thread);
    let breaks = twist_break(&thread, &class).unwrap().get::<NewtonMetre>();
    let load = thread.stress_area().value * class.tensile.value;
    let by_nut_factor = nut_factor(&thread, &hex(&thread), friction_at(0.13)).value * load * 0.010;
    assert!(
        (by_nut_factor / breaks - 1.0).abs() > 0.1,
        "K·F·d, {by_nut_factor}, is another quantity than {breaks}"
    );
    let assessment = assessed(&[("thread", "M10"), ("class", "8.8")]);
    let stuck = assessment
        .sections
        .iter()
        .find(|section| section.title == "Stuck")
        .unwrap();
    assert!(stuck.cautions.iter().any(|caution| caution.slug == "twist-is-no-spec"));
}

#[test]
fn lengths_end_at_the_hand_and_the_fields_say_so() {
    use shopmath::fastener::bolt::FIELDS;
    for key in ["wrench", "lever"] {
        let field = FIELDS.iter().find(|field| field.key == key).unwrap();
        assert!(field.label.contains("to hand"), "{}", field.label);
    }
}

#[test]
fn a_temperature_rise_in_fahrenheit_has_no_offset() {
    let grown = |heat: &str| {
        let typed = [("thread", "M8"), ("class", "8.8"), ("into", "a380"), ("heat", heat)];
        result(&assessed(&typed), "heat-clearance").unwrap()
    };
    agree(
        "180 °F of rise are 100 K",
        grown("180 Δ°F"),
        grown("100 K"),
        EXACT_CHAIN,
    );
}
