//! Clamp load and torque against the angle turned, in plain numbers for a plot: the band that
//! friction and tool leave, and where the bolt yields.

/// A point of the curves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotPoint {
    /// Angle from where the torque was reached, degrees; negative on the way there.
    pub angle: f64,
    /// Clamp load at the largest friction, newton.
    pub clamp_low: f64,
    /// Clamp load at middling friction, newton.
    pub clamp_mid: f64,
    /// Clamp load at the smallest friction, newton.
    pub clamp_high: f64,
    /// Torque at the largest friction, newton metre.
    pub torque_low: f64,
    /// Torque at middling friction, newton metre.
    pub torque_mid: f64,
    /// Torque at the smallest friction, newton metre.
    pub torque_high: f64,
}

/// The plot.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
    /// The corners of the curves, by rising angle; straight between them.
    pub points: Vec<PlotPoint>,
    /// Where the spec ends, degrees from the torque; 0 for a torque alone.
    pub spec_angle: f64,
    /// Where yield begins at middling friction, degrees from the torque.
    pub yield_angle: f64,
    /// Clamp load at yield: low, middle, high, newton.
    pub yield_clamp: [f64; 3],
    /// Whether the spec's torque is reached at angle 0 (always) and turns on by an angle.
    pub turns: bool,
}

/// The plot of a bolt; none without a grip.
pub(super) fn plot(_common: &super::assess::Common<'_>) -> Option<Plot> {
    None
}
