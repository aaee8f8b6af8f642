//! `lentic explain`.

use std::path::Path;

use serde::Serialize;

use super::args::ExplainOptions;
use super::failure::Failure;
use super::{Outcome, input, result};
use crate::catalogue::{self, Topic};
use crate::design::Design;
use crate::diagnosis::{self, diagnose};
use crate::finding::{Code, Finding, Status, Working};
use crate::plan;
use crate::report::compose;
use crate::source::{self, Source};
use crate::units::UnitSystem;

/// The schema of an explanation.
const SCHEMA: &str = "lentic/explain/1";

/// An explanation as a result.
#[derive(Serialize)]
struct Explanation<'a> {
    code: &'a str,
    asks: &'a str,
    rule: &'a str,
    formula: &'a str,
    symbols: &'a [String],
    range: &'a str,
    basis: &'static str,
    source: &'a [String],
    #[serde(skip_serializing_if = "Option::is_none")]
    working: Option<&'a Working>,
    #[serde(skip_serializing_if = "Option::is_none")]
    finding: Option<&'a Finding>,
}

pub(super) fn run(options: &ExplainOptions) -> Result<Outcome, Failure> {
    match (catalogue::topic(&options.code), source::find(&options.code)) {
        (Some(topic), _) => finding(topic, options),
        (None, Some(source)) => cited(source, options),
        (None, None) => Err(unknown(&options.code)),
    }
}

fn finding(topic: &Topic, options: &ExplainOptions) -> Result<Outcome, Failure> {
    let worked = match &options.spec {
        Some(path) => worked(topic, path, options)?,
        None => None,
    };
    let pair = worked
        .as_ref()
        .map(|(finding, working, units)| (finding, working, *units));
    let explanation = Explanation {
        code: &topic.code,
        asks: &topic.asks,
        rule: &topic.rule,
        formula: &topic.formula,
        symbols: &topic.symbols,
        range: &topic.range,
        basis: topic.basis.words(),
        source: &topic.source,
        working: pair.map(|(_, working, _)| working),
        finding: pair.map(|(finding, _, _)| finding),
    };
    result::write(
        &options.common,
        options.format,
        SCHEMA,
        &explanation,
        || compose::explain_finding(topic, pair),
    )?;
    let fail_on = options.common.fail_on.map(Status::from);
    Ok(pair.map_or(Outcome::Done, |(finding, _, _)| {
        Outcome::of(finding.status, fail_on)
    }))
}

/// The finding and its working for a spec; none where the plan has no such finding.
fn worked(
    topic: &Topic,
    path: &Path,
    options: &ExplainOptions,
) -> Result<Option<(Finding, Working, UnitSystem)>, Failure> {
    let design = input::design(path, &options.common)?;
    if topic.code.starts_with("check.") {
        return worked_check(topic, &design, options);
    }
    let plan = plan::plan(&design, options.ensemble.for_one()).map_err(Failure::Run)?;
    let found = Code::find(&topic.code)
        .and_then(|code| plan.findings.iter().find(|finding| finding.code == code));
    Ok(found.map(|finding| {
        let working = plan::working(&design, &plan, finding.code);
        (finding.clone(), working, design.draft().units)
    }))
}

/// The same for what a check finds.
fn worked_check(
    topic: &Topic,
    design: &Design,
    options: &ExplainOptions,
) -> Result<Option<(Finding, Working, UnitSystem)>, Failure> {
    let asked = options.ensemble.options(diagnosis::MEMBERS);
    let diagnosis = diagnose(design, &[], asked).map_err(Failure::Run)?;
    let findings = diagnosis.findings.iter();
    let found = findings
        .filter(|finding| finding.code.text() == topic.code)
        .max_by_key(|finding| finding.status);
    Ok(found.map(|finding| {
        let working = diagnosis::working(&diagnosis, finding.code);
        (finding.clone(), working, design.draft().units)
    }))
}

fn cited(source: &Source, options: &ExplainOptions) -> Result<Outcome, Failure> {
    result::write(&options.common, options.format, SCHEMA, source, || {
        compose::explain_source(source)
    })?;
    Ok(Outcome::Done)
}

/// Names what comes closest among the codes and the sources.
fn unknown(code: &str) -> Failure {
    let known = catalogue::topics()
        .iter()
        .map(|topic| topic.code.as_str())
        .chain(source::all().iter().map(|source| source.key.as_str()));
    let closest = known
        .map(|name| (strsim::jaro_winkler(code, name), name))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let suggestion = match closest {
        Some((likeness, name)) if likeness > 0.8 => format!("did you mean {name}?"),
        _ => "finding codes stand in every plan; lentic list sources shows the sources".to_owned(),
    };
    Failure::BadInput(format!(
        "error: {code:?} is neither a finding code nor a source\nhelp: {suggestion}"
    ))
}
