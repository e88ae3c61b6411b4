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
    text: "Torque plus angle usually means a single-use bolt. Fit a new one, whatever the numbers say; only the vehicle maker's procedure decides otherwise.",
};
/// A bolt of a sheet that a person marked: the same caution, which need not say what it is guessed from.
pub const MARKED_SINGLE_USE: Caution = Caution {
    slug: "single-use",
    text: "Single-use: fit a new one, whatever the numbers say; only the vehicle maker's procedure decides otherwise.",
};
/// The reading is below what the tool promises. [`READING_ABOVE`] has the same slug: either is outside.
pub const READING_OUTSIDE: Caution = Caution {
    slug: "reading-outside-tolerance",
    text: "The reading is below the target by more than the tool's tolerance. Loosen and tighten again; do not just add a little.",
};
/// The reading is above what the tool promises: loosening does not undo it.
pub const READING_ABOVE: Caution = Caution {
    slug: READING_OUTSIDE.slug,
    text: "Overtightened: the reading is above the target by more than the tool's tolerance. Take the bolt out, check its thread and length, and replace it if in doubt.",
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
/// An adapter folded back so far that an error in the length of the wrench enters the torque more than whole.
pub const ADAPTER_FOLDED_BACK: Caution = Caution {
    slug: "adapter-folded-back",
    text: "Folded back this far the adapter cancels most of the wrench: a hand a little off its place changes the torque a lot. Turn the adapter square or outward.",
};
/// The torque of the spec alone yields the bolt.
pub const TORQUE_PASSES_YIELD: Caution = Caution {
    slug: "torque-passes-yield",
    text: "With slippery threads the torque alone yields this bolt; how far it then stretches no torque tells.",
};
/// A spec past yield, into threads that hold less than the bolt.
pub const HOLE_IS_WEAKER: Caution = Caution {
    slug: "hole-is-weaker",
    text: "The threads in the hole hold less than the bolt: tightened past yield they may pull out before it breaks. Engage more full threads.",
};
/// Breaking torque is no tightening limit.
pub const TWIST_IS_NO_SPEC: Caution = Caution {
    slug: "twist-is-no-spec",
    text: "These are limits of pure twist for loosening, not tightening torques. Pull steadily, wear eye protection, and expect it to let go.",
};
/// Heating anything on a vehicle.
pub const HOT_WORK: Caution = Caution {
    slug: "hot-work",
    text: "Heat only what the vehicle maker allows, away from fuel, lines, airbags, batteries and penetrating oil. Replace a bolt that was heated.",
};
/// Magnesium.
pub const MAGNESIUM_BURNS: Caution = Caution {
    slug: "magnesium-burns",
    text: "Magnesium burns, and water makes it worse. No flame on it, and no sparks near its chips.",
};
/// An aged alloy near its limit.
pub const TEMPER_AT_RISK: Caution = Caution {
    slug: "temper-at-risk",
    text: "A T6 alloy begins to lose strength for good from 150 °C. Keep the heat short.",
};
/// An aged alloy past its limit.
pub const TEMPER_LOST: Caution = Caution {
    slug: "temper-lost",
    text: "From 175 °C a T6 alloy loses strength for good within hours. Do not heat the part this far.",
};
/// A part of light alloy, or its bolt, far too hot.
pub const LIGHT_ALLOY_SOFTENS: Caution = Caution {
    slug: "light-alloy-softens",
    text: "Above 200 °C an aluminium or magnesium casting softens and warps, and from about 450 °C it begins to melt. Do not heat the part this far.",
};
/// A bolt hotter than it was tempered at.
pub const BOLT_SOFTENS: Caution = Caution {
    slug: "bolt-softens",
    text: "A bolt heated past about 400 °C no longer has the strength of its class, and these limits do not hold for it.",
};
/// Seals of nitrile rubber.
pub const SEAL_NBR: Caution = Caution {
    slug: "seal-nbr",
    text: "Above 120 °C nearby nitrile (NBR) seals harden. Replace them.",
};
/// Seals of EPDM.
pub const SEAL_EPDM: Caution = Caution {
    slug: "seal-epdm",
    text: "Above 150 °C nearby EPDM seals are damaged as well. Replace them.",
};
/// Seals of fluorocarbon rubber.
pub const SEAL_FKM: Caution = Caution {
    slug: "seal-fkm",
    text: "Above 200 °C even fluorocarbon (FKM) seals are damaged. Replace all seals nearby.",
};
/// A bolt measured longer than new.
pub const BOLT_SPENT: Caution = Caution {
    slug: "bolt-spent",
    text: "This bolt is longer than new: it has been past yield. Replace it.",
};
/// A bolt measured shorter than new.
pub const MEASURED_SHORTER: Caution = Caution {
    slug: "measured-shorter",
    text: "No bolt gets shorter. Measure again, and compare with a new bolt of the same part number.",
};
