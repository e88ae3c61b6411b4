//! Files out of the page and into it, links, the clipboard, and paper.

use gloo::timers::callback::Timeout;
use gloo::utils::{document, window};
use js_sys::{Array, Function, JsString, Promise, Reflect, Uint8Array};
use shopmath::sheet::{Sheet, SheetFault, file, link};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, Event, File, HtmlAnchorElement, ReadableStream, ReadableStreamDefaultReader, Url,
    WritableStream,
};

/// The type of a file of sheets.
const JSON: &str = "application/json";
/// The type of a table.
const CSV: &str = "text/csv;charset=utf-8";

/// Hands a text over as a file, or says that there is none.
pub(super) fn download(name: &str, kind: &str, text: &str) -> Result<(), String> {
    try_download(name, kind, text).map_err(|_| "The browser did not take the file.".into())
}

fn try_download(name: &str, kind: &str, text: &str) -> Result<(), JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&JsString::from(text)), &options)?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // Safari takes hold of the file only after the click.
    let revoke = move || {
        // Refused by no browser.
        let _ = Url::revoke_object_url(&url);
    };
    Timeout::new(60_000, revoke).forget();
    Ok(())
}

/// Hands sheets over as one file, or says why there is none.
pub(super) fn export(name: &str, sheets: &[Sheet]) -> Result<(), String> {
    let text = file::export(sheets).map_err(|fault| fault.to_string())?;
    download(name, JSON, &text)
}

/// Hands a table over as a file, or says that there is none.
pub(super) fn table(name: &str, text: &str) -> Result<(), String> {
    download(name, CSV, text)
}

/// What can be said of a file then: a page is not told whether it was kept.
pub(super) fn handed(name: &str) -> String {
    [name, " was handed to the browser. Look that the file is there."].concat()
}

/// The sheets of a chosen file, or the sentence about what is wrong with it.
pub(super) async fn import(chosen: File) -> Result<Vec<Sheet>, String> {
    let refused = |_| "The browser could not read this file. Choose it again.".to_owned();
    if chosen.size() > large() {
        return Err(SheetFault::TooLarge {
            what: "file",
            limit: file::BYTES,
        }
        .to_string());
    }
    let bytes = JsFuture::from(chosen.array_buffer()).await.map_err(refused)?;
    file::import(&Uint8Array::new(&bytes).to_vec()).map_err(|fault| fault.to_string())
}

/// The most a file may hold, as the browser counts.
#[allow(clippy::cast_precision_loss)] // far below 2⁵³
fn large() -> f64 {
    file::BYTES as f64
}

/// Bytes handed to a stream at once. Inflated they swell to a thousand times as many at most.
const PORTION: usize = 1024;

/// The text of a sheet's link, or the sentence why there is none.
pub(super) async fn pack(sheet: &Sheet) -> Result<String, String> {
    let told = |fault: SheetFault| fault.to_string();
    let body = link::body(sheet).map_err(told)?;
    match through("CompressionStream", body.as_bytes()).await {
        Some(Ok(packed)) => link::text(&packed).map_err(told),
        _ => Err("This browser cannot put a sheet into a link.".into()),
    }
}

/// The sheet of a link's text, or the sentence about what is wrong with it.
pub(super) async fn unpack(text: &str) -> Result<Sheet, String> {
    let told = |fault: SheetFault| fault.to_string();
    let packed = link::packed(text).map_err(told)?;
    match through("DecompressionStream", &packed).await {
        Some(Ok(body)) => link::sheet(&body).map_err(told),
        Some(Err(_)) => Err(told(SheetFault::DamagedLink)),
        None => Err("This browser cannot read a sheet out of a link; one made since the spring of 2023 can. Ask for the sheet as a file.".into()),
    }
}

/// What comes out of a stream of the browser for what goes in, where the browser has it: its deflate
/// (RFC 1951) one way or the other. More than a link may unpack to is not read on.
async fn through(stream: &str, bytes: &[u8]) -> Option<Result<Vec<u8>, JsValue>> {
    let maker: Function = Reflect::get(&window(), &stream.into()).ok()?.dyn_into().ok()?;
    let stream = Reflect::construct(&maker, &Array::of1(&"deflate-raw".into())).ok()?;
    let end = |name: &str| Reflect::get(&stream, &name.into());
    let writer = end("writable")
        .ok()?
        .unchecked_into::<WritableStream>()
        .get_writer()
        .ok()?;
    let readable: ReadableStream = end("readable").ok()?.unchecked_into();
    let reader: ReadableStreamDefaultReader = readable.get_reader().unchecked_into();
    // They wait in line, and one is taken when what came of the last has been read.
    let portions = bytes
        .chunks(PORTION)
        .map(|portion| writer.write_with_chunk(&Uint8Array::from(portion)));
    let written: Array = portions.collect();
    written.push(&writer.close());
    // What goes wrong with them is told to the reader; that it was heard is told to the browser.
    let _ = Promise::all_settled(&written);
    let mut out = Vec::new();
    while out.len() <= link::UNPACKED {
        let read = match JsFuture::from(reader.read()).await {
            Ok(read) => read,
            Err(fault) => return Some(Err(fault)),
        };
        let portion = Reflect::get(&read, &"value".into()).ok()?;
        if portion.is_undefined() {
            return Some(Ok(out));
        }
        out.extend(portion.unchecked_into::<Uint8Array>().to_vec());
    }
    let _ = reader.cancel();
    Some(Ok(out))
}

/// Prints the page; the style sheet leaves only the paper, which gets a moment to catch up first.
pub(super) fn print() {
    if let Ok(soon) = Event::new("beforeprint") {
        let _ = window().dispatch_event(&soon);
    }
    let print = || {
        // Refused only in frames that may not ask.
        let _ = window().print();
    };
    Timeout::new(0, print).forget();
}

/// Puts a text on the clipboard; whether the browser did.
pub(super) async fn copy(text: String) -> bool {
    let clipboard = window().navigator().clipboard();
    // Absent where the page is not on https.
    if clipboard.is_undefined() {
        return false;
    }
    JsFuture::from(clipboard.write_text(&text)).await.is_ok()
}
