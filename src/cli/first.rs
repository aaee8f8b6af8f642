//! `lentic` alone.

use super::Outcome;
use super::examples::FIRST_STEPS;
use super::failure::Failure;
use super::output;

pub(super) fn run() -> Result<Outcome, Failure> {
    let text = format!(
        "lentic designs and checks low-tech planted freshwater tanks: soil under sand,\n\
         planted heavily from day one. Commands to try:\n\n\
         {FIRST_STEPS}\n\n\
         lentic --help lists every command.\n"
    );
    output::write(&text, None)?;
    Ok(Outcome::Done)
}
