//! What a run hands on: a tank on one of its days, and what its plants ask of light.

use super::flow::GroupChange;
use super::inputs::Inputs;
use super::running::RunningTank;
use super::submerged::{RESTING_SHARE, endless_light_growth, warmth};
use super::trajectory::Sample;
use crate::parameters::Parameters;
use crate::plants::shade::{GROWTH_HOURS, LightNeed};
use crate::state::DayState;
use crate::units::{Alkalinity, Concentration, Mass, MassRate, Share};

/// A tank as a run shows it at one moment.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, PlantedMass, day_state, run};
/// use lentic::units::Share;
/// let tank = Inputs {
///     planting: PlantedMass { cover: Share::from_percent(40.0), ..PlantedMass::default() },
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
    let mass = |g_m2: f64| Mass::from_g(g_m2 * floor_m2);
    let rate = |g_m2_d: f64| MassRate::from_g_d(g_m2_d * floor_m2);
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
        ammonia_oxidised: rate(sample.ammonia_oxidised_g_m2_d),
        nitrite_oxidised: rate(sample.nitrite_oxidised_g_m2_d),
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
    let model = RunningTank::filled(inputs, parameters).model();
    let floating = model.floating.replete_growth_per_d().max(0.0);
    let fast = model.fast.replete_growth_per_d(sample.light_umol_m2_s);
    floating * sample.state.floating * parameters.floating.start_nitrogen
        + fast.max(0.0) * sample.state.fast * parameters.fast.start_nitrogen
}

/// How a stand grows at a moment, and what is taken of it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TakenStand {
    /// Growth less what dies and is breathed, before anything is taken, 1/d.
    pub growth_per_d: f64,
    /// Taken out, g dry/(m2 d).
    pub taken_g_m2_d: f64,
    /// Nitrogen taken out with it, g/(m2 d).
    pub taken_n_g_m2_d: f64,
}

/// The stands that are thinned and trimmed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Stands {
    /// Floaters that live on the water's nitrogen.
    pub floating: TakenStand,
    /// Fast submerged plants.
    pub fast: TakenStand,
}

/// How floaters and fast plants grow at a moment of a run, as fed and lit as they are then.
///
/// # Source
/// The rates of the model itself; a stand is settled by when it was planted on day 0.
pub fn stands(inputs: &Inputs, parameters: &Parameters<f64>, sample: &Sample) -> Stands {
    let model = RunningTank::filled(inputs, parameters).model();
    let state = &sample.state;
    let moment = model.moment_on(sample.day);
    let changes = model.plants(&moment, state, &model.surroundings(state), |stand| *stand);
    let stand = |mass: f64, content: f64, change: &GroupChange| {
        if mass <= 0.0 || content <= 0.0 {
            return TakenStand::default();
        }
        let taken_n_g_m2_d = change.flow.harvested_n;
        let taken_g_m2_d = taken_n_g_m2_d / content;
        TakenStand {
            growth_per_d: (change.mass + taken_g_m2_d) / mass,
            taken_g_m2_d,
            taken_n_g_m2_d,
        }
    };
    Stands {
        floating: stand(
            state.floating,
            state.floating_n / state.floating,
            &changes.floating,
        ),
        fast: stand(state.fast, state.fast_n / state.fast, &changes.fast),
    }
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
    let resting = fast.respiration * RESTING_SHARE;
    // what growth itself costs comes off the growth
    let kept = 1.0 - fast.respiration * (1.0 - RESTING_SHARE) / fast.growth;
    LightNeeds {
        fast: LightNeed {
            growth_per_d: endless_light_growth(fast, inputs.temperature, GROWTH_HOURS) * kept,
            loss_per_d: resting + fast.death,
            half_umol_m2_s: fast.light_half,
        },
        slow: LightNeed {
            growth_per_d: slow.growth * warmth(inputs.temperature),
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
        parameters.fast.growth = 0.06;
        (parameters.fast.respiration, parameters.fast.death) = (0.02, 0.005);
        parameters.fast.light_half = 50.0;
        parameters.slow.growth = 0.04;
        (parameters.slow.respiration, parameters.slow.death) = (0.006, 0.001);
        let needs = light_needs(&Inputs::reference(), &parameters);
        // twice 0.06 in endless light, 12/10 of it in 12 h, less 0.012/0.06 for growing
        assert_relative_eq!(needs.fast.growth_per_d, 0.144 * 0.8, max_relative = 1e-12);
        assert_relative_eq!(needs.fast.loss_per_d, 0.013, max_relative = 1e-12);
        assert_relative_eq!(needs.slow.growth_per_d, 0.04, max_relative = 1e-12);
        assert_relative_eq!(needs.slow.loss_per_d, 0.007, max_relative = 1e-12);
    }
}
