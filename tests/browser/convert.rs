//! Convert: a spec as the manual prints it, read in the units of one's tools.

use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};

#[test]
fn a_torque_is_read_in_the_units_of_the_tools() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;

    phone.type_into("q", "60 N·m")?;
    phone.until_row("lbf·ft", 44.253_728_956_636, 1e-12)?;
    for unit in ["lbf·in", "ozf·in", "N·m", "kgf·m", "kgf·cm"] {
        phone.row(unit)?;
    }
    phone.until_text("[data-row='lbf·ft']", "44.3")?;
    ensure!(phone.attribute("[data-row='lbf·ft']", "data-unit")?.as_deref() == Some("lbf·ft"));

    // The answer is on the screen without scrolling, in digits to be read at arm's length.
    let seen = "const found = document.querySelector(\"[data-row='lbf·ft'] .number\"); \
         const box = found.getBoundingClientRect(); \
         return box.top >= 0 && box.bottom < innerHeight && parseFloat(getComputedStyle(found).fontSize) >= 28";
    phone.until_true("the answer in sight", seen)?;

    for (typed, unit, value) in [
        ("44 ft-lb", "N·m", 59.655_989_726_580),
        ("10 kgm", "N·m", 98.0665),
        ("30 psi", "bar", 2.068_427_187_950),
        ("-40 °F", "°C", -40.0),
        ("4,5 qt", "L", 4.258_588_257),
        ("80 km/h", "mph", 49.709_695_378_987),
        ("100 PS", "hp", 98.632_007_062_5),
        ("2 1/2 in", "mm", 63.5),
    ] {
        phone.type_into("q", typed)?;
        phone.until_row(unit, value, 1e-10)?;
    }
    Ok(())
}

#[test]
fn a_length_shows_its_fraction_and_the_wrench_that_fits() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert?q=19%20mm")?;
    phone.until_row("in-fraction", 0.75, 0.0)?;
    phone.until_text("[data-row='in-fraction']", "3/4")?;
    phone.until_row("wrench-inch", 0.75, 0.0)?;

    // 5/16 in is smaller than 8 mm, so it is not offered; 9/16 in on 14 mm rounds the corners.
    phone.type_into("q", "8 mm")?;
    phone.until_row("wrench-inch", 11.0 / 32.0, 1e-12)?;
    phone.type_into("q", "14 mm")?;
    phone.until_row("wrench-inch", 9.0 / 16.0, 1e-12)?;
    phone.until_text("[data-caution='rounds-corners']", "rounds them")
}

#[test]
fn a_bad_entry_keeps_its_text_and_says_what_to_type() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;

    phone.type_into("q", "1,234 Nm")?;
    phone.until_text("#q-error", "Type 1234 or 1.234")?;
    ensure!(phone.field("q")? == "1,234 Nm" && phone.count("[data-row]")? == 0);
    phone.error("q")?;
    phone.tap(".chips .chip:nth-of-type(2)")?;
    phone.until_row("N·m", 1.234, 1e-12)?;
    ensure!(phone.field("q")? == "1.234 Nm" && phone.count("#q-error")? == 0);

    for (typed, said) in [
        ("60", "unit is missing"),
        ("60 mPa", "Type MPa"),
        ("45-35 Nm", "smaller end first"),
        ("3/0 in", "cannot have 0"),
        ("1e999 N·m", "far from 1"),
        ("5 oz", "fl oz or oz wt"),
        ("-500 °C", "colder"),
        ("<b>60</b>", "number is missing"),
    ] {
        phone.type_into("q", typed)?;
        phone.until_text("#q-error", said)?;
        ensure!(phone.field("q")? == typed, "the text was lost");
        phone.error("q")?;
        let page: String = phone.script("return document.body.innerText", Vec::new())?;
        ensure!(!page.contains("NaN") && !page.contains("inf"), "{typed}: {page}");
    }
    Ok(())
}

