//! Where results go: standard output, or a file written whole or not at all.

use std::fs::Permissions;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use anstream::{AutoStream, ColorChoice};
use tempfile::NamedTempFile;

use super::args::ColorWhen;
use super::failure::Failure;
use crate::report::chart::Glyphs;
use crate::report::text::Layout;

/// Columns of a pipe, and the most that prose is set in.
const MAX_WIDTH: usize = 80;
/// Columns of the narrowest terminal that is laid out for.
const MIN_WIDTH: usize = 40;

/// Writes a finished result.
///
/// # Errors
/// When the file or standard output cannot be written. A reader that has closed
/// its end of a pipe is no error.
pub(super) fn write(text: &str, file: Option<&Path>) -> Result<(), Failure> {
    match file {
        Some(path) => write_file(text, path).map_err(|error| unwritable(path, &error)),
        None => write_stdout(text).map_err(Failure::Output),
    }
}

/// Writes a finished text to a file that is not there yet.
///
/// # Errors
/// When something is there already, which is kept, or the file cannot be written.
pub(super) fn create(text: &str, path: &Path) -> Result<(), Failure> {
    let created = scratch(text, path, None)
        .and_then(|scratch| scratch.persist_noclobber(path).map_err(|error| error.error));
    match created {
        Ok(_) => Ok(()),
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            Err(Failure::Kept(path.to_owned()))
        }
        Err(error) => Err(unwritable(path, &error)),
    }
}

fn unwritable(path: &Path, error: &io::Error) -> Failure {
    Failure::Unwritable {
        path: path.to_owned(),
        reason: error.to_string(),
    }
}

fn write_stdout(text: &str) -> io::Result<()> {
    let mut stdout = io::stdout().lock();
    let written = stdout
        .write_all(text.as_bytes())
        .and_then(|()| stdout.flush());
    match written {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

/// Writes beside the target and renames, so that no half file is ever seen.
fn write_file(text: &str, path: &Path) -> io::Result<()> {
    if path.is_dir() {
        return Err(io::Error::new(ErrorKind::IsADirectory, "it is a directory"));
    }
    // A link stays a link, and its target is written.
    let target = path.canonicalize();
    let path = target.as_deref().unwrap_or(path);
    if path.exists() && !path.is_file() {
        // A pipe or a device takes the text as it is.
        let mut device = std::fs::OpenOptions::new().write(true).open(path)?;
        return device.write_all(text.as_bytes());
    }
    let permissions = std::fs::metadata(path).map(|metadata| metadata.permissions());
    scratch(text, path, permissions.ok())?.persist(path)?;
    Ok(())
}

/// The text whole in a file beside its target, which has some permissions if it exists.
fn scratch(
    text: &str,
    target: &Path,
    permissions: Option<Permissions>,
) -> io::Result<NamedTempFile> {
    let folder = match target.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent.to_owned(),
        _ => PathBuf::from("."),
    };
    let mut builder = tempfile::Builder::new();
    if let Some(permissions) = permissions {
        builder.permissions(permissions);
    } else {
        new_file_permissions(&mut builder);
    }
    let mut scratch = builder.tempfile_in(folder)?;
    scratch.write_all(text.as_bytes())?;
    scratch.as_file().sync_all()?;
    Ok(scratch)
}

/// Lets the user's umask decide, as for any new file.
#[cfg(unix)]
fn new_file_permissions(builder: &mut tempfile::Builder<'_, '_>) {
    use std::os::unix::fs::PermissionsExt;
    builder.permissions(Permissions::from_mode(0o666));
}

#[cfg(not(unix))]
fn new_file_permissions(_builder: &mut tempfile::Builder<'_, '_>) {}

/// Prints a problem to standard error.
pub(super) fn complain(message: &str) {
    // A closed standard error leaves nobody to tell.
    let _ = writeln!(io::stderr().lock(), "{}", message.trim_end());
}

/// How text for people is laid out where it will be read.
pub(super) fn layout(color: ColorWhen, file: Option<&Path>) -> Layout {
    Layout {
        width: if file.is_some() {
            MAX_WIDTH
        } else {
            terminal_width()
        },
        color: file.is_none() && is_colored(color, &io::stdout()),
        glyphs: if shows_unicode() {
            Glyphs::UNICODE
        } else {
            Glyphs::ASCII
        },
    }
}

/// Whether the locale's characters are Unicode; the first of these variables that is
/// set decides, as in POSIX.
fn shows_unicode() -> bool {
    ["LC_ALL", "LC_CTYPE", "LANG"]
        .into_iter()
        .filter_map(std::env::var_os)
        .find(|value| !value.is_empty())
        .is_some_and(|value| {
            let locale = value.to_string_lossy().to_ascii_lowercase();
            locale.contains("utf-8") || locale.contains("utf8")
        })
}

/// Whether problems are drawn in colour.
pub(super) fn colors_errors(color: ColorWhen) -> bool {
    is_colored(color, &io::stderr())
}

fn is_colored(color: ColorWhen, stream: &impl anstream::stream::RawStream) -> bool {
    match color {
        ColorWhen::Always => true,
        ColorWhen::Never => false,
        ColorWhen::Auto => AutoStream::choice(stream) != ColorChoice::Never,
    }
}

fn terminal_width() -> usize {
    terminal_size::terminal_size().map_or(MAX_WIDTH, |(width, _)| {
        usize::from(width.0).clamp(MIN_WIDTH, MAX_WIDTH)
    })
}
