//! Properties over any sheet and any bytes: what goes out comes back, and what is no sheet has a
//! name.

use super::merge::Fate;
use super::model::{Belt, Check, Fastener, Interval, Part, SCHEMA, Sheet};
use super::order::{Action, List, Row, Tick, apply};
use super::{SheetFault, assess, csv, demo, file, limits, link, merge, reassess, record};
use crate::caution::fastener::READING_OUTSIDE;
use crate::fastener::bolt;
use crate::result::{Finding, Id};
use crate::tools::Tools;
use proptest::collection::{btree_map, vec};
use proptest::prelude::*;
use std::rc::Rc;

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        any::<String>().prop_map(|text| text.chars().take(40).collect()),
        prop::sample::select(vec![
            "M10",
            "10.9",
            "60 N·m",
            "30 N·m + 90°",
            "4",
            "12.50",
            "150 000 km",
            "2025-03-31",
            "1e300",
            "-1"
        ])
        .prop_map(String::from),
    ]
}

fn fastener(id: u32) -> impl Strategy<Value = Fastener> {
    let keys = prop::sample::select(vec!["grip", "adapter", "wrench", "tool", "mu", "head"]).prop_map(String::from);
    let bolt = btree_map(keys, text(), 0..3);
    (vec(text(), 7), any::<[bool; 3]>(), vec(text(), 0..4), bolt).prop_map(move |(texts, flags, readings, bolt)| {
        let mut texts = texts.into_iter();
        let mut next = || texts.next().unwrap_or_default();
        Fastener {
            id,
            label: next(),
            thread: next(),
            class: next(),
            spec: next(),
            count: next(),
            head: next(),
            drive: next(),
            single_use: flags[0],
            replaced: flags[1],
            done: flags[2],
            readings,
            bolt,
        }
    })
}

fn part(id: u32) -> impl Strategy<Value = Part> {
    (text(), text(), text(), any::<bool>()).prop_map(move |(label, count, price, done)| Part {
        id,
        label,
        count,
        price,
        done,
    })
}

fn check(id: u32) -> impl Strategy<Value = Check> {
    (text(), text(), text(), any::<bool>()).prop_map(move |(label, before, after, done)| Check {
        id,
        label,
        before,
        after,
        done,
    })
}

fn belt(id: u32) -> impl Strategy<Value = Belt> {
    (text(), text()).prop_map(move |(label, query)| Belt { id, label, query })
}

fn interval(id: u32) -> impl Strategy<Value = Interval> {
    (text(), text(), text(), text(), text()).prop_map(
        move |(label, every_distance, every_days, done_at_odometer, done_on)| Interval {
            id,
            label,
            every_distance,
            every_days,
            done_at_odometer,
            done_on,
        },
    )
}

fn sheet() -> impl Strategy<Value = Sheet> {
    let head = ("[a-z0-9-]{1,64}", 0..=limits::REV, any::<bool>(), vec(text(), 5));
    let fasteners = prop_oneof![
        Just(vec![]),
        (fastener(4), fastener(1), fastener(9)).prop_map(|(a, b, c)| vec![a, b, c])
    ];
    let parts = prop_oneof![
        Just(vec![]),
        (part(1), part(0), part(u32::MAX)).prop_map(|(a, b, c)| vec![a, b, c])
    ];
    let others = (
        check(3).prop_map(|row| vec![row]),
        belt(5).prop_map(|row| vec![row]),
        vec(interval(2), 0..2),
    );
    (head, fasteners, parts, others).prop_map(
        |((id, rev, demo, texts), fasteners, parts, (checks, belts, intervals))| {
            let mut texts = texts.into_iter();
            let mut next = || texts.next().unwrap_or_default();
            Sheet {
                schema: SCHEMA,
                id,
                rev,
                updated: if demo { "2025-03-31".into() } else { String::new() },
                demo,
                machine: next(),
                odometer: next(),
                date: next(),
                notes: next(),
                currency: next(),
                fasteners,
                parts,
                checks,
                belts,
                intervals,
            }
        },
    )
}

fn action() -> impl Strategy<Value = Action> {
    let list = prop::sample::select(vec![
        List::Fasteners,
        List::Parts,
        List::Checks,
        List::Belts,
        List::Intervals,
    ]);
    let id = prop::sample::select(vec![0, 1, 2, 3, 4, 5, 9, u32::MAX]);
    let tick = prop::sample::select(vec![Tick::Done, Tick::Replaced, Tick::SingleUse]);
    let row = prop_oneof![
        fastener(7).prop_map(Row::Fastener),
        part(7).prop_map(Row::Part),
        check(7).prop_map(Row::Check),
        belt(7).prop_map(Row::Belt),
        interval(7).prop_map(Row::Interval),
    ];
    prop_oneof![
        (list.clone(), id.clone(), 0_usize..5).prop_map(|(list, id, to)| Action::Move { list, id, to }),
        (list.clone(), id.clone(), tick, any::<bool>()).prop_map(|(list, id, tick, on)| Action::Tick {
            list,
            id,
            tick,
            on
        }),
        (0_usize..5, row.prop_map(Box::new)).prop_map(|(at, row)| Action::Insert { at, row }),
        (list, id).prop_map(|(list, id)| Action::Remove { list, id }),
    ]
}

