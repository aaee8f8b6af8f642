//! What of a keeper's text may be shown: nothing that drives a terminal or turns the
//! line around.

/// A text in which every character that is no mark on the line is a blank.
///
/// # Example
/// ```
/// use lentic::units::printable;
/// assert_eq!(printable("red\u{1b}[31m"), "red [31m");
/// ```
pub fn printable(text: &str) -> String {
    text.chars()
        .map(|c| if is_printable(c) { c } else { ' ' })
        .collect()
}

/// Whether a character only marks its place: no control character, line separator or
/// mark that changes the direction of writing (Unicode Standard Annex 9).
pub fn is_printable(c: char) -> bool {
    let turns_the_line = matches!(
        c,
        '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
    );
    let ends_the_line = matches!(c, '\u{2028}' | '\u{2029}');
    !(c.is_control() || turns_the_line || ends_the_line)
}
