//! Why a draft is not a design.

use std::fmt;

/// One rule that a draft breaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Violation {
    /// The key at fault: `cap.depth`; empty until that is known.
    pub key: String,
    /// The key it disagrees with, where there is one.
    pub other: Option<String>,
    /// What was found, with its unit.
    pub found: String,
    /// The rule, with its number.
    pub rule: String,
    /// A way out.
    pub help: String,
}

impl Violation {
    /// What does not fit, before it is known where it stands.
    pub(crate) fn new(
        found: impl Into<String>,
        rule: impl Into<String>,
        help: impl Into<String>,
    ) -> Self {
        Self {
            key: String::new(),
            other: None,
            found: found.into(),
            rule: rule.into(),
            help: help.into(),
        }
    }

    /// The same at a key.
    pub(crate) fn at(self, key: impl Into<String>) -> Self {
        Self {
            key: key.into(),
            ..self
        }
    }
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}: {}: {}; {}",
            self.key, self.found, self.rule, self.help
        )
    }
}

impl std::error::Error for Violation {}
