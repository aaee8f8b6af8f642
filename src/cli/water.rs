//! `lentic water`.

use super::args::WaterOptions;
use super::failure::Failure;
use super::{Outcome, input, result};
use crate::makeup::{MakeupError, NewWater, makeup};
use crate::report::compose;

/// The schema of new water.
pub(super) const SCHEMA: &str = "lentic/water/1";

pub(super) fn run(options: &WaterOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let new = match options.litres {
        _ if options.fill => NewWater::Fill,
        Some(volume) => NewWater::Of(volume),
        None => NewWater::Change,
    };
    let made = makeup(&design, new).map_err(|error| refused(&error))?;
    result::write(common, options.format, SCHEMA, &made, || {
        compose::water(&design, &made)
    })?;
    Ok(Outcome::Done)
}

/// That there is no such water.
pub(super) fn refused(error: &MakeupError) -> Failure {
    Failure::BadInput(format!("error: {error}\nhelp: {}", error.way_out()))
}
