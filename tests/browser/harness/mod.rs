//! What every journey stands on: a server that can really be killed, a phone
//! with a browser on it, and the list of what that browser asked of the network.
//!
//! Journeys say what a person does and sees. How that is done in WebDriver is
//! here, and only here. Everything waits for a condition, with a limit.

mod address;
mod driver;
mod engine;
mod exchange;
mod faulty;
mod folder;
mod phone;
mod server;
mod setting;
mod surroundings;
mod switch;
mod touch;
mod traffic;
mod view;

pub use address::link;
pub use engine::Engine;
pub use exchange::keep_to_look_at;
pub use faulty::{Fault, FaultyServer, SIGN_IN};
pub use folder::Copy;
pub use phone::{Phone, Profile};
pub use server::Server;
pub use setting::axe;
pub use switch::Switch;
pub use traffic::Traffic;

/// What a journey returns: an error says which step failed, and why.
pub type Outcome = anyhow::Result<()>;
