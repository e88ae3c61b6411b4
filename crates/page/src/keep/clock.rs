//! The day, names that nobody else has, and sheets that begin with both.

use js_sys::{Date, Math, Number};
use shopmath::sheet::Sheet;

/// The day here, `YYYY-MM-DD`.
pub(crate) fn today() -> String {
    let now = Date::new_0();
    let month = now.get_month().saturating_add(1);
    format!("{:04}-{month:02}-{:02}", now.get_full_year(), now.get_date())
}

/// A name for a new sheet: the day and some letters.
pub(crate) fn new_id() -> String {
    [today(), letters()].join("-")
}

/// An empty sheet of today.
pub(crate) fn new_sheet() -> Sheet {
    Sheet {
        date: today(),
        ..Sheet::new(new_id())
    }
}

/// Letters and digits by chance, some eight of them.
pub(super) fn letters() -> String {
    let fraction = Number::from(Math::random()).to_string_with_radix(36);
    let fraction = fraction.map(String::from).unwrap_or_default();
    fraction.chars().skip(2).take(8).collect()
}
