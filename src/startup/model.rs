//! The rates of change of a tank between two events.

use super::algae::AlgalFilm;
use super::balance::{Balance, FirstOrderRates};
use super::clock::{Moment, Settling, approach};
use super::daylight::Daylight;
use super::floating::FloatingStand;
use super::flow::{Changes, Flow, Gains, GroupChange, GroupStand};
use super::habitat::{FromBelow, Habitat};
use super::inputs::Conditions;
use super::nitrification::Oxidiser;
use super::passages::{OfEach, Passages};
use super::slopes::Slopes;
use super::soil::{Breakdown, breakdown_warmth, pore_water};
use super::state::State;
use super::submerged::{FastStand, SlowStand};
use super::surroundings::Surroundings;
use super::turnover::{BedState, Turnover};
use super::uptake::Offer;
use crate::numerics::real::Scalar;
use crate::parameters::Parameters;
use crate::plants::shade::transmission_by;

/// Days after a moment at which is looked how the bed goes on.
const SHORTLY_D: f64 = 1e-6;

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
#[derive(Debug, Clone)]
pub(super) struct StartupModel {
    parameters: Parameters<f64>,
    conditions: Conditions,
    starts: Starts,
    /// Depth of cap that was clean when the last cap was laid.
    clean_cap_m: OfEach,
    passages: Passages,
    pub(super) breakdown: Breakdown,
    detritus_decay_per_d: f64,
    surface_light_umol_m2_s: f64,
    /// Logarithm of the share of light that a closed layer of floaters lets through.
    log_passed: f64,
    ammonia_oxidisers: Habitat,
    nitrite_oxidiser: Oxidiser,
    pub(super) floating: FloatingStand,
    pub(super) fast: FastStand,
    slow: SlowStand,
    algae: AlgalFilm,
    pub(super) balance: Balance,
    /// Slopes of what goes on in proportion to one store alone.
    pub(super) standing_slopes: Box<Slopes>,
    /// What feed adds to the rates.
    fed: State,
}

/// What lives in the water and takes its light, g dry/m2.
#[derive(Debug, Clone, Copy)]
pub(super) struct Living<S> {
    pub(super) floating: S,
    pub(super) fast: S,
    pub(super) slow: S,
    pub(super) algae: S,
}

