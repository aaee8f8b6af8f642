//! `lentic explain`.

use std::path::Path;

use serde::Serialize;

use super::args::ExplainOptions;
use super::choice::Format;
use super::failure::Failure;
use super::worked_example::{self, TankWorking};
use super::{Outcome, output, result};
use crate::catalogue::Topic;
use crate::explanation;
use crate::finding::{Code, Finding, Status, Working};
use crate::report::at::ValueAt;
use crate::report::compose::{self, Resting, WorkedExample};
use crate::report::dictionary::{ExplainSubject, Listed, Named, ResultRow};
use crate::report::document::Document;
use crate::source::{Source, Work};

/// The schema of an explanation.
const SCHEMA: &str = "lentic/explain/1";

/// An explanation as a result; what it does not hold is left out.
#[derive(Serialize, Default)]
struct Explanation<'a> {
    #[serde(flatten)]
    result: Option<Listed>,
    #[serde(flatten)]
    topic: Option<&'a Topic>,
    #[serde(flatten)]
    source: Option<&'a Work>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rests: Option<Resting>,
    #[serde(skip_serializing_if = "Option::is_none")]
    section: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    tested: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    results: Vec<Listed>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    topics: Vec<&'a Topic>,
    #[serde(flatten)]
    tank: Option<InTank<'a>>,
}

/// What an explanation says of one tank.
#[derive(Serialize)]
struct InTank<'a> {
    tank: &'a str,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    values: &'a [ValueAt],
    working: &'a Working,
    #[serde(skip_serializing_if = "Option::is_none")]
    finding: Option<&'a Finding>,
    findings: &'a [Finding],
}

impl<'a> InTank<'a> {
    fn of(worked: &'a WorkedExample) -> Self {
        Self {
            tank: &worked.name,
            values: &worked.values,
            working: &worked.working,
            finding: worked.findings.first(),
            findings: &worked.findings,
        }
    }
}

pub(super) fn run(options: &ExplainOptions) -> Result<Outcome, Failure> {
    if options.spec.is_none() && options.common.fail_on.is_some() {
        return Err(no_spec(options.what.as_deref()));
    }
    let Some(what) = &options.what else {
        return teach(options);
    };
    match ExplainSubject::find(what) {
        Ok(ExplainSubject::Topic(topic)) => explain_topic(topic, options),
        Ok(ExplainSubject::Result(named)) => explain_result(&named, options),
        Ok(ExplainSubject::Source(source)) => explain_source(source, options),
        Ok(ExplainSubject::Section {
            name,
            results,
            topics,
        }) => explain_section(&name, &results, &topics, options),
        Err(nearest) => Err(unknown(what, nearest)),
    }
}

/// What can be asked, for people alone.
fn teach(options: &ExplainOptions) -> Result<Outcome, Failure> {
    if options.format != Format::Text {
        return Err(no_subject());
    }
    output::write(TEACHING, options.common.out.as_deref())?;
    Ok(Outcome::Done)
}

fn explain_topic(topic: &Topic, options: &ExplainOptions) -> Result<Outcome, Failure> {
    let judged = judged(options, |spec| worked_example::topic(topic, spec, options))?;
    let tank = judged.as_ref().map(|judged| &judged.worked);
    let explanation = Explanation {
        topic: Some(topic),
        tank: tank.map(InTank::of),
        ..Explanation::default()
    };
    write(options, &explanation, || {
        compose::explain_topic(topic, tank)
    })?;
    Ok(outcome(options, judged.as_ref()))
}

fn explain_result(named: &Named, options: &ExplainOptions) -> Result<Outcome, Failure> {
    let judged = judged(options, |spec| worked_example::result(named, spec, options))?;
    let tank = judged.as_ref().map(|judged| &judged.worked);
    let topic = named.row.topic().and_then(explanation::topic);
    let explanation = Explanation {
        result: Some(Listed::of(named.row)),
        topic,
        tank: tank.map(InTank::of),
        ..Explanation::default()
    };
    write(options, &explanation, || {
        compose::explain_result(named, topic, tank)
    })?;
    Ok(outcome(options, judged.as_ref()))
}

