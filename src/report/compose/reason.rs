//! What the figures of a document rest on: rule, formula, sources, working.

use std::collections::HashSet;

use crate::catalogue::Topic;
use crate::design::Design;
use crate::explanation;
use crate::finding::{Finding, Working};
use crate::plan::{self, Plan};
use crate::report::document::{Block, Fact, Reason};
use crate::source::Source;
use crate::units::show::significant;

/// What the shopping list rests on, whose cells hold no links.
const PURCHASES: [&str; 2] = ["soil.purchase", "cap.purchase"];

/// The reasons behind the blocks of a plan, with their workings.
pub(super) fn of_plan(design: &Design, plan: &Plan, blocks: &[Block]) -> Vec<Reason> {
    let mut codes = codes(blocks, &plan.findings);
    codes.extend(PURCHASES);
    reasons(&codes, |topic| plan::working_of(design, plan, &topic.code))
}

/// The reasons behind the blocks of another result.
pub(super) fn of(blocks: &[Block], findings: &[Finding]) -> Vec<Reason> {
    let nothing = |_: &str| Working { steps: Vec::new() };
    worked(blocks, findings, nothing)
}

/// The same with the workings of that result.
pub(super) fn worked(
    blocks: &[Block],
    findings: &[Finding],
    working: impl Fn(&str) -> Working,
) -> Vec<Reason> {
    reasons(&codes(blocks, findings), |topic| working(&topic.code))
}

/// The codes that facts name and that findings bear.
fn codes(blocks: &[Block], findings: &[Finding]) -> Vec<&'static str> {
    let mut codes: Vec<&'static str> = findings.iter().map(|finding| finding.code.text()).collect();
    for block in blocks {
        let block = match block {
            Block::OnPage(block) => block,
            block => block,
        };
        if let Block::Facts(facts) = block {
            codes.extend(facts.iter().filter_map(|fact| fact.reason));
        }
    }
    codes
}

fn reasons(codes: &[&str], working: impl Fn(&Topic) -> Working) -> Vec<Reason> {
    let mut told = HashSet::new();
    let topics = explanation::topics().iter();
    topics
        .filter(|topic| codes.contains(&topic.code.as_str()))
        .map(|topic| Reason {
            topic,
            sources: sources(topic, &mut told),
            working: steps(&working(topic)),
        })
        .collect()
}

/// Each work in full where it is named first, and in short after that.
fn sources(topic: &Topic, told: &mut HashSet<Source>) -> Vec<String> {
    let source = |source: &Source| {
        let work = source.work();
        if told.insert(*source) {
            format!("{work} ({})", work.seen.words())
        } else {
            format!("{}, as above", work.short())
        }
    };
    topic.source.iter().map(source).collect()
}

/// The steps of a working as facts.
pub(super) fn steps(working: &Working) -> Vec<Fact> {
    let steps = working.steps.iter().map(|step| {
        let value = format!("{} {}", significant(step.value, 4), step.unit);
        Fact::new(&step.name, value.trim_end(), "")
    });
    steps.collect()
}
