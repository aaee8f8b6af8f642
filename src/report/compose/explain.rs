//! A rule, a result or a source, explained.

use serde::Serialize;
use serde_json::Value;

use super::finding::{basis, judged};
use super::reason::steps;
use crate::catalogue::{self, Topic};
use crate::explanation;
use crate::finding::{Caution, Code, Finding, Working};
use crate::report::at::ValueAt;
use crate::report::dictionary::{self, Named, ResultCommand, ResultRow};
use crate::report::document::{Block, Document, Fact, FindingEntry};
use crate::report::listing::{self, result_line};
use crate::source::Source;
use crate::units::show::significant;
use crate::units::{BAND_ENDS, UnitSystem};

/// A tank whose numbers are worked through.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedExample {
    /// What the keeper calls it.
    pub name: String,
    /// Its units.
    pub units: UnitSystem,
    /// The values at the path asked for, none for a rule.
    pub values: Vec<ValueAt>,
    /// The formula followed through; no steps where there is nothing to show.
    pub working: Working,
    /// The findings that the explanation is about, the worst first.
    pub findings: Vec<Finding>,
    /// What goes with the work that their remedies order.
    pub cautions: Vec<Caution>,
}

/// A topic, and its working for one design.
pub fn explain_topic(topic: &Topic, worked: Option<&WorkedExample>) -> Document {
    let mut blocks = vec![Block::Text(topic.asks.clone())];
    blocks.extend(rule(topic));
    blocks.extend(given_by(topic));
    blocks.extend(worked.into_iter().flat_map(working));
    document(&topic.code, blocks)
}

/// A result, what it rests on, and its value and working for one design.
pub fn explain_result(
    named: &Named,
    topic: Option<&Topic>,
    worked: Option<&WorkedExample>,
) -> Document {
    let row = named.row;
    let mut blocks = vec![Block::Text(row.says.to_owned()), Block::Facts(facts(row))];
    if let Some(worked) = worked {
        blocks.push(Block::Heading(format!("In {}", worked.name)));
        blocks.extend(values(row, &worked.values));
    }
    let below = below(row);
    if !below.is_empty() {
        blocks.push(Block::Heading("What it is made of".to_owned()));
        blocks.push(lines(&below));
    }
    if let Some(topic) = topic {
        blocks.push(Block::Heading(format!("It rests on {}", topic.code)));
        blocks.push(Block::Text(topic.asks.clone()));
        blocks.extend(rule(topic));
    }
    blocks.extend(worked.into_iter().flat_map(working));
    document(&named.path, blocks)
}

/// A section of results, or several of one name.
pub fn explain_section(name: &str, results: &[&ResultRow], topics: &[&Topic]) -> Document {
    let mut blocks = vec![Block::Text(explanation::tested(name))];
    if !results.is_empty() {
        blocks.push(Block::Heading("Results".to_owned()));
        blocks.push(lines(results));
    }
    if !topics.is_empty() {
        blocks.push(Block::Heading("Rules".to_owned()));
        let facts = topics
            .iter()
            .map(|topic| Fact::new(&topic.code, &topic.asks, ""));
        blocks.push(Block::Facts(facts.collect()));
    }
    blocks.push(Block::Text(
        "lentic explain and one of these names says what it rests on; a spec behind it adds the tank's own numbers.".to_owned(),
    ));
    document(name, blocks)
}

/// A source, what rests on it, and how that stands in one design.
pub fn explain_source(source: Source, worked: Option<&WorkedExample>) -> Document {
    let work = source.work();
    let mut blocks = vec![
        Block::Text(work.to_string()),
        Block::Text(work.note.clone()),
        Block::Text(format!("Seen for this program: {}.", work.seen.words())),
        Block::Heading("What rests on it".to_owned()),
    ];
    let resting = Resting::on(source);
    if resting.is_nothing() {
        blocks.push(Block::Text(
            "No rule, no result and no row names it: a formula, a coefficient or a caution inside does.".to_owned(),
        ));
    }
    let parts = [
        ("rules and formulas", resting.topics),
        ("results", resting.results),
        ("rows of the lists", resting.rows),
    ];
    for (what, names) in parts {
        if !names.is_empty() {
            blocks.push(Block::Text(format!("{what}: {}", names.join(", "))));
        }
    }
    if let Some(worked) = worked {
        blocks.push(Block::Heading(format!("In {}", worked.name)));
        if worked.findings.is_empty() {
            blocks.push(Block::Text("No finding rests on it.".to_owned()));
        }
        blocks.push(Block::Findings(judgements(worked)));
        blocks.extend(cautions(worked));
    }
    document(source.key(), blocks)
}

/// What rests on a source, by name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Resting {
    /// Codes of topics; those of findings among them.
    pub topics: Vec<String>,
    /// Results whose topic does.
    pub results: Vec<String>,
    /// Rows of the catalogue, with what they are.
    pub rows: Vec<String>,
}

