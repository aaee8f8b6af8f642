//! The rates of change of a tank between two events.

use super::algae::AlgalFilm;
use super::clock::{Settling, approach};
use super::daylight::Daylight;
use super::floating::FloatingStand;
use super::flow::Changes;
use super::habitat::{FromBelow, Habitat, Ways};
use super::inputs::Conditions;
use super::nitrification::Oxidiser;
use super::soil::{Breakdown, Freed, breakdown_warmth, pore_water};
use super::state::{COUPLED_STATES, STATES, State};
use super::submerged::{FastStand, SlowStand, Surroundings};
use super::uptake::Offer;
use crate::numerics::rodas::{System, difference_jacobian};
use crate::parameters::Parameters;
use crate::plants::shade::transmission;
use crate::state::AMMONIA_PER_PROTEIN;
use crate::substrate::release::{Bed, Conductance, Passage, Substance, sorbed_retardation};
use crate::units::Temperature;
use crate::water::stoichiometry::alkalinity_per_nitrogen;
use crate::water::{Solute, diffusivity};

/// Diffusion coefficient of phosphate in free water at 25 C, m2/d (from memory).
const PHOSPHATE_DIFFUSIVITY_M2_D: f64 = 0.83e-4;
/// Nitrogen in protein.
const NITROGEN_PER_PROTEIN: f64 = 0.16;
/// Equivalents of alkalinity that the oxidation of a mole of ammonia uses.
const EQUIVALENTS_PER_OXIDATION: f64 = 2.0;

/// Diffusion of ions in water at a temperature over that at 25 C.
fn mobility(temperature_c: f64) -> f64 {
    let at = |celsius| diffusivity(Solute::Ammonium, Temperature::from_celsius(celsius));
    at(temperature_c) / at(25.0)
}

/// How ammonium and phosphate get out of the bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Passages {
    pub(super) ammonium: Passage,
    pub(super) phosphate: Passage,
}

/// The same of the two solutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct OfEach {
    pub(super) ammonium: f64,
    pub(super) phosphate: f64,
}

impl Passages {
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let (soil, cap) = (&parameters.soil, &parameters.cap);
        let mobility = mobility(conditions.temperature_c);
        let bed = Bed {
            soil_depth_m: conditions.soil_depth_m,
            soil_porosity: soil.porosity,
            soil_dry_bulk_density_kg_m3: soil.dry_bulk_density,
            cap_depth_m: conditions.cap_depth_m,
            cap_porosity: cap.porosity,
            effective_grain_mm: cap.effective_grain,
            pore_exchange_per_d: cap.pore_exchange,
            enhancement: cap.enhancement,
        };
        let ammonium = Substance {
            diffusivity_m2_d: cap.ammonium_diffusivity * mobility,
            soil_kd_l_kg: soil.ammonium_kd,
            cap_retardation: cap.retardation,
        };
        let phosphate = Substance {
            diffusivity_m2_d: PHOSPHATE_DIFFUSIVITY_M2_D * mobility,
            soil_kd_l_kg: soil.phosphate_kd,
            cap_retardation: sorbed_retardation(
                cap.porosity,
                cap.phosphate_kd,
                cap.effective_grain,
            ),
        };
        Self {
            ammonium: Passage::new(&bed, &ammonium),
            phosphate: Passage::new(&bed, &phosphate),
        }
    }

    /// Share of the steady release that a cap lets through some days after it was laid.
    pub(super) fn rise(&self, clean_cap_m: OfEach, days: f64) -> OfEach {
        OfEach {
            ammonium: self.ammonium.rise(clean_cap_m.ammonium, days),
            phosphate: self.phosphate.rise(clean_cap_m.phosphate, days),
        }
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
    /// Depth of cap that was clean when the last cap was laid.
    clean_cap_m: OfEach,
    passages: Passages,
    breakdown: Breakdown,
    detritus_decay_per_d: f64,
    surface_light_umol_m2_s: f64,
    ammonia_oxidisers: Habitat,
    nitrite_oxidiser: Oxidiser,
    pub(super) floating: FloatingStand,
    pub(super) fast: FastStand,
    slow: SlowStand,
    algae: AlgalFilm,
}

