//! The rates of change of a tank between two events.

use super::algae::AlgalFilm;
use super::clock::{Settling, floating_growing};
use super::floating::FloatingStand;
use super::inputs::Conditions;
use super::nitrification::Oxidiser;
use super::state::{COUPLED_STATES, STATES, State};
use super::submerged::{FastStand, SlowStand, Surroundings};
use crate::numerics::rodas::{System, difference_jacobian};
use crate::parameters::Parameters;
use crate::plants::shade::{mean_light, transmission};
use crate::state::AMMONIA_PER_PROTEIN;
use crate::substrate::release::{Bed, Passage, Pools, Release, release};
use crate::units::Temperature;
use crate::water::stoichiometry::alkalinity_per_nitrogen;
use crate::water::{Solute, diffusivity};

/// Diffusion of ammonium in water at a temperature over that at 25 C.
fn ammonium_mobility(temperature_c: f64) -> f64 {
    let at = |celsius| diffusivity(Solute::Ammonium, Temperature::from_celsius(celsius));
    at(temperature_c) / at(25.0)
}

/// The bed of a tank for the release function.
pub(super) fn bed(parameters: &Parameters<f64>, conditions: &Conditions) -> Bed {
    let (soil, cap) = (&parameters.soil, &parameters.cap);
    Bed {
        soil_depth_m: conditions.soil_depth_m,
        soil_porosity: soil.porosity,
        soil_dry_bulk_density_kg_m3: soil.dry_bulk_density,
        ammonium_kd_l_kg: soil.ammonium_kd,
        cap_depth_m: conditions.cap_depth_m,
        cap_porosity: cap.porosity,
        cap_retardation: cap.retardation,
        ammonium_diffusivity_m2_d: cap.ammonium_diffusivity
            * ammonium_mobility(conditions.temperature_c),
        enhancement: cap.enhancement,
        mineralisation_25_c_per_d: soil.mineralisation,
        temperature_c: conditions.temperature_c,
    }
}

/// Days on which things started, since filling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Starts {
    /// The last cap was laid.
    pub(super) cap: f64,
    /// The groups were planted, on the average of their mass.
    pub(super) floating: f64,
    pub(super) fast: f64,
    pub(super) slow: f64,
}

/// A tank between two events.
#[derive(Debug, Clone, Copy)]
pub(super) struct Model {
    parameters: Parameters<f64>,
    conditions: Conditions,
    starts: Starts,
    passage: Passage,
    surface_light_umol_m2_s: f64,
    ammonia_oxidiser: Oxidiser,
    nitrite_oxidiser: Oxidiser,
    pub(super) floating: FloatingStand,
    pub(super) fast: FastStand,
    slow: SlowStand,
    algae: AlgalFilm,
}

/// What depends on time alone.
pub(super) struct Moment {
    rise: f64,
    floating: f64,
    fast: Settling,
    slow: Settling,
}

impl Model {
    /// A tank whose last `clean_cap_m` of cap were laid clean at `starts.cap`.
    pub(super) fn new(
        parameters: &Parameters<f64>,
        conditions: &Conditions,
        starts: Starts,
        clean_cap_m: f64,
    ) -> Self {
        let bed = bed(parameters, conditions);
        Self {
            parameters: *parameters,
            conditions: *conditions,
            starts,
            passage: Passage {
                rise_d: bed.rise_d(clean_cap_m),
                ..Passage::new(&bed)
            },
            surface_light_umol_m2_s: parameters.lamp.level * conditions.light_umol_m2_s,
            ammonia_oxidiser: Oxidiser::of_ammonia(&parameters.nitrifiers, conditions),
            nitrite_oxidiser: Oxidiser::of_nitrite(&parameters.nitrifiers, conditions),
            floating: FloatingStand::new(parameters, conditions),
            fast: FastStand::new(parameters, conditions),
            slow: SlowStand::new(parameters, conditions),
            algae: AlgalFilm::new(parameters, conditions),
        }
    }

    pub(super) fn moment(&self, day: f64) -> Moment {
        let since = |start: f64| day - start;
        let shared = &self.parameters.submerged;
        let settling = |start| Settling::after(since(start), shared.rooting, shared.lag);
        Moment {
            rise: self.rise(day),
            floating: floating_growing(since(self.starts.floating)),
            fast: settling(self.starts.fast),
            slow: settling(self.starts.slow),
        }
    }

    /// Share of the steady release that the cap lets through on a day.
    pub(super) fn rise(&self, day: f64) -> f64 {
        self.passage.rise(day - self.starts.cap)
    }

    /// What the bed gives off, with what the cap lets through by now.
    pub(super) fn release(&self, rise: f64, state: &State) -> Release {
        let pools = Pools {
            labile_g_m2: state.labile_n,
            mineral_g_m2: state.soil_n,
        };
        release(&self.passage, &pools, state.ammonia, rise)
    }

    /// Mean light in the water below the floaters, umol/(m2 s).
    ///
    /// ```text
    /// layers = (F + F_fixing) / F_full,   k z = kW z + kP (S + G) + kA A
    /// ```
    pub(super) fn light(&self, state: &State) -> f64 {
        let parameters = &self.parameters;
        let floaters = state.floating + self.conditions.fixing_g_m2;
        let layers = floaters / parameters.floating.closed_layer;
        let passed = transmission(layers, parameters.floating.absorptance);
        let extinction_depth = parameters.water.extinction * self.conditions.depth_m
            + parameters.submerged.extinction * (state.fast + state.slow)
            + parameters.algae.extinction * state.algae;
        mean_light(passed * self.surface_light_umol_m2_s, extinction_depth)
    }

