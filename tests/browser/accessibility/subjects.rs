//! Every screen in every state a person meets it in, and how to get there.

use crate::belt::FULL as DRIVE;
use crate::bolt::FULL as BOLT;
use crate::sheet;
use anyhow::Result;
use fenderside_tests::harness::{Outcome, Phone, link};

/// A screen in one state.
pub(crate) struct Subject {
    pub(crate) name: &'static str,
    /// Brings a running page there.
    pub(crate) reach: fn(&Phone) -> Outcome,
    /// Whether it is looked at as printed.
    pub(crate) printed: bool,
}

/// In an order in which each can be reached: a list of sheets is empty only before the first.
pub(crate) const SUBJECTS: &[Subject] = &[
    screen("Convert, empty", |phone| phone.open("#/convert")),
    screen("Convert, filled", convert_filled),
    paper("Convert, printed", convert_filled),
    screen("Convert, a list with an error", convert_list),
    screen("Convert, error", |phone| {
        shown(phone, &link("convert", &[("q", "60 blarg")]), "#q-error")
    }),
    screen("Settings", settings),
    screen("Bolt, empty", |phone| phone.open("#/bolt")),
    screen("Bolt, filled", bolt_filled),
    paper("Bolt, printed", bolt_filled),
    screen("Bolt, error", |phone| wrong(phone, "bolt", BOLT, "#spec-error")),
    screen("Bolt, large type", bolt_large),
    screen("Belt, empty", belt_begun),
    screen("Belt, filled", belt_filled),
    paper("Belt, printed", belt_filled),
    screen("Belt, error", |phone| wrong(phone, "belt", DRIVE, "#pulleys-error")),
    screen("Sheets, none", |phone| shown(phone, "#/sheet", "#new-sheet")),
    screen("Sheets, a file that is none", sheets_error),
    screen("Sheet, empty", sheet_empty),
    screen("Sheet, error", sheet_error),
    screen("Sheet, filled", sheet_filled),
    paper("Sheet, printed", sheet_filled),
    screen("Sheet, bolt by bolt", sheet_steps),
    screen("Sheet, from a link", sheet_shared),
    screen("Sheets, filled", sheets_filled),
    paper("Sheets, printed", sheets_filled),
    screen("Sources", sources),
    paper("Sources, printed", sources),
];

const fn screen(name: &'static str, reach: fn(&Phone) -> Outcome) -> Subject {
    let printed = false;
    Subject { name, reach, printed }
}

const fn paper(name: &'static str, reach: fn(&Phone) -> Outcome) -> Subject {
    let printed = true;
    Subject { name, reach, printed }
}

/// Opens an address and waits for what makes it the state it is.
fn shown(phone: &Phone, address: &str, sign: &str) -> Outcome {
    phone.open(address)?;
    there(phone, sign)
}

fn there(phone: &Phone, sign: &str) -> Outcome {
    phone.until(sign, || Ok((phone.count(sign)? > 0).then_some(())))
}

/// Opens whatever can be opened on the screen, so that none of it goes unchecked.
fn unfold(phone: &Phone) -> Outcome {
    let open = "for (const found of document.querySelectorAll('main details')) found.open = true";
    phone.script::<()>(open, Vec::new())?;
    phone.until_true(
        "what was folded up",
        "return [...document.querySelectorAll('main details')].every((found) => found.children.length > 1)",
    )
}

/// A screen with a text nobody can read in each field.
fn wrong(phone: &Phone, screen: &str, fields: &[(&str, &str)], sign: &str) -> Outcome {
    let fields: Vec<_> = fields.iter().map(|(key, _)| (*key, "tight")).collect();
    shown(phone, &link(screen, &fields), sign)?;
    unfold(phone)
}

fn convert_filled(phone: &Phone) -> Outcome {
    shown(phone, &link("convert", &[("q", "10 Nm + 90°")]), "[data-stage='2']")?;
    unfold(phone)
}

