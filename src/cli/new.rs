//! `lentic new`.

use super::args::NewOptions;
use super::failure::Failure;
use super::{Outcome, file, output};
use crate::spec::starter;

pub(super) fn run(options: &NewOptions) -> Result<Outcome, Failure> {
    let units = options.units.into();
    let text = match &options.size {
        Some(size) => starter::sized(size, units),
        None => starter::text(units),
    };
    match options.out.as_deref() {
        Some(path) => file::create(&text, path)?,
        None => output::write(&text, None)?,
    }
    Ok(Outcome::Done)
}