impl Resting {
    /// What rests on a source.
    pub fn on(source: Source) -> Self {
        let topics: Vec<String> = explanation::topics()
            .iter()
            .filter(|topic| topic.source.contains(&source))
            .map(|topic| topic.code.clone())
            .collect();
        let rests = |row: &&ResultRow| {
            row.topic()
                .is_some_and(|code| topics.iter().any(|topic| topic == code))
        };
        let results = dictionary::results().iter().filter(rests);
        let rows = catalogue::citing_rows(source).into_iter();
        Self {
            results: results.map(ResultRow::name).collect(),
            rows: rows
                .map(|row| format!("{} {}", row.kind, row.name))
                .collect(),
            topics,
        }
    }

    fn is_nothing(&self) -> bool {
        self.topics.is_empty() && self.rows.is_empty()
    }
}

fn document(title: &str, blocks: Vec<Block>) -> Document {
    Document {
        title: title.to_owned(),
        blocks,
        ..Document::default()
    }
}

/// The rule of a topic with its formula, range and sources.
fn rule(topic: &Topic) -> Vec<Block> {
    let mut blocks = vec![
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
        Block::Text(topic.rests_on().to_owned()),
    ]);
    let sources: Vec<String> = topic
        .source
        .iter()
        .map(|source| listing::work_line(source.work()))
        .collect();
    blocks.push(Block::Items(sources));
    blocks
}

/// The results that rest on a topic which no finding bears.
fn given_by(topic: &Topic) -> Option<Block> {
    if Code::find(&topic.code).is_some() {
        return None;
    }
    let rests = |row: &&ResultRow| row.topic() == Some(topic.code.as_str());
    let results = dictionary::results().iter().filter(rests);
    let names: Vec<String> = results.map(ResultRow::name).collect();
    Some(Block::Text(format!("Results: {}.", names.join(", "))))
}

fn working(worked: &WorkedExample) -> Vec<Block> {
    let mut blocks = Vec::new();
    if !(worked.working.steps.is_empty() && worked.findings.is_empty()) {
        blocks.push(Block::Heading("Working".to_owned()));
    }
    if !worked.working.steps.is_empty() {
        blocks.push(Block::Facts(steps(&worked.working)));
    }
    if !worked.findings.is_empty() {
        blocks.push(Block::Findings(judgements(worked)));
    }
    blocks.extend(cautions(worked));
    blocks
}

fn cautions(worked: &WorkedExample) -> Vec<Block> {
    if worked.cautions.is_empty() {
        Vec::new()
    } else {
        super::finding::cautions(&worked.cautions)
    }
}

fn judgements(worked: &WorkedExample) -> Vec<FindingEntry> {
    let findings = worked.findings.iter().map(|finding| FindingEntry {
        basis: basis(finding, worked.units),
        ..judged(finding, worked.units)
    });
    findings.collect()
}

/// Where a result stands, in what unit, and what it rests on where that is no topic.
fn facts(row: &ResultRow) -> Vec<Fact> {
    let mut facts = vec![Fact::new(
        "given by",
        format!("lentic {} --format json", row.command.word()),
        "",
    )];
    if !row.unit().is_empty() {
        facts.push(Fact::new("unit", row.unit(), ""));
    }
    if let Some(band) = row.band {
        facts.push(Fact::new(
            "low, typical, high",
            dictionary::spread(band),
            "",
        ));
    }
    if let Some(origin) = row.from() {
        facts.push(Fact::new("rests on", dictionary::origin(origin), ""));
    }
    facts
}

/// The results that stand below another.
fn below(row: &ResultRow) -> Vec<&'static ResultRow> {
    let below = ["[]", "."].map(|next| format!("{}{next}", row.path));
    let results = dictionary::results().iter();
    results
        .filter(|other| other.command == row.command)
        .filter(|other| below.iter().any(|below| other.path.starts_with(below)))
        .collect()
}

fn lines(rows: &[&ResultRow]) -> Block {
    Block::Items(rows.iter().map(|row| result_line(row)).collect())
}

fn values(row: &ResultRow, values: &[ValueAt]) -> Vec<Block> {
    if values.is_empty() {
        return vec![Block::Text(absent(row).to_owned())];
    }
    let facts = values
        .iter()
        .map(|at| Fact::new(&at.path, shown(&at.value, row.unit()), ""));
    vec![Block::Facts(facts.collect())]
}

/// Why there is no value.
fn absent(row: &ResultRow) -> &'static str {
    match row.command {
        ResultCommand::Compare | ResultCommand::Solve | ResultCommand::Mend => {
            "No single tank has it: what is varied or sought gives it."
        }
        _ => "This tank has none.",
    }
}

/// A value for people: four digits, a band as "typical (low-high)".
fn shown(value: &Value, unit: &str) -> String {
    let number = |value: &Value| {
        value
            .as_f64()
            .filter(|_| value.is_f64())
            .map_or_else(|| value.to_string(), |value| significant(value, 4))
    };
    let plain = match value {
        Value::Null => return "none".to_owned(),
        Value::String(text) => text.clone(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(_) => number(value),
        Value::Array(items) => format!("{} of them", items.len()),
        Value::Object(fields) => match BAND_ENDS.map(|end| fields.get(end.trim_start_matches('.')))
        {
            [Some(low), Some(typical), Some(high)] => {
                format!("{} ({}-{})", number(typical), number(low), number(high))
            }
            _ => format!("{} parts", fields.len()),
        },
    };
    format!("{plain} {unit}").trim_end().to_owned()
}
