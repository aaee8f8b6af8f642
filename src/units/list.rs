//! Items in a sentence.

/// "a", "a and b", "a, b and c".
pub(crate) fn listed<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "and")
}

/// "a", "a or b", "a, b or c".
pub(crate) fn either<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "or")
}

fn joined<T: AsRef<str>>(items: &[T], last_word: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} {last_word} {}", head.join(", "), last.as_ref())
        }
    }
}
