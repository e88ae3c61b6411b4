//! A whole job on the Larkfield van, from plan to paper, without a server after the first visit.

use super::{new_sheet, until_kept};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server, keep_to_look_at};
use serde_json::json;
use std::process::Command;

/// What is typed into the sheet. A comma in a price is a decimal mark.
const PLAN: &[(&str, &str)] = &[
    ("sheet-machine", "Larkfield van, 2.2 diesel"),
    ("sheet-odometer", "150 240 km"),
    ("sheet-date", "2025-03-31"),
    ("sheet-notes", "Belt service.\nCover gasket reused."),
    ("sheet-currency", "EUR"),
];
/// Plain, for its angle used once, and through an adapter.
const BOLTS: [&[(&str, &str)]; 3] = [
    &[
        ("label", "Idler pulley"),
        ("thread", "M10x1.5"),
        ("class", "8.8"),
        ("spec", "45 N·m"),
        ("count", "2"),
    ],
    &[
        ("label", "Tensioner"),
        ("thread", "M10x1.5"),
        ("class", "10.9"),
        ("spec", "30 N·m + 90°"),
    ],
    &[
        ("label", "Alternator bracket"),
        ("thread", "M8"),
        ("class", "8.8"),
        ("spec", "24 N·m"),
    ],
];
const ADAPTER: &[(&str, &str)] = &[("bolt-3-wrench", "300 mm"), ("bolt-3-adapter", "50 mm")];
/// Label, count, price of one.
const PARTS: [[&str; 3]; 3] = [
    ["Ribbed belt 6PK1453", "1", "34,50"],
    ["Idler pulley", "2", "31,90"],
    ["Tensioner bolt, new", "", "3,75"],
];
const CHECK: &[(&str, &str)] = &[
    ("check-1-label", "Tensioner swing at idle"),
    ("check-1-before", "9 mm"),
    ("check-1-after", "2 mm"),
];
const INTERVAL: &[(&str, &str)] = &[
    ("interval-1-label", "Belt service"),
    ("interval-1-every-distance", "150 000 km"),
    ("interval-1-every-days", "730"),
];

#[test]
fn a_job_goes_from_plan_to_done_on_a_dead_network() -> Outcome {
    done_job().map(|_| ())
}

#[test]
fn a_job_goes_from_plan_to_paper_on_a_dead_network() -> Outcome {
    it_prints(&done_job()?)
}

/// A phone with the whole job on it, loaded again at its end.
fn done_job() -> Result<Phone> {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    phone.until_kept()?;
    server.kill()?;

    let id = new_sheet(&phone)?;
    plan(&phone)?;
    // 34.50 + 2 × 31.90 + 3.75, and 150 240 km + 150 000 km.
    ensure!(phone.attribute("#parts-total", "value")?.as_deref() == Some("102.05"));
    ensure!(phone.attribute("#parts-total", "data-unit")?.as_deref() == Some("EUR"));
    phone.until_result("next-due-distance", 300_240_000.0, 1e-12)?;

    readings_are_judged_at_once(&phone)?;
    rows_change_places_and_come_back(&phone)?;
    a_bolt_opens_filled_in(&phone, &id)?;
    large_type_leads_through(&phone)?;
    only_new_bolts_make_it_complete(&phone)?;

    until_kept(&phone)?;
    phone.reload()?;
    phone.until_text("#progress", "Complete: 7 of 7 done")?;
    everything_is_there(&phone)?;
    Ok(phone)
}

fn fill(phone: &Phone, row: &str, entries: &[(&str, &str)]) -> Outcome {
    entries
        .iter()
        .try_for_each(|(key, text)| phone.type_into(&format!("{row}{key}"), text))
}

fn plan(phone: &Phone) -> Outcome {
    fill(phone, "", PLAN)?;
    for (bolt, number) in BOLTS.iter().zip(1..) {
        phone.tap("#add-fastener")?;
        fill(phone, &format!("bolt-{number}-"), bolt)?;
    }
    phone.tap("#bolt-2-replace")?;
    phone.tap("#bolt-3 .more summary")?;
    fill(phone, "", ADAPTER)?;
    for ([label, count, price], number) in PARTS.into_iter().zip(1..) {
        phone.tap("#add-part")?;
        let row = [("label", label), ("count", count), ("price", price)];
        fill(phone, &format!("part-{number}-"), &row)?;
    }
    phone.tap("#add-check")?;
    fill(phone, "", CHECK)?;
    phone.tap("#add-interval")?;
    // The odometer and the day of the job are the interval's start.
    ensure!(phone.field("interval-1-done-at-odometer")? == "150 240 km");
    ensure!(phone.field("interval-1-done-on")? == "2025-03-31");
    fill(phone, "", INTERVAL)?;
    phone.until_text("#progress", "Open: 0 of 7 done")
}

