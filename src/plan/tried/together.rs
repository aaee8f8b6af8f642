//! Remedies that are followed one after the other, so that none asks for what another has
//! done already.

use super::applied::{self, Advice};
use super::{BeforeAndAfter, in_words, stands};
use crate::design::Design;
use crate::finding::{Code, Finding, Remedy};
use crate::plan::judged::{JudgedPlan, Reach, screened};
use crate::plan::options::Options;
use crate::plan::words;

/// Beside each finding, what is said in place of its own remedy: nothing where that helps
/// beside those of the others.
///
/// Where one remedy mends all, every other finding refers to it. Else they are followed in
/// turn, what does most by itself first, and each that no longer helps refers to those
/// before it.
pub(super) fn spared(
    advice: &Advice<'_>,
    options: Options,
    findings: &[Finding],
    trials: &[Option<BeforeAndAfter<'_>>],
) -> Vec<Option<Remedy>> {
    let mut spared = vec![None; findings.len()];
    let mut helping: Vec<(&Finding, &BeforeAndAfter<'_>)> = findings
        .iter()
        .zip(trials)
        .filter_map(|(finding, trial)| Some((finding, trial.as_ref()?)))
        .filter(|(_, trial)| trial.helps())
        .collect();
    helping.sort_by(|one, other| other.1.gain().total_cmp(&one.1.gain()));
    let Some(&(strongest, trial)) = helping.first() else {
        return spared;
    };
    let mut followed = FollowedRemedies {
        design: trial.design.clone(),
        judged: trial.after.clone(),
        codes: vec![strongest.code],
    };
    let mut needless: Vec<Code> = Vec::new();
    for (finding, _) in helping.iter().skip(1) {
        if !followed.follows(advice, options, finding) {
            needless.push(finding.code);
        }
    }
    let holds = followed.judged.holds();
    let codes: Vec<&str> = followed.codes.iter().map(|code| code.text()).collect();
    let others = words::listed(&codes);
    let beside = in_words(if holds {
        format!("nothing more: what stands at {others} mends it too")
    } else {
        format!("first what stands at {others}")
    });
    for (finding, spared) in findings.iter().zip(&mut spared) {
        let is_own = followed.codes.contains(&finding.code);
        let is_needless = holds || needless.contains(&finding.code);
        if stands(finding) && finding.remedy.is_some() && !is_own && is_needless {
            *spared = Some(beside.clone());
        }
    }
    spared
}

/// What remedies followed so far have made of a tank.
struct FollowedRemedies {
    design: Design,
    judged: JudgedPlan,
    codes: Vec<Code>,
}

impl FollowedRemedies {
    /// Follows one more where it helps; whether it did.
    fn follows(&mut self, advice: &Advice<'_>, options: Options, finding: &Finding) -> bool {
        if self.judged.holds() {
            return false;
        }
        let now = Advice {
            design: &self.design,
            ..*advice
        };
        let applied = applied::applied(&now, finding).and_then(|draft| draft.check().ok());
        let Some(design) = applied else {
            return false;
        };
        let Ok(after) = screened(&design, options, Reach::Night) else {
            return false;
        };
        let trial = BeforeAndAfter {
            before: &self.judged,
            design,
            after,
        };
        if !trial.helps() {
            return false;
        }
        let BeforeAndAfter { design, after, .. } = trial;
        *self = Self {
            design,
            judged: after,
            codes: std::mem::take(&mut self.codes),
        };
        self.codes.push(finding.code);
        true
    }
}