/// A reading, good ones among them often.
fn reading() -> impl Strategy<Value = String> {
    let known = vec![
        "60",
        "44 ft-lb",
        "90 N·m",
        "6",
        "40",
        "18",
        "60 N",
        "-3",
        "1e300 N·m",
        " ",
    ];
    prop_oneof![prop::sample::select(known).prop_map(String::from), text()]
}

/// One of some good texts for an entry, or none.
fn good(key: &'static str, texts: &'static [&'static str]) -> impl Strategy<Value = Option<(String, String)>> {
    prop::option::of(prop::sample::select(texts).prop_map(move |text| (key.into(), text.into())))
}

/// One entry of a row of bolts, with what is typed or ticked there.
fn edit() -> impl Strategy<Value = (usize, usize, String, bool)> {
    (any::<usize>(), 0_usize..12, text(), any::<bool>())
}

/// Makes an edit; its row is returned if the edit is one that the row is judged by.
fn edited(sheet: &mut Sheet, (row, entry, text, on): (usize, usize, String, bool)) -> Option<u32> {
    let rows = sheet.fasteners.len().max(1);
    let row = sheet.fasteners.get_mut(row % rows)?;
    match entry {
        0 => row.thread = text,
        1 => row.class = text,
        2 => row.spec = text,
        3 => row.count = text,
        4 => row.readings.push(text),
        5 => drop(row.bolt.insert("grip".into(), text)),
        6 => row.single_use = on,
        7 => row.label = text,
        8 => row.head = text,
        9 => row.drive = text,
        10 => row.replaced = on,
        _ => row.done = on,
    }
    (entry < 7).then_some(row.id)
}

/// Whether a reader's answer is a sheet within its limits, or a fault with a name and a sentence.
fn sound<'a>(read: Result<impl IntoIterator<Item = &'a Sheet>, &SheetFault>) -> bool {
    match read {
        Ok(sheets) => sheets.into_iter().all(|sheet| limits::check(sheet).is_ok()),
        Err(fault) => !fault.name().is_empty() && fault.to_string().ends_with('.'),
    }
}

fn all_sound(bytes: &[u8]) -> bool {
    let text = String::from_utf8_lossy(bytes);
    sound(file::import(bytes).as_ref())
        && sound(record::read(bytes).as_ref().map(Some))
        && sound(link::decode(&text).as_ref().map(Some))
        && sound(link::decode(&format!("1.{text}")).as_ref().map(Some))
}

/// A whole text with some of it overwritten, cut or doubled.
fn damaged(whole: &str, at: usize, with: &[u8], cut: bool) -> Vec<u8> {
    let mut bytes = whole.as_bytes().to_vec();
    let at = at % (bytes.len() + 1);
    if cut {
        bytes.truncate(at);
    } else {
        let end = (at + with.len()).min(bytes.len());
        bytes.splice(at..end, with.iter().copied());
    }
    bytes
}

