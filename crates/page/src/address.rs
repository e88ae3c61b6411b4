//! The address as the browser shows it.

use crate::route::Route;
use gloo::utils::window;

/// The fragment the browser shows now.
pub(crate) fn fragment() -> String {
    window().location().hash().unwrap_or_default()
}

/// The whole address of a route, to send.
pub(crate) fn whole(route: &Route) -> String {
    let shown = window().location().href().unwrap_or_default();
    let page = shown.split('#').next().unwrap_or_default();
    [page, &route.print()].concat()
}