#[test]
fn a_spec_list_becomes_a_table() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert?q=Tensioner%20bolt%3A%2060%20N%C2%B7m%20(44%20lbf%C2%B7ft)%0AIdler%2045%20furlongs%0A10%20N%C2%B7m%20%2B%2090%C2%B0")?;
    phone.until_text("[data-line='1']", "Tensioner bolt: 60 N·m")?;
    phone.until_value("[data-line='1'] [data-row='lbf·ft']", 44.253_728_956_636, 1e-12)?;
    phone.until_text("#q-2-error", "no unit known")?;
    phone.until_value("[data-line='3'] [data-row='lbf·ft']", 7.375_621_492_773, 1e-12)?;
    phone.until_value("[data-line='3'] [data-row='turn']", 0.25, 1e-12)?;
    phone.until_text("[data-line='3'] [data-caution='angle-means-stretch']", "single-use")?;
    // A title and an entry in words are no alarm.
    phone.type_into(
        "q",
        "Cylinder head\nHead bolt - torque to yield\nCap 45 Nm\nIdler 45 furlongs",
    )?;
    phone.until_text("[data-line='1'] th[colspan]", "Cylinder head")?;
    phone.until_text("[data-line='2']", "No figure in this line")?;
    phone.until_text("#q-4-error", "no unit known")?;
    ensure!(phone.count(".fault")? == 1);
    // What most tools read in is never behind "All units".
    phone.type_into("q", "Idler 2.5 kg-m\nCap 2,5 daN.m")?;
    phone.until_value("[data-line='1'] [data-row='N·m']", 24.516_625, 1e-12)?;
    phone.until_value("[data-line='2'] [data-row='N·m']", 25.0, 1e-12)?;
    ensure!(phone.count("[data-row='ozf·in'], [data-row='kgf·cm']")? == 0);
    Ok(())
}

#[test]
fn what_manuals_print_in_their_own_ways_is_read_and_what_could_mean_two_things_is_not() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    for (typed, unit, value) in [
        ("25 N·m {255 kgf·cm, 18 ft·lbf}", "lbf·ft", 18.439_053_731_932),
        ("Drain plug | 35 Nm | 26 lb-ft", "lbf·ft", 25.814_675_224_704),
        ("60 Nm / 44 lb-ft", "lbf·in", 531.044_747_479_631),
        ("30 Nm, then turn a further 90 degrees", "turn", 0.25),
        ("20 Nm 90°", "flat", 1.5),
        ("850 min⁻¹", "rpm", 850.0),
        ("600 N·cm", "N·m", 6.0),
        ("150 000 km", "mi", 93_205.678_835_600),
        ("M12 x 1.5 110 Nm", "N·m", 110.0),
        ("Stage 1 - 20 Nm", "N·m", 20.0),
        ("5 pints (imp)", "L", 2.841_306_25),
    ] {
        phone.type_into("q", typed)?;
        phone.until_row(unit, value, 1e-10)?;
    }
    // Of a way the fraction of an inch comes last.
    phone.type_into("q", "5 km")?;
    phone.until_true(
        "the fraction of an inch last",
        "return [...document.querySelectorAll('[data-row]')].at(-1)?.dataset.row === 'in-fraction'",
    )?;
    // Figures side by side that cannot both be meant.
    phone.type_into("q", "20 N·m / 20 lbf·ft")?;
    phone.until_text("[data-caution='figures-disagree']", "more than rounding")?;
    // One of two values would be lost.
    phone.type_into("q", "M8: 25 Nm, M10: 49 Nm")?;
    phone.until_text("#q-error", "more than one value")?;
    ensure!(phone.count("[data-row]")? == 0, "one of the two was taken");
    phone.type_into("q", "32/35 psi")?;
    phone.until_text("#q-error", "more than one value")?;
    // A point may mark thousands where the values run into them.
    phone.type_into("q", "60.000 km")?;
    phone.until_text("#q-error", "Type 60000 or 60")?;
    phone.tap(".fault .chip")?;
    phone.until_row("mi", 37_282.271_534_24, 1e-10)?;
    // In a list the field says how many lines are at fault; the others stay as they are, empty ones too.
    phone.type_into("q", "60 N·m\n\n60.000 km")?;
    phone.until_text("#q-error", "1 not read")?;
    ensure!(phone.attribute("#q", "aria-invalid")?.as_deref() == Some("true"));
    phone.tap("[data-line='2'] .chip")?;
    phone.until("the line in its place", || {
        Ok((phone.field("q")? == "60 N·m\n\n60000 km").then_some(()))
    })?;
    // A thread in a list leads to its bench, as it does alone.
    phone.type_into("q", "3/8\"-16")?;
    phone.until_text("#q-error", "names a thread")?;
    phone.until_text(".answers a", "open it in Bolt")?;
    phone.open("#/convert?q=60%20Nm%0A3%2F8%22-16")?;
    phone.until_text("#q-2-error", "names a thread")?;
    phone.tap("[data-line='2'] a")?;
    phone.until("the thread on Bolt", || {
        Ok((phone.field("thread")? == "3/8\"-16").then_some(()))
    })
}

