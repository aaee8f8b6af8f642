//! `lentic new`.

use std::path::Path;

use super::Outcome;
use super::args::NewOptions;
use super::failure::Failure;
use super::output;
use crate::spec::starter;

pub(super) fn run(options: &NewOptions) -> Result<Outcome, Failure> {
    if let Some(path) = options.out.as_deref().filter(|path| path.exists()) {
        return Err(kept(path));
    }
    let text = starter::text(options.units.into());
    output::write(&text, options.out.as_deref())?;
    Ok(Outcome::Done)
}

/// An existing file is never written over.
fn kept(path: &Path) -> Failure {
    Failure::BadInput(format!(
        "error: {} is there already and was kept\nhelp: choose another path with --out",
        path.display()
    ))
}
