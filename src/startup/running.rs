//! A running tank as it stands between two events, and what the events do to it.

use super::inputs::{
    Conditions, Dissolved, Inputs, ModelEvent, ModelEventKind, NutrientDose, PlantedMass,
};
use super::model::{Starts, StartupModel};
use super::nitrification::seed_on_plants;
use super::passages::{OfEach, Passages};
use super::soil;
use super::state::{STATES, State};
use crate::parameters::Parameters;
use crate::units::Concentration;

/// Kept off zero where plants are averaged, g/m2.
const TRACE_G_M2: f64 = 1e-9;

/// A tank as it stands, between two events.
#[derive(Clone)]
pub(super) struct RunningTank {
    parameters: Parameters<f64>,
    conditions: Conditions,
    starts: Starts,
    /// Depth of cap that was clean when the last cap was laid.
    clean_cap_m: OfEach,
    pub(super) state: State,
    /// Nitrogen stirred from the bed into the water so far, g N/m2.
    pub(super) stirred_g_m2: f64,
}

impl RunningTank {
    /// The tank just filled and planted.
    pub(super) fn filled(inputs: &Inputs, parameters: &Parameters<f64>) -> Self {
        let conditions = Conditions::new(inputs);
        let tap = &parameters.tap;
        let water = State {
            ammonia: tap.ammonia,
            nitrite: tap.nitrite,
            nitrate: tap.nitrate,
            phosphate: tap.phosphate,
            ammonia_oxidisers: parameters.nitrifiers.ammonia_seed,
            nitrite_oxidisers: parameters.nitrifiers.nitrite_seed,
            algae: parameters.algae.start,
            ..State::from_array([0.0; STATES])
        };
        let depth_m = conditions.soil_depth_m;
        let phosphate = Passages::new(parameters, &conditions).phosphate;
        let mut tank = Self {
            parameters: *parameters,
            conditions,
            starts: Starts {
                cap: 0.0,
                floating: 0.0,
                fast: 0.0,
                slow: 0.0,
            },
            clean_cap_m: OfEach {
                ammonium: conditions.cap_depth_m,
                phosphate: conditions.cap_depth_m,
            },
            state: soil::filled(parameters, depth_m, &phosphate, water),
            stirred_g_m2: 0.0,
        };
        tank.stir(parameters.soil.stirred_share);
        tank.plant(0.0, &inputs.planting);
        tank.state.added_n = 0.0;
        tank.state.added_p = 0.0;
        tank
    }

    /// The tank as it is set up on a day, with all done to it before; its amounts are left to a
    /// sample of the day.
    pub(super) fn on(inputs: &Inputs, parameters: &Parameters<f64>, day: f64) -> Self {
        let mut tank = Self::filled(inputs, parameters);
        let mut events: Vec<&ModelEvent> = inputs.events.iter().collect();
        events.sort_by(|one, other| one.day.total_cmp(&other.day));
        let done = events
            .into_iter()
            .filter(|event| event.day < day || event.day <= 0.0);
        done.for_each(|event| tank.apply(event.day, &event.kind));
        tank
    }

    /// Its rates until the next event.
    pub(super) fn model(&self) -> StartupModel {
        StartupModel::new(
            &self.parameters,
            &self.conditions,
            self.starts,
            self.clean_cap_m,
        )
    }

    /// Does what an event says.
    pub(super) fn apply(&mut self, day: f64, event: &ModelEventKind) {
        match event {
            ModelEventKind::WaterChange(share) => self.change_water(share.fraction()),
            ModelEventKind::CapAdded(depth) => self.add_cap(day, depth.m()),
            ModelEventKind::Disturbed(share) => self.stir(share.fraction()),
            ModelEventKind::PlantsAdded(planting) => self.plant(day, planting),
            ModelEventKind::PlantsRemoved(planting) => self.remove(planting),
            ModelEventKind::Fed(feed) => self.conditions = self.conditions.fed(*feed),
            ModelEventKind::Thinned(cover) => {
                self.conditions.floaters_above = Some(cover.fraction());
            }
            ModelEventKind::LightHours(hours) => self.conditions.light_hours = *hours,
            ModelEventKind::Temperature(water) => self.conditions.temperature_c = water.celsius(),
            ModelEventKind::BacteriaLost { ammonia, nitrite } => {
                self.state.ammonia_oxidisers *= 1.0 - ammonia.fraction();
                self.state.nitrite_oxidisers *= 1.0 - nitrite.fraction();
            }
            ModelEventKind::Measured(water) => self.find(water),
            ModelEventKind::Dosed(dose) => self.dose(dose),
        }
    }

