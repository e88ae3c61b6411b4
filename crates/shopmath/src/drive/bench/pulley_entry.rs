//! What is entered about one pulley; what each entry changes is told by [`super::entry`].

/// An entry of a pulley.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PulleyEntry {
    /// Its name.
    Name,
    /// Its centre, to the right, millimetre.
    Across,
    /// Its centre, up, millimetre.
    Up,
    /// Effective or outside diameter, millimetre.
    Diameter,
    /// A string laid once round the rim, millimetre.
    Around,
    /// Turns per turn of pulley 1.
    Ratio,
    /// A tape from the first other pulley, centre to centre, millimetre.
    FirstDistance,
    /// A tape from the second.
    SecondDistance,
    /// The pivot of the arm that carries it, to the right, millimetre.
    PivotAcross,
    /// The pivot, up, millimetre.
    PivotUp,
    /// The arm's low stop, degrees from the right, anticlockwise.
    LowStop,
    /// The arm's high stop.
    HighStop,
    /// What its accessory takes: a torque, a power, or current and voltage.
    Load,
}

impl PulleyEntry {
    /// The entry that shows what this one sets: a string round the rim and a speed ratio both give the
    /// diameter, every other entry shows itself.
    ///
    /// ```
    /// use shopmath::drive::bench::entry::PulleyEntry;
    /// assert_eq!(PulleyEntry::Around.sets(), PulleyEntry::Diameter);
    /// assert_eq!(PulleyEntry::Up.sets(), PulleyEntry::Up);
    /// ```
    #[must_use]
    pub fn sets(self) -> Self {
        match self {
            Self::Around | Self::Ratio => Self::Diameter,
            entry => entry,
        }
    }

    /// Whether the drive has it: a measure can be left out, and changes nothing by itself.
    ///
    /// ```
    /// use shopmath::drive::bench::entry::PulleyEntry;
    /// assert!(PulleyEntry::Diameter.is_of_drive() && PulleyEntry::Load.is_of_drive());
    /// assert!(!PulleyEntry::Around.is_of_drive() && !PulleyEntry::SecondDistance.is_of_drive());
    /// ```
    #[must_use]
    pub fn is_of_drive(self) -> bool {
        !matches!(
            self,
            Self::Around | Self::Ratio | Self::FirstDistance | Self::SecondDistance
        )
    }

    /// Whether it is of the tensioner's arm.
    ///
    /// ```
    /// use shopmath::drive::bench::entry::PulleyEntry;
    /// assert!(PulleyEntry::PivotUp.is_of_arm() && PulleyEntry::LowStop.is_of_arm());
    /// assert!(!PulleyEntry::Up.is_of_arm());
    /// ```
    #[must_use]
    pub fn is_of_arm(self) -> bool {
        matches!(self, Self::PivotAcross | Self::PivotUp | Self::LowStop | Self::HighStop)
    }
}
