//! Bolt heads: bearing diameter, clearance hole, height and wrench size by thread. The rows are
//! here; which wrench goes on a head is [`super::wrench_fit`]'s work.

use super::refusal::{Refusal, within};
use super::si::millimetres;
use super::thread::Thread;
use crate::quantity::Unit;
use crate::source::{Source, fastener as sources};
use uom::si::f64::Length;

/// The shape of a head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Hexagon, ISO 4017 or ASME B18.2.1.
    Hex,
    /// Hexagon with flange, EN 1665.
    Flange,
    /// Cylinder with hexagon socket, ISO 4762 or ASME B18.3.
    Socket,
    /// Any head, by its two measured diameters.
    Custom,
}

/// One head on one thread, over one hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head {
    /// Its shape.
    pub shape: Shape,
    /// Diameter of the bearing face, dW.
    pub bearing: Length,
    /// Diameter of the clearance hole, dh.
    pub hole: Length,
    /// Height, where tabled.
    pub height: Option<Length>,
    /// Width across flats of hexagon or socket, where tabled.
    pub across_flats: Option<Length>,
    /// Width across flats by an older standard still met on vehicles.
    pub across_flats_old: Option<Length>,
    /// Where the dimensions come from.
    pub source: Source,
}

/// A row for one diameter, in the unit of its standard; `0.0` where the standard has no such size.
struct Row {
    size: &'static str,
    unit: f64,
    /// Hexagon: bearing diameter, height, across flats, across flats by the older standard.
    hex: [f64; 4],
    /// Flange: bearing diameter, height, across flats.
    flange: [f64; 3],
    /// Socket: bearing diameter, head height, key.
    socket: [f64; 3],
    /// Clearance hole, medium or normal fit.
    hole: f64,
}

const MM: f64 = 1.0;
const INCH: f64 = 25.4;

#[rustfmt::skip] // one row, one line
static ROWS: &[Row] = &[
    Row { size: "M4", unit: MM, hex: [5.88, 2.8, 7.0, 0.0], flange: [0.0; 3], socket: [6.53, 4.0, 3.0], hole: 4.5 },
    Row { size: "M5", unit: MM, hex: [6.88, 3.5, 8.0, 0.0], flange: [9.8, 5.4, 8.0], socket: [8.03, 5.0, 4.0], hole: 5.5 },
    Row { size: "M6", unit: MM, hex: [8.88, 4.0, 10.0, 0.0], flange: [12.2, 6.6, 10.0], socket: [9.38, 6.0, 5.0], hole: 6.6 },
    Row { size: "M7", unit: MM, hex: [9.63, 4.8, 11.0, 0.0], flange: [0.0; 3], socket: [0.0; 3], hole: 7.6 },
    Row { size: "M8", unit: MM, hex: [11.63, 5.3, 13.0, 0.0], flange: [15.8, 8.1, 13.0], socket: [12.33, 8.0, 6.0], hole: 9.0 },
    Row { size: "M10", unit: MM, hex: [14.63, 6.4, 16.0, 17.0], flange: [19.6, 9.2, 15.0], socket: [15.33, 10.0, 8.0], hole: 11.0 },
    Row { size: "M12", unit: MM, hex: [16.63, 7.5, 18.0, 19.0], flange: [23.8, 11.5, 16.0], socket: [17.23, 12.0, 10.0], hole: 13.5 },
    Row { size: "M14", unit: MM, hex: [19.64, 8.8, 21.0, 22.0], flange: [27.6, 12.8, 18.0], socket: [20.17, 14.0, 12.0], hole: 15.5 },
    Row { size: "M16", unit: MM, hex: [22.49, 10.0, 24.0, 0.0], flange: [31.9, 14.4, 21.0], socket: [23.17, 16.0, 14.0], hole: 17.5 },
    Row { size: "M18", unit: MM, hex: [25.34, 11.5, 27.0, 0.0], flange: [0.0; 3], socket: [0.0; 3], hole: 20.0 },
    Row { size: "M20", unit: MM, hex: [28.19, 12.5, 30.0, 0.0], flange: [39.9, 17.1, 27.0], socket: [28.87, 20.0, 17.0], hole: 22.0 },
    Row { size: "M22", unit: MM, hex: [31.71, 14.0, 34.0, 0.0], flange: [0.0; 3], socket: [0.0; 3], hole: 24.0 },
    inch("#10", [0.0; 4], [0.312, 0.190, 5.0 / 32.0], 0.221),
    inch("1/4", [7.0 / 16.0, 5.0 / 32.0, 7.0 / 16.0, 0.0], [0.375, 0.250, 3.0 / 16.0], 9.0 / 32.0),
    inch("5/16", [1.0 / 2.0, 13.0 / 64.0, 1.0 / 2.0, 0.0], [0.469, 0.312, 1.0 / 4.0], 11.0 / 32.0),
    inch("3/8", [9.0 / 16.0, 15.0 / 64.0, 9.0 / 16.0, 0.0], [0.562, 0.375, 5.0 / 16.0], 13.0 / 32.0),
    inch("7/16", [5.0 / 8.0, 9.0 / 32.0, 5.0 / 8.0, 0.0], [0.656, 0.438, 3.0 / 8.0], 15.0 / 32.0),
    inch("1/2", [3.0 / 4.0, 5.0 / 16.0, 3.0 / 4.0, 0.0], [0.750, 0.500, 3.0 / 8.0], 9.0 / 16.0),
    inch("9/16", [13.0 / 16.0, 23.0 / 64.0, 13.0 / 16.0, 0.0], [0.0; 3], 0.0),
    inch("5/8", [15.0 / 16.0, 25.0 / 64.0, 15.0 / 16.0, 0.0], [0.938, 0.625, 1.0 / 2.0], 11.0 / 16.0),
    inch("3/4", [9.0 / 8.0, 15.0 / 32.0, 9.0 / 8.0, 0.0], [1.125, 0.750, 5.0 / 8.0], 13.0 / 16.0),
];

