//! What a run hands on: a tank on one of its days, and what its plants ask of light.

use super::inputs::Inputs;
use super::nitrification::oxidisers;
use super::running::Tank;
use super::submerged::{USUAL_CARBON_FACTOR, warmth};
use super::trajectory::Sample;
use crate::parameters::Parameters;
use crate::plants::shade::LightNeed;
use crate::state::DayState;
use crate::units::{Alkalinity, Concentration, Mass, MassRate, Share};

/// A tank as a run shows it at one moment.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, Planting, day_state, run};
/// use lentic::units::Share;
/// let tank = Inputs {
///     planting: Planting { cover: Share::from_percent(40.0), ..Planting::default() },
///     ..Inputs::reference()
/// };
/// let numbers = Parameters::<Band>::reference().central();
/// let trajectory = run(&tank, &numbers, 1)?;
/// let planted = day_state(&tank, &numbers, &trajectory.samples[0]);
/// assert!((planted.cover.percent() - 40.0).abs() < 1e-9);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn day_state(inputs: &Inputs, parameters: &Parameters<f64>, sample: &Sample) -> DayState {
    let (state, floor_m2) = (&sample.state, inputs.floor.m2());
    let (of_ammonia, of_nitrite) = oxidisers(inputs, parameters);
    let mass = |g_m2: f64| Mass::from_g(g_m2 * floor_m2);
    let rate = |g_m2_d: f64| MassRate::from_g_d(g_m2_d * floor_m2);
    let ammonia = of_ammonia.oxidation(state.ammonia, state.ammonia_oxidisers);
    let nitrite = of_nitrite.oxidation(state.nitrite, state.nitrite_oxidisers);
    let floaters = state.floating + sample.fixing_g_m2;
    DayState {
        day: sample.day,
        floating: mass(floaters),
        cover: Share::from_fraction(floaters / parameters.floating.closed_layer),
        fast: mass(state.fast),
        slow: mass(state.slow),
        algae: mass(state.algae),
        ammonia: Concentration::from_mg_l(state.ammonia),
        nitrite_n: Concentration::from_mg_l(state.nitrite),
        nitrate_n: Concentration::from_mg_l(state.nitrate),
        alkalinity_used: Alkalinity::from_meq_l(state.alkalinity_used),
        ammonia_oxidised: rate(ammonia.nitrogen),
        nitrite_oxidised: rate(nitrite.nitrogen),
        oxygen: inputs.oxygen,
        nitrogen_taken: rate(nitrogen_taken_g_m2_d(inputs, parameters, sample)),
    }
}

/// Nitrogen that well fed plants put into growth at the light of a moment, g/(m2 d);
/// slow growers are left out, as in the planting index.
///
/// ```text
/// max(0, rF) F QF + max(0, rS) S QS        Q as at planting
/// ```
fn nitrogen_taken_g_m2_d(inputs: &Inputs, parameters: &Parameters<f64>, sample: &Sample) -> f64 {
    let model = Tank::filled(inputs, parameters).model();
    let floating = model.floating.replete_growth_per_d().max(0.0);
    let fast = model.fast.replete_growth_per_d(sample.light_umol_m2_s);
    floating * sample.state.floating * parameters.floating.start_nitrogen
        + fast.max(0.0) * sample.state.fast * parameters.fast.start_nitrogen
}

/// What the two submerged groups ask of light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LightNeeds {
    /// Fast growers.
    pub fast: LightNeed,
    /// Slow growers.
    pub slow: LightNeed,
}

/// What submerged plants ask of light at a tank's temperature, without added
/// carbon dioxide.
///
/// # Source
/// Growth and loss of the start-up's own plants, with their sources in
/// [`parameters`](crate::parameters).
pub fn light_needs(inputs: &Inputs, parameters: &Parameters<f64>) -> LightNeeds {
    let (fast, slow) = (&parameters.fast, &parameters.slow);
    let warmth = warmth(inputs.temperature);
    let carbon = parameters.submerged.carbon_factor;
    LightNeeds {
        fast: LightNeed {
            growth_per_d: fast.growth * carbon * warmth,
            loss_per_d: fast.respiration + fast.death,
            half_umol_m2_s: fast.light_half,
        },
        slow: LightNeed {
            growth_per_d: slow.growth * carbon / USUAL_CARBON_FACTOR * warmth,
            loss_per_d: slow.respiration + slow.death,
            half_umol_m2_s: slow.light_half,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// At 25 C, where warmth is one: the growth, loss and half light of the plants listed.
    #[test]
    fn plants_ask_for_the_light_that_their_growth_and_loss_leave() {
        let mut parameters = Parameters::reference().central();
        parameters.submerged.carbon_factor = 0.3;
        parameters.fast.growth = 0.2;
        (parameters.fast.respiration, parameters.fast.death) = (0.02, 0.005);
        parameters.slow.growth = 0.04;
        (parameters.slow.respiration, parameters.slow.death) = (0.006, 0.001);
        let needs = light_needs(&Inputs::reference(), &parameters);
        assert_relative_eq!(needs.fast.growth_per_d, 0.06, max_relative = 1e-12);
        assert_relative_eq!(needs.fast.loss_per_d, 0.025, max_relative = 1e-12);
        // slow growth is given at the usual factor of 0.6: half of it is left
        assert_relative_eq!(needs.slow.growth_per_d, 0.02, max_relative = 1e-12);
        assert_relative_eq!(needs.slow.loss_per_d, 0.007, max_relative = 1e-12);
    }
}
