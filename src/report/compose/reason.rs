//! What the figures of a document rest on: rule, formula, sources, working.

use crate::catalogue::Topic;
use crate::design::Design;
use crate::explanation;
use crate::finding::{Finding, Working};
use crate::plan::{self, Plan};
use crate::report::document::{Block, Fact, Reason};
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
    let nothing = |_: &Topic| Working { steps: Vec::new() };
    reasons(&codes(blocks, findings), nothing)
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
    let topics = explanation::topics().iter();
    topics
        .filter(|topic| codes.contains(&topic.code.as_str()))
        .map(|topic| Reason {
            topic,
            sources: sources(topic),
            working: steps(&working(topic)),
        })
        .collect()
}

fn sources(topic: &Topic) -> Vec<String> {
    let works = topic.source.iter().map(|source| source.work());
    works
        .map(|work| format!("{work} ({})", work.seen.words()))
        .collect()
}

/// The steps of a working as facts.
pub(super) fn steps(working: &Working) -> Vec<Fact> {
    let steps = working.steps.iter().map(|step| {
        let value = format!("{} {}", significant(step.value, 4), step.unit);
        Fact::new(&step.name, value.trim_end(), "")
    });
    steps.collect()
}
