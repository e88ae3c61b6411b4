//! The sources of the calculators for belt drives.

use super::{Mark, Source};

sources! {
    /// What the calculators for belt drives rest on, for the page that lists it.
    pub ALL

    /// The PK profile.
    PK_PROFILE = "ISO 9981",
        "PK: pitch 3.56 mm, groove angle 40°, least effective diameter 45 mm, line differential 2.0 mm nominal", Published;

    /// The other profiles.
    OTHER_PROFILES = "ISO 9982", "PH, PJ, PL and PM: pitch, groove angle, least effective diameter, line differential", Memory;

    /// Names of belts.
    BELT_NAME = "ISO 9981", "belt designation: ribs, profile, effective length in millimetres", Memory;

    /// Lengths, wraps and spans.
    ROUTE = "",
        "plane geometry of a thin belt on the effective line; back-side radius with the belt's back face to that line (2.3 mm for PK is common practice)", Calculated;

    /// Pull of an accessory's load.
    LOAD = "", "torque over the pitch radius, power over the belt's speed", Calculated;

    /// Pull of an alternator.
    ALTERNATOR = "",
        "electric power over efficiency and belt speed; 60 % efficiency and 14 V, where not typed, are common practice", CommonPractice;

    /// The tensioner's travel.
    TAKE_UP = "",
        "the route's length at angles of the arm; the angle for a belt by a bracketing root finder", Calculated;

    /// Spring and strand.
    VIRTUAL_WORK = "", "virtual work of spring and strand, without friction in the tensioner", Calculated;

    /// Tension from a plucked strand.
    STRAND = "belt data sheets",
        "the string equation; PK belts weigh 0.020 to 0.025 kg/m per rib; that they run at 10 to 200 N per rib is common practice", Published;

    /// Slip.
    SLIP = "",
        "belt friction with wedge and centrifugal term, Euler and Eytelwein; friction of 0.3, where not typed, is common practice", Calculated;

    /// Tension round the loop.
    LOOP = "",
        "equilibrium of each pulley; the tensioner holds its two spans, or fixed pulleys hold the belt's length", Calculated;

    /// Misalignment.
    ALIGNMENT = "a belt alignment table", "ribbed belts: 1/16 in per ft at most, 0.298°", Published;

    /// Wear of the ribs. The limits of 5 % and 10 % are published; the loss for a depth is not.
    WEAR = "",
        "own estimate from pitch and groove angle, ribs and grooves taken as equally wide; belt makers' literature says 5 % matters and 10 % comes by 100 000 miles", Calculated;

    /// A belt that sinks into its grooves.
    SEAT = "",
        "each ribbed pulley's radius less by the depth; on a drive without back-side pulleys 2π times the depth", Calculated;

    /// Swing of the tensioner.
    SWING = "",
        "a good tensioner stands still at idle; 3/8 to 1/2 in of swing at the pulley is worn out", CommonPractice;
}
