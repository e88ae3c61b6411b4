//! The joint to scale, in plain millimetres for a drawing.

use super::resolve::{Joint, Resolved};
use crate::fastener::bolt::resolve::Entry;
use crate::fastener::head::Shape;
use crate::quantity::exact::length::Millimetre;
use uom::si::f64::Length;

/// What to draw. All lengths in millimetres; axis along the bolt, head on top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointDrawing {
    /// Shape of the head.
    pub shape: Shape,
    /// Height of the head.
    pub head_height: f64,
    /// Width of the head: across flats of a hexagon, the cylinder of a socket head.
    pub head_width: f64,
    /// Diameter of the bearing face.
    pub bearing: f64,
    /// Clearance hole.
    pub hole: f64,
    /// Thread diameter.
    pub diameter: f64,
    /// Root diameter of the thread.
    pub root: f64,
    /// Pitch.
    pub pitch: f64,
    /// Thickness clamped, where given.
    pub grip: Option<f64>,
    /// Plain shank within the grip.
    pub shank: f64,
    /// Outer diameter of the clamped part, where given.
    pub outer: Option<f64>,
    /// Whether the bolt goes into a tapped hole; also where a nut is chosen and threads in a hole are given.
    pub tapped: bool,
    /// Length of threads engaged, where given; of a nut, 0.8 d.
    pub engaged: Option<f64>,
    /// Diameter of the boss, where given.
    pub boss: Option<f64>,
    /// Length of the bolt under its head, where it was part of the thread's text.
    pub length: Option<f64>,
}

/// The drawing of a bolt; none without thread and head.
pub(super) fn drawing(resolved: &Resolved) -> Option<JointDrawing> {
    let read = resolved.thread.given()?;
    let head = resolved.head.given()?;
    let millimetres = |length: Length| length.get::<Millimetre>();
    let optional = |entry: Entry<Length>| entry.given().map(millimetres);
    let diameter = millimetres(read.thread.diameter);
    let hole = resolved.into.given().is_some() && resolved.engaged.given().is_some();
    let tapped = hole || resolved.joint.given() == Some(Joint::Tapped);
    let nut = (!tapped).then_some(0.8 * diameter);
    Some(JointDrawing {
        shape: head.shape,
        head_height: head.height.map_or(0.65 * diameter, millimetres),
        head_width: match (head.shape, head.across_flats) {
            (Shape::Hex | Shape::Flange, Some(flats)) => millimetres(flats),
            _ => millimetres(head.bearing),
        },
        bearing: millimetres(head.bearing),
        hole: millimetres(head.hole),
        diameter,
        root: millimetres(read.thread.root_diameter()),
        pitch: millimetres(read.thread.pitch),
        grip: optional(resolved.grip),
        shank: optional(resolved.shank).unwrap_or(0.0),
        outer: optional(resolved.outer),
        tapped,
        engaged: optional(resolved.engaged).or(nut),
        boss: optional(resolved.boss),
        length: read.length.map(millimetres),
    })
}
