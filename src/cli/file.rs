//! Files that results go to, each written whole or not at all.

use std::fs::{self, File, Permissions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::failure::Failure;
use super::stopped;

/// The most links that lead to one file, as on Linux.
const MOST_LINKS: usize = 40;

/// What stands, or will stand, at a path.
pub(super) enum Target {
    /// A pipe or a device takes the text as it is.
    Device(PathBuf),
    /// A file is put in its place.
    File(PathBuf),
}

/// Where a path leads: a link stays a link, and its target is written.
///
/// # Errors
/// When it is a folder, or a file that is not to be written.
pub(super) fn target(path: &Path) -> io::Result<Target> {
    if path.is_dir() {
        return Err(io::Error::new(ErrorKind::IsADirectory, "it is a directory"));
    }
    let is_device = fs::metadata(path).is_ok_and(|found| !found.is_file());
    if is_device {
        return Ok(Target::Device(path.to_owned()));
    }
    let path = end_of_links(path)?;
    if permissions(&path).is_some_and(|permissions| permissions.readonly()) {
        let says = "the file is read-only";
        return Err(io::Error::new(ErrorKind::PermissionDenied, says));
    }
    Ok(Target::File(path))
}

/// Follows links to what they lead to, whether it is there or not.
fn end_of_links(path: &Path) -> io::Result<PathBuf> {
    let mut end = path.to_owned();
    for _ in 0..MOST_LINKS {
        let Ok(next) = fs::read_link(&end) else {
            return Ok(end);
        };
        end = folder(&end).join(next);
    }
    Err(io::Error::other("its links lead in a circle"))
}

fn folder(path: &Path) -> &Path {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    }
}

/// Those of a file that is there already.
fn permissions(path: &Path) -> Option<Permissions> {
    fs::metadata(path)
        .map(|metadata| metadata.permissions())
        .ok()
}

/// Opens a pipe or a device.
///
/// # Errors
/// When it cannot be written to.
pub(super) fn device(path: &Path) -> io::Result<File> {
    File::options().write(true).open(path)
}

/// A file beside its target, to be put in its place: half a file is never seen. It goes
/// away unless it is put there.
pub(super) struct Scratch(NamedTempFile);

/// Straight to the file: what goes wrong is to be said of the target, not of a file that
/// nobody asked for.
impl Write for Scratch {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.as_file().write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.as_file().flush()
    }
}

/// Begins a file beside its target.
///
/// # Errors
/// When nothing can be written to the target's folder.
pub(super) fn scratch(target: &Path) -> io::Result<Scratch> {
    let folder = folder(target);
    if !folder.is_dir() {
        let says = "its folder is not there";
        return Err(io::Error::new(ErrorKind::NotFound, says));
    }
    let mut builder = tempfile::Builder::new();
    new_file_permissions(&mut builder);
    let scratch =
        stopped::guarded(|| builder.tempfile_in(folder)).map_err(|error| match error.kind() {
            // What the system says names a file that nobody asked for.
            kind @ (ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem) => {
                io::Error::new(kind, "its folder is read-only")
            }
            _ => error,
        })?;
    if let Some(permissions) = permissions(target) {
        scratch.as_file().set_permissions(permissions)?;
    }
    Ok(Scratch(scratch))
}

/// Lets the user's umask decide, as for any new file.
#[cfg(unix)]
fn new_file_permissions(builder: &mut tempfile::Builder<'_, '_>) {
    use std::os::unix::fs::PermissionsExt;
    builder.permissions(Permissions::from_mode(0o666));
}

#[cfg(not(unix))]
fn new_file_permissions(_builder: &mut tempfile::Builder<'_, '_>) {}

/// Puts a finished file in its place.
///
/// # Errors
/// When it cannot be.
pub(super) fn put(Scratch(scratch): Scratch, target: &Path) -> io::Result<()> {
    scratch.as_file().sync_all()?;
    stopped::put(|| scratch.persist(target)).map_err(|error| error.error)?;
    Ok(())
}

/// Writes a finished text to a file that is not there yet.
///
/// # Errors
/// When something is there already, which is kept, or the file cannot be written.
pub(super) fn create(text: &str, path: &Path) -> Result<(), Failure> {
    let created = scratch(path).and_then(|mut scratch| {
        scratch.write_all(text.as_bytes())?;
        let Scratch(scratch) = scratch;
        scratch.as_file().sync_all()?;
        stopped::put(|| scratch.persist_noclobber(path)).map_err(|error| error.error)
    });
    match created {
        Ok(_) => Ok(()),
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            Err(Failure::Kept(path.to_owned()))
        }
        Err(error) => Err(unwritable(path, &error)),
    }
}

/// That a file cannot be written, and why.
pub(super) fn unwritable(path: &Path, error: &io::Error) -> Failure {
    Failure::Unwritable {
        path: path.to_owned(),
        reason: error.to_string(),
    }
}