fn explain_source(source: Source, options: &ExplainOptions) -> Result<Outcome, Failure> {
    let judged = judged(options, |spec| {
        worked_example::source(source, spec, options)
    })?;
    let tank = judged.as_ref().map(|judged| &judged.worked);
    let explanation = Explanation {
        source: Some(source.work()),
        rests: Some(Resting::on(source)),
        tank: tank.map(InTank::of),
        ..Explanation::default()
    };
    write(options, &explanation, || {
        compose::explain_source(source, tank)
    })?;
    Ok(outcome(options, judged.as_ref()))
}

/// A section says what is in it; a spec has nothing to add to that.
fn explain_section(
    name: &str,
    results: &[&ResultRow],
    topics: &[&Topic],
    options: &ExplainOptions,
) -> Result<Outcome, Failure> {
    if options.spec.is_some() {
        return Err(many(name, results, topics));
    }
    let explanation = Explanation {
        section: Some(name),
        tested: Some(explanation::tested(name)),
        results: results.iter().map(|row| Listed::of(row)).collect(),
        topics: topics.to_vec(),
        ..Explanation::default()
    };
    write(options, &explanation, || {
        compose::explain_section(name, results, topics)
    })?;
    Ok(Outcome::Done)
}

/// What a spec adds, where one is given.
fn judged(
    options: &ExplainOptions,
    of: impl FnOnce(&Path) -> Result<TankWorking, Failure>,
) -> Result<Option<TankWorking>, Failure> {
    options.spec.as_deref().map(of).transpose()
}

fn write(
    options: &ExplainOptions,
    explanation: &Explanation<'_>,
    document: impl FnOnce() -> Document,
) -> Result<(), Failure> {
    result::write(
        &options.common,
        options.format,
        SCHEMA,
        explanation,
        document,
    )
}

fn outcome(options: &ExplainOptions, judged: Option<&TankWorking>) -> Outcome {
    let fail_on = options.common.fail_on.map(Status::from);
    judged.map_or(Outcome::Done, |judged| Outcome::of(judged.worst, fail_on))
}

/// What `lentic explain` alone says.
const TEACHING: &str = "\
lentic explain says where a number comes from: the rule or formula, how far it
holds, and its sources; with a spec, that tank's own numbers.

It takes a rule, a result or a source:
  lentic explain cap.coarse                   a rule, by the code of its finding
  lentic explain night.dawn_oxygen_mg_l       a result, by its path in JSON
  lentic explain larson_2007                  a source, and what rests on it

A spec behind them adds its values, the working and the findings:
  lentic explain weight.total_kg my-tank.toml

A section alone, such as night or weight, shows what is in it. All names:
  lentic list rules      lentic list results      lentic list sources
";

fn no_spec(what: Option<&str>) -> Failure {
    Failure::BadInput(format!(
        "error: --fail-on has no finding to judge by without a spec\nhelp: for example lentic explain {} my-tank.toml --fail-on act",
        what.unwrap_or(Code::CapThin.text()).escape_debug()
    ))
}

fn no_subject() -> Failure {
    Failure::BadInput(
        "error: --format has nothing to write without a rule, a result or a source\nhelp: name one, for example lentic explain night.dawn_oxygen_mg_l --format json; all of them: lentic list results --format json".to_owned(),
    )
}

/// A spec was given with the name of several things.
fn many(name: &str, results: &[&ResultRow], topics: &[&Topic]) -> Failure {
    let results = results.iter().map(|row| row.name());
    let topics = topics.iter().map(|topic| topic.code.clone());
    let names: Vec<String> = results.chain(topics).collect();
    Failure::BadInput(format!(
        "error: {name:?} is the name of {} things, and a spec is worked through for one\nhelp: say which: {}",
        names.len(),
        names.join(", ")
    ))
}

/// Names what comes closest among codes, results and sources.
fn unknown(what: &str, nearest: Option<String>) -> Failure {
    let suggestion = nearest.map_or_else(String::new, |name| format!("did you mean {name}? "));
    Failure::BadInput(format!(
        "error: {what:?} is no rule, no result and no source\nhelp: {suggestion}all names: lentic list rules, lentic list results, lentic list sources"
    ))
}
