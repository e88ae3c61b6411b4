//! Checks.

mod drive;
mod drive_routes;
mod units;
mod fastener;
