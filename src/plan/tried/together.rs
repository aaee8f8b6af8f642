//! Remedies that are followed one after the other, so that none asks for what another has
//! done already.

use super::applied::{self, Advice};
use super::{BeforeAndAfter, in_words, stands};
use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::plan::judged::{JudgedPlan, Reach, screened};
use crate::plan::options::Options;

/// Beside each finding, what is said in place of its own remedy: the finding whose remedy
/// mends it too; nothing where none does.
///
/// Remedies are followed in turn, what does most by itself first, as long as each helps
/// beside those before it.
pub(super) fn spared(
    advice: &Advice<'_>,
    options: Options,
    findings: &[Finding],
    trials: &[Option<BeforeAndAfter<'_>>],
) -> Vec<Option<Remedy>> {
    let mut spared = alike(findings);
    let mut helping: Vec<(&Finding, &BeforeAndAfter<'_>)> = findings
        .iter()
        .zip(trials)
        .zip(&spared)
        .filter(|(_, alike)| alike.is_none())
        .filter_map(|((finding, trial), _)| Some((finding, trial.as_ref()?)))
        .filter(|(_, trial)| trial.helps())
        .collect();
    helping.sort_by(|one, other| other.1.gain().total_cmp(&one.1.gain()));
    let Some(&(strongest, trial)) = helping.first() else {
        return spared;
    };
    let mut followed = FollowedRemedies {
        design: trial.design.clone(),
        judged: trial.after.clone(),
    };
    let mut own = vec![strongest.code];
    let mut referred = Vec::new();
    let mut refer = |followed: &FollowedRemedies, own: &[Code]| {
        let beside = own.last().map(|code| as_for(*code));
        for (finding, spared) in findings.iter().zip(&mut spared) {
            let stood = trial.status_before(finding.code) >= Status::Watch;
            let is_mended = stands(finding) && stood && !followed.stands(finding.code);
            if is_mended && !own.contains(&finding.code) && !referred.contains(&finding.code) {
                referred.push(finding.code);
                spared.clone_from(&beside);
            }
        }
    };
    refer(&followed, &own);
    for (finding, _) in helping.iter().skip(1) {
        let still_stands = followed.stands(finding.code);
        if still_stands && followed.follows(advice, options, finding) {
            own.push(finding.code);
            refer(&followed, &own);
        }
    }
    spared
}

/// Beside each finding that asks for the very plants that the load asks for, a word on that.
fn alike(findings: &[Finding]) -> Vec<Option<Remedy>> {
    let mut load = findings.iter().filter(|finding| stands(finding));
    let load = load.find(|finding| finding.code == Code::PlantsLoad);
    let asks = |finding: &Finding| {
        load.filter(|load| load.code != finding.code && load.remedy == finding.remedy)
            .map(|load| as_for(load.code))
    };
    findings.iter().map(asks).collect()
}

fn as_for(code: Code) -> Remedy {
    in_words(format!("as for {}", code.text()))
}

/// What remedies followed so far have made of a tank.
struct FollowedRemedies {
    design: Design,
    judged: JudgedPlan,
}

impl FollowedRemedies {
    /// Whether a finding is still to be watched or mended.
    fn stands(&self, code: Code) -> bool {
        let findings = self.judged.findings.iter();
        findings
            .filter(|finding| stands(finding))
            .any(|finding| finding.code == code)
    }

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
        };
        true
    }
}
