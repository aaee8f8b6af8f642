//! A rule, a result or a source worked through with the numbers of one tank.

use std::path::Path;

use serde_json::{Map, Value};

use super::args::ExplainOptions;
use super::failure::Failure;
use super::{check, input, night, plan as planned, startup};
use crate::catalogue::{Giver, Named, Origin, ResultRow, Topic};
use crate::design::Design;
use crate::diagnosis::{self, Diagnosis, diagnose};
use crate::finding::{Finding, Status, Working};
use crate::plan::{self, Plan};
use crate::report::at;
use crate::report::compose::{Resting, Worked};
use crate::report::json;
use crate::source::Source;

/// What a tank adds to an explanation, and the worst status that it stands for.
pub(super) struct Judged {
    pub(super) worked: Worked,
    pub(super) worst: Status,
}

/// A tank with what was computed for it.
struct Tank {
    design: Design,
    computed: Computed,
}

/// What holds the findings.
enum Computed {
    Plan(Box<Plan>),
    Check(Box<Diagnosis>),
}

/// What stands before the code of a rule that a check judges by.
const CHECK: &str = "check.";

/// The findings of a rule with its working.
pub(super) fn topic(
    topic: &Topic,
    path: &Path,
    options: &ExplainOptions,
) -> Result<Judged, Failure> {
    let tank = Tank::of(path, options, topic.code.starts_with(CHECK))?;
    Ok(tank.judged(Some(&topic.code), Vec::new(), |finding| {
        finding.code.text() == topic.code
    }))
}

/// The values of a result with the findings and the working of what it rests on.
pub(super) fn result(
    named: &Named,
    path: &Path,
    options: &ExplainOptions,
) -> Result<Judged, Failure> {
    let row = named.row;
    let tank = Tank::of(path, options, row.giver == Giver::Check)?;
    let object = tank.object(row.giver, path, options)?;
    let values = at::values(&object, &named.path);
    let judged = tank.judged(row.topic.as_deref(), values, |finding| {
        is_behind(row, finding)
    });
    let worst = if is_of_findings(row) {
        tank.worst()
    } else {
        judged.worst
    };
    Ok(Judged { worst, ..judged })
}

/// The findings whose limits or rules rest on a source.
pub(super) fn source(
    source: &Source,
    path: &Path,
    options: &ExplainOptions,
) -> Result<Judged, Failure> {
    let tank = Tank::of(path, options, false)?;
    let resting = Resting::on(&source.key);
    Ok(tank.judged(None, Vec::new(), |finding| {
        let code = finding.code.text();
        finding.source == Some(source.key.as_str())
            || resting.topics.iter().any(|topic| topic == code)
    }))
}

/// Whether a result is the list of findings, or what is made of all of them.
fn is_of_findings(row: &ResultRow) -> bool {
    row.path.starts_with("findings") || row.path == "rows[].status"
}

/// Whether a result rests on what a finding judges.
fn is_behind(row: &ResultRow, finding: &Finding) -> bool {
    let code = finding.code.text();
    match (&row.topic, row.from) {
        (Some(topic), _) => topic == code,
        (None, Some(Origin::Finding)) => {
            let section = row.path.split('.').next();
            section.is_some_and(|section| code.split('.').next() == Some(section))
        }
        (None, _) => false,
    }
}

impl Tank {
    /// Reads a spec and computes its check, or its plan.
    fn of(path: &Path, options: &ExplainOptions, is_check: bool) -> Result<Self, Failure> {
        let design = input::design(path, &options.common)?;
        let computed = if is_check {
            let asked = options.ensemble.options(diagnosis::MEMBERS);
            let found = diagnose(&design, &[], asked).map_err(Failure::Run)?;
            Computed::Check(Box::new(found))
        } else {
            let asked = options.ensemble.for_one();
            let plan = plan::plan(&design, asked).map_err(Failure::Run)?;
            Computed::Plan(Box::new(plan))
        };
        Ok(Self { design, computed })
    }

    fn findings(&self) -> &[Finding] {
        match &self.computed {
            Computed::Plan(plan) => &plan.findings,
            Computed::Check(found) => &found.findings,
        }
    }

    fn worst(&self) -> Status {
        let statuses = self.findings().iter().map(|finding| finding.status);
        statuses.max().unwrap_or(Status::Ok)
    }

    /// The JSON of a command for this tank.
    fn object(
        &self,
        giver: Giver,
        path: &Path,
        options: &ExplainOptions,
    ) -> Result<Map<String, Value>, Failure> {
        let asked = options.ensemble.for_one();
        Ok(match (giver, &self.computed) {
            (Giver::Startup, _) => {
                let (found, _) =
                    plan::startup(&self.design, asked, &|_| ()).map_err(Failure::Run)?;
                json::object(startup::SCHEMA, &found)
            }
            (Giver::Night, _) => {
                let (found, ..) =
                    plan::night(&self.design, asked, plan::OnDay::Leanest).map_err(Failure::Run)?;
                json::object(night::SCHEMA, &found)
            }
            (Giver::Compare, _) => self.row(path),
            (Giver::Solve, _) => Map::new(),
            (_, Computed::Plan(plan)) => json::object(planned::SCHEMA, plan.as_ref()),
            (_, Computed::Check(found)) => json::object(check::SCHEMA, found.as_ref()),
        })
    }

    /// What a comparison says of this tank alone, before any column.
    fn row(&self, path: &Path) -> Map<String, Value> {
        let row = [
            ("name", self.design.draft().name.clone()),
            ("file", input::file_name(path)),
            ("status", self.worst().word().to_owned()),
        ];
        let row = row
            .into_iter()
            .map(|(key, text)| (key.to_owned(), Value::from(text)));
        let rows = Value::from(vec![Value::Object(row.collect())]);
        Map::from_iter([("rows".to_owned(), rows)])
    }

    /// The findings that are asked for, the worst first, with the working of a topic.
    fn judged(
        &self,
        topic: Option<&str>,
        values: Vec<at::ValueAt>,
        is_asked: impl Fn(&Finding) -> bool,
    ) -> Judged {
        let asked = self.findings().iter().filter(|finding| is_asked(finding));
        let mut findings: Vec<Finding> = asked.cloned().collect();
        findings.sort_by_key(|finding| std::cmp::Reverse(finding.status));
        Judged {
            worst: findings
                .first()
                .map_or(Status::Ok, |finding| finding.status),
            worked: Worked {
                name: self.design.draft().name.clone(),
                units: self.design.draft().units,
                values,
                working: topic.map_or_else(nothing, |topic| self.working(topic)),
                findings,
            },
        }
    }

    fn working(&self, topic: &str) -> Working {
        match &self.computed {
            Computed::Plan(plan) => plan::worked(&self.design, plan, topic),
            Computed::Check(found) => diagnosis::worked(found, topic),
        }
    }
}

fn nothing() -> Working {
    Working { steps: Vec::new() }
}
