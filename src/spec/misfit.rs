//! Why a value does not fit its key, before it is known where it stands.

use std::ops::Range;

/// A value that does not fit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Misfit {
    /// What was found.
    pub(super) found: String,
    /// The rule, with its number.
    pub(super) rule: String,
    /// A way out.
    pub(super) help: String,
    /// The other place, and what stands there.
    pub(super) related: Option<(Range<usize>, String)>,
}

impl Misfit {
    /// A misfit that concerns one place.
    pub(super) fn new(
        found: impl Into<String>,
        rule: impl Into<String>,
        help: impl Into<String>,
    ) -> Self {
        Self {
            found: found.into(),
            rule: rule.into(),
            help: help.into(),
            related: None,
        }
    }

    /// The same misfit with its other place.
    pub(super) fn beside(mut self, span: Range<usize>, says: impl Into<String>) -> Self {
        self.related = Some((span, says.into()));
        self
    }
}

/// The choice nearest to a misspelt word, where one is near enough.
pub(super) fn nearest<'a>(
    word: &str,
    choices: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    /// No key or name is longer; a longer word is not a slip of the hand.
    const LONGEST: usize = 40;
    let length = word.chars().count();
    if length > LONGEST {
        return None;
    }
    let word = word.trim().to_lowercase().replace(['-', ' '], "_");
    choices
        .into_iter()
        .map(|choice| (strsim::damerau_levenshtein(&word, choice), choice))
        .min_by_key(|(distance, _)| *distance)
        .filter(|(distance, _)| *distance <= 1 + length / 4)
        .map(|(_, choice)| choice)
}

/// "a, b or c".
pub(super) fn listed(choices: &[&str]) -> String {
    match choices {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [head @ .., last] => format!("{} or {last}", head.join(", ")),
    }
}
