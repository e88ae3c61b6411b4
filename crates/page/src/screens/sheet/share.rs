//! A sheet as a link and as a code to scan, with no network between two phones.

use super::carry;
use super::job::Job;
use crate::address;
use crate::awake::use_awake;
use crate::route::Route;
use crate::views::button::Button;
use shopmath::sheet::code::{self, Code, MARGIN};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct Props {
    pub(super) job: Rc<Job>,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.job.sheet, &other.job.sheet)
    }
}

/// The link and the code. Everything in them is the sheet as it stands, a moment after it has changed.
#[component]
pub(super) fn LinkAndCode(props: &Props) -> Html {
    // Whoever scans the code takes a while to hold still.
    use_awake(true);
    let copied = use_state(|| None::<bool>);
    let packed = use_state(|| None);
    let sheet = &props.job.sheet;
    {
        let packed = packed.clone();
        use_effect_with(sheet.clone(), move |sheet| {
            let wanted = Rc::new(Cell::new(true));
            let (sheet, still) = (sheet.clone(), wanted.clone());
            spawn_local(async move {
                let payload = carry::pack(&sheet).await;
                if still.get() {
                    packed.set(Some((sheet, payload)));
                }
            });
            move || wanted.set(false)
        });
    }
    let Some((of, payload)) = &*packed else {
        return html! {};
    };
    let payload = match payload {
        Ok(payload) => payload,
        Err(words) => {
            return html! { <p class="fault" id="share-trouble">{ words.clone() }{ " Save it as a file and send that." }</p> };
        }
    };
    let address = address::whole(&Route::shared(payload.clone()));
    let copy = {
        // A link to the sheet as it was a moment ago is none to copy.
        let (address, copied) = ((of == sheet).then(|| address.clone()), copied.clone());
        Callback::from(move |_: MouseEvent| {
            let (address, copied) = (address.clone(), copied.clone());
            spawn_local(async move {
                copied.set(Some(match address {
                    Some(address) => carry::copy(address).await,
                    None => false,
                }));
            });
        })
    };
    let letters = address.len();
    html! {
        <div class="panel" id="shared">
            <p>{ "Whoever opens this link has the whole sheet, notes and prices too. It is not sent anywhere: the sheet is in the link." }</p>
            <label for="share-link">{ format!("Link, {letters} characters") }</label>
            <textarea id="share-link" readonly=true rows="3" value={address.clone()} />
            { Button::chip("Copy the link", copy).id("copy-link").draw() }
            <p role="status">{ match *copied { Some(true) => "Copied.", Some(false) => "Not copied: hold a finger on the link and copy it by hand.", None => "" } }</p>
            if let Some(code) = code::code(&address) {
                { drawing(&code) }
                <p class="note">{ "Scan it with another phone’s camera. That phone needs this page open once before, or a network." }</p>
            } else {
                <p class="note" id="no-code">{ format!("Too long for a code that a camera reads: at most {} characters. Send the link, or save the sheet as a file and send that.", code::BYTES) }</p>
            }
        </div>
    }
}

/// Dark on white in every theme, with the quiet margin a camera needs.
fn drawing(code: &Code) -> Html {
    let side = code.size + 2 * MARGIN;
    let bar = |(x, y, width): (usize, usize, usize)| format!("M{x} {y}h{width}v1h-{width}z");
    let bars: String = code.runs().map(bar).collect();
    html! {
        <svg class="code" viewBox={format!("0 0 {side} {side}")} role="img" aria-label="Code of the link" shape-rendering="crispEdges">
            <path transform={format!("translate({MARGIN} {MARGIN})")} d={bars} />
        </svg>
    }
}
