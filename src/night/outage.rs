//! A power cut: no lamp, no device.

use std::ops::ControlFlow;

use rayon::prelude::*;

use super::course::{Accuracy, FollowedDay, part};
use super::inputs::NightInputs;
use super::members::{Ensemble, Nights};
use super::model::{NightModel, NightState, Phase};
use super::phases::DayPhase;
use super::rates::Rates;
use crate::numerics::lanes::{LANES, Lanes};
use crate::numerics::rodas::IntegrationError;
use crate::units::{Concentration, Duration};

/// Hours that a cut is followed for.
pub const LONGEST_H: f64 = 72.0;
/// Hours between two looks at the oxygen.
const LOOK_H: f64 = 0.25;

/// How long oxygen lasts in a power cut, by when it begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outage {
    /// As the lamp goes off.
    pub from_dusk: Lasting,
    /// As the lamp should go on.
    pub from_dawn: Lasting,
}

/// A time over the members of an ensemble; none where oxygen holds for [`LONGEST_H`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lasting {
    /// In a tenth of the members it is shorter.
    pub low: Option<Duration>,
    /// In half of the members it is shorter.
    pub typical: Option<Duration>,
}

impl Lasting {
    fn of(mut hours: Vec<f64>) -> Self {
        hours.sort_by(f64::total_cmp);
        let at = |share: f64| {
            let place = (hours.len().saturating_sub(1) as f64 * share).floor() as usize;
            let found = hours.get(place).copied().filter(|hours| hours.is_finite());
            found.map(Duration::from_hours)
        };
        Self {
            low: at(0.1),
            typical: at(0.5),
        }
    }
}

/// Time until oxygen falls to a limit in a power cut.
///
/// The water cools meanwhile, which slows what uses oxygen: the time errs short.
///
/// # Errors
/// [`IntegrationError`], as for [`cycle`](super::cycle()).
///
/// # Source
/// The day of [`cycle`](super::cycle()) without lamp and device; cooling as
/// [`cooling_time`](crate::heat::cooling::cooling_time).
pub fn outage(
    inputs: &NightInputs,
    ensemble: Ensemble,
    limit: Concentration,
) -> Result<Outage, IntegrationError> {
    Nights::of(inputs, &Rates::of(inputs), ensemble)?.outage(limit)
}

impl Nights {
    /// See [`outage`].
    ///
    /// # Errors
    /// As for [`outage`].
    pub fn outage(&self, limit: Concentration) -> Result<Outage, IntegrationError> {
        let lasting = |point: fn(&FollowedDay<Lanes>) -> NightState<Lanes>| {
            let groups = self.groups.par_iter();
            let hours = groups.map(|group| hours_to(&group.model, point(&group.day), limit.mg_l()));
            let hours: Vec<_> = hours.collect::<Result<_, IntegrationError>>()?;
            Ok(Lasting::of(self.answers(&hours)))
        };
        Ok(Outage {
            from_dusk: lasting(|day| day.dusk)?,
            from_dawn: lasting(|day| day.end)?,
        })
    }
}

/// Hours until each member is at the limit, straight between two looks; infinite where
/// it never is.
fn hours_to(
    model: &NightModel<Lanes>,
    start: NightState<Lanes>,
    limit_mg_l: f64,
) -> Result<[f64; LANES], IntegrationError> {
    let system = DayPhase {
        model,
        phase: Phase::CUT,
    };
    let mut found = start[0].0.map(|oxygen| {
        if oxygen <= limit_mg_l {
            0.0
        } else {
            f64::INFINITY
        }
    });
    let mut before = start[0];
    let mut next = LOOK_H;
    part(&system, (0.0, LONGEST_H), start, Accuracy::COARSE, |step| {
        while next <= step.end {
            let now = step.at(next)[0];
            for (lane, hours) in found.iter_mut().enumerate() {
                let (from, to) = (before.0[lane], now.0[lane]);
                if hours.is_infinite() && to <= limit_mg_l {
                    *hours = next - LOOK_H * (limit_mg_l - to) / (from - to);
                }
            }
            before = now;
            next += LOOK_H;
        }
        if found.iter().any(|hours| hours.is_infinite()) {
            ControlFlow::Continue(())
        } else {
            ControlFlow::Break(())
        }
    })?;
    Ok(found)
}
