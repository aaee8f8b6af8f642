//! What was changed, why, and what it costs; what could not be met.

use serde::Serialize;

use super::held::{KeptKey, held};
use super::trial::{Bench, JudgedCandidate};
use crate::finding::{Finding, Status};
use crate::plan::JudgedPlan;
use crate::result::results;
use crate::spec::written;
use crate::units::show::significant;

results! {
    /// A spec after it was mended.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Mended {
        /// what you call the tank; the file's name where the spec has none
        pub name: String => Spec,
        /// whether nothing is left to watch or mend and the odds are as asked
        pub holds: bool => "mend.search",
        /// every key that is set another way, in the order of a spec's sections
        pub changes: Vec<KeyChange> => "mend.search",
        /// the worst finding of the spec as it was
        pub status_before: Status => "mend.search",
        /// the worst finding of the spec with all changes
        pub status_after: Status => "mend.search",
        /// share of the starts, 0 to 1, that hold as it was
        pub odds_before: f64 => "flush.chance",
        /// share of the starts, 0 to 1, that hold with all changes
        pub odds_after: f64 => "flush.chance",
        /// what is still to be watched or mended, with what stands against it
        pub unmet: Vec<Unmet> => "mend.search",
        /// plans that were computed on the way
        pub plans_tried: u32 => Count,
    }

    /// One key that is set another way.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct KeyChange {
        /// the key; an item that is new has an empty bracket
        pub key: String => Spec,
        /// what stood there, or what stood for it; null where nothing did
        pub from: Option<String> => Spec,
        /// what stands there now; null where the key is taken out
        pub to: Option<String> => "mend.search",
        /// what the plan would come to without it
        pub why: String => "mend.search",
        /// what it adds to the cost, where prices are given
        pub cost: Option<f64> => "mend.search",
    }

    /// Something that no change met.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Unmet {
        /// the finding, or flush.chance for the share of the starts
        pub code: String => Finding,
        /// what stands against it
        pub why: String => "mend.search",
        /// how near the nearest plan comes
        pub nearest: String => "mend.search",
    }
}

/// What was found, with a look at the plan without each change.
pub(super) fn mended(
    bench: &Bench<'_>,
    before: &JudgedCandidate,
    found: &JudgedCandidate,
) -> Mended {
    Mended {
        name: bench.base().draft().name.clone(),
        holds: found.holds(),
        changes: changes(bench, found),
        status_before: before.judged.status(),
        status_after: found.judged.status(),
        odds_before: before.judged.odds.unwrap_or_default(),
        odds_after: found.judged.odds.unwrap_or_default(),
        unmet: unmet(bench, found),
        plans_tried: bench.tried(),
    }
}

fn changes(bench: &Bench<'_>, found: &JudgedCandidate) -> Vec<KeyChange> {
    let mut changes = Vec::new();
    for (lever, rung) in &found.turned {
        let mut turned = found.turned.clone();
        turned.remove(lever);
        let without = bench.attempt(turned, bench.proof());
        let (why, cost) = match &without {
            Some(without) => (
                difference(&without.judged, &found.judged),
                added_cost(&without.judged, &found.judged),
            ),
            None => ("without it the rest makes no tank".to_owned(), None),
        };
        // What replaces something whose price goes with it has none.
        let is_priced = rung.edits.iter().all(|edit| edit.value.is_some());
        for (place, edit) in rung.edits.iter().enumerate() {
            changes.push(KeyChange {
                from: stood(bench, &edit.key),
                to: edit.value.as_deref().map(plain),
                key: edit.key.clone(),
                why: why.clone(),
                cost: cost.filter(|_| is_priced && place == 0),
            });
        }
    }
    changes
}

/// What the spec says at a key, or what stands for it.
fn stood(bench: &Bench<'_>, key: &str) -> Option<String> {
    let own = written(bench.request.text, key);
    let default = || {
        let mut assumed = bench.base().draft().assumed.iter();
        assumed.find(|assumed| assumed.key == key)
    };
    own.map(|own| plain(&own))
        .or_else(|| default().map(|assumed| assumed.value.clone()))
}