/// What depends on time alone.
pub(super) struct Moment {
    ammonium: Conductance,
    phosphate: Conductance,
    floating: f64,
    fast: Settling,
    slow: Settling,
}

/// What the bed and the bacteria do at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Turnover {
    pub(super) ammonia: Ways,
    /// Ammonium in the pore water, mg N/L.
    pub(super) pore_ammonium: f64,
    /// Phosphate in the pore water, mg P/L.
    pub(super) pore_phosphate: f64,
    /// Phosphorus from the soil to the water, g/(m2 d).
    pub(super) released_p: f64,
    /// Nitrite oxidised, g N/(m2 d), with the change of the cells.
    pub(super) nitrite: super::nitrification::Oxidation,
    /// Ammonia that the cap's oxic top turns into nitrate, g N/(m2 d).
    pub(super) oxidised_in_cap: f64,
}

impl Turnover {
    /// Ammonia oxidised at every place, g N/(m2 d).
    pub(super) fn ammonia_oxidised(&self) -> f64 {
        self.ammonia.on_bed + self.ammonia.elsewhere + self.oxidised_in_cap
    }
}

impl Model {
    /// A tank whose last `clean_cap_m` of cap were laid clean at `starts.cap`.
    pub(super) fn new(
        parameters: &Parameters<f64>,
        conditions: &Conditions,
        starts: Starts,
        clean_cap_m: OfEach,
    ) -> Self {
        let warmth = breakdown_warmth(conditions.temperature_c);
        let passages = Passages::new(parameters, conditions);
        let numbers = &parameters.nitrifiers;
        Self {
            parameters: *parameters,
            conditions: *conditions,
            starts,
            clean_cap_m,
            passages,
            breakdown: Breakdown::new(&parameters.soil, warmth),
            detritus_decay_per_d: parameters.water.detritus_decay * warmth,
            surface_light_umol_m2_s: parameters.lamp.level * conditions.light_umol_m2_s,
            ammonia_oxidisers: Habitat::new(
                numbers,
                Oxidiser::of_ammonia(numbers, conditions),
                1.0 / passages.ammonium.film_d_m,
            ),
            nitrite_oxidiser: Oxidiser::of_nitrite(numbers, conditions),
            floating: FloatingStand::new(parameters, conditions),
            fast: FastStand::new(parameters, conditions),
            slow: SlowStand::new(parameters, conditions),
            algae: AlgalFilm::new(parameters, conditions),
        }
    }

    pub(super) fn moment(&self, day: f64) -> Moment {
        let shared = &self.parameters.submerged;
        let settling = |start| Settling::after(day - start, shared.rooting, shared.lag);
        let rise = self.passages.rise(self.clean_cap_m, day - self.starts.cap);
        Moment {
            ammonium: self.passages.ammonium.conductance(day, rise.ammonium),
            phosphate: self.passages.phosphate.conductance(day, rise.phosphate),
            floating: approach(day - self.starts.floating, self.parameters.floating.lag),
            fast: settling(self.starts.fast),
            slow: settling(self.starts.slow),
        }
    }

    /// What the bed gives off and the bacteria oxidise.
    ///
    /// ```text
    /// jP = (matrix + passed holes) max(0, Cp - P)
    /// ```
    ///
    /// # Source
    /// As [`Passage::conductance`]; that the oxic top catches phosphate from the holes:
    /// judgement. Phosphate does not go back into the bed.
    pub(super) fn turnover(&self, moment: &Moment, state: &State) -> Turnover {
        let cap = &self.parameters.cap;
        let pore_ammonium = pore_water(state.soil_n, &self.passages.ammonium);
        let pore_phosphate = pore_water(state.soil_p, &self.passages.phosphate);
        let below = FromBelow {
            conductance_m_d: moment.ammonium.both_m_d(),
            pore_water_mg_l: pore_ammonium,
        };
        let ammonia = self
            .ammonia_oxidisers
            .ways(&below, state.ammonia, state.ammonia_oxidisers);
        let phosphate = &moment.phosphate;
        let passes = phosphate.matrix_m_d + cap.phosphate_passed * phosphate.holes_m_d;
        Turnover {
            ammonia,
            pore_ammonium,
            pore_phosphate,
            released_p: passes * (pore_phosphate - state.phosphate).max(0.0),
            nitrite: self
                .nitrite_oxidiser
                .oxidation(state.nitrite, state.nitrite_oxidisers),
            oxidised_in_cap: cap.oxidised_share * ammonia.to_water.max(0.0),
        }
    }

