//! What a sheet of 50 rows costs to read, type into, keep and open, and what a search costs over 10,
//! 100 and 1,000 of them.
//!
//! `cargo bench -p shopmath --bench sheets` prints a table of microseconds; `-- --json` a line per
//! number for other programs. Each is the fastest of many runs, since a shared machine only ever
//! adds time.

use shopmath::sheet::head::{self, Head};
use shopmath::sheet::record::Record;
use shopmath::sheet::{Check, Fastener, Part, Sheet, SheetFault, assess, code, link, reassess};
use shopmath::tools::Tools;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// How long each number is measured.
const TIME: Duration = Duration::from_millis(600);
/// Rows of the sheet: 40 of bolts, 8 parts, 2 checks.
const ROWS: u32 = 50;

fn fastener(id: u32) -> Fastener {
    let threads = ["M6", "M8", "M10x1.25", "M12x1.5", "3/8-16"];
    let specs = ["10 N·m", "25 N·m", "30 N·m + 90°", "44 ft-lb", "20 N·m + 90° + 90°"];
    let of = |texts: [&str; 5]| texts.into_iter().cycle().nth(id as usize).map(String::from);
    let mut row = Fastener {
        id,
        label: format!("Bolt {id} of the front cover"),
        thread: of(threads).unwrap_or_default(),
        class: if id % 5 == 4 { String::new() } else { "10.9".into() },
        spec: of(specs).unwrap_or_default(),
        count: "4".into(),
        done: id.is_multiple_of(2),
        ..Fastener::default()
    };
    if id.is_multiple_of(2) {
        row.readings = vec!["25.4".into(), "24.8 N·m".into()];
    }
    if id % 5 == 2 {
        row.bolt.insert("grip".into(), "42 mm".into());
    }
    row
}

fn sheet(number: u32) -> Sheet {
    let part = |id| Part {
        id,
        label: format!("Part {id} of machine {number}"),
        price: "12.50".into(),
        ..Part::default()
    };
    let check = |id| Check {
        id,
        label: "Tensioner swing at idle".into(),
        before: "9 mm".into(),
        ..Check::default()
    };
    Sheet {
        machine: format!("Machine {number} of the yard"),
        odometer: "150 240 km".into(),
        date: "2025-03-31".into(),
        notes: "Belt service with a new tensioner, and the cover resealed.".into(),
        fasteners: (0..ROWS - 10).map(fastener).collect(),
        parts: (0..8).map(part).collect(),
        checks: (0..2).map(check).collect(),
        ..Sheet::new(format!("sheet-{number}"))
    }
}

/// The fastest run of a job, microseconds.
fn fastest(mut job: impl FnMut()) -> f64 {
    let (start, mut least) = (Instant::now(), Duration::MAX);
    while start.elapsed() < TIME {
        let run = Instant::now();
        job();
        least = least.min(run.elapsed());
    }
    least.as_secs_f64() * 1e6
}

fn print(name: &str, micros: f64) {
    if std::env::args().any(|argument| argument == "--json") {
        println!(r#"{{"bench":"sheets","what":"{name}","microseconds":{micros}}}"#);
    } else {
        println!("{name:<44}{micros:>12.1} µs");
    }
}

fn one_sheet() -> Result<(), SheetFault> {
    let sheet = sheet(1);
    let found = assess(&sheet, Tools::Metric, None);
    print(
        "assess 50 rows",
        fastest(|| drop(black_box(assess(black_box(&sheet), Tools::Metric, None)))),
    );
    let before = Some((&sheet, Tools::Metric, &found));
    for (name, typed) in [
        ("reassess after a key in a spec", |sheet: &mut Sheet| {
            sheet.fasteners[22].spec.insert(0, '1')
        }),
        ("reassess after a key that spoils a spec", |sheet: &mut Sheet| {
            sheet.fasteners[22].spec.push('5')
        }),
        ("reassess after a key in a label", |sheet: &mut Sheet| {
            sheet.fasteners[22].label.push('5')
        }),
        ("reassess after a key in the notes", |sheet: &mut Sheet| {
            sheet.notes.push('5')
        }),
    ] as [(&str, fn(&mut Sheet)); 4]
    {
        let mut after = sheet.clone();
        typed(&mut after);
        print(
            name,
            fastest(|| drop(black_box(reassess(black_box(&after), Tools::Metric, None, before)))),
        );
    }
    let record = Record::of(&sheet)?;
    print(
        "record write",
        fastest(|| drop(black_box(Record::of(black_box(&sheet))))),
    );
    print("record read", fastest(|| drop(black_box(black_box(&record).sheet()))));
    print(
        "head",
        fastest(|| drop(black_box(Head::of(black_box(&sheet), found.complete())))),
    );
    let text = link::encode(&sheet)?;
    print(
        "link write",
        fastest(|| drop(black_box(link::encode(black_box(&sheet))))),
    );
    print("link read", fastest(|| drop(black_box(link::decode(black_box(&text))))));
    let longest = "Q".repeat(code::BYTES);
    print(
        "code of the longest text",
        fastest(|| drop(black_box(code::code(black_box(&longest))))),
    );
    Ok(())
}

fn many_heads() {
    for count in [10_u32, 100, 1_000] {
        let mut heads: Vec<Head> = (0..count).map(|number| Head::of(&sheet(number), false)).collect();
        let lowered: Vec<String> = heads.iter().map(|head| head.words.to_lowercase()).collect();
        let hits = |query| lowered.iter().filter(|words| head::matches(words, query)).count();
        print(
            &format!("search {count} heads, in none"),
            fastest(|| {
                black_box(hits(black_box("tensioner gearbox")));
            }),
        );
        print(
            &format!("search {count} heads, in all"),
            fastest(|| {
                black_box(hits(black_box("swing yard")));
            }),
        );
        print(&format!("sort {count} heads"), fastest(|| heads.sort_by(head::compare)));
    }
}

fn main() -> Result<(), SheetFault> {
    one_sheet()?;
    many_heads();
    Ok(())
}