/// A value without the quotes around it.
fn plain(value: &str) -> String {
    let inner = value
        .strip_prefix('"')
        .and_then(|rest| rest.strip_suffix('"'));
    inner.unwrap_or(value).to_owned()
}

/// What stands without a change that does not with it.
fn difference(without: &JudgedPlan, with: &JudgedPlan) -> String {
    let is_new = |finding: &&Finding| {
        let mut others = with.findings.iter();
        let other = others.find(|other| other.code == finding.code);
        stands(finding) && other.is_none_or(|other| other.status < finding.status)
    };
    let mut parts: Vec<String> = without
        .findings
        .iter()
        .filter(is_new)
        .map(|finding| format!("{} {}", finding.status.word(), finding.code.text()))
        .collect();
    if without.shortfall() > with.shortfall() {
        parts.push(format!("{} of 100 starts hold", of_100(without)));
    }
    if parts.is_empty() {
        return "without it the plan is further from its limits".to_owned();
    }
    format!("without it: {}", parts.join(", "))
}

/// What a change adds, where the prices of all that it names are given.
fn added_cost(without: &JudgedPlan, with: &JudgedPlan) -> Option<f64> {
    let cost = with.cost? - without.cost.unwrap_or_default();
    (cost != 0.0).then_some(cost)
}

/// Starts of a hundred that hold.
fn of_100(judged: &JudgedPlan) -> String {
    format!("{:.0}", (judged.odds.unwrap_or_default() * 100.0).floor())
}

fn unmet(bench: &Bench<'_>, found: &JudgedCandidate) -> Vec<Unmet> {
    if found.holds() {
        return Vec::new();
    }
    let held = held(bench, found);
    let judged = &found.judged;
    let standing = judged.findings.iter().filter(|finding| stands(finding));
    let mut unmet: Vec<Unmet> = standing
        .map(|finding| {
            let is_met = |other: &JudgedPlan| {
                let mut standing = other.findings.iter().filter(|other| stands(other));
                standing.all(|other| other.code != finding.code)
            };
            Unmet {
                code: finding.code.text().to_owned(),
                why: format!("{}{}", finding.says, kept(&held, is_met)),
                nearest: nearest(finding),
            }
        })
        .collect();
    if judged.shortfall() > 0.0 {
        let more = |other: &JudgedPlan| other.odds > judged.odds;
        let hold = of_100(judged);
        let asked = judged.asked * 100.0;
        unmet.push(Unmet {
            code: "flush.chance".to_owned(),
            why: format!("no change raises the odds further{}", kept(&held, more)),
            nearest: format!("{hold} of 100 starts hold where {asked:.0} are asked"),
        });
    }
    unmet
}

/// "; light is kept, which would help": the kept keys without which it is better.
fn kept(held: &[KeptKey<'_>], is_better: impl Fn(&JudgedPlan) -> bool) -> String {
    let better = held.iter().filter(|held| is_better(&held.judged));
    let mut keys: Vec<&str> = better.map(|held| held.key).collect();
    keys.sort_unstable();
    keys.dedup();
    match keys.as_slice() {
        [] => String::new(),
        [key] => format!("; {key} is kept, which would help"),
        keys => format!("; {} are kept, which would help", keys.join(", ")),
    }
}

fn stands(finding: &Finding) -> bool {
    finding.status >= Status::Watch
}

/// "0.61 mg/L where under 0.33 is wanted".
fn nearest(finding: &Finding) -> String {
    let Some(value) = finding.value else {
        return finding.says.clone();
    };
    let value = format!("{} {}", significant(value, 2), finding.unit);
    match (finding.low, finding.high) {
        (_, Some(high)) => format!("{value} where at most {} is wanted", significant(high, 2)),
        (Some(low), None) => format!("{value} where at least {} is wanted", significant(low, 2)),
        (None, None) => value,
    }
}
