//! The choice that a misspelt word may mean.

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
