//! The sentences on limits take their numbers from where the limits are declared.

use crate::tree;

/// What a file says of its limits, between that field and the next.
fn limits(text: &str) -> Option<&str> {
    let (_, after) = text.split_once(" limits: ||")?;
    after.split_once(" formula: ").map(|(limits, _)| limits)
}

/// A sentence without what is filled in.
fn typed(sentence: &str) -> String {
    let mut depth = 0;
    sentence
        .chars()
        .filter(|&c| {
            depth += i32::from(c == '{');
            let is_typed = depth == 0;
            depth -= i32::from(c == '}');
            is_typed
        })
        .collect()
}

/// Whether a number stands in a text by itself; that of D15 is part of a name.
fn holds_number(text: &str) -> bool {
    let mut words = text.split(|c: char| !c.is_alphanumeric());
    words.any(|word| word.starts_with(|c: char| c.is_ascii_digit()))
}

#[test]
fn no_number_is_typed_into_a_sentence_on_limits() {
    let mut seen = 0;
    for path in tree::files("src", "rs") {
        let text = tree::text(&path);
        let Some(limits) = limits(&text) else {
            continue;
        };
        seen += 1;
        for sentence in limits.split('"').skip(1).step_by(2) {
            let (short, typed) = (tree::short(&path), typed(sentence));
            assert!(!holds_number(&typed), "{short}: {typed}");
        }
    }
    assert!(seen >= 30, "{seen} rules");
}

#[test]
fn a_number_by_itself_is_told_from_one_in_a_name() {
    assert!(holds_number(&typed("act under 15 mm")));
    assert!(!holds_number(&typed("D15 under {act:.1} mm")));
}
