//! The cautions of the calculators for fasteners.

use super::Caution;

/// For the whole Bolt screen.
pub const TIGHTENING_CAN_HURT: Caution = Caution {
    slug: "tightening-can-hurt",
    text: "A check, not a procedure. The vehicle maker's torque, sequence and replace-list decide; follow local rules, and if unsure ask someone qualified.",
};
/// A single-use bolt stays single-use.
pub const SINGLE_USE: Caution = Caution {
    slug: "single-use",
    text: "Torque plus angle means a single-use bolt unless the vehicle maker says otherwise. Replace it, whatever the numbers say.",
};
/// The reading is outside what the tool promises.
pub const READING_OUTSIDE: Caution = Caution {
    slug: "reading-outside-tolerance",
    text: "The reading is further from the target than the tool's tolerance. Loosen and tighten again; do not just add a little.",
};
/// Below a fifth of full scale.
pub const WRENCH_TOO_LARGE: Caution = Caution {
    slug: "wrench-too-large",
    text: "Below 20 % of full scale a torque wrench promises no accuracy. Use a smaller one.",
};
/// Above full scale.
pub const WRENCH_TOO_SMALL: Caution = Caution {
    slug: "wrench-too-small",
    text: "The setting is above the wrench's full scale. Use a larger one.",
};
/// Adapter length ends at the hand.
pub const MEASURE_TO_HAND: Caution = Caution {
    slug: "measure-to-hand",
    text: "Measure the wrench to the middle of the hand, and pull there; elsewhere the setting is wrong.",
};
