//! The numbers of one tank and one member of an ensemble, as the rates use them.

use super::inputs::{Ceiling, Kept, NightInputs};
use super::numbers::numbers;
use super::rates::Rates;
use crate::air::{Bubbles, Clearance, Exchange, Surface, demand, plume};
use crate::design::Device;
use crate::numerics::lanes::{LANES, Lanes};
use crate::plants::shade::{mean_light, transmission};
use crate::state::DayState;
use crate::units::{Area, Flow, Mass, MassRate, Share, Velocity};
use crate::water::stoichiometry::{AMMONIA_OXIDATION_OXYGEN, NITRITE_OXIDATION_OXYGEN};
use crate::water::{Gas, carbon_dioxide, oxygen};

/// Growth of photosynthesis per ten degrees (`janse_2005`).
const PHOTOSYNTHESIS_Q10: f64 = 1.2;
/// Temperature for which photosynthesis is given, C.
const REFERENCE_C: f64 = 25.0;
/// Extinction of light by algae, m2/g (`janse_2005`).
const ALGAE_EXTINCTION: f64 = 0.25;
/// Time in which a bed just flooded comes to use no more oxygen than an old one, d
/// (judgement: weeks).
const NEW_BED_D: f64 = 14.0;

numbers! {
    /// Rates in mg/(L h), clearances in 1/h.
    pub(super) struct Coefficients {
        /// Oxygen of submerged plants and algae in the light with all carbon.
        submerged_oxygen,
        /// Oxygen that floaters give to the water in the light.
        floating_oxygen,
        /// Respiration of plants and algae at saturation.
        plants,
        /// Oxygen use of animals at saturation.
        animals,
        /// Oxygen use of the bed at saturation.
        bed,
        /// Oxygen that the ammonia oxidisers use.
        ammonia_oxidation,
        /// Oxygen that the nitrite oxidisers use.
        nitrite_oxidation,
        /// Carbon dioxide at half photosynthesis, mg/L.
        carbon_half,
        /// Bicarbonate that counts as carbon dioxide.
        bicarbonate_weight,
        /// Carbon dioxide in balance with the room, mg/L.
        room_carbon,
        /// Oxygen in balance with bubbles, mg/L.
        bubble_saturation,
        /// Clearance of oxygen by the surface, device off.
        still_oxygen,
        /// Clearance of carbon dioxide by the surface, device off.
        still_carbon,
        /// Clearance of oxygen by the surface, device on.
        running_oxygen,
        /// Clearance of carbon dioxide by surface and bubbles, device on.
        running_carbon,
        /// Clearance of oxygen by bubbles, device on.
        bubble_oxygen,
    }
}

impl Coefficients<f64> {
    pub(super) fn of(inputs: &NightInputs, rates: &Rates<f64>) -> Self {
        let litres = inputs.water.litres();
        let per_litre = |rate: MassRate| rate.mg_h() / litres;
        let state = &inputs.state;
        let still = exchange(inputs, rates, false);
        let running = exchange(inputs, rates, true);
        let clearance = |exchange: &Exchange, gas| exchange.clearance(gas, inputs.temperature);
        let per_h = |flow: Flow| flow.l_h() / litres;
        let running_oxygen: Clearance = clearance(&running, Gas::Oxygen);
        let saturation = oxygen::saturation(inputs.temperature, inputs.pressure).mg_l();
        let room = Share::from_fraction(rates.room_carbon * 1e-6);
        Self {
            submerged_oxygen: submerged_oxygen_mg_h(inputs, rates) / litres,
            floating_oxygen: floating_oxygen_mg_h(inputs, rates) / litres,
            plants: plant_respiration_mg_h(inputs, rates) / litres,
            animals: per_litre(at_rest(inputs)) * rates.animal_factor,
            bed: per_litre(demand::bed(inputs.floor, inputs.temperature, rates.bed))
                * bed_youth(state, rates),
            ammonia_oxidation: per_litre(state.ammonia_oxidised) * AMMONIA_OXIDATION_OXYGEN,
            nitrite_oxidation: per_litre(state.nitrite_oxidised) * NITRITE_OXIDATION_OXYGEN,
            carbon_half: rates.carbon_half,
            bicarbonate_weight: rates.bicarbonate_weight,
            room_carbon: carbon_dioxide::air_equilibrium(inputs.temperature, inputs.pressure, room)
                .mg_l(),
            bubble_saturation: saturation * rates.beta,
            still_oxygen: per_h(clearance(&still, Gas::Oxygen).total()),
            still_carbon: per_h(clearance(&still, Gas::CarbonDioxide).total()),
            running_oxygen: per_h(running_oxygen.surface),
            running_carbon: per_h(clearance(&running, Gas::CarbonDioxide).total()),
            bubble_oxygen: per_h(running_oxygen.bubbles),
        }
    }
}

impl Coefficients<Lanes> {
    /// Eight members side by side, one in each lane.
    pub(super) fn packed(members: &[Coefficients<f64>; LANES]) -> Self {
        let values = members.map(|member| member.values());
        let mut place = 0;
        members[0].map(|_| {
            let lanes = std::array::from_fn(|lane| values[lane][place]);
            place += 1;
            Lanes(lanes)
        })
    }
}

