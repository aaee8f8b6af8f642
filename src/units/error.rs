//! Why a text is not a quantity.

use thiserror::Error;

use super::list::either;

/// A text that could not be read as the quantity asked for.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{problem}; {}", self.way_out())]
pub struct QuantityError {
    /// What was asked for, with its article.
    pub quantity: &'static str,
    /// A text that would have been read.
    pub example: &'static str,
    /// What is wrong.
    pub problem: QuantityProblem,
}

/// What is wrong with a text.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum QuantityProblem {
    /// No number at its start.
    #[error("\"{text}\" does not start with a number")]
    NoNumber {
        /// The text.
        text: String,
    },
    /// A number alone.
    #[error("\"{text}\" has no unit")]
    NoUnit {
        /// The text.
        text: String,
    },
    /// A comma where a point is meant, or a thousands separator.
    #[error("\"{text}\" has a comma, which may mean a decimal point or thousands")]
    Comma {
        /// The text.
        text: String,
    },
    /// A unit of something else, or none at all.
    #[error("\"{unit}\" is not a unit of this kind")]
    UnknownUnit {
        /// The unit as written.
        unit: String,
        /// What is understood here.
        choices: Vec<&'static str>,
    },
    /// A unit with more than one meaning.
    #[error("\"{unit}\" could mean {}", either(choices))]
    AmbiguousUnit {
        /// The unit as written.
        unit: String,
        /// What it may have meant.
        choices: Vec<&'static str>,
    },
    /// Infinite, not a number, or too large to hold.
    #[error("\"{text}\" is not a finite number")]
    NotFinite {
        /// The text.
        text: String,
    },
    /// Below zero.
    #[error("\"{text}\" is below zero")]
    Negative {
        /// The text.
        text: String,
    },
    /// Not as many numbers as a size has.
    #[error("\"{text}\" has {found} of the 3 dimensions")]
    DimensionCount {
        /// The text.
        text: String,
        /// How many were found.
        found: usize,
    },
}

impl QuantityError {
    /// What would be accepted instead.
    pub fn way_out(&self) -> String {
        match &self.problem {
            QuantityProblem::UnknownUnit { choices, .. } => format!(
                "write {} in {}, for example \"{}\"",
                self.quantity,
                either(choices),
                self.example
            ),
            QuantityProblem::AmbiguousUnit { choices, .. } => {
                format!("say which: {}", either(choices))
            }
            QuantityProblem::Comma { text } if !text.contains('.') => {
                let pointed = text.replacen(',', ".", 1);
                format!("write a decimal point, for example \"{pointed}\"")
            }
            QuantityProblem::Comma { .. } => {
                format!(
                    "write thousands without a mark, for example \"{}\"",
                    self.example
                )
            }
            QuantityProblem::Negative { .. } => {
                format!("{} starts at zero", self.quantity)
            }
            _ => format!(
                "write {} with its unit, for example \"{}\"",
                self.quantity, self.example
            ),
        }
    }
}
