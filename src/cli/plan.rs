//! `lentic plan`.

use super::args::PlanOptions;
use super::choice::Format;
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
        match (options.format, options.full, options.sections.as_slice()) {
            (Format::Text, false, []) => compose::plan_in_short(&design, &plan),
            (Format::Text, false, names) => compose::plan_sections(&design, &plan, names),
            _ => compose::plan(&design, &plan),
        }
    })?;
    Ok(Outcome::of(plan.status(), common.fail_on.map(Status::from)))
}