proptest! {
    #[test]
    fn what_goes_out_comes_back(sheet in sheet()) {
        let sheets = vec![sheet];
        let text = file::export(&sheets).unwrap();
        prop_assert_eq!(&file::import(text.as_bytes()).unwrap(), &sheets);
        prop_assert_eq!(&link::decode(&link::encode(&sheets[0]).unwrap()).unwrap(), &sheets[0]);
        prop_assert_eq!(&record::Record::of(&sheets[0]).unwrap().sheet().unwrap(), &sheets[0]);
    }

    #[test]
    fn any_bytes_yield_a_sheet_or_a_named_fault(bytes in vec(any::<u8>(), 0..300)) {
        prop_assert!(all_sound(&bytes));
    }

    #[test]
    fn a_damaged_file_record_or_link_yields_a_sheet_or_a_named_fault(
        at in any::<usize>(), with in vec(any::<u8>(), 0..4), cut in any::<bool>()
    ) {
        let demo = demo::sheet();
        for whole in [
            file::export(core::slice::from_ref(&demo)).unwrap(),
            record::Record::of(&demo).unwrap().body,
            link::encode(&demo).unwrap(),
        ] {
            prop_assert!(all_sound(&damaged(&whole, at, &with, cut)));
        }
    }

    #[test]
    fn any_json_of_the_right_outside_yields_sheets_or_a_named_fault(
        key in prop::sample::select(vec!["schema", "id", "rev", "updated", "fasteners", "parts", "notes", "demo", "reading"]),
        value in prop::sample::select(vec!["null", "-1", "0", "1.5", "1e308", "18446744073709551616", "\"\"", "[]", "[[]]", "{}", "[{}]", "[{\"id\":-1}]", "true"]),
        schema in 0..3,
    ) {
        let sheet = format!("{{\"schema\":{schema},\"id\":\"a\",\"{key}\":{value}}}");
        prop_assert!(all_sound(sheet.as_bytes()));
        let file = format!("{{\"format\":\"fenderside-sheets\",\"schema\":1,\"sheets\":[{sheet}]}}");
        prop_assert!(all_sound(file.as_bytes()));
    }

    #[test]
    fn undo_inverts_every_action_and_so_does_redo(sheet in sheet(), actions in vec(action(), 1..12)) {
        let mut now = sheet.clone();
        let mut undo = Vec::new();
        for action in actions {
            if let Some((next, inverse)) = apply(&now, action) {
                let (back, redo) = apply(&next, inverse.clone()).unwrap();
                prop_assert_eq!(&back, &now);
                prop_assert_eq!(&apply(&back, redo).unwrap().0, &next);
                prop_assert!(limits::check(&next).is_ok());
                undo.push(inverse);
                now = next;
            }
        }
        for inverse in undo.into_iter().rev() {
            now = apply(&now, inverse).unwrap().0;
        }
        prop_assert_eq!(now, sheet);
    }

    #[test]
    fn merging_changes_nothing_that_is_here_and_loses_nothing_that_comes(here in vec(sheet(), 0..3), coming in vec(sheet(), 0..3)) {
        let added = |here: &[Sheet], coming| {
            let names = here.iter().map(|sheet| sheet.id.clone()).collect();
            let coming = merge::preview_among(here, &names, coming).into_iter();
            coming.filter(|incoming| incoming.fate != Fate::Kept).map(|incoming| incoming.sheet).collect()
        };
        let here: Vec<Sheet> = added(&[], here);
        let merged = [added(&here, coming.clone()), here].concat();
        for sheet in coming {
            prop_assert!(merged.iter().any(|there| there.says_the_same(&sheet)));
        }
        let mut names: Vec<&str> = merged.iter().map(|sheet| sheet.id.as_str()).collect();
        names.sort_unstable();
        names.dedup();
        prop_assert_eq!(names.len(), merged.len());
    }

    #[test]
    fn reading_only_what_changed_finds_the_same(
        sheet in sheet(), edits in vec(edit(), 0..3), actions in vec(action(), 0..3), inch in any::<bool>()
    ) {
        let found = assess(&sheet, Tools::Metric, None);
        let mut after = sheet.clone();
        let changed: Vec<Option<u32>> = edits.into_iter().map(|edit| edited(&mut after, edit)).collect();
        let again = reassess(&after, Tools::Metric, None, Some((&sheet, Tools::Metric, &found)));
        prop_assert_eq!(&again, &assess(&after, Tools::Metric, None));
        for (before, now) in found.fasteners.iter().zip(&again.fasteners) {
            prop_assert!(Rc::ptr_eq(before, now) || changed.contains(&Some(before.id)));
        }
        for action in actions {
            after = apply(&after, action).map_or(after, |(next, _)| next);
        }
        let tools = if inch { Tools::Inch } else { Tools::Metric };
        let last = reassess(&after, tools, None, Some((&sheet, Tools::Metric, &found)));
        prop_assert_eq!(last, assess(&after, tools, None));
    }

    #[test]
    fn a_reading_is_judged_as_the_bolt_screen_judges_it(
        row in fastener(1), spec in good("", &["60 N·m + 90°", "35-45 N·m", "18 ft-lb", "90 in-lb + 20 N·m"]),
        adapter in good("adapter", &["50 mm", "9 in"]), wrench in good("wrench", &["400 mm", "200 mm"]),
        angle in good("adapter-angle", &["90°", "180°"]), scale in good("scale", &["100 N·m"]), typed in reading()
    ) {
        let mut row = Fastener { readings: vec![typed.clone()], ..row };
        row.spec = spec.map_or(row.spec, |(_, spec)| spec);
        row.bolt.extend([adapter, wrench, angle, scale].into_iter().flatten());
        let found = assess(&Sheet { fasteners: vec![row.clone()], ..Sheet::new("a") }, Tools::Metric, None);
        let mut text = row.bolt_text();
        text.set("reading", typed.as_str());
        let resolved = bolt::resolve(&text);
        let whole = bolt::assess(&resolved);
        let mut findings = whole.sections.iter().flat_map(|section| &section.findings);
        let deviation = findings.find(|finding| finding.id == Id::Named("reading-deviation"));
        let fault = resolved.errors.iter().chain(&whole.errors).find(|fault| fault.key == "reading");
        let reading = &found.fasteners[0].readings[0];
        prop_assert_eq!((reading.deviation.as_ref(), reading.fault.as_ref()), (deviation, fault));
        let outside = |finding: &Finding| finding.cautions.iter().any(|caution| caution.slug == READING_OUTSIDE.slug);
        prop_assert_eq!(reading.outside, deviation.is_some_and(outside));
    }

    #[test]
    fn any_sheet_is_assessed_and_tabled(sheet in sheet()) {
        let found = assess(&sheet, Tools::Both, None);
        prop_assert_eq!(found.fasteners.len(), sheet.fasteners.len());
        prop_assert!(!found.complete() || found.open.is_empty());
        prop_assert!(found.next_due_distance.is_none_or(|(_, at)| at.value.is_finite()));
        let _ = (csv::fasteners(&sheet), csv::parts(&sheet));
    }
}
