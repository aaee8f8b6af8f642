//! What depends on the time since filling or planting alone.

/// Time in which leaves grown in air stop dying, d (judgement).
const MELT_D: f64 = 10.0;

/// How far a submerged stand has settled in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Settling {
    /// Share of its roots that are established, `1 - exp(-t/rooting)`.
    pub(super) rooted: f64,
    /// Share of full growth, `1 - exp(-t/lag)`.
    pub(super) growing: f64,
    /// Share of the first day's melt, `exp(-t/10 d)`.
    pub(super) melting: f64,
}

impl Settling {
    pub(super) fn after(days: f64, rooting_d: f64, lag_d: f64) -> Self {
        Self {
            rooted: approach(days, rooting_d),
            growing: approach(days, lag_d),
            melting: (-(days / MELT_D)).exp(),
        }
    }
}

/// How near a start that takes `scale_d` is to its end, `1 - exp(-t/scale)`.
pub(super) fn approach(days: f64, scale_d: f64) -> f64 {
    1.0 - (-(days / scale_d)).exp()
}
