//! Paths of results as people type them.

/// A path with the numbers of its items in brackets, as in `soil.bags[0].size`, whether it
/// was written so or as CSV has it, `soil.bags.0.size`.
pub fn bracketed(text: &str) -> String {
    let mut path = String::new();
    for part in text.trim().split('.') {
        let is_number = !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        if is_number && !path.is_empty() {
            path = format!("{path}[{part}]");
        } else if path.is_empty() {
            part.clone_into(&mut path);
        } else {
            path = format!("{path}.{part}");
        }
    }
    path
}

/// A path that stands for every item of its lists: `soil.bags[].size`.
pub fn within_lists(path: &str) -> String {
    let mut plain = String::with_capacity(path.len());
    let mut in_brackets = false;
    for c in path.chars() {
        in_brackets = (in_brackets || c == '[') && c != ']';
        if !in_brackets || !c.is_ascii_digit() {
            plain.push(c);
        }
    }
    plain
}

/// The name nearest to what was typed, by the whole of it or by its last part: `total_kg`
/// alone is meant for `weight.total_kg`. None where nothing is near.
pub fn nearest_path<'a>(typed: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let distance = |name: &str| {
        let whole = strsim::damerau_levenshtein(typed, name);
        let last = name.rsplit('.').next().unwrap_or(name);
        whole.min(strsim::damerau_levenshtein(typed, last))
    };
    known
        .into_iter()
        .map(|name| (distance(name), name))
        .min_by_key(|(distance, _)| *distance)
        .filter(|(distance, _)| *distance <= 1 + typed.chars().count() / 4)
        .map(|(_, name)| name)
}
