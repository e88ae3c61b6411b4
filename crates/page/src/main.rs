//! The page: shell, route, fields, results, and one folder or file per screen.
//!
//! Views hold no arithmetic and no conversion: they keep raw text, hand it to `shopmath`, and
//! render what comes back. What each file is for is in `DEVELOPERS.md`.

mod address;
mod app;
mod awake;
mod forms;
mod keep;
mod link;
mod offline;
mod pace;
mod route;
mod screens;
mod scroll;
mod settings;
mod storage;
mod views;

fn main() {
    forms::keep();
    pace::watch();
    scroll::watch();
    views::jumps::watch();
    yew::Renderer::<app::App>::new().render();
}