/// Inch heads bear on a circle of 0.95 of the width given first: the washer face of a hexagon, the
/// cylinder of a socket head.
const fn inch(size: &'static str, hex: [f64; 4], socket: [f64; 3], hole: f64) -> Row {
    Row {
        size,
        unit: INCH,
        hex: [hex[0] * 0.95, hex[1], hex[2], hex[3]],
        flange: [0.0; 3],
        socket: [socket[0] * 0.95, socket[1], socket[2]],
        hole,
    }
}

impl Shape {
    /// Every shape.
    pub const ALL: [Shape; 4] = [Self::Hex, Self::Flange, Self::Socket, Self::Custom];

    /// The name in a link, which [`read`] takes back.
    ///
    /// ```
    /// use shopmath::fastener::head::{Shape, read};
    /// assert_eq!(Shape::Flange.id(), "flange");
    /// assert!(Shape::ALL.into_iter().all(|shape| read(shape.id()) == Ok(shape)));
    /// ```
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Hex => "hex",
            Self::Flange => "flange",
            Self::Socket => "socket",
            Self::Custom => "custom",
        }
    }

    /// Length of the head that stretches with the bolt, in thread diameters (VDI 2230, from memory): 0.4 for a
    /// socket head, 0.5 for all others.
    ///
    /// ```
    /// use shopmath::fastener::{head::Shape, thread_text::read};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let stretched = read("M10").unwrap().thread.diameter * Shape::Socket.stretched_height();
    /// assert!((stretched.get::<Millimetre>() - 4.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn stretched_height(self) -> f64 {
        if self == Self::Socket { 0.4 } else { 0.5 }
    }

    fn source(self, metric: bool) -> Source {
        match (self, metric) {
            (Self::Hex, true) => sources::HEX_HEAD,
            (Self::Flange, _) => sources::FLANGE_HEAD,
            (Self::Socket, true) => sources::SOCKET_HEAD,
            (Self::Hex | Self::Socket, false) => sources::INCH_HEAD,
            (Self::Custom, _) => sources::MEASURED,
        }
    }
}

