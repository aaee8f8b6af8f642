//! What is kept of a run on its way.

use super::model::StartupModel;
use super::state::State;
use super::trajectory::{FineSample, Sample, favours_algae};

/// Collects the samples and the looks that fall into each step.
pub(super) struct Recorder {
    pub(super) samples: Vec<Sample>,
    pub(super) looks: Vec<FineSample>,
    looks_per_day: u32,
    looks_per_sample: u32,
    last: u32,
}

impl Recorder {
    /// For so many days, with so many looks a day, a multiple of its samples.
    pub(super) fn new(days: u32, looks_per_day: u32, samples_per_day: u32) -> Self {
        let last = days.saturating_mul(looks_per_day);
        let samples = days.saturating_mul(samples_per_day);
        Self {
            samples: Vec::with_capacity(samples as usize + 1),
            looks: Vec::with_capacity(last as usize + 1),
            looks_per_day,
            looks_per_sample: looks_per_day / samples_per_day,
            last,
        }
    }

    /// How much is recorded.
    pub(super) fn recorded(&self) -> [usize; 2] {
        [self.samples.len(), self.looks.len()]
    }

    /// Forgets what came after.
    pub(super) fn go_back(&mut self, [samples, looks]: [usize; 2]) {
        self.samples.truncate(samples);
        self.looks.truncate(looks);
    }

    /// The next moment wanted, until all are there.
    fn next(&self) -> Option<u32> {
        let next = u32::try_from(self.looks.len()).ok()?;
        (next <= self.last).then_some(next)
    }

    /// Looks at the tank at every moment up to one.
    pub(super) fn look(
        &mut self,
        model: &StartupModel,
        until: f64,
        state_at: impl Fn(f64) -> State,
    ) {
        while let Some(next) = self.next() {
            let day = f64::from(next) / f64::from(self.looks_per_day);
            if day > until {
                return;
            }
            let state = state_at(day);
            self.looks.push(look(model, day, &state.present()));
            if next.is_multiple_of(self.looks_per_sample) {
                self.samples.push(sample(model, day, &state));
            }
        }
    }
}

/// What of a tank is looked at more often than it is sampled.
fn look(model: &StartupModel, day: f64, state: &State) -> FineSample {
    let light = || model.daylight(state).mean_in_water_umol_m2_s();
    FineSample {
        day,
        ammonia: state.ammonia,
        nitrite: state.nitrite,
        nitrate: state.nitrate,
        alkalinity_used: state.alkalinity_used,
        favours_algae: favours_algae(state, light),
    }
}

/// A tank at a moment. Between two steps an amount may seem to dip below nothing where it
/// does not at either: it is shown as nothing.
fn sample(model: &StartupModel, day: f64, state: &State) -> Sample {
    let shown = state.present();
    let moment = model.moment_on(day);
    let turnover = model.turnover(&moment, &shown);
    let daylight = model.daylight(&shown);
    Sample {
        day,
        state: shown,
        fixing_g_m2: model.fixing_g_m2(),
        release_g_m2_d: turnover.ammonia.from_soil,
        pore_water_mg_l: model.pore_ammonium(&shown),
        light_umol_m2_s: daylight.mean_in_water_umol_m2_s(),
        light_absorbed_mol_m2_d: daylight.absorbed_mol_m2_d(),
        grown_g_m2_d: model.grown_g_m2_d(&moment, &shown),
        floating_p_share: model.floating.phosphorus_share(&shown.floating_stand()),
        ammonia_oxidised_g_m2_d: turnover.ammonia_oxidised(),
        nitrite_oxidised_g_m2_d: turnover.nitrite.nitrogen,
        nitrogen_g_m2: model.nitrogen(state),
        phosphorus_g_m2: model.phosphorus(state),
    }
}
