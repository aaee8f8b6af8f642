//! What depends on the time since filling or planting alone.

/// Time in which leaves grown in air stop dying, d (judgement).
const MELT_D: f64 = 10.0;

/// How far a submerged stand has settled in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Settling<S = f64> {
    /// Share of its roots that are established, `1 - exp(-t/rooting)`.
    pub(super) rooted: S,
    /// Share of full growth, `1 - exp(-t/lag)`.
    pub(super) growing: S,
    /// Share of the first day's melt, `exp(-t/10 d)`.
    pub(super) melting: S,
}

impl Settling {
    /// Some days after planting.
    pub(super) fn after(days: f64, rooting_d: f64, lag_d: f64) -> Self {
        Self {
            rooted: approach(days, rooting_d),
            growing: approach(days, lag_d),
            melting: (-(days / MELT_D)).exp(),
        }
    }

    /// How fast each part changes, 1/d.
    pub(super) fn pace(&self, rooting_d: f64, lag_d: f64) -> Self {
        Self {
            rooted: (1.0 - self.rooted) / rooting_d,
            growing: (1.0 - self.growing) / lag_d,
            melting: -self.melting / MELT_D,
        }
    }
}

/// What depends on time alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment<S = f64> {
    /// By which ammonium passes the bed, m/d.
    pub(super) ammonium_m_d: S,
    /// By which phosphate does, less what the oxic top catches, m/d.
    pub(super) phosphate_m_d: S,
    pub(super) floating: S,
    pub(super) fast: Settling<S>,
    pub(super) slow: Settling<S>,
}

impl Moment {
    /// Each part together with how fast it changes.
    pub(super) fn with_pace<S>(&self, pace: &Self, both: impl Fn(f64, f64) -> S) -> Moment<S> {
        let settling = |now: &Settling, pace: &Settling| Settling {
            rooted: both(now.rooted, pace.rooted),
            growing: both(now.growing, pace.growing),
            melting: both(now.melting, pace.melting),
        };
        Moment {
            ammonium_m_d: both(self.ammonium_m_d, pace.ammonium_m_d),
            phosphate_m_d: both(self.phosphate_m_d, pace.phosphate_m_d),
            floating: both(self.floating, pace.floating),
            fast: settling(&self.fast, &pace.fast),
            slow: settling(&self.slow, &pace.slow),
        }
    }
}

/// How near a start that takes `scale_d` is to its end, `1 - exp(-t/scale)`.
pub(super) fn approach(days: f64, scale_d: f64) -> f64 {
    1.0 - (-(days / scale_d)).exp()
}
