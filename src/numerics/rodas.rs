//! Integration of stiff differential equations with an adaptive step.
//!
//! The method is the stiffly accurate Rosenbrock method of order 4(3) known as
//! RODAS: six stages, one matrix factorisation per step, an embedded error
//! estimate and a continuous solution of order 3. It needs no Newton iteration
//! and remembers nothing of earlier steps, so a run can be cut at every event
//! and started again at full order.
//!
//! # Source
//! Hairer and Wanner 1996 (`hairer_wanner_1996`), sections IV.7 and IV.10; coefficients of their code RODAS, METH = 1.
//! Step size control after Gustafsson, as given there.

mod pace;
mod stages;
mod system;
mod tableau;

use std::ops::ControlFlow;

use thiserror::Error;

use super::real::Real;
use pace::StepControl;
use stages::{StepAttempt, StepStart};
pub use system::{Linearised, PlainSystem, Stepping, System, difference_jacobian};

/// Error, over that allowed, that halves a step.
const CUT_IN_HALF: f64 = 10.0;

/// Accuracy asked of a run, and how much work it may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Control<const N: usize> {
    /// Error allowed per step as a share of the state.
    pub relative: f64,
    /// Error allowed per step where the state is near zero.
    pub absolute: [f64; N],
    /// First step tried; guessed from the first rates where absent.
    pub first_step: Option<f64>,
    /// Longest step allowed.
    pub longest_step: f64,
    /// What a state may not be taken below: a step that does is repeated shorter, unless the
    /// state lay lower before.
    pub lowest: [f64; N],
    /// Steps, accepted or not, after which the run is given up.
    pub most_steps: u32,
}

impl<const N: usize> Control<N> {
    /// A run with the given tolerances and steps of any length.
    pub fn new(relative: f64, absolute: [f64; N]) -> Self {
        Self {
            relative,
            absolute,
            first_step: None,
            longest_step: f64::INFINITY,
            lowest: [f64::NEG_INFINITY; N],
            most_steps: 100_000,
        }
    }
}

/// Work done by a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Statistics {
    /// Steps taken.
    pub accepted: u32,
    /// Steps tried and repeated shorter.
    pub rejected: u32,
    /// Evaluations of the rates, those for the Jacobian left out.
    pub evaluations: u32,
    /// Jacobians formed.
    pub jacobians: u32,
}

impl std::ops::AddAssign for Statistics {
    fn add_assign(&mut self, other: Self) {
        self.accepted += other.accepted;
        self.rejected += other.rejected;
        self.evaluations += other.evaluations;
        self.jacobians += other.jacobians;
    }
}

/// Why a run could not be finished.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum IntegrationError {
    /// The error estimate stays above the tolerance however short the step.
    #[error("step fell to {step:e} at time {time} and is still too inaccurate")]
    StepTooSmall {
        /// Time reached.
        time: f64,
        /// Step that would be needed.
        step: f64,
    },
    /// The allowed number of steps is used up.
    #[error("{steps} steps reached only time {time}")]
    TooManySteps {
        /// Time reached.
        time: f64,
        /// Steps taken and rejected.
        steps: u32,
    },
    /// A rate or a state is infinite or not a number.
    #[error("the rates or the state left the finite numbers at time {time}")]
    NotFinite {
        /// Time reached.
        time: f64,
    },
    /// The end of the run lies before its start.
    #[error("a run cannot go back from time {start} to {end}")]
    Backward {
        /// Start asked for.
        start: f64,
        /// End asked for.
        end: f64,
    },
}

/// One accepted step with its continuous solution.
#[derive(Debug, Clone)]
pub struct Step<R, const N: usize> {
    /// Time at which the step starts.
    pub start: f64,
    /// Time at which the step ends.
    pub end: f64,
    /// State at the start.
    pub from: [R; N],
    /// State at the end.
    pub to: [R; N],
    curve: [[R; N]; 2],
}

impl<R: Real, const N: usize> Step<R, N> {
    /// A step on which every state goes straight from one value to the next.
    pub(super) fn straight((start, end): (f64, f64), from: [R; N], to: [R; N]) -> Self {
        Self {
            start,
            end,
            from,
            to,
            curve: [[R::splat(0.0); N]; 2],
        }
    }

    /// State at a time within the step.
    pub fn at(&self, time: f64) -> [R; N] {
        let share = (time - self.start) / (self.end - self.start);
        let rest = 1.0 - share;
        std::array::from_fn(|row| {
            let bend = self.curve[0][row] + self.curve[1][row] * share;
            self.from[row] * rest + (self.to[row] + bend * rest) * share
        })
    }
}

/// Runs a system from a start to an end and shows every accepted step to
/// `on_step`; gives the last state and the work done.
///
/// With lanes all members share the step, and the one with the largest error
/// decides on it.
///
/// # Errors
/// [`IntegrationError`], with the time reached.
pub fn integrate<R: Real, const N: usize>(
    system: &impl System<R, N>,
    (start, end): (f64, f64),
    initial: [R; N],
    control: &Control<N>,
    mut on_step: impl FnMut(&Step<R, N>),
) -> Result<([R; N], Statistics), IntegrationError> {
    integrate_until(
        &PlainSystem(system),
        (start, end),
        initial,
        control,
        |step| {
            on_step(step);
            ControlFlow::Continue(())
        },
    )
}

