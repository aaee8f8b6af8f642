//! Specs from files and standard input.

use std::io::Read;
use std::path::{Path, PathBuf};

use super::choice::{ColorWhen, UnitsChoice};
use super::failure::{self, Failure};
use super::output;
use super::shared::SpecOptions;
use crate::design::Design;
use crate::spec::{self, Faults};

/// The path that stands for standard input.
pub(super) const STANDARD_INPUT: &str = "-";

/// Reads and checks one spec.
///
/// # Errors
/// When it cannot be read, or with every fault drawn.
pub(super) fn design(path: &Path, options: &SpecOptions) -> Result<Design, Failure> {
    read(&text(path)?, path, options.units, options.color)
}

/// Checks one spec that was read from a path.
///
/// # Errors
/// With every fault drawn.
pub(super) fn read(
    text: &str,
    path: &Path,
    units: Option<UnitsChoice>,
    color: ColorWhen,
) -> Result<Design, Failure> {
    spec::parse_named(text, &tank_name(path), units.map(Into::into))
        .map_err(|faults| drawn(&faults, text, path, color))
}

/// Reads and checks the spec of a tank that stands, of which not all has to be known.
///
/// # Errors
/// As [`design`].
pub(super) fn standing(path: &Path, options: &SpecOptions) -> Result<Design, Failure> {
    let text = text(path)?;
    spec::parse_standing(&text, &tank_name(path), options.units.map(Into::into))
        .map_err(|faults| drawn(&faults, &text, path, options.color))
}

fn drawn(faults: &Faults, text: &str, path: &Path, color: ColorWhen) -> Failure {
    let color = output::colors_errors(color);
    Failure::BadSpec(spec::draw(faults, text, &file_name(path), color))
}

/// The text of a spec or a log.
pub(super) fn text(path: &Path) -> Result<String, Failure> {
    let unreadable = |reason: String| Failure::Unreadable {
        name: file_name(path),
        reason,
    };
    let limit = spec::MAX_BYTES + 1;
    let mut bytes = Vec::new();
    let read = if path.as_os_str() == STANDARD_INPUT {
        std::io::stdin().lock().take(limit).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(path).and_then(|file| file.take(limit).read_to_end(&mut bytes))
    };
    read.map_err(|error| unreadable(error.to_string()))?;
    if bytes.len() as u64 == limit {
        // The cut may have split a character; the length is the fault to name.
        return Ok(String::from_utf8_lossy(&bytes).into_owned());
    }
    String::from_utf8(bytes).map_err(|_| unreadable("it is not UTF-8 text".to_owned()))
}

/// The spec files of a folder; not of the folders in it.
///
/// # Errors
/// When it cannot be read.
pub(super) fn specs_in(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let unreadable = |error: std::io::Error| Failure::Unreadable {
        name: file_name(folder),
        reason: error.to_string(),
    };
    let mut specs = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unreadable)? {
        let path = entry.map_err(unreadable)?.path();
        if path.extension().is_some_and(|end| end == "toml") && !path.is_dir() {
            specs.push(path);
        }
    }
    Ok(specs)
}

/// What a spec without a name is called.
fn tank_name(path: &Path) -> String {
    if path.as_os_str() == STANDARD_INPUT {
        return "unnamed tank".to_owned();
    }
    path.file_stem()
        .map_or_else(String::new, |stem| stem.to_string_lossy().into_owned())
}

/// How a spec is named in messages.
pub(super) fn file_name(path: &Path) -> String {
    if path.as_os_str() == STANDARD_INPUT {
        "standard input".to_owned()
    } else {
        failure::shown(path)
    }
}