    /// Replaces a share of the water by tap water.
    fn change_water(&mut self, share: f64) {
        let tap = &self.parameters.tap;
        let (before, before_p) = (self.dissolved_n(), self.state.phosphate);
        let blend = |old: f64, new: f64| old * (1.0 - share) + new * share;
        self.state.ammonia = blend(self.state.ammonia, tap.ammonia);
        self.state.nitrite = blend(self.state.nitrite, tap.nitrite);
        self.state.nitrate = blend(self.state.nitrate, tap.nitrate);
        self.state.phosphate = blend(self.state.phosphate, tap.phosphate);
        self.state.added_n += self.dissolved_n() - before;
        self.state.added_p += (self.state.phosphate - before_p) * self.conditions.depth_m;
        self.state.alkalinity_used *= 1.0 - share;
    }

    /// Sets the water to what was measured; the difference counts as brought in.
    fn find(&mut self, water: &Dissolved) {
        let before = self.dissolved_n();
        let state = &mut self.state;
        let found = |own: &mut f64, measured: Option<Concentration>| {
            if let Some(measured) = measured {
                *own = measured.mg_l();
            }
        };
        found(&mut state.ammonia, water.ammonia);
        found(&mut state.nitrite, water.nitrite_n);
        found(&mut state.nitrate, water.nitrate_n);
        self.state.added_n += self.dissolved_n() - before;
    }

    /// Dissolves nutrients in the water.
    fn dose(&mut self, dose: &NutrientDose) {
        let (state, depth_m) = (&mut self.state, self.conditions.depth_m);
        let nitrogen_g_m2 = dose.nitrate_n.g() / self.conditions.floor_m2;
        let phosphorus_g_m2 = dose.phosphorus.g() / self.conditions.floor_m2;
        state.nitrate += nitrogen_g_m2 / depth_m;
        state.phosphate += phosphorus_g_m2 / depth_m;
        state.added_n += nitrogen_g_m2;
        state.added_p += phosphorus_g_m2;
    }

    fn dissolved_n(&self) -> f64 {
        (self.state.ammonia + self.state.nitrite + self.state.nitrate) * self.conditions.depth_m
    }

    /// Lays clean sand on the cap: with what is not yet filled of the cap below,
    /// it has to fill before it lets through (judgement).
    fn add_cap(&mut self, day: f64, depth_m: f64) {
        let passages = Passages::new(&self.parameters, &self.conditions);
        let filled = passages.rise(self.clean_cap_m, day - self.starts.cap);
        let clean = &mut self.clean_cap_m;
        clean.ammonium = clean.ammonium * (1.0 - filled.ammonium) + depth_m;
        clean.phosphate = clean.phosphate * (1.0 - filled.phosphate) + depth_m;
        self.starts.cap = day;
        self.conditions.cap_depth_m += depth_m;
    }

    /// Brings the ammonium of a share of the soil into the water, and the phosphate of its
    /// pore water.
    fn stir(&mut self, share: f64) {
        let (state, depth_m) = (&mut self.state, self.conditions.depth_m);
        let moved = state.soil_n * share;
        state.soil_n -= moved;
        state.ammonia += moved / depth_m;
        self.stirred_g_m2 += moved;
        let phosphate = Passages::new(&self.parameters, &self.conditions).phosphate;
        let pores_m = self.parameters.soil.porosity * self.conditions.soil_depth_m;
        let moved = soil::pore_water(state.soil_p, &phosphate) * pores_m * share;
        state.soil_p -= moved;
        state.phosphate += moved / depth_m;
    }

