//! A rule, a result or a source worked through with the numbers of one tank.

use std::path::Path;

use serde_json::{Map, Value};

use super::args::ExplainOptions;
use super::failure::Failure;
use super::{
    check, compare, condition, input, night, plan as planned, request, startup, upkeep as kept,
    water,
};
use crate::catalogue::Topic;
use crate::design::Design;
use crate::diagnosis::{self, Diagnosis, diagnose};
use crate::finding::{Caution, Finding, Status, Working};
use crate::makeup::{self, Makeup, NewWater, makeup};
use crate::plan::{self, Plan};
use crate::report::at;
use crate::report::compose::{Resting, WorkedExample};
use crate::report::dictionary::{self, Named, ResultCommand, ResultRow};
use crate::report::{json, row};
use crate::result::{Ground, Origin};
use crate::source::Source;
use crate::study::{self, BaseTank, Cell, Question, Space};
use crate::units::{Duration, Share, Volume};
use crate::upkeep::{self, Upkeep, UpkeepQuestions};

/// What a tank adds to an explanation, and the worst status that it stands for.
pub(super) struct TankWorking {
    pub(super) worked: WorkedExample,
    pub(super) worst: Status,
}

/// A tank with what was computed for it.
struct WorkedTank {
    design: Design,
    computed: Computed,
}

/// What holds the findings.
enum Computed {
    Plan(Box<Plan>),
    Check(Box<Diagnosis>),
    Kept(Box<Upkeep>),
    Made(Box<Makeup>),
    /// A comparison, of which the worst status alone is known.
    Row(Status),
    /// No single tank has what is asked for.
    Nothing,
}

/// What stands before the code of a rule that a check judges by.
const CHECK: &str = "check.";

/// The findings of a rule with its working.
pub(super) fn topic(
    topic: &Topic,
    path: &Path,
    options: &ExplainOptions,
) -> Result<TankWorking, Failure> {
    let design = input::design(path, &options.common)?;
    let (computed, _) = Computed::of(holder(&topic.code), &design, Some(&topic.code), options)?;
    let tank = WorkedTank { design, computed };
    let findings = tank.findings_that(|finding| finding.code.text() == topic.code);
    Ok(tank.judged(Some(&topic.code), Vec::new(), findings))
}

/// The command whose results rest on a topic: `plan` where one of its own does.
fn holder(topic: &str) -> ResultCommand {
    if topic.starts_with(CHECK) {
        return ResultCommand::Check;
    }
    // a check doses too, but a tank that nothing is known of only where it runs on
    if matches!(topic, "water.dosing" | "water.root_zone") {
        return ResultCommand::Upkeep;
    }
    let rows = dictionary::results().iter();
    let commands = rows
        .filter(|row| row.topic() == Some(topic))
        .map(|row| row.command);
    let commands: Vec<ResultCommand> = commands.collect();
    let is_planned = commands.is_empty() || commands.contains(&ResultCommand::Plan);
    let last = commands.last().filter(|_| !is_planned);
    last.copied().unwrap_or(ResultCommand::Plan)
}

/// The values of a result with the findings and the working of what it rests on.
pub(super) fn result(
    named: &Named,
    path: &Path,
    options: &ExplainOptions,
) -> Result<TankWorking, Failure> {
    let row = named.row;
    let design = input::design(path, &options.common)?;
    let (computed, object) = match row.command {
        ResultCommand::Compare => compared(row, &design, path, options)?,
        command => Computed::of(command, &design, row.topic(), options)?,
    };
    let tank = WorkedTank { design, computed };
    let values = at::values(&object, &named.path);
    let findings = tank.findings_that(|finding| is_behind(row, finding));
    let judged = tank.judged(row.topic(), values, findings);
    let worst = if is_of_findings(row) {
        tank.worst()
    } else {
        judged.worst
    };
    Ok(TankWorking { worst, ..judged })
}

