//! Checks.

mod drive;
mod drive_routes;
