//! Regular expressions for what the readers of quantities take, for editors that
//! check a file while it is typed.
//!
//! They know every spelling in lower case and as it is shown to people, and so are
//! narrower than the readers, which forgive any case and any blank. They know
//! nothing of limits: a length that is too long has the pattern of a length.

use super::quantity::{Quantity, Unit};

/// A number from zero: `2`, `1.5`, `1/2`, `1 1/2`, `1-1/2`, `2e3`.
const UNSIGNED: &str =
    r"\+?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?(?:/[0-9]+|(?:-|\s*)[0-9]+/[0-9]+)?";

/// The pattern of a number with its unit.
///
/// # Example
/// ```
/// use lentic::units::{Length, pattern};
/// assert!(pattern::quantity::<Length>().contains("|inch|"));
/// ```
pub fn quantity<Q: Quantity>() -> String {
    let sign = if Q::SIGNED { "[-−]?" } else { "" };
    anchored(&format!("{sign}{UNSIGNED}\\s*{}", units::<Q>()))
}

/// The pattern of a number with one of some words.
pub fn portion<'a>(words: impl IntoIterator<Item = &'a str>) -> String {
    let words: Vec<String> = words.into_iter().map(escaped).collect();
    with_unit(&words.join("|"))
}

/// The pattern of lengths parted by `x`, each with its unit or all with the last one's.
pub fn lengths<Q: Quantity>(count: usize) -> String {
    let unit = units::<Q>();
    let inner = format!(r"{UNSIGNED}\s*{unit}?\s*[xX×*]\s*");
    anchored(&format!("(?:{inner}){{{}}}{UNSIGNED}\\s*{unit}", count - 1))
}

/// The pattern of a quantity to so much of the same.
pub fn dose<Q: Quantity>() -> String {
    let unit = units::<Q>();
    let amount = format!("{UNSIGNED}\\s*{unit}");
    anchored(&format!("{amount}(?:\\s+per\\s+|\\s*/\\s*){amount}"))
}

/// The pattern of a number followed by what `unit` matches.
pub(super) fn with_unit(unit: &str) -> String {
    anchored(&format!("{UNSIGNED}\\s*(?:{unit})"))
}

fn anchored(pattern: &str) -> String {
    format!(r"^\s*{pattern}\s*$")
}

/// Any spelling of any unit.
fn units<Q: Quantity>() -> String {
    let mut patterns: Vec<String> = Vec::new();
    for spelling in Q::UNITS.iter().flat_map(spellings) {
        let pattern = escaped(&spelling);
        if !patterns.contains(&pattern) {
            patterns.push(pattern);
        }
    }
    format!("(?:{})", patterns.join("|"))
}

/// As shown to people, in lower case, and further spellings; words also in the plural.
fn spellings(unit: &Unit) -> Vec<String> {
    let mut spellings = vec![unit.name.to_owned(), super::parse::normalised(unit.name)];
    for further in unit.also {
        spellings.push((*further).to_owned());
        if further.len() > 3 && further.bytes().all(|b| b.is_ascii_lowercase() || b == b' ') {
            spellings.push(format!("{further}s"));
        }
    }
    spellings
}

/// A spelling as a pattern, with raised digits beside plain ones.
fn escaped(spelling: &str) -> String {
    let mut pattern = String::new();
    for c in spelling.chars() {
        match c {
            '2' => pattern.push_str("[2²]"),
            '3' => pattern.push_str("[3³]"),
            '.' | '(' | ')' | '^' | '+' | '*' | '?' => pattern.extend(['\\', c]),
            c => pattern.push(c),
        }
    }
    let micro = ["um", "ug/", "uS/", "us/"];
    if micro.iter().any(|micro| pattern.starts_with(micro)) {
        format!("[uµ]{}", &pattern[1..])
    } else {
        pattern
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Temperature, Volume};

    #[test]
    fn a_pattern_holds_each_spelling_once() {
        let pattern = units::<Length>();
        let spellings: Vec<&str> = pattern.split(['|', ':', ')']).collect();
        for spelling in ["cm", "mm", "in", "inch", "\"", "ft", "centimetres"] {
            let count = spellings.iter().filter(|other| **other == spelling).count();
            assert_eq!(count, 1, "{spelling} in {pattern}");
        }
    }

    #[test]
    fn a_spelling_with_two_meanings_is_in_no_pattern() {
        let pattern = units::<Volume>();
        let mut spellings = pattern.split(['|', ':', ')']);
        assert!(!spellings.any(|spelling| spelling == "gal" || spelling == "qt"));
    }

    #[test]
    fn only_a_quantity_below_zero_has_a_sign() {
        assert!(quantity::<Temperature>().contains('−'));
        assert!(!quantity::<Length>().contains('−'));
    }
}
