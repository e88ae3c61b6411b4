//! One bolt, all answers: a bolt as typed goes through every calculator of this folder.
//!
//! [`text`] holds what was typed, [`field`] says what each field is, [`mod@resolve`] makes quantities
//! of it, [`fn@assess`] puts them through the calculators, [`verdict`] says the one sentence. A view
//! renders the [`Assessment`] and knows no arithmetic.

mod assess;
mod common;
mod drawing;
pub mod field;
mod plot;
mod read;
pub mod resolve;
mod section;
pub mod text;
mod unfinished;
pub mod verdict;

pub use assess::{Assessment, assess};
pub use drawing::JointDrawing;
pub use field::{FIELDS, SectionId};
pub use plot::{Plot, PlotPoint};
pub(crate) use read::{lubrication, refused, torque_in};
pub use resolve::{Entry, Joint, Resolved, resolve};
pub use section::Section;
pub(crate) use section::wrench::Target;
pub use text::BoltText;
pub use verdict::{Slug, Verdict};
