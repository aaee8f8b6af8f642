//! Slopes of the rates with every state and with time, from the same lines as the rates.
//!
//! Bed, floaters, stems, slow plants and algae each see a few of the states. Their
//! exchanges are computed with slopes along those, and shared out to rows and columns by the
//! balance, which is linear.

use super::clock::Moment;
use super::flow::{Changes, Flow, Gains, GroupStand};
use super::model::{Living, StartupModel};
use super::state::{COUPLED_STATES, STATES, State, StateIndex};
use super::surroundings::Surroundings;
use super::turnover::{BedState, Turnover};
use super::uptake::Offer;
use crate::numerics::dual::Dual;
use crate::numerics::real::Scalar;

/// Directions of a group's own amounts, or of the bed's pore water and bacteria.
const OWN: [usize; 3] = [0, 1, 2];
/// Directions that several groups share.
const LIGHT: usize = 3;
const AMMONIA: usize = 4;
const NITRITE: usize = 5;
const NITRATE: usize = 6;
const PHOSPHATE: usize = 7;
const IN_REACH: usize = 8;
const PORE_PHOSPHATE: usize = 9;
const TIME: usize = 10;
const DIRECTIONS: usize = 11;

type Sloping = Dual<DIRECTIONS>;
/// Slopes of every rate with one thing.
type Column = [f64; STATES];

/// Slopes of every rate.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Slopes {
    /// With each state that rates depend on.
    pub(super) columns: [Column; COUPLED_STATES],
    /// With time.
    pub(super) time: Column,
}

impl Default for Slopes {
    fn default() -> Self {
        Self {
            columns: [[0.0; STATES]; COUPLED_STATES],
            time: [0.0; STATES],
        }
    }
}

impl Slopes {
    /// Adds what the rates change with a state through something that changes with it.
    #[inline]
    fn add(&mut self, state: StateIndex, through: &State, slope: f64) {
        let column = &mut self.columns[state as usize];
        for (entry, more) in column.iter_mut().zip(through.into_array()) {
            *entry += more * slope;
        }
    }
}

impl StartupModel {
    /// Slopes of what goes on in proportion to one store alone; the same at all times.
    pub(super) fn standing_slopes(&self) -> Box<Slopes> {
        let mut slopes = Box::<Slopes>::default();
        for (place, column) in slopes.columns.iter_mut().enumerate() {
            let mut one = [0.0; STATES];
            one[place] = 1.0;
            let standing = self.standing(&State::from_array(one));
            *column = self.balance.of_standing(&standing).into_array();
        }
        slopes
    }

    /// The rates at a moment and their slopes; `pace` is how fast the moment changes.
    pub(super) fn sloping_change(
        &self,
        now: &Moment,
        pace: &Moment,
        state: &State,
    ) -> (State, Box<Slopes>) {
        let present = state.present();
        let moment = now.with_pace(pace, |now, pace| Dual::sloping(TIME, now, pace));
        let light = self.sloping_light(&present);
        let turnover = self.turnover_of(&moment, &self.sloping_ground(&present));
        let surroundings = self.sloping_surroundings(&present, light.value);
        let plants = self.plants(&moment, &present, &surroundings, sloping_stand);
        let (living, gains) = (plants.flow(), plants.gains());
        let mut slopes = self.standing_slopes.clone();
        self.add_own(&mut slopes, &turnover, &plants, &gains);
        self.add_shared(&mut slopes, &turnover, (&living, &gains), &light);
        for (column, amount) in slopes.columns.iter_mut().zip(state.into_array()) {
            if amount < 0.0 {
                *column = [0.0; STATES];
            }
        }
        let value = |sloping: Sloping| sloping.value;
        let plants = (&living.map(value), &gains.map(value));
        (
            self.rates_of(&turnover.map(value), plants, &present),
            slopes,
        )
    }

