//! One step, stage by stage.

use super::system::{Linearised, Stepping};
use super::tableau::{CURVE_WEIGHT, GAMMA, NODE, STAGE_WEIGHT, STAGES, STATE_WEIGHT, TIME_WEIGHT};
use super::{Real, Step};

/// The start of a step.
pub(super) struct StepStart<'a, R, J, const N: usize> {
    pub(super) time: f64,
    pub(super) state: &'a [R; N],
    pub(super) linearised: Linearised<R, J, N>,
}

impl<R: Real, J, const N: usize> StepStart<'_, R, J, N> {
    /// Tries a step.
    pub(super) fn advance<S: Stepping<R, N, Jacobian = J>>(
        &self,
        system: &S,
        length: f64,
    ) -> StepAttempt<R, S::Moment, N> {
        let mut stages = Stages {
            base: self,
            system,
            length,
            factors: system.split(&self.linearised.jacobian, 1.0 / (GAMMA * length)),
            changes: [[R::splat(0.0); N]; STAGES],
        };
        let moment_at = |share: f64| system.moment(self.time + share * length);
        stages.take::<0>(&self.linearised.rates);
        stages.go_on::<1>(&moment_at(NODE[1]));
        stages.go_on::<2>(&moment_at(NODE[2]));
        stages.go_on::<3>(&moment_at(NODE[3]));
        let moment = moment_at(NODE[4]);
        stages.go_on::<4>(&moment);
        let place = stages.go_on::<5>(&moment);
        let changes = stages.changes;
        StepAttempt {
            to: std::array::from_fn(|row| place[row] + changes[STAGES - 1][row]),
            changes,
            moment,
        }
    }
}

/// A step on its way.
struct Stages<'a, R: Real, S: Stepping<R, N>, const N: usize> {
    base: &'a StepStart<'a, R, S::Jacobian, N>,
    system: &'a S,
    length: f64,
    factors: S::Factors,
    changes: [[R; N]; STAGES],
}

impl<R: Real, S: Stepping<R, N>, const N: usize> Stages<'_, R, S, N> {
    /// Takes a stage at its moment; gives the place of its rates.
    fn go_on<const STAGE: usize>(&mut self, moment: &S::Moment) -> [R; N] {
        let weights = const { STATE_WEIGHT[STAGE] };
        let place = summed(self.base.state, weights, &self.changes, 1.0);
        self.take::<STAGE>(&self.system.rates_at(moment, &place));
        place
    }

    /// Takes a stage by its rates.
    fn take<const STAGE: usize>(&mut self, rates: &[R; N]) {
        let weights = const { STAGE_WEIGHT[STAGE] };
        let Linearised {
            time_slope,
            jacobian,
            ..
        } = &self.base.linearised;
        let mut right = summed(rates, weights, &self.changes, 1.0 / self.length);
        for (entry, slope) in right.iter_mut().zip(time_slope) {
            *entry += *slope * (TIME_WEIGHT[STAGE] * self.length);
        }
        self.changes[STAGE] = self.system.solve(jacobian, &self.factors, &right);
    }
}

/// A step that was tried.
pub(super) struct StepAttempt<R, M, const N: usize> {
    pub(super) to: [R; N],
    changes: [[R; N]; STAGES],
    /// What the rates need of its end.
    pub(super) moment: M,
}

impl<R: Real, M, const N: usize> StepAttempt<R, M, N> {
    /// By how much it misses a method of lower order: the last change.
    pub(super) fn error(&self) -> &[R; N] {
        &self.changes[STAGES - 1]
    }

    /// The step with its continuous solution.
    pub(super) fn step(&self, (start, end): (f64, f64), from: [R; N]) -> Step<R, N> {
        let still = [R::splat(0.0); N];
        Step {
            start,
            end,
            from,
            to: self.to,
            curve: [
                summed(&still, &CURVE_WEIGHT[0], &self.changes, 1.0),
                summed(&still, &CURVE_WEIGHT[1], &self.changes, 1.0),
            ],
        }
    }
}

/// A start and the weighted changes of the stages so far.
fn summed<R: Real, const N: usize>(
    start: &[R; N],
    weights: &[f64],
    changes: &[[R; N]; STAGES],
    scale: f64,
) -> [R; N] {
    std::array::from_fn(|row| {
        let mut sum = start[row];
        for (weight, change) in weights.iter().zip(changes) {
            sum += change[row] * (*weight * scale);
        }
        sum
    })
}
