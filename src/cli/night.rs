//! `lentic night`.

use super::args::NightOptions;
use super::choice::Format;
use super::failure::Failure;
use super::{Outcome, input, output, result};
use crate::finding::Status;
use crate::plan::{self, Night};
use crate::report::{compose, csv, json};

/// The schema of a night.
pub(super) const SCHEMA: &str = "lentic/night/1";

pub(super) fn run(options: &NightOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let asked = options.ensemble.for_one();
    let (night, findings) = plan::night(&design, asked, options.day).map_err(Failure::Run)?;
    if options.format == Format::Csv {
        output::write(&hour_rows(&night), common.out.as_deref())?;
    } else {
        result::write(common, options.format, SCHEMA, &night, || {
            compose::night(&design, &night, &findings)
        })?;
    }
    let worst = findings.iter().map(|finding| finding.status).max();
    Ok(Outcome::of(
        worst.unwrap_or(Status::Ok),
        common.fail_on.map(Status::from),
    ))
}

/// A row an hour.
fn hour_rows(night: &Night) -> String {
    let rows: Vec<_> = night
        .hours
        .iter()
        .map(|hour| csv::flattened(&json::object("", hour), csv::Lists::Omitted))
        .map(|cells| {
            let named = cells.into_iter().filter(|(path, _)| path != "schema");
            named.collect()
        })
        .collect();
    csv::table(&rows)
}
