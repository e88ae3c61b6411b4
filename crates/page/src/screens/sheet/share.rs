//! A sheet as a link and as a code to scan, with no network between two phones.

use super::carry;
use super::job::Job;
use crate::address;
use crate::awake::use_awake;
use crate::route::Route;
use crate::views::button::Button;
use shopmath::sheet::code::{self, Code, MARGIN};
use shopmath::sheet::link as sheet_link;
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

/// The link and the code. Everything in them is the sheet as it stands.
#[component]
pub(super) fn LinkAndCode(props: &Props) -> Html {
    // Whoever scans the code takes a while to hold still.
    use_awake(true);
    let copied = use_state(|| None::<bool>);
    let payload = match sheet_link::encode(&props.job.sheet) {
        Ok(payload) => payload,
        Err(fault) => {
            return html! { <p class="fault" id="share-trouble">{ fault.to_string() }{ " Save it as a file and send that." }</p> };
        }
    };
    let address = address::whole(&Route::shared(payload));
    let copy = {
        let (address, copied) = (address.clone(), copied.clone());
        Callback::from(move |_: MouseEvent| {
            let (address, copied) = (address.clone(), copied.clone());
            spawn_local(async move { copied.set(Some(carry::copy(address).await)) });
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
