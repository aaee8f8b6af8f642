//! The numbers of one tank and one member of an ensemble, as the rates use them.

use super::canopy::{Canopy, StandResponse};
use super::gas::AirExchange;
use super::half_saturation::{
    AMMONIA_OXIDISER_HALF_MG_L, ANIMAL_HALF_MG_L, BED_HALF_MG_L, DEAD_HALF_MG_L,
    NITRITE_OXIDISER_HALF_MG_L, PLANT_HALF_MG_L,
};
use super::inputs::{Kept, NightInputs};
use super::numbers::numbers;
use super::rates::Rates;
use crate::air::demand;
use crate::numerics::lanes::{LANES, Lanes};
use crate::numerics::real::Real;
use crate::plants::shade::{mean_light, transmission};
use crate::state::DayState;
use crate::units::constants::molar_mass;
use crate::units::{Mass, MassRate};
use crate::water::oxygen;
use crate::water::stoichiometry::{
    AMMONIA_OXIDATION_OXYGEN, NITRITE_OXIDATION_OXYGEN, NitrogenForm,
};

/// Growth of photosynthesis per ten degrees (`janse_2005`).
const PHOTOSYNTHESIS_Q10: f64 = 1.2;
/// Temperature for which photosynthesis is given, C.
const REFERENCE_C: f64 = 25.0;
/// Oxygen for a mol of it per mol of light, mg/h per umol/(m2 s) absorbed on a square
/// metre.
const LIGHT_MG_O2_H: f64 = 3600.0 * 1e-6 * 1000.0 * molar_mass::O2;
/// Carbon dioxide per oxygen, by mass, mole for mole as in the respiration of sugar.
pub(super) const CARBON_PER_OXYGEN: f64 = molar_mass::CO2 / molar_mass::O2;
/// Growth of the decay of dead tissue per degree (`thomann_1972`, from memory).
const DEAD_THETA: f64 = 1.065;
/// Oxygen that a gram of tissue takes to decay, g: 0.4 of it carbon, mole for mole.
const OXYGEN_PER_TISSUE: f64 = 1.07;
/// Oxygen that a gram of feed takes to decay, g (judgement).
const OXYGEN_PER_FEED: f64 = 1.12;
/// Time in which a bed just flooded comes to use no more oxygen than an old one, d
/// (judgement: weeks).
const NEW_BED_D: f64 = 14.0;

numbers! {
    /// Rates in mg/(L h), clearances in 1/h. What takes oxygen is given as what it would
    /// take of endless oxygen.
    pub(super) struct Coefficients {
        /// Light below the floaters, umol/(m2 s).
        light,
        /// Light on the bed.
        bottom_light,
        /// Carbon dioxide at half photosynthesis, mg/L.
        carbon_half,
        /// Carbon dioxide at which photosynthesis stops, mg/L per mg/L of oxygen.
        compensation,
        /// Bicarbonate that counts as carbon dioxide, for algae.
        bicarbonate_weight,
        /// The same for plants that use it, in this light.
        bicarbonate_lit,
        /// Oxygen of fast plants in full light with all carbon, over extinction times depth.
        fast_most,
        /// Of slow plants.
        slow_most,
        /// Of algae.
        algae_most,
        /// Light at which fast plants are half way with all carbon, umol/(m2 s).
        fast_half_light,
        /// Of slow plants.
        slow_half_light,
        /// Of algae.
        algae_half_light,
        /// Share of what is fixed that becomes tissue.
        tissue_share,
        /// Carbon dioxide fixed per oxygen given off, mg/mg.
        fixed_carbon,
        /// Oxygen that floaters give to the water in the light.
        floating_oxygen,
        /// Submerged plants, g/L.
        submerged_g_l,
        /// Respiration of submerged plants with a full store.
        submerged_breath,
        /// Store at which it is half of that, mg/L.
        store_half,
        /// Respiration of floaters and algae.
        other_breath,
        /// Oxygen use of animals.
        animals,
        /// Oxygen use of dead matter and of what is left of the feed.
        dead,
        /// Oxygen use of the bed.
        bed,
        /// Carbon dioxide that the bed gives off, whether or not oxygen reaches it.
        bed_carbon,
        /// Oxygen that the ammonia oxidisers use.
        ammonia_oxidation,
        /// Oxygen that the nitrite oxidisers use.
        nitrite_oxidation,
        /// Oxygen from which it also leaves in bubbles of its own, mg/L.
        pearling_from,
        /// How fast it then leaves, 1/h.
        pearling,
        /// Alkalinity, mol/L.
        alkalinity_mol_l,
        /// Carbon dioxide in balance with the room, mg/L.
        room_carbon,
        /// Oxygen in balance with bubbles, mg/L.
        bubble_saturation,
        /// Clearance of oxygen by the surface, device off.
        still_oxygen,
        /// Clearance of carbon dioxide by the surface, device off.
        still_carbon,
        /// Film at the open surface, device off, m.
        still_film_m,
        /// Clearance of oxygen by the surface, device on.
        running_oxygen,
        /// Clearance of carbon dioxide by the surface, device on.
        running_carbon,
        /// Film at the open surface, device on, m.
        running_film_m,
        /// Clearance of oxygen by bubbles, device on.
        bubble_oxygen,
        /// Clearance of carbon dioxide by bubbles, device on.
        bubble_carbon,
    }
}

