//! Why something could not be kept or read, and the sentence about it.

use crate::storage::StoreError;
use shopmath::sheet::SheetFault;

/// Why something could not be kept or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum KeepError {
    /// The browser keeps nothing for this page.
    Blocked,
    /// There is no room.
    Full,
    /// The connection to the database ended; with a new one it may go through.
    Lost,
    /// A newer version of the page keeps its sheets in a form that this one does not know.
    Newer,
    /// Anything else the browser said, by its name.
    Refused(String),
    /// The sheet itself cannot be kept.
    Fault(SheetFault),
}

impl From<StoreError> for KeepError {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Blocked => Self::Blocked,
            StoreError::Full => Self::Full,
        }
    }
}

impl KeepError {
    /// What happened and what to do, for the person.
    pub(crate) fn words(&self) -> String {
        let words = match self {
            Self::Blocked => {
                "This browser keeps nothing for this page, so no sheet can be saved. Allow site data for it, or leave the private window; until then export or share what must last."
            }
            Self::Full => {
                "Not saved: this device has no room left. What was kept before is still there. Free some space, or export the sheet and remove old ones, then save again."
            }
            Self::Lost => {
                "The browser ended the connection to its storage before it answered. Nothing that was saved is lost; try again."
            }
            Self::Newer => {
                "A newer version of this page has changed its storage. What is there stays untouched, and the list of sheets can save it as a file. Load the page again to go on with the newer version; until then export what you type here."
            }
            Self::Refused(name) => return refused(name),
            Self::Fault(fault) => return fault.to_string(),
        };
        words.to_owned()
    }
}

fn refused(name: &str) -> String {
    let words = match name {
        "blocked" => "Another tab of this page holds its storage. Close the other tabs, then try again.",
        "ConstraintError" => "There is a sheet under this name already, and it stays as it is. Nothing was changed.",
        _ => {
            let start = "The browser's storage failed (";
            let end = "). Nothing that was saved is touched. Try again; if it stays, export what is open.";
            return [start, name, end].concat();
        }
    };
    words.to_owned()
}
