//! What a person waits for on Sheet with 10, 100 and 1,000 sheets of 50 rows on the phone: the list,
//! a sheet, a key in it, a key of a search.

use crate::slow_down;
use crate::typing::type_texts;
use anyhow::{Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::{Map, Value, json};
use std::time::Duration;

/// How many sheets there are.
const SHELVES: [usize; 3] = [10, 100, 1000];
/// Odd, so that the median is one of them.
const RUNS: usize = 9;
/// Bolts of a sheet; with eight parts and two checks it has 50 rows.
const BOLTS: usize = 40;
/// Specs, letter by letter, and words of which the last is on one sheet.
const SPECS: &[&str] = &["30 N·m + 90°", "44 ft-lb"];
const QUERY: &[&str] = &["larkfield 7 bolt 12"];
/// Keystrokes in a sheet, at least; the search is typed once.
const KEYS: usize = 120;

/// How long a person looks for a row before typing in it.
const LOOK: Duration = Duration::from_secs(3);

/// Goes to an address, and gives the times from then to the end of the first frame that shows what a
/// selector finds, once for each number of them.
const REACH: &str = r"
    const [address, selector, numbers] = arguments;
    return new Promise((done) => {
        const begun = performance.now();
        const waited = [...numbers], times = [];
        const look = () => {
            while (waited.length > 0 && document.querySelectorAll(selector).length >= waited[0]) {
                waited.shift();
                requestAnimationFrame(() => scheduler.postTask(() => {
                    times.push(performance.now() - begun);
                    if (times.length === numbers.length) done(times);
                }, { priority: 'user-blocking' }));
            }
            if (waited.length === 0) watcher.disconnect();
        };
        const watcher = new MutationObserver(look);
        watcher.observe(document.body, { childList: true, subtree: true });
        location.hash = address;
    });
";

/// Lists by the number of sheets.
pub(crate) fn measure() -> Result<Value> {
    let mut all = Map::new();
    for count in SHELVES {
        all.insert(count.to_string(), on_a_shelf_of(count)?);
    }
    Ok(Value::Object(all))
}

fn on_a_shelf_of(count: usize) -> Result<Value> {
    let page = Server::start()?;
    let phone = Phone::fresh(page.site())?;
    phone.open("#/sheet")?;
    phone.until_kept()?;
    bring_in(&phone, count)?;
    phone.open("#/convert")?;
    // Slow from its start, as a phone is.
    slow_down(&phone)?;
    phone.reload()?;
    let [mut list, mut open, mut whole] = [const { Vec::<f64>::new() }; 3];
    for run in 0..RUNS {
        // The list shows the first 40.
        list.extend(reach(&phone, "#/sheet", "[data-sheet]", &[count.min(40)])?);
        // Each time another sheet, none of which is at hand.
        let sheet = format!("#/sheet/bench-{}", run * count / RUNS);
        let times = reach(&phone, &sheet, "[data-fastener]", &[1, BOLTS])?;
        open.extend(times.first());
        whole.extend(times.last());
        reach(&phone, "#/convert", "#q", &[1])?;
    }
    phone.open("#/sheet/bench-0")?;
    std::thread::sleep(LOOK);
    let key = type_texts(&phone, "bolt-20-spec", SPECS, KEYS)?;
    phone.open("#/sheet")?;
    let search = type_texts(&phone, "find", QUERY, 1)?;
    ensure!(phone.count("[data-sheet]")? > 0, "the search finds nothing");
    Ok(json!({ "list": list, "open": open, "whole": whole, "key": key, "search": search }))
}

fn reach(phone: &Phone, address: &str, selector: &str, numbers: &[usize]) -> Result<Vec<f64>> {
    phone.script(REACH, vec![json!(address), json!(selector), json!(numbers)])
}

/// Through the page itself, as a person would bring in a backup.
fn bring_in(phone: &Phone, count: usize) -> Outcome {
    let sheets: Vec<Value> = (0..count).map(sheet).collect();
    let file = tempfile::Builder::new().suffix(".json").tempfile()?;
    let text = json!({ "format": "fenderside-sheets", "schema": 1, "sheets": sheets }).to_string();
    std::fs::write(file.path(), text)?;
    phone.choose_file("import-sheet", file.path())?;
    phone.tap("#import-add")?;
    phone.until_text("#sheets-done", &format!("{count} brought in"))
}

fn sheet(number: usize) -> Value {
    let threads = ["M6", "M8", "M10x1.25", "M12x1.5", "3/8-16"];
    let specs = ["10 N·m", "25 N·m", "30 N·m + 90°", "44 ft-lb", "20 N·m + 90° + 90°"];
    let bolt = |id: usize| {
        let (thread, spec) = (threads[id % threads.len()], specs[id % specs.len()]);
        json!({ "id": id, "label": format!("Cover bolt {id}"), "thread": thread, "class": "10.9", "spec": spec, "count": "2",
            "readings": ["25.4"], "done": id.is_multiple_of(2) })
    };
    let part = |id: usize| json!({ "id": id, "label": format!("Part {id} of job {number}"), "price": "12.50" });
    let check = |id: usize| json!({ "id": id, "label": "Tensioner swing at idle", "before": "9 mm" });
    json!({
        "schema": 1, "id": format!("bench-{number}"), "machine": format!("Larkfield van {number}"), "odometer": "150 240 km",
        "date": "2025-03-31", "notes": "Belt service with a new tensioner, and the cover resealed.",
        "fasteners": (1..=BOLTS).map(bolt).collect::<Vec<_>>(),
        "parts": (1..=8).map(part).collect::<Vec<_>>(), "checks": (1..=2).map(check).collect::<Vec<_>>(),
    })
}
