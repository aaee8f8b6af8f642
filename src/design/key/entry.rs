//! What stands at a key, whatever format it was written in.

use jiff::civil;

use super::{Key, KeyKind};
use crate::design::Violation;
use crate::units::list::either;

/// The most characters that a text of a spec has: a name, a quantity, a word.
pub(crate) const MOST_CHARACTERS: usize = 200;

/// A value as it was written.
#[derive(Debug, Clone)]
pub(crate) enum Raw<'d> {
    /// A text.
    Text(&'d str),
    /// A bare number; its value where that can be held.
    Number {
        /// The value.
        value: Option<f64>,
        /// Whether it is written as a whole number.
        is_whole: bool,
        /// The number as written.
        written: String,
    },
    /// Yes or no.
    Flag(bool),
    /// A moment; its date where it is no more than that.
    Moment {
        /// The date.
        date: Option<civil::Date>,
        /// The moment as written.
        written: String,
    },
    /// A list.
    List,
    /// A table.
    Table,
}

impl Raw<'_> {
    /// The value as written, cut where it is long.
    pub(crate) fn shown(&self) -> String {
        /// Enough to recognise a value by.
        const LONGEST: usize = 40;
        match self {
            Self::Text(text) if text.chars().count() > LONGEST => {
                let start: String = text.chars().take(LONGEST).collect();
                format!("\"{}...\"", start.escape_debug())
            }
            Self::Text(text) => format!("\"{}\"", text.escape_debug()),
            Self::Number { written, .. } | Self::Moment { written, .. } => written.clone(),
            Self::Flag(flag) => flag.to_string(),
            Self::List => "a list".to_owned(),
            Self::Table => "a table".to_owned(),
        }
    }

    /// The value with its type, as found where another type belongs.
    fn described(&self) -> String {
        let shown = self.shown();
        match self {
            Self::Text(_) => format!("{shown} is text"),
            Self::Number { .. } => format!("{shown} is a bare number"),
            Self::Flag(_) => format!("{shown} is a yes or no"),
            Self::Moment { .. } => format!("{shown} is a date or time"),
            Self::List | Self::Table => format!("found {shown}"),
        }
    }
}

/// What stands at a key.
#[derive(Debug, Clone)]
pub(crate) struct KeyEntry<'d> {
    /// The key.
    pub(crate) key: &'static Key,
    /// The value.
    pub(crate) value: Raw<'d>,
}

impl KeyEntry<'_> {
    /// The text of the value, or why it is none.
    pub(crate) fn text(&self) -> Result<&str, Violation> {
        let Raw::Text(text) = self.value else {
            return Err(self.wrong_type());
        };
        match text.chars().count() {
            length if length > MOST_CHARACTERS => Err(self.too_long(length)),
            _ => Ok(text),
        }
    }

    fn too_long(&self, length: usize) -> Violation {
        Violation::new(
            format!("a text of {length} characters is too long"),
            format!(
                "{} is at most {MOST_CHARACTERS} characters long",
                self.key.leaf()
            ),
            self.example(),
        )
    }

    /// The bare number, or why it is none.
    pub(super) fn plain_number(&self) -> Result<f64, Violation> {
        match self.value {
            Raw::Number {
                value: Some(value), ..
            } => Ok(value),
            _ => Err(self.wrong_type()),
        }
    }

    /// That the value is of another type than its key takes.
    pub(crate) fn wrong_type(&self) -> Violation {
        Violation::new(self.value.described(), self.kind_rule(), self.example())
    }

    /// The rule that the key's kind makes.
    pub(super) fn kind_rule(&self) -> String {
        format!("{} is {}", self.key.leaf(), kind_words(self.key.kind))
    }

    /// "for example wall = "5 mm"".
    pub(crate) fn example(&self) -> String {
        format!("for example {}", self.key.written())
    }

    /// The rule that the key's limits make.
    fn limit_rule(&self) -> String {
        let units = match self.key.kind {
            KeyKind::BagSize => " litres or kilograms",
            KeyKind::Amount => " grams or portions",
            KeyKind::Dose => " mL per litre",
            _ => "",
        };
        format!("{} is {}{units}", self.key.leaf(), self.key.limits.words())
    }

    /// Holds a value against the key's limits, which `bound` reads.
    pub(crate) fn within_limits(
        &self,
        value: f64,
        bound: impl Fn(&str) -> Option<f64>,
    ) -> Result<(), Violation> {
        let limits = self.key.limits;
        let too_low = limits
            .low
            .and_then(&bound)
            .is_some_and(|low| value < low || (limits.open && value <= low));
        let too_high = limits
            .high
            .and_then(&bound)
            .is_some_and(|high| value > high);
        let side = match (too_low, too_high) {
            (true, _) => "low",
            (_, true) => "high",
            _ => return Ok(()),
        };
        Err(Violation::new(
            format!("{} is too {side}", self.value.shown()),
            self.limit_rule(),
            self.example(),
        ))
    }
}

/// What a key of this kind takes, in words.
fn kind_words(kind: KeyKind) -> String {
    match kind {
        KeyKind::Text => "a text in quotes".to_owned(),
        KeyKind::Date => "a date without quotes, year-month-day".to_owned(),
        KeyKind::Flag => "true or false".to_owned(),
        KeyKind::Number => "a plain number without quotes".to_owned(),
        KeyKind::Count => "a whole number from 0, without quotes".to_owned(),
        KeyKind::Quantity(name) => format!("{name} with its unit, in quotes"),
        KeyKind::Span(name) => {
            format!("{name} with its unit, or two marks as in 0-0.25, in quotes")
        }
        KeyKind::Size => "length x width x height with the unit, in quotes".to_owned(),
        KeyKind::Depth => "a length with its unit in quotes, or a table of them".to_owned(),
        KeyKind::BagSize => "a volume or a mass with its unit, in quotes".to_owned(),
        KeyKind::Amount => "a cover, a fresh mass or a number of portions, in quotes".to_owned(),
        KeyKind::Dose => "a volume per volume of water, each with its unit, in quotes".to_owned(),
        KeyKind::Word(words) => either(words),
        KeyKind::WordOrShare(words) => format!("{}, or a share in quotes", words.join(", ")),
        KeyKind::Name(list) => format!("a name from the list of {list}, in quotes"),
        KeyKind::Names(list) => format!("a list of names from the list of {list}, each in quotes"),
        KeyKind::Numbers => "a list of plain numbers without quotes".to_owned(),
        KeyKind::Section => "a section".to_owned(),
        KeyKind::Sections => "a list of sections".to_owned(),
    }
}
