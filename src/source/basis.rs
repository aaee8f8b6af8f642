//! What a number rests on.

use serde::{Deserialize, Serialize};

use crate::result::plain;

plain! { Word: Basis; }

/// What a number rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Basis {
    /// Printed in a source, or computed from what is printed there.
    Published,
    /// What the trade does; nobody has written down why.
    Practice,
    /// A convention of this program.
    Judgement,
    /// The user's own measurement.
    Measured,
    /// Recalled from a source that was not opened again.
    Memory,
}

impl Basis {
    /// The basis in words for people.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Practice => "common practice, no source",
            Self::Judgement => "judgement, a convention of this program",
            Self::Measured => "measured by you",
            Self::Memory => "from memory, source not checked",
        }
    }

    /// The same where works are named beside it: practice is then set beside them, not
    /// taken from them.
    pub const fn words_beside_sources(self) -> &'static str {
        match self {
            Self::Practice => "common practice, beside what is cited",
            other => other.words(),
        }
    }
}
