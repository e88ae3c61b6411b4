//! Checks.

mod drive;
mod drive_routes;
mod examples;
mod fastener;
mod units;
