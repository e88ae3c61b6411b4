//! The page for people who see, hear or move otherwise: what a checker finds on every screen, the
//! keyboard alone, what a screen reader hears, and what a person has set in their system.

mod announcements;
mod axe;
mod keyboard;
mod matrix;
mod preferences;
pub(crate) mod subjects;
