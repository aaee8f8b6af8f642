//! The members of an ensemble, eight to a group.

use rayon::prelude::*;

use super::coefficients::Coefficients;
use super::course::{Accuracy, FollowedDay, Schedule, follow};
use super::inputs::NightInputs;
use super::model::NightModel;
use super::rates::Rates;
use super::settle::{Settled, in_balance, settle, settle_finely};
use crate::numerics::lanes::{LANES, Lanes};
use crate::numerics::rodas::IntegrationError;
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

impl Members {
    pub(super) fn draw(ranges: &Rates<Band>, ensemble: Ensemble) -> Self {
        let points = Sobol::new(ensemble.seed);
        let mut members: Vec<Rates<f64>> = (0..ensemble.members)
            .map(|member| ranges.draw(|place| points.coordinate(member, place)))
            .collect();
        if members.is_empty() {
            members.push(ranges.central());
        }
        Self {
            count: members.len(),
            groups: grouped(&members),
        }
    }

    /// The first lanes of every group, without the filling.
    fn unpacked<T: Clone>(&self, groups: &[[T; LANES]]) -> Vec<T> {
        let mut all = groups.concat();
        all.truncate(self.count);
        all
    }
}

/// Eight to a group; the last is filled up with the last of all.
fn grouped<T: Clone>(all: &[T]) -> Vec<[T; LANES]> {
    let last = all.len().saturating_sub(1);
    let firsts = (0..all.len()).step_by(LANES);
    firsts
        .map(|first| std::array::from_fn(|lane| all[(first + lane).min(last)].clone()))
        .collect()
}

/// The nights of a tank, each member's day one that repeats itself.
///
/// # Example
/// ```
/// use lentic::night::{Ensemble, NightInputs, Nights, Rates};
/// # use lentic::source::Band;
/// # use lentic::state::DayState;
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"";
/// let design = lentic::spec::parse(text)?;
/// let tank = NightInputs::of(&design, &DayState::LIFELESS, Band::exact(60.0));
/// let nights = Nights::of(&tank, &Rates::of(&tank), Ensemble { members: 8, seed: 1 })?;
/// // without plants and animals it stays over what air is sized for
/// assert!(nights.outlook().low_mg_l.typical > 4.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct Nights {
    pub(super) inputs: NightInputs,
    pub(super) ensemble: Ensemble,
    members: Members,
    pub(super) groups: Vec<MemberGroup>,
}

/// Eight members.
pub(super) struct MemberGroup {
    pub(super) rates: [Rates<f64>; LANES],
    pub(super) model: NightModel<Lanes>,
    pub(super) settled: Settled<Lanes>,
    pub(super) day: FollowedDay<Lanes>,
}

impl Nights {
    /// Draws the members of a tank and follows each.
    ///
    /// # Errors
    /// [`IntegrationError`], when the numbers of the tank leave the finite ones.
    pub fn of(
        inputs: &NightInputs,
        ranges: &Rates<Band>,
        ensemble: Ensemble,
    ) -> Result<Self, IntegrationError> {
        let members = Members::draw(ranges, ensemble);
        let schedule = Schedule::of(inputs);
        let groups = members.groups.par_iter().map(|rates| {
            let model = packed(rates, |_| inputs);
            let settled = settle(&model, &schedule, in_balance(&model), Accuracy::COARSE)?;
            Ok(MemberGroup {
                rates: *rates,
                day: follow(&model, &schedule, settled.start, Accuracy::COARSE)?,
                settled,
                model,
            })
        });
        Ok(Self {
            inputs: inputs.clone(),
            ensemble,
            groups: groups.collect::<Result<_, IntegrationError>>()?,
            members,
        })
    }

    /// What is asked of every group, member by member, without the filling.
    pub(super) fn each<T: Clone>(&self, of: impl Fn(&MemberGroup) -> [T; LANES]) -> Vec<T> {
        let groups: Vec<[T; LANES]> = self.groups.iter().map(of).collect();
        self.members.unpacked(&groups)
    }

    /// Answers of every group, without the filling.
    pub(super) fn answers<T: Clone>(&self, groups: &[[T; LANES]]) -> Vec<T> {
        self.members.unpacked(groups)
    }
}

/// Eight members in eight tanks that differ in nothing but what coefficients hold.
pub(super) fn packed<'a>(
    rates: &[Rates<f64>; LANES],
    inputs: impl Fn(usize) -> &'a NightInputs,
) -> NightModel<Lanes> {
    let members = std::array::from_fn(|lane| Coefficients::of(inputs(lane), &rates[lane]));
    NightModel::new(inputs(0), Coefficients::packed(&members))
}

/// Lowest oxygen of the day with the typical numbers, mg/L, in a tank on several of its
/// days: they may differ in what lives in it, never in warmth, air or hours of light.
///
/// # Errors
/// [`IntegrationError`], as for [`cycle`](super::cycle()).
pub fn lows_mg_l(days: &[NightInputs]) -> Result<Vec<f64>, IntegrationError> {
    let groups = grouped(days);
    let lows = groups.par_iter().map(|tanks| {
        let rates = tanks.each_ref().map(|tank| Rates::of(tank).central());
        let model = packed(&rates, |lane| &tanks[lane]);
        let schedule = Schedule::of(&tanks[0]);
        Ok(settle_finely(&model, &schedule, in_balance(&model))?.low.0)
    });
    let lows: Vec<[f64; LANES]> = lows.collect::<Result<_, IntegrationError>>()?;
    let mut lows = lows.concat();
    lows.truncate(days.len());
    Ok(lows)
}
