//! `lentic check`.

use std::path::Path;

use super::args::CheckOptions;
use super::choice::Format;
use super::failure::Failure;
use super::progress::Progress;
use super::{Outcome, input, output, result};
use crate::design::Design;
use crate::diagnosis::{self, Measurement, diagnose_with_progress};
use crate::finding::Status;
use crate::report::compose;
use crate::spec::log;

/// The schema of a check.
pub(super) const SCHEMA: &str = "lentic/check/1";
/// Rows of a log whose faults are told one by one.
const FAULTS_TOLD: usize = 20;

pub(super) fn run(options: &CheckOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::standing(&options.spec, common)?;
    let readings = match &options.readings {
        Some(path) => measurements(&design, path)?,
        None => Vec::new(),
    };
    let asked = options.ensemble.options(diagnosis::MEMBERS);
    let progress = Progress::of(diagnosis::runs(asked), "runs");
    let found = diagnose_with_progress(&design, &readings, asked, &|count| progress.advance(count));
    progress.finish();
    let found = found.map_err(Failure::Run)?;
    result::write(common, options.format, SCHEMA, &found, || {
        match (options.format, options.full) {
            (Format::Text, false) => compose::check_in_short(&design, &found),
            _ => compose::check(&design, &found),
        }
    })?;
    Ok(Outcome::of(
        found.status(),
        common.fail_on.map(Status::from),
    ))
}

/// The measurements of a log; what is wrong with it is told, and the rest is used.
fn measurements(design: &Design, path: &Path) -> Result<Vec<Measurement>, Failure> {
    let name = input::file_name(path);
    let read = log::parse(&input::text(path)?, design.draft().start);
    let told: Vec<String> = read
        .faults
        .iter()
        .take(FAULTS_TOLD)
        .map(|fault| {
            format!(
                "{}: {name}:{fault}",
                if read.measurements.is_empty() {
                    "error"
                } else {
                    "warning"
                }
            )
        })
        .collect();
    let mut told = told.join("\n");
    if read.faults.len() > FAULTS_TOLD {
        told = format!("{told}\nand {} more", read.faults.len() - FAULTS_TOLD);
    }
    if read.measurements.is_empty() {
        return Err(Failure::BadInput(if told.is_empty() {
            format!(
                "error: {name}: no readings in it\nhelp: the first line names the columns, for example day,ammonia,nitrite,nitrate"
            )
        } else {
            format!(
                "{told}\nhelp: no reading of the log can be used; the first line names the columns, for example day,ammonia,nitrite,nitrate"
            )
        }));
    }
    if !told.is_empty() {
        output::complain(&told);
    }
    Ok(read.measurements)
}
