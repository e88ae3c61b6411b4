//! A bolt as typed made into quantities. Each field stands alone: a bad text yields one sentence
//! and takes away only what needs it.

use super::field::FIELDS;
use super::read::{self, Read, refused};
use super::text::BoltText;
use super::unfinished;
use crate::fastener::class::{self, Class};
use crate::fastener::friction::{Friction, FrictionRange};
use crate::fastener::head::{self, Head, Shape};
use crate::fastener::material::{self, Material};
use crate::fastener::refusal::Refusal;
use crate::fastener::spec::Spec;
use crate::fastener::thread_text::{self, Designation};
use crate::fastener::wrench;
use crate::field::FieldFault;
use crate::quantity::Unit;
use uom::si::f64::{Angle, Length, Ratio, TemperatureInterval, Torque};

/// What is known about a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Entry<T> {
    /// Nothing typed, and no default.
    Empty,
    /// Typed, and not to be used; its sentence is among the errors.
    Bad,
    /// A value, typed or by default.
    Given(T),
}

/// What the bolt turns into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joint {
    /// A nut.
    Nut,
    /// A tapped hole.
    Tapped,
}

/// Every field as a quantity.
#[derive(Clone, Debug, PartialEq)]
pub struct Resolved {
    /// The thread, with the bolt's length where it was part of the designation.
    pub thread: Entry<Designation>,
    /// The class at this thread's diameter.
    pub class: Entry<Class>,
    /// Whether a class was typed, even where its strength cannot be told yet.
    pub class_typed: bool,
    /// The head on this thread.
    pub head: Entry<Head>,
    /// The spec.
    pub spec: Entry<Spec>,
    /// The unit the spec's torque was typed in, for every torque shown.
    pub torque_unit: Unit,
    /// For a spec that reads and has a number without a unit: the whole text with N·m, as which it was
    /// read, and with lbf·ft, as which it can be meant.
    pub unitless: Option<[String; 2]>,
    /// The unit a bare reading is in: that of the spec's last torque, which the wrench is set to;
    /// N·m while there is none.
    pub reading_unit: Unit,
    /// How wrench and adapter were read, where one is not in millimetres and the other names no unit.
    pub lengths_apart: Option<String>,
    /// Whether a figure in brackets contradicts the one it stands beside.
    pub figures_disagree: bool,
    /// Whether the spec says how the threads are lubricated while no friction is typed.
    pub lubrication_in_words: bool,
    /// Friction in thread and under head.
    pub friction: Entry<Friction>,
    /// Tolerance of the tool; without one typed, by ISO 6789-1 from the full scale.
    pub tool: Entry<Ratio>,
    /// Thickness clamped.
    pub grip: Entry<Length>,
    /// Plain shank within the grip.
    pub shank: Entry<Length>,
    /// Material clamped.
    pub clamped: Entry<Material>,
    /// Outer diameter of the clamped parts.
    pub outer: Entry<Length>,
    /// Nut or tapped hole.
    pub joint: Entry<Joint>,
    /// Material of the tapped hole.
    pub into: Entry<Material>,
    /// Length of full threads engaged.
    pub engaged: Entry<Length>,
    /// Diameter of the boss around the hole.
    pub boss: Entry<Length>,
    /// Wrench, drive to hand.
    pub wrench: Entry<Length>,
    /// Adapter, drive to bolt.
    pub adapter: Entry<Length>,
    /// Adapter from straight out.
    pub adapter_angle: Entry<Angle>,
    /// Full scale of the wrench.
    pub scale: Entry<Torque>,
    /// Reading as tightened.
    pub reading: Entry<Torque>,
    /// Lever from the bolt to the hand.
    pub lever: Entry<Length>,
    /// Heat above room temperature.
    pub heat: Entry<TemperatureInterval>,
    /// Length of a new bolt.
    pub length_new: Entry<Length>,
    /// Length of this bolt.
    pub length_now: Entry<Length>,
    /// Keys that stand on their default.
    pub assumed: Vec<&'static str>,
    /// One sentence for each field that cannot be used.
    pub errors: Vec<FieldFault>,
    /// The keys among them whose text can still come to read by typing on.
    pub unfinished: Vec<&'static str>,
}

impl<T: Copy> Entry<T> {
    /// The value, where there is one.
    ///
    /// ```
    /// use shopmath::{fastener::bolt::{BoltText, resolve}, quantity::exact::length::Millimetre};
    /// let mut text = BoltText::default();
    /// text.set("grip", "4 cm");
    /// let grip = resolve(&text).grip.given().unwrap();
    /// assert!((grip.get::<Millimetre>() - 40.0).abs() < 1e-9);
    /// assert_eq!(resolve(&BoltText::default()).grip.given(), None);
    /// ```
    #[must_use]
    pub fn given(self) -> Option<T> {
        match self {
            Self::Given(value) => Some(value),
            Self::Empty | Self::Bad => None,
        }
    }

