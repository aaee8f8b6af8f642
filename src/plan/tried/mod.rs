//! Remedies that were tried: each is followed in the plan itself before it is printed.

mod strongest;
mod turn;

pub(super) use turn::Advice;

use rayon::prelude::*;

use super::judged::{Judged, Reach, screened};
use super::options::Options;
use crate::design::Draft;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::numerics::rodas::IntegrationError;

/// Members that a remedy is tried with: enough to tell what helps from what hurts.
const MEMBERS: u32 = 16;
/// Odds that a remedy may cost before it counts as harm.
const COST: f64 = 0.02;
/// A gain under this is none.
const GAIN: f64 = 0.01;

/// A plan before and after something is done.
struct Trial<'a> {
    before: &'a Judged,
    after: Judged,
}

/// The findings with the remedies that help, each with what then stands; one that makes
/// something else worse, or that changes nothing, is not told. What is judged but not to
/// be watched keeps its remedy untried, and so does one that names no amount.
pub(super) fn tried(
    advice: &Advice<'_>,
    options: Options,
    findings: Vec<Finding>,
) -> Result<Vec<Finding>, IntegrationError> {
    let is_advised = |finding: &Finding| stands(finding) && finding.remedy.is_some();
    let advised: Vec<Code> = findings
        .iter()
        .filter(|finding| is_advised(finding))
        .map(|finding| finding.code)
        .collect();
    if advised.is_empty() {
        return Ok(findings);
    }
    let few = Options {
        members: options.members.min(MEMBERS),
        ..options
    };
    let before = screened(advice.design, few, Reach::Night)?;
    let follow = |draft: Draft| {
        let design = draft.check().ok()?;
        let after = screened(&design, few, Reach::Night).ok()?;
        Some(Trial {
            before: &before,
            after,
        })
    };
    let followed = findings.into_par_iter().map(|finding| {
        let turned = turn::turned(advice, &finding).filter(|_| stands(&finding));
        let Some(trial) = turned.and_then(follow) else {
            return finding;
        };
        let remedy = finding.remedy.filter(|_| trial.helps());
        Finding {
            remedy: remedy.map(|remedy| trial.told(&remedy)),
            ..finding
        }
    });
    let mut told = followed.collect::<Vec<_>>();
    if before.shortfall() > 0.0 {
        strongest::name(advice.design, &follow, &mut told);
    }
    for finding in &mut told {
        if finding.remedy.is_none() && advised.contains(&finding.code) {
            finding.remedy = Some(no_single_step());
        }
    }
    Ok(told)
}

/// Whether a finding asks for something.
fn stands(finding: &Finding) -> bool {
    finding.status >= Status::Watch
}

/// What is said where the one step that there is does harm or nothing.
fn no_single_step() -> Remedy {
    Remedy {
        says: "no single step mends it without harm elsewhere; lentic mend looks for several that do together".to_owned(),
        quantity: None,
        unit: "",
    }
}

impl Trial<'_> {
    /// Whether it brings the plan nearer to its limits, with nothing made worse.
    fn helps(&self) -> bool {
        let odds = |judged: &Judged| judged.odds.unwrap_or_default();
        let lost = odds(self.before) - odds(&self.after);
        self.gain() > GAIN && lost <= COST && !self.harms()
    }

    /// Whether a finding comes to be watched or mended that was not so before.
    fn harms(&self) -> bool {
        let was = |code: Code| {
            let same = self.before.findings.iter();
            let same = same.filter(|finding| finding.code == code);
            same.map(|finding| finding.status).max()
        };
        let mut after = self.after.findings.iter();
        after.any(|finding| stands(finding) && Some(finding.status) > was(finding.code))
    }

    /// By how much nearer.
    fn gain(&self) -> f64 {
        self.before.missed() - self.after.missed()
    }

    /// A remedy with what stands after it.
    fn told(&self, remedy: &Remedy) -> Remedy {
        Remedy {
            says: format!("{}; then: {}", remedy.says, self.then()),
            quantity: remedy.quantity,
            unit: remedy.unit,
        }
    }

    /// "act 1, watch 2".
    fn then(&self) -> String {
        let left = [Status::Act, Status::Watch].map(|status| (status, self.after.count(status)));
        let left: Vec<String> = left
            .into_iter()
            .filter(|(_, count)| *count > 0)
            .map(|(status, count)| format!("{} {count}", status.word()))
            .collect();
        if left.is_empty() {
            "nothing to mend or watch".to_owned()
        } else {
            left.join(", ")
        }
    }
}