    /// Floaters that draw their nitrogen from the air, g dry/m2.
    pub(super) fn fixing_g_m2(&self) -> f64 {
        self.conditions.fixing_g_m2
    }

    /// Nitrogen in the tank and lost from it, less what was added since
    /// filling, g N/m2: the same at all times.
    pub(super) fn nitrogen(&self, state: &State) -> f64 {
        let dissolved = state.ammonia + state.nitrite + state.nitrate;
        state.labile_n
            + state.soil_n
            + dissolved * self.conditions.depth_m
            + state.floating_n
            + state.fast_n
            + self.parameters.slow.tissue_nitrogen * state.slow
            + self.parameters.algae.tissue_nitrogen * state.algae
            + state.denitrified_n
            + state.harvested_n
            + state.detritus_n
            - state.added_n
    }

    /// Rates of change of every state, per day.
    ///
    /// ```text
    /// dTAN = ((1 - x) j + feed + returned - taken - rA) / z
    /// dNO2 = (rA - rN - taken - v NO2) / z
    /// dNO3 = (x j + rN - taken - v NO3) / z
    /// dP   = (p max(j, 0) + feed + returned - taken) / z
    /// ```
    ///
    /// `x` share of the release that the cap's oxic top oxidises, `z` water volume over
    /// floor area, `v` velocity of denitrification, `rA`
    /// and `rN` oxidation of ammonia and nitrite.
    pub(super) fn change(&self, moment: &Moment, state: &State) -> State {
        let water = &self.parameters.water;
        let bed = self.release(moment.rise, state);
        let surroundings = Surroundings {
            light: self.light(state),
            pore_water_mg_l: bed.pore_water_mg_l,
        };
        let floating = self.floating.change(state, moment.floating);
        let fast = self.fast.change(state, &surroundings, &moment.fast);
        let slow = self.slow.change(state, &surroundings, &moment.slow);
        let algae = self.algae.change(state, surroundings.light);
        let living = floating.flow + fast.flow + slow.flow + algae.flow;

        let nitritation = self
            .ammonia_oxidiser
            .oxidation(state.ammonia, state.ammonia_oxidisers);
        let nitratation = self
            .nitrite_oxidiser
            .oxidation(state.nitrite, state.nitrite_oxidisers);
        let nitrite_lost = water.denitrification * state.nitrite;
        let nitrate_lost = water.denitrification * state.nitrate;

        let feed = self.conditions.feed_g_m2_d;
        let fed_n = feed * self.conditions.feed_protein * AMMONIA_PER_PROTEIN;
        let dissolved_n = living.dead_n * water.dissolved_share;
        let bed_p = self.parameters.soil.phosphorus_per_nitrogen * bed.flux_g_m2_d.max(0.0);
        let gained_p = bed_p + water.feed_phosphorus * feed + living.dead_p * water.dissolved_share;

        let oxidised_in_cap = self.parameters.cap.oxidised_share * bed.flux_g_m2_d.max(0.0);
        let per_litre = |amount: f64| amount / self.conditions.depth_m;
        State {
            labile_n: -bed.mineralisation_g_m2_d,
            soil_n: bed.mineralisation_g_m2_d - bed.flux_g_m2_d - living.taken_from_soil,
            ammonia: per_litre(
                bed.flux_g_m2_d - oxidised_in_cap + fed_n + dissolved_n + living.returned_n
                    - living.taken.ammonia
                    - nitritation.nitrogen,
            ),
            nitrite: per_litre(
                nitritation.nitrogen - nitratation.nitrogen - living.taken.nitrite - nitrite_lost,
            ),
            nitrate: per_litre(
                oxidised_in_cap + nitratation.nitrogen - living.taken.nitrate - nitrate_lost,
            ),
            phosphate: per_litre(gained_p - living.taken_p),
            ammonia_oxidisers: nitritation.cells,
            nitrite_oxidisers: nitratation.cells,
            floating: floating.mass,
            floating_n: floating.nitrogen,
            fast: fast.mass,
            fast_n: fast.nitrogen,
            slow: slow.mass,
            algae: algae.mass,
            released_n: bed.flux_g_m2_d,
            denitrified_n: nitrite_lost + nitrate_lost,
            harvested_n: living.harvested_n,
            detritus_n: living.dead_n - dissolved_n,
            added_n: fed_n,
            alkalinity_used: per_litre(nitritation.nitrogen + oxidised_in_cap)
                * alkalinity_per_nitrogen().meq_l(),
        }
    }
}

impl System<f64, STATES> for Model {
    fn coupled(&self) -> usize {
        COUPLED_STATES
    }

    fn rates(&self, day: f64, state: &[f64; STATES]) -> [f64; STATES] {
        let state = State::from_array(*state);
        self.change(&self.moment(day), &state).into_array()
    }

    fn jacobian(
        &self,
        day: f64,
        state: &[f64; STATES],
        rates: &[f64; STATES],
    ) -> [[f64; STATES]; STATES] {
        let moment = self.moment(day);
        difference_jacobian(state, rates, COUPLED_STATES, |shifted| {
            self.change(&moment, &State::from_array(*shifted))
                .into_array()
        })
    }
}
