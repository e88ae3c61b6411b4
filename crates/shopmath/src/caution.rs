//! The cautions: each sentence once, with the slug other programs read. Those of each field of
//! calculators stand in a file of their own below.

pub mod drive;
pub mod fastener;

/// A caution shown with a result or a screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// The stable name, in the page's `data-caution`.
    pub slug: &'static str,
    /// The sentence for the person.
    pub text: &'static str,
}

/// For the whole Convert screen.
pub const FIGURE_NOT_PROCEDURE: Caution = Caution {
    slug: "figure-not-procedure",
    text: "A converted figure is still only the figure. Follow the vehicle maker's procedure and local rules; if unsure, ask someone qualified.",
};

/// A wrench loose enough to round the head.
pub const ROUNDS_CORNERS: Caution = Caution {
    slug: "rounds-corners",
    text: "Too loose: it bears on the corners and rounds them. Use the exact size.",
};

/// The figure in brackets and the one before it do not agree.
pub const FIGURES_DISAGREE: Caution = Caution {
    slug: "figures-disagree",
    text: "The two figures on this line differ by more than rounding. One is misprinted or mistyped; check the manual.",
};

/// A volume given without saying which gallon.
pub const US_MEASURE_ASSUMED: Caution = Caution {
    slug: "us-measure-assumed",
    text: "Read as US measure. An imperial gallon, quart or pint is about a fifth larger: type imp gal, imp qt or imp pt if that is meant.",
};

/// Pounds without a length: common practice of torque lists, no source.
pub const POUNDS_ARE_WEIGHT: Caution = Caution {
    slug: "pounds-are-weight",
    text: "Read as a weight. A torque printed in lb or lbs alone usually means pound-feet: type ft-lb if that is meant, or in-lb for a small one.",
};

/// An angle after a torque usually means a bolt that stretches.
pub const ANGLE_MEANS_STRETCH: Caution = Caution {
    slug: "angle-means-stretch",
    text: "Torque plus angle usually means a single-use bolt. Replace it unless the vehicle maker says otherwise.",
};

/// For every sheet.
pub const RECORD_IS_YOURS: Caution = Caution {
    slug: "record-is-yours",
    text: "This record is your own and is kept on this device alone. It does not replace the vehicle maker's procedure or records that local rules ask for. Back it up.",
};
