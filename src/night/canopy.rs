//! Photosynthesis of what grows under water, over its whole depth.

use super::carbon::{Carbon, CarbonSlopes};
use crate::numerics::real::Real;

/// Light at which a saturated leaf is half way is never taken for less than this,
/// umol/(m2 s): so that no plant in no light gives no oxygen.
const LEAST_LIGHT: f64 = 1e-9;

/// What photosynthesis asks of light and carbon.
#[derive(Debug, Clone, Copy)]
pub(super) struct Canopy<R> {
    /// Light at the top, umol/(m2 s).
    pub(super) light: R,
    /// Light at the bottom.
    pub(super) bottom_light: R,
    /// Carbon dioxide at half photosynthesis, mg/L.
    pub(super) carbon_half: R,
    /// Carbon dioxide at which it stops, mg/L per mg/L of oxygen.
    pub(super) compensation: R,
}

/// One kind of plant.
#[derive(Debug, Clone, Copy)]
pub(super) struct StandResponse<R> {
    /// Oxygen of all of it in full light with all carbon, over extinction times depth,
    /// mg/(L h).
    pub(super) most: R,
    /// Light at which it is half way with all carbon, umol/(m2 s).
    pub(super) half_light: R,
}

/// Share of full photosynthesis that carbon allows, with its slopes.
#[derive(Debug, Clone, Copy)]
pub(super) struct FedSlopes<R> {
    pub(super) fed: R,
    /// With oxygen, 1/(mg/L).
    pub(super) by_oxygen: R,
    /// With all inorganic carbon, 1/(mg/L).
    pub(super) by_carbon: R,
}

impl<R: Real> Canopy<R> {
    /// Share of full photosynthesis that carbon allows, where bicarbonate counts so much.
    ///
    /// ```text
    /// f = max(0, A - G) / (A + KC),    A = CO2 + w HCO3,    G = g O/O*
    /// ```
    pub(super) fn fed(&self, carbon: &Carbon<R>, oxygen: R, weight: R) -> R {
        let usable = carbon.dioxide + carbon.bicarbonate * weight;
        (usable - self.compensation * oxygen).positive_part() / (usable + self.carbon_half)
    }

    /// The same with its slopes.
    pub(super) fn fed_slopes(
        &self,
        (carbon, slopes): (&Carbon<R>, &CarbonSlopes<R>),
        oxygen: R,
        weight: R,
    ) -> FedSlopes<R> {
        let zero = R::splat(0.0);
        let usable = carbon.dioxide + carbon.bicarbonate * weight;
        let usable_slope = slopes.dioxide + slopes.bicarbonate * weight;
        let over = usable - self.compensation * oxygen;
        let inverse = R::splat(1.0) / (usable + self.carbon_half);
        let fed = over.positive_part() * inverse;
        FedSlopes {
            fed,
            by_oxygen: over.if_positive(-self.compensation * inverse, zero),
            by_carbon: over.if_positive(usable_slope * fed.complement() * inverse, zero),
        }
    }

    /// Oxygen of a stand, spread evenly over the depth, mg/(L h).
    ///
    /// ```text
    /// N = p/kz ln((K + I0) / (K + I0 e^-kz)),    p = P f,    K = p / a
    /// ```
    ///
    /// The mean over depth of a hyperbola in light whose slope `a` does not depend on
    /// carbon: so carbon and light limit together, and no light is used twice.
    pub(super) fn oxygen(&self, stand: &StandResponse<R>, fed: R) -> R {
        let half = (stand.half_light * fed).max(R::splat(LEAST_LIGHT));
        let within = ((half + self.light) / (half + self.bottom_light)).ln();
        stand.most * fed * within
    }

    /// Its slope with the share that carbon allows.
    pub(super) fn oxygen_slope(&self, stand: &StandResponse<R>, fed: R) -> R {
        let half = (stand.half_light * fed).max(R::splat(LEAST_LIGHT));
        let (top, bottom) = (half + self.light, half + self.bottom_light);
        let shift = half * (bottom - top) / (top * bottom);
        stand.most * ((top / bottom).ln() + shift)
    }
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    const DEPTH: f64 = 2.5;
    const STAND: StandResponse<f64> = StandResponse {
        most: 15.0 / DEPTH,
        half_light: 15.0 / 0.075,
    };

    fn canopy() -> Canopy<f64> {
        Canopy {
            light: 80.0,
            bottom_light: 80.0 * (-DEPTH).exp(),
            carbon_half: 5.0,
            compensation: 0.06 / 8.4,
        }
    }

    #[test]
    fn the_mean_over_depth_is_that_of_thin_layers() {
        let (fed, layers) = (0.4, 100_000);
        let at = |layer: i32| {
            let share = (f64::from(layer) + 0.5) / f64::from(layers);
            let light = 80.0 * (-DEPTH * share).exp();
            let most: f64 = 15.0 * fed;
            most * light / (most / 0.075 + light)
        };
        let mean: f64 = (0..layers).map(at).sum::<f64>() / f64::from(layers);
        assert_relative_eq!(canopy().oxygen(&STAND, fed), mean, max_relative = 1e-9);
        assert_relative_eq!(canopy().oxygen(&STAND, 0.0), 0.0);
    }

    #[test]
    fn the_slope_is_that_of_small_differences() {
        let at = |fed: f64| canopy().oxygen(&STAND, fed);
        for fed in [0.01, 0.2, 0.9] {
            let expected = (at(fed + 1e-5) - at(fed - 1e-5)) / 2e-5;
            let slope = canopy().oxygen_slope(&STAND, fed);
            assert_relative_eq!(slope, expected, max_relative = 1e-6);
        }
    }
}