#[test]
fn what_is_cleared_can_be_brought_back_until_another_text_is_typed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    let list = "Head 60 Nm\nCap 45 Nm\nPlug 25 Nm\nNut 110 Nm";
    phone.type_into("q", list)?;
    phone.until_text("[data-line='4']", "Nut")?;
    phone.until_true(
        "a button no higher than others beside a long text",
        "return document.querySelector('.clear').getBoundingClientRect().height === 48",
    )?;
    phone.tap(".clear")?;
    phone.until_text(".bring", "Cleared.")?;
    ensure!(phone.field("q")?.is_empty());
    phone.tap(".bring .chip")?;
    phone.until_text("[data-line='4']", "Nut")?;
    ensure!(phone.field("q")? == list && phone.count(".bring")? == 0);
    phone.tap(".clear")?;
    phone.type_into("q", "30 psi")?;
    phone.until_row("bar", 2.068_427_187_950, 1e-10)?;
    ensure!(phone.count(".bring")? == 0, "it goes when something is typed");
    Ok(())
}

#[test]
fn settings_stay_and_decide_what_comes_first() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert?q=60%20N%C2%B7m")?;
    let first = "return document.querySelector('[data-row]').dataset.row === arguments[0]";
    phone.until_true("inch units first", &first.replace("arguments[0]", "'lbf·ft'"))?;
    phone.tap("input[name='tools'][value='metric']")?;
    phone.until_true("metric units first", &first.replace("arguments[0]", "'N·m'"))?;

    phone.tap(".head-button")?;
    phone.tap("input[name='theme'][value='dark']")?;
    let dark = "return document.documentElement.dataset.theme === 'dark' \
         && getComputedStyle(document.body).backgroundColor === 'rgb(14, 18, 19)' \
         && [...document.querySelectorAll('meta[name=theme-color]')].filter(({ media }) => matchMedia(media).matches) \
              .every(({ content }) => content === '#0e1213')";
    phone.until_true("the dark theme, the browser's bars included", dark)?;
    phone.screenshot("convert-dark")?;
    phone.tap("input[name='theme'][value='sun']")?;
    phone.until_true(
        "the sun theme",
        "return getComputedStyle(document.body).backgroundColor === 'rgb(255, 255, 255)'",
    )?;
    phone.tap("input[name='theme'][value='dark']")?;
    phone.until_true("the dark theme", dark)?;

    let site = server.site().to_owned();
    let (profile, _) = phone.close()?;
    let next_day = Phone::with(profile, &site)?;
    next_day.open("#/convert?q=60%20N%C2%B7m")?;
    next_day.until_true("the dark theme again", dark)?;
    next_day.until_true("metric units first again", &first.replace("arguments[0]", "'N·m'"))
}

