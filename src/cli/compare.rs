//! `lentic compare`.

use std::path::Path;

use serde_json::{Map, Value};

use super::Outcome;
use super::args::{CompareOptions, RowFormat};
use super::failure::Failure;
use super::{input, output, plan as plan_command};
use crate::design::Design;
use crate::finding::Status;
use crate::plan::{self, Plan};
use crate::report::{compose, csv, json, text};

/// The schema of a comparison.
const SCHEMA: &str = "lentic/compare/1";

/// Members of each tank's ensemble unless said otherwise.
const MEMBERS: u32 = 64;

/// One tank that could be planned.
struct Row {
    file: String,
    design: Design,
    plan: Plan,
}

/// One file that could not.
struct Failed {
    file: String,
    error: String,
}

pub(super) fn run(options: &CompareOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let mut rows = Vec::new();
    let mut failed = Vec::new();
    for path in &options.specs {
        match row(path, options) {
            Ok(row) => rows.push(row),
            Err(error) => failed.push(Failed {
                file: input::file_name(path),
                // What goes into a result carries no colour.
                error: anstream::adapter::strip_str(&error.to_string()).to_string(),
            }),
        }
    }
    output::write(&written(options, &rows, &failed), common.out.as_deref())?;
    for failure in &failed {
        output::complain(&failure.error);
    }
    if !failed.is_empty() {
        return Ok(Outcome::PartlyBad);
    }
    let worst = rows.iter().map(|row| row.plan.status()).max();
    Ok(Outcome::of(
        worst.unwrap_or(Status::Ok),
        common.fail_on.map(Status::from),
    ))
}

fn row(path: &Path, options: &CompareOptions) -> Result<Row, Failure> {
    let design = input::design(path, &options.common)?;
    let plan = plan::plan(&design, options.ensemble.options(MEMBERS)).map_err(Failure::Run)?;
    Ok(Row {
        file: input::file_name(path),
        design,
        plan,
    })
}

fn written(options: &CompareOptions, rows: &[Row], failed: &[Failed]) -> String {
    match options.format {
        RowFormat::Text => {
            let common = &options.common;
            let layout = output::layout(common.color, common.out.as_deref());
            let tanks: Vec<_> = rows.iter().map(|row| (&row.design, &row.plan)).collect();
            text::render(&compose::compare(&tanks), layout)
        }
        RowFormat::Json => json::pretty(&object(rows, failed)),
        RowFormat::Jsonl => rows.iter().map(|row| json::line(&dotted(row))).collect(),
        RowFormat::Csv => {
            let cells: Vec<_> = rows
                .iter()
                .map(|row| dotted(row).into_iter().collect())
                .collect();
            csv::table(&cells)
        }
    }
}

fn object(rows: &[Row], failed: &[Failed]) -> Map<String, Value> {
    let rows = rows.iter().map(|row| Value::Object(dotted(row))).collect();
    let failed = failed
        .iter()
        .map(|failure| {
            let fields = [("file", &failure.file), ("error", &failure.error)];
            Value::Object(
                fields
                    .into_iter()
                    .map(|(key, text)| (key.to_owned(), Value::from(text.as_str())))
                    .collect(),
            )
        })
        .collect();
    Map::from_iter([
        ("schema".to_owned(), Value::from(SCHEMA)),
        ("rows".to_owned(), Value::Array(rows)),
        ("failed".to_owned(), Value::Array(failed)),
    ])
}

/// The plan's main numbers under their dotted paths, after the tank's name and file.
fn dotted(row: &Row) -> Map<String, Value> {
    let object = json::object(plan_command::SCHEMA, &row.plan);
    let mut fields = Map::new();
    fields.insert("name".to_owned(), Value::from(row.plan.name.as_str()));
    fields.insert("file".to_owned(), Value::from(row.file.as_str()));
    fields.insert("status".to_owned(), Value::from(row.plan.status().word()));
    let numbers = csv::flattened(&object, csv::Lists::Omitted);
    fields.extend(numbers.into_iter().filter(|(path, _)| path.contains('.')));
    fields
}
