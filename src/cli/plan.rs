//! `lentic plan`.

use super::args::PlanOptions;
use super::failure::Failure;
use super::{Outcome, input, result};
use crate::finding::Status;
use crate::plan;
use crate::report::compose;

/// The schema of a plan.
pub(super) const SCHEMA: &str = "lentic/plan/1";

pub(super) fn run(options: &PlanOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let plan = plan::plan(&design, options.ensemble.for_one()).map_err(Failure::Run)?;
    result::write(common, options.format, SCHEMA, &plan, || {
        compose::plan(&design, &plan)
    })?;
    Ok(Outcome::of(plan.status(), common.fail_on.map(Status::from)))
}
