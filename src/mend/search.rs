//! The search: levers turned one after the other, and back as far as the plan holds.

use rayon::prelude::*;

use super::lever::{self, MEANS, Rung};
use super::trial::{Bench, JudgedCandidate, Scrutiny, Turned};
use crate::plan::Reach;

/// Steps after which a descent ends; each is at most one lever.
const MOST_STEPS: usize = 12;
/// By how much more than is asked a plan has to hold in few members, round by round.
const MARGINS: [f64; 3] = [0.03, 0.07, 0.12];
/// What a change that asks no more than the one that it replaces counts as asking.
const LEAST_EFFORT: f64 = 0.5;
/// What any further change asks at least.
const ANY_CHANGE: f64 = 3.0;

/// A search for the plan that holds.
pub(super) struct PlanSearch<'a> {
    bench: &'a Bench<'a>,
}

impl<'a> PlanSearch<'a> {
    pub(super) const fn new(bench: &'a Bench<'a>) -> Self {
        Self { bench }
    }

    /// The plan that holds with the fewest changes, or the nearest; judged by all members.
    ///
    /// Few members are soon looked at but may be luckier than all: where all tell that a
    /// plan does not hold, more is asked of the few.
    pub(super) fn from(&self, written: JudgedCandidate) -> JudgedCandidate {
        let mut nearest = written.clone();
        let mut trial = written;
        for margin in MARGINS {
            if nearest.holds() {
                break;
            }
            trial = self.by_few(trial, margin);
            let is_found = trial.holds();
            let proof = self.bench.proof();
            if let Some(proved) = self.bench.again(&trial, proof)
                && proved.is_better_than(&nearest)
            {
                nearest = self.without_needless(proved, proof);
            }
            if !is_found {
                break;
            }
        }
        nearest
    }

    /// The plan that holds in a few members with some to spare, or the nearest.
    fn by_few(&self, from: JudgedCandidate, margin: f64) -> JudgedCandidate {
        let glances = [Reach::Design, Reach::Start, Reach::Night];
        let glances = glances.map(|reach| self.bench.glance(reach, margin));
        let screen = self.bench.screen(margin);
        let mut trial = from;
        for look in glances.into_iter().chain([screen]) {
            trial = self.descend(trial, look);
        }
        self.settle(self.pushed(trial, screen), screen)
    }

    /// Turns levers, each time the one that does most for what it asks, until the plan holds
    /// as far as it is looked at, or nothing helps.
    fn descend(&self, from: JudgedCandidate, look: Scrutiny) -> JudgedCandidate {
        let Some(mut trial) = self.bench.again(&from, look) else {
            return from;
        };
        for _ in 0..MOST_STEPS {
            if trial.holds() {
                break;
            }
            let turns = self.turns(&trial, look.reach);
            match best(self.attempts(turns, look), &trial) {
                Some(next) => trial = next,
                None => break,
            }
        }
        trial
    }

    /// The plan from which no single change helps, brought further by one that mends a finding
    /// at the cost of others, which further changes then make good; as it is where none does.
    fn pushed(&self, stuck: JudgedCandidate, look: Scrutiny) -> JudgedCandidate {
        if stuck.holds() {
            return stuck;
        }
        let attempts = self.attempts(self.turns(&stuck, look.reach), look);
        let pushes = stuck.standing().into_iter().filter_map(|code| {
            let mending = attempts
                .iter()
                .filter(|attempt| !attempt.standing().contains(&code));
            mending.min_by(|one, other| one.judged.missed().total_cmp(&other.judged.missed()))
        });
        let pushed: Vec<JudgedCandidate> = pushes
            .map(|attempt| self.descend(attempt.clone(), look))
            .collect();
        pushed.into_iter().fold(stuck, |best, pushed| {
            if pushed.is_better_than(&best) {
                pushed
            } else {
                best
            }
        })
    }

