//! A day cut at every switch.

use std::ops::ControlFlow;

use super::inputs::NightInputs;
use super::model::{CARBON_PARTS, LEDGER, NightModel, NightState, OXYGEN_PARTS, Phase, STATES};
use super::phases::{DayPhase, Ledger};
use crate::numerics::lanes::Lanes;
use crate::numerics::real::Real;
use crate::numerics::rodas::{
    Control, IntegrationError, Linearised, PlainSystem, Step, Stepping, integrate_linearised,
    integrate_until,
};
use crate::numerics::three::Three;
use crate::units::constants::HOURS_PER_DAY;

/// Samples kept of each hour.
pub(super) const SAMPLES_PER_HOUR: u32 = 6;
/// Samples of a day, both ends included.
pub(super) const SAMPLES: u32 = 24 * SAMPLES_PER_HOUR + 1;
/// How closely a day is followed and closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Accuracy {
    /// Error allowed per step, as a share and in mg/L.
    pub(super) step: f64,
    /// A day repeats itself when it ends this close to where it began, mg/L.
    pub(super) closed: f64,
}

impl Accuracy {
    /// For one day looked at by itself.
    pub(super) const FINE: Self = Self {
        step: 1e-6,
        closed: 1e-6,
    };
    /// For one of many.
    pub(super) const COARSE: Self = Self {
        step: 1e-4,
        closed: 1e-3,
    };
}

/// The phases of a day with their ends, in hours from when the lamp goes on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Schedule {
    pub(super) light_hours: f64,
    day: Phase,
    night: Phase,
}

impl Schedule {
    pub(super) fn of(inputs: &NightInputs) -> Self {
        let (by_day, by_night) = inputs.runs();
        Self {
            light_hours: inputs.light_hours,
            day: Phase {
                lit: true,
                running: by_day,
            },
            night: Phase {
                lit: false,
                running: by_night,
            },
        }
    }

    pub(super) fn parts(&self) -> [(f64, f64, Phase); 2] {
        [
            (0.0, self.light_hours, self.day),
            (self.light_hours, HOURS_PER_DAY, self.night),
        ]
    }
}

/// A day followed through.
pub(super) struct FollowedDay<R> {
    /// [`SAMPLES`] points, evenly spaced.
    pub(super) samples: Vec<NightState<R>>,
    /// When the lamp goes off.
    pub(super) dusk: NightState<R>,
    /// At the end.
    pub(super) end: NightState<R>,
}

/// What each process moved in a day.
pub(super) struct Moved<R> {
    /// Oxygen, mg/L.
    pub(super) oxygen: [R; OXYGEN_PARTS],
    /// Carbon dioxide, mg/L.
    pub(super) carbon: [R; CARBON_PARTS],
}

impl FollowedDay<Lanes> {
    /// Oxygen of one member of the eight, sample by sample, mg/L.
    pub(super) fn oxygen(&self, lane: usize) -> Vec<f64> {
        let samples = self.samples.iter();
        samples.map(|[oxygen, ..]| oxygen.0[lane]).collect()
    }
}

/// Follows a day from a start.
pub(super) fn follow<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    start: NightState<R>,
    accuracy: Accuracy,
) -> Result<FollowedDay<R>, IntegrationError> {
    let mut samples = vec![start];
    let [dusk, end] = walk(model, schedule, start, accuracy, |_, step, _| {
        sample(&mut samples, step);
    })?;
    Ok(FollowedDay { samples, dusk, end })
}

/// The same, with what each process moved.
pub(super) fn follow_closely<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    start: NightState<R>,
    accuracy: Accuracy,
) -> Result<(FollowedDay<R>, Moved<R>), IntegrationError> {
    let mut state = [R::splat(0.0); LEDGER];
    state[..STATES].copy_from_slice(&start);
    let mut samples = vec![start];
    let mut dusk = start;
    for (from, to, phase) in schedule.parts() {
        let system = Ledger { model, phase };
        let system = PlainSystem(&system);
        state = part(&system, (from, to), state, accuracy, |step| {
            sample(&mut samples, step);
            ControlFlow::Continue(())
        })?;
        if phase.lit {
            dusk = point(&state);
        }
    }
    let moved = Moved {
        oxygen: std::array::from_fn(|place| state[STATES + place]),
        carbon: std::array::from_fn(|place| state[STATES + OXYGEN_PARTS + place]),
    };
    let end = point(&state);
    Ok((FollowedDay { samples, dusk, end }, moved))
}

/// Goes through a day and shows each step, with the slopes of the rates where it starts;
/// gives where the lamp goes off and the end.
pub(super) fn walk<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    start: NightState<R>,
    accuracy: Accuracy,
    mut on_step: impl FnMut(Phase, &Step<R, STATES>, &Three<R>),
) -> Result<[NightState<R>; 2], IntegrationError> {
    let control = control(accuracy);
    let mut state = start;
    let mut ends = [start; 2];
    for ((from, to, phase), end) in schedule.parts().into_iter().zip(&mut ends) {
        let course = DayPhase { model, phase };
        let shown = |step: &Step<R, STATES>, base: &Linearised<R, Three<R>, STATES>| {
            on_step(phase, step, &base.jacobian);
            ControlFlow::Continue(())
        };
        (state, _) = integrate_linearised(&course, (from, to), state, &control, shown)?;
        *end = state;
    }
    Ok(ends)
}

/// One phase of a day; nothing where it is empty.
pub(super) fn part<R: Real, const N: usize>(
    system: &impl Stepping<R, N>,
    span: (f64, f64),
    state: [R; N],
    accuracy: Accuracy,
    on_step: impl FnMut(&Step<R, N>) -> ControlFlow<()>,
) -> Result<[R; N], IntegrationError> {
    let control = control(accuracy);
    integrate_until(system, span, state, &control, on_step).map(|(state, _)| state)
}

fn control<const N: usize>(accuracy: Accuracy) -> Control<N> {
    Control::new(accuracy.step, [accuracy.step; N])
}

fn sample<R: Real, const N: usize>(samples: &mut Vec<NightState<R>>, step: &Step<R, N>) {
    while samples.len() < SAMPLES as usize {
        let hour = hour_of(samples.len());
        if hour > step.end {
            break;
        }
        samples.push(point(&step.at(hour)));
    }
}

/// The hour of a sample.
pub(super) fn hour_of(sample: usize) -> f64 {
    sample as f64 / f64::from(SAMPLES_PER_HOUR)
}

/// The states without what was moved.
fn point<R: Real, const N: usize>(state: &[R; N]) -> NightState<R> {
    std::array::from_fn(|place| state[place])
}