impl<R: Real> Coefficients<R> {
    pub(super) fn canopy(&self) -> Canopy<R> {
        Canopy {
            light: self.light,
            bottom_light: self.bottom_light,
            carbon_half: self.carbon_half,
            compensation: self.compensation,
        }
    }

    pub(super) fn fast(&self) -> StandResponse<R> {
        StandResponse {
            most: self.fast_most,
            half_light: self.fast_half_light,
        }
    }

    pub(super) fn slow(&self) -> StandResponse<R> {
        StandResponse {
            most: self.slow_most,
            half_light: self.slow_half_light,
        }
    }

    pub(super) fn algae(&self) -> StandResponse<R> {
        StandResponse {
            most: self.algae_most,
            half_light: self.algae_half_light,
        }
    }
}

impl Coefficients<f64> {
    pub(super) fn of(inputs: &NightInputs, rates: &Rates<f64>) -> Self {
        let litres = inputs.water.litres();
        let per_litre = |rate: MassRate| rate.mg_h() / litres;
        let state = &inputs.state;
        let submerged = submerged(inputs);
        let (fixing, using) = (&rates.photosynthesis, &rates.oxygen_use);
        let warmth = photosynthesis_warmth(inputs);
        let breath = |dry: Mass, rate: f64| {
            demand::plants_in_the_dark(dry, inputs.temperature, rate).mg_h() / litres
        };
        let saturation = oxygen::saturation(inputs.temperature, inputs.pressure).mg_l();
        let at_saturation = |half_mg_l| endless(half_mg_l, saturation);
        let oxidising = |rate, half_mg_l| per_litre(rate) * endless(half_mg_l, state.oxygen.mg_l());
        let depth = extinction_depth(inputs, rates);
        let light = light_below_floaters(inputs, rates);
        let lit = |dry: Mass, most: f64| dry.g() / litres * most * warmth / depth;
        let half_light = |most: f64, extinction: f64| {
            most * warmth / (LIGHT_MG_O2_H * fixing.light_yield * extinction)
        };
        let plants = rates.shade.plant_extinction;
        let tissue = carbon_fixed(fixing.tissue_share, inputs);
        let bed = per_litre(demand::bed(inputs.floor, inputs.temperature, using.bed))
            * bed_youth(state, rates);
        let air = AirExchange::of(inputs, rates);
        Self {
            light,
            bottom_light: light * (-depth).exp(),
            carbon_half: fixing.carbon_half,
            compensation: fixing.compensation / saturation,
            bicarbonate_weight: fixing.bicarbonate_weight,
            bicarbonate_lit: fixing.bicarbonate_weight
                * switched_on(light_in_water(inputs, rates), fixing.bicarbonate_light),
            fast_most: lit(fast_in_water(inputs), fixing.fast),
            slow_most: lit(state.slow, fixing.slow),
            algae_most: lit(state.algae, fixing.algae),
            fast_half_light: half_light(fixing.fast, plants),
            slow_half_light: half_light(fixing.slow, plants),
            algae_half_light: half_light(fixing.algae, rates.shade.algae_extinction),
            tissue_share: fixing.tissue_share,
            fixed_carbon: tissue * CARBON_PER_OXYGEN,
            floating_oxygen: floating_oxygen_mg_h(inputs, rates) / litres,
            submerged_g_l: submerged.g() / litres,
            submerged_breath: breath(submerged, using.submerged) * at_saturation(PLANT_HALF_MG_L),
            store_half: (using.submerged * using.store * submerged.g() / litres)
                .max(f64::MIN_POSITIVE),
            other_breath: (breath(state.floating, using.floating) * using.floater_share
                + breath(state.algae, using.algae))
                * at_saturation(PLANT_HALF_MG_L),
            animals: per_litre(at_rest(inputs))
                * animal_factor(inputs, rates)
                * at_saturation(ANIMAL_HALF_MG_L),
            dead: per_litre(dead_matter(inputs, rates)) * at_saturation(DEAD_HALF_MG_L),
            bed: bed * at_saturation(BED_HALF_MG_L),
            bed_carbon: bed * using.bed_quotient * CARBON_PER_OXYGEN,
            ammonia_oxidation: oxidising(state.ammonia_oxidised, AMMONIA_OXIDISER_HALF_MG_L)
                * AMMONIA_OXIDATION_OXYGEN,
            nitrite_oxidation: oxidising(state.nitrite_oxidised, NITRITE_OXIDISER_HALF_MG_L)
                * NITRITE_OXIDATION_OXYGEN,
            pearling_from: rates.aeration.pearling_from * saturation,
            pearling: rates.aeration.pearling,
            alkalinity_mol_l: inputs.alkalinity.meq_l() * 1e-3,
            room_carbon: air.room_carbon_mg_l,
            bubble_saturation: air.bubble_saturation_mg_l,
            still_oxygen: air.still.oxygen,
            still_carbon: air.still.carbon,
            still_film_m: air.still.film_m,
            running_oxygen: air.running.oxygen,
            running_carbon: air.running.carbon,
            running_film_m: air.running.film_m,
            bubble_oxygen: air.running.bubble_oxygen,
            bubble_carbon: air.running.bubble_carbon,
        }
    }
}