    /// Puts plants in with their stores and the bacteria on them; a group settles in from
    /// the average day of its mass.
    fn plant(&mut self, day: f64, planting: &PlantedMass) {
        let added = self.per_m2(planting);
        let carrying = added.floating + added.fast + added.slow;
        self.conditions.fixing_g_m2 += planting.fixing.g() / self.conditions.floor_m2;
        self.conditions.stems_planted_g_m2 += added.fast;
        self.conditions.planted_g_m2 += carrying;
        let (state, starts) = (&mut self.state, &mut self.starts);
        let join = |start: &mut f64, mass: &mut f64, more: f64| {
            let new = more + TRACE_G_M2;
            *start = (*start * *mass + new * day) / (*mass + new);
            *mass += more;
        };
        join(&mut starts.floating, &mut state.floating, added.floating);
        join(&mut starts.fast, &mut state.fast, added.fast);
        join(&mut starts.slow, &mut state.slow, added.slow);
        let (ammonia_oxidisers, nitrite_oxidisers) =
            seed_on_plants(&self.parameters.nitrifiers, carrying);
        state.ammonia_oxidisers += ammonia_oxidisers;
        state.nitrite_oxidisers += nitrite_oxidisers;
        let (floating, fast) = (&self.parameters.floating, &self.parameters.fast);
        let slow = &self.parameters.slow;
        let floating_n = added.floating * floating.start_nitrogen;
        let floating_p = added.floating * floating.start_phosphorus;
        let fast_n = added.fast * fast.start_nitrogen;
        let fast_p = added.fast * fast.start_phosphorus;
        state.floating_n += floating_n;
        state.floating_p += floating_p;
        state.fast_n += fast_n;
        state.fast_p += fast_p;
        state.added_n += floating_n + fast_n + added.slow * slow.tissue_nitrogen;
        state.added_p += floating_p + fast_p + added.slow * slow.tissue_phosphorus;
    }

    /// Takes plants out with what is in them.
    fn remove(&mut self, planting: &PlantedMass) {
        let removed = self.per_m2(planting);
        let fixing = &mut self.conditions.fixing_g_m2;
        *fixing = (*fixing - planting.fixing.g() / self.conditions.floor_m2).max(0.0);
        let state = &mut self.state;
        let kept = |mass: f64, less: f64| 1.0 - (less / (mass.max(0.0) + TRACE_G_M2)).min(1.0);
        let floating = kept(state.floating, removed.floating);
        let fast = kept(state.fast, removed.fast);
        let slow = kept(state.slow, removed.slow);
        let slow_less = state.slow * (1.0 - slow);
        state.added_n -= state.floating_n * (1.0 - floating)
            + state.fast_n * (1.0 - fast)
            + slow_less * self.parameters.slow.tissue_nitrogen;
        state.added_p -= state.floating_p * (1.0 - floating)
            + state.fast_p * (1.0 - fast)
            + slow_less * self.parameters.slow.tissue_phosphorus;
        state.floating *= floating;
        state.floating_n *= floating;
        state.floating_p *= floating;
        state.fast *= fast;
        state.fast_n *= fast;
        state.fast_p *= fast;
        state.slow *= slow;
    }

    fn per_m2(&self, planting: &PlantedMass) -> Masses {
        let floor_m2 = self.conditions.floor_m2;
        let closed_layer = self.parameters.floating.closed_layer;
        Masses {
            floating: closed_layer * planting.cover.fraction() + planting.floating.g() / floor_m2,
            fast: planting.fast.g() / floor_m2,
            slow: planting.slow.g() / floor_m2,
        }
    }
}