/// What a comparison says of one tank where nothing is varied; its status alone takes time.
fn compared(
    row: &ResultRow,
    design: &Design,
    path: &Path,
    options: &ExplainOptions,
) -> Result<(Computed, Map<String, Value>), Failure> {
    let status = is_of_findings(row).then(|| condition::column("status"));
    let question = Question {
        columns: status.transpose()?.into_iter().collect(),
        ..Question::about(
            Space::as_given(),
            options.ensemble.options(request::MEMBERS),
        )
    };
    let file = input::file_name(path);
    let mut worst = Status::Ok;
    let mut rows = Vec::new();
    for row in study::compare(&question, &[BaseTank::of(0, design.draft().clone())]) {
        for cell in row.cells.as_ref().map_err(failed)?.iter().flatten() {
            if let Cell::Word(word) = cell {
                worst = worst.max(compare::status(word));
            }
        }
        rows.push(Value::Object(row::object(
            &row,
            &file,
            &[],
            &question.columns,
        )));
    }
    let object = Map::from_iter([("rows".to_owned(), Value::from(rows))]);
    Ok((Computed::Row(worst), object))
}

fn failed(why: &study::RowError) -> Failure {
    Failure::BadInput(format!("error: {why}"))
}

/// The findings whose limits or rules rest on a source, of the plan and of a check.
pub(super) fn source(
    source: Source,
    path: &Path,
    options: &ExplainOptions,
) -> Result<TankWorking, Failure> {
    let design = input::design(path, &options.common)?;
    let topics = Resting::on(source).topics;
    let is_asked = |finding: &Finding| {
        let code = finding.code.text();
        finding.source == Some(source) || topics.iter().any(|topic| topic == code)
    };
    let computed = Computed::planned(&design, options)?;
    let mut tank = WorkedTank { design, computed };
    let mut findings = tank.findings_that(is_asked);
    if topics.iter().any(|topic| topic.starts_with(CHECK)) {
        tank.computed = Computed::checked(&tank.design, options)?;
        let is_of_check = |finding: &Finding| finding.code.text().starts_with(CHECK);
        findings.extend(tank.findings_that(|finding| is_of_check(finding) && is_asked(finding)));
    }
    Ok(tank.judged(None, Vec::new(), findings))
}

/// Whether a result is the list of findings, or what is made of all of them.
fn is_of_findings(row: &ResultRow) -> bool {
    row.path.starts_with("findings") || row.path == "rows[].status"
}

/// Whether a result rests on what a finding judges.
fn is_behind(row: &ResultRow, finding: &Finding) -> bool {
    let code = finding.code.text();
    match row.ground {
        Ground::Topic(topic) => topic == code,
        Ground::From(Origin::Finding) => {
            let section = row.path.split('.').next();
            section.is_some_and(|section| code.split('.').next() == Some(section))
        }
        Ground::From(_) => false,
    }
}

fn diagnosed(design: &Design, options: &ExplainOptions) -> Result<Diagnosis, Failure> {
    let asked = options.ensemble.options(diagnosis::MEMBERS);
    diagnose(design, &[], asked).map_err(Failure::Run)
}

fn worst(findings: &[Finding]) -> Status {
    let statuses = findings.iter().map(|finding| finding.status);
    statuses.max().unwrap_or(Status::Ok)
}

impl Computed {
    fn planned(design: &Design, options: &ExplainOptions) -> Result<Self, Failure> {
        let plan = plan::plan(design, options.ensemble.for_one()).map_err(Failure::Run)?;
        Ok(Self::Plan(Box::new(plan)))
    }

    fn checked(design: &Design, options: &ExplainOptions) -> Result<Self, Failure> {
        Ok(Self::Check(Box::new(diagnosed(design, options)?)))
    }

