//! The members of an ensemble, eight to a group.

use rayon::prelude::*;

use super::coefficients::Coefficients;
use super::course::{
    Accuracy, FollowedDay, Guess, NightState, Schedule, Settled, follow, in_balance, settle,
};
use super::inputs::NightInputs;
use super::model::NightModel;
use super::rates::Rates;
use crate::numerics::lanes::{LANES, Lanes};
use crate::numerics::rodas::IntegrationError;
use crate::numerics::root::root;
use crate::numerics::sobol::Sobol;
use crate::source::Band;

/// How many members are drawn, and from which seed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ensemble {
    /// Members; none takes the typical numbers alone.
    pub members: u32,
    /// Seed of the draw.
    pub seed: u64,
}

/// The numbers of every member; the last group is filled up with its last member.
#[derive(Debug, Clone)]
pub(super) struct Members {
    groups: Vec<[Rates<f64>; LANES]>,
    count: usize,
}

/// A group followed through its day.
pub(super) type FollowedGroup = (Settled<Lanes>, FollowedDay<Lanes>);

impl Members {
    pub(super) fn draw(ranges: &Rates<Band>, ensemble: Ensemble) -> Self {
        let points = Sobol::new(ensemble.seed);
        let mut members: Vec<Rates<f64>> = (0..ensemble.members)
            .map(|member| ranges.draw(|place| points.coordinate(member, place)))
            .collect();
        if members.is_empty() {
            members.push(ranges.central());
        }
        let last = members.len() - 1;
        let groups = (0..=last)
            .step_by(LANES)
            .map(|first| std::array::from_fn(|lane| members[(first + lane).min(last)]))
            .collect();
        Self {
            groups,
            count: members.len(),
        }
    }

    /// The models of a tank, a group each.
    fn models<'a>(
        &'a self,
        inputs: &'a NightInputs,
    ) -> impl IndexedParallelIterator<Item = NightModel<Lanes>> + 'a {
        self.groups.par_iter().map(|group| {
            let members = group.map(|rates| Coefficients::of(inputs, &rates));
            NightModel::new(inputs, Coefficients::packed(&members))
        })
    }

    /// Every group's day.
    pub(super) fn follow(
        &self,
        inputs: &NightInputs,
    ) -> Result<Vec<FollowedGroup>, IntegrationError> {
        let schedule = Schedule::of(inputs);
        self.models(inputs)
            .map(|model| {
                let settled = settle(
                    &model,
                    &schedule,
                    in_balance(&model, inputs),
                    Accuracy::COARSE,
                )?;
                let day = follow(&model, &schedule, settled.start, Accuracy::COARSE)?;
                Ok((settled, day))
            })
            .collect()
    }

    /// An answer of every group to the point that it has reached.
    pub(super) fn answers<T: Send>(
        &self,
        inputs: &NightInputs,
        points: &[NightState<Lanes>],
        answer: impl Fn(&NightModel<Lanes>, NightState<Lanes>) -> Result<T, IntegrationError> + Sync,
    ) -> Result<Vec<T>, IntegrationError> {
        self.models(inputs)
            .zip(points)
            .map(|(model, point)| answer(&model, *point))
            .collect()
    }

    /// The first lanes of every group, without the filling.
    pub(super) fn unpacked<T: Clone>(&self, groups: &[[T; LANES]]) -> Vec<T> {
        let mut all = groups.concat();
        all.truncate(self.count);
        all
    }
}

/// Searches over the same members: each starts from where the last one settled.
pub(super) struct EnsembleSearch<'a> {
    members: &'a Members,
    starts: Vec<Option<Guess<Lanes>>>,
}

impl<'a> EnsembleSearch<'a> {
    pub(super) fn over(members: &'a Members) -> Self {
        Self {
            members,
            starts: vec![None; members.groups.len()],
        }
    }

    /// The lowest oxygen of the day in every member, mg/L.
    pub(super) fn lowest_mg_l(
        &mut self,
        inputs: &NightInputs,
    ) -> Result<Vec<f64>, IntegrationError> {
        let schedule = Schedule::of(inputs);
        let found: Vec<Settled<Lanes>> = self
            .members
            .models(inputs)
            .zip(&self.starts)
            .map(|(model, start)| {
                let guess = start.unwrap_or_else(|| in_balance(&model, inputs));
                settle(&model, &schedule, guess, Accuracy::COARSE)
            })
            .collect::<Result<_, IntegrationError>>()?;
        self.starts = found.iter().map(|day| Some(day.as_guess())).collect();
        let lows: Vec<[f64; LANES]> = found.iter().map(|day| day.low.0).collect();
        Ok(self.members.unpacked(&lows))
    }
}

/// Root of a function that may fail, between two ends of which one is on each side.
pub(super) fn closing_in(
    low: f64,
    high: f64,
    tolerance: f64,
    mut surplus: impl FnMut(f64) -> Result<f64, IntegrationError>,
) -> Result<f64, IntegrationError> {
    let mut failed = None;
    let found = root(
        |value| match surplus(value) {
            Ok(surplus) => surplus,
            Err(error) => {
                failed = Some(error);
                f64::NAN
            }
        },
        low,
        high,
        tolerance,
    );
    match failed {
        Some(error) => Err(error),
        // both ends count as the root where a rounding has put them on one side
        None => Ok(found.unwrap_or(high)),
    }
}