    /// The value, or the one that holds while nothing is typed; nothing for a bad text.
    ///
    /// ```
    /// use shopmath::{fastener::bolt::Entry, quantity::exact::length::Millimetre};
    /// let [typed, wide] = [25.0, 44.0].map(uom::si::f64::Length::new::<Millimetre>);
    /// assert_eq!(Entry::Given(typed).or(wide), Some(typed));
    /// assert_eq!((Entry::Empty.or(wide), Entry::Bad.or(wide)), (Some(wide), None));
    /// ```
    #[must_use]
    pub fn or(self, absent: T) -> Option<T> {
        match self {
            Self::Given(value) => Some(value),
            Self::Empty => Some(absent),
            Self::Bad => None,
        }
    }

    /// An optional value: `Some(None)` while nothing is typed, `None` for a bad text.
    ///
    /// ```
    /// use shopmath::fastener::bolt::{BoltText, resolve};
    /// let boss = |typed| {
    ///     let mut text = BoltText::default();
    ///     text.set("boss", typed);
    ///     resolve(&text).boss.optional()
    /// };
    /// assert!(matches!((boss("18 mm"), boss(""), boss("wide")), (Some(Some(_)), Some(None), None)));
    /// ```
    #[must_use]
    #[allow(clippy::option_option)] // absent and unusable are different answers
    pub fn optional(self) -> Option<Option<T>> {
        match self {
            Self::Given(value) => Some(Some(value)),
            Self::Empty => Some(None),
            Self::Bad => None,
        }
    }
}

impl<T> Entry<T> {
    /// Whether nothing was typed and no default holds.
    ///
    /// ```
    /// use shopmath::fastener::bolt::{BoltText, resolve};
    /// let resolved = resolve(&BoltText::default());
    /// assert!(resolved.grip.is_empty() && !resolved.friction.is_empty());
    /// ```
    #[must_use]
    pub fn is_empty(&self) -> bool {
        matches!(self, Self::Empty)
    }

    /// Whether something was typed that is not to be used.
    ///
    /// ```
    /// use shopmath::fastener::bolt::{BoltText, resolve};
    /// let mut text = BoltText::default();
    /// text.set("grip", "wide");
    /// assert!(resolve(&text).grip.is_bad() && !resolve(&BoltText::default()).grip.is_bad());
    /// ```
    #[must_use]
    pub fn is_bad(&self) -> bool {
        matches!(self, Self::Bad)
    }

    /// The value put through a function; what is empty or bad stays so.
    ///
    /// ```
    /// use shopmath::{fastener::bolt::Entry, quantity::exact::length::Millimetre};
    /// use uom::si::f64::Length;
    /// let millimetres = |entry: Entry<Length>| entry.map(|length| length.get::<Millimetre>().round());
    /// assert_eq!(millimetres(Entry::Given(Length::new::<Millimetre>(40.0))), Entry::Given(40.0));
    /// assert_eq!(millimetres(Entry::Bad), Entry::Bad);
    /// ```
    pub fn map<U>(self, with: impl FnOnce(T) -> U) -> Entry<U> {
        match self {
            Self::Given(value) => Entry::Given(with(value)),
            Self::Empty => Entry::Empty,
            Self::Bad => Entry::Bad,
        }
    }

    /// The value by reference, where there is one: for what is not copied, such as a spec.
    ///
    /// ```
    /// use shopmath::fastener::bolt::{BoltText, resolve};
    /// let mut text = BoltText::default();
    /// text.set("spec", "10 N·m + 90°");
    /// assert!(resolve(&text).spec.as_given().unwrap().turns());
    /// assert!(resolve(&BoltText::default()).spec.as_given().is_none());
    /// ```
    #[must_use]
    pub fn as_given(&self) -> Option<&T> {
        match self {
            Self::Given(value) => Some(value),
            Self::Empty | Self::Bad => None,
        }
    }
}

impl Resolved {
    /// Whether the full scale of the wrench is known, and with it its tolerance.
    pub(super) fn scale_given(&self) -> bool {
        matches!(self.scale, Entry::Given(_))
    }
}

/// Reads fields and collects what is wrong with them.
struct Reader<'a> {
    text: &'a BoltText,
    errors: Vec<FieldFault>,
    unfinished: Vec<&'static str>,
}

