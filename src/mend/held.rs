//! What would help if it were not kept.

use rayon::prelude::*;

use super::lever::{self, MEANS, Rung};
use super::trial::{Bench, JudgedCandidate};
use crate::plan::JudgedPlan;

/// A kept key, and the plan with it set another way.
pub(super) struct KeptKey<'a> {
    pub(super) key: &'a str,
    pub(super) judged: JudgedPlan,
}

/// The kept keys that a plan would be nearer to holding without, each with the settings
/// that bring it nearer.
pub(super) fn held<'a>(bench: &'a Bench<'_>, found: &JudgedCandidate) -> Vec<KeptKey<'a>> {
    let screen = bench.screen(0.0);
    let Some(present) = bench.again(found, screen) else {
        return Vec::new();
    };
    let means = MEANS
        .iter()
        .filter(|means| means.may_mend(&present.judged, screen.reach));
    let rungs = lever::rungs(means, &present.now(bench.base()));
    let held: Vec<(Rung, &str)> = lever::spread(rungs)
        .into_iter()
        .filter_map(|rung| bench.held(&rung).map(|key| (rung, key)))
        .collect();
    let tried = held.into_par_iter().map(|(rung, key)| {
        let mut turned = found.turned.clone();
        turned.insert(rung.lever, rung);
        let trial = bench.attempt(turned, screen)?;
        let helps = trial.is_better_than(&present);
        helps.then_some(KeptKey {
            key,
            judged: trial.judged,
        })
    });
    tried.collect::<Vec<_>>().into_iter().flatten().collect()
}
