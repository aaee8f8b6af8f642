//! `lentic upkeep`.

use super::args::UpkeepOptions;
use super::choice::Format;
use super::failure::Failure;
use super::progress::Progress;
use super::{Outcome, input, output, result};
use crate::finding::Status;
use crate::report::compose;
use crate::upkeep::{MEMBERS, UpkeepQuestions, upkeep};

/// The schema of a running tank.
pub(super) const SCHEMA: &str = "lentic/upkeep/1";

pub(super) fn run(options: &UpkeepOptions) -> Result<Outcome, Failure> {
    let common = &options.common;
    let design = input::design(&options.spec, common)?;
    let asked = UpkeepQuestions {
        day: options.day,
        stir: options.stir,
        away: options.away,
        moved: options.moved,
        bucket: options.bucket,
    };
    let followed = options.ensemble.options(MEMBERS);
    let runs = u64::from(followed.members) * if asked.moved { 2 } else { 1 };
    let progress = Progress::of(runs, "runs");
    let found = upkeep(&design, followed, &asked, &|count| {
        progress.advance(count.into());
    });
    progress.finish();
    let found = found.map_err(Failure::Run)?;
    if options.format == Format::Csv {
        output::write(&result::rows(&found.weeks), common.out.as_deref())?;
    } else {
        result::write(common, options.format, SCHEMA, &found, || {
            match (options.format, options.full) {
                (Format::Text, false) => compose::upkeep_in_short(&design, &found),
                _ => compose::upkeep(&design, &found),
            }
        })?;
    }
    Ok(Outcome::of(found.status, common.fail_on.map(Status::from)))
}