    /// Adds the slopes with what one group alone depends on.
    fn add_own(
        &self,
        slopes: &mut Slopes,
        turnover: &Turnover<Sloping>,
        plants: &Changes<Sloping>,
        gains: &Gains<Sloping>,
    ) {
        let bed = |direction: usize| {
            let turnover = turnover.map(along(direction));
            self.balance.of_turnover(&turnover)
        };
        let [pore_ammonium, ammonia_oxidisers, nitrite_oxidisers] = OWN;
        slopes.add(
            StateIndex::soil_n,
            &bed(pore_ammonium),
            self.pore_water_slopes().0,
        );
        slopes.add(StateIndex::ammonia_oxidisers, &bed(ammonia_oxidisers), 1.0);
        slopes.add(StateIndex::nitrite_oxidisers, &bed(nitrite_oxidisers), 1.0);
        let mut add = |place: StateIndex, flow: &Flow<Sloping>, direction: usize, gains: Gains| {
            let column = self.balance.of_living(&flow.map(along(direction)), &gains);
            slopes.add(place, &column, 1.0);
        };
        let none = Gains::NOTHING;
        let of_floating = [
            StateIndex::floating,
            StateIndex::floating_n,
            StateIndex::floating_p,
        ];
        for (place, direction) in of_floating.into_iter().zip(OWN) {
            let floating = gains.floating.map(along(direction));
            let gains = Gains { floating, ..none };
            add(place, &plants.floating.flow, direction, gains);
        }
        let of_fast = [StateIndex::fast, StateIndex::fast_n, StateIndex::fast_p];
        for (place, direction) in of_fast.into_iter().zip(OWN) {
            let fast = gains.fast.map(along(direction));
            add(place, &plants.fast.flow, direction, Gains { fast, ..none });
        }
        let [mass, ..] = OWN;
        let (slow, algae) = (gains.slow.slopes[mass], gains.algae.slopes[mass]);
        add(
            StateIndex::slow,
            &plants.slow.flow,
            mass,
            Gains { slow, ..none },
        );
        add(
            StateIndex::algae,
            &plants.algae.flow,
            mass,
            Gains { algae, ..none },
        );
    }

    /// Adds the slopes with what several groups depend on.
    fn add_shared(
        &self,
        slopes: &mut Slopes,
        turnover: &Turnover<Sloping>,
        (living, gains): (&Flow<Sloping>, &Gains<Sloping>),
        light: &Dual<4>,
    ) {
        let plants = |direction: usize| {
            let of = along(direction);
            self.balance.of_living(&living.map(&of), &gains.map(of))
        };
        let all = |direction: usize| {
            let turnover = turnover.map(along(direction));
            plants(direction).plus(&self.balance.of_turnover(&turnover))
        };
        let (per_n, per_p) = self.pore_water_slopes();
        slopes.add(StateIndex::ammonia, &all(AMMONIA), 1.0);
        slopes.add(StateIndex::nitrite, &all(NITRITE), 1.0);
        slopes.add(StateIndex::nitrate, &plants(NITRATE), 1.0);
        slopes.add(StateIndex::phosphate, &all(PHOSPHATE), 1.0);
        slopes.add(StateIndex::soil_p, &all(PORE_PHOSPHATE), per_p);
        slopes.time = all(TIME).into_array();
        let with_light = plants(LIGHT);
        let lit = [
            StateIndex::floating,
            StateIndex::fast,
            StateIndex::slow,
            StateIndex::algae,
        ];
        for (place, slope) in lit.into_iter().zip(light.slopes) {
            slopes.add(place, &with_light, slope);
        }
        let in_reach = plants(IN_REACH);
        let [fast_n, slow_n, stable_n] = self.breakdown.reach_slopes();
        slopes.add(StateIndex::soil_n, &in_reach, per_n);
        slopes.add(StateIndex::fast_soil_n, &in_reach, fast_n * per_n);
        slopes.add(StateIndex::slow_soil_n, &in_reach, slow_n * per_n);
        slopes.add(StateIndex::stable_soil_n, &in_reach, stable_n * per_n);
    }

    /// Mean light in the water along the masses of the four groups.
    fn sloping_light(&self, state: &State) -> Dual<4> {
        let living = Living {
            floating: Dual::along(0, state.floating),
            fast: Dual::along(1, state.fast),
            slow: Dual::along(2, state.slow),
            algae: Dual::along(3, state.algae),
        };
        self.daylight_on(&living).mean_in_water_umol_m2_s()
    }

    /// What bed and bacteria meet, along all that it is.
    fn sloping_ground(&self, state: &State) -> BedState<Sloping> {
        let met = self.ground(state);
        let [pore_ammonium, ammonia_oxidisers, nitrite_oxidisers] = OWN;
        BedState {
            pore_ammonium: Dual::along(pore_ammonium, met.pore_ammonium),
            pore_phosphate: Dual::along(PORE_PHOSPHATE, met.pore_phosphate),
            ammonia: Dual::along(AMMONIA, met.ammonia),
            nitrite: Dual::along(NITRITE, met.nitrite),
            phosphate: Dual::along(PHOSPHATE, met.phosphate),
            ammonia_oxidisers: Dual::along(ammonia_oxidisers, met.ammonia_oxidisers),
            nitrite_oxidisers: Dual::along(nitrite_oxidisers, met.nitrite_oxidisers),
        }
    }