#[test]
fn the_link_is_the_state() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert?q=10%20Nm%20%2B%2090%C2%B0&unknown=1")?;
    phone.until_text(".read-as", "10 N·m + 90°")?;

    phone.type_into("q", "35–45 N·m")?;
    phone.until("the address to follow", || {
        Ok((phone.fragment()? == "#/convert?q=35%E2%80%9345%20N%C2%B7m").then_some(()))
    })?;

    // To another screen and back: the bench is as it was left, the title and focus follow.
    phone.tap("nav a[href^='#/sheet']")?;
    phone.until_text("h1", "Sheet")?;
    phone.until_true(
        "title and focus on the new screen",
        "return document.title === 'Sheet · Fenderside' && document.activeElement.localName === 'h1'",
    )?;
    phone.back()?;
    phone.until_text("h1", "Convert")?;
    ensure!(phone.field("q")? == "35–45 N·m");
    // What was typed a moment before leaving is not lost to the back button.
    phone.type_into("q", "30 psi")?;
    phone.tap("nav a[href^='#/sheet']")?;
    phone.until_text("h1", "Sheet")?;
    phone.back()?;
    phone.until_text("h1", "Convert")?;
    ensure!(phone.field("q")? == "30 psi");
    phone.type_into("q", "35–45 N·m")?;
    phone.tap("nav a[href^='#/sheet']")?;
    phone.until_text("h1", "Sheet")?;
    phone.tap("nav a[href^='#/convert']")?;
    phone.until_text("h1", "Convert")?;
    ensure!(phone.field("q")? == "35–45 N·m", "the tab leads back to the same bench");
    Ok(())
}

#[test]
fn a_thread_a_belt_and_a_torque_lead_on() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    for (typed, key, screen) in [
        ("3/8-16", "thread", "Bolt"),
        ("6PK1453", "belt", "Belt"),
        ("60 N·m", "spec", "Bolt"),
    ] {
        phone.open("#/convert")?;
        phone.type_into("q", typed)?;
        phone.tap(".answers a.button")?;
        phone.until_text("h1", screen)?;
        ensure!(phone.field(key)? == typed, "{typed}");
    }
    // The bolt kept its thread from the first visit.
    ensure!(phone.field("thread")? == "3/8-16");
    // What the line says of the bolt goes with it.
    phone.open("#/convert?q=Wheel%20bolt%20M12%20x%201.5%2010.9%20110%20Nm")?;
    phone.tap(".answers a.button")?;
    phone.until_text("h1", "Bolt")?;
    ensure!(phone.field("thread")? == "M12 x 1.5" && phone.field("class")? == "10.9");
    ensure!(phone.field("spec")? == "110 N·m", "{:?}", phone.field("spec"));
    phone.until_text("#verdict", "Believable")?;
    // A limit is converted, and asked about before it is judged as a torque.
    phone.open("#/convert?q=Idler%20min.%2040%20Nm")?;
    phone.until_text(".read-as", "Idler: min. 40 N·m")?;
    phone.tap(".answers a.button")?;
    phone.until_text("#spec-error", "a limit, not a torque")?;
    phone.tap(".field-spec .fault .chip")?;
    phone.until("the torque alone", || {
        Ok((phone.field("spec")? == "40 N·m").then_some(()))
    })?;
    // A fraction alone may name a thread, or be a length.
    phone.open("#/convert?q=9%2F16")?;
    phone.tap(".fault .chip")?;
    phone.until_row("mm", 14.2875, 1e-12)
}

#[test]
fn the_way_back_from_a_link_leads_to_what_was_typed_last() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    // A hand so quick that the address has no rest to follow in.
    let slow = "const wait = window.setTimeout; \
         window.setTimeout = (then, time, ...rest) => wait(then, time === 350 ? 60000 : time, ...rest)";
    phone.script::<()>(slow, Vec::new())?;
    phone.type_into("q", "60 N·m")?;
    phone.tap("a.button[href*='spec=']")?;
    phone.until_text("h1", "Bolt")?;
    phone.back()?;
    phone.until_text("h1", "Convert")?;
    ensure!(phone.field("q")? == "60 N·m", "it is {:?}", phone.field("q")?);
    Ok(())
}

#[test]
fn what_has_no_other_unit_says_so() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    for typed in ["300 Hz", "30 %", "300 Hz\n60 N·m"] {
        phone.type_into("q", typed)?;
        phone.until_text(".answers", "No other unit")?;
        ensure!(
            phone.count("[id='q-error'], [id='q-1-error']")? == 0,
            "`{typed}` is no error"
        );
    }
    phone.until_row("lbf·ft", 44.253_728_956_636, 1e-12)
}
