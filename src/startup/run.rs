//! A run through the days, cut at every event.

use std::ops::ControlFlow;

use super::by_reading::ChangesByReading;
use super::inputs::{Inputs, ModelEvent, ModelEventKind};
use super::model::StartupModel;
use super::recorder::{Recorder, RunRecord};
use super::running::RunningTank;
use super::state::{COUPLED_STATES, STATES, State};
use super::trajectory::Trajectory;
use crate::numerics::implicit_euler;
use crate::numerics::rodas::{Control, IntegrationError, Statistics, Step, integrate_until};
use crate::parameters::Parameters;

/// How finely a run is followed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Detail {
    /// Relative tolerance of a step.
    relative: f64,
    /// Errors let pass, over those of [`NEGLIGIBLE`].
    slack: f64,
    /// The same for nitrate and phosphate, which limit plants only near zero but
    /// set the step after every water change.
    nutrient_slack: f64,
    samples_per_day: u32,
    /// A multiple of that number.
    looks_per_day: u32,
}

impl Detail {
    /// For a run that is looked at alone.
    pub(super) const SINGLE: Self = Self {
        relative: 1e-6,
        slack: 1.0,
        nutrient_slack: 1.0,
        samples_per_day: 8,
        looks_per_day: 8,
    };

    /// For one of many: peaks differ from those of a single run by under 1 % and
    /// curves by under 2 %, far below the spread between members.
    pub(super) const MEMBER: Self = Self {
        relative: 1e-4,
        slack: 1e2,
        nutrient_slack: 1e3,
        samples_per_day: 1,
        looks_per_day: 4,
    };

    fn control(self) -> Control<STATES> {
        let absolute = State {
            nitrate: NEGLIGIBLE.nitrate * self.nutrient_slack,
            phosphate: NEGLIGIBLE.phosphate * self.nutrient_slack,
            ..NEGLIGIBLE.map(|amount| amount * self.slack)
        };
        let mut control = Control::new(self.relative, absolute.into_array());
        for lowest in control.lowest.iter_mut().take(COUPLED_STATES) {
            *lowest = -NOTHING;
        }
        control
    }
}

/// How far below nothing an amount may fall by an error of the integration.
const NOTHING: f64 = 1e-10;

/// Errors that do not matter in a single run, in the unit of each state.
const NEGLIGIBLE: State = State {
    fast_soil_n: 1e-7,
    slow_soil_n: 1e-7,
    stable_soil_n: 1e-6,
    reducible_p: 1e-7,
    stable_p: 1e-7,
    soil_n: 1e-7,
    soil_p: 1e-7,
    ammonia: 1e-7,
    nitrite: 1e-7,
    nitrate: 1e-7,
    phosphate: 1e-8,
    ammonia_oxidisers: 1e-10,
    nitrite_oxidisers: 1e-10,
    floating: 1e-6,
    floating_n: 1e-7,
    floating_p: 1e-8,
    fast: 1e-6,
    fast_n: 1e-7,
    fast_p: 1e-8,
    slow: 1e-6,
    algae: 1e-7,
    detritus_n: 1e-7,
    released_n: 1e-6,
    released_p: 1e-6,
    denitrified_n: 1e-6,
    harvested_n: 1e-6,
    harvested_p: 1e-6,
    added_n: 1e-6,
    added_p: 1e-6,
    alkalinity_used: 1e-6,
};

/// Follows a tank from filling for a number of days.
///
/// # Errors
/// [`IntegrationError`], when the numbers of the tank leave the finite ones.
///
/// # Source
/// The equations and their sources stand with each rate; the whole is a
/// nitrogen balance of the kind of lake models (Janse 2005) with a soil below.
///
/// # Limits
/// Oxygen and pH are given, not followed; the water's phosphate is not bound by the cap
/// from above; nothing grazes; plants do not shade each other by height, and lack neither
/// iron nor potassium. Without feed it describes hunger in the long run.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, run};
/// use lentic::units::PhotonFlux;
/// let dark = Inputs { light: PhotonFlux::ZERO, ..Inputs::reference() };
/// let trajectory = run(&dark, &Parameters::<Band>::reference().central(), 90)?;
/// // ammonia first, nitrite after it, nitrate last
/// let peaks = trajectory.peaks();
/// assert!(peaks.ammonia.day < peaks.nitrite.day && peaks.nitrite.day < peaks.nitrate.day);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn run(
    inputs: &Inputs,
    parameters: &Parameters<f64>,
    days: u32,
) -> Result<Trajectory, IntegrationError> {
    simulate(inputs, parameters, days, Detail::SINGLE)
}

/// Net growth rates at the light of the first day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlannedGrowth {
    /// Floaters, 1/d.
    pub floating_per_d: f64,
    /// Fast submerged plants, settled, under the floaters, 1/d.
    pub fast_per_d: f64,
}