    /// The light of a day, and what it meets.
    pub(super) fn daylight(&self, state: &State) -> Daylight {
        let parameters = &self.parameters;
        let floaters = state.floating + self.conditions.fixing_g_m2;
        let layers = floaters / parameters.floating.closed_layer;
        Daylight {
            surface_umol_m2_s: self.surface_light_umol_m2_s,
            hours: self.conditions.light_hours,
            passed: transmission(layers, parameters.floating.absorptance),
            clear_extinction: parameters.water.extinction * self.conditions.depth_m,
            living_extinction: parameters.submerged.extinction * (state.fast + state.slow)
                + parameters.algae.extinction * state.algae,
        }
    }

    /// Floaters that draw their nitrogen from the air, g dry/m2.
    pub(super) fn fixing_g_m2(&self) -> f64 {
        self.conditions.fixing_g_m2
    }

    /// Nitrogen in the tank and lost from it, less what was added since
    /// filling, g N/m2: the same at all times.
    pub(super) fn nitrogen(&self, state: &State) -> f64 {
        let dissolved = state.ammonia + state.nitrite + state.nitrate;
        state.fast_soil_n
            + state.slow_soil_n
            + state.stable_soil_n
            + state.soil_n
            + dissolved * self.conditions.depth_m
            + state.floating_n
            + state.fast_n
            + self.parameters.slow.tissue_nitrogen * state.slow
            + self.parameters.algae.tissue_nitrogen * state.algae
            + state.detritus_n
            + state.denitrified_n
            + state.harvested_n
            - state.added_n
    }

    /// Phosphorus in the tank and taken out of it, less what was added since filling,
    /// g P/m2: the same at all times.
    pub(super) fn phosphorus(&self, state: &State) -> f64 {
        state.reducible_p
            + state.stable_p
            + state.soil_p
            + state.phosphate * self.conditions.depth_m
            + state.floating_p
            + state.fast_p
            + self.parameters.slow.tissue_phosphorus * state.slow
            + self.parameters.algae.tissue_phosphorus * state.algae
            + state.harvested_p
            - state.added_p
    }

    /// What plants and algae do, group by group.
    fn plants(
        &self,
        moment: &Moment,
        state: &State,
        freed: &Freed,
        turnover: &Turnover,
    ) -> Changes {
        let in_reach = self.breakdown.within_reach(state.soil_n, freed);
        let surroundings = Surroundings {
            offer: Offer::of(state, self.parameters.water.least_ammonium),
            light: self.daylight(state).mean_in_water_umol_m2_s(),
            pore_ammonium: pore_water(in_reach, &self.passages.ammonium),
            pore_phosphate: turnover.pore_phosphate,
        };
        let offer = &surroundings.offer;
        Changes {
            floating: self.floating.change(state, offer, moment.floating),
            fast: self.fast.change(state, &surroundings, &moment.fast),
            slow: self.slow.change(state, &surroundings, &moment.slow),
            algae: self.algae.change(state, offer, surroundings.light),
        }
    }

    /// Dry tissue that plants and algae make, before any is lost, g/(m2 d).
    pub(super) fn grown_g_m2_d(&self, moment: &Moment, state: &State, turnover: &Turnover) -> f64 {
        let freed = self.breakdown.freed(state);
        self.plants(moment, state, &freed, turnover).flow().grown
    }

