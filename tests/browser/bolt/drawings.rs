//! The drawings: there, to scale, and following what is typed.

use super::{at, tap_entry};
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};

/// A line or outline of a drawing as points.
fn points(phone: &Phone, selector: &str) -> Result<Vec<[f64; 2]>> {
    let script = "const found = document.querySelector(arguments[0]); \
         return found ? [...found.points].map(point => [point.x, point.y]) : null";
    phone.until(&format!("`{selector}`"), || {
        phone.script(script, vec![serde_json::json!(selector)])
    })
}

/// The labels of a drawing.
fn words(phone: &Phone, selector: &str) -> Result<String> {
    let script = "const found = document.querySelector(arguments[0]); return found ? found.textContent : ''";
    phone.script(script, vec![serde_json::json!(selector)])
}

/// Waits until a drawing has a label.
fn until_words(phone: &Phone, selector: &str, wanted: &str) -> Outcome {
    phone.until(&format!("`{wanted}` on the drawing"), || {
        Ok(words(phone, selector)?.contains(wanted).then_some(()))
    })
}

/// How many thread crests one can count on the right of an outline.
fn crests(outline: &[[f64; 2]]) -> usize {
    let reach = outline.iter().map(|point| point[0]).fold(f64::MIN, f64::max);
    outline.iter().filter(|point| (point[0] - reach).abs() < 0.02).count()
}

const ENGAGED: &str = "#part-engagement .sk.engaged";

#[test]
fn engaged_threads_can_be_counted() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, &[("thread", "M10"), ("into", "a380"), ("engaged", "20 mm")])?;
    let until_crests = |wanted: usize| {
        phone.until(&format!("{wanted} threads"), || {
            Ok((crests(&points(&phone, ENGAGED)?) == wanted).then_some(()))
        })
    };
    // 20 mm of 1.5 mm pitch are 13 whole threads; half the length is 6; a finer pitch has more.
    until_crests(13)?;
    until_words(&phone, "#part-engagement .sketch", "13.3 threads")?;
    phone.type_into("engaged", "10 mm")?;
    until_crests(7)?;
    phone.type_into("engaged", "20 mm")?;
    until_crests(13)?;
    tap_entry(&phone, "thread", "M10x1.25")?;
    until_crests(16)?;
    Ok(())
}

#[test]
fn the_joint_is_to_scale() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[
            ("thread", "M10"),
            ("class", "8.8"),
            ("grip", "30 mm"),
            ("into", "a380"),
            ("engaged", "15 mm"),
        ],
    )?;
    let height = |outline: &[[f64; 2]]| {
        let ends = outline.iter().map(|point| point[1]);
        ends.clone().fold(f64::MIN, f64::max) - ends.fold(f64::MAX, f64::min)
    };
    let ratio = || -> Result<f64> {
        let (part, held) = (points(&phone, "#part-engagement .sk.part")?, points(&phone, ENGAGED)?);
        Ok(height(&part) / height(&held))
    };
    let until_ratio = |wanted: f64| {
        phone.until(&format!("grip to engagement {wanted}"), || {
            Ok(((ratio()? - wanted).abs() < 0.01).then_some(()))
        })
    };
    until_ratio(2.0)?;
    phone.type_into("grip", "15 mm")?;
    until_ratio(1.0)?;
    phone.type_into("engaged", "7.5 mm")?;
    until_ratio(2.0)?;

    // The nut is drawn where there is no hole; what was not given is called assumed.
    phone.choose("joint", "nut")?;
    until_words(&phone, "#part-engagement .sketch", "15 mm")?;
    phone.type_into("grip", "")?;
    until_words(&phone, "#part-engagement .sketch", "assumed")
}

#[test]
fn the_protractor_shows_the_angle() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[("thread", "M10"), ("class", "10.9"), ("spec", "20 N·m + 90°")],
    )?;
    // Clockwise from the top, as one turns the wrench.
    let shown = || -> Result<f64> {
        let line = points(&phone, ".turn .sk.target")?;
        ensure!(line.len() == 2, "{line:?}");
        let [x, y] = [line[1][0] - line[0][0], line[0][1] - line[1][1]];
        Ok(x.atan2(y).to_degrees().rem_euclid(360.0))
    };
    let turns = "#part-angle .turn";
    let until_shown = |wanted: f64| {
        phone.until(&format!("{wanted}° on the protractor"), || {
            Ok(((shown()? - wanted).abs() < 0.1).then_some(()))
        })
    };
    until_shown(90.0)?;
    phone.type_into("spec", "20 N·m + 2 flats")?;
    until_shown(120.0)?;
    phone.type_into("spec", "20 N·m + 3/4 turn")?;
    until_shown(270.0)?;
    // A torque alone has no angle to show; two angles have two.
    phone.type_into("spec", "20 N·m")?;
    phone.until("no protractor", || Ok((phone.count(turns)? == 0).then_some(())))?;
    phone.type_into("spec", "20 + 60° + 30°")?;
    phone.until("two protractors", || Ok((phone.count(turns)? == 2).then_some(())))?;
    Ok(())
}

#[test]
fn the_plot_marks_yield_and_the_range() -> Outcome {
    let server = Server::start()?;
    let phone = at(
        &server,
        &[("thread", "M10"), ("class", "10.9"), ("spec", "20 N·m + 90°")],
    )?;
    ensure!(phone.count("#part-angle .sk.yield")? == 0, "no plot without a grip");
    phone.type_into("grip", "40 mm")?;
    phone.until("the plot", || {
        Ok((phone.count("#part-angle .sk.yield")? == 1).then_some(()))
    })?;
    // Two panels, clamp load and torque, each a band with its middle.
    const PLOT: &str = "#part-angle > .sketch";
    ensure!(phone.count(&format!("{PLOT} .sk.band"))? == 2 && phone.count(&format!("{PLOT} .sk.middle"))? == 2);
    let words = words(&phone, PLOT)?;
    for said in ["clamp load, kN", "torque, N·m", "yield", "90°"] {
        ensure!(words.contains(said), "`{said}` is not in: {words}");
    }
    // The range is narrower after the angle than after the torque: the bars show it.
    let bar = |place: usize| -> Result<f64> {
        let bars = "return [...document.querySelectorAll(arguments[0])].map(bar => [...bar.points].map(point => point.y)) \
             .filter(ends => ends.length === 6).map(ends => Math.max(...ends) - Math.min(...ends))[arguments[1]]";
        phone.script(
            bars,
            vec![
                serde_json::json!(format!("{PLOT} .sk.target")),
                serde_json::json!(place),
            ],
        )
    };
    let (torque, angle) = (bar(0)?, bar(1)?);
    ensure!(angle < torque, "{angle} after the angle, {torque} after the torque");

    // A longer, softer joint takes more angle to yield: the band moves.
    let before = points(&phone, &format!("{PLOT} .sk.middle"))?;
    phone.type_into("grip", "80 mm")?;
    phone.until("the curve to move", || {
        Ok((points(&phone, &format!("{PLOT} .sk.middle"))? != before).then_some(()))
    })?;
    Ok(())
}
