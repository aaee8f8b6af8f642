//! A rule or a source, explained.

use super::finding::{basis, judged};
use crate::catalogue::Topic;
use crate::finding::{Finding, Working};
use crate::report::document::{Block, Document, Fact, Judged};
use crate::source::{self, Source};
use crate::units::UnitSystem;
use crate::units::show::significant;

/// A finding's rule, and its working for one design.
pub fn explain_finding(
    topic: &Topic,
    worked: Option<(&Finding, &Working, UnitSystem)>,
) -> Document {
    let mut blocks = vec![
        Block::Text(topic.asks.clone()),
        Block::Heading("Rule".to_owned()),
        Block::Text(topic.rule.clone()),
        Block::Heading("Formula".to_owned()),
        Block::Text(topic.formula.clone()),
    ];
    if !topic.symbols.is_empty() {
        blocks.push(Block::Items(topic.symbols.clone()));
    }
    blocks.extend([
        Block::Heading("How far it holds".to_owned()),
        Block::Text(topic.range.clone()),
        Block::Heading("Rests on".to_owned()),
        Block::Text(topic.basis.words().to_owned()),
    ]);
    let sources: Vec<String> = topic
        .source
        .iter()
        .filter_map(|key| source::find(key))
        .map(|source| format!("{}: {source} ({})", source.key, source.seen.words()))
        .collect();
    blocks.push(Block::Items(sources));
    if let Some((finding, working, units)) = worked {
        blocks.extend(worked_blocks(finding, working, units));
    }
    Document {
        title: topic.code.clone(),
        blocks,
        ..Document::default()
    }
}

fn worked_blocks(finding: &Finding, working: &Working, units: UnitSystem) -> Vec<Block> {
    let facts = working.steps.iter().map(|step| {
        let value = format!("{} {}", significant(step.value, 4), step.unit);
        Fact::new(&step.name, value.trim_end(), "")
    });
    vec![
        Block::Heading("Working".to_owned()),
        Block::Facts(facts.collect()),
        Block::Findings(vec![Judged {
            basis: basis(finding, units),
            ..judged(finding, units)
        }]),
    ]
}

/// A source.
pub fn explain_source(source: &Source) -> Document {
    Document {
        title: source.key.clone(),
        blocks: vec![
            Block::Text(source.to_string()),
            Block::Text(source.note.clone()),
            Block::Text(format!("Seen for this program: {}.", source.seen.words())),
        ],
        ..Document::default()
    }
}
