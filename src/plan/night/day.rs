//! Which day's tank a night is computed for.

use crate::design::Design;
use crate::night::{NightInputs, lows_mg_l};
use crate::numerics::rodas::IntegrationError;
use crate::plan::flush::calendar::kinds;
use crate::source::Band;
use crate::startup::{self, Inputs, Parameters, Trajectory, day_state};

/// The day of a start whose night is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum OnDay {
    /// The one with the least oxygen at dawn, of those on which all animals are in: the
    /// last followed where some come later.
    #[default]
    Leanest,
    /// The day the tank is filled and planted.
    Filling,
    /// The day of the typical ammonia peak.
    FlushPeak,
    /// The last day followed.
    GrownIn,
    /// Days after filling.
    Day(u32),
}

/// Days between two nights that are tried for the leanest.
const STEP_D: u32 = 7;

/// The typical start of a design, from which a day is taken.
pub(super) struct TypicalStart<'a> {
    design: &'a Design,
    inputs: Inputs,
    parameters: Parameters<f64>,
    run: Trajectory,
    days: u32,
    light: Band,
}

impl<'a> TypicalStart<'a> {
    /// Followed for as long as the day asked for needs.
    pub(super) fn of(
        design: &'a Design,
        days: u32,
        on_day: OnDay,
    ) -> Result<Self, IntegrationError> {
        let days = match on_day {
            OnDay::Day(day) => days.max(day),
            OnDay::Leanest | OnDay::Filling | OnDay::FlushPeak | OnDay::GrownIn => days,
        };
        let inputs = Inputs::of(design);
        let parameters = Parameters::<Band>::of(design).central();
        Ok(Self {
            run: startup::run(&inputs, &parameters, days)?,
            design,
            inputs,
            parameters,
            days,
            light: startup::surface_light(design),
        })
    }

    /// The tank on the day asked for.
    pub(super) fn inputs(&self, on_day: OnDay) -> Result<NightInputs, IntegrationError> {
        match on_day {
            OnDay::Leanest => self.leanest(),
            OnDay::Filling => self.on(0),
            OnDay::FlushPeak => self.on(self.run.peaks().ammonia.day.round() as u32),
            OnDay::GrownIn => self.on(self.days),
            OnDay::Day(day) => self.on(day),
        }
    }

    /// Days on which light and nutrients favour algae.
    pub(super) fn algae_window_d(&self) -> f64 {
        self.run.algae_window_days()
    }

    /// A day with the animals that are in by then.
    fn on(&self, day: u32) -> Result<NightInputs, IntegrationError> {
        let sample = self.run.at_day(day.min(self.days));
        let sample = sample.ok_or(IntegrationError::NotFinite {
            time: f64::from(day),
        })?;
        let state = day_state(&self.inputs, &self.parameters, sample);
        Ok(NightInputs::of(self.design, &state, self.light))
    }

    /// The day on which all animals are in, if only after the start; where none come,
    /// the first on which any might.
    fn stocked_from(&self) -> u32 {
        let stock = self.design.draft().animals.iter();
        let days = stock.map(|stock| stock.from_day.ceil() as u32);
        let first = kinds(self.design).map(|animal| u32::from(animal.first_day));
        days.max().or(first.min()).unwrap_or_default()
    }

    /// Animals that come after the start are taken to be in on its last day.
    fn leanest(&self) -> Result<NightInputs, IntegrationError> {
        let last = self.on(self.days)?.with_all_animals(self.design);
        let others = (self.stocked_from()..self.days).step_by(STEP_D as usize);
        let others: Result<Vec<NightInputs>, IntegrationError> =
            others.map(|day| self.on(day)).collect();
        let mut days = vec![last.clone()];
        days.extend(others?);
        let lows = lows_mg_l(&days)?;
        let least = days
            .into_iter()
            .zip(lows)
            .reduce(|least, other| if other.1 < least.1 { other } else { least });
        Ok(least.map_or(last, |(leanest, _)| leanest))
    }
}
