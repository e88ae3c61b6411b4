//! The sources of the calculators for belt drives.

use super::{Mark, Source};

/// The PK profile.
pub const PK_PROFILE: Source = Source {
    publication: "ISO 9981",
    part: "PK: pitch 3.56 mm, groove angle 40°, least effective diameter 45 mm, line differential 2.0 mm nominal",
    mark: Mark::Published,
};

/// The other profiles.
pub const OTHER_PROFILES: Source = Source {
    publication: "ISO 9982",
    part: "PH, PJ, PL and PM: pitch, least effective diameter, line differential",
    mark: Mark::Memory,
};

/// Names of belts.
pub const BELT_NAME: Source = Source {
    publication: "ISO 9981",
    part: "belt designation: ribs, profile, effective length in millimetres",
    mark: Mark::Memory,
};

/// Lengths, wraps and spans.
pub const ROUTE: Source = Source {
    publication: "",
    part: "plane geometry of a thin belt on the effective line; back-side radius with the belt's back face to that line (2.3 mm for PK is common practice)",
    mark: Mark::Calculated,
};

/// Pull of an accessory's load.
pub const LOAD: Source = Source {
    publication: "",
    part: "torque over the pitch radius, power over the belt's speed",
    mark: Mark::Calculated,
};

/// Pull of an alternator.
pub const ALTERNATOR: Source = Source {
    publication: "",
    part: "electric power over efficiency and belt speed; 60 % efficiency and 14 V, where not typed, are common practice",
    mark: Mark::CommonPractice,
};

/// The tensioner's travel.
pub const TAKE_UP: Source = Source {
    publication: "",
    part: "the route's length at angles of the arm; the angle for a belt by a bracketing root finder",
    mark: Mark::Calculated,
};

/// Spring and strand.
pub const VIRTUAL_WORK: Source = Source {
    publication: "",
    part: "virtual work of spring and strand, without friction in the tensioner",
    mark: Mark::Calculated,
};

/// Tension from a plucked strand.
pub const STRAND: Source = Source {
    publication: "belt data sheets",
    part: "the string equation; PK belts weigh 0.020 to 0.025 kg/m per rib; that they run at 10 to 200 N per rib is common practice",
    mark: Mark::Published,
};

/// Slip.
pub const SLIP: Source = Source {
    publication: "",
    part: "belt friction with wedge and centrifugal term, Euler and Eytelwein; friction of 0.3, where not typed, is common practice",
    mark: Mark::Calculated,
};

/// Tension round the loop.
pub const LOOP: Source = Source {
    publication: "",
    part: "equilibrium of each pulley; the tensioner holds its two spans, or fixed pulleys hold the belt's length",
    mark: Mark::Calculated,
};

/// Misalignment.
pub const ALIGNMENT: Source = Source {
    publication: "a belt alignment table",
    part: "ribbed belts: 1/16 in per ft at most, 0.298°",
    mark: Mark::Published,
};

/// Wear of the ribs. The limits of 5 % and 10 % are published; the loss for a depth is not.
pub const WEAR: Source = Source {
    publication: "",
    part: "own estimate from pitch and groove angle, ribs and grooves taken as equally wide; belt makers' literature says 5 % matters and 10 % comes by 100 000 miles",
    mark: Mark::Calculated,
};

/// A belt that sinks into its grooves.
pub const SEAT: Source = Source {
    publication: "",
    part: "each ribbed pulley's radius less by the depth; on a drive without back-side pulleys 2π times the depth",
    mark: Mark::Calculated,
};

/// Swing of the tensioner.
pub const SWING: Source = Source {
    publication: "",
    part: "a good tensioner stands still at idle; 3/8 to 1/2 in of swing at the pulley is worn out",
    mark: Mark::CommonPractice,
};

/// Every source above, for the page that lists them: what the calculators for belt drives rest on.
pub const ALL: &[Source] = &[
    PK_PROFILE,
    OTHER_PROFILES,
    BELT_NAME,
    ROUTE,
    LOAD,
    ALTERNATOR,
    TAKE_UP,
    VIRTUAL_WORK,
    STRAND,
    SLIP,
    LOOP,
    ALIGNMENT,
    WEAR,
    SEAT,
    SWING,
];
