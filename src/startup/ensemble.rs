//! The same tank many times over, each with other values of its uncertain numbers.

use rayon::prelude::*;

use super::inputs::Inputs;
use super::limits::{
    HARDY_AMMONIA_MG_N_L, HARDY_NITRITE_MG_N_L, READY_AMMONIA_MG_N_L, READY_NITRITE_MG_N_L,
};
use super::run::{Detail, run, simulate};
use super::trajectory::{FineSample, Peak, Sample, Trajectory, highest};
use crate::numerics::rodas::IntegrationError;
use crate::numerics::sobol::Sobol;
use crate::parameters::Parameters;
use crate::source::Band;

/// Peaks of ammonia and nitrite are looked for from this day on, or on the last day of
/// a shorter run; before it only what filling stirs up shows.
pub const JUDGED_FROM_DAY: f64 = 3.0;

/// How many members there are, and what they are drawn with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Draw {
    /// Members.
    pub members: u32,
    /// Seed of the points.
    pub seed: u64,
}

/// What is kept of one member.
#[derive(Debug, Clone, PartialEq)]
pub struct Member {
    /// Its place in the ensemble; 0 for the typical numbers.
    pub index: u32,
    /// Its numbers, in the order of [`descriptions`](crate::parameters::descriptions).
    pub numbers: Vec<f64>,
    /// One sample for each whole day.
    pub days: Vec<Sample>,
    /// Highest ammonia from day 3 on, mg N/L.
    pub ammonia: Peak,
    /// Highest nitrite from day 3 on, mg N/L.
    pub nitrite: Peak,
    /// Highest nitrate, mg N/L.
    pub nitrate: Peak,
    /// Most alkalinity used at once, meq/L.
    pub alkalinity_used: Peak,
    /// The day after which ammonia and nitrite stay low.
    pub ready_day: Option<f64>,
    /// The same for animals that bear more.
    pub hardy_ready_day: Option<f64>,
    /// Days on which light and nutrients in the water favour algae.
    pub algae_window_days: f64,
    /// The days on which a reading had water changed.
    pub changed_on: Vec<f64>,
}

impl Member {
    fn of(index: u32, numbers: &Parameters<f64>, trajectory: &Trajectory) -> Self {
        let last_day = trajectory.samples.last().map_or(0.0, |sample| sample.day);
        let judged_from = JUDGED_FROM_DAY.min(last_day);
        let highest =
            |from: f64, value: fn(&FineSample) -> f64| highest(&trajectory.looks, from, value);
        Self {
            index,
            numbers: numbers.values(),
            days: trajectory.days().copied().collect(),
            ammonia: highest(judged_from, |look| look.ammonia),
            nitrite: highest(judged_from, |look| look.nitrite),
            nitrate: highest(0.0, |look| look.nitrate),
            alkalinity_used: highest(0.0, |look| look.alkalinity_used),
            ready_day: trajectory.clear_after(READY_AMMONIA_MG_N_L, READY_NITRITE_MG_N_L),
            hardy_ready_day: trajectory.clear_after(HARDY_AMMONIA_MG_N_L, HARDY_NITRITE_MG_N_L),
            algae_window_days: trajectory.algae_window_days(),
            changed_on: trajectory.changed_on.clone(),
        }
    }
}

/// The member with the typical value of every number, run by itself.
///
/// # Errors
/// [`IntegrationError`], as for a run.
pub fn central(
    inputs: &Inputs,
    bands: &Parameters<Band>,
    days: u32,
) -> Result<Member, IntegrationError> {
    let numbers = bands.central();
    let trajectory = run(inputs, &numbers, days)?;
    Ok(Member::of(0, &numbers, &trajectory))
}

/// The members of an ensemble in order of index; `advance` is called with the number of
/// members done, from any thread.
///
/// Each member takes its own steps, so that its digits depend on its index and the seed
/// alone. A member that cannot be integrated is left out.
pub fn members(
    inputs: &Inputs,
    bands: &Parameters<Band>,
    days: u32,
    draw: Draw,
    advance: &(dyn Fn(u32) + Sync),
) -> Vec<Member> {
    (0..draw.members)
        .into_par_iter()
        .filter_map(|index| {
            let member = member(inputs, bands, days, draw.seed, index);
            advance(1);
            member.ok()
        })
        .collect()
}

/// One sample for each whole day of a tank with one set of numbers, followed as closely
/// as a member.
///
/// # Errors
/// [`IntegrationError`], as for a run.
pub fn days_of(
    inputs: &Inputs,
    numbers: &Parameters<f64>,
    days: u32,
) -> Result<Vec<Sample>, IntegrationError> {
    let trajectory = simulate(inputs, numbers, days, Detail::MEMBER)?;
    Ok(trajectory.days().copied().collect())
}

/// One member of an ensemble by its index.
///
/// # Errors
/// [`IntegrationError`], as for a run.
pub fn member(
    inputs: &Inputs,
    bands: &Parameters<Band>,
    days: u32,
    seed: u64,
    index: u32,
) -> Result<Member, IntegrationError> {
    let points = Sobol::new(seed);
    let numbers = bands.draw(|dimension| points.coordinate(index, dimension));
    let trajectory = simulate(inputs, &numbers, days, Detail::MEMBER)?;
    Ok(Member::of(index, &numbers, &trajectory))
}