    /// What holds a result of a command, with the JSON of that command.
    fn of(
        command: ResultCommand,
        design: &Design,
        topic: Option<&str>,
        options: &ExplainOptions,
    ) -> Result<(Self, Map<String, Value>), Failure> {
        let asked = options.ensemble.for_one();
        let followed = || plan::followed(design, asked).map_err(Failure::Run);
        Ok(match command {
            ResultCommand::Plan => {
                let plan = plan::plan(design, asked).map_err(Failure::Run)?;
                let object = json::object(planned::SCHEMA, &plan);
                (Self::Plan(Box::new(plan)), object)
            }
            ResultCommand::Startup => {
                let (plan, days, _) = followed()?;
                let object = json::object(startup::SCHEMA, &days);
                (Self::Plan(Box::new(plan)), object)
            }
            ResultCommand::Night => {
                let (plan, _, hours) = followed()?;
                let object = json::object(night::SCHEMA, &hours);
                (Self::Plan(Box::new(plan)), object)
            }
            ResultCommand::Check => {
                let found = diagnosed(design, options)?;
                let object = json::object(check::SCHEMA, &found);
                (Self::Check(Box::new(found)), object)
            }
            ResultCommand::Upkeep => {
                let followed = options.ensemble.options(upkeep::MEMBERS);
                let found = upkeep::upkeep(design, followed, &what_if(topic), &|_| {});
                let found = found.map_err(Failure::Run)?;
                let object = json::object(kept::SCHEMA, &found);
                (Self::Kept(Box::new(found)), object)
            }
            ResultCommand::Water => {
                let made = makeup(design, NewWater::Change);
                let made = made.map_err(|error| water::refused(&error))?;
                let object = json::object(water::SCHEMA, &made);
                (Self::Made(Box::new(made)), object)
            }
            ResultCommand::Compare | ResultCommand::Solve | ResultCommand::Mend => {
                (Self::Nothing, Map::new())
            }
        })
    }
}

impl WorkedTank {
    fn findings(&self) -> &[Finding] {
        match &self.computed {
            Computed::Plan(plan) => &plan.findings,
            Computed::Check(found) => &found.findings,
            Computed::Kept(_) | Computed::Made(_) | Computed::Row(_) | Computed::Nothing => &[],
        }
    }

    fn worst(&self) -> Status {
        match self.computed {
            Computed::Row(worst) => worst,
            Computed::Kept(ref found) => found.status,
            _ => worst(self.findings()),
        }
    }

    fn findings_that(&self, is_asked: impl Fn(&Finding) -> bool) -> Vec<Finding> {
        let asked = self.findings().iter().filter(|finding| is_asked(finding));
        asked.cloned().collect()
    }

    /// The findings that are asked for, the worst first, with the working of a topic.
    fn judged(
        &self,
        topic: Option<&str>,
        values: Vec<at::ValueAt>,
        mut findings: Vec<Finding>,
    ) -> TankWorking {
        findings.sort_by_key(|finding| std::cmp::Reverse(finding.status));
        TankWorking {
            worst: worst(&findings),
            worked: WorkedExample {
                name: self.design.draft().name.clone(),
                units: self.design.draft().units,
                values,
                working: topic.map_or_else(nothing, |topic| self.working(topic)),
                cautions: self.cautions(&findings),
                findings,
            },
        }
    }

    /// Those of a check, or of what the remedies of some findings order.
    fn cautions(&self, findings: &[Finding]) -> Vec<Caution> {
        match &self.computed {
            Computed::Check(found) => found.cautions.clone(),
            _ => plan::cautions_for(&self.design, plan::ordered(findings)),
        }
    }

    fn working(&self, topic: &str) -> Working {
        match &self.computed {
            Computed::Plan(plan) => plan::working_of(&self.design, plan, topic),
            Computed::Check(found) => diagnosis::working_of(found, topic),
            Computed::Kept(found) => upkeep::working_of(&self.design, found, topic),
            Computed::Made(made) => makeup::working_of(&self.design, made, topic),
            Computed::Row(_) | Computed::Nothing => nothing(),
        }
    }
}

/// A question of common size to a running tank, for a topic that rests on one.
fn what_if(topic: Option<&str>) -> UpkeepQuestions {
    let asked = UpkeepQuestions::default();
    match topic {
        Some("upkeep.stir" | "upkeep.settling") => UpkeepQuestions {
            stir: Some(Share::from_percent(20.0)),
            ..asked
        },
        Some("upkeep.away") => UpkeepQuestions {
            away: Some(Duration::from_days(14.0)),
            ..asked
        },
        Some("upkeep.move") => UpkeepQuestions {
            moved: true,
            ..asked
        },
        Some("upkeep.bucket") => UpkeepQuestions {
            bucket: Some(Volume::from_litres(8.0)),
            ..asked
        },
        _ => asked,
    }
}

fn nothing() -> Working {
    Working { steps: Vec::new() }
}
