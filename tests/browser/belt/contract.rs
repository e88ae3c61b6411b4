//! Every result of the contract, by id and unit, and what the tensioner, strand and checks say.

use super::{FULL, link};
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};
use std::collections::BTreeMap;

/// Results of the whole drive.
const NAMED: &[(&str, &str)] = &[
    ("effective-length", "m"),
    ("pitch-length", "m"),
    ("nearest-length", "m"),
    ("belt-speed", "m/s"),
    ("take-up-low", "m"),
    ("take-up-high", "m"),
    ("arm-angle", "rad"),
    ("arm-share", "1"),
    ("belt-per-degree", "m"),
    ("belt-left", "m"),
    ("stretch-left", "1"),
    ("seat-left", "m"),
    ("arm-angle-worn", "rad"),
    ("arm-share-worn", "1"),
    ("spring-tension", "N"),
    ("spring-torque", "N·m"),
    ("strand-tension", "N"),
    ("strand-tension-second", "N"),
    ("set-tension", "N"),
    ("misalignment", "rad"),
    ("offset-limit", "m"),
    ("belt-growth", "m"),
    ("rib-loss-length", "1"),
    ("rib-loss-depth", "1"),
    ("swing-angle", "rad"),
    ("swing-belt", "m"),
];

/// Results of each pulley.
const NUMBERED: &[(&str, &str)] = &[
    ("wrap", "rad"),
    ("span", "m"),
    ("speed", "1"),
    ("slip-reserve", "1"),
    ("hub-load", "N"),
    ("span-tension", "N"),
];

#[test]
fn one_full_link_shows_every_result_of_the_contract() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open(&link(FULL))?;
    phone.result("effective-length")?;
    let all = "return Object.fromEntries([...document.querySelectorAll('data[id]')] \
         .map((found) => [found.id, [found.dataset.unit, found.value]]))";
    let shown: BTreeMap<String, (String, String)> = phone.script(all, Vec::new())?;
    let numbered = NUMBERED
        .iter()
        .flat_map(|(id, unit)| (1..=6).map(move |number| (format!("{id}-{number}"), *unit)));
    let named = NAMED.iter().map(|(id, unit)| ((*id).to_owned(), *unit));
    for (id, unit) in named.chain(numbered) {
        let Some((shown_unit, value)) = shown.get(&id) else {
            anyhow::bail!("{id} is not shown; these are: {:?}", shown.keys());
        };
        ensure!(shown_unit == unit, "{id} is in {shown_unit}");
        ensure!(value.parse::<f64>().is_ok_and(f64::is_finite), "{id} is {value}");
    }
    let twice = "const ids = [...document.querySelectorAll('[id]')].map((found) => found.id); \
         return ids.filter((id, place) => ids.indexOf(id) !== place)";
    let twice: Vec<String> = phone.script(twice, Vec::new())?;
    ensure!(twice.is_empty(), "ids that stand twice: {twice:?}");

    // What the figures must be to each other: independent of how they were found.
    let value = |id: &str| phone.result(id);
    let sum = |base: &str| {
        (1..=6)
            .map(|number| value(&format!("{base}-{number}")))
            .sum::<Result<f64, _>>()
    };
    ensure!((value("pitch-length")? - value("effective-length")? - std::f64::consts::TAU * 0.002).abs() < 1e-9);
    ensure!(sum("span")? < value("effective-length")?);
    // Flat pulleys turn the other way; the driver is 1.
    ensure!((value("speed-1")? - 1.0).abs() < 1e-12 && value("speed-2")? < 0.0 && value("speed-3")? > 0.0);
    // (156 + 2·2)/(56 + 2·2): pitch radii of crank and alternator.
    phone.until_result("speed-3", 160.0 / 60.0, 1e-9)?;
    // T = 4·m·L²·f²
    phone.until_result(
        "strand-tension",
        4.0 * 0.13 * 0.227_f64.powi(2) * 105.0_f64.powi(2),
        1e-9,
    )?;
    phone.until_result("misalignment", (1.0_f64 / 300.0).atan(), 1e-9)?;
    let (low, high) = (value("take-up-low")?, value("take-up-high")?);
    ensure!(low < 1.460 && 1.460 < high, "{low} to {high}");
    ensure!((55.0..95.0).contains(&value("arm-angle")?.to_degrees()));
    Ok(())
}

#[test]
fn tensioner_strand_slip_and_checks_answer_what_is_typed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/belt")?;
    // A belt that does not go on, and one that stays slack.
    phone.type_into("belt", "6PK1400")?;
    phone.until_text("#belt-error", "does not go on")?;
    ensure!(phone.count("#arm-angle")? == 0 && phone.count("#take-up-low")? == 1);
    phone.type_into("belt", "6PK1600")?;
    phone.until_text("#belt-error", "stays slack")?;
    phone.type_into("belt", "6PK1460")?;
    let share = phone.result("arm-share")?;
    phone.type_into("stretch", "0.5 %")?;
    let worn = phone.result("arm-share-worn")?;
    ensure!(worn > share, "stretch uses travel: {share}, then {worn}");

    // The note of a strand, twice as high: four times the tension.
    let tension = phone.result("strand-tension")?;
    phone.type_into("frequency", "210 Hz")?;
    phone.until_result("strand-tension", 4.0 * tension, 1e-9)?;
    phone.until_text("[data-caution='likely-second-harmonic']", "")?;
    phone.type_into("frequency", "105 Hz")?;
    phone.until_result("strand-tension", tension, 1e-9)?;

    // Far from what such belts are run at.
    ensure!(phone.count("[data-caution='tension-unlikely']")? == 0);
    phone.type_into("frequency", "2000 Hz")?;
    phone.until_text("[data-caution='tension-unlikely']", "10 to 200 N for each rib")?;
    phone.type_into("frequency", "105 Hz")?;
    phone.until_result("strand-tension", tension, 1e-9)?;

    // A pulley without a load has a name of its own for what its wrap could hold.
    let named = "const name = (id) => document.getElementById(id).closest('.finding').querySelector('.finding-name').textContent.trim(); \
         return name('slip-reserve-3') === 'slip reserve' && name('slip-reserve-4').includes('no load')";
    phone.until_true("the idler's grip told from a reserve", named)?;

    // More load, less reserve.
    let reserve = phone.result("slip-reserve-3")?;
    phone.type_into("loads", "alternator=150 A 14 V")?;
    phone.until("less reserve", || {
        Ok((phone.result("slip-reserve-3")? < reserve).then_some(()))
    })?;

    // A gap beyond 1/16 in per foot is said.
    phone.type_into("offset", "4 mm")?;
    phone.type_into("apart", "300 mm")?;
    phone.until_result("offset-limit", 0.3 / 192.0, 1e-9)?;
    phone.until_text("[data-caution='out-of-line']", "")?;
    phone.type_into("swing", "12 mm")?;
    phone.result("swing-angle")?;
    phone.until_true(
        "the swing called worn out",
        "return /worn/i.test(document.getElementById('part-checks').innerText)",
    )
}