impl Reader<'_> {
    /// The field's entry, read by `with` where it has a text.
    fn entry<T>(&mut self, key: &'static str, with: impl FnOnce(&'static str, &str) -> Read<T>) -> Entry<T> {
        let text = self.text.effective(key);
        if text.trim().is_empty() {
            return Entry::Empty;
        }
        let mut read = with(key, text);
        if let Err(error) = &mut read
            && let Some(whole) = unfinished::completions(key, text)
        {
            self.unfinished.push(key);
            if !whole.is_empty() {
                error.remedies.clone_from(&whole);
            }
            let lacks = core::mem::take(&mut error.sentence);
            error.sentence = Refusal::Begun { whole, lacks }.to_string();
        }
        self.keep(read)
    }

    fn keep<T>(&mut self, read: Read<T>) -> Entry<T> {
        match read {
            Ok(value) => Entry::Given(value),
            Err(error) => {
                self.errors.push(error);
                Entry::Bad
            }
        }
    }

    fn length(&mut self, key: &'static str, what: &'static str, limits: (f64, f64)) -> Entry<Length> {
        self.entry(key, |key, text| read::length(key, what, text, limits))
    }

    fn material(&mut self, key: &'static str) -> Entry<Material> {
        self.entry(key, |key, text| refused(key, material::read(text)))
    }

    /// The class at the thread's diameter; without a thread, nothing can be said of it but its name.
    fn class(&mut self, thread: &Entry<Designation>) -> Entry<Class> {
        let name = self.entry("class", |key, text| refused(key, class::read(text)));
        match (name, thread) {
            (Entry::Given(name), Entry::Given(read)) => {
                let at = refused("class", class::at(name, read.thread.diameter));
                self.keep(at)
            }
            (Entry::Bad, _) | (Entry::Given(_), Entry::Bad) => Entry::Bad,
            _ => Entry::Empty,
        }
    }

    fn head(&mut self, thread: &Entry<Designation>) -> Entry<Head> {
        let shape = self.entry("head", |key, text| refused(key, head::read(text)));
        let bearing = self.length("bearing", "bearing diameter", (1.0, 500.0));
        let hole = self.length("hole", "hole diameter", (1.0, 500.0));
        match (shape, bearing.optional(), hole.optional(), thread) {
            (Entry::Given(shape), Some(bearing), Some(hole), Entry::Given(read)) => {
                let on = head::on(shape, &read.thread, bearing, hole);
                let key = head_key(shape, bearing, &on);
                self.keep(refused(key, on))
            }
            (_, _, _, Entry::Empty) => Entry::Empty,
            _ => Entry::Bad,
        }
    }

    fn friction(&mut self) -> Entry<Friction> {
        let thread: Entry<FrictionRange> = self.entry("mu", read::friction);
        let head = self.entry("mu-head", read::friction);
        match (thread, head) {
            (Entry::Given(thread), Entry::Given(head)) => Entry::Given(Friction { thread, head }),
            (Entry::Given(both), Entry::Empty) => Entry::Given(Friction::both(both)),
            _ => Entry::Bad,
        }
    }

    fn tool(&mut self, scale: Entry<Torque>) -> Entry<Ratio> {
        if !self.text.has("tool")
            && let Entry::Given(full_scale) = scale
        {
            return Entry::Given(wrench::permissible(full_scale));
        }
        self.entry("tool", read::tolerance)
    }
}

/// The field a head's refusal is about.
fn head_key(shape: Shape, bearing: Option<Length>, on: &Result<Head, Refusal>) -> &'static str {
    match on {
        Err(Refusal::NotSmaller { small, .. }) if *small == "thread diameter" => "hole",
        Err(Refusal::NotSmaller { .. }) => "bearing",
        Err(Refusal::CustomHeadIncomplete | Refusal::HeadNotTabled { .. }) if bearing.is_some() => "hole",
        Err(Refusal::CustomHeadIncomplete) => "bearing",
        Err(Refusal::HeadNotTabled { .. }) if shape != Shape::Custom => "head",
        _ => "bearing",
    }
}

fn joint(key: &'static str, text: &str) -> Read<Joint> {
    match text.trim().to_ascii_lowercase().as_str() {
        "nut" => Ok(Joint::Nut),
        "tapped" => Ok(Joint::Tapped),
        _ => refused(
            key,
            Err(Refusal::UnknownWord {
                what: "joint",
                read: text.trim().into(),
                words: vec!["nut", "tapped"],
            }),
        ),
    }
}

fn unitless(spec: &str) -> Option<[String; 2]> {
    let with = |unit| read::with_unit(spec, unit);
    Some([with(Unit::NewtonMetre)?, with(Unit::PoundForceFoot)?])
}