/// Uptake of endless oxygen over that at a level, `(K + C) / C`.
fn endless(half_mg_l: f64, level_mg_l: f64) -> f64 {
    (half_mg_l + level_mg_l) / level_mg_l
}

/// Carbon fixed per oxygen given off, mol/mol, where a share of it becomes tissue.
///
/// ```text
/// (1 - y) + y / PQ
/// ```
fn carbon_fixed(tissue_share: f64, inputs: &NightInputs) -> f64 {
    let state = &inputs.state;
    let form = if state.ammonia > state.nitrite_n + state.nitrate_n {
        NitrogenForm::Ammonium
    } else {
        NitrogenForm::Nitrate
    };
    1.0 - tissue_share + tissue_share / form.photosynthetic_quotient()
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
    1.0 + rates.oxygen_use.new_bed * (-state.day / NEW_BED_D).exp()
}

/// Fast growers' leaves under water.
fn fast_in_water(inputs: &NightInputs) -> Mass {
    inputs.state.fast * (1.0 - inputs.emergent.fraction())
}

/// All that grows under water but algae.
pub(super) fn submerged(inputs: &NightInputs) -> Mass {
    fast_in_water(inputs) + inputs.state.slow
}

fn animal_factor(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    if inputs.feed > MassRate::ZERO {
        rates.oxygen_use.fed
    } else {
        rates.oxygen_use.swimming
    }
}

/// Oxygen use of what dies and of what animals leave of their feed.
///
/// ```text
/// d 1.07 1.065^(T - 20) M + 1.12 u F
/// ```
fn dead_matter(inputs: &NightInputs, rates: &Rates<f64>) -> MassRate {
    let state = &inputs.state;
    let living = submerged(inputs) + state.floating + state.algae;
    let warmth = DEAD_THETA.powf(inputs.temperature.celsius() - 20.0);
    let dying = MassRate::from_g_d(rates.oxygen_use.dead * living.g() * warmth);
    dying * OXYGEN_PER_TISSUE + inputs.feed * (OXYGEN_PER_FEED * rates.oxygen_use.feed_left)
}

fn photosynthesis_warmth(inputs: &NightInputs) -> f64 {
    PHOTOSYNTHESIS_Q10.powf((inputs.temperature.celsius() - REFERENCE_C) / 10.0)
}

/// Share of the use of bicarbonate that light switches on (judgement).
///
/// ```text
/// I^2 / (I^2 + I0^2)
/// ```
fn switched_on(light: f64, half: f64) -> f64 {
    light.powi(2) / (light.powi(2) + half.powi(2))
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
    rates.light * transmission(layers, rates.shade.floating_absorptance)
}

/// Extinction times the mean depth of the water.
pub(super) fn extinction_depth(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let floor_m2 = inputs.floor.m2();
    rates.shade.water_extinction * (inputs.water / inputs.floor).m()
        + rates.shade.plant_extinction * submerged(inputs).g() / floor_m2
        + rates.shade.algae_extinction * inputs.state.algae.g() / floor_m2
}

fn floating_oxygen_mg_h(inputs: &NightInputs, rates: &Rates<f64>) -> f64 {
    let fixing = &rates.photosynthesis;
    let lit = rates.light / (fixing.floating_light_half + rates.light);
    let given_off = inputs.state.floating.g() * fixing.floating * lit;
    given_off * fixing.floater_oxygen_share * photosynthesis_warmth(inputs)
}
