//! Where results and problems go, and how they are laid out there.

use std::fs::File;
use std::io::{self, BufWriter, ErrorKind, Write};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

use anstream::{AutoStream, ColorChoice};

use super::choice::ColorWhen;
use super::failure::Failure;
use super::file::{self, Scratch, Target, unwritable};
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
    let mut stream = Stream::open(file)?;
    match stream.write(text)? {
        ControlFlow::Continue(()) => stream.finish(),
        ControlFlow::Break(()) => Ok(()),
    }
}

/// A result that is written bit by bit; a file shows none of it before it is whole.
pub(super) enum Stream {
    Stdout,
    Device(PathBuf, File),
    File(PathBuf, BufWriter<Scratch>),
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
        let opened = match file::target(path) {
            Ok(Target::Device(path)) => file::device(&path).map(|file| Self::Device(path, file)),
            Ok(Target::File(path)) => {
                file::scratch(&path).map(|scratch| Self::File(path, BufWriter::new(scratch)))
            }
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
        let written = match self {
            Self::Stdout => io::stdout().lock().write_all(bytes),
            Self::Device(_, file) => file.write_all(bytes),
            Self::File(_, scratch) => scratch.write_all(bytes),
        };
        self.while_read(written)
    }

    /// Puts the file in its place.
    ///
    /// # Errors
    /// When it cannot be.
    pub(super) fn finish(self) -> Result<(), Failure> {
        match self {
            Self::Stdout => {
                let flushed = io::stdout().lock().flush();
                self.while_read(flushed).map(|_| ())
            }
            Self::Device(..) => Ok(()),
            Self::File(path, scratch) => {
                let scratch = scratch.into_inner().map_err(io::IntoInnerError::into_error);
                scratch
                    .and_then(|scratch| file::put(scratch, &path))
                    .map_err(|error| unwritable(&path, &error))
            }
        }
    }

    /// How writing went; a closed pipe is no error.
    fn while_read(&self, written: io::Result<()>) -> Result<ControlFlow<()>, Failure> {
        match (written, self) {
            (Ok(()), _) => Ok(ControlFlow::Continue(())),
            (Err(error), _) if error.kind() == ErrorKind::BrokenPipe => Ok(ControlFlow::Break(())),
            (Err(error), Self::Stdout) => Err(Failure::Output(error)),
            (Err(error), Self::Device(path, _) | Self::File(path, _)) => {
                Err(unwritable(path, &error))
            }
        }
    }
}

/// Makes the folder that a file is to stand in.
///
/// # Errors
/// When it cannot be made.
pub(super) fn make_folder_of(file: &Path) -> Result<(), Failure> {
    let made = file.parent().map_or(Ok(()), std::fs::create_dir_all);
    made.map_err(|error| unwritable(file, &error))
}

/// Prints a problem to standard error; whatever it quotes, nothing of it drives the terminal.
pub(super) fn complain(message: &str) {
    let lines: Vec<String> = message.lines().map(printable).collect();
    complain_drawn(&lines.join("\n"));
}

/// Prints a problem that was drawn for the terminal.
pub(super) fn complain_drawn(message: &str) {
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