    /// Some rungs of every lever that may mend what is wrong.
    fn turns(&self, trial: &JudgedCandidate, reach: Reach) -> Vec<Turned> {
        let means = MEANS
            .iter()
            .filter(|means| means.may_mend(&trial.judged, reach));
        let mut rungs = lever::rungs(means, &trial.now(self.bench.base()));
        rungs.retain(|rung| self.bench.is_free(rung));
        lever::spread(rungs)
            .into_iter()
            .filter(|rung| trial.turned.get(&rung.lever) != Some(rung))
            .map(|rung| {
                let mut turned = trial.turned.clone();
                turned.insert(rung.lever, rung);
                turned
            })
            .collect()
    }

    fn attempts(&self, turns: Vec<Turned>, look: Scrutiny) -> Vec<JudgedCandidate> {
        let attempts = turns.into_par_iter();
        let attempts = attempts.map(|turned| self.bench.attempt(turned, look));
        attempts.collect::<Vec<_>>().into_iter().flatten().collect()
    }

    /// Turns every lever back that the plan does without, the costliest first, and the
    /// others as far back as it holds no worse.
    fn settle(&self, from: JudgedCandidate, look: Scrutiny) -> JudgedCandidate {
        let Some(mut trial) = self.bench.again(&from, look) else {
            return from;
        };
        trial = self.without_needless(trial, look);
        for rung in costliest_first(&trial) {
            trial = self.turned_back(trial, &rung, look);
        }
        trial
    }

    /// The plan without the changes that it holds no worse without.
    fn without_needless(&self, from: JudgedCandidate, look: Scrutiny) -> JudgedCandidate {
        let mut trial = from;
        for rung in costliest_first(&trial) {
            let mut turned = trial.turned.clone();
            turned.remove(&rung.lever);
            trial = self.no_worse(turned, look, &trial).unwrap_or(trial);
        }
        trial
    }

    /// The plan with one lever turned back, by halving: further is taken to be no better.
    fn turned_back(&self, from: JudgedCandidate, rung: &Rung, look: Scrutiny) -> JudgedCandidate {
        let mut less = lever::rungs(MEANS, &from.now(self.bench.base()));
        less.retain(|less| less.ladder() == rung.ladder() && less.effort < rung.effort);
        less.retain(|less| self.bench.is_free(less));
        less.sort_by(|one, other| one.effort.total_cmp(&other.effort));
        let mut trial = from;
        let (mut low, mut high) = (0, less.len());
        while low < high {
            let middle = usize::midpoint(low, high);
            let Some(less) = less.get(middle) else {
                break;
            };
            let mut turned = trial.turned.clone();
            turned.insert(rung.lever, less.clone());
            match self.no_worse(turned, look, &trial) {
                Some(found) => {
                    trial = found;
                    high = middle;
                }
                None => low = middle + 1,
            }
        }
        trial
    }

    fn no_worse(
        &self,
        turned: Turned,
        look: Scrutiny,
        than: &JudgedCandidate,
    ) -> Option<JudgedCandidate> {
        let attempt = self.bench.attempt(turned, look)?;
        let worse = than.is_better_than(&attempt);
        (!worse).then_some(attempt)
    }
}

fn costliest_first(trial: &JudgedCandidate) -> Vec<Rung> {
    let mut rungs: Vec<Rung> = trial.turned.values().cloned().collect();
    rungs.sort_by(|one, other| other.effort.total_cmp(&one.effort));
    rungs
}

/// The one that is expected to ask least of the keeper until the plan holds: what it asks
/// itself, and as much for each further gain as for its own, another change at least.
fn best(trials: Vec<JudgedCandidate>, now: &JudgedCandidate) -> Option<JudgedCandidate> {
    let expected = |trial: &JudgedCandidate| {
        let more = (trial.effort() - now.effort()).max(LEAST_EFFORT);
        if trial.holds() {
            return more;
        }
        let all = now.judged.missed() / trial.gain_over(now).max(f64::MIN_POSITIVE);
        (more * all).max(more + ANY_CHANGE)
    };
    let better = trials.into_iter().filter(|trial| trial.is_better_than(now));
    better.min_by(|one, other| expected(one).total_cmp(&expected(other)))
}
