//! How far a plan is from holding, so that of two the better can be told.

use crate::finding::{Finding, Status};
use crate::plan::Judged;

/// What a finding to be mended and one to be watched count, beside odds that are missed by
/// a whole: judgement; one to be mended outweighs several to be watched.
const ACT: f64 = 3.0;
const WATCH: f64 = 1.0;
/// A finding counts no more than this many times over its limit.
const MOST_EXCESS: f64 = 8.0;
/// Differences under this are no difference.
const ALIKE: f64 = 0.004;

/// How far a plan is from holding; nothing where it holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Score(f64);

impl Score {
    pub(super) fn of(judged: &Judged) -> Self {
        let findings = judged.findings.iter().map(missed);
        Self(judged.shortfall() + findings.sum::<f64>())
    }

    /// Whether there is nothing left to do.
    pub(super) fn holds(self) -> bool {
        self.0 <= 0.0
    }

    /// By how much it is nearer to holding than another.
    pub(super) fn gain_over(self, other: Self) -> f64 {
        other.0 - self.0
    }

    /// Whether it is nearer to holding than another by more than nothing.
    pub(super) fn is_better_than(self, other: Self) -> bool {
        let gain = self.gain_over(other);
        gain > ALIKE || (self.holds() && !other.holds())
    }
}

/// What a finding counts: its status, and by how much it passes its limit.
fn missed(finding: &Finding) -> f64 {
    match finding.status {
        Status::Act => ACT + excess(finding),
        Status::Watch => WATCH + excess(finding),
        Status::Note | Status::Ok => 0.0,
    }
}

/// How far a number passes its limit, from 0 to 1, by orders of magnitude.
fn excess(finding: &Finding) -> f64 {
    let over = finding.value.zip(finding.high);
    let under = finding.value.zip(finding.low);
    let times = [
        over.map(|(value, high)| value / high),
        under.map(|(value, low)| low / value),
    ];
    let times = times.into_iter().flatten().fold(1.0, f64::max);
    times.min(MOST_EXCESS).ln() / MOST_EXCESS.ln()
}
