//! From texts to a drive: each field read by itself, its sentence kept where it cannot be.

use super::DriveText;
use super::fields::row_of;
use super::pulley_entry::PulleyEntry;
use crate::drive::belt::Belt;
use crate::drive::fault::{RouteFault, TensionerFault, TextFault};
use crate::drive::layout::Layout;
use crate::drive::profile::Profile;
use crate::drive::pulley::Pulley;
use crate::drive::route::{self, Route};
use crate::drive::tensioner::{Arm, Tensioner};
use crate::drive::text::loads::Entry;
use crate::drive::text::{loads, pulleys, tensioner};
use crate::field::{FieldFault, Reads};
use crate::quantity::{Bounds, Quantity, Typed, Unit, print, read};

/// How many sentences one field shows at most.
const SENTENCES: usize = 3;

/// What could be read. Each part is there when its own text, and those it rests on, are sound.
#[derive(Clone, Debug, Default)]
pub struct Bench {
    /// Ribs of the drive.
    pub ribs: Option<u32>,
    /// Profile of the drive.
    pub profile: Option<Profile>,
    /// The pulleys as read, routable or not.
    pub layout: Option<Layout>,
    /// The route, when a belt can take it.
    pub route: Option<Route>,
    /// What keeps a belt from taking it.
    pub route_faults: Vec<RouteFault>,
    /// The belt named.
    pub belt: Option<Belt>,
    /// The tensioner.
    pub tensioner: Option<Tensioner>,
    /// The loads; empty for none.
    pub loads: Option<Vec<Entry>>,
    /// One entry per sentence, in the order of the fields.
    pub faults: Vec<FieldFault>,
    values: Vec<(&'static str, Quantity)>,
    ranges: Vec<&'static str>,
}

/// Reads every text.
///
/// ```
/// use shopmath::drive::bench::{DriveText, resolve};
/// let mut texts = DriveText::demo();
/// texts.set("belt", "6PX1460");
/// let bench = resolve(&texts);
/// assert!(bench.route.is_some() && bench.belt.is_none());
/// assert_eq!(bench.faults[0].key, "belt");
/// ```
#[must_use]
pub fn resolve(texts: &DriveText) -> Bench {
    let mut bench = Bench::default();
    bench.read_drive(texts);
    bench.read_belt(texts);
    bench.read_values(texts);
    bench.read_tensioner(texts);
    bench.read_loads(texts);
    bench
}

impl Bench {
    /// Whether a range was typed, of which the low end is the value.
    pub(super) fn is_range(&self, key: &str) -> bool {
        self.ranges.contains(&key)
    }

    /// The value of a field, when one was typed or its default stands.
    pub(super) fn value(&self, key: &str) -> Option<Quantity> {
        self.values
            .iter()
            .find(|(known, _)| *known == key)
            .map(|(_, value)| *value)
    }

    /// The bench where a text in an entry of a pulley cannot be used: the texts still hold the last one
    /// that could, but no number may rest on it. The drawing keeps to it where it is about a place or a
    /// diameter. Pulleys are numbered from 0; one that is not there changes nothing.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, assess, entry::PulleyEntry, resolve};
    /// let without = assess(resolve(&DriveText::demo()).without(2, PulleyEntry::Diameter));
    /// assert!(without.nearest.is_none() && without.drawing.discs.len() == 6);
    /// assert!(without.faults[0].sentence.contains("alternator"));
    /// let armless = resolve(&DriveText::demo()).without(1, PulleyEntry::LowStop);
    /// assert!(armless.route.is_some() && armless.arm().is_none());
    /// ```
    #[must_use]
    pub fn without(mut self, pulley: usize, entry: PulleyEntry) -> Self {
        let fault = RouteFault::Unread(pulley);
        let Some(layout) = self.layout.as_ref().filter(|layout| pulley < layout.pulleys.len()) else {
            return self;
        };
        if entry.is_of_arm() {
            self.tensioner = None;
            self.faults.retain(|fault| fault.key != "tensioner");
            self.fault("tensioner", TensionerFault::Unread);
            return self;
        }
        let sentence = fault.sentence(layout);
        self.route = None;
        self.route_faults = vec![fault];
        // What else is wrong with the route was found with the old one.
        self.faults.retain(|fault| fault.key != "pulleys");
        self.fault("pulleys", sentence);
        self
    }

    /// Whether a pulley stands in the list as it was before something else was typed about it.
    pub(super) fn is_stale(&self) -> bool {
        matches!(self.route_faults.as_slice(), [RouteFault::Unread(_)])
    }

    /// The tensioner's arm on this drive; `None` where no tensioner is typed, or one that does not fit.
    ///
    /// ```
    /// use shopmath::drive::bench::{DriveText, resolve};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// // From the pivot at -128,44 to the pulley at -104,122.
    /// let bench = resolve(&DriveText::demo());
    /// assert!((bench.arm().unwrap().length().get::<Millimetre>() - 24_f64.hypot(78.0)).abs() < 1e-9);
    /// assert!(resolve(&DriveText::begin()).arm().is_none());
    /// ```
    #[must_use]
    pub fn arm(&self) -> Option<Arm<'_>> {
        Arm::fit(self.layout.as_ref()?, self.tensioner?).ok()
    }

    pub(super) fn fault(&mut self, key: &'static str, sentence: impl ToString) {
        self.faults.push(FieldFault {
            key,
            sentence: sentence.to_string(),
            remedies: Vec::new(),
        });
    }

