//! The course of a run, and what is read off it.

use super::state::State;
use crate::numerics::rodas::Statistics;

/// Limits within which a day favours algae: nitrogen and phosphorus in the
/// water, mg/L, and mean light in it, umol/(m2 s). Judgement: nitrogen and
/// phosphorus lie where stream films stop growing faster, 0.15-2.45 and
/// 0.012-0.029 by their chlorophyll (Schmidt et al. 2019, `schmidt_2019`).
const WINDOW_NITROGEN_MG_L: f64 = 0.2;
const WINDOW_PHOSPHORUS_MG_L: f64 = 0.02;
const WINDOW_LIGHT_UMOL_M2_S: f64 = 20.0;

/// A tank at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Days since filling.
    pub day: f64,
    /// Amounts.
    pub state: State,
    /// Floaters that draw their nitrogen from the air, g dry/m2.
    pub fixing_g_m2: f64,
    /// Ammonium given off by the bed, g N/(m2 d).
    pub release_g_m2_d: f64,
    /// Ammonium in the pore water of the soil, mg N/L.
    pub pore_water_mg_l: f64,
    /// Mean light in the water while the lamp is on, umol/(m2 s).
    pub light_umol_m2_s: f64,
    /// Light that plants and algae take up in a day, mol/m2.
    pub light_absorbed_mol_m2_d: f64,
    /// Dry tissue that plants and algae make, before any is lost, g/(m2 d).
    pub grown_g_m2_d: f64,
    /// Growth that the floaters' store of phosphorus allows, as a share of full growth.
    pub floating_p_share: f64,
    /// Ammonia oxidised, g N/(m2 d).
    pub ammonia_oxidised_g_m2_d: f64,
    /// Nitrite oxidised, g N/(m2 d).
    pub nitrite_oxidised_g_m2_d: f64,
    /// Nitrogen in the tank and lost from it, less what was added, g N/m2: the
    /// same at all times but for the error of the integration.
    pub nitrogen_g_m2: f64,
    /// Phosphorus alike, g P/m2.
    pub phosphorus_g_m2: f64,
}

/// What is read off a run more often than it is sampled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FineSample {
    /// Days since filling.
    pub(super) day: f64,
    /// mg N/L.
    pub(super) ammonia: f64,
    /// mg N/L.
    pub(super) nitrite: f64,
    /// mg N/L.
    pub(super) nitrate: f64,
    /// meq/L.
    pub(super) alkalinity_used: f64,
    /// Whether light and nutrients in the water favour algae.
    pub(super) favours_algae: bool,
}

/// Whether light, umol/(m2 s), and nutrients in the water favour algae.
pub(super) fn favours_algae(state: &State, light: impl FnOnce() -> f64) -> bool {
    state.ammonia + state.nitrite + state.nitrate > WINDOW_NITROGEN_MG_L
        && state.phosphate > WINDOW_PHOSPHORUS_MG_L
        && light() > WINDOW_LIGHT_UMOL_M2_S
}

/// The largest of some values from a day on, given with their days.
fn peak_of(values: impl Iterator<Item = (f64, f64)>, from: f64) -> Peak {
    let nothing = Peak {
        value: f64::NEG_INFINITY,
        day: from,
    };
    let later = values.filter(|(day, _)| *day >= from);
    later.fold(nothing, |peak, (day, value)| {
        if value > peak.value {
            Peak { value, day }
        } else {
            peak
        }
    })
}

/// The largest value of some looks from a day on.
pub(super) fn highest(looks: &[FineSample], from: f64, value: impl Fn(&FineSample) -> f64) -> Peak {
    peak_of(looks.iter().map(|look| (look.day, value(look))), from)
}

/// The first day after the last of some days that are over a limit; nothing if the last of
/// all is.
fn first_after(days: impl DoubleEndedIterator<Item = (f64, bool)>) -> Option<f64> {
    let mut clear = None;
    for (day, over) in days.rev() {
        if over {
            return clear;
        }
        clear = Some(day);
    }
    Some(0.0)
}

