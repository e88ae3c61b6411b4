//! Journeys in a real browser, against the page as it is deployed. One file per
//! journey; each reads like what a person does.
//!
//! `cargo xtask test` builds the page, finds the browser and runs them.

#[path = "journeys/cold_start.rs"]
mod cold_start;
#[path = "journeys/retired.rs"]
mod retired;
#[path = "journeys/subpath.rs"]
mod subpath;
#[path = "journeys/update.rs"]
mod update;
