//! `lentic schema`.

use super::Outcome;
use super::args::SchemaOptions;
use super::failure::Failure;
use super::output;
use crate::report::json;
use crate::spec;

pub(super) fn run(options: &SchemaOptions) -> Result<Outcome, Failure> {
    output::write(&json::pretty(&spec::schema()), options.out.as_deref())?;
    Ok(Outcome::Done)
}
