//! What is wrong with a spec, and where.

use std::fmt;
use std::ops::Range;

/// One thing that is wrong with a spec.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The key at fault: `plants[2].name`, counted from 0; empty where the text is no TOML.
    pub key: String,
    /// Its bytes in the text.
    pub span: Range<usize>,
    /// What was found.
    pub found: String,
    /// The rule, with its number.
    pub rule: String,
    /// A way out.
    pub help: String,
    /// The other place it disagrees with, and what stands there.
    pub related: Option<(Range<usize>, String)>,
}

/// Everything that is wrong with a spec, in order of position.
///
/// Both ways of printing give a line a fault, so that `?` in a `main` shows what to mend.
#[derive(Clone, PartialEq, Eq, Default)]
pub struct Faults(pub Vec<Fault>);

impl Faults {
    /// The faults in order of position.
    pub(super) fn sorted(mut faults: Vec<Fault>) -> Self {
        faults.sort_by_key(|fault| (fault.span.start, fault.span.end));
        Self(faults)
    }
}

impl Fault {
    /// The line and column where it begins.
    pub fn place(&self, text: &str) -> TextPosition {
        TextPosition::of(self.span.start, text)
    }

    /// The key and what was found there, as the heading of a message.
    pub fn heading(&self) -> String {
        if self.key.is_empty() {
            self.found.clone()
        } else {
            format!("{}: {}", self.key, self.found)
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}; {}", self.heading(), self.rule, self.help)
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.0.iter().enumerate() {
            let gap = if index == 0 { "" } else { "\n" };
            write!(f, "{gap}{fault}")?;
        }
        Ok(())
    }
}

impl fmt::Debug for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl std::error::Error for Faults {}

/// A place in a text as an editor counts it, both from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextPosition {
    /// The line.
    pub line: usize,
    /// The character in the line.
    pub column: usize,
}

impl TextPosition {
    /// Where a byte of `text` stands; its end for any byte beyond.
    ///
    /// # Example
    /// ```
    /// use lentic::spec::TextPosition;
    /// let place = TextPosition::of(10, "[tank]\nwall = \"5 mm\"");
    /// assert_eq!((place.line, place.column), (2, 4));
    /// ```
    pub fn of(byte: usize, text: &str) -> Self {
        let before = &text[..boundary(byte, text)];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        Self {
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
        }
    }
}

/// The last character boundary at or before a byte.
pub(super) fn boundary(byte: usize, text: &str) -> usize {
    let mut byte = byte.min(text.len());
    while !text.is_char_boundary(byte) {
        byte -= 1;
    }
    byte
}