/// What is judged beside a reading: how far off it is, and in words.
fn judged(phone: &Phone, reading: &str, off: f64, words: &str) -> Outcome {
    let judged = format!(".reading:has([id='{reading}']) .judged");
    phone.until_value(&format!("{judged} data.deviation"), off, 1e-9)?;
    phone.until_text(&judged, words)
}

fn readings_are_judged_at_once(phone: &Phone) -> Outcome {
    phone.type_into("bolt-1-0-reading", "45.5")?;
    judged(phone, "bolt-1-0-reading", 0.5 / 45.0, "✓ within")?;
    phone.type_into("bolt-1-1-reading", "49")?;
    judged(phone, "bolt-1-1-reading", 4.0 / 45.0, "✕ outside")?;
    phone.until_text(".reasons", "Idler pulley: a reading is outside")?;
    phone.type_into("bolt-1-1-reading", "44,8 N·m")?;
    judged(phone, "bolt-1-1-reading", -0.2 / 45.0, "✓ within")?;
    phone.type_into("bolt-1-count", "1")?;
    phone.until_text("#bolt-1 .readings + .note", "Readings beyond the count of bolts: 1.")?;
    phone.type_into("bolt-1-count", "2")?;
    // Of torque and angle the torque has a reading.
    phone.type_into("bolt-2-0-reading", "29")?;
    judged(phone, "bolt-2-0-reading", -1.0 / 30.0, "✓ within")?;
    // Through the adapter the wrench is to read 24 N·m × 300 mm / 350 mm: what is right at the bolt
    // is not right on its scale.
    phone.type_into("bolt-3-0-reading", "24")?;
    judged(phone, "bolt-3-0-reading", 350.0 / 300.0 - 1.0, "✕ outside")?;
    phone.type_into("bolt-3-0-reading", "20.5")?;
    judged(
        phone,
        "bolt-3-0-reading",
        20.5 * 350.0 / (24.0 * 300.0) - 1.0,
        "✓ within",
    )
}

/// The rows of bolts in their order.
fn order(phone: &Phone) -> Result<Vec<String>> {
    let rows = "return [...document.querySelectorAll('[data-fastener]')].map((row) => row.dataset.fastener)";
    phone.script(rows, Vec::new())
}

fn until_order(phone: &Phone, wanted: [&str; 3]) -> Outcome {
    phone.until(&format!("the bolts in the order {wanted:?}"), || {
        Ok((order(phone)? == wanted).then_some(()))
    })
}

fn rows_change_places_and_come_back(phone: &Phone) -> Outcome {
    ensure!(order(phone)? == ["1", "2", "3"]);
    phone.tap("#bolt-3 button[name='earlier']")?;
    until_order(phone, ["1", "3", "2"])?;
    phone.tap("#bolt-1 button[name='later']")?;
    until_order(phone, ["3", "1", "2"])?;
    phone.until_text("#undo", "Undo: moved Idler pulley")?;
    phone.tap("#undo")?;
    until_order(phone, ["1", "3", "2"])?;
    phone.tap("#undo")?;
    until_order(phone, ["1", "2", "3"])?;

    phone.tap("#bolt-2 button[name='remove']")?;
    phone.until("the row to be gone", || Ok((order(phone)? == ["1", "3"]).then_some(())))?;
    phone.until_text("#undo", "Undo: removed Tensioner")?;
    phone.tap("#undo")?;
    until_order(phone, ["1", "2", "3"])?;
    ensure!(phone.field("bolt-2-spec")? == "30 N·m + 90°");
    ensure!(phone.field("bolt-2-0-reading")? == "29");
    ticked(phone, "bolt-2-replace", true)?;

    // Taken back with what was typed in it, a row added comes back whole.
    phone.tap("#add-fastener")?;
    phone.type_into("bolt-4-label", "Drain plug")?;
    phone.type_into("bolt-4-spec", "25 N·m")?;
    phone.until_text("#undo", "Undo: added a bolt")?;
    phone.tap("#undo")?;
    phone.until_text("#undo", "Undo: removed Drain plug")?;
    until_order(phone, ["1", "2", "3"])?;
    phone.tap("#undo")?;
    phone.until("the row again", || Ok((phone.count("#bolt-4")? == 1).then_some(())))?;
    ensure!(phone.field("bolt-4-label")? == "Drain plug" && phone.field("bolt-4-spec")? == "25 N·m");
    phone.tap("#bolt-4 button[name='remove']")?;
    until_order(phone, ["1", "2", "3"])
}