/// The same, but no further than the step at which `on_step` breaks off.
///
/// # Errors
/// As for [`integrate`].
pub fn integrate_until<R: Real, const N: usize>(
    system: &impl Stepping<R, N>,
    span: (f64, f64),
    initial: [R; N],
    control: &Control<N>,
    mut on_step: impl FnMut(&Step<R, N>) -> ControlFlow<()>,
) -> Result<([R; N], Statistics), IntegrationError> {
    integrate_linearised(system, span, initial, control, |step, _| on_step(step))
}

/// The same, where `on_step` is shown the rates and slopes at the start of the step too.
///
/// # Errors
/// As for [`integrate`].
pub fn integrate_linearised<R: Real, S: Stepping<R, N>, const N: usize>(
    system: &S,
    (start, end): (f64, f64),
    initial: [R; N],
    control: &Control<N>,
    mut on_step: impl FnMut(&Step<R, N>, &Linearised<R, S::Jacobian, N>) -> ControlFlow<()>,
) -> Result<([R; N], Statistics), IntegrationError> {
    if end < start {
        return Err(IntegrationError::Backward { start, end });
    }
    let mut statistics = Statistics::default();
    let mut time = start;
    let mut state = initial;
    let mut moment = system.moment(start);
    let mut pace = StepControl::new();
    let rates = system.rates_at(&moment, &state);
    let mut step = first_step(&rates, (start, end), &state, control);
    while time < end {
        let base = StepStart {
            time,
            state: &state,
            linearised: system.linearised(time, &moment, &state),
        };
        statistics.evaluations += 2;
        statistics.jacobians += 1;
        if !largest_magnitude(&base.linearised.rates).is_finite() {
            return Err(IntegrationError::NotFinite { time });
        }
        loop {
            if statistics.accepted + statistics.rejected >= control.most_steps {
                let steps = control.most_steps;
                return Err(IntegrationError::TooManySteps { time, steps });
            }
            let last = time + 1.01 * step >= end;
            let length = if last { end - time } else { step };
            let trial = base.advance(system, length);
            statistics.evaluations += 5;
            let error = error_of(&trial, &state, control);
            let (accepted, next) = pace.judge(length, error);
            step = next.min(control.longest_step);
            if accepted {
                statistics.accepted += 1;
                let to = if last { end } else { time + length };
                let asked = on_step(&trial.step((time, to), state), &base.linearised);
                (time, state, moment) = (to, trial.to, trial.moment);
                if asked.is_break() {
                    return Ok((state, statistics));
                }
                break;
            }
            statistics.rejected += 1;
            if step <= 16.0 * f64::EPSILON * time.abs().max(end - start) {
                return Err(if error.is_finite() {
                    IntegrationError::StepTooSmall { time, step }
                } else {
                    IntegrationError::NotFinite { time }
                });
            }
        }
    }
    Ok((state, statistics))
}

/// Error of a step over that allowed; where a state falls too low, enough to halve it.
fn error_of<R: Real, M, const N: usize>(
    trial: &StepAttempt<R, M, N>,
    from: &[R; N],
    control: &Control<N>,
) -> f64 {
    let error = scaled_size(trial.error(), from, &trial.to, control);
    if falls_through((from, &trial.to), control) {
        error.max(CUT_IN_HALF)
    } else {
        error
    }
}

/// Root mean square of a change over the tolerance, in the worst lane.
fn scaled_size<R: Real, const N: usize>(
    change: &[R; N],
    from: &[R; N],
    to: &[R; N],
    control: &Control<N>,
) -> f64 {
    let mut sum = R::splat(0.0);
    let mut count = 0.0;
    for row in 0..N {
        let size = from[row].abs().max(to[row].abs());
        let scaled = change[row] / (size * control.relative + control.absolute[row]);
        sum += scaled * scaled;
        count += 1.0;
    }
    (sum / count).sqrt().largest()
}

/// Whether a step takes a state below its lowest, or one that was there further down.
fn falls_through<R: Real, const N: usize>(
    (from, to): (&[R; N], &[R; N]),
    control: &Control<N>,
) -> bool {
    let states = from.iter().zip(to).zip(control.lowest);
    let mut deepest = R::splat(f64::NEG_INFINITY);
    for ((from, to), lowest) in states {
        let floor = from.min(R::splat(lowest));
        deepest = deepest.max(floor - *to);
    }
    deepest.largest() > 0.0
}

fn largest_magnitude<R: Real, const N: usize>(values: &[R; N]) -> f64 {
    let mut sum = R::splat(0.0);
    for value in values {
        sum += value.abs();
    }
    sum.largest()
}

/// A first step over which the state changes by about a hundredth.
fn first_step<R: Real, const N: usize>(
    rates: &[R; N],
    (start, end): (f64, f64),
    state: &[R; N],
    control: &Control<N>,
) -> f64 {
    let guess = || {
        let size = scaled_size(state, state, state, control);
        let speed = scaled_size(rates, state, state, control);
        let step = 0.01 * size / speed;
        if step.is_finite() && step > 0.0 {
            step
        } else {
            1e-6 * (end - start)
        }
    };
    control
        .first_step
        .unwrap_or_else(guess)
        .min(control.longest_step)
        .min(end - start)
}
