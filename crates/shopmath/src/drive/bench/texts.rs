//! The raw texts of the screen: what the link and the fields hold, nothing read yet.

use super::fields::{ROWS, Row, row_of};

/// The key that makes a link one of an own drive.
const PULLEYS: &str = "pulleys";
/// A list without a pulley, in a link.
const NO_PULLEY: &str = ";";

/// One text per field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DriveText {
    texts: Vec<String>,
}

impl Default for DriveText {
    /// The fields' defaults.
    fn default() -> Self {
        Self {
            texts: ROWS.iter().map(|row| row.field.default.to_owned()).collect(),
        }
    }
}

impl DriveText {
    /// The demo drive, with its belt, tensioner and loads; its figures are made up.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// let bench = resolve(&DriveText::demo());
    /// assert!(bench.faults.is_empty() && bench.arm().is_some());
    /// assert_eq!(bench.belt.unwrap().to_string(), "6PK1460");
    /// ```
    #[must_use]
    pub fn demo() -> Self {
        let demo = |row: &Row| row.demo.unwrap_or(row.field.default).to_owned();
        Self {
            texts: ROWS.iter().map(demo).collect(),
        }
    }

    /// Two pulleys to begin one's own drive with: a crank and what it drives, nothing else filled in.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// let begin = DriveText::begin();
    /// assert_eq!((begin.get("belt"), begin.get("tensioner")), (Some(""), Some("")));
    /// assert_eq!(resolve(&begin).route.unwrap().legs.len(), 2);
    /// ```
    #[must_use]
    pub fn begin() -> Self {
        let mut texts = Self::default();
        texts.set("pulleys", "crank:rib:0,0:150;pulley 2:rib:200,200:60");
        texts
    }

    /// The texts of a link: unknown keys are passed over, missing ones take the default. A link
    /// without `pulleys` is about the demo drive, so there missing keys take the demo's texts.
    ///
    /// ```
    /// use shopmath::drive::bench::DriveText;
    /// let faster = DriveText::from_link([("rpm", "3000 rpm")]);
    /// assert_eq!(faster.get("belt"), Some("6PK1460"));
    /// let other = DriveText::from_link([("pulleys", "a:rib:0,0:150;b:rib:300,0:60")]);
    /// assert_eq!((other.get("belt"), other.get("mu")), (Some(""), Some("0.3")));
    /// ```
    #[must_use]
    pub fn from_link<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)> + Clone) -> Self {
        let own_drive = pairs.clone().into_iter().any(|(key, _)| key == PULLEYS);
        let mut texts = if own_drive { Self::default() } else { Self::demo() };
        for (key, text) in pairs {
            let none = key == PULLEYS && text == NO_PULLEY;
            texts.set(key, if none { "" } else { text });
        }
        texts
    }

    /// The pairs of the shortest link that reads back to these texts; an empty text is left out
    /// where a missing key means empty, and takes the default where it means that. A list without a
    /// pulley is `;`, since links leave empty texts out and no `pulleys` means the demo.
    ///
    /// ```
    /// use shopmath::drive::bench::DriveText;
    /// let mut texts = DriveText::begin();
    /// texts.set("pulleys", "");
    /// assert_eq!(texts.link(), [("pulleys", ";".to_owned())]);
    /// ```
    #[must_use]
    pub fn link(&self) -> Vec<(&'static str, String)> {
        if *self == Self::demo() {
            return Vec::new();
        }
        let differs = |(row, text): &(&'static Row, &String)| {
            row.field.key == PULLEYS || (text.as_str() != row.field.default && !text.is_empty())
        };
        let pairs = ROWS.iter().zip(&self.texts).filter(differs);
        let link = |(row, text): (&'static Row, &String)| {
            let none = row.field.key == PULLEYS && text.trim().is_empty();
            (row.field.key, if none { NO_PULLEY.to_owned() } else { text.clone() })
        };
        pairs.map(link).collect()
    }

    /// The text of a key, as it was typed; `None` for a key the screen has not got.
    ///
    /// ```
    /// use shopmath::drive::bench::DriveText;
    /// let demo = DriveText::demo();
    /// assert_eq!((demo.get("frequency"), demo.get("note")), (Some("105 Hz"), None));
    /// ```
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&str> {
        let index = ROWS.iter().position(|row| row.field.key == key)?;
        self.texts.get(index).map(String::as_str)
    }

    /// Sets the text of a key, readable or not; says whether there is such a key.
    ///
    /// ```
    /// use shopmath::drive::bench::DriveText;
    /// let mut texts = DriveText::demo();
    /// assert!(texts.set("rpm", "850 rpm") && !texts.set("speed", "3000 rpm"));
    /// assert_eq!(texts.get("rpm"), Some("850 rpm"));
    /// ```
    pub fn set(&mut self, key: &str, text: &str) -> bool {
        let index = ROWS.iter().position(|row| row.field.key == key);
        let place = index.and_then(|index| self.texts.get_mut(index));
        place.map(|place| text.clone_into(place)).is_some()
    }

    /// The text of a key, trimmed; its default where it is empty.
    pub(super) fn effective(&self, key: &str) -> &str {
        let text = self.get(key).unwrap_or_default().trim();
        match row_of(key) {
            Some(row) if text.is_empty() => row.field.default,
            _ => text,
        }
    }
}
