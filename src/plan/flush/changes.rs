//! The smallest plan of water changes that reaches the probability asked for.

use super::course::{under_limits, wanted};
use super::section::ChangePlan;
use crate::design::Design;
use crate::plan::Options;
use crate::source::Band;
use crate::startup::ensemble;
use crate::startup::{Draw, Event, EventKind, Inputs, Parameters};
use crate::units::Share;

/// Members of the smaller ensemble with which plans are tried.
const MEMBERS: u32 = 64;
/// Shares of the water, days between two changes and last days that are tried; half the
/// water every second day is the most that is advised.
const SHARES_PCT: [f64; 4] = [20.0, 30.0, 40.0, 50.0];
const EVERY_D: [f64; 3] = [7.0, 4.0, 2.0];
const UNTIL: [f64; 3] = [21.0, 35.0, 49.0];
/// The first change.
const FROM: f64 = 3.0;

/// A plan with the probability that it reaches.
pub(super) struct Sought {
    pub(super) plan: ChangePlan,
    pub(super) probability: f64,
}

/// The plan that uses the least water of those that reach the probability asked for,
/// found by halving the list; the one that uses the most where none does.
pub(super) fn smallest(
    design: &Design,
    inputs: &Inputs,
    bands: &Parameters<Band>,
    options: Options,
) -> Option<Sought> {
    let draw = Draw {
        members: MEMBERS,
        seed: options.seed,
    };
    let tried = |plan: ChangePlan| {
        let changed = Inputs {
            events: [inputs.events.clone(), events(&plan)].concat(),
            ..inputs.clone()
        };
        let members = ensemble::members(&changed, bands, options.days, draw, &|_| ());
        Sought {
            plan,
            probability: under_limits(design, &members),
        }
    };
    let plans = plans();
    let mut found = tried(*plans.last()?);
    if found.probability < wanted(design) {
        return Some(found);
    }
    let (mut low, mut high) = (0, plans.len() - 1);
    while low < high {
        let middle = usize::midpoint(low, high);
        let sought = tried(plans[middle]);
        if sought.probability >= wanted(design) {
            found = sought;
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    Some(found)
}

/// The plans tried, least water first; of equals, the fewest changes.
fn plans() -> Vec<ChangePlan> {
    let mut plans: Vec<ChangePlan> = SHARES_PCT
        .into_iter()
        .flat_map(|share_pct| EVERY_D.map(|every_d| (share_pct, every_d)))
        .flat_map(|(share_pct, every_d)| {
            UNTIL.map(|until| ChangePlan {
                from: FROM,
                until,
                every_d,
                share_pct,
            })
        })
        .collect();
    plans.sort_by(|a, b| {
        let water = |plan: &ChangePlan| plan.share_pct * count(plan);
        water(a)
            .total_cmp(&water(b))
            .then(count(a).total_cmp(&count(b)))
    });
    plans
}

fn count(plan: &ChangePlan) -> f64 {
    ((plan.until - plan.from) / plan.every_d).floor() + 1.0
}

fn events(plan: &ChangePlan) -> Vec<Event> {
    (0..count(plan) as u32)
        .map(|round| Event {
            day: plan.from + f64::from(round) * plan.every_d,
            kind: EventKind::WaterChange(Share::from_percent(plan.share_pct)),
        })
        .collect()
}
