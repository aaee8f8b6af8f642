//! How gas made in the soil leaves the bed.

use crate::finding::Status;

/// How gas leaves; it always does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GasRelease {
    /// Dissolved, by diffusion.
    Dissolved,
    /// As bubbles that push grains aside.
    BubblesPushingGrains,
    /// As bubbles through the pores.
    BubblesThroughPores,
}

impl GasRelease {
    /// Judges a bed by what it makes over what can leave dissolved, known to
    /// about a factor of ten, and by entry pressure over effective stress.
    ///
    /// # Source
    /// Judgement on the two ratios of [`gas`](crate::substrate::gas).
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::verdict::GasRelease;
    /// assert_eq!(GasRelease::judge(0.5, 3.0), GasRelease::Dissolved);
    /// assert_eq!(GasRelease::judge(5.0, 3.0), GasRelease::BubblesPushingGrains);
    /// assert_eq!(GasRelease::judge(5.0, 0.5), GasRelease::BubblesThroughPores);
    /// ```
    ///
    /// # Limits
    /// Says how gas leaves, never that it stays.
    pub fn judge(made_over_ceiling: f64, entry_ratio: f64) -> Self {
        if made_over_ceiling <= 1.0 {
            Self::Dissolved
        } else if entry_ratio > 1.0 {
            Self::BubblesPushingGrains
        } else {
            Self::BubblesThroughPores
        }
    }

    /// The status of this verdict: bubbles are worth knowing of, no more.
    pub const fn status(self) -> Status {
        match self {
            Self::Dissolved => Status::Ok,
            Self::BubblesPushingGrains | Self::BubblesThroughPores => Status::Note,
        }
    }
}