/// Plants by group, g dry/m2.
struct Masses {
    floating: f64,
    fast: f64,
    slow: f64,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Mass, Share};
    use approx::assert_relative_eq;

    /// Depth of the reference cube's water, m.
    const DEPTH_M: f64 = 0.16;

    fn filled(planting: PlantedMass) -> RunningTank {
        let inputs = Inputs {
            planting,
            ..Inputs::reference()
        };
        RunningTank::filled(&inputs, &Parameters::reference().central())
    }

    /// So many grams on each square metre of the reference cube's floor.
    fn per_m2(grams: f64) -> Mass {
        Mass::from_g(grams * 0.0493)
    }

    #[test]
    fn a_change_of_all_water_brings_in_what_the_tap_holds_and_takes_out_the_rest() {
        let mut tank = filled(PlantedMass::default());
        tank.state.ammonia = 3.0;
        tank.state.nitrite = 2.0;
        tank.state.nitrate = 1.0;
        tank.parameters.tap.ammonia = 0.25;
        tank.parameters.tap.nitrite = 0.5;
        tank.parameters.tap.nitrate = 0.75;
        tank.apply(
            10.0,
            &ModelEventKind::WaterChange(Share::from_fraction(1.0)),
        );
        assert_relative_eq!(tank.state.nitrite, 0.5);
        assert_relative_eq!(
            tank.state.added_n,
            (1.5 - 6.0) * DEPTH_M,
            max_relative = 1e-9
        );
    }

    #[test]
    fn a_group_starts_on_the_mean_day_of_its_mass() {
        let stems = PlantedMass {
            fast: per_m2(30.0),
            ..PlantedMass::default()
        };
        let mut tank = filled(stems);
        let more = PlantedMass {
            fast: per_m2(10.0),
            slow: per_m2(5.0),
            ..PlantedMass::default()
        };
        tank.apply(20.0, &ModelEventKind::PlantsAdded(more));
        assert_relative_eq!(tank.state.fast, 40.0, max_relative = 1e-9);
        assert_relative_eq!(tank.starts.fast, 5.0, max_relative = 1e-6);
        assert_relative_eq!(tank.state.slow, 5.0, max_relative = 1e-9);
        assert_relative_eq!(tank.starts.slow, 20.0, max_relative = 1e-6);
        assert_relative_eq!(tank.starts.floating, 20.0, max_relative = 1e-6);
    }

    #[test]
    fn sand_laid_on_a_cap_adds_what_is_not_yet_filled() {
        let mut tank = filled(PlantedMass::default());
        let day = 3.0;
        let risen = Passages::new(&tank.parameters, &tank.conditions).rise(tank.clean_cap_m, day);
        assert!(risen.ammonium > 0.1 && risen.ammonium < 0.9, "{risen:?}");
        tank.apply(day, &ModelEventKind::CapAdded(Length::from_mm(10.0)));
        let clean_m = 0.025 * (1.0 - risen.ammonium) + 0.010;
        assert_relative_eq!(tank.clean_cap_m.ammonium, clean_m, max_relative = 1e-9);
        // phosphate, which sand holds back, has hardly begun to cross
        assert!(tank.clean_cap_m.phosphate > 0.034);
        assert_relative_eq!(tank.conditions.cap_depth_m, 0.035, max_relative = 1e-9);
        assert_relative_eq!(tank.starts.cap, day);
    }

    #[test]
    fn floaters_go_by_cover_and_by_mass_together() {
        let half = PlantedMass {
            cover: Share::from_percent(50.0),
            floating: per_m2(7.0),
            ..PlantedMass::default()
        };
        let tank = filled(half);
        let closed = tank.parameters.floating.closed_layer;
        assert_relative_eq!(tank.state.floating, closed / 2.0 + 7.0, max_relative = 1e-9);
    }

    #[test]
    fn what_is_pulled_out_takes_its_nitrogen_along() {
        let stems = PlantedMass {
            fast: per_m2(40.0),
            ..PlantedMass::default()
        };
        let mut tank = filled(stems);
        let before = tank.state.fast_n;
        let quarter = PlantedMass {
            fast: per_m2(10.0),
            ..PlantedMass::default()
        };
        tank.apply(5.0, &ModelEventKind::PlantsRemoved(quarter));
        assert_relative_eq!(tank.state.fast, 30.0, max_relative = 1e-6);
        assert_relative_eq!(tank.state.fast_n, before * 0.75, max_relative = 1e-6);
        assert_relative_eq!(tank.state.added_n, -before * 0.25, max_relative = 1e-6);
    }
}
