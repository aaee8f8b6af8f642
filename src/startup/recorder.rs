//! What is kept of a run.

use super::model::StartupModel;
use super::state::State;
use super::trajectory::{FineSample, Sample, favours_algae};

/// What is kept of a run as it goes.
pub(super) trait RunRecord {
    /// How much is kept.
    type Mark: Copy;

    /// Keeps what is wanted of a tank up to a day, that day's too.
    fn look(&mut self, model: &StartupModel, until: f64, state_at: impl Fn(f64) -> State);

    fn recorded(&self) -> Self::Mark;

    /// Forgets what came after.
    fn go_back(&mut self, to: Self::Mark);
}

/// Collects the samples and the looks that fall into each step.
pub(super) struct Recorder {
    pub(super) samples: Vec<Sample>,
    pub(super) looks: Vec<FineSample>,
    looks_per_day: u32,
    looks_per_sample: u32,
    last: u32,
}

impl Recorder {
    /// For a run of some days; the looks of a day are a multiple of its samples.
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

    /// The next moment wanted, until all are there.
    fn next(&self) -> Option<u32> {
        let next = u32::try_from(self.looks.len()).ok()?;
        (next <= self.last).then_some(next)
    }
}

impl RunRecord for Recorder {
    type Mark = [usize; 2];

    fn look(&mut self, model: &StartupModel, until: f64, state_at: impl Fn(f64) -> State) {
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

    fn recorded(&self) -> Self::Mark {
        [self.samples.len(), self.looks.len()]
    }

    fn go_back(&mut self, [samples, looks]: Self::Mark) {
        self.samples.truncate(samples);
        self.looks.truncate(looks);
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