/// A run from filling to its last day.
#[derive(Debug, Clone, PartialEq)]
pub struct Trajectory {
    /// The same number of samples each day, from day 0 on. Where something is
    /// done to the tank, the sample shows it just before; on day 0 just after.
    pub samples: Vec<Sample>,
    /// That number; 8 in a single run.
    pub samples_per_day: u32,
    /// What was looked at more often, from day 0 on.
    pub(super) looks: Vec<FineSample>,
    /// How often a day.
    pub(super) looks_per_day: u32,
    /// Nitrogen stirred from the bed into the water at filling and by
    /// disturbances, g N/m2.
    pub stirred_g_m2: f64,
    /// The days on which a reading had water changed.
    pub changed_on: Vec<f64>,
    /// Work of the integration.
    pub statistics: Statistics,
}

/// A largest value and its day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peak {
    /// The value.
    pub value: f64,
    /// Days since filling.
    pub day: f64,
}

/// The largest values of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peaks {
    /// Ammonia, mg N/L.
    pub ammonia: Peak,
    /// Nitrite, mg N/L.
    pub nitrite: Peak,
    /// Nitrate, mg N/L.
    pub nitrate: Peak,
    /// Algae, g dry/m2.
    pub algae: Peak,
    /// Release by the bed, g N/(m2 d).
    pub release: Peak,
}

impl Trajectory {
    /// One sample for each whole day, from day 0 on.
    pub fn days(&self) -> impl Iterator<Item = &Sample> {
        self.samples.iter().step_by(self.samples_per_day as usize)
    }

    /// The sample of a whole day, if the run reaches it.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, run};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let trajectory = run(&Inputs::reference(), &numbers, 5)?;
    /// assert_eq!(trajectory.at_day(5).map(|sample| sample.day), Some(5.0));
    /// assert_eq!(trajectory.at_day(6), None);
    /// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
    /// ```
    pub fn at_day(&self, day: u32) -> Option<&Sample> {
        self.samples.get((day * self.samples_per_day) as usize)
    }

    /// The largest value from a day on.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, run};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let trajectory = run(&Inputs::reference(), &numbers, 30)?;
    /// let late = trajectory.peak_from(10.0, |sample| sample.state.ammonia);
    /// assert!(late.day >= 10.0 && late.value <= trajectory.peaks().ammonia.value);
    /// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
    /// ```
    pub fn peak_from(&self, day: f64, value: impl Fn(&Sample) -> f64) -> Peak {
        peak_of(
            self.samples
                .iter()
                .map(|sample| (sample.day, value(sample))),
            day,
        )
    }

    /// The largest values of the whole run.
    pub fn peaks(&self) -> Peaks {
        Peaks {
            ammonia: self.peak_from(0.0, |sample| sample.state.ammonia),
            nitrite: self.peak_from(0.0, |sample| sample.state.nitrite),
            nitrate: self.peak_from(0.0, |sample| sample.state.nitrate),
            algae: self.peak_from(0.0, |sample| sample.state.algae),
            release: self.peak_from(0.0, |sample| sample.release_g_m2_d),
        }
    }

    /// The day after which ammonia and nitrite stay below their limits, mg N/L;
    /// nothing if they do not by the end.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, run};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let trajectory = run(&Inputs::reference(), &numbers, 30)?;
    /// assert_eq!(trajectory.clear_after(1e9, 1e9), Some(0.0));
    /// assert_eq!(trajectory.clear_after(0.0, 0.0), None);
    /// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
    /// ```
    pub fn clear_after(&self, ammonia_mg_l: f64, nitrite_mg_l: f64) -> Option<f64> {
        let over = |ammonia: f64, nitrite: f64| ammonia >= ammonia_mg_l || nitrite >= nitrite_mg_l;
        let looks = self.looks.iter();
        first_after(looks.map(|look| (look.day, over(look.ammonia, look.nitrite))))
    }

    /// Days on which light and nutrients in the water favour algae.
    ///
    /// # Source
    /// Judgement on stream films (Schmidt et al. 2019, `schmidt_2019`).
    ///
    /// # Limits
    /// Says when light and nutrients favour algae, not that they come; nor do they stay away
    /// below: plant beds at 0.003-0.018 mg P/L carried much periphyton, and lost it where
    /// phosphorus was added (Mei and Zhang 2013, `mei_zhang_2013`).
    pub fn algae_window_days(&self) -> f64 {
        let count = self.looks.iter().filter(|look| look.favours_algae).count();
        count as f64 / f64::from(self.looks_per_day)
    }
}
