//! Why a value does not fit its key, before it is known where it stands.

/// A value that does not fit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Misfit {
    /// What was found.
    pub(crate) found: String,
    /// The rule, with its number.
    pub(crate) rule: String,
    /// A way out.
    pub(crate) help: String,
}

impl Misfit {
    /// A misfit in words.
    pub(crate) fn new(
        found: impl Into<String>,
        rule: impl Into<String>,
        help: impl Into<String>,
    ) -> Self {
        Self {
            found: found.into(),
            rule: rule.into(),
            help: help.into(),
        }
    }
}

/// The choice nearest to a misspelt word, where one is near enough.
pub(crate) fn nearest<'a>(
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
pub(crate) fn listed(choices: &[&str]) -> String {
    match choices {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [head @ .., last] => format!("{} or {last}", head.join(", ")),
    }
}
