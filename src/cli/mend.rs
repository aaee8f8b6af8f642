//! `lentic mend`.

use super::args::MendOptions;
use super::choice::MendFormat;
use super::failure::Failure;
use super::progress::Progress;
use super::{Outcome, input, output};
use crate::mend::{Keep, MendError, MendRequest, Mended, mend};
use crate::report::{compose, json, text};

/// The schema of a mended spec.
const SCHEMA: &str = "lentic/mend/1";

/// About as many plans as are tried.
const PLANS: u64 = 300;

pub(super) fn run(options: &MendOptions) -> Result<Outcome, Failure> {
    let spec = input::text(&options.spec)?;
    let design = input::read(&spec, &options.spec, options.units, options.color)?;
    let keep = options.keep.iter().map(String::as_str);
    let keep = Keep::of(keep, &spec).map_err(|unknown| {
        let help = &unknown.help;
        Failure::BadInput(format!("error: --keep {unknown}\nhelp: {help}"))
    })?;
    let progress = Progress::of(PLANS, "plans or so tried");
    let request = MendRequest {
        text: &spec,
        design: &design,
        keep: &keep,
        options: options.ensemble.for_one(),
    };
    let found = mend(&request, &|| progress.advance(1));
    progress.finish();
    let (mended, new) = found.map_err(|error| match error {
        MendError::Run(error) => Failure::Run(error),
    })?;
    write(options, &mended, &new)?;
    Ok(if mended.holds {
        Outcome::Done
    } else {
        Outcome::Found
    })
}

/// The new spec where it is asked for and holds, and what was changed.
fn write(options: &MendOptions, mended: &Mended, new: &str) -> Result<(), Failure> {
    let out = options.out.as_deref().filter(|_| mended.holds);
    if out.is_some() {
        output::write(new, out)?;
    }
    let told = match options.format {
        MendFormat::Text => {
            let layout = output::layout(options.color, None);
            text::render(&compose::mend(mended), layout)
        }
        MendFormat::Json => json::pretty(&json::object(SCHEMA, mended)),
        MendFormat::Toml if options.out.is_some() => return Ok(()),
        MendFormat::Toml => new.to_owned(),
    };
    output::write(&told, None)
}
