//! A sheet goes to another phone by a code on the screen, with no network between the two.

use super::{bring_in, everything, listed, new_sheet, open_id, until_kept};
use anyhow::{Context, Result, ensure};
use fenderside_tests::harness::{Outcome, Phone, Server};
use png::{ColorType, Decoder, Transformations};
use rqrr::PreparedImage;
use serde_json::{Value, json};
use std::io::Cursor;

#[test]
fn a_code_on_the_screen_brings_the_sheet_to_another_phone() -> Outcome {
    let server = Server::start()?;
    let [mine, other] = [Phone::fresh(server.site())?, Phone::fresh(server.site())?];
    for phone in [&mine, &other] {
        phone.open("#/sheet")?;
        phone.until_kept()?;
    }
    server.kill()?;

    new_sheet(&mine)?;
    mine.type_into("sheet-machine", "Larkfield van, 2.2 diesel")?;
    mine.type_into("sheet-notes", "Two bolts left to do")?;
    mine.tap("#add-fastener")?;
    for (key, text) in [
        ("label", "Tensioner"),
        ("thread", "M10x1.5"),
        ("class", "10.9"),
        ("spec", "45 N·m"),
    ] {
        mine.type_into(&format!("bolt-1-{key}"), text)?;
    }
    mine.type_into("bolt-1-0-reading", "45.5")?;
    // The link tells how often the sheet was saved, so it changes once more with the save.
    until_kept(&mine)?;
    mine.tap("#share-sheet")?;
    let link = mine.field("share-link")?;
    mine.until_text("#shared label", &format!("Link, {} characters", link.len()))?;
    let scanned = scan(&mine.photograph("svg.code")?)?;
    ensure!(scanned == link, "the code holds {scanned}");

    other.go(&scanned)?;
    other.until_running()?;
    other.until_text(".paper h2", "Larkfield van, 2.2 diesel")?;
    other.until_text(".paper", "Two bolts left to do")?;
    other.until_value(".paper data.deviation", 0.5 / 45.0, 1e-9)?;
    ensure!(other.count("#save-copy")? == 1);
    let nothing = json!({ "records": [], "heads": [], "quarantine": [], "texts": [] });
    ensure!(
        everything(&other)? == nothing,
        "something was kept that nobody asked for"
    );
    ensure!(listed(&other)?.is_empty());

    other.go(&scanned)?;
    other.tap("#save-copy")?;
    until_kept(&other)?;
    let copy = open_id(&other)?;
    for (id, text) in [
        ("sheet-notes", "Two bolts left to do"),
        ("bolt-1-spec", "45 N·m"),
        ("bolt-1-0-reading", "45.5"),
    ] {
        ensure!(other.field(id)? == text, "{id}");
    }
    ensure!(listed(&other)? == [copy]);
    Ok(())
}

/// What a decoder that shares nothing with the page reads from a picture.
fn scan(picture: &[u8]) -> Result<String> {
    let mut decoder = Decoder::new(Cursor::new(picture));
    decoder.set_transformations(Transformations::normalize_to_color8());
    let mut reader = decoder.read_info()?;
    let mut pixels = vec![0; reader.output_buffer_size().context("a picture that fits")?];
    let found = reader.next_frame(&mut pixels)?;
    let colours = found.color_type.samples();
    ensure!(
        matches!(found.color_type, ColorType::Rgb | ColorType::Rgba),
        "{found:?}"
    );
    let (width, height) = (usize::try_from(found.width)?, usize::try_from(found.height)?);
    let mut seen = PreparedImage::prepare_from_greyscale(width, height, |x, y| {
        pixels.get((y * width + x) * colours + 1).copied().unwrap_or_default()
    });
    let codes = seen.detect_grids();
    ensure!(codes.len() == 1, "{} codes are in the picture", codes.len());
    Ok(codes[0].decode()?.1)
}

/// A sheet that no code holds: notes without a repetition to pack away.
fn long_sheet() -> Value {
    let mut number: u64 = 1;
    let words = (0..400).map(|_| {
        number = number
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        format!("{:08x}", number >> 32)
    });
    let notes = words.collect::<Vec<_>>().join(" ");
    json!({ "schema": 1, "id": "long", "machine": "Larkfield van, the long story", "notes": notes })
}

#[test]
fn a_sheet_too_long_for_a_code_says_so_and_goes_as_link_or_file() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[long_sheet()])?;
    phone.tap("[data-sheet='long'] a")?;
    phone.tap("#share-sheet")?;
    phone.until_text("#no-code", "Too long for a code")?;
    phone.until_text("#no-code", "save the sheet as a file")?;
    ensure!(phone.count("svg.code")? == 0);
    // The file it speaks of is on the same screen.
    let (name, bytes) = phone.download("#export-sheet")?;
    let file: Value = serde_json::from_slice(&bytes)?;
    ensure!(
        name == "long-sheet.json" && file["sheets"][0]["notes"] == long_sheet()["notes"],
        "{name}"
    );
    // The link holds it all.
    let link = phone.field("share-link")?;
    let other = Phone::fresh(server.site())?;
    other.go(&link)?;
    let shown = other.text(".paper .lines")?;
    ensure!(Some(shown.as_str()) == long_sheet()["notes"].as_str());
    Ok(())
}

