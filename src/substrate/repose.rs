//! How steep sand stands.

/// What the grains of a cap look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GrainShape {
    /// Worn round, as dune, beach and most filter sand.
    Rounded,
    /// Sharp, as crushed rock, slag and blasting grit.
    Angular,
}

impl GrainShape {
    /// The slope above which the cap is warned of, degrees.
    ///
    /// Dry and fully under water alike; only damp sand stands steeper.
    ///
    /// # Source
    /// Rounded grains about 25 (Kleinhans et al. 2011, which gives angular ones
    /// about 40); sand friction 34 +/- 2 from avalanches in a centrifuge, taken
    /// for angular grains to be on the careful side: judgement.
    pub const fn repose_degrees(self) -> f64 {
        match self {
            Self::Rounded => 25.0,
            Self::Angular => 34.0,
        }
    }
}
