//! Journeys in a real browser, against the page as it is deployed. One file per
//! subject; each journey reads like what a person does.
//!
//! `cargo xtask test` builds the page, finds the browser and runs them.

mod accessibility;
mod belt;
mod bolt;
mod cannot_run;
mod cold_start;
mod convert;
mod faults;
mod hostile_links;
mod hostile_texts;
mod pace;
mod policy;
mod ready_is_true;
mod retired;
mod scroll;
mod sheet;
mod stray_requests;
mod subpath;
mod update;
