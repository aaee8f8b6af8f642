//! What depends on the time since filling or planting alone.

use crate::numerics::real::Real;

/// Time in which floaters start to grow, d (judgement).
const FLOATING_START_D: f64 = 2.0;
/// Time in which leaves grown in air stop dying, d (judgement).
const MELT_D: f64 = 10.0;

/// How far a submerged stand has settled in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Settling<R> {
    /// Share of its roots that are established, `1 - exp(-t/rooting)`.
    pub(super) rooted: R,
    /// Share of full growth, `1 - exp(-t/lag)`.
    pub(super) growing: R,
    /// Share of the first day's melt, `exp(-t/10 d)`.
    pub(super) melting: R,
}

impl<R: Real> Settling<R> {
    pub(super) fn after(days: R, rooting_d: R, lag_d: R) -> Self {
        Self {
            rooted: approach(days, rooting_d),
            growing: approach(days, lag_d),
            melting: (-(days / MELT_D)).exp(),
        }
    }
}

/// Share of full growth of floaters some days after they are put in,
/// `1 - exp(-t/2 d)`.
pub(super) fn floating_growing<R: Real>(days: R) -> R {
    approach(days, R::splat(FLOATING_START_D))
}

fn approach<R: Real>(days: R, scale_d: R) -> R {
    (-(days / scale_d)).exp().complement()
}
