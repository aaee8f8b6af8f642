//! `lentic night`.

use super::args::NightOptions;
use super::choice::Format;
use super::failure::Failure;
use super::{Outcome, input, output, result};
use crate::finding::Status;
use crate::plan;
use crate::report::compose;

/// The schema of a night.
pub(super) const SCHEMA: &str = "lentic/night/1";

pub(super) fn run(options: &NightOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let asked = options.ensemble.for_one();
    let (night, findings) = plan::night(&design, asked, options.day).map_err(Failure::Run)?;
    if options.format == Format::Csv {
        output::write(&result::rows(&night.hours), common.out.as_deref())?;
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