fn convert_list(phone: &Phone) -> Outcome {
    let lines = "Drain plug: 60 N·m\n44 ft-lb\n35–45 N·m\n45 furlongs";
    shown(phone, &link("convert", &[("q", lines)]), "[data-line='4'] .fault")
}

fn settings(phone: &Phone) -> Outcome {
    phone.open("#/convert")?;
    phone.tap(".head-button")?;
    there(phone, "#settings")
}

fn bolt_filled(phone: &Phone) -> Outcome {
    shown(phone, &link("bolt", BOLT), "#verdict[data-verdict]")?;
    unfold(phone)
}

fn bolt_large(phone: &Phone) -> Outcome {
    shown(phone, &link("bolt", BOLT), "#verdict[data-verdict]")?;
    phone.tap(".button.wide")?;
    there(phone, ".large-number")
}

/// A drive begun from nothing: what Belt has before anything of one's own is typed.
fn belt_begun(phone: &Phone) -> Outcome {
    shown(phone, "#/belt", "#begin-drive")?;
    phone.tap("#begin-drive")?;
    there(phone, "#bring-back")
}

fn belt_filled(phone: &Phone) -> Outcome {
    shown(phone, &link("belt", DRIVE), ".route .grip")?;
    phone.tap("#pulley-2")?;
    there(phone, ".panel")?;
    unfold(phone)
}

fn sheets_error(phone: &Phone) -> Outcome {
    shown(phone, "#/sheet", "#new-sheet")?;
    let _file = sheet::choose(phone, b"no sheet at all")?;
    there(phone, "#sheets-trouble")
}

fn sheet_empty(phone: &Phone) -> Outcome {
    sheet::new_sheet(phone).map(|_| ())
}

/// What nobody can read, by field; the rows are those the buttons before it add.
const UNREADABLE: &[(&str, &str)] = &[
    ("sheet-odometer", "far"),
    ("sheet-date", "soon"),
    ("bolt-1-thread", "M10y"),
    ("bolt-1-class", "hard"),
    ("bolt-1-spec", "tight"),
    ("bolt-1-count", "some"),
    ("bolt-1-0-reading", "snug"),
    ("part-1-price", "dear"),
    ("interval-1-every-distance", "far"),
    ("interval-1-every-days", "often"),
];

fn sheet_error(phone: &Phone) -> Outcome {
    sheet_empty(phone)?;
    for button in ["#add-fastener", "#add-part", "#add-check", "#add-interval"] {
        phone.tap(button)?;
    }
    for (key, text) in UNREADABLE {
        phone.type_into(key, text)?;
        phone.error(key)?;
    }
    sheet::until_kept(phone)
}

fn demo(phone: &Phone) -> Outcome {
    let kept = phone.script::<bool>("return location.hash === '#/sheet/demo-larkfield'", Vec::new())?;
    if !kept {
        shown(phone, "#/sheet", "#new-sheet")?;
        if phone.count("#show-demo")? > 0 {
            phone.tap("#show-demo")?;
            sheet::until_kept(phone)?;
        }
    }
    shown(phone, "#/sheet/demo-larkfield", "[data-fastener]")
}

fn sheet_filled(phone: &Phone) -> Outcome {
    demo(phone)?;
    phone.tap("#share-sheet")?;
    there(phone, "#shared")?;
    unfold(phone)
}

fn sheet_steps(phone: &Phone) -> Outcome {
    demo(phone)?;
    phone.tap(".button.wide")?;
    there(phone, "#step-done")
}

fn sheet_shared(phone: &Phone) -> Outcome {
    sheet_filled(phone)?;
    let address = phone.field("share-link")?;
    let fragment: Result<&str> = address
        .split_once('#')
        .map(|(_, fragment)| fragment)
        .ok_or_else(|| anyhow::anyhow!("the link to share has no fragment: {address}"));
    shown(phone, &format!("#{}", fragment?), "#save-copy")
}

fn sheets_filled(phone: &Phone) -> Outcome {
    demo(phone)?;
    shown(phone, "#/sheet", "[data-sheet]")
}

fn sources(phone: &Phone) -> Outcome {
    shown(phone, "#/sources", ".source-list")
}
