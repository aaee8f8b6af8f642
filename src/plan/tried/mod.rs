//! Remedies that were tried: each is followed in the plan itself before it is printed.

mod applied;
mod strongest;
mod together;

pub(super) use applied::Advice;

use rayon::prelude::*;

use super::judged::{JudgedPlan, Reach, screened};
use super::options::Options;
use super::section::NeededPlanting;
use super::words::{self, of_100};
use crate::design::{Design, Draft};
use crate::finding::{Code, Finding, Remedy, Status};
use crate::numerics::rodas::IntegrationError;

/// Members that a remedy is tried with: enough to tell what helps from what hurts.
const MEMBERS: u32 = 16;
/// Odds that a remedy may cost before it counts as harm.
const COST: f64 = 0.02;
/// A gain under this is none.
const GAIN: f64 = 0.01;
/// Said where nothing helps by itself.
const NO_SINGLE: &str = "no single step mends it: lentic mend combines several";

/// A plan before and after something is done.
struct BeforeAndAfter<'a> {
    before: &'a JudgedPlan,
    design: Design,
    after: JudgedPlan,
}

/// The findings with the remedies that help, each with what then stands, so that they can
/// be followed together. What is judged but not to be watched keeps its remedy untried, and
/// so does one that names no amount.
pub(super) fn tried(
    advice: &Advice<'_>,
    options: Options,
    findings: Vec<Finding>,
) -> Result<Vec<Finding>, IntegrationError> {
    let is_advised = |finding: &Finding| stands(finding) && finding.remedy.is_some();
    if !findings.iter().any(is_advised) {
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
        Some(BeforeAndAfter {
            before: &before,
            design,
            after,
        })
    };
    let trials = findings.par_iter().map(|finding| {
        let applied = applied::applied(advice, finding).filter(|_| stands(finding));
        applied.and_then(follow)
    });
    let trials: Vec<Option<BeforeAndAfter<'_>>> = trials.collect();
    let spared = together::spared(advice, few, &findings, &trials);
    let is_spared = |code: Code| {
        let mut spared = findings.iter().zip(&spared);
        spared.any(|(finding, beside)| finding.code == code && beside.is_some())
    };
    let wants_more = before.shortfall() > 0.0 && !is_spared(Code::PlantsLoad);
    let is_mended = trials.iter().flatten().any(BeforeAndAfter::mends_all);
    let told = findings.into_iter().zip(&trials).zip(spared);
    let told = told.map(|((finding, trial), spared)| Finding {
        remedy: match (trial, spared) {
            (_, Some(beside)) => Some(beside),
            (Some(trial), None) => finding
                .remedy
                .as_ref()
                .map(|remedy| trial.confirmed(remedy)),
            (None, None) => finding.remedy,
        },
        ..finding
    });
    let mut told: Vec<Finding> = told.collect();
    if wants_more && !is_mended {
        strongest::name(advice.design, &follow, &mut told);
    }
    Ok(told)
}

/// What following the remedy of a finding of a plan makes of its tank; none where the plan
/// tells no step for it that names an amount.
///
/// # Example
/// ```
/// use lentic::plan::{Options, remedied, plan};
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"90 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n[[plants]]\nname = \"lemna_minor\"\namount = \"40 %\"";
/// let design = lentic::spec::parse(text)?;
/// let plan = plan(&design, Options { members: 8, ..Options::default() })?;
/// let deep = plan.findings.iter().find(|finding| finding.code.text() == "soil.deep");
/// let draft = deep.and_then(|finding| remedied(&design, &plan.planting.needed, finding));
/// assert!(draft.is_some_and(|draft| draft.soil.depth.middle().mm() < 51.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn remedied(design: &Design, needed: &NeededPlanting, finding: &Finding) -> Option<Draft> {
    applied::applied(&Advice { design, needed }, finding)
}

/// Whether a finding asks for something.
fn stands(finding: &Finding) -> bool {
    finding.status >= Status::Watch
}

/// A remedy in words alone.
fn in_words(says: String) -> Remedy {
    Remedy {
        says,
        quantity: None,
        unit: "",
    }
}

impl BeforeAndAfter<'_> {
    /// Whether it brings the plan nearer to its limits, with nothing else to be mended for
    /// it and no odds lost that are asked for; something more to be watched, and odds lost
    /// that are not missed, are told with it.
    fn helps(&self) -> bool {
        let comes_to_act = self.worse().any(|finding| finding.status == Status::Act);
        let misses_odds = self.odds_lost().is_some() && self.after.shortfall() > 0.0;
        self.gain() > GAIN && !comes_to_act && !misses_odds
    }

    /// What comes to be watched or mended that stood better before.
    fn worse(&self) -> impl Iterator<Item = &Finding> {
        let after = self.after.findings.iter().filter(|finding| stands(finding));
        after.filter(|finding| finding.status > self.status_before(finding.code))
    }

    fn status_before(&self, code: Code) -> Status {
        let before = self.before.findings.iter();
        let same = before.filter(|finding| finding.code == code);
        let statuses = same.map(|finding| finding.status);
        statuses.max().unwrap_or(Status::Ok)
    }

    /// The odds before and after, where more of them are lost than by chance.
    fn odds_lost(&self) -> Option<(f64, f64)> {
        let odds = |judged: &JudgedPlan| judged.odds.unwrap_or_default();
        let (was, is) = (odds(self.before), odds(&self.after));
        (was - is > COST).then_some((was, is))
    }

    /// Whether nothing is left to mend or watch, and the odds are as asked.
    fn mends_all(&self) -> bool {
        self.helps() && self.after.holds()
    }

    /// "air.dawn from note to watch", and odds that are lost.
    fn harm(&self) -> Vec<String> {
        let worse = self.worse().map(|finding| {
            let from = self.status_before(finding.code).word();
            let to = finding.status.word();
            format!("{} from {from} to {to}", finding.code.text())
        });
        let lost = self.odds_lost().map(|(was, is)| {
            let (was, is) = (of_100(was), of_100(is));
            format!("the odds from {was} to {is} of 100")
        });
        worse.chain(lost).collect()
    }

    /// By how much nearer.
    fn gain(&self) -> f64 {
        self.before.missed() - self.after.missed()
    }

    /// A remedy with what stands after it; where it does harm or nothing, that there is no
    /// single step.
    fn confirmed(&self, remedy: &Remedy) -> Remedy {
        if !self.helps() {
            return in_words(NO_SINGLE.to_owned());
        }
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
        let worse = self.harm();
        if left.is_empty() && self.after.holds() {
            "nothing to mend or watch".to_owned()
        } else if left.is_empty() {
            let odds = of_100(self.after.odds.unwrap_or_default());
            format!("nothing to mend or watch, but {odds} of 100 starts hold")
        } else if worse.is_empty() {
            left.join(", ")
        } else {
            format!("{}; {}", left.join(", "), words::listed(&worse))
        }
    }
}
