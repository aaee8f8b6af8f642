//! Why a command could not do its work.

use std::path::{Path, PathBuf};

use thiserror::Error;

use crate::numerics::rodas::IntegrationError;
use crate::units::printable;

/// A command that ended early.
#[derive(Debug, Error)]
pub(super) enum Failure {
    /// A name or an option that cannot be used; the text is complete.
    #[error("{0}")]
    BadInput(String),
    /// A spec that cannot be used; its faults are drawn, where asked for in colour.
    #[error("{0}")]
    BadSpec(String),
    /// A file that cannot be read.
    #[error(
        "error: cannot read {name}: {reason}\nhelp: give the path of a spec file, or - for standard input"
    )]
    Unreadable {
        /// The file, or standard input.
        name: String,
        /// What the system says.
        reason: String,
    },
    /// A file that was to be new.
    #[error("error: {} is there already and was kept\nhelp: choose another path with --out", shown(.0))]
    Kept(PathBuf),
    /// A file that cannot be written.
    #[error(
        "error: cannot write {}: {reason}\nhelp: choose another path with --out; nothing was written",
        shown(path)
    )]
    Unwritable {
        /// The file.
        path: PathBuf,
        /// What the system says.
        reason: String,
    },
    /// A result that would have replaced what it is made from.
    #[error(
        "error: --out {} would be written over {input}, which is read here\nhelp: choose another path with --out; nothing was written",
        shown(path)
    )]
    Overwriting {
        /// The file that was to be written.
        path: PathBuf,
        /// The input that it is.
        input: String,
    },
    /// A run whose numbers left the finite ones.
    #[error("error: the start-up run failed: {0}\nhelp: please report this spec")]
    Run(IntegrationError),
    /// Standard output that cannot be written.
    #[error("error: cannot write the result to standard output: {0}")]
    Output(std::io::Error),
}

impl Failure {
    pub(super) const fn exit_code(&self) -> u8 {
        match self {
            Self::BadInput(_)
            | Self::BadSpec(_)
            | Self::Unreadable { .. }
            | Self::Kept(_)
            | Self::Overwriting { .. }
            | Self::Unwritable { .. }
            | Self::Output(_) => 2,
            Self::Run(_) => 3,
        }
    }
}

/// A path as it is shown.
pub(super) fn shown(path: &Path) -> String {
    printable(&path.display().to_string())
}