/// Net growth of the plants as planted, well fed, uncrowded and without algae,
/// for the planting index.
///
/// # Source
/// The growth of the model itself.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, planned_growth};
/// let numbers = Parameters::<Band>::reference().central();
/// let growth = planned_growth(&Inputs::reference(), &numbers);
/// assert!(growth.floating_per_d > 0.0);
/// ```
pub fn planned_growth(inputs: &Inputs, parameters: &Parameters<f64>) -> PlannedGrowth {
    let tank = RunningTank::filled(inputs, parameters);
    let model = tank.model();
    let without_algae = State {
        algae: 0.0,
        ..tank.state
    };
    PlannedGrowth {
        floating_per_d: model.floating.replete_growth_per_d(),
        fast_per_d: model
            .fast
            .replete_growth_per_d(model.daylight(&without_algae).mean_in_water_umol_m2_s()),
    }
}

/// The run of one set of parameters, recorded as finely as `detail` asks.
pub(super) fn simulate(
    inputs: &Inputs,
    parameters: &Parameters<f64>,
    days: u32,
    detail: Detail,
) -> Result<Trajectory, IntegrationError> {
    let recorder = Recorder::new(days, detail.looks_per_day, detail.samples_per_day);
    let tank = RunningTank::filled(inputs, parameters);
    let mut run = Run::of(tank, inputs.changes_by_reading, detail, recorder);
    let events = in_order(&inputs.events);
    run.through(0.0, &events, f64::from(days), |_, _| ())?;
    Ok(Trajectory {
        samples: run.recorder.samples,
        looks: run.recorder.looks,
        looks_per_day: detail.looks_per_day,
        samples_per_day: detail.samples_per_day,
        stirred_g_m2: run.tank.stirred_g_m2,
        changed_on: run.changed_on,
        statistics: run.statistics,
    })
}

/// What happens, by day; on one day as written.
pub(super) fn in_order<'a>(
    events: impl IntoIterator<Item = &'a ModelEvent>,
) -> Vec<&'a ModelEvent> {
    let mut events: Vec<&ModelEvent> = events.into_iter().collect();
    events.sort_by(|a, b| a.day.total_cmp(&b.day));
    events
}

/// A run on its way.
pub(super) struct Run<R> {
    pub(super) tank: RunningTank,
    rule: Option<ChangesByReading>,
    control: Control<STATES>,
    pub(super) recorder: R,
    statistics: Statistics,
    changed_on: Vec<f64>,
}

impl<R: RunRecord> Run<R> {
    pub(super) fn of(
        tank: RunningTank,
        rule: Option<ChangesByReading>,
        detail: Detail,
        recorder: R,
    ) -> Self {
        Self {
            tank,
            rule,
            control: detail.control(),
            recorder,
            statistics: Statistics::default(),
            changed_on: Vec::new(),
        }
    }

    /// Brings the tank from one day to another through what happens between; `stop` is shown
    /// the tank before each event, with the events still to come, and at the end.
    pub(super) fn through(
        &mut self,
        start: f64,
        events: &[&ModelEvent],
        end: f64,
        mut stop: impl FnMut(&mut Self, &[&ModelEvent]),
    ) -> Result<(), IntegrationError> {
        let mut day = start;
        for (place, event) in events.iter().enumerate() {
            if event.day > end {
                break;
            }
            if event.day > day {
                self.follow(day, event.day)?;
                stop(self, &events[place..]);
                day = event.day;
            }
            self.tank.apply(day, &event.kind);
        }
        self.follow(day, end)?;
        stop(self, &[]);
        Ok(())
    }

    /// Brings the tank from one day to another, and changes water whenever a test between
    /// asks for it.
    fn follow(&mut self, start: f64, end: f64) -> Result<(), IntegrationError> {
        let mut day = start;
        while let Some(changed) = self.advance((day, end))? {
            self.changed_on.push(changed);
            if let Some(rule) = self.rule {
                self.tank
                    .apply(changed, &ModelEventKind::WaterChange(rule.share));
            }
            day = changed;
        }
        Ok(())
    }

