//! Photosynthesis of what grows under water, over its whole depth.

use super::carbon::Carbon;
use crate::numerics::real::Real;

/// Light at which a saturated leaf is half way is never taken for less than this,
/// umol/(m2 s): so that no plant in no light gives no oxygen.
const LEAST_LIGHT: f64 = 1e-9;

/// What photosynthesis asks of light and carbon.
#[derive(Debug, Clone, Copy)]
pub(super) struct Canopy<R> {
    /// Light at the top, umol/(m2 s).
    pub(super) light: R,
    /// Extinction times depth.
    pub(super) extinction_depth: R,
    /// Carbon dioxide at half photosynthesis, mg/L.
    pub(super) carbon_half: R,
    /// Carbon dioxide at which it stops, at saturation with oxygen, mg/L.
    pub(super) compensation: R,
    /// Bicarbonate that counts as carbon dioxide, for algae.
    pub(super) bicarbonate_weight: R,
    /// The same for plants that use it, in this light.
    pub(super) bicarbonate_lit: R,
}

/// One kind of plant.
#[derive(Debug, Clone, Copy)]
pub(super) struct StandResponse<R> {
    /// Of a gram in full light with all carbon, mg O2/(g h).
    pub(super) most: R,
    /// Oxygen for light while light alone limits, mg O2/(g h) per umol/(m2 s).
    pub(super) slope: R,
}

impl<R: Real> Canopy<R> {
    /// Share of full photosynthesis that carbon allows, without bicarbonate, with what
    /// lit plants take of it, and with what algae take.
    ///
    /// ```text
    /// f = max(0, A - G) / (A + KC),    A = CO2 + w HCO3,    G = g O/O*
    /// ```
    pub(super) fn fed(&self, carbon: &Carbon<R>, oxygen_share: R) -> Fed<R> {
        let stop = self.compensation * oxygen_share;
        let by = |weight: R| {
            let usable = carbon.dioxide + carbon.bicarbonate * weight;
            (usable - stop).positive_part() / (usable + self.carbon_half)
        };
        Fed {
            by_dioxide: by(R::splat(0.0)),
            by_bicarbonate: by(self.bicarbonate_lit),
            of_algae: by(self.bicarbonate_weight),
        }
    }

    /// Oxygen of a gram, spread evenly over the depth, mg/(g h).
    ///
    /// ```text
    /// N = p/kz ln((K + I0) / (K + I0 e^-kz)),    p = P f,    K = p / a
    /// ```
    ///
    /// The mean over depth of a hyperbola in light whose slope `a` does not depend on
    /// carbon: so carbon and light limit together, and no light is used twice.
    pub(super) fn oxygen(&self, stand: &StandResponse<R>, fed: R) -> R {
        let most = stand.most * fed;
        let half = (most / stand.slope).max(R::splat(LEAST_LIGHT));
        let bottom = self.light * (-self.extinction_depth).exp();
        let within = ((half + self.light) / (half + bottom)).ln();
        most / self.extinction_depth * within
    }

    /// The same where a share of the plants uses bicarbonate.
    pub(super) fn mixed(&self, stand: &StandResponse<R>, fed: &Fed<R>, users: f64) -> R {
        self.oxygen(stand, fed.by_bicarbonate) * users
            + self.oxygen(stand, fed.by_dioxide) * (1.0 - users)
    }
}

/// Shares of full photosynthesis.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fed<R> {
    pub(super) by_dioxide: R,
    pub(super) by_bicarbonate: R,
    pub(super) of_algae: R,
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    #[test]
    fn the_mean_over_depth_is_that_of_thin_layers() {
        let canopy = Canopy {
            light: 80.0,
            extinction_depth: 2.5,
            carbon_half: 5.0,
            compensation: 0.06,
            bicarbonate_weight: 0.03,
            bicarbonate_lit: 0.01,
        };
        let stand = StandResponse {
            most: 15.0,
            slope: 0.075,
        };
        let (fed, layers) = (0.4, 100_000);
        let at = |layer: i32| {
            let share = (f64::from(layer) + 0.5) / f64::from(layers);
            let light = 80.0 * (-2.5 * share).exp();
            let most: f64 = 15.0 * fed;
            most * light / (most / 0.075 + light)
        };
        let mean: f64 = (0..layers).map(at).sum::<f64>() / f64::from(layers);
        assert_relative_eq!(canopy.oxygen(&stand, fed), mean, max_relative = 1e-9);
        assert_relative_eq!(canopy.oxygen(&stand, 0.0), 0.0);
    }
}
