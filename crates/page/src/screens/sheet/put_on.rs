//! Bolts that another screen hands to a sheet: the open one, or a new one where none is open.

use super::desk::Desk;
use crate::link;
use crate::route::Route;
use crate::views::button::Button;
use shopmath::sheet::Fastener;
use shopmath::tools::Tools;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// A button that puts bolts on a sheet and leads there; `from` is the screen it stands on. The bolts are
/// asked for when it is tapped.
pub(crate) fn put_on_button(
    rows: impl Fn() -> Vec<Fastener> + 'static,
    from: Route,
    desk: &Desk,
    tools: Tools,
) -> Html {
    let words = if desk.has_sheet() {
        "Put on the open sheet"
    } else {
        "Put on a new sheet"
    };
    let desk = desk.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        let (rows, from, desk) = (rows(), from.clone(), desk.clone());
        spawn_local(async move {
            let id = desk.add_bolts(rows, tools).await;
            link::go(Some(&from), &Route::sheet(&id));
        });
    });
    Button::chip(words, onclick).id("put-on-sheet").draw()
}

/// A button that puts a bolt back in the row it was opened from; none where it was opened from none. `of`
/// makes the row of what it is when the button is tapped.
pub(crate) fn put_back_button(of: impl Fn(&Fastener) -> Fastener + 'static, from: Route, desk: &Desk) -> Html {
    let Some(lent) = desk.lent() else {
        return html! {};
    };
    let label = if lent.label.is_empty() { "its row" } else { &lent.label };
    let words = ["Put back in ", label].concat();
    let desk = desk.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        if let Some(id) = desk.put_back(&of) {
            link::go(Some(&from), &Route::sheet(&id));
        }
    });
    Button::chip(words, onclick).id("put-back").draw()
}