    /// Brings the tank to the next test that asks for a change of water, which it gives, or
    /// else to the end, and records what it passes.
    fn advance(&mut self, stretch: (f64, f64)) -> Result<Option<f64>, IntegrationError> {
        let (model, rule, recorder) = (self.tank.model(), self.rule, &mut self.recorder);
        recorder.look(&model, stretch.0, |_| self.tank.state);
        let before = recorder.recorded();
        let initial = self.tank.state.into_array();
        let mut asked = None;
        let followed = integrate_until(&model, stretch, initial, &self.control, |step| {
            asked = passed(step, &model, rule, recorder);
            match asked {
                Some(_) => ControlFlow::Break(()),
                None => ControlFlow::Continue(()),
            }
        });
        let state = match followed {
            Ok((state, statistics)) => {
                self.statistics += statistics;
                state
            }
            Err(IntegrationError::StepTooSmall { .. } | IntegrationError::TooManySteps { .. }) => {
                // goes on where no step is accurate enough
                recorder.go_back(before);
                let lowest = &self.control.lowest;
                implicit_euler::integrate(&model, stretch, initial, lowest, |step| {
                    asked = asked.or_else(|| passed(step, &model, rule, recorder));
                })?
            }
            Err(error) => return Err(error),
        };
        self.tank.state = asked.map_or(State::from_array(state), |(_, state)| state);
        Ok(asked.map(|(day, _)| day))
    }
}

/// Records what a step passes, up to a test within it that asks for a change of water, which
/// it gives.
fn passed(
    step: &Step<f64, STATES>,
    model: &StartupModel,
    rule: Option<ChangesByReading>,
    recorder: &mut impl RunRecord,
) -> Option<(f64, State)> {
    let state_at = |day: f64| State::from_array(step.at(day));
    let asked = rule.and_then(|rule| rule.first_within((step.start, step.end), state_at));
    recorder.look(model, asked.map_or(step.end, |(day, _)| day), state_at);
    asked
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::sobol::Sobol;
    use crate::source::Band;
    use crate::startup::PlantedMass;
    use crate::startup::trajectory::{FineSample, highest};
    use crate::units::{Length, Mass, PhotonFlux, Share, Temperature};

    fn tank() -> Inputs {
        Inputs {
            planting: PlantedMass {
                cover: Share::from_percent(15.0),
                fast: Mass::from_g(1.5),
                slow: Mass::from_g(1.0),
                ..PlantedMass::default()
            },
            light: PhotonFlux::from_umol_m2_s(70.0),
            temperature: Temperature::from_celsius(24.0),
            floaters_above: Some(Share::from_percent(50.0)),
            events: vec![
                ModelEvent {
                    day: 10.0,
                    kind: ModelEventKind::WaterChange(Share::from_percent(30.0)),
                },
                ModelEvent {
                    day: 12.0,
                    kind: ModelEventKind::CapAdded(Length::from_mm(5.0)),
                },
            ],
            ..Inputs::reference()
        }
    }

    #[test]
    fn a_run_that_finds_no_step_short_enough_goes_on_coarsely() {
        let numbers = Parameters::<Band>::reference().central();
        let whole = simulate(&tank(), &numbers, 30, Detail::MEMBER).unwrap();
        let detail = Detail::MEMBER;
        let recorder = Recorder::new(10, detail.looks_per_day, detail.samples_per_day);
        let filled = RunningTank::filled(&tank(), &numbers);
        let mut run = Run::of(filled, None, detail, recorder);
        run.control.most_steps = 3;
        run.follow(0.0, 10.0).unwrap();
        let Recorder { samples, looks, .. } = &run.recorder;
        assert_eq!((samples.len(), looks.len()), (11, 41));
        for (coarse, fine) in samples.iter().zip(&whole.samples).skip(1) {
            let (ours, theirs) = (coarse.state.ammonia, fine.state.ammonia);
            assert!(
                (ours - theirs).abs() < 0.05 * theirs + 0.005,
                "{ours} {theirs}"
            );
            assert!((coarse.nitrogen_g_m2 - fine.nitrogen_g_m2).abs() < 1e-6);
        }
    }

    #[test]
    fn a_member_is_followed_closely_enough() {
        let points = Sobol::new(9);
        let reference = Parameters::<Band>::reference();
        for number in 0..12 {
            let member = reference.draw(|place| points.coordinate(number, place));
            let fine = run(&tank(), &member, 60).unwrap();
            let coarse = simulate(&tank(), &member, 60, Detail::MEMBER).unwrap();
            let near = |value: f64, expected: f64, relative: f64| {
                let limit = relative * (expected.abs() + 0.05);
                assert!((value - expected).abs() < limit, "{value} for {expected}");
            };
            for of in [
                |look: &FineSample| look.ammonia,
                |look: &FineSample| look.nitrite,
                |look: &FineSample| look.nitrate,
            ] {
                let (peak, expected) = (
                    highest(&coarse.looks, 0.0, of),
                    highest(&fine.looks, 0.0, of),
                );
                near(peak.value, expected.value, 0.01);
            }
            for (one, other) in coarse.days().zip(fine.days()) {
                near(one.state.ammonia, other.state.ammonia, 0.02);
                near(one.state.nitrite, other.state.nitrite, 0.02);
                near(one.state.nitrate, other.state.nitrate, 0.02);
            }
        }
    }
}