/// Makes quantities of the texts; a missing one takes its default.
///
/// ```
/// use shopmath::fastener::bolt::{BoltText, resolve};
/// let mut text = BoltText::default();
/// text.set("thread", "M10");
/// text.set("grip", "forty");
/// let resolved = resolve(&text);
/// assert_eq!(resolved.thread.given().unwrap().thread.name, "M10×1.5");
/// assert_eq!(resolved.errors[0].key, "grip");
/// ```
#[must_use]
pub fn resolve(text: &BoltText) -> Resolved {
    let mut reader = Reader {
        text,
        errors: Vec::new(),
        unfinished: Vec::new(),
    };
    let thread = reader.entry("thread", |key, text| refused(key, thread_text::read(text)));
    let spec = reader.entry("spec", read::spec);
    let scale = reader.entry("scale", read::torque);
    let reading_unit = spec.as_given().map_or(Unit::NewtonMetre, |read| read.last_unit);
    Resolved {
        class_typed: text.has("class"),
        class: reader.class(&thread),
        head: reader.head(&thread),
        torque_unit: spec.as_given().map_or(Unit::NewtonMetre, |read| read.unit),
        unitless: spec.as_given().and_then(|_| unitless(text.get("spec"))),
        reading_unit,
        lengths_apart: read::apart(["wrench", "adapter"].map(|key| (key, text.get(key)))),
        figures_disagree: spec.as_given().is_some_and(|read| read.contradicts),
        lubrication_in_words: !text.has("mu") && spec.as_given().is_some_and(|read| read.lubrication),
        spec: spec.map(|read| read.spec),
        friction: reader.friction(),
        tool: reader.tool(scale),
        grip: reader.length("grip", "grip", (0.5, 2000.0)),
        shank: reader.length("shank", "shank", (0.0, 2000.0)),
        clamped: reader.material("clamped"),
        outer: reader.length("outer", "outer diameter", (1.0, 2000.0)),
        joint: reader.entry("joint", joint),
        into: reader.material("into"),
        engaged: reader.length("engaged", "engaged length", (0.1, 500.0)),
        boss: reader.length("boss", "boss diameter", (1.0, 2000.0)),
        wrench: reader.length("wrench", "wrench length", (10.0, 10_000.0)),
        adapter: reader.length("adapter", "adapter length", (0.0, 10_000.0)),
        adapter_angle: reader.entry("adapter-angle", read::angle),
        scale,
        reading: reader.entry("reading", |key, text| read::torque_in(reading_unit, key, text)),
        lever: reader.length("lever", "lever", (10.0, 10_000.0)),
        heat: reader.entry("heat", read::heat),
        length_new: reader.length("length-new", "length", (1.0, 2000.0)),
        length_now: reader.length("length-now", "length", (1.0, 2000.0)),
        thread,
        assumed: FIELDS
            .iter()
            .map(|field| field.key)
            .filter(|key| !text.has(key) && text.default_of(key).is_some())
            .collect(),
        errors: reader.errors,
        unfinished: reader.unfinished,
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BoltText, resolve};

    #[test]
    fn a_number_without_a_unit_is_told_as_what_it_was_read() {
        for (spec, told) in [
            ("35", Some(["35 N·m", "35 lbf·ft"])),
            (" 35 ", Some(["35 N·m", "35 lbf·ft"])),
            ("35-45", Some(["35-45 N·m", "35-45 lbf·ft"])),
            ("10 + 90°", Some(["10 N·m + 90°", "10 lbf·ft + 90°"])),
            (
                "10 + 20 N·m + 90°",
                Some(["10 N·m + 20 N·m + 90°", "10 lbf·ft + 20 N·m + 90°"]),
            ),
            ("10 + 20 + 90°", None),
            ("35 N·m", None),
            ("35 ft-lb", None),
            ("Drain plug 35 N·m", None),
            ("20 N·m (15 lbf·ft) + 60°", None),
            ("bolt", None),
            ("", None),
        ] {
            let of = |spec: &str| {
                let mut text = BoltText::default();
                text.set("spec", spec);
                resolve(&text)
            };
            let read = of(spec);
            assert_eq!(read.unitless, told.map(|told| told.map(String::from)), "{spec}");
            if let Some([same, other]) = told {
                assert_eq!(of(same).spec, read.spec, "{spec}");
                assert!(of(other).spec != read.spec && of(other).unitless.is_none(), "{spec}");
            }
        }
    }

    #[test]
    fn lengths_of_two_systems_are_told_as_what_they_were_read() {
        for (wrench, adapter, told) in [
            ("15 in", "2", Some("Read as wrench 15 in, adapter 2 mm.")),
            ("400", "2 in", Some("Read as wrench 400 mm, adapter 2 in.")),
            ("15 in", "2 in", None),
            ("15 in", "50 mm", None),
            ("400", "50", None),
            ("400 mm", "50", None),
            ("15 in", "", None),
        ] {
            let mut text = BoltText::default();
            text.set("wrench", wrench);
            text.set("adapter", adapter);
            assert_eq!(resolve(&text).lengths_apart.as_deref(), told, "{wrench}, {adapter}");
        }
    }
}
