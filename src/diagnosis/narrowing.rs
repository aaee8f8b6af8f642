//! Members weighed by the readings, and drawn anew around the best where too few are left.

use rayon::prelude::*;

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::hypotheses::{Hypotheses, PossibleCourse, followed};
use super::measurement::Measurement;
use crate::numerics::sobol::Sobol;

/// Fewer effective members than this are drawn anew (judgement: fewer give no band).
const COLLAPSED: f64 = 20.0;
/// Members drawn anew for a cause.
const DRAWN_ANEW: usize = 64;
/// Rounds at most.
const ROUNDS: u32 = 2;
/// How far from its parent a member is drawn, as a share of each number's range.
const JITTER: f64 = 0.08;
/// Members that a forecast looks ahead with.
const MOST_AHEAD: usize = 200;
/// Causes less probable than this are not drawn anew.
const LEAST_PROBABLE: f64 = 0.10;

/// Courses with the weight of each, one together.
#[derive(Debug, Clone)]
pub struct Narrowed {
    /// Every course with its weight and its cause.
    pub members: Vec<(f64, Cause, PossibleCourse)>,
    /// One over the sum of the squared weights.
    pub effective: f64,
    /// Whether some were drawn anew.
    pub resampled: bool,
}

impl Narrowed {
    /// Weighs the members of every cause by its probability and the readings.
    ///
    /// ```text
    /// w_ci = p(c) L_ci / sum_i L_ci,    effective = 1 / sum w^2
    /// ```
    ///
    /// # Source
    /// Importance weights and their effective number: Kong, Liu and Wong 1994
    /// (`kong_1994`, from memory).
    pub fn of(
        case: &CaseHistory<'_>,
        hypotheses: &Hypotheses,
        posterior: &ByCause,
        seed: u64,
    ) -> Self {
        let readings = followed(case);
        let first = weighed(case, hypotheses, posterior, &readings);
        let before = Self::with(first, false);
        if before.effective >= COLLAPSED || readings.is_empty() || before.members.len() < 100 {
            return before;
        }
        let anew = drawn_anew(case, hypotheses, posterior, &readings, seed);
        let after = Self::with(anew, true);
        if after.effective > before.effective {
            after
        } else {
            before
        }
    }

    fn with(members: Vec<(f64, Cause, PossibleCourse)>, resampled: bool) -> Self {
        let sum: f64 = members.iter().map(|(weight, ..)| weight).sum();
        let members: Vec<(f64, Cause, PossibleCourse)> = members
            .into_iter()
            .map(|(weight, cause, member)| (weight / sum, cause, member))
            .collect();
        let squares: f64 = members.iter().map(|(weight, ..)| weight * weight).sum();
        Self {
            effective: if squares > 0.0 { 1.0 / squares } else { 0.0 },
            members,
            resampled,
        }
    }
}

/// The heaviest members, which hold nearly all of the weight, followed anew from the
/// water as last measured.
pub fn from_measured(case: &CaseHistory<'_>, narrowed: &Narrowed) -> Vec<(f64, PossibleCourse)> {
    let mut heaviest: Vec<&(f64, Cause, PossibleCourse)> = narrowed.members.iter().collect();
    heaviest.sort_by(|a, b| b.0.total_cmp(&a.0));
    heaviest.truncate(MOST_AHEAD);
    heaviest
        .into_par_iter()
        .filter_map(|(weight, cause, member)| {
            let anew = PossibleCourse::follow_from_measured(case, *cause, member.place.clone());
            Some((*weight, anew.ok()?))
        })
        .collect()
}

fn weighed(
    case: &CaseHistory<'_>,
    hypotheses: &Hypotheses,
    posterior: &ByCause,
    readings: &[Measurement],
) -> Vec<(f64, Cause, PossibleCourse)> {
    posterior
        .iter()
        .filter(|(_, probability)| *probability > 0.0)
        .flat_map(|(cause, probability)| {
            let trusted = trusted(cause, readings);
            let members = hypotheses.members(cause);
            let weights = shares(members, case, &trusted);
            let own: Vec<(f64, Cause, PossibleCourse)> = weights
                .into_iter()
                .zip(members)
                .map(|(weight, member)| (probability * weight, cause, member.clone()))
                .collect();
            own
        })
        .collect()
}

/// The readings that say something under a cause: none where a kit is wrong.
fn trusted(cause: Cause, readings: &[Measurement]) -> Vec<Measurement> {
    if cause == Cause::KitError {
        Vec::new()
    } else {
        readings.to_vec()
    }
}

/// Likelihoods of members over their sum.
fn shares(
    members: &[PossibleCourse],
    case: &CaseHistory<'_>,
    readings: &[Measurement],
) -> Vec<f64> {
    let logs: Vec<f64> = members
        .iter()
        .map(|member| member.log_likelihood(case, readings))
        .collect();
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let raw: Vec<f64> = logs.iter().map(|log| (log - most).exp()).collect();
    let sum: f64 = raw.iter().sum();
    raw.into_iter().map(|weight| weight / sum).collect()
}

/// The likelier causes with members drawn around the best of theirs.
fn drawn_anew(
    case: &CaseHistory<'_>,
    hypotheses: &Hypotheses,
    posterior: &ByCause,
    readings: &[Measurement],
    seed: u64,
) -> Vec<(f64, Cause, PossibleCourse)> {
    posterior
        .iter()
        .filter(|(_, probability)| *probability >= LEAST_PROBABLE)
        .flat_map(|(cause, probability)| {
            let trusted = trusted(cause, readings);
            let mut members = hypotheses.members(cause).to_vec();
            for round in 0..ROUNDS {
                let offspring = offspring(case, cause, &members, &trusted, seed + u64::from(round));
                if offspring.is_empty() {
                    break;
                }
                members = offspring;
            }
            let weights = shares(&members, case, &trusted);
            let own: Vec<(f64, Cause, PossibleCourse)> = weights
                .into_iter()
                .zip(members)
                .map(|(weight, member)| (probability * weight, cause, member))
                .collect();
            own
        })
        .collect()
}

/// Members each near a parent, parents taken evenly by weight (systematic resampling).
fn offspring(
    case: &CaseHistory<'_>,
    cause: Cause,
    parents: &[PossibleCourse],
    readings: &[Measurement],
    seed: u64,
) -> Vec<PossibleCourse> {
    let weights = shares(parents, case, readings);
    let points = Sobol::new(seed ^ 0x5eed);
    let places: Vec<Vec<f64>> = (0..DRAWN_ANEW)
        .filter_map(|child| {
            let parent = parents.get(picked(&weights, (child as f64 + 0.5) / DRAWN_ANEW as f64))?;
            let near = parent.place.iter().enumerate().map(|(dimension, at)| {
                let draw = points.coordinate(child as u32, dimension as u32);
                reflected(at + JITTER * (2.0 * draw - 1.0))
            });
            Some(near.collect())
        })
        .collect();
    places
        .into_par_iter()
        .filter_map(|place| PossibleCourse::follow(case, cause, place).ok())
        .collect()
}

/// The member at a share of all weights.
fn picked(weights: &[f64], share: f64) -> usize {
    let mut sum = 0.0;
    weights
        .iter()
        .position(|weight| {
            sum += weight;
            sum >= share
        })
        .unwrap_or(weights.len().saturating_sub(1))
}

/// A place back between 0 and 1.
fn reflected(at: f64) -> f64 {
    if at < 0.0 {
        -at
    } else if at > 1.0 {
        2.0 - at
    } else {
        at
    }
}
