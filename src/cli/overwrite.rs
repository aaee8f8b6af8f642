//! Results are never written over what they are made from.

use std::fs::{self, Metadata};
use std::path::{Path, PathBuf};

use super::args::Command;
use super::failure::Failure;
use super::input;

/// Refuses a command whose `--out` is one of its inputs, by whatever path or link.
///
/// # Errors
/// When it is, or a folder of specs cannot be read.
pub(super) fn refuse(command: &Command) -> Result<(), Failure> {
    let Some((out, inputs)) = paths(command) else {
        return Ok(());
    };
    let Some(target) = fs::metadata(out).ok().filter(Metadata::is_file) else {
        return Ok(());
    };
    for path in inputs {
        let files = if path.is_dir() {
            input::specs_in(path)?
        } else {
            vec![path.to_owned()]
        };
        if let Some(found) = files.iter().find(|file| is_file(file, out, &target)) {
            return Err(Failure::Overwriting {
                path: out.to_owned(),
                input: input::file_name(found),
            });
        }
    }
    Ok(())
}

/// Where a command writes, and what it reads: specs, folders of specs, a log.
fn paths(command: &Command) -> Option<(&Path, Vec<&PathBuf>)> {
    let (common, inputs) = match command {
        Command::Mend(options) => return Some((options.out.as_deref()?, vec![&options.spec])),
        Command::Plan(options) => (&options.common, vec![&options.spec]),
        Command::Startup(options) => (&options.common, vec![&options.spec]),
        Command::Night(options) => (&options.common, vec![&options.spec]),
        Command::Upkeep(options) => (&options.common, vec![&options.spec]),
        Command::Water(options) => (&options.common, vec![&options.spec]),
        Command::Check(options) => {
            let read = std::iter::once(&options.spec).chain(&options.readings);
            (&options.common, read.collect())
        }
        Command::Compare(options) => (&options.common, options.specs.iter().collect()),
        Command::Solve(options) => (&options.common, vec![&options.spec]),
        Command::Explain(options) => (&options.common, options.spec.iter().collect()),
        // These read nothing, or write nothing over anything.
        Command::New(_)
        | Command::List(_)
        | Command::Schema(_)
        | Command::Completions(_)
        | Command::Man(_) => return None,
    };
    Some((common.out.as_deref()?, inputs))
}

/// Whether an input is the file that is to be written.
fn is_file(input: &Path, out: &Path, target: &Metadata) -> bool {
    metadata(input).is_some_and(|input_data| is_same(&input_data, target))
        || is_same_path(input, out)
}

/// Of a file, or of what stands at standard input.
fn metadata(input: &Path) -> Option<Metadata> {
    if input.as_os_str() == input::STANDARD_INPUT {
        standard_input()
    } else {
        fs::metadata(input).ok()
    }
}

/// A file stands at standard input where it was redirected from one.
#[cfg(unix)]
fn standard_input() -> Option<Metadata> {
    use std::os::fd::AsFd;
    let stdin = std::io::stdin().as_fd().try_clone_to_owned().ok()?;
    fs::File::from(stdin).metadata().ok()
}

#[cfg(not(unix))]
fn standard_input() -> Option<Metadata> {
    None
}

/// Whether two files are one, by device and number: hard and soft links lead there alike.
#[cfg(unix)]
fn is_same(one: &Metadata, other: &Metadata) -> bool {
    use std::os::unix::fs::MetadataExt;
    (one.dev(), one.ino()) == (other.dev(), other.ino())
}

#[cfg(not(unix))]
fn is_same(_one: &Metadata, _other: &Metadata) -> bool {
    false
}

fn is_same_path(one: &Path, other: &Path) -> bool {
    match (fs::canonicalize(one), fs::canonicalize(other)) {
        (Ok(one), Ok(other)) => one == other,
        _ => false,
    }
}
