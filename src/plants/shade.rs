//! Light below floaters and within the water, and how long plants need it.

use crate::numerics::real::Scalar;

/// Hours of light for which growth rates are given.
pub const GROWTH_HOURS: f64 = 12.0;

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
/// use lentic::plants::shade::transmission;
/// assert!((transmission(0.5, 0.82) - 0.59_f64).abs() < 1e-12);
/// ```
///
/// # Limits
/// Leaves evenly spread in closed layers; a mat blown to one side lets more through.
pub fn transmission<R: Scalar>(layers: R, absorptance: R) -> R {
    transmission_by(layers, absorptance.complement().ln())
}

/// The same by the logarithm of the share that one layer lets through.
pub(crate) fn transmission_by<R: Scalar>(layers: R, log_passed: R) -> R {
    let one = R::splat(1.0);
    let cover = layers.min(one);
    let below = (log_passed * layers.max(one)).exp();
    cover.complement() + cover * below
}

/// Mean light over a depth in which it fades, from the light at its top and
/// extinction times depth.
///
/// ```text
/// I = I0 (1 - exp(-k z)) / (k z)
/// ```
///
/// # Source
/// Law of Beer and Lambert, averaged over the depth.
///
/// # Example
/// ```
/// use lentic::plants::shade::mean_light;
/// // 100 (1 - 1/e)
/// assert!((mean_light(100.0_f64, 1.0) - 63.2).abs() < 0.02);
/// ```
///
/// # Limits
/// Light straight from above; slanting and scattered light fades faster.
pub fn mean_light<R: Scalar>(top: R, extinction_depth: R) -> R {
    top * (-extinction_depth).exp().complement() / extinction_depth
}

/// What submerged plants need light for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LightNeed {
    /// Gross growth in full light of 12 h a day, all else as in the tank, 1/d.
    pub growth_per_d: f64,
    /// Loss to respiration and death, 1/d.
    pub loss_per_d: f64,
    /// Light at half growth, umol/(m2 s).
    pub half_umol_m2_s: f64,
}

impl LightNeed {
    /// Hours of light a day with which growth just meets loss; none in the dark or
    /// where a whole day is not enough.
    ///
    /// ```text
    /// h = 12 l (K + I) / (mu I)
    /// ```
    ///
    /// # Source
    /// Growth after Janse 2005 (`janse_2005`), a lake model.
    ///
    /// # Example
    /// ```
    /// use lentic::plants::shade::LightNeed;
    /// // stems at 25 C without added carbon dioxide
    /// let need = LightNeed { growth_per_d: 0.18 * 0.6, loss_per_d: 0.02, half_umol_m2_s: 30.0 };
    /// assert!((need.break_even_hours(8.6).unwrap() - 10.0).abs() < 0.05);
    /// ```
    ///
    /// # Limits
    /// Growth stays in proportion to the hours of light; half a day of darkness and more is
    /// beyond what such models were made for.
    pub fn break_even_hours(&self, light_umol_m2_s: f64) -> Option<f64> {
        let lit = light_umol_m2_s / (self.half_umol_m2_s + light_umol_m2_s);
        let hours = GROWTH_HOURS * self.loss_per_d / (self.growth_per_d * lit);
        (hours <= 24.0).then_some(hours)
    }
}
