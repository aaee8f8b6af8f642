//! Where results go: standard output, or a file written whole or not at all.

use std::fs::{File, Permissions};
use std::io::{self, BufWriter, ErrorKind, Write};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

use anstream::{AutoStream, ColorChoice};
use tempfile::NamedTempFile;

use super::choice::ColorWhen;
use super::failure::Failure;
use crate::report::chart::Glyphs;
use crate::report::text::Layout;
use crate::units::printable;

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

/// A result that is written bit by bit; a file shows none of it before it is whole.
pub(super) enum Stream {
    Stdout,
    Device(PathBuf, File),
    File(PathBuf, BufWriter<NamedTempFile>),
}

impl Stream {
    /// Opens standard output, or a file.
    ///
    /// # Errors
    /// When the file cannot be written.
    pub(super) fn open(file: Option<&Path>) -> Result<Self, Failure> {
        let Some(path) = file else {
            return Ok(Self::Stdout);
        };
        let opened = match target(path) {
            Ok(Target::Device(path)) => device(&path).map(|file| Self::Device(path, file)),
            Ok(Target::File(path)) => scratch("", &path, permissions(&path))
                .map(|scratch| Self::File(path, BufWriter::new(scratch))),
            Err(error) => Err(error),
        };
        opened.map_err(|error| unwritable(path, &error))
    }

    /// Writes some more; breaks where nobody reads any longer.
    ///
    /// # Errors
    /// When it cannot be written.
    pub(super) fn write(&mut self, text: &str) -> Result<ControlFlow<()>, Failure> {
        let bytes = text.as_bytes();
        match self {
            Self::Stdout => match io::stdout().lock().write_all(bytes) {
                Err(error) if error.kind() == ErrorKind::BrokenPipe => {
                    return Ok(ControlFlow::Break(()));
                }
                other => other.map_err(Failure::Output)?,
            },
            Self::Device(path, file) => {
                file.write_all(bytes)
                    .map_err(|error| unwritable(path, &error))?;
            }
            Self::File(path, scratch) => {
                scratch
                    .write_all(bytes)
                    .map_err(|error| unwritable(path, &error))?;
            }
        }
        Ok(ControlFlow::Continue(()))
    }

    /// Puts the file in its place.
    ///
    /// # Errors
    /// When it cannot be.
    pub(super) fn finish(self) -> Result<(), Failure> {
        match self {
            Self::Stdout => match io::stdout().lock().flush() {
                Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
                other => other.map_err(Failure::Output),
            },
            Self::Device(..) => Ok(()),
            Self::File(path, scratch) => {
                let placed = scratch
                    .into_inner()
                    .map_err(io::IntoInnerError::into_error)
                    .and_then(|scratch| {
                        scratch.as_file().sync_all()?;
                        scratch.persist(&path).map_err(|error| error.error)
                    });
                placed.map(drop).map_err(|error| unwritable(&path, &error))
            }
        }
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

/// What stands, or will stand, at a path.
enum Target {
    /// A pipe or a device takes the text as it is.
    Device(PathBuf),
    File(PathBuf),
}

/// Where a path leads: a link stays a link, and its target is written.
fn target(path: &Path) -> io::Result<Target> {
    if path.is_dir() {
        return Err(io::Error::new(ErrorKind::IsADirectory, "it is a directory"));
    }
    let path = path.canonicalize().unwrap_or_else(|_| path.to_owned());
    Ok(if path.exists() && !path.is_file() {
        Target::Device(path)
    } else {
        Target::File(path)
    })
}

fn device(path: &Path) -> io::Result<File> {
    File::options().write(true).open(path)
}

/// Those of a file that is there already.
fn permissions(path: &Path) -> Option<Permissions> {
    std::fs::metadata(path)
        .map(|metadata| metadata.permissions())
        .ok()
}

/// Writes beside the target and renames, so that no half file is ever seen.
fn write_file(text: &str, path: &Path) -> io::Result<()> {
    match target(path)? {
        Target::Device(path) => device(&path)?.write_all(text.as_bytes()),
        Target::File(path) => {
            scratch(text, &path, permissions(&path))?.persist(path)?;
            Ok(())
        }
    }
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

/// A path as it is shown.
pub(super) fn shown(path: &Path) -> String {
    printable(&path.display().to_string())
}

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