    fn read_drive(&mut self, texts: &DriveText) {
        let profile = texts.effective("profile");
        self.profile = Profile::named(profile);
        if self.profile.is_none() {
            let choices = Profile::ALL.map(|profile| profile.name().to_owned()).to_vec();
            let read = profile.to_owned();
            self.fault("profile", TextFault::NoChoice { read, choices });
        }
        let back = self.read_value("back", texts);
        let list = match pulleys::read(texts.get("pulleys").unwrap_or_default()) {
            Ok(list) => list,
            Err(faults) => return self.text_faults("pulleys", &faults),
        };
        if let (Some(profile), Some(Quantity::Length(back))) = (self.profile, back) {
            self.lay_out(Layout {
                profile,
                back,
                pulleys: list,
            });
        }
    }

    fn lay_out(&mut self, layout: Layout) {
        match route::solve(&layout) {
            Ok(route) => self.route = Some(route),
            Err(faults) => {
                for fault in faults.iter().take(SENTENCES) {
                    self.fault("pulleys", fault.sentence(&layout));
                }
                self.route_faults = faults;
            }
        }
        self.layout = Some(layout);
    }

    fn read_belt(&mut self, texts: &DriveText) {
        let text = texts.effective("belt");
        if text.is_empty() {
            return;
        }
        match (Belt::read(text), self.profile) {
            (Ok(belt), Some(drive)) if belt.profile != drive => {
                let (belt, drive) = (belt.profile.name(), drive.name());
                self.fault("belt", TextFault::OtherProfile { belt, drive });
            }
            (Ok(belt), _) => self.belt = Some(belt),
            (Err(fault), _) => self.fault("belt", fault),
        }
    }

    fn read_values(&mut self, texts: &DriveText) {
        for field in &super::FIELDS {
            if field.key != "back" && matches!(field.reads, Reads::Value(_) | Reads::Range(_)) {
                self.read_value(field.key, texts);
            }
        }
        let ribs = self.value("ribs").map(Quantity::si);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 1–100 by the field's limits
        let whole = ribs.filter(|ribs| ribs.fract() == 0.0).map(|ribs| ribs as u32);
        if ribs.is_some() && whole.is_none() {
            self.fault("ribs", TextFault::NotWhole(texts.effective("ribs").to_owned()));
        }
        self.ribs = whole;
    }

    fn read_value(&mut self, key: &'static str, texts: &DriveText) -> Option<Quantity> {
        let row = row_of(key)?;
        let text = texts.effective(key);
        if text.is_empty() {
            return None;
        }
        let (unit, read) = match row.field.reads {
            Reads::Value(unit) => (unit, read::value(text, read::Expect::field(unit)).map(Bounds::single)),
            Reads::Range(unit) => (unit, read::range(text, read::Expect::field(unit))),
            _ => return None,
        };
        let bounds = match read {
            Ok(bounds) => bounds,
            Err(fault) => {
                self.faults.push(FieldFault::misread(key, text, &fault));
                return None;
            }
        };
        for typed in [bounds.low, bounds.high] {
            let in_unit = typed.quantity().value_in(unit).unwrap_or(f64::NAN);
            let slack = 1e-12 * in_unit.abs();
            if !(row.limits.0 - slack..=row.limits.1 + slack).contains(&in_unit) {
                self.fault(key, out_of_range(typed, unit, row.limits));
                return None;
            }
        }
        let value = bounds.low.quantity();
        self.values.push((key, value));
        if bounds.high.quantity() != value {
            self.ranges.push(key);
        }
        Some(value)
    }

    fn read_tensioner(&mut self, texts: &DriveText) {
        let (text, Some(layout)) = (texts.effective("tensioner"), self.layout.clone()) else {
            return;
        };
        if text.is_empty() {
            return;
        }
        match tensioner::read(text, &layout.pulleys) {
            Ok(read) => match Arm::fit(&layout, read) {
                Ok(_) => self.tensioner = Some(read),
                Err(fault) => self.fault("tensioner", fault),
            },
            Err(fault) => self.fault("tensioner", fault),
        }
    }

    fn read_loads(&mut self, texts: &DriveText) {
        let Some(list) = self.layout.as_ref().map(|layout| layout.pulleys.clone()) else {
            return;
        };
        match loads::read(texts.effective("loads"), &list) {
            Ok(entries) => {
                self.need_speed(&entries, &list);
                self.loads = Some(entries);
            }
            Err(faults) => self.text_faults("loads", &faults),
        }
    }

    /// Says that a power needs a speed, where the speed is missing rather than misread.
    fn need_speed(&mut self, entries: &[Entry], list: &[Pulley]) {
        let misread = self.faults.iter().any(|fault| fault.key == "rpm");
        let powered = entries.iter().find(|entry| entry.load.needs_speed());
        if let (None, false, Some(entry)) = (self.value("rpm"), misread, powered) {
            let name = list
                .get(entry.pulley)
                .map_or_else(String::new, |pulley| pulley.name.clone());
            self.fault("rpm", TextFault::NoSpeed(name));
        }
    }

    fn text_faults(&mut self, key: &'static str, faults: &[TextFault]) {
        for fault in faults.iter().take(SENTENCES) {
            self.fault(key, fault);
        }
    }
}

fn out_of_range(typed: Typed, unit: Unit, (least, most): (f64, f64)) -> TextFault {
    let shown = |typed: Typed| print::bounds(Bounds::single(typed));
    let limit = |value: f64| shown(Typed { value, unit, step: 0.0 });
    TextFault::OutOfRange {
        read: shown(typed),
        least: limit(least),
        most: limit(most),
    }
}