impl StartupModel {
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
        let balance = Balance::new(parameters, conditions);
        let model = Self {
            parameters: *parameters,
            conditions: *conditions,
            starts,
            clean_cap_m,
            passages,
            breakdown: Breakdown::new(&parameters.soil, warmth),
            detritus_decay_per_d: parameters.water.detritus_decay * warmth,
            surface_light_umol_m2_s: parameters.lamp.level * conditions.light_umol_m2_s,
            log_passed: (1.0 - parameters.floating.absorptance).ln(),
            ammonia_oxidisers: Habitat::new(
                numbers,
                Oxidiser::of_ammonia(numbers, conditions),
                1.0 / passages.ammonium.film_d_m,
                parameters.moving.sponge_share * conditions.sponge_m_d,
            ),
            nitrite_oxidiser: Oxidiser::of_nitrite(numbers, conditions),
            floating: FloatingStand::new(parameters, conditions),
            fast: FastStand::new(parameters, conditions),
            slow: SlowStand::new(parameters, conditions),
            algae: AlgalFilm::new(parameters, conditions),
            balance,
            standing_slopes: Box::default(),
            fed: balance.of_feed(parameters, conditions),
        };
        Self {
            standing_slopes: model.standing_slopes(),
            ..model
        }
    }

    /// What the rates need of a day.
    pub(super) fn moment_on(&self, day: f64) -> Moment {
        let shared = &self.parameters.submerged;
        let settling = |start| Settling::after(day - start, shared.rooting, shared.lag);
        let starts = &self.starts;
        let fast = settling(starts.fast);
        let planted_together = starts.fast.total_cmp(&starts.slow).is_eq();
        let [ammonium_m_d, phosphate_m_d] = self.conductances_m_d(day);
        Moment {
            ammonium_m_d,
            phosphate_m_d,
            floating: approach(day - starts.floating, self.parameters.floating.lag),
            fast,
            slow: if planted_together {
                fast
            } else {
                settling(starts.slow)
            },
        }
    }

    /// How fast what the rates need of a day changes, 1/d; that of the bed by a difference.
    pub(super) fn pace_on(&self, day: f64, now: &Moment) -> Moment {
        let Parameters {
            submerged,
            floating,
            ..
        } = &self.parameters;
        let [ammonium_m_d, phosphate_m_d] = self.conductances_m_d(day + SHORTLY_D);
        Moment {
            ammonium_m_d: (ammonium_m_d - now.ammonium_m_d) / SHORTLY_D,
            phosphate_m_d: (phosphate_m_d - now.phosphate_m_d) / SHORTLY_D,
            floating: (1.0 - now.floating) / floating.lag,
            fast: now.fast.pace(submerged.rooting, submerged.lag),
            slow: now.slow.pace(submerged.rooting, submerged.lag),
        }
    }

    /// By which ammonium passes the bed, and phosphate less what the oxic top catches.
    fn conductances_m_d(&self, day: f64) -> [f64; 2] {
        let rise = self.passages.rise(self.clean_cap_m, day - self.starts.cap);
        let ammonium = self.passages.ammonium.conductance(day, rise.ammonium);
        let phosphate = self.passages.phosphate.conductance(day, rise.phosphate);
        let passed = self.parameters.cap.phosphate_passed * phosphate.holes_m_d;
        [ammonium.both_m_d(), phosphate.matrix_m_d + passed]
    }

    /// What the bed and its bacteria meet in a state.
    pub(super) fn ground(&self, state: &State) -> BedState<f64> {
        BedState {
            pore_ammonium: self.pore_ammonium(state),
            pore_phosphate: pore_water(state.soil_p, &self.passages.phosphate),
            ammonia: state.ammonia,
            nitrite: state.nitrite,
            phosphate: state.phosphate,
            ammonia_oxidisers: state.ammonia_oxidisers,
            nitrite_oxidisers: state.nitrite_oxidisers,
        }
    }

    /// Ammonium in the pore water, mg N/L.
    pub(super) fn pore_ammonium(&self, state: &State) -> f64 {
        pore_water(state.soil_n, &self.passages.ammonium)
    }

    /// What the bed gives off and the bacteria oxidise.
    ///
    /// ```text
    /// jP = (matrix + passed holes) max(0, Cp - P)
    /// ```
    ///
    /// # Source
    /// As [`Passage::conductance`](crate::substrate::release::Passage::conductance); that the
    /// oxic top catches phosphate from the holes: judgement. Phosphate does not go back into
    /// the bed.
    pub(super) fn turnover_of<S: Scalar>(
        &self,
        moment: &Moment<S>,
        ground: &BedState<S>,
    ) -> Turnover<S> {
        let below = FromBelow {
            conductance_m_d: moment.ammonium_m_d,
            pore_water_mg_l: ground.pore_ammonium,
        };
        let ammonia = self
            .ammonia_oxidisers
            .ways(&below, ground.ammonia, ground.ammonia_oxidisers);
        let over_water = (ground.pore_phosphate - ground.phosphate).positive_part();
        Turnover {
            ammonia,
            released_p: moment.phosphate_m_d * over_water,
            nitrite: self
                .nitrite_oxidiser
                .oxidation(ground.nitrite, ground.nitrite_oxidisers),
            oxidised_in_cap: ammonia.to_water.positive_part() * self.parameters.cap.oxidised_share,
        }
    }

    /// The same in a state.
    pub(super) fn turnover(&self, moment: &Moment, state: &State) -> Turnover {
        self.turnover_of(moment, &self.ground(state))
    }

    /// The light of a day, and what it meets.
    pub(super) fn daylight_on<S: Scalar>(&self, living: &Living<S>) -> Daylight<S> {
        let parameters = &self.parameters;
        let floaters = living.floating + self.conditions.fixing_g_m2;
        let layers = floaters / parameters.floating.closed_layer;
        Daylight {
            surface_umol_m2_s: self.surface_light_umol_m2_s,
            hours: self.conditions.light_hours,
            passed: transmission_by(layers, S::splat(self.log_passed)),
            clear_extinction: parameters.water.extinction * self.conditions.depth_m,
            living_extinction: (living.fast + living.slow) * parameters.submerged.extinction
                + living.algae * parameters.algae.extinction,
        }
    }

    /// What feed adds to the rates.
    pub(super) fn fed(&self) -> &State {
        &self.fed
    }

    /// The same in a state.
    pub(super) fn daylight(&self, state: &State) -> Daylight {
        self.daylight_on(&Living {
            floating: state.floating,
            fast: state.fast,
            slow: state.slow,
            algae: state.algae,
        })
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

    /// What plants and algae meet in a state.
    pub(super) fn surroundings(&self, state: &State) -> Surroundings<f64> {
        self.surroundings_in(state, self.daylight(state).mean_in_water_umol_m2_s())
    }

    /// The same in a mean light.
    pub(super) fn surroundings_in(&self, state: &State, light: f64) -> Surroundings<f64> {
        let freed = self.breakdown.freed(state);
        let in_reach = self.breakdown.within_reach(state.soil_n, &freed);
        Surroundings {
            offer: Offer {
                ammonia: self.taken_up(state.ammonia),
                nitrite: state.nitrite,
                nitrate: state.nitrate,
            },
            phosphate: state.phosphate,
            light,
            pore_ammonium: pore_water(in_reach, &self.passages.ammonium),
            pore_phosphate: pore_water(state.soil_p, &self.passages.phosphate),
        }
    }

    /// Ammonium over the least that is taken up, mg N/L.
    pub(super) fn taken_up<S: Scalar>(&self, ammonia: S) -> S {
        (ammonia - self.parameters.water.least_ammonium).positive_part()
    }

    /// Concentrations in the pore water per amount of ammonium and of phosphate held.
    pub(super) fn pore_water_slopes(&self) -> (f64, f64) {
        let Passages {
            ammonium,
            phosphate,
        } = &self.passages;
        (pore_water(1.0, ammonium), pore_water(1.0, phosphate))
    }

    /// What plants and algae do, group by group; groups that are not there do nothing.
    ///
    /// `of` turns the amounts of a group into the scalar.
    pub(super) fn plants<S: Scalar>(
        &self,
        moment: &Moment<S>,
        state: &State,
        surroundings: &Surroundings<S>,
        of: impl Fn(&GroupStand<f64>) -> GroupStand<S>,
    ) -> Changes<S> {
        let there = |stand: GroupStand<f64>| (stand.mass > 0.0).then(|| of(&stand));
        let (floating, fast) = (there(state.floating_stand()), there(state.fast_stand()));
        let (slow, algae) = (there(state.slow_stand()), there(state.algal_stand()));
        Changes {
            floating: floating.map_or_else(GroupChange::none, |stand| {
                self.floating.change(&stand, surroundings, moment.floating)
            }),
            fast: fast.map_or_else(GroupChange::none, |stand| {
                self.fast.change(&stand, surroundings, &moment.fast)
            }),
            slow: slow.map_or_else(GroupChange::none, |stand| {
                self.slow.change(&stand, surroundings, &moment.slow)
            }),
            algae: algae.map_or_else(GroupChange::none, |stand| {
                self.algae.change(&stand, surroundings)
            }),
        }
    }

    /// Dry tissue that plants and algae make, before any is lost, g/(m2 d).
    pub(super) fn grown_g_m2_d(&self, moment: &Moment, state: &State) -> f64 {
        let surroundings = self.surroundings(state);
        let plants = self.plants(moment, state, &surroundings, |stand| *stand);
        plants.flow().grown
    }

    /// What goes on at a pace of its own in a state.
    pub(super) fn standing(&self, state: &State) -> FirstOrderRates {
        let water = &self.parameters.water;
        FirstOrderRates {
            freed: self.breakdown.freed(state),
            decayed_n: self.detritus_decay_per_d * state.detritus_n,
            nitrite_lost: water.denitrification * state.nitrite,
            nitrate_lost: water.denitrification * state.nitrate,
        }
    }

    /// Rates of change of every state, per day.
    pub(super) fn change(&self, moment: &Moment, state: &State) -> State {
        let state = &state.present();
        let plants = self.plants(moment, state, &self.surroundings(state), |stand| *stand);
        let turnover = self.turnover(moment, state);
        self.rates_of(&turnover, (&plants.flow(), &plants.gains()), state)
    }

    /// The same from what bed, bacteria, plants and algae do.
    pub(super) fn rates_of(
        &self,
        turnover: &Turnover,
        (living, gains): (&Flow, &Gains),
        state: &State,
    ) -> State {
        let balance = &self.balance;
        balance
            .of_living(living, gains)
            .plus(&balance.of_turnover(turnover))
            .plus(&balance.of_standing(&self.standing(state)))
            .plus(&self.fed)
    }
}