fn ticked(phone: &Phone, id: &str, wanted: bool) -> Outcome {
    let script = "const box = document.getElementById(arguments[0]); return box && box.checked";
    let found: Option<bool> = phone.script(script, vec![json!(id)])?;
    ensure!(found == Some(wanted), "`{id}` is ticked: {found:?}");
    Ok(())
}

fn a_bolt_opens_filled_in(phone: &Phone, id: &str) -> Outcome {
    let verdict = phone.attribute("#bolt-3 .row-verdict", "data-verdict")?;
    // A row out of sight has no text on the screen.
    let read = "return document.querySelector('#bolt-3 .row-verdict').textContent.replace(/\\s/g, ' ')";
    let sentence: String = phone.script(read, Vec::new())?;
    let (_, sentence) = sentence.split_once(' ').context("a sign before the sentence")?;
    phone.tap("#bolt-3 [name=open]")?;
    phone.until_text("#verdict", sentence)?;
    ensure!(verdict.is_some() && phone.attribute("#verdict", "data-verdict")? == verdict);
    for (key, text) in &BOLTS[2][1..] {
        ensure!(phone.field(key)? == *text, "{key}");
    }
    for (key, text) in ADAPTER {
        let key = key.trim_start_matches("bolt-3-");
        ensure!(phone.field(key)? == *text, "{key}");
    }
    phone.until_result("wrench-setting", 24.0 * 300.0 / 350.0, 1e-12)?;
    phone.back()?;
    phone.until("the sheet again", || {
        Ok((phone.fragment()? == format!("#/sheet/{id}") && phone.count("#bolt-3")? == 1).then_some(()))
    })
}

fn large_type_leads_through(phone: &Phone) -> Outcome {
    phone.tap(".sheet > button.wide")?;
    phone.until_text(".large-bolt", "Idler pulley M10x1.5 8.8 × 2")?;
    // As the manual prints it, and below that in the other wrench's unit.
    phone.until_text(".large-number", "45 N·m")?;
    phone.until_text(".large-number + .large-other", "33.2 lbf·ft")?;
    phone.tap("#step-next")?;
    phone.until_text(".large-bolt", "Tensioner")?;
    phone.tap("#step-back")?;
    // Each one that is done leads to the next.
    for (step, name) in [("1", "Idler pulley"), ("2", "Tensioner"), ("3", "Alternator bracket")] {
        phone.until_text(&format!("[data-step='{step}'] .large-bolt"), name)?;
        phone.tap("#step-done")?;
    }
    phone.until_text(".large-name", "Bolt 3 of 3, ✓ done")?;
    // What to set before what it comes to, and in the unit of the 24 N·m below it.
    phone.until_text(".large-bolt + .large-step .large-name", "Set with the adapter")?;
    phone.until_text(".large-bolt + .large-step .large-number", "20.6 N·m")?;
    phone.until_text(".large-bolt + .large-step .large-other", "15.2 lbf·ft")?;
    phone.until_text(".large-step + .large-step .large-name", "At the bolt")?;
    ensure!(phone.attribute("#step-next", "aria-disabled")?.as_deref() == Some("true"));
    phone.tap(".large > button.wide:last-child")?;
    phone.until_text("#progress", "Open: 3 of 7 done")
}

fn only_new_bolts_make_it_complete(phone: &Phone) -> Outcome {
    for row in ["part-1", "part-2", "part-3", "check-1"] {
        phone.tap(&format!("#{row}-done"))?;
    }
    phone.until_text("#progress", "Open: 7 of 7 done")?;
    ensure!(phone.attribute("#progress", "data-complete")?.as_deref() == Some("false"));
    phone.until_text(".reasons", "Tensioner: single-use and not replaced")?;
    ensure!(phone.count("#bolt-2 [data-caution]")? > 0);
    phone.tap("#bolt-2-replaced")?;
    phone.until_text("#progress", "✓ Complete: 7 of 7 done")?;
    ensure!(phone.attribute("#progress", "data-complete")?.as_deref() == Some("true"));
    ensure!(phone.count(".reasons")? == 0);
    Ok(())
}

