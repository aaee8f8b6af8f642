//! Light below floaters and within the water.

use crate::numerics::real::Real;

/// Share of the light that passes a cover of floaters.
///
/// ```text
/// 1 - c + c (1 - a)^L       c = min(1, F/F_full),   L = max(1, F/F_full)
/// ```
///
/// `layers` is `F/F_full`, the mass of floaters over that of one closed layer;
/// `absorptance` is `a`, the share that one layer takes.
///
/// # Source
/// Geometry; absorptance of green leaves 0.80-0.85 (from memory).
///
/// # Example
/// ```
/// use lentic::startup::light::transmission;
/// assert!((transmission(0.5, 0.82) - 0.59_f64).abs() < 1e-12);
/// ```
pub fn transmission<R: Real>(layers: R, absorptance: R) -> R {
    let one = R::splat(1.0);
    let cover = layers.min(one);
    let below = (absorptance.complement().ln() * layers.max(one)).exp();
    cover.complement() + cover * below
}

/// Mean light over a depth in which it fades, from the light at its top and
/// extinction times depth.
///
/// ```text
/// I = I0 (1 - exp(-k z)) / (k z)
/// ```
pub fn mean_light<R: Real>(top: R, extinction_depth: R) -> R {
    top * (-extinction_depth).exp().complement() / extinction_depth
}
