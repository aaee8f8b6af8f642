//! `lentic check`.

use super::args::PlanOptions;
use super::failure::Failure;
use super::{Outcome, input, result};
use crate::finding::Status;
use crate::plan;
use crate::report::compose;

/// The schema of a check.
const SCHEMA: &str = "lentic/check/1";

pub(super) fn run(options: &PlanOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let check = plan::check(&design, options.ensemble.for_one()).map_err(Failure::Run)?;
    result::write(common, options.format, SCHEMA, &check, || {
        compose::check(&design, &check)
    })?;
    Ok(Outcome::of(
        check.status(),
        common.fail_on.map(Status::from),
    ))
}
