//! What the figures of a document rest on: rule, formula, sources, working.

use crate::catalogue::{self, Topic};
use crate::design::Design;
use crate::finding::{Code, Finding};
use crate::plan::{self, Plan};
use crate::report::document::{Fact, Reason};
use crate::source;
use crate::units::show::significant;

/// Rules behind figures of a plan that no finding judges.
const QUANTITIES: [&str; 4] = [
    "tank.volume",
    "soil.purchase",
    "cap.purchase",
    "heat.balance",
];
/// Rules behind the figures of a start-up run.
const COURSE: [&str; 4] = [
    "flush.ammonia",
    "flush.nitrite",
    "flush.nitrate",
    "animals.early",
];

/// Rules behind the figures of a night.
const NIGHT: [&str; 5] = [
    "air.dawn",
    "flow.slack",
    "light.short",
    "animals.load",
    "heat.balance",
];

/// The reasons behind a plan, with their workings.
pub(super) fn of_plan(design: &Design, plan: &Plan) -> Vec<Reason> {
    let judged = |code: Code| plan.findings.iter().any(|finding| finding.code == code);
    let topics = catalogue::topics().iter();
    topics
        .filter_map(|topic| match Code::find(&topic.code) {
            Some(code) if judged(code) => Some(reason(topic, worked(design, plan, code))),
            _ if is_figure(topic) => Some(reason(topic, Vec::new())),
            _ => None,
        })
        .collect()
}

/// The reasons behind a start-up run.
pub(super) fn of_startup(findings: &[Finding]) -> Vec<Reason> {
    of_those(findings, &COURSE)
}

/// The reasons behind a night.
pub(super) fn of_night(findings: &[Finding]) -> Vec<Reason> {
    of_those(findings, &NIGHT)
}

/// The reasons behind some findings.
pub(super) fn of_findings(findings: &[Finding]) -> Vec<Reason> {
    of_those(findings, &[])
}

fn of_those(findings: &[Finding], others: &[&str]) -> Vec<Reason> {
    let judged = |topic: &Topic| {
        let codes = findings.iter().map(|finding| finding.code.text());
        codes.into_iter().any(|code| code == topic.code)
    };
    let topics = catalogue::topics().iter();
    topics
        .filter(|topic| judged(topic) || is_one_of(topic, others))
        .map(|topic| reason(topic, Vec::new()))
        .collect()
}

/// Whether a plan shows a figure that rests on it.
fn is_figure(topic: &Topic) -> bool {
    [QUANTITIES.as_slice(), &COURSE, &NIGHT]
        .iter()
        .any(|codes| is_one_of(topic, codes))
}

fn is_one_of(topic: &Topic, codes: &[&str]) -> bool {
    codes.contains(&topic.code.as_str())
}

fn worked(design: &Design, plan: &Plan, code: Code) -> Vec<Fact> {
    let working = plan::working(design, plan, code);
    let steps = working.steps.iter().map(|step| {
        let value = format!("{} {}", significant(step.value, 4), step.unit);
        Fact::new(&step.name, value.trim_end(), "")
    });
    steps.collect()
}

fn reason(topic: &'static Topic, working: Vec<Fact>) -> Reason {
    let sources = topic.source.iter().filter_map(|key| source::find(key));
    Reason {
        code: &topic.code,
        asks: &topic.asks,
        rule: &topic.rule,
        formula: &topic.formula,
        symbols: &topic.symbols,
        range: &topic.range,
        basis: topic.basis.words(),
        sources: sources
            .map(|source| format!("{source} ({})", source.seen.words()))
            .collect(),
        working,
    }
}
