//! The rules, one file a finding: its limits, judgement, words, remedy, working and
//! explanation together. What several of them share stands in files of its own.

pub mod air_dawn;
pub(super) mod air_setting;
pub mod animals_diggers;
pub mod animals_early;
mod animals_feed;
pub mod animals_load;
mod base_soil;
mod bed_depths;
pub mod bed_gas;
pub mod bed_oxygen;
mod cap_added;
pub mod cap_coarse;
pub mod cap_deep;
pub mod cap_fine;
pub mod cap_leak;
pub mod cap_slope;
pub mod cap_thin;
mod case;
mod declaration;
pub mod flow_slack;
pub mod flow_strong;
pub mod flush_ammonia;
pub mod flush_changes;
pub mod flush_nitrate;
pub mod flush_nitrite;
pub mod glass_pane;
pub mod light_long;
pub mod light_short;
mod peak;
pub mod plants_cover;
pub mod plants_hungry;
pub mod plants_listed;
pub mod plants_load;
pub mod plants_mix;
mod rounding;
mod sand;
pub mod soil_deep;
pub mod soil_depth;
pub mod soil_thin;
pub mod verdict;
mod water_change;
mod water_changes;
mod water_lime;
pub mod water_soft;
pub mod weight_floor;

#[cfg(test)]
mod tests;

pub(super) use case::{DesignCase, FlushCase, NightCase};
pub(super) use declaration::{About, Judge, Rule};
pub(super) use sand::{more_sand, sand_over_all};

use super::outcome::Plan;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Status, WorkingStep};
use crate::numerics::rodas::IntegrationError;

/// Every rule, in the order in which they are listed and explained.
const RULES: &[&Rule] = &[
    &cap_coarse::RULE,
    &cap_fine::RULE,
    &cap_thin::RULE,
    &cap_leak::RULE,
    &cap_deep::RULE,
    &cap_slope::RULE,
    &cap_added::RULE,
    &soil_thin::RULE,
    &soil_deep::RULE,
    &bed_gas::RULE,
    &bed_oxygen::RULE,
    &plants_load::RULE,
    &plants_cover::RULE,
    &plants_mix::RULE,
    &plants_listed::RULE,
    &plants_hungry::RULE,
    &animals_diggers::RULE,
    &weight_floor::RULE,
    &glass_pane::RULE,
    &flush_ammonia::RULE,
    &flush_nitrite::RULE,
    &flush_nitrate::RULE,
    &flush_changes::RULE,
    &air_dawn::RULE,
    &flow_slack::RULE,
    &flow_strong::RULE,
    &light_short::RULE,
    &light_long::RULE,
    &animals_load::RULE,
    &animals_early::RULE,
    &animals_feed::RULE,
    &water_soft::RULE,
    &water_change::RULE,
    &water_lime::RULE,
];

/// The rule of a code; none for what a check of a running tank judges.
fn rule(code: Code) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.code == code)
}

/// The code and the explanation of every rule.
pub fn explanations() -> impl Iterator<Item = (Code, &'static Explanation)> {
    RULES.iter().map(|rule| (rule.code, &rule.explanation))
}

/// What a finding with this code takes to be judged.
pub(super) fn judge(code: Code) -> Option<Judge> {
    rule(code).map(|rule| rule.judge)
}

/// Whether a finding is about soil, cap, bed or what digs in them.
pub(super) fn is_about_bed(code: Code) -> bool {
    rule(code).is_some_and(|rule| rule.about != About::Tank)
}

/// Whether a finding is on the first weeks.
pub(super) fn is_on_start(code: Code) -> bool {
    matches!(judge(code), Some(Judge::Flush(_)))
}

/// Whether a finding is on a day and a night.
pub(super) fn is_on_night(code: Code) -> bool {
    matches!(judge(code), Some(Judge::Night(_)))
}

/// Whether a finding is about the cap.
fn is_about_cap(code: Code) -> bool {
    rule(code).is_some_and(|rule| rule.about == About::Cap)
}

/// The steps of a finding's working.
pub(super) fn steps(design: &Design, plan: &Plan, code: Code) -> Vec<WorkingStep> {
    rule(code).map_or_else(Vec::new, |rule| (rule.steps)(design, plan))
}

/// What the remedy of a finding with this code may order; what a check orders stands with
/// its causes and its next step.
pub fn orders(code: Code) -> &'static [Action] {
    rule(code).map_or(&[], |rule| rule.orders)
}

/// What the remedies of some findings order.
pub fn ordered<'a>(
    findings: impl IntoIterator<Item = &'a Finding>,
) -> impl Iterator<Item = Action> {
    let findings = findings.into_iter();
    let remedied = findings.filter(|finding| finding.remedy.is_some());
    remedied.flat_map(|finding| orders(finding.code).iter().copied())
}

/// Every finding of a plan, in the order of the codes.
pub(super) fn all(
    case: &DesignCase<'_>,
    night: &NightCase<'_>,
) -> Result<Vec<Finding>, IntegrationError> {
    let mut findings = of_start(case)?;
    findings.extend(of_night(night));
    Ok(sorted(findings))
}

/// The findings that no night has to be looked at for.
pub(super) fn of_start(case: &DesignCase<'_>) -> Result<Vec<Finding>, IntegrationError> {
    let mut findings = of_design(case.design);
    for rule in RULES {
        if let Judge::Start(judge) = rule.judge {
            findings.extend(judge(case)?);
        }
    }
    findings.extend(of_flush(&case.flush));
    Ok(sorted(findings))
}

/// The findings that nothing has to be run for.
pub(super) fn of_design(design: &Design) -> Vec<Finding> {
    let judged = RULES.iter().filter_map(|rule| match rule.judge {
        Judge::Design(judge) => Some(judge(design)),
        _ => None,
    });
    sorted(judged.flatten().collect())
}

/// The findings on the first weeks.
pub(super) fn of_flush(case: &FlushCase<'_>) -> Vec<Finding> {
    let judged = RULES.iter().filter_map(|rule| match rule.judge {
        Judge::Flush(judge) => Some(judge(case)),
        _ => None,
    });
    judged.flatten().collect()
}

/// The findings on a day and a night.
pub(super) fn of_night(case: &NightCase<'_>) -> Vec<Finding> {
    let judged = RULES.iter().filter_map(|rule| match rule.judge {
        Judge::Night(judge) => Some(judge(case)),
        _ => None,
    });
    judged.flatten().collect()
}

/// In the order of the codes.
fn sorted(mut findings: Vec<Finding>) -> Vec<Finding> {
    findings.sort_by_key(|finding| finding.code);
    findings
}

/// "sound", or the worst finding on the cap.
pub(super) fn cap_verdict(findings: &[Finding]) -> String {
    let worst = findings
        .iter()
        .filter(|finding| is_about_cap(finding.code))
        .filter(|finding| finding.status >= Status::Watch)
        .rev()
        .max_by_key(|finding| finding.status);
    worst.map_or_else(
        || "sound".to_owned(),
        |finding| format!("{} {}", finding.status.word(), finding.code.text()),
    )
}
