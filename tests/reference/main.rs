//! Checks.

mod drive;
mod drive_routes;
mod fastener;
mod units;
