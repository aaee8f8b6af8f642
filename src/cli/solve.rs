//! `lentic solve`.

use super::args::SolveOptions;
use super::failure::Failure;
use super::{Outcome, condition, input, result};
use crate::report::compose;
use crate::report::solved::Solved;
use crate::spec;
use crate::study::{self, Levels, SolveProblem};

/// The schema of an answer.
const SCHEMA: &str = "lentic/solve/1";

/// Members of each ensemble unless said otherwise.
const MEMBERS: u32 = 64;

pub(super) fn run(options: &SolveOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let axis = spec::range(&options.key, &options.from, &options.to)
        .map_err(|violation| condition::refused(&violation))?;
    let condition = condition::condition(&options.until)?;
    let design = input::design(&options.spec, common)?;
    let Levels::Range(range) = &axis.levels else {
        let help = "error: a search goes through a range\nhelp: give --from and --to as numbers";
        return Err(Failure::BadInput(help.to_owned()));
    };
    let answer = study::solve(&SolveProblem {
        draft: design.draft(),
        range,
        condition: &condition,
        options: options.ensemble.options(MEMBERS),
    });
    if let Some(failed) = answer.all_failed() {
        return Err(Failure::BadInput(format!(
            "error: no value of {} makes a tank: {failed}",
            axis.knob.path()
        )));
    }
    let solved = Solved::of(&answer, &axis, &condition);
    result::write(common, options.format, SCHEMA, &solved, || {
        compose::solve(&solved, &answer, &condition)
    })?;
    Ok(Outcome::Done)
}