    /// Rates of change of every state, per day.
    ///
    /// ```text
    /// dTAN = (to_water - x + feed + leached + decayed + returned - taken - rW) / z
    /// dNO2 = (rB + rW - rN - taken - v NO2) / z
    /// dNO3 = (x + rN - taken - v NO3) / z
    /// dP   = (jP + feed + returned - taken) / z
    /// dD   = dead - leached + faeces - decayed
    /// ```
    ///
    /// `x` what the cap's oxic top oxidises, `z` water volume over floor area, `v` velocity
    /// of denitrification, `rB`, `rW` and `rN` oxidation of ammonia on the bed and elsewhere
    /// and of nitrite.
    pub(super) fn change(&self, moment: &Moment, state: &State) -> State {
        let state = &state.present();
        let water = &self.parameters.water;
        let turnover = self.turnover(moment, state);
        let ammonia = &turnover.ammonia;
        let freed = self.breakdown.freed(state);
        let plants = self.plants(moment, state, &freed, &turnover);
        let living = plants.flow();
        let nitrite_lost = water.denitrification * state.nitrite;
        let nitrate_lost = water.denitrification * state.nitrate;

        let feed = self.conditions.feed_g_m2_d;
        let protein = feed * self.conditions.feed_protein;
        let fed_n = protein * AMMONIA_PER_PROTEIN;
        let faeces_n =
            protein * (NITROGEN_PER_PROTEIN - AMMONIA_PER_PROTEIN) * (1.0 - water.feed_retained);
        let fed_p = feed * water.feed_phosphorus;
        let leached_n = living.dead_n * water.leached_share;
        let decayed_n = self.detritus_decay_per_d * state.detritus_n;
        let back_p = living.dead_p * water.dead_phosphorus_share;

        let made_ammonia = fed_n + leached_n + decayed_n + living.returned_n;
        let per_litre = |amount: f64| amount / self.conditions.depth_m;
        // in equivalents: ammonium from organic matter gives one, its uptake takes one, its
        // oxidation two; uptake and loss of the oxidised forms give one
        let alkalinity_used = EQUIVALENTS_PER_OXIDATION * turnover.ammonia_oxidised()
            + living.taken.ammonia
            - ammonia.from_soil
            - made_ammonia
            - living.taken.nitrite
            - living.taken.nitrate
            - nitrite_lost
            - nitrate_lost;
        State {
            fast_soil_n: -freed.fast_n,
            slow_soil_n: -freed.slow_n,
            stable_soil_n: -freed.stable_n,
            reducible_p: -freed.reduced_p,
            stable_p: living.dead_p - back_p - freed.stable_p,
            soil_n: freed.nitrogen() - ammonia.from_soil - living.rooted_n,
            soil_p: freed.phosphorus() - turnover.released_p - living.rooted_p,
            ammonia: per_litre(
                ammonia.to_water - turnover.oxidised_in_cap + made_ammonia
                    - living.taken.ammonia
                    - ammonia.elsewhere,
            ),
            nitrite: per_litre(
                ammonia.on_bed + ammonia.elsewhere
                    - turnover.nitrite.nitrogen
                    - living.taken.nitrite
                    - nitrite_lost,
            ),
            nitrate: per_litre(
                turnover.oxidised_in_cap + turnover.nitrite.nitrogen
                    - living.taken.nitrate
                    - nitrate_lost,
            ),
            phosphate: per_litre(
                turnover.released_p + fed_p + back_p + living.returned_p - living.taken_p,
            ),
            ammonia_oxidisers: ammonia.cells,
            nitrite_oxidisers: turnover.nitrite.cells,
            floating: plants.floating.mass,
            floating_n: plants.floating.nitrogen,
            floating_p: plants.floating.phosphorus,
            fast: plants.fast.mass,
            fast_n: plants.fast.nitrogen,
            fast_p: plants.fast.phosphorus,
            slow: plants.slow.mass,
            algae: plants.algae.mass,
            detritus_n: living.dead_n - leached_n + faeces_n - decayed_n,
            released_n: ammonia.from_soil,
            released_p: turnover.released_p,
            denitrified_n: nitrite_lost + nitrate_lost,
            harvested_n: living.harvested_n,
            harvested_p: living.harvested_p,
            added_n: fed_n + faeces_n,
            added_p: fed_p,
            alkalinity_used: per_litre(alkalinity_used) * alkalinity_per_nitrogen().meq_l()
                / EQUIVALENTS_PER_OXIDATION,
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
