//! `lentic startup`.

use super::args::StartupOptions;
use super::choice::Format;
use super::failure::Failure;
use super::progress::Progress;
use super::{Outcome, input, output, result};
use crate::finding::Status;
use crate::plan::{self, Startup};
use crate::report::{compose, csv, json};

/// The schema of a start-up run.
pub(super) const SCHEMA: &str = "lentic/startup/1";

pub(super) fn run(options: &StartupOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let asked = plan::Options {
        days: options.days,
        ..options.ensemble.for_one()
    };
    let progress = Progress::of(asked.members.into(), "runs");
    let followed = plan::startup(&design, asked, &|count| progress.advance(count.into()));
    progress.finish();
    let (startup, findings) = followed.map_err(Failure::Run)?;
    if options.format == Format::Csv {
        output::write(&day_rows(&startup), common.out.as_deref())?;
    } else {
        result::write(common, options.format, SCHEMA, &startup, || {
            compose::startup(&design, &startup, &findings)
        })?;
    }
    let worst = findings.iter().map(|finding| finding.status).max();
    Ok(Outcome::of(
        worst.unwrap_or(Status::Ok),
        common.fail_on.map(Status::from),
    ))
}

/// A row a day, the keeper's readings of the day beside the bands.
fn day_rows(startup: &Startup) -> String {
    let rows: Vec<_> = startup
        .days
        .iter()
        .map(|day| {
            let mut cells = csv::flattened(&json::object("", day), csv::Lists::Omitted);
            cells.retain(|(path, _)| path != "schema");
            cells.extend(
                startup
                    .readings
                    .iter()
                    .filter(|reading| reading.day.round() as u32 == day.day)
                    .map(|reading| {
                        let path = format!("reading.{}_mg_l", reading.analyte);
                        (path, reading.value_mg_l.into())
                    }),
            );
            cells
        })
        .collect();
    csv::table(&rows)
}
