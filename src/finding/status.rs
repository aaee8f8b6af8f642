//! How a judged thing stands.

use serde::Serialize;

use crate::result::plain;

plain! { Word: Status; }

/// Four steps from well to urgent, in this order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Status {
    /// Within the limits.
    Ok,
    /// Worth knowing; nothing to do.
    Note,
    /// Outside a limit; keep an eye on it or mend it when convenient.
    Watch,
    /// Outside the outer limit; mend it first.
    Act,
}

impl Status {
    /// The word shown to people and in results.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Ok => "ok",
            Self::Note => "note",
            Self::Watch => "watch",
            Self::Act => "act",
        }
    }
}
