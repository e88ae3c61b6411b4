//! The cautions of the calculators for belt drives.

use super::Caution;

/// For the whole Belt screen: before hands go in.
pub const ENGINE_OFF: Caution = Caution {
    slug: "engine-off",
    text: "Engine off, key out. Keep fingers, sleeves and hair away from belt and fan; an electric fan can start by itself.",
};

/// For the tensioner, whatever is worked out of it.
pub const SPRING_FORCE: Caution = Caution {
    slug: "spring-force",
    text: "The tensioner's spring can break fingers. Hold it with a long tool that cannot slip, let it back slowly, never let it snap.",
};

/// For the whole Belt screen: putting the belt back.
pub const REFIT_ORDER: Caution = Caution {
    slug: "refit-order",
    text: "Draw the route before the belt comes off. Refit by the vehicle maker's order, mostly with the smooth or topmost pulley last.",
};

/// For the whole Belt screen: before starting.
pub const EVERY_GROOVE: Caution = Caution {
    slug: "every-groove",
    text: "Before starting, check by eye and finger that the belt sits in every groove of every pulley. One groove off destroys it.",
};

/// For the whole Belt screen: what the figures are not.
pub const MAKER_DECIDES: Caution = Caution {
    slug: "maker-decides",
    text: "These figures check and estimate. The vehicle maker's belt, route and procedure decide; if unsure, ask someone qualified.",
};

/// The belt passes the tensioner's dead centre.
pub const DEAD_CENTRE: Caution = Caution {
    slug: "dead-centre",
    text: "Within this sweep the arm passes a point where turning it takes up no belt. Past it the spring slackens the belt.",
};

/// More than one arm position for a belt.
pub const SEVERAL_POSITIONS: Caution = Caution {
    slug: "several-positions",
    text: "The belt fits at more than one arm angle. Only the one where the spring tightens the belt holds.",
};

/// The arm is nearly out of travel.
pub const NEAR_STOP: Caution = Caution {
    slug: "near-stop",
    text: "The arm stands in the last fifth of its travel: little is left for stretch and wear. Check the belt's length and age.",
};

/// The arm has hardly moved.
pub const NEAR_SLACK_STOP: Caution = Caution {
    slug: "near-slack-stop",
    text: "The arm stands at its slack end: there is hardly any travel to slip the belt on, and it may not go on at all. Check the belt's length.",
};

/// The pulley is drawn where the arm cannot be.
pub const OUTSIDE_SWEEP: Caution = Caution {
    slug: "outside-sweep",
    text: "The tensioner's pulley is drawn outside its sweep. Check the pivot, the sweep and the pulley's centre.",
};

/// Belt and pulleys differ in ribs.
pub const RIBS_DIFFER: Caution = Caution {
    slug: "ribs-differ",
    text: "The belt's number of ribs is not the drive's. It must fill every groove it runs in and none beside.",
};

/// The pulleys take a belt in two ways.
pub const TWO_ROUTES: Caution = Caution {
    slug: "two-routes",
    text: "A belt of another length can run round these pulleys the other way. Look whether the drawing runs as yours does; if not, check each pulley's side and place.",
};
/// The back distance belongs to another profile.
pub const BACK_IS_FOR_PK: Caution = Caution {
    slug: "back-is-for-pk",
    text: "2.3 mm from back face to effective line is the usual figure for PK. Measure it for this profile.",
};

/// The note may be the second harmonic.
pub const SECOND_HARMONIC: Caution = Caution {
    slug: "second-harmonic",
    text: "If the meter caught the second harmonic, the tension is a quarter of this. Pluck in the middle and read again.",
};

/// The note is probably the second harmonic.
pub const LIKELY_SECOND_HARMONIC: Caution = Caution {
    slug: "likely-second-harmonic",
    text: "The strand reads about four times what the spring holds: the meter probably caught the second harmonic.",
};

/// A tension no such belt is run at.
pub const TENSION_UNLIKELY: Caution = Caution {
    slug: "tension-unlikely",
    text: "Hardly the tension of such a belt: PK belts run at about 10 to 200 N for each rib (common practice, no source). Check length, frequency, mass and their units before using it.",
};

/// Mass per metre was taken from the profile.
pub const MASS_ASSUMED: Caution = Caution {
    slug: "mass-assumed",
    text: "The belt's mass is taken from its ribs; weigh a belt and divide by its length for a closer tension.",
};

/// The belt slips.
pub const SLIPS: Caution = Caution {
    slug: "slips",
    text: "At this friction the belt slips here: more tension, more wrap or less load is needed.",
};

/// The reserve is small.
pub const LITTLE_RESERVE: Caution = Caution {
    slug: "little-reserve",
    text: "Little reserve: water, oil or glaze on the belt will make it slip here.",
};

/// A span goes slack.
pub const GOES_SLACK: Caution = Caution {
    slug: "goes-slack",
    text: "Under this load a span goes slack, so the figures no longer hold. More tension is needed, or the tensioner sits in a tight span.",
};

/// Out of line.
pub const OUT_OF_LINE: Caution = Caution {
    slug: "out-of-line",
    text: "More than 1/16 in per ft: a ribbed belt chirps, wears its edge and can climb off. Find the pulley that is out.",
};

/// Worn ribs that matter.
pub const RIBS_WORN: Caution = Caution {
    slug: "ribs-worn",
    text: "5 % of rib loss matters already: plan a new belt, and look for what wears it.",
};

/// A belt measured much shorter than its name.
pub const BELT_SHORTER: Caution = Caution {
    slug: "belt-shorter",
    text: "No belt shrinks so much: it is another belt than the one named, or was measured otherwise. Measure again before trusting the rib loss.",
};

/// Ribs worn out.
pub const RIBS_WORN_OUT: Caution = Caution {
    slug: "ribs-worn-out",
    text: "10 % of rib loss or more: replace the belt, and check tensioner and pulleys with it.",
};

/// Two measures of wear that cannot both be right.
pub const WEAR_DISAGREES: Caution = Caution {
    slug: "wear-disagrees",
    text: "The gauge shows more wear than the belt's length allows. Measure both again; until then go by the worse.",
};
/// A moving tensioner.
pub const SWING_WATCH: Caution = Caution {
    slug: "swing-watch",
    text: "A good tensioner stands still at idle. Look for a bent pulley, a failing bearing or a tired damper.",
};

/// A worn-out tensioner.
pub const SWING_WORN_OUT: Caution = Caution {
    slug: "swing-worn-out",
    text: "Swing of 3/8 to 1/2 in at the pulley is a worn-out tensioner. Replace it before the belt comes off.",
};

/// A stop where no belt can run.
pub const STOP_NOT_CLEAR: Caution = Caution {
    slug: "stop-not-clear",
    text: "At one end of this sweep no belt can run, so the lengths are those of the part where one can. Check pivot and sweep.",
};

/// The tension was not measured.
pub const TENSION_ASSUMED: Caution = Caution {
    slug: "tension-assumed",
    text: "The tension is assumed, not measured: pluck a strand or give the spring's torque before trusting reserve and hub loads.",
};

/// Cracks, beside the first figure of rib loss.
pub const CRACKS: Caution = Caution {
    slug: "cracks",
    text: "Cracks tell little on an EPDM belt, which rarely has any: go by rib loss. On an older chloroprene belt, three cracks within 3 in mean a new belt.",
};