fn everything_is_there(phone: &Phone) -> Outcome {
    let holds = |id: &str, text: &str| -> Outcome {
        let found = phone.field(id)?;
        ensure!(found == text, "`{id}` holds \"{found}\"");
        Ok(())
    };
    // What is folded up is said on the fold.
    let fold = phone.text("#bolt-3 .more summary")?;
    ensure!(
        fold == "Tools, adapter, grip: Wrench length 300 mm, Adapter length 50 mm",
        "{fold:?}"
    );
    ensure!(phone.count("#bolt-3-adapter")? == 0);
    phone.tap("#bolt-3 .more summary")?;
    for (id, text) in [PLAN, ADAPTER, CHECK, INTERVAL].concat() {
        holds(id, text)?;
    }
    for (bolt, number) in BOLTS.iter().zip(1..) {
        for (key, text) in *bolt {
            holds(&format!("bolt-{number}-{key}"), text)?;
        }
    }
    for ([label, count, price], number) in PARTS.into_iter().zip(1..) {
        for (key, text) in [("label", label), ("count", count), ("price", price)] {
            holds(&format!("part-{number}-{key}"), text)?;
        }
    }
    for (reading, text) in [("1-0", "45.5"), ("1-1", "44,8 N·m"), ("2-0", "29"), ("3-0", "20.5")] {
        holds(&format!("bolt-{reading}-reading"), text)?;
    }
    for row in ["bolt-1", "bolt-2", "bolt-3", "part-1", "part-2", "part-3", "check-1"] {
        ticked(phone, &format!("{row}-done"), true)?;
    }
    ticked(phone, "bolt-2-replaced", true)?;
    ticked(phone, "bolt-2-replace", true)?;
    ticked(phone, "bolt-1-replace", false)
}

fn it_prints(phone: &Phone) -> Outcome {
    // Typed a moment before: what goes to the printer is of now.
    let count = "window.asked = []; window.print = () => { window.asked.push(document.querySelector('.print-only')?.textContent ?? '') }";
    phone.script::<()>(count, Vec::new())?;
    phone.add_to("sheet-notes", " Last.")?;
    phone.tap("#print-sheet")?;
    let asked = phone.until("the printer to be asked", || {
        let asked: Vec<String> = phone.script("return window.asked", Vec::new())?;
        Ok((!asked.is_empty()).then_some(asked))
    })?;
    ensure!(asked.len() == 1 && asked[0].contains("Last."), "printed: {asked:?}");

    let pdf = phone.print()?;
    look_at(&pdf)?;
    let paper = bare(&pdf_extract::extract_text_from_mem(&pdf)?);
    let today = "const day = new Date(); const two = (number) => String(number).padStart(2, '0'); \
         return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`";
    let today: String = phone.script(today, Vec::new())?;
    let version = format!("Fenderside {}, {today}", env!("CARGO_PKG_VERSION"));
    let on_it = |words: &str| -> Outcome {
        ensure!(paper.contains(&bare(words)), "\"{words}\" is not on the paper: {paper}");
        Ok(())
    };
    for (_, text) in &PLAN[..4] {
        on_it(text)?;
    }
    for bolt in BOLTS {
        bolt.iter()
            .filter(|(key, _)| *key != "count")
            .try_for_each(|(_, text)| on_it(text))?;
    }
    for [label, _, price] in PARTS {
        on_it(label)?;
        on_it(price)?;
    }
    for (_, text) in CHECK {
        on_it(text)?;
    }
    // Results with their units, and what they rest on.
    for words in [
        "2 × M10x1.5 8.8",
        "45 N·m 33.2 lbf·ft",
        "Set with the adapter: 20.6 N·m (15.2 lbf·ft)",
        "45.5 N·m (+1.11 %)",
        "44,8 N·m (−0.444 %)",
        "Single-use, replaced.",
        "Total 102.05 EUR",
        "7 of 7 done, complete",
        "300 240 km",
        "Belt service, every 150 000 km, every 730 days, last at 150 240 km, last on 2025-03-31",
        ": due at 300 240 km, 150 000 km to go",
        "due on 2027-03-31",
        "VDI 2230-1: M =",
        "ISO 6789-1:2003: deviation = reading / target − 1",
        &version,
    ] {
        on_it(words)?;
    }
    // Nothing that can only be tapped.
    for words in ["Add a bolt", "Open in Bolt", "Remove", "All sheets", "Undo"] {
        ensure!(!paper.contains(&bare(words)), "\"{words}\" is on the paper");
    }
    Ok(())
}

/// A text without its spaces, which are gaps on paper, and with joined letters apart.
fn bare(text: &str) -> String {
    let apart = text.replace('ﬁ', "fi").replace('ﬂ', "fl").replace('ﬀ', "ff");
    apart.chars().filter(|letter| !letter.is_whitespace()).collect()
}

/// Keeps the paper in `target/screens`, and a picture of it where a program for that is there.
fn look_at(pdf: &[u8]) -> Outcome {
    let file = keep_to_look_at("sheet-paper.pdf", pdf)?;
    let picture = file.with_extension("");
    // It is for the eye only, so nothing hangs on it.
    let _ = Command::new("pdftoppm")
        .args(["-png", "-r", "80", "-f", "1", "-singlefile"])
        .arg(&file)
        .arg(picture)
        .output();
    Ok(())
}