#[test]
fn links_that_cannot_be_read_say_why() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    phone.tap("#share-sheet")?;
    let link = phone.field("share-link")?;
    let (_, payload) = link.split_once("#/s/1.").context("a link to a sheet")?;
    let before = everything(&phone)?;
    let half = &payload[..payload.len() / 2];
    for (tail, words) in [
        (format!("1.{half}"), "cut off or changed on its way"),
        ("1.".to_owned(), "cut off or changed on its way"),
        (
            format!(
                "1.{}",
                payload.replacen(|letter: char| letter.is_ascii_lowercase(), "*", 1)
            ),
            "cut off or changed",
        ),
        (format!("2.{payload}"), "made by a newer version of the page"),
        (payload.to_owned(), "Not a shared sheet"),
        ("one".to_owned(), "Not a shared sheet"),
    ] {
        phone.open(&format!("#/s/{tail}"))?;
        phone
            .until_text("#link-error", words)
            .with_context(|| format!("{tail:.60}"))?;
        ensure!(phone.count("#save-copy, .paper")? == 0, "{tail:.60}");
    }
    ensure!(everything(&phone)? == before);
    Ok(())
}

/// Opens a link that would unpack to 90 MB, and counts what the page takes of it.
const SWELLS: &str = "return (async () => { \
     const packed = new Blob([new Uint8Array(9e7).fill(32)]).stream().pipeThrough(new CompressionStream('deflate-raw')); \
     const bytes = new Uint8Array(await new Response(packed).arrayBuffer()); \
     const letters = btoa(bytes.reduce((text, byte) => text + String.fromCharCode(byte), '')); \
     window.taken = 0; \
     const { read } = ReadableStreamDefaultReader.prototype; \
     ReadableStreamDefaultReader.prototype.read = async function () { \
       const got = await read.call(this); window.taken += got.value?.length ?? 0; return got; }; \
     location.hash = '#/s/1.' + letters.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, ''); \
     return letters.length })()";

#[test]
fn a_link_packed_to_swell_is_not_unpacked() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/sheet")?;
    let letters: usize = phone.script(SWELLS, Vec::new())?;
    ensure!(letters < shopmath::sheet::link::LETTERS, "{letters}");
    phone.until_text("#link-error", "larger than")?;
    let taken: usize = phone.script("return window.taken", Vec::new())?;
    ensure!((1_000_000..3_000_000).contains(&taken), "{taken} bytes were unpacked");
    Ok(())
}

#[test]
fn a_link_made_by_another_deflate_is_read_and_the_pages_own_is_read_elsewhere() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[long_sheet()])?;
    phone.tap("[data-sheet='long'] a")?;
    phone.tap("#share-sheet")?;
    let link = phone.field("share-link")?;
    let (_, payload) = link.split_once("#/s/").context("a link to a sheet")?;
    let sheet = shopmath::sheet::link::decode(payload)?;
    ensure!(Some(sheet.notes.as_str()) == long_sheet()["notes"].as_str());
    phone.open(&format!("#/s/{}", shopmath::sheet::link::encode(&sheet)?))?;
    phone.until_text(".paper .lines", &sheet.notes)
}

#[test]
fn the_link_follows_what_is_typed() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    phone.tap("#share-sheet")?;
    phone.type_into("sheet-notes", "One bolt left")?;
    until_kept(&phone)?;
    phone.until("the link to the sheet as it stands", || {
        let link = phone.field("share-link")?;
        let (_, payload) = link.split_once("#/s/").context("a link to a sheet")?;
        Ok((shopmath::sheet::link::decode(payload)?.notes == "One bolt left").then_some(()))
    })
}

#[test]
fn a_browser_that_cannot_deflate_says_so_and_still_gives_the_file() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    bring_in(&phone, &[long_sheet()])?;
    phone.tap("[data-sheet='long'] a")?;
    phone.script::<()>(
        "delete window.CompressionStream; delete window.DecompressionStream",
        Vec::new(),
    )?;
    phone.tap("#share-sheet")?;
    phone.until_text("#share-trouble", "cannot put a sheet into a link. Save it as a file")?;
    ensure!(phone.download("#export-sheet")?.0 == "long-sheet.json");
    phone.script::<()>("location.hash = '#/s/1.AAAA'", Vec::new())?;
    phone.until_text("#link-error", "Ask for the sheet as a file")
}

#[test]
fn a_clipboard_that_is_blocked_says_so() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    new_sheet(&phone)?;
    phone.tap("#share-sheet")?;
    let link = phone.field("share-link")?;
    phone.let_copy(false)?;
    phone.tap("#copy-link")?;
    phone.until_text("#shared [role='status']", "Not copied: hold a finger on the link")?;
    phone.let_copy(true)?;
    phone.tap("#copy-link")?;
    phone.until_text("#shared [role='status']", "Copied.")?;
    let copied: String = phone.script("return navigator.clipboard.readText()", Vec::new())?;
    ensure!(copied == link, "{copied}");
    Ok(())
}