impl Coefficients<f64> {
    fn values(&self) -> Vec<f64> {
        let mut values = Vec::new();
        self.map(|value| values.push(value));
        values
    }
}

/// Oxygen use of all animals at rest.
pub(super) fn at_rest(inputs: &NightInputs) -> MassRate {
    let of = |kept: &Kept| demand::fish_at_rest(kept.body, inputs.temperature) * kept.count;
    inputs.animals.iter().map(of).sum()
}

/// ```text
/// 1 + s exp(-t / 14 d)
/// ```
fn bed_youth(state: &DayState, rates: &Rates<f64>) -> f64 {
    1.0 + rates.new_bed * (-state.day / NEW_BED_D).exp()
}

/// Fast growers' leaves under water.
fn fast_in_water(inputs: &NightInputs) -> Mass {
    inputs.state.fast * (1.0 - inputs.emergent.fraction())
}

fn plant_respiration_mg_h(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let state = &inputs.state;
    let breathed =
        |dry: Mass, rate: f64| demand::plants_in_the_dark(dry, inputs.temperature, rate).mg_h();
    breathed(fast_in_water(inputs) + state.slow, rates.plant_dark) * rates.plant_share
        + breathed(state.floating, rates.plant_dark) * rates.floater_respiration_share
        + breathed(state.algae, rates.algae_dark)
}

fn photosynthesis_warmth(inputs: &NightInputs) -> f64 {
    PHOTOSYNTHESIS_Q10.powf((inputs.temperature.celsius() - REFERENCE_C) / 10.0)
}

/// Mean light in the water, umol/(m2 s).
///
/// ```text
/// k z = kW z + kP (S + G) + kA A
/// ```
pub(super) fn light_in_water(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let top = light_below_floaters(inputs, rates);
    mean_light(top, extinction_depth(inputs, rates))
}

pub(super) fn light_below_floaters(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let layers = inputs.state.cover.fraction();
    rates.light * transmission(layers, rates.floating_absorptance)
}

/// Extinction times the mean depth of the water.
pub(super) fn extinction_depth(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let state = &inputs.state;
    let floor_m2 = inputs.floor.m2();
    rates.water_extinction * (inputs.water / inputs.floor).m()
        + rates.plant_extinction * (fast_in_water(inputs) + state.slow).g() / floor_m2
        + ALGAE_EXTINCTION * state.algae.g() / floor_m2
}

/// ```text
/// P I / (K + I) 1.2^((T - 25)/10)      for each group, I the mean light in the water
/// ```
fn submerged_oxygen_mg_h(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let light = light_in_water(inputs, rates);
    let of = |dry: Mass, most: f64, half: f64| dry.g() * most * light / (half + light);
    let state = &inputs.state;
    let fast = of(
        fast_in_water(inputs),
        rates.fast_photosynthesis,
        rates.fast_light_half,
    );
    let slow = of(state.slow, rates.slow_photosynthesis, rates.slow_light_half);
    let algae = of(
        state.algae,
        rates.algae_photosynthesis,
        rates.algae_light_half,
    );
    (fast + slow + algae) * photosynthesis_warmth(inputs)
}

fn floating_oxygen_mg_h(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let lit = rates.light / (rates.floating_light_half + rates.light);
    let given_off = inputs.state.floating.g() * rates.floating_photosynthesis * lit;
    given_off * rates.floater_oxygen_share * photosynthesis_warmth(inputs)
}

/// The gas exchange of a tank with its device on or off.
fn exchange(inputs: &NightInputs, rates: &Rates<f64>, on: bool) -> Exchange {
    let flow = if on { inputs.flow } else { Flow::ZERO };
    let bubbles = Bubbles {
        air: flow,
        submergence: inputs.device_depth,
        efficiency_per_m: rates.bubble_efficiency,
        alpha: rates.alpha,
        beta: rates.beta,
    };
    let (rippled, bubbles) = match inputs.device {
        Device::None => (Share::ZERO, None),
        Device::AirStone | Device::SpongeFilter => (
            plume::rippled_share(flow, inputs.surface, rates.rippling_air),
            Some(bubbles),
        ),
        Device::Pump => (
            rippled_by_water(flow, inputs.surface, rates.rippling_water),
            None,
        ),
    };
    Exchange {
        area: inputs.surface,
        calm: match inputs.ceiling {
            Ceiling::Open => Surface::Open,
            Ceiling::Lid => Surface::Lidded,
        },
        calm_k600: Velocity::from_m_d(rates.calm_k600),
        rippled,
        rippled_k600: Velocity::from_m_d(rates.rippled_k600),
        floaters: inputs.state.covered(),
        mat_passage: Share::from_fraction(rates.mat_passage),
        bubbles: bubbles.filter(|_| on),
    }
}

/// Share of the surface that a pump ripples, growing smoothly with its flow
/// (judgement).
///
/// ```text
/// 1 - exp(-(Q / A) / q0)
/// ```
fn rippled_by_water(flow: Flow, surface: Area, rippling_l_min_m2: f64) -> Share {
    let l_min_m2 = flow.l_min() / surface.m2();
    Share::from_fraction(-(-l_min_m2 / rippling_l_min_m2).exp_m1())
}