/// The shape a text names: one of the ids of [`Shape::ALL`]; capitals and spaces around it do not matter.
///
/// # Errors
/// [`Refusal::UnknownWord`] with the words that exist.
///
/// ```
/// use shopmath::fastener::head::{Shape, read};
/// assert_eq!(read(" Socket ").unwrap(), Shape::Socket);
/// assert!(read("round").unwrap_err().to_string().contains("hex, flange, socket, custom"));
/// ```
pub fn read(text: &str) -> Result<Shape, Refusal> {
    let folded = text.trim().to_ascii_lowercase();
    Shape::ALL
        .into_iter()
        .find(|shape| shape.id() == folded)
        .ok_or_else(|| Refusal::UnknownWord {
            what: "head",
            read: text.trim().into(),
            words: Shape::ALL.map(Shape::id).to_vec(),
        })
}

/// The head on a thread. A measured bearing or hole diameter takes the place of the tabled one.
///
/// # Errors
/// [`Refusal::HeadNotTabled`] where the standard has no such size and no measurement is given;
/// [`Refusal::CustomHeadIncomplete`] for a custom head without both; [`Refusal::NotSmaller`] where
/// the hole does not pass the thread or the head falls through the hole; [`Refusal::OutOfRange`]
/// past half a metre.
///
/// ```
/// use shopmath::fastener::{head::{Shape, on}, thread_text::read};
/// use shopmath::quantity::exact::length::Millimetre;
/// let head = on(Shape::Hex, &read("M10").unwrap().thread, None, None).unwrap();
/// assert!((head.bearing.get::<Millimetre>() - 14.63).abs() < 1e-9);
/// assert!((head.hole.get::<Millimetre>() - 11.0).abs() < 1e-9);
/// ```
pub fn on(shape: Shape, thread: &Thread, bearing: Option<Length>, hole: Option<Length>) -> Result<Head, Refusal> {
    let row = ROWS.iter().find(|row| row.size == thread.size);
    let tabled = |value: f64| row.filter(|_| value > 0.0).map(|row| millimetres(value * row.unit));
    let [face, height, flats, old] = row.map_or([0.0; 4], |row| row.columns(shape)).map(tabled);
    let missing = || match shape {
        Shape::Custom => Refusal::CustomHeadIncomplete,
        _ => Refusal::HeadNotTabled {
            head: shape.id(),
            thread: thread.name,
        },
    };
    let tabled_hole = row.filter(|_| shape != Shape::Custom).and_then(|row| tabled(row.hole));
    let bearing_read = bearing.or(face).ok_or_else(missing)?;
    let hole_read = hole.or(tabled_hole).ok_or_else(missing)?;
    ordered("thread diameter", thread.diameter, "hole diameter", hole_read)?;
    ordered("hole diameter", hole_read, "bearing diameter", bearing_read)?;
    let limits = (millimetres(1.0), millimetres(500.0));
    within("bearing diameter", bearing_read, limits, Unit::Millimetre)?;
    Ok(Head {
        shape,
        bearing: bearing_read,
        hole: hole_read,
        height,
        across_flats: flats,
        across_flats_old: old,
        source: if bearing.is_some() {
            sources::MEASURED
        } else {
            shape.source(row.is_some_and(|row| row.unit <= MM))
        },
    })
}

fn ordered(small: &'static str, small_read: Length, large: &'static str, large_read: Length) -> Result<(), Refusal> {
    if small_read < large_read {
        return Ok(());
    }
    Err(Refusal::not_smaller((small, small_read), (large, large_read)))
}

impl Row {
    /// Bearing diameter, height, across flats, across flats by the older standard.
    fn columns(&self, shape: Shape) -> [f64; 4] {
        let three = |[face, height, flats]: [f64; 3]| [face, height, flats, 0.0];
        match shape {
            Shape::Hex => self.hex,
            Shape::Flange => three(self.flange),
            Shape::Socket => three(self.socket),
            Shape::Custom => [0.0; 4],
        }
    }
}

impl Head {
    /// Mean diameter of the friction under the head, DKm = (dW + dh)/2 (VDI 2230-1): a length between the hole's
    /// diameter and the bearing face's.
    ///
    /// ```
    /// use shopmath::fastener::{head::{Shape, on}, thread_text::read};
    /// use shopmath::quantity::exact::length::Millimetre;
    /// let hex = on(Shape::Hex, &read("M10").unwrap().thread, None, None).unwrap();
    /// assert!((hex.friction_diameter().get::<Millimetre>() - (14.63 + 11.0) / 2.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn friction_diameter(&self) -> Length {
        (self.bearing + self.hole) * 0.5
    }
}