    /// What plants and algae meet, along all that it is.
    fn sloping_surroundings(&self, state: &State, light: f64) -> Surroundings<Sloping> {
        let met = self.surroundings_in(state, light);
        let ammonia = Dual::along(AMMONIA, state.ammonia);
        Surroundings {
            offer: Offer {
                ammonia: self.taken_up(ammonia),
                nitrite: Dual::along(NITRITE, met.offer.nitrite),
                nitrate: Dual::along(NITRATE, met.offer.nitrate),
            },
            phosphate: Dual::along(PHOSPHATE, met.phosphate),
            light: Dual::along(LIGHT, met.light),
            pore_ammonium: if met.pore_ammonium > 0.0 {
                Dual::along(IN_REACH, met.pore_ammonium)
            } else {
                Dual::splat(0.0)
            },
            pore_phosphate: Dual::along(PORE_PHOSPHATE, met.pore_phosphate),
        }
    }
}

/// The slope along a direction.
fn along(direction: usize) -> impl Fn(Sloping) -> f64 {
    move |sloping| sloping.slopes[direction]
}

/// A group along its own amounts.
fn sloping_stand(stand: &GroupStand<f64>) -> GroupStand<Sloping> {
    let [mass, nitrogen, phosphorus] = OWN;
    GroupStand {
        mass: Dual::along(mass, stand.mass),
        nitrogen: Dual::along(nitrogen, stand.nitrogen),
        phosphorus: Dual::along(phosphorus, stand.phosphorus),
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::super::elimination::Coupling;
    use super::*;
    use crate::numerics::sobol::Sobol;
    use crate::numerics::sparse::Pattern;
    use crate::parameters::Parameters;
    use crate::source::Band;
    use crate::startup::running::RunningTank;
    use crate::startup::{DailyFeed, Inputs, PlantedMass};
    use crate::units::{Length, Mass, Share};

    /// Amounts that random states lie below, in the unit of each.
    const MOST: [f64; COUPLED_STATES] = [
        10.0, 10.0, 50.0, 1.0, 1.0, 5.0, 1.0, 4.0, 2.0, 10.0, 0.5, 1.0, 0.5, 60.0, 2.0, 0.4, 150.0,
        4.0, 0.8, 60.0, 5.0, 3.0,
    ];

    fn models() -> Vec<StartupModel> {
        let planted = PlantedMass {
            cover: Share::from_percent(30.0),
            fast: Mass::from_g(3.0),
            slow: Mass::from_g(1.0),
            ..PlantedMass::default()
        };
        let thinned = Inputs {
            planting: planted,
            floaters_above: Some(Share::from_percent(40.0)),
            stems_above_g_m2: Some(70.0),
            feed: DailyFeed {
                mass_per_day: Mass::from_mg(20.0),
                protein: Share::from_percent(45.0),
            },
            ..Inputs::reference()
        };
        let bare = Inputs {
            soil_depth: Length::ZERO,
            cap_depth: Length::ZERO,
            ..Inputs::reference()
        };
        let points = Sobol::new(4);
        let numbers = |index| {
            let reference = Parameters::<Band>::reference();
            let mut numbers = reference.draw(|place| points.coordinate(index, place));
            numbers.cap.oxidised_share = 0.3;
            numbers
        };
        let model = |inputs: &Inputs, index| RunningTank::filled(inputs, &numbers(index)).model();
        (0..4)
            .map(|index| model(&thinned, index))
            .chain([model(&bare, 9), model(&Inputs::reference(), 10)])
            .collect()
    }

    #[test]
    fn slopes_are_those_of_small_differences() {
        let points = Sobol::new(5);
        let (mut compared, mut odd) = (0, 0);
        for model in models() {
            for index in 0..200 {
                let amounts = amounts(points, index);
                let day = 0.5 + 60.0 * points.coordinate(index, 40);
                let state = State::from_array(amounts);
                let now = model.moment_on(day);
                let pace = model.pace_on(day, &now);
                let (change, slopes) = model.sloping_change(&now, &pace, &state);
                assert_eq!(change, model.change(&now, &state));
                let rates = |amounts: [f64; STATES], day: f64| {
                    let moment = model.moment_on(day);
                    model
                        .change(&moment, &State::from_array(amounts))
                        .into_array()
                };
                let mut compare = |column: &Column, low: Column, high: Column, span: f64| {
                    for row in 0..STATES {
                        let expected = (high[row] - low[row]) / span;
                        let size = (high[row].abs() / span * 1e-9).max(expected.abs() * 1e-5);
                        compared += 1;
                        odd += u32::from((column[row] - expected).abs() > size + 1e-9);
                    }
                };
                for place in 0..COUPLED_STATES {
                    let step = 1e-5 * amounts[place].max(1e-3);
                    let at = |shift: f64| {
                        let mut shifted = amounts;
                        shifted[place] += shift;
                        rates(shifted, day)
                    };
                    compare(&slopes.columns[place], at(-step), at(step), 2.0 * step);
                }
                let (before, after) = (rates(amounts, day - 1e-4), rates(amounts, day + 1e-4));
                compare(&slopes.time, before, after, 2e-4);
            }
        }
        // a switch lies within the difference now and then
        assert!(odd * 2000 < compared, "{odd} of {compared}");
    }

    /// The amounts of a random state.
    fn amounts(points: Sobol, index: u32) -> [f64; STATES] {
        let mut amounts = [0.0; STATES];
        for (place, most) in MOST.into_iter().enumerate() {
            amounts[place] = most * points.coordinate(index, place as u32).powi(2);
        }
        amounts
    }

    #[test]
    fn rates_change_with_the_states_that_are_listed_and_no_others() {
        let points = Sobol::new(6);
        let mut seen = [[false; COUPLED_STATES]; STATES];
        for model in models() {
            for index in 0..200 {
                let mut amounts = amounts(points, index);
                // now and then so little in the soil that roots run short
                if index % 4 == 0 {
                    amounts[StateIndex::soil_p as usize] *= 1e-7;
                } else if index % 4 == 1 {
                    let freed = model.breakdown.freed(&State::from_array(amounts));
                    let kept = 100.0 - model.breakdown.within_reach(100.0, &freed);
                    amounts[StateIndex::soil_n as usize] = kept + 1e-6;
                }
                let now = model.moment_on(10.0);
                let state = State::from_array(amounts);
                let (_, slopes) = model.sloping_change(&now, &now, &state);
                for (place, column) in slopes.columns.iter().enumerate() {
                    for (row, slope) in column.iter().enumerate() {
                        seen[row][place] |= *slope != 0.0;
                    }
                }
            }
        }
        assert_eq!(seen, Coupling::KNOWN);
    }

    #[test]
    fn the_last_traces_of_anything_have_finite_slopes() {
        let points = Sobol::new(7);
        for (index, model) in models().iter().enumerate() {
            for trace in [0.0, 5e-324, 1e-310, 1e-200, 1e-150, 1e-90, 1e-30] {
                for traces in 0..200 {
                    let mut amounts = amounts(points, traces);
                    for (place, amount) in amounts.iter_mut().enumerate() {
                        let chance = points.coordinate(traces, 50 + place as u32);
                        if chance < 0.3 || (chance < 0.8 && traces % 2 == 0) {
                            *amount = trace;
                        }
                    }
                    let day = 0.25 * f64::from(traces);
                    let now = model.moment_on(day);
                    let pace = model.pace_on(day, &now);
                    let (_, slopes) =
                        model.sloping_change(&now, &pace, &State::from_array(amounts));
                    let finite = |column: &Column| column.iter().all(|slope| slope.is_finite());
                    let all = slopes.columns.iter().all(finite) && finite(&slopes.time);
                    assert!(all, "{amounts:?} of model {index} on day {day}");
                }
            }
        }
    }

    #[test]
    fn what_is_below_nothing_has_no_slope() {
        let model = models().remove(0);
        let mut amounts = [0.0; STATES];
        amounts[..COUPLED_STATES].copy_from_slice(&MOST);
        amounts[StateIndex::algae as usize] = -1e-11;
        let now = model.moment_on(3.0);
        let (_, slopes) = model.sloping_change(&now, &now, &State::from_array(amounts));
        assert_eq!(slopes.columns[StateIndex::algae as usize], [0.0; STATES]);
        assert_ne!(slopes.columns[StateIndex::fast as usize], [0.0; STATES]);
    }
}
