//! Routes no belt can take.

use super::millimetres;
use crate::drive::layout::{Layout, MOST_PULLEYS};
use crate::drive::pulley::{Pulley, Side};
use crate::drive::si::metres;

/// Why no belt can take a route. Pulleys are numbered from 0 in belt order; span n runs from
/// pulley n to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RouteFault {
    /// Fewer than two pulleys.
    TooFew(usize),
    /// More pulleys than are looked at.
    TooMany,
    /// Every pulley is on the belt's back.
    NoneOnRibs,
    /// The distance from back face to effective line is negative or absurd.
    BackOutOfRange,
    /// A pulley more than 100 m away, or at no place at all.
    FarAway(usize),
    /// A diameter outside 1 mm–10 m, or too small for the belt's cords to go round.
    NoSize(usize),
    /// A ribbed pulley below the least effective diameter of the profile.
    BelowMinimum(usize),
    /// What was typed for the place or the diameter of a pulley cannot be used.
    Unread(usize),
    /// Two pulleys overlap, or leave no room for the belt to pass between them.
    Overlap(usize, usize),
    /// The belt does not touch this pulley on the side stated.
    Missed(usize),
    /// A span runs through a pulley.
    SpanThrough {
        /// The span, by the pulley it leaves.
        span: usize,
        /// The pulley in its way.
        pulley: usize,
    },
    /// Two spans cross; each by the pulley it leaves.
    SpansCross(usize, usize),
}

impl RouteFault {
    /// The pulleys it points at, from 0, those to move first; none where it is about the whole drive.
    ///
    /// ```
    /// use shopmath::drive::fault::RouteFault;
    /// assert_eq!(RouteFault::SpanThrough { span: 0, pulley: 3 }.pulleys(), [3]);
    /// assert_eq!(RouteFault::Overlap(1, 2).pulleys(), [1, 2]);
    /// assert!(RouteFault::NoneOnRibs.pulleys().is_empty());
    /// ```
    #[must_use]
    pub fn pulleys(self) -> Vec<usize> {
        match self {
            Self::TooFew(_) | Self::TooMany | Self::NoneOnRibs | Self::BackOutOfRange => Vec::new(),
            Self::FarAway(index)
            | Self::NoSize(index)
            | Self::BelowMinimum(index)
            | Self::Unread(index)
            | Self::Missed(index) => vec![index],
            Self::Overlap(one, other) | Self::SpansCross(one, other) => vec![one, other],
            Self::SpanThrough { pulley, .. } => vec![pulley],
        }
    }

    /// The sentence for a person, with the names of the layout's pulleys and lengths in millimetres; a
    /// pulley without a name, or one the layout has not got, goes by its number from 1.
    ///
    /// ```
    /// use shopmath::drive::{bench::{DriveText, resolve}, fault::RouteFault};
    /// let layout = resolve(&DriveText::demo()).layout.unwrap();
    /// let said = RouteFault::BelowMinimum(2).sentence(&layout);
    /// assert!(said.starts_with("alternator is 56 mm across; a ribbed PK pulley needs 45 mm at least."));
    /// assert!(RouteFault::Missed(9).sentence(&layout).contains("pulley 10"));
    /// ```
    #[must_use]
    pub fn sentence(self, layout: &Layout) -> String {
        let pulleys = &layout.pulleys;
        let name = |index: usize| label(pulleys, index);
        let next = |index: usize| label(pulleys, (index + 1) % pulleys.len().max(1));
        match self {
            Self::TooFew(0) => {
                "No pulley yet. A belt needs two at least: add the crank first, then the next one the belt meets."
                    .into()
            }
            Self::TooFew(_) => "A belt needs two pulleys at least. Add the next one the belt meets.".into(),
            Self::TooMany => format!("No drive has more than {MOST_PULLEYS} pulleys. Take some away."),
            Self::NoneOnRibs => "Every pulley is set to the belt's back. Set those with grooves to rib.".into(),
            Self::BackOutOfRange => {
                "The back face lies 0 to 50 mm from the effective line. Type a distance such as 2.3 mm.".into()
            }
            Self::FarAway(index) => format!(
                "{} stands more than 100 m away. Type its centre in millimetres.",
                name(index)
            ),
            Self::NoSize(index) => format!(
                "{} has a diameter no belt runs on. Type one between 1 mm and 10 m, such as 60.",
                name(index)
            ),
            Self::BelowMinimum(index) => format!(
                "{} is {} across; a ribbed {} pulley needs {} at least. Measure the effective diameter again, or check the profile.",
                name(index),
                millimetres(pulleys.get(index).map_or(layout.back, |pulley| pulley.diameter)),
                layout.profile.name(),
                millimetres(layout.profile.minimum_diameter())
            ),
            Self::Unread(index) => format!(
                "The place or diameter typed for {} cannot be used, so nothing that needs it is worked out. It is drawn as it was.",
                name(index)
            ),
            Self::Overlap(one, other) => overlap(layout, one, other),
            Self::Missed(index) => format!(
                "The belt misses {} on its {}. Change its side, its place, or its turn in the order.",
                name(index),
                match pulleys.get(index).map(|pulley| pulley.side) {
                    Some(Side::Back) => "flat side",
                    _ => "ribbed side",
                }
            ),
            Self::SpanThrough { span, pulley } => format!(
                "The belt from {} to {} runs through {}. Change the order of the pulleys, or move {} out of the way.",
                name(span),
                next(span),
                name(pulley),
                name(pulley)
            ),
            Self::SpansCross(one, other) => format!(
                "The belt crosses itself: {} to {} cuts {} to {}. Change the order, or which side runs on them.",
                name(one),
                next(one),
                name(other),
                next(other)
            ),
        }
    }
}

fn overlap(layout: &Layout, one: usize, other: usize) -> String {
    let pulleys = &layout.pulleys;
    let (Some(first), Some(second)) = (pulleys.get(one), pulleys.get(other)) else {
        return "Two pulleys overlap. Check their centres and diameters.".into();
    };
    let apart = first.centre.point().distance(second.centre.point());
    let bodies = first.body_radius() + second.body_radius();
    let with_belt = if first.side == second.side {
        bodies
    } else {
        first.effective_radius(layout.back) + second.effective_radius(layout.back)
    };
    let (state, needed) = if apart <= bodies + 1e-9 {
        ("overlap", bodies)
    } else {
        ("leave no room for the belt between them", with_belt)
    };
    format!(
        "{} and {} {state}: their centres are {} apart and need more than {}. Check both centres and diameters.",
        label(pulleys, one),
        label(pulleys, other),
        millimetres(metres(apart)),
        millimetres(metres(needed))
    )
}

/// How a pulley is called in a sentence.
fn label(pulleys: &[Pulley], index: usize) -> String {
    match pulleys.get(index) {
        Some(pulley) if !pulley.name.trim().is_empty() => pulley.name.trim().to_owned(),
        _ => format!("pulley {}", index + 1),
    }
}
